"""A cut plan in plain lines, in the order of the table."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.cloth.finding.listing import Cut, CutPiece, RollCuts, cut_list
from foldwright.core.cloth.order import ClothPlan, Placement
from foldwright.core.cloth.wording import comparison_rows, gap_in_words
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_cloth, print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Finding
from foldwright.core.why.telling import fill
from foldwright.work.cutting import ClothCut
from foldwright.work.what_if import Change, Moved


def cloth_lines(cut: ClothCut, system: System) -> Iterator[str]:
    """Give one cloth in lines: what it takes, its cuts, what is left, and the proof."""
    count = len(cut.to_cut.order.pieces)
    ordered = print_cloth(cut.to_cut.yardage.ordered.value, system)
    yield f"{cut.to_cut.title}: {'1 piece' if count == 1 else f'{count} pieces'}"
    yield f"  by the trade's rule, before any roll is known: {ordered}"
    yield from _findings(cut.to_settle, system)
    if cut.plan is not None:
        yield from _plan_lines(cut, cut.plan, system)
    yield from (f"  {remark}" for remark in cut.remarks(system))


def _findings(findings: tuple[Finding, ...], system: System) -> Iterator[str]:
    for finding in findings:
        sentence = fill(finding.sentence, finding.figures, system)
        remedies = " ".join(fill(each.sentence, each.figures, system) for each in finding.remedies)
        yield f"  {finding.severity.value.upper()}: {sentence} {remedies}"


def _plan_lines(cut: ClothCut, plan: ClothPlan, system: System) -> Iterator[str]:
    yield f"  {gap_in_words(plan, system)}" + (" The cloth is turned." if plan.railroaded else "")
    for roll in cut_list(plan, cut.to_cut.order):
        yield from _roll_lines(roll, system)
    for name, length, saved in comparison_rows(plan, system):
        yield f"  {name}: {length}" + (f", {saved}" if saved else "")


def _roll_lines(roll: RollCuts, system: System) -> Iterator[str]:
    name = f"Roll {roll.use.name}" if roll.in_hand else "To buy"
    bought = roll.use.used if roll.in_hand else roll.use.bought
    yield f"  {name}: {print_cloth(bought, system)}"
    for cut in roll.cuts:
        yield f"    {_cut_line(cut, system)}"
    for left in roll.worth_keeping:
        size = f"{_print(left.width, system)} by {_print(left.length, system)}"
        uses = f", large enough for {', '.join(left.uses)}" if left.uses else ""
        place = f"{_print(left.along, system)}, {_print(left.across, system)} across"
        yield f"    left at {place}: {size}{uses}"


def _cut_line(cut: Cut, system: System) -> str:
    marks = f"from {_print(cut.start, system)} to {_print(cut.end, system)}"
    begins = cut.start_in_repeat
    repeat = "" if begins is None else f", {_print(begins, system)} into the repeat"
    pieces = "; ".join(_piece(piece, system) for piece in cut.pieces)
    left = "" if cut.left_on_roll is None else f"; {_print(cut.left_on_roll, system)} left"
    return f"{cut.number}. {marks}{repeat}: {pieces}{left}"


def _piece(piece: CutPiece, system: System) -> str:
    rip = f"{_print(piece.rip_from, system)} to {_print(piece.rip_to, system)} across"
    return f"{piece.name} {rip}" + (", turned" if piece.turned else "")


def change_lines(other: ClothCut, change: Change | None, system: System) -> Iterator[str]:
    """Give what would be in lines: the length, and every piece that moves."""
    yield from (line.strip() for line in _findings(other.to_settle, system))
    if other.plan is None or change is None:
        return
    yield f"What if: {gap_in_words(other.plan, system)} {_difference(change.longer, system)}"
    for moved in change.moved:
        yield f"  {_moved(moved, system)}"
    if change.stays:
        yield f"  {change.stays} of the pieces stay where they are."


def _difference(longer: Length, system: System) -> str:
    if not longer:
        return "As much as before."
    size = print_cloth(abs(longer), system)
    return f"{size} {'more' if longer.nanometres > 0 else 'less'} than before."


def _moved(moved: Moved, system: System) -> str:
    places = [
        "not cut" if place is None else _place(place, system)
        for place in (moved.before, moved.after)
    ]
    return f"{moved.piece} moves: {places[0]} before, {places[1]} then."


def _place(place: Placement, system: System) -> str:
    return f"at {_print(place.along, system)}, {_print(place.across, system)} across"


def _print(length: Length, system: System) -> str:
    return print_length(length, system)
