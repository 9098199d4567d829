"""Bench steps that cut and put together: board, brackets, tube, drive, clips, cords."""

from __future__ import annotations

from foldwright.core.facts.bench import COVER_ENDS, COVER_OVERLAP, EQUAL_CORDS
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.rig import cautions
from foldwright.core.rig.headrail import Step
from foldwright.core.rig.parts import Parts, listed, step
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied

L = Figure[Length]


def board(parts: Parts) -> Step:
    """Cut the board, and its cover where the section is known.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> board(PARTS).title
    'board'
    """
    cut, cover = "Cut the board to {0}.", _cover(parts)
    if cover:
        cut += " Cut its cover {1} by {2}, wrap it and staple it under."
    return step(
        "board",
        cut,
        parts.size.board_length,
        *cover,
        reason="The board is shorter than the shade, so that the cloth hides its ends.",
        caution=cautions.SAW,
    )


def _cover(parts: Parts) -> tuple[L, ...]:
    if parts.board is None:
        return ()
    thick = supplied("board thickness", parts.board.thickness, Unit.LENGTH, parts.board.name)
    deep = supplied("board depth", parts.board.depth, Unit.LENGTH, parts.board.name)
    around = derived(
        "board cover, width",
        (thick.value + deep.value) * 2 + COVER_OVERLAP.value,
        Unit.LENGTH,
        "Once round a board of {0} by {1}, and {2} of overlap.",
        deep,
        thick,
        COVER_OVERLAP,
        rounding=Rounding.CUT_OVERSIZE,
    )
    along = derived(
        "board cover, length",
        parts.size.board_length.value + COVER_ENDS.value,
        Unit.LENGTH,
        "The board of {0} and {1} for both ends.",
        parts.size.board_length,
        COVER_ENDS,
        rounding=Rounding.CUT_OVERSIZE,
    )
    return around, along


def head_tape(parts: Parts) -> Step | None:
    """Put the hooks of a tape on the board that hold the head of the shade.

    Takes: the parts.

    Gives: the step, or None where the head is stapled.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> head_tape(PARTS) is None
    True
    """
    if parts.tape is None:
        return None
    edge = parts.cloth_edge.value
    return step(
        "tape at the head",
        f"Staple the hooked tape, {{0}} wide and {{1}} long, to the {edge} edge of the covered"
        " board, flush with its top.",
        parts.tape.width,
        parts.tape.length,
        reason="Glue alone lets go: staples every inch or so hold the tape on the board.",
    )


def brackets(parts: Parts) -> Step:
    """Mark the end brackets.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> brackets(PARTS).title
    'brackets'
    """
    return step(
        "brackets",
        "From the board's left end, seen from the back, mark the bracket centres at {0} and {1}."
        " Pilot and screw.",
        *parts.place.bracket_marks,
        reason="Both marks from one end: errors do not add up, and the tube is cut to fit between.",
        caution=cautions.FIXINGS,
    )


def cradles(parts: Parts) -> Step | None:
    """Mark the cradles, where the tube needs them.

    Takes: the parts.

    Gives: the step, or None without a cradle.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> cradles(PARTS) is None
    True
    """
    if not parts.cradles:
        return None
    return step(
        "cradles",
        f"Mark cradle centres at {listed(0, len(parts.cradles))} from the same end.",
        *parts.cradles,
        reason="The tube sags too much from end to end; they stand where no clip or wrap passes.",
        caution=cautions.FIXINGS,
    )


def tube(parts: Parts) -> Step:
    """Cut the tube.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> tube(PARTS).title
    'tube'
    """
    return step(
        "tube",
        "Cut the tube to {0}, not a hair longer. It starts {1} from the board's left end.",
        parts.place.cut,
        parts.place.start,
        reason="The board less what this type of bracket takes; a tube too long binds.",
        caution=cautions.SAW,
    )


def spring(parts: Parts) -> Step:
    """Put the spring in at its end.

    Takes: the parts.

    Gives: the step.

    Source: derived here.

    >>> from foldwright.core.rig.example import PARTS
    >>> spring(PARTS).title
    'spring'
    """
    return step(
        "spring",
        "Slide the slack spring into the {0} end, as seen from the room. Looking at that end"
        f" the tube turns {{1}} while the shade rises; the {parts.many} leave on the {{2}} side.",
        parts.end.side_figure,
        parts.end.raising_figure,
        parts.end.cord_side,
        reason="At the other end the same coil would unwind as the shade goes down.",
        caution=cautions.WOUND_SPRING,
    )


def clutch(parts: Parts) -> Step:
    """Put the clutch in at its end.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> clutch(PARTS).title
    'clutch'
    """
    return step(
        "clutch",
        "Press the clutch into the {0} end, as seen from the room. Looking at that end the tube"
        " turns {1} while the shade rises. It must pass {2}.",
        parts.end.side_figure,
        parts.end.raising_figure,
        parts.balance.torque_needed,
        reason="The control is where the client asked for it, or at the right.",
        caution=cautions.CHAIN,
    )


def motor(parts: Parts) -> Step:
    """Put the motor in at its end.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> motor(PARTS).title
    'motor'
    """
    return step(
        "motor",
        "Slide the motor into the {0} end, as seen from the room, its crown and drive wheel clear"
        " of every clip. Looking at that end the tube turns {1} while the shade rises. It must"
        " turn at least {2}.",
        parts.end.side_figure,
        parts.end.raising_figure,
        parts.balance.motor_torque or parts.balance.torque_needed,
        reason="The motor turns the tube for all columns alike.",
        caution=cautions.MAINS,
    )


def clips(parts: Parts) -> Step:
    """Clip the cords or tapes to the tube.

    Takes: the parts.

    Gives: the step, with one mark for each column.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> clips(PARTS).title
    'clips'
    """
    marks = tuple(line.clip for line in parts.lines)
    return step(
        "clips",
        f"Draw one straight line along the tube. On it, from the tube's left end seen from the"
        f" back, fix a clip at {listed(0, len(marks))}.",
        *marks,
        reason=_why_there(parts),
    )


def _why_there(parts: Parts) -> str:
    if parts.wraps.is_tape:
        return (
            "Every tape starts at the same rotation, or one winds a thicker roll than its"
            " neighbour and the bar tilts; a tape does not walk, so it sits on its column."
        )
    return (
        "The wraps walk from the clip towards the column; sides alternate so that the sideways"
        " pulls cancel, and one line keeps all cords at one rotation."
    )


def cut_cords(parts: Parts) -> Step:
    """Cut all cords or tapes alike.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> cut_cords(PARTS).title
    'cords'
    """
    count = derived(
        f"number of {parts.many}",
        len(parts.lines),
        Unit.COUNT,
        "One for each column.",
        *(line.column for line in parts.lines),
    )
    return step(
        parts.many,
        f"Cut {{0}} {parts.many} to {{1}}, alike within {{2}}: all on one gauge.",
        count,
        parts.lines[0].cut_length,
        EQUAL_CORDS,
        reason=f"{parts.many.capitalize()} that differ by more than a little hang the bar out of"
        " level: they are cut and marked together before they are mounted.",
    )


def thread(parts: Parts) -> Step:
    """Thread the cords through their rings.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> thread(PARTS).title
    'thread'
    """
    return step(
        "thread",
        f"Thread each {parts.wraps.noun} up its column through every ring and tie it to the"
        " lowest, with {0} left for the knot and its adjustment.",
        parts.habits.tie_off,
        reason="The lowest ring carries the bar; the tail is for levelling and is cut off last.",
        caution=cautions.CORDS,
    )
