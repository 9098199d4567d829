"""What to say when clips, wraps and brackets want the same piece of the tube."""

from __future__ import annotations

import math

from foldwright.core.design.layout import ColumnPlan
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Tube
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.rig.clips import Stretch, needed_width, wanted_offset
from foldwright.core.rig.tube import TubePlace
from foldwright.core.rig.wraps import Wraps
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, supplied

L = Figure[Length]


def whole_millimetres(length: Length) -> str:
    """Write a length for a field of the job file, rounded up to the millimetre.

    Takes: a length.

    Gives: text with its unit, the same in a job in inches.

    Source: derived here.

    >>> whole_millimetres(Length.mm("50.2"))
    '51 mm'
    """
    return f"{math.ceil(length.in_millimetres)} mm"


def at_the_bracket(
    columns: ColumnPlan, taken: tuple[Stretch, ...], place: TubePlace
) -> tuple[Finding, ...]:
    """Stop when the outermost wraps reach into a bracket.

    Takes: the columns of the layout; the pieces of tube taken; the tube's place.

    Gives: a finding whose remedy is the edge distance that clears the bracket, or nothing.

    Source: common practice: half the band and the bracket keep clear of a column.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS
    >>> at_the_bracket(LAYOUT.columns, PARTS.taken, PARTS.place)
    ()
    """
    reach = place.free_from.value - min(stretch.start for stretch in taken)
    other = max(stretch.end for stretch in taken) - place.free_to.value
    short = max(reach, other)
    if short <= ZERO:
        return ()
    needed = derived(
        "edge distance that clears the bracket",
        columns.edge_distance.value + short,
        Unit.LENGTH,
        "The edge distance of {0}, and as much again as the wraps reach into the bracket.",
        columns.edge_distance,
        rounding=Rounding.CUT_OVERSIZE,
    )
    return (
        Finding(
            id="rig.wraps-at-bracket",
            severity=Severity.STOP,
            stage=Stage.HEADRAIL,
            sentence="The outermost columns stand {0} from the edge: their wraps reach into the"
            " end brackets and chafe. They clear them from {1}.",
            figures=(columns.edge_distance, needed),
            remedies=(
                Remedy(
                    sentence="Make the edge distance {0}.",
                    figures=(needed,),
                    changes=(
                        Change(path="design.edge_distance", text=whole_millimetres(needed.value)),
                    ),
                ),
                Remedy(sentence="Take a bracket that reaches less far along the board."),
            ),
        ),
    )


def between_columns(
    columns: ColumnPlan, size: FinishedSize, wraps: Wraps, room: L, habits: Habits
) -> tuple[Finding, ...]:
    """Stop when facing wraps meet; note it when clips must stand nearer than usual.

    Takes: the columns; the finished size; the wraps; the room of the tightest column;
    the shop's habits.

    Gives: a finding or nothing; nothing for tapes.

    Source: derived here; the usual distance is common practice.

    >>> from foldwright.core.rig.example import LAYOUT, ORDER, PARTS, SIZE
    >>> between_columns(LAYOUT.columns, SIZE, PARTS.wraps, PARTS.room, ORDER.habits)
    ()
    """
    if wraps.is_tape:
        return ()
    if room.value < needed_width(wraps):
        return (_columns_too_close(columns, size, wraps, room, habits),)
    if room.value < habits.clip_nearest.value:
        return (_clips_nearer(wraps, room, habits),)
    return ()


def _columns_too_close(
    columns: ColumnPlan, size: FinishedSize, wraps: Wraps, room: L, habits: Habits
) -> Finding:
    fewer = _columns_with_room(columns, size, wraps, habits)
    remedies = [
        Remedy(sentence="Take a thinner cord, or a tape, which does not walk along the tube.")
    ]
    if fewer is not None:
        change = Change(path="design.column_count", text=str(fewer.value))
        remedies.insert(0, Remedy(sentence="Use {0} columns.", figures=(fewer,), changes=(change,)))
    return Finding(
        id="rig.columns-too-close",
        severity=Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence="Each clip has {0} of room beside its column, but the wraps are {1} wide: with"
        " columns {2} apart the cords climb on each other.",
        figures=(room, wraps.width, columns.pitch),
        remedies=tuple(remedies),
    )


def _columns_with_room(
    columns: ColumnPlan, size: FinishedSize, wraps: Wraps, habits: Habits
) -> Figure[int] | None:
    pitch = (needed_width(wraps) + habits.clip_length.value) * 2
    between = size.width.value - columns.edge_distance.value * 2
    count = math.floor(between / pitch) + 1
    if not 1 < count < columns.count.value:
        return None
    return derived(
        "columns with room for their wraps",
        count,
        Unit.COUNT,
        "Two facing clips of {1} and their wraps of {0} in every bay of a shade {2} wide.",
        wraps.width,
        habits.clip_length,
        size.width,
    )


def _clips_nearer(wraps: Wraps, room: L, habits: Habits) -> Finding:
    return Finding(
        id="rig.clips-nearer-than-usual",
        severity=Severity.NOTE,
        stage=Stage.HEADRAIL,
        sentence="The columns leave {0} beside each for its clip, less than the trade's {1}. The"
        " wraps need {2} side by side, so they fit if they lie tight: watch them for ten cycles.",
        figures=(room, habits.clip_nearest, wraps.width),
    )


def longest_drop(wraps: Wraps, tube: Tube, size: FinishedSize, travel: L, habits: Habits) -> L:
    """Give the finished drop at which the clip reaches the trade's farthest distance.

    Takes: the wraps of a cord; the tube; the finished size; the raise of the lowest ring
    row; the shop's habits.

    Gives: the drop; what this shade does not raise (skirt and head) is taken along.

    Holds for: cords; a tape does not walk.

    Source: derived here.

    >>> from foldwright.core.rig.example import ORDER, PARTS, SIZE, TUBE
    >>> served = longest_drop(PARTS.wraps, TUBE, SIZE, PARTS.travel, ORDER.habits)
    >>> round(served.value.in_millimetres)
    2403
    """
    reached = Length.metres(travel.value.in_metres * _reach(wraps, habits))
    drop = size.drop.value - travel.value + reached
    diameter = supplied("tube diameter", tube.outside, Unit.LENGTH, tube.name)
    return derived(
        "drop that this tube serves",
        drop,
        Unit.LENGTH,
        "On a tube of {0} a cord {1} thick walks until its clip stands at the trade's farthest"
        " {2}; what hangs below and above the raise of {3} comes on top.",
        diameter,
        wraps.step,
        habits.clip_farthest,
        travel,
    )


def _reach(wraps: Wraps, habits: Habits) -> float:
    """Give how many times this travel the clips could serve."""
    spare = habits.clip_farthest.value - habits.clip_nearest.value
    return spare.in_metres / wraps.walk.value.in_metres


def beyond_the_tube(
    wraps: Wraps, tube: Tube, served: L | None, habits: Habits
) -> tuple[Finding, ...]:
    """Say so when the drop is longer than the tube serves with clips where the trade has them.

    Takes: the wraps; the tube; the drop it serves, None for a tape; the shop's habits.

    Gives: a note, a stop where the wraps would even pass their column, or nothing.

    Source: common practice for the farthest clip; the tube that serves is derived here.

    >>> from foldwright.core.rig.example import ORDER, PARTS, SIZE, TUBE
    >>> served = longest_drop(PARTS.wraps, TUBE, SIZE, PARTS.travel, ORDER.habits)
    >>> beyond_the_tube(PARTS.wraps, TUBE, served, ORDER.habits)
    ()
    """
    wanted = wanted_offset(wraps, habits)
    if served is None or wanted.value <= habits.clip_farthest.value:
        return ()
    passes = needed_width(wraps) > habits.clip_farthest.value
    larger = _larger_tube(wraps, tube, habits)
    finding = Finding(
        id="rig.drop-beyond-tube",
        severity=Severity.STOP if passes else Severity.NOTE,
        stage=Stage.HEADRAIL,
        sentence="The clips want to stand {0} beside their columns, the trade's farthest is {1}:"
        " with this cord the tube of {3} serves drops to about {2}.",
        figures=(wanted, habits.clip_farthest, served, larger.inputs[0]),
        remedies=(
            Remedy(sentence="Take a tube of at least {0}.", figures=(larger,)),
            Remedy(sentence="Lift by tape, which does not walk along the tube."),
        ),
    )
    return (finding,)


def _larger_tube(wraps: Wraps, tube: Tube, habits: Habits) -> L:
    diameter = supplied("tube diameter", tube.outside, Unit.LENGTH, tube.name)
    cord = wraps.step.value.in_metres
    needed = (tube.outside.in_metres + cord) / _reach(wraps, habits) - cord
    return derived(
        "tube that serves this drop",
        Length.metres(needed),
        Unit.LENGTH,
        "The tube of {0} enlarged until the wraps walk no farther than from {1} to {2}.",
        diameter,
        habits.clip_nearest,
        habits.clip_farthest,
        rounding=Rounding.CUT_OVERSIZE,
    )
