"""One shade of a group: where it hangs over the floor, and how its style sets out rows."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from foldwright.core.check.review import Review
from foldwright.core.design.choices import StyleName
from foldwright.core.design.looped import fullness
from foldwright.core.design.order import Order, least_head_allowance, skirt
from foldwright.core.design.rows import exact_share
from foldwright.core.design.styles import style_of
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class Rungs:
    """How a style sets out even rows: parts of a spacing under the lowest and over the top one."""

    below: Fraction
    above: Fraction
    loops: bool = False  # the lowest row lies at the skirt, as far up as its loop hangs down


RUNGS = {
    StyleName.FLAT: Rungs(below=Fraction(1, 2), above=Fraction(1)),
    StyleName.RELAXED: Rungs(below=Fraction(1, 2), above=Fraction(1)),
    StyleName.LOOPED: Rungs(below=Fraction(0), above=Fraction(0), loops=True),
}
"""The styles whose rows can be set at any height: the drop left over goes to skirt and head."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Member:
    """A shade of a group, with everything known that levelling its rows takes."""

    review: Review
    order: Order
    top: L  # above the floor
    asked: AskedSize  # as it would be with the drop that the group wants
    skirt: Length  # that the group wants

    @property
    def tag(self) -> str:
        """Give its tag."""
        return self.review.spec.tag

    @property
    def rungs(self) -> Rungs:
        """Tell how its style sets out rows."""
        return RUNGS[self.order.design.style]

    @property
    def hem(self) -> L:
        """Give the height of its bottom edge above the floor."""
        return derived(
            "bottom edge above the floor",
            self.top.value - self.order.drop.value,
            Unit.LENGTH,
            "The top {0} above the floor less the drop {1}.",
            self.top,
            self.order.drop,
        )

    def wanted_skirt(self, spacing: Length) -> Length:
        """Give the skirt that it wants: a loop must not hang below the hem."""
        if not self.rungs.loops:
            return self.skirt
        return max(self.skirt, self.review.marked(self._loop(spacing), Rounding.CUT_OVERSIZE))

    def least_skirt(self, spacing: Length) -> Length:
        """Give the shortest skirt that it may be given."""
        return self.wanted_skirt(spacing) if self.rungs.loops else ZERO

    def _loop(self, spacing: Length) -> Length:
        """Give how far a loop hangs below its row."""
        return spacing * ((exact_share(fullness(self.order)) - 1) / 2)

    @property
    def least_head(self) -> Length:
        """Give the shallowest head that it may be given."""
        return least_head_allowance(self.order).value

    @property
    def largest_spacing(self) -> Length:
        """Give the farthest that its rows may lie apart."""
        return style_of(self.order.design.style).largest_spacing(self.order).value

    @property
    def columns(self) -> int:
        """Count its cord columns."""
        layout = self.review.layout
        return layout.columns.count.value if layout else 1

    def hung_to(self, hem: Length) -> Member | None:
        """Hang it so that it ends at a height above the floor; None where that is impossible."""
        drop = self.review.marked(self.top.value - hem, Rounding.MARK)
        giver = self.asked.given_by.strip() or "the group"
        asked = replace(self.asked, drop=drop, given_by=giver)
        size = _size(self.review, asked) if drop > ZERO else None
        if size is None:
            return None
        return replace(self, asked=asked, order=replace(self.order, size=size))


def member_of(review: Review) -> Member | str:
    """Make a member of a planned shade.

    Takes: the planned shade, with the rules it was planned by.

    Gives: the member, or what keeps it from being one, in a sentence.

    Source: derived here.
    """
    order, top, tag = review.order, review.top_above_floor(), review.spec.tag
    if order is None or review.layout is None:
        return f"“{tag}” cannot be laid out yet: its own page says why."
    if top is None:
        return f"How high does “{tag}” hang? Measure from the floor to the head of its opening."
    if order.design.style not in RUNGS:
        return f"The rows of “{tag}” are set by its style, {order.design.style.value}."
    own = skirt(order).value
    return Member(review=review, order=order, top=top, asked=review.spec.asked, skirt=own)


def agree_on_skirt(members: tuple[Member, ...]) -> tuple[Member, ...]:
    """Let all want one skirt: the one that all have, else the house's.

    Takes: the members.

    Gives: the same, of one mind; what earlier matching left to single skirts is forgotten.

    Source: common practice.

    >>> agree_on_skirt(())
    ()
    """
    skirts = {member.skirt for member in members}
    if len(skirts) <= 1:
        return members
    return tuple(replace(member, skirt=member.order.habits.skirt.value) for member in members)


def _size(review: Review, asked: AskedSize) -> FinishedSize | None:
    spec = review.spec
    return finished_size(spec.opening, spec.mount, asked, review.habits, review.chosen.board).result
