"""The cut plans as they are answered: whole millimetres, pieces and cuts in their order."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.cloth.finding.listing import cut_list
from foldwright.core.cloth.order import ClothPiece, ClothPlan, Comparison, Placement, Remnant
from foldwright.core.cloth.wording import gap_in_words
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding
from foldwright.work.cutting import ClothCut
from foldwright.work.job import JobHead
from foldwright.work.what_if import Change, Moved

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class PieceAnswer:
    """One piece to cut, all allowances in, as it lies unturned: its width across the roll."""

    piece: str
    shade: str
    room: str
    layer: str
    width_mm: int
    length_mm: int


@dataclass(frozen=True, kw_only=True, slots=True)
class PlacementAnswer:
    """Where a piece lies: along from the outer end, across from the left edge, face up.

    Its edges are given to the nearest millimetre, so that no two pieces overlap.
    """

    piece: str
    roll: str
    along_mm: int
    across_mm: int
    width_mm: int
    length_mm: int
    turned: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class CutLengthAnswer:
    """One length cut off over the full width; its marks are from the roll's outer end."""

    number: int
    roll: str
    start_mm: int
    length_mm: int
    start_in_repeat_mm: int | None
    left_on_roll_mm: int | None
    pieces: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class RollAnswer:
    """What a roll gives: used up to here, and bought where it is to buy."""

    roll: str
    lot: str
    in_hand: bool
    usable_width_mm: int
    used_mm: int
    bought_mm: int | None
    lost_to_repeat_mm: int
    lost_to_flaws_mm: int


@dataclass(frozen=True, kw_only=True, slots=True)
class RemnantAnswer:
    """A rectangle that is left over."""

    roll: str
    along_mm: int
    across_mm: int
    width_mm: int
    length_mm: int
    uses: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class ComparisonAnswer:
    """What the job takes by this plan, by two simpler ways, and at the very least."""

    plan_mm: int
    shade_by_shade_mm: int
    first_fit_mm: int
    bound_mm: int


@dataclass(frozen=True, kw_only=True, slots=True)
class EstimateAnswer:
    """What the trade's own rule orders, before any roll is known."""

    cuts: L
    needed: L
    ordered: L


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothPlanAnswer:
    """Where every piece of one cloth is cut, and how near that is to the least possible."""

    bought_mm: int
    bound_mm: int
    proven: bool
    cut_short: bool
    railroaded: bool
    said: str
    placements: tuple[PlacementAnswer, ...]
    cuts: tuple[CutLengthAnswer, ...]
    rolls: tuple[RollAnswer, ...]
    remnants: tuple[RemnantAnswer, ...]
    comparison: ComparisonAnswer | None


@dataclass(frozen=True, kw_only=True, slots=True)
class MovedAnswer:
    """One piece that lies elsewhere in another plan."""

    piece: str
    before: PlacementAnswer | None
    after: PlacementAnswer | None


@dataclass(frozen=True, kw_only=True, slots=True)
class ChangeAnswer:
    """What another plan changes."""

    longer_mm: int
    stays: int
    moved: tuple[MovedAnswer, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class WhatIfAnswer:
    """One cloth as it would be cut, and what that changes; without a plan the findings say why."""

    plan: ClothPlanAnswer | None
    change: ChangeAnswer | None
    findings: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothAnswer:
    """One cloth of a job: its pieces, its plan, the estimate, what is to be settled."""

    cloth: str
    pieces: tuple[PieceAnswer, ...]
    estimate: EstimateAnswer
    plan: ClothPlanAnswer | None
    remarks: tuple[str, ...]
    findings: tuple[Finding, ...]
    what_if: WhatIfAnswer | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class CutAnswer:
    """A job's cloths, cut; lengths in whole mm."""

    program_version: str
    job: JobHead
    cloths: tuple[ClothAnswer, ...]


def cloth_answer(cut: ClothCut, system: System, what_if: WhatIfAnswer | None) -> ClothAnswer:
    """Put one cloth into the shape in which it is answered."""
    yardage = cut.to_cut.yardage
    return ClothAnswer(
        cloth=cut.to_cut.title,
        pieces=tuple(_piece(piece) for piece in cut.to_cut.order.pieces),
        estimate=EstimateAnswer(cuts=yardage.cuts, needed=yardage.needed, ordered=yardage.ordered),
        plan=plan_answer(cut, system),
        remarks=cut.remarks(system),
        findings=cut.answer.findings,
        what_if=what_if,
    )


def what_if_answer(cut: ClothCut, change: Change | None, system: System) -> WhatIfAnswer:
    """Put what would be into the shape in which it is answered."""
    return WhatIfAnswer(
        plan=plan_answer(cut, system),
        change=None if change is None else _change(change),
        findings=cut.answer.findings,
    )


def plan_answer(cut: ClothCut, system: System) -> ClothPlanAnswer | None:
    """Put a plan into the shape in which it is answered; None where there is no plan."""
    plan = cut.plan
    if plan is None:
        return None
    return ClothPlanAnswer(
        bought_mm=_mm(plan.bought),
        bound_mm=_mm(plan.bound),
        proven=plan.proven,
        cut_short=plan.cut_short,
        railroaded=plan.railroaded,
        said=gap_in_words(plan, system),
        placements=tuple(_placement(place) for place in plan.placements),
        cuts=tuple(_cuts(cut, plan)),
        rolls=tuple(_rolls(cut, plan)),
        remnants=tuple(_remnant(left) for left in plan.remnants),
        comparison=None if plan.comparison is None else _comparison(plan.comparison),
    )


def _piece(piece: ClothPiece) -> PieceAnswer:
    return PieceAnswer(
        piece=piece.name,
        shade=piece.shade,
        room=piece.room,
        layer=piece.layer,
        width_mm=_mm(piece.width),
        length_mm=_mm(piece.length),
    )


def _placement(place: Placement) -> PlacementAnswer:
    return PlacementAnswer(
        piece=place.piece,
        roll=place.roll,
        along_mm=_mm(place.along),
        across_mm=_mm(place.across),
        width_mm=_mm(place.across + place.width) - _mm(place.across),
        length_mm=_mm(place.along + place.length) - _mm(place.along),
        turned=place.turned,
    )


def _cuts(cut: ClothCut, plan: ClothPlan) -> list[CutLengthAnswer]:
    return [
        CutLengthAnswer(
            number=each.number,
            roll=roll.use.name,
            start_mm=_mm(each.start),
            length_mm=_mm(each.length),
            start_in_repeat_mm=_mm_or_none(each.start_in_repeat),
            left_on_roll_mm=_mm_or_none(each.left_on_roll),
            pieces=tuple(piece.name for piece in each.pieces),
        )
        for roll in cut_list(plan, cut.to_cut.order)
        for each in roll.cuts
    ]


def _rolls(cut: ClothCut, plan: ClothPlan) -> list[RollAnswer]:
    return [
        RollAnswer(
            roll=roll.use.name,
            lot=roll.use.lot,
            in_hand=roll.in_hand,
            usable_width_mm=_mm(roll.use.usable_width),
            used_mm=_mm(roll.use.used),
            bought_mm=None if roll.in_hand else _mm(roll.use.bought),
            lost_to_repeat_mm=_mm(roll.lost_to_repeat),
            lost_to_flaws_mm=_mm(roll.lost_to_flaws),
        )
        for roll in cut_list(plan, cut.to_cut.order)
    ]


def _remnant(left: Remnant) -> RemnantAnswer:
    return RemnantAnswer(
        roll=left.roll,
        along_mm=_mm(left.along),
        across_mm=_mm(left.across),
        width_mm=_mm(left.width),
        length_mm=_mm(left.length),
        uses=left.uses,
    )


def _comparison(compared: Comparison) -> ComparisonAnswer:
    return ComparisonAnswer(
        plan_mm=_mm(compared.plan),
        shade_by_shade_mm=_mm(compared.shade_by_shade),
        first_fit_mm=_mm(compared.first_fit),
        bound_mm=_mm(compared.bound),
    )


def _change(change: Change) -> ChangeAnswer:
    return ChangeAnswer(
        longer_mm=_mm(change.longer),
        stays=change.stays,
        moved=tuple(_moved(each) for each in change.moved),
    )


def _moved(moved: Moved) -> MovedAnswer:
    before, after = moved.before, moved.after
    return MovedAnswer(
        piece=moved.piece,
        before=None if before is None else _placement(before),
        after=None if after is None else _placement(after),
    )


def _mm_or_none(length: Length | None) -> int | None:
    return None if length is None else _mm(length)


def _mm(length: Length) -> int:
    """Give whole millimetres; ties go up, so that pieces that touch go on touching."""
    return int((length.nanometres + 500_000) // 1_000_000)
