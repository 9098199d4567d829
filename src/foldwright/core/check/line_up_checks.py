"""Whether a shade lines up with the one beside it: hems and ring rows at one height."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import least_head_allowance
from foldwright.core.facts.order_limits import LINED_UP
from foldwright.core.measure.clearances import top_above_floor
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.site import Site
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]


def draft_line_up_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what keeps two shades that hang side by side from looking like one."""
    other = review.company.beside
    if other is None or review.size is None or other.size is None:
        return
    hems = _hem(review, review.plan), _hem(review, other)
    if hems[0] is None or hems[1] is None:
        yield from _unmeasured(other)
        return
    if not _own_hems(review):
        yield from _hems(review, other, hems[0], hems[1])
    yield from _rows(review, other, hems[0], hems[1])


def _own_hems(review: Review) -> bool:
    """Tell whether the two belong to a group in which each ends where its window wants it."""
    group = review.company.group
    return group is not None and group.own_hems


def _by_the_group(review: Review) -> Iterator[Way[ShadeSpec]]:
    group = review.company.group
    if group is not None:
        yield by_hand(f"Match the group “{_plain(group.name)}” on the job's page.")


def _plain(name: str) -> str:
    """Take out what a sentence would take for a place to fill."""
    return name.replace("{", "(").replace("}", ")")


def _unmeasured(other: ShadePlan) -> Iterator[Draft[ShadeSpec]]:
    yield draft(
        Severity.ASK,
        "beside-unmeasured",
        f"It is to line up with “{other.spec.tag}”: how high are both openings above the floor?",
        ways=(by_hand("Measure from the floor to the head at both windows."),),
        stage=Stage.MEASURE,
    )


def _hem(review: Review, plan: ShadePlan) -> L | None:
    """Give the height of a bottom edge above the floor."""
    spec = plan.spec
    site = Site(opening=spec.opening, mount=spec.mount, asked=spec.asked, habits=review.habits)
    top = top_above_floor(site)
    if top is None or plan.size is None:
        return None
    return derived(
        "bottom edge above the floor",
        top.value - plan.size.drop.value,
        Unit.LENGTH,
        "The top {0} above the floor less the drop {1}.",
        top,
        plan.size.drop,
    )


def _hems(review: Review, other: ShadePlan, own: L, theirs: L) -> Iterator[Draft[ShadeSpec]]:
    apart = _apart("hems apart", own, theirs)
    if apart.value > LINED_UP.value:
        yield draft(
            Severity.ASK,
            "hems-differ",
            f"Its hem and that of “{other.spec.tag}” beside it hang {{0}} apart; beyond {{1}} it is"
            " seen at once.",
            apart,
            LINED_UP,
            ways=_same_hem(review, other, own, theirs),
            stage=Stage.ORDER,
        )


def _apart(name: str, own: L, theirs: L) -> L:
    value = abs(own.value - theirs.value)
    return derived(name, value, Unit.LENGTH, "{0} and {1} above the floor.", own, theirs)


def _same_hem(review: Review, other: ShadePlan, own: L, theirs: L) -> Iterator[Way[ShadeSpec]]:
    """Give this shade the drop that ends where the other does."""
    if review.size is not None:
        drop = derived(
            "drop",
            review.marked(review.size.drop.value + own.value - theirs.value, Rounding.MARK),
            Unit.LENGTH,
            "The drop {0}, from {1} above the floor to {2}.",
            review.size.drop,
            own,
            theirs,
        )
        giver = review.spec.asked.given_by.strip() or f"lined up with {other.spec.tag}"
        yield by_change(
            review.spec,
            review.system,
            "Make it {0} long.",
            drop,
            asked__drop=drop.value,
            asked__given_by=giver,
        )
    yield from _by_the_group(review)
    yield by_hand("Or show the client that the two hems differ.")


@dataclass(frozen=True, kw_only=True, slots=True)
class _Lines:
    """Two ring rows that should lie at one height."""

    own: L
    theirs: L

    @property
    def apart(self) -> Length:
        """Give how far the two are from each other."""
        return abs(self.own.value - self.theirs.value)


def _rows(review: Review, other: ShadePlan, own: L, theirs: L) -> Iterator[Draft[ShadeSpec]]:
    """Hold each row against the one beside it, as far up as both shades have rows."""
    if review.layout is None or other.layout is None:
        return
    ours = [_above(mark, own) for mark in review.layout.rows.marks]
    beside = [_above(mark, theirs) for mark in other.layout.rows.marks]
    pairs = list(_level(ours, beside) if _own_hems(review) else _in_order(ours, beside))
    if not pairs:
        return
    worst = max(pairs, key=lambda pair: pair.apart)
    apart = _apart("rows apart", worst.own, worst.theirs)
    hems = abs(own.value - theirs.value)
    if (hems <= LINED_UP.value or _own_hems(review)) and apart.value > LINED_UP.value:
        yield draft(
            Severity.ASK,
            "rows-differ",
            f"Its ring rows and those of “{other.spec.tag}” beside it lie up to {{0}} apart; beyond"
            " {1} it is seen at once.",
            apart,
            LINED_UP,
            ways=_same_rows(review, other.layout.rows),
            stage=Stage.ORDER,
        )


def _in_order(ours: list[L], beside: list[L]) -> Iterator[_Lines]:
    """Pair the rows from the hem up."""
    for own, theirs in zip(ours, beside, strict=False):
        yield _Lines(own=own, theirs=theirs)


def _level(ours: list[L], beside: list[L]) -> Iterator[_Lines]:
    """Pair each row with the nearest one of the other, where both have rows."""
    for own in ours:
        if beside[0].value <= own.value <= beside[-1].value:
            theirs = min(beside, key=lambda row: abs(row.value - own.value))
            yield _Lines(own=own, theirs=theirs)


def _above(mark: L, hem: L) -> L:
    value = mark.value + hem.value
    return derived("row above the floor", value, Unit.LENGTH, "{0} above the hem {1}.", mark, hem)


def _same_rows(review: Review, rows: RowPlan) -> Iterator[Way[ShadeSpec]]:
    """Take their skirt and their spacing, and leave the rest of the drop to the head."""
    if review.size is not None:
        count, head = _as_many_as_fit(review, review.size, rows)
        if count > 0:
            number = chosen("number of rows", count, Unit.COUNT)
            allowance = chosen("head allowance", head, Unit.LENGTH)
            yield by_change(
                review.spec,
                review.system,
                "Take the same skirt {2}, {0} rows, and a head allowance of {1}.",
                number,
                allowance,
                rows.skirt,
                design__row_count=count,
                design__skirt=rows.skirt.value,
                design__head_allowance=head,
            )
    yield from _by_the_group(review)
    yield by_hand("Or show the client that the folds do not line up.")


def _as_many_as_fit(review: Review, size: FinishedSize, rows: RowPlan) -> tuple[int, Length]:
    """Give the most rows at that spacing over that skirt, and the head allowance left."""
    least = least_head_allowance(review.order).value if review.order else ZERO
    spacing, room = rows.spacing.value, size.drop.value - rows.skirt.value
    count = int((room - least) / spacing - Fraction(1, 2))
    head = room - spacing * count - spacing / 2
    return count, max(review.marked(head, Rounding.MARK), ZERO)
