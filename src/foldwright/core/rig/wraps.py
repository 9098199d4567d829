"""The wraps on the tube: how many, how wide, how far they walk, and the length to cut."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.design.layout import Layout
from foldwright.core.facts.bench import LEAST_SAFETY_WRAPS
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Board, Bracket, Cord, Tape, Tube
from foldwright.core.lift.winding import CordWinding, TapeWinding
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, fact, supplied
from foldwright.core.why.source import Source, Status

L = Figure[Length]
N = Figure[float]

CAPSTAN = Source(id="capstan-article", clause="table of ratios")


@dataclass(frozen=True, kw_only=True, slots=True)
class Wraps:
    """What one cord or tape puts on the tube."""

    noun: str  # "cord" or "tape"
    safety: N
    travel: N
    step: L  # along the tube for each wrap; nothing for a tape
    walk: L  # over the travel
    width: L  # of all wraps, fully raised
    safety_length: L  # wound on with the shade fully down

    @property
    def is_tape(self) -> bool:
        """Tell a tape, which winds on itself, from a cord, which walks."""
        return self.noun == "tape"

    @property
    def culprit(self) -> str:
        """Give what on the tube tilts a bar."""
        return "a start at another rotation" if self.is_tape else "a wrap that climbed"


def count_wraps(tube: Tube, line: Cord | Tape, travel: N, habits: Habits) -> Wraps:
    """Count the wraps of one column and the room they take.

    Takes: the tube; the cord or tape; turns from fully down to the up-stop; the habits.

    Gives: safety and travel wraps, walk, wound width and the length of the safety wraps.

    Holds for: cord wrap beside wrap in one layer; tape flat on itself.

    Source: derived here.

    >>> from foldwright.core.rig import example
    >>> wraps = count_wraps(
    ...     example.TUBE, example.CORD, example.BALANCE.travel_turns, example.ORDER.habits
    ... )
    >>> round(wraps.width.value.in_millimetres, 3)
    20.113
    """
    if isinstance(line, Tape):
        return _tape_wraps(tube, line, travel, habits)
    return _cord_wraps(tube, line, travel, habits)


def _cord_wraps(tube: Tube, cord: Cord, travel: N, habits: Habits) -> Wraps:
    step = supplied(
        "cord as wound",
        cord.diameter,
        Unit.LENGTH,
        cord.name,
        low=cord.diameter_low,
        high=cord.diameter_high,
    )
    safety = habits.safety_wraps
    return Wraps(
        noun="cord",
        safety=safety,
        travel=travel,
        step=step,
        walk=_side_by_side("walk of the wraps", step, travel),
        width=_side_by_side("width of the wraps", step, safety, travel),
        safety_length=_safety_length(tube, step, safety),
    )


def _side_by_side(name: str, step: L, *turns: N) -> L:
    """Lay wraps side by side; the range of the cord's thickness goes with them."""
    count = sum(figure.value for figure in turns)
    which = "{1} of safety and {2} of travel" if len(turns) > 1 else "{1} of travel"

    def wide(thickness: Length | None) -> Length | None:
        return None if thickness is None else Length.metres(thickness.in_metres * count)

    return derived(
        name,
        Length.metres(step.value.in_metres * count),
        Unit.LENGTH,
        f"{which}, wrap beside wrap, of a cord {{0}} thick.",
        step,
        *turns,
        low=wide(step.low),
        high=wide(step.high),
    )


def _safety_length(tube: Tube, step: L, safety: N) -> L:
    winding = CordWinding(
        tube_radius_m=tube.outside.in_metres / 2,
        cord_diameter_m=step.value.in_metres,
        safety_wraps=safety.value,
    )
    return derived(
        "cord in the safety wraps",
        Length.metres(float(winding.length(safety.value))),
        Unit.LENGTH,
        "{0} round a tube of {1}, measured at the middle of a cord of {2}.",
        safety,
        supplied("tube diameter", tube.outside, Unit.LENGTH, tube.name),
        step,
    )


def _tape_wraps(tube: Tube, tape: Tape, travel: N, habits: Habits) -> Wraps:
    safety = habits.safety_wraps
    thickness = supplied("tape thickness", tape.thickness, Unit.LENGTH, tape.name)
    winding = TapeWinding(
        tube_radius_m=tube.outside.in_metres / 2,
        tape_thickness_m=tape.thickness.in_metres,
        tape_width_m=tape.width.in_metres,
        safety_wraps=safety.value,
    )
    still = fact(
        "walk of a tape",
        ZERO,
        Unit.LENGTH,
        "A tape winds on itself, so it does not walk along the tube.",
        Status.PRACTICE,
    )
    return Wraps(
        noun="tape",
        safety=safety,
        travel=travel,
        step=still,
        walk=still,
        width=supplied("tape width", tape.width, Unit.LENGTH, tape.name),
        safety_length=derived(
            "tape in the safety wraps",
            Length.metres(float(winding.length(safety.value))),
            Unit.LENGTH,
            "{0} round a tube of {1}, each lying on a tape of {2}.",
            safety,
            supplied("tube diameter", tube.outside, Unit.LENGTH, tube.name),
            thickness,
        ),
    )


def tube_below_top(bracket: Bracket) -> L:
    """Give the depth of the tube's centre below the top of the board.

    Takes: the pair of brackets.

    Gives: the depth at which they hold the tube.

    Source: supplier's sheet.

    >>> from foldwright.core.rig import example
    >>> tube_below_top(example.BRACKET).value.in_millimetres
    27.0
    """
    return supplied(
        "tube centre below the top", bracket.tube_centre_below_board, Unit.LENGTH, bracket.name
    )


def board_depth(board: Board | None) -> L | None:
    """Give the depth of the board, where it is chosen.

    Takes: the board or None.

    Gives: its depth as the shop's list has it.

    Source: supplier's sheet.

    >>> board_depth(None) is None
    True
    """
    if board is None:
        return None
    return supplied("board depth", board.depth, Unit.LENGTH, board.name)


def cut_length(wraps: Wraps, size: FinishedSize, layout: Layout, depth: L, habits: Habits) -> L:
    """Give the length to which every cord or tape of the shade is cut.

    Takes: the wraps; the finished drop; the rows; the tube's depth below the top; the
    habits with the length for tying off.

    Gives: one length for all columns, rounded up: it is cut oversize.

    Holds for: cords that hang straight; the lean to the clip is inside the tie-off.

    Source: common practice.

    >>> from foldwright.core.rig.example import LAYOUT, ORDER, PARTS, SIZE
    >>> cut = cut_length(PARTS.wraps, SIZE, LAYOUT, PARTS.depth, ORDER.habits)
    >>> round(cut.value.in_millimetres, 1)
    2036.8
    """
    drop = derived(
        "tube to bottom ring",
        size.drop.value - layout.rows.first_row.value - depth.value,
        Unit.LENGTH,
        "The drop of {0} less the {1} below the bottom ring and the {2} above the tube's centre.",
        size.drop,
        layout.rows.first_row,
        depth,
    )
    return derived(
        f"{wraps.noun} cut length",
        drop.value + wraps.safety_length.value + habits.tie_off.value,
        Unit.LENGTH,
        f"{{0}} from the tube to the bottom ring with the shade down, {{1}} for the safety wraps"
        f" and {{2}} to tie off; every {wraps.noun} of a shade is cut alike.",
        drop,
        wraps.safety_length,
        habits.tie_off,
        rounding=Rounding.CUT_OVERSIZE,
    )


def too_few_safety_wraps(wraps: Wraps) -> tuple[Finding, ...]:
    """Stop when fewer than three wraps stay on the tube at full drop.

    Takes: the wraps.

    Gives: a finding, or nothing.

    Source: common practice.

    >>> from foldwright.core.rig import example
    >>> too_few_safety_wraps(example.PARTS.wraps)
    ()
    """
    if wraps.safety.value >= LEAST_SAFETY_WRAPS.value:
        return ()
    return (
        Finding(
            id="rig.safety-wraps",
            severity=Severity.STOP,
            stage=Stage.HEADRAIL,
            sentence=f"Only {{0}} stay on the tube at full drop: the {wraps.noun} can pull"
            " its clip out and drop the bar. At least {1} must stay.",
            figures=(wraps.safety, LEAST_SAFETY_WRAPS),
            remedies=(
                Remedy(
                    sentence="Set the shop's habit of safety wraps to {0}.",
                    figures=(LEAST_SAFETY_WRAPS,),
                ),
            ),
            source=CAPSTAN,
        ),
    )
