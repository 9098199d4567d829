"""Match the shades of a group: one hem line, row lines at one height, one place of the motif."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations

from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.groups.hung import Hung, apart_at_most
from foldwright.core.check.groups.levelling import Lines, Meeting, level_rows
from foldwright.core.check.groups.member import Member, agree_on_skirt, member_of
from foldwright.core.check.groups.telling import tell_match
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.design.choices import Choices
from foldwright.core.design.laying_out import draw_layout
from foldwright.core.facts.order_limits import LINED_UP
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Change, Remedy
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import as_typed

L = Figure[Length]
NO_SPACING = "No spacing of the rows suits all of them; leave one out, or match them by the head."
MATCHED = (
    "asked.drop",
    "asked.given_by",
    "design.row_count",
    "design.skirt",
    "design.head_allowance",
    "cutting.motif_above_hem",
)
"""The fields of a shade that matching may type."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Matched:
    """One shade of a group as it would hang, what it gives up, and what to type for it."""

    now: Hung
    then: Hung
    way: Remedy  # no changes: it hangs so already


@dataclass(frozen=True, kw_only=True, slots=True)
class Matching:
    """A group and how its shades would match; empty with what is missing."""

    group: ShadeGroup
    shades: tuple[Matched, ...] = ()
    spacing: L | None = None
    apart: L | None = None  # rows that should be level, at most, once it is matched
    missing: tuple[str, ...] = ()

    @property
    def stands(self) -> bool:
        """Tell whether every shade hangs so already."""
        return bool(self.shades) and not any(shade.way.changes for shade in self.shades)


def match_group(group: ShadeGroup, reviews: tuple[Review, ...], system: System) -> Matching:
    """Match the shades of a group by what they can all give.

    Takes: the group; its planned shades, with the rules they were planned by; the system whose
    marks the row spacing lies on.

    Gives: for each shade rows, skirt and head that put its rows on lines common to all, with
    one hem line unless each keeps its own; what is missing where something is.

    Holds for: flat, relaxed and looped shades whose heights above the floor are measured.

    Source: common practice (hems and rows of neighbours in one line); derived here.

    >>> match_group(ShadeGroup(name="Front", shades=()), (), System.INCH).missing
    ('A group holds two shades at least.',)
    """
    if len(reviews) <= 1:
        return Matching(group=group, missing=("A group holds two shades at least.",))
    found = tuple(member_of(review) for review in reviews)
    missing = tuple(each for each in found if isinstance(each, str))
    members = tuple(each for each in found if isinstance(each, Member))
    if missing:
        return Matching(group=group, missing=missing)
    agreed = agree_on_skirt(members)
    hung = agreed if group.own_hems else _to_one_hem(agreed)
    lines = level_rows(hung, group.rows_from, system)
    if lines is None:
        return Matching(group=group, missing=(NO_SPACING,))
    return _matching(group, members, lines)


def _to_one_hem(members: tuple[Member, ...]) -> tuple[Member, ...]:
    """End all shades where the highest ends: none then hangs lower than its window lets it."""
    hem = max(member.hem.value for member in members)
    return tuple(_hung_to(member, hem) for member in members)


def _hung_to(member: Member, hem: Length) -> Member:
    if abs(member.hem.value - hem) <= LINED_UP.value:
        return member
    return member.hung_to(hem) or member


def _matching(group: ShadeGroup, members: tuple[Member, ...], lines: Lines) -> Matching:
    lead = _lead(members)
    matched = tuple(
        _matched(member, meeting, None if group.own_hems else lead)
        for member, meeting in zip(members, lines.meetings, strict=True)
    )
    spacing = chosen("row spacing of the group", lines.spacing, Unit.LENGTH)
    return Matching(group=group, shades=matched, spacing=spacing, apart=_apart(matched))


def _lead(members: tuple[Member, ...]) -> ShadeSpec | None:
    """Give the first shade whose motif has its place, for the others to follow."""
    specs = (member.review.spec for member in members)
    return next((spec for spec in specs if spec.cutting.motif_above_hem is not None), None)


def _matched(member: Member, meeting: Meeting, lead: ShadeSpec | None) -> Matched:
    design = meeting.order.design
    then, now = _hung(meeting.member, design), _hung(member, member.order.design)
    if _alike(now, then):
        design = member.order.design
    spec = _spec(member, meeting.member, design, lead)
    sentence, figures = tell_match(now, then, meeting)
    changes = tuple(_changes(member.review, spec))
    return Matched(
        now=now, then=then, way=Remedy(sentence=sentence, figures=figures, changes=changes)
    )


def _alike(now: Hung, then: Hung) -> bool:
    """Tell whether nothing that is typed would be seen."""
    ours = (now.rows, now.layout.rows.skirt.value, now.layout.rows.head_allowance.value)
    return ours == (then.rows, then.layout.rows.skirt.value, then.layout.rows.head_allowance.value)


def _hung(member: Member, design: Choices) -> Hung:
    order = replace(member.order, design=design)
    return Hung(
        tag=member.tag,
        width=order.width,
        drop=order.drop,
        top=member.top,
        hem=member.hem,
        layout=draw_layout(order),
    )


def _spec(member: Member, hung: Member, design: Choices, lead: ShadeSpec | None) -> ShadeSpec:
    """Give the shade as it would be typed."""
    spec = member.review.spec
    cutting = spec.cutting
    if lead is not None and lead.materials.face == spec.materials.face:
        cutting = replace(cutting, motif_above_hem=lead.cutting.motif_above_hem)
    return replace(spec, design=design, asked=hung.asked, cutting=cutting)


def _changes(review: Review, spec: ShadeSpec) -> Iterator[Change]:
    for path in MATCHED:
        room, _, name = path.partition(".")
        typed, wanted = (getattr(getattr(each, room), name) for each in (review.spec, spec))
        if typed != wanted:
            yield Change(path=path, text=as_typed(wanted, review.system))


def _apart(matched: tuple[Matched, ...]) -> L:
    pairs = combinations([shade.then for shade in matched], 2)
    worst = max((apart_at_most(one, other) for one, other in pairs), default=ZERO)
    because = "The farthest that a row lies from its neighbours', as they are typed on marks."
    return derived("rows apart", worst, Unit.LENGTH, because)
