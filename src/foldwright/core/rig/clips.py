"""Where each cord is clipped to the tube, and the band that its wraps walk in.

The clip stands beside its ring column and the wraps walk from it towards the column.
Sides alternate so that the sideways pulls of neighbours cancel; the outermost clips stand
inward, where the tube has room. All is seen from the back, from the tube's left end.
"""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.design.layout import ColumnPlan
from foldwright.core.facts.habits import Habits
from foldwright.core.measure.opening import Side
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.rig.headrail import CordLine
from foldwright.core.rig.tube import TubePlace
from foldwright.core.rig.wraps import Wraps
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact
from foldwright.core.why.source import Status

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class Stretch:
    """A piece of the tube, from its left end."""

    start: Length
    end: Length

    def overlaps(self, other: Stretch) -> bool:
        """Tell whether two pieces share more than a point."""
        return self.start < other.end and other.start < self.end


def clip_sides(count: int) -> tuple[Side, ...]:
    """Give the side of its column on which each clip stands, seen from the back.

    Takes: the number of columns.

    Gives: one side for each, left to right: outermost inward, alternating from both ends.
    The middle column of an odd number has no mirror image and goes on alternating from
    the left, so that it and one neighbour stand alike.

    Source: common practice for the alternating; derived here for the ends.

    >>> [side.value for side in clip_sides(4)]
    ['right', 'left', 'right', 'left']
    >>> [side.value for side in clip_sides(3)]
    ['right', 'left', 'left']
    """
    return tuple(_side_at(place, count) for place in range(count))


def _side_at(place: int, count: int) -> Side:
    from_right = count - 1 - place
    if place <= from_right:
        return Side.RIGHT if place % 2 == 0 else Side.LEFT
    return Side.LEFT if from_right % 2 == 0 else Side.RIGHT


def wanted_offset(wraps: Wraps, habits: Habits) -> L:
    """Give the distance from column to clip that the drop asks for, room or no room.

    Takes: the wraps; the shop's nearest and farthest clip.

    Gives: the nearest clip and the walk of the wraps on top of it, so that longer drops
    take the larger figure.

    Source: common practice for the two ends; derived here for what lies between.

    >>> from foldwright.core.rig import example
    >>> wanted = wanted_offset(example.PARTS.wraps, example.ORDER.habits)
    >>> round(wanted.value.in_millimetres, 1)
    65.9
    """
    return derived(
        "clip beside its column, as the drop asks",
        habits.clip_nearest.value + wraps.walk.value,
        Unit.LENGTH,
        "The nearest clip of {0} and the {1} that the wraps walk: the longer the drop, the"
        " farther the clip.",
        habits.clip_nearest,
        wraps.walk,
    )


def clip_offset(wraps: Wraps, room: L, habits: Habits) -> L:
    """Choose the distance from column to clip for all cords of the shade.

    Takes: the wraps; the room that the tightest column has; the shop's habits.

    Gives: what the drop asks for, but no farther than the farthest clip, nor beyond the
    room, nor nearer than the wraps are wide; nothing for a tape.

    Holds for: cords; whether the room suffices is told by the findings.

    Source: common practice; the least is derived here.

    >>> from foldwright.core.rig.example import ORDER, PARTS
    >>> offset = clip_offset(PARTS.wraps, PARTS.room, ORDER.habits)
    >>> round(offset.value.in_millimetres, 1)
    65.9
    """
    if wraps.is_tape:
        return fact(
            "clip beside its column",
            ZERO,
            Unit.LENGTH,
            "A tape winds on itself, so it is clipped on its own column.",
            Status.PRACTICE,
        )
    wanted = wanted_offset(wraps, habits)
    usual = min(wanted.value, habits.clip_farthest.value, room.value)
    return derived(
        "clip beside its column",
        max(usual, needed_width(wraps)),
        Unit.LENGTH,
        "{0} as the drop asks, at most the trade's {1} and the {2} of room. Side by side the wraps"
        " need only {3}; the trade stands farther off so that loose wraps never pass the column,"
        " and the longest drops need the larger figure.",
        wanted,
        habits.clip_farthest,
        room,
        wraps.width,
    )


def needed_width(wraps: Wraps) -> Length:
    """Give the width that the wraps may take, at the thick end of the cord's range.

    Takes: the wraps.

    Gives: the high end of their width, or the width itself where no range is known.

    Source: derived here.

    >>> from foldwright.core.rig import example
    >>> round(needed_width(example.PARTS.wraps).in_millimetres, 3)
    20.113
    """
    return wraps.width.high or wraps.width.value


def room_for_clips(columns: tuple[L, ...], pitch: L, place: TubePlace, habits: Habits) -> L:
    """Give the largest offset at which no clip meets a neighbour's or the end of the tube.

    Takes: columns from the tube's left end; their pitch; the tube's place; the habits
    with the clip's length.

    Gives: half the pitch less a clip where two clips face each other in one bay, which
    keeps a clip's length between them; for a single column the way to the bracket.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, ORDER, PARTS
    >>> columns = columns_on_tube(LAYOUT.columns, PARTS.place)
    >>> room = room_for_clips(columns, LAYOUT.columns.pitch, PARTS.place, ORDER.habits)
    >>> room.value.in_millimetres
    170.0
    """
    if len(columns) == 1:
        return derived(
            "room for the clip",
            place.free_to.value - columns[0].value - habits.clip_length.value,
            Unit.LENGTH,
            "From the column at {0} to where the tube is free, {1}, less a clip of {2}.",
            columns[0],
            place.free_to,
            habits.clip_length,
        )
    return derived(
        "room for the clips",
        pitch.value / 2 - habits.clip_length.value,
        Unit.LENGTH,
        "Two clips face each other in one bay of {0}: each has half of it less a clip of {1}.",
        pitch,
        habits.clip_length,
    )


def columns_on_tube(columns: ColumnPlan, place: TubePlace) -> tuple[L, ...]:
    """Carry the cord columns from the shade's left edge over to the tube's left end.

    Takes: the columns of the layout; the tube's place.

    Gives: one mark for each column, from the tube's left end, seen from the back.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS
    >>> [mark.value.in_millimetres for mark in columns_on_tube(LAYOUT.columns, PARTS.place)]
    [40.0, 400.0, 760.0, 1120.0]
    """
    return tuple(
        derived(
            f"column {number} on the tube",
            mark.value - place.shade_to_tube.value,
            Unit.LENGTH,
            "The column {0} from the shade's edge, less the {1} at which the tube starts.",
            mark,
            place.shade_to_tube,
        )
        for number, mark in enumerate(columns.marks, start=1)
    )


def cord_lines(columns: tuple[L, ...], offset: L, wraps: Wraps, cut: L) -> tuple[CordLine, ...]:
    """Place every clip and its band of wraps.

    Takes: columns from the tube's left end; clip to column; the wraps; the cut length.

    Gives: one line for each column, left to right as seen from the back.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS
    >>> columns = columns_on_tube(LAYOUT.columns, PARTS.place)
    >>> lines = cord_lines(columns, PARTS.offset, PARTS.wraps, PARTS.lines[0].cut_length)
    >>> [round(line.clip.value.in_millimetres) for line in lines]
    [106, 334, 826, 1054]
    """
    sides: tuple[Side | None, ...] = clip_sides(len(columns))
    if wraps.is_tape:
        sides = (None,) * len(columns)
    return tuple(
        _line(number, column, side, (offset, cut), wraps)
        for number, (column, side) in enumerate(zip(columns, sides, strict=True), start=1)
    )


def _line(
    number: int, column: L, side: Side | None, lengths: tuple[L, L], wraps: Wraps
) -> CordLine:
    offset, cut = lengths
    clip = _clip(number, column, side, offset)
    start, end = _tape_band(number, column, wraps) if side is None else (clip, None)
    return CordLine(
        number=number,
        column=column,
        clip=clip,
        clip_side=side,
        offset=offset,
        band_start=start,
        band_end=end or _band_end(number, clip, side, wraps),
        cut_length=cut,
    )


def _outward(side: Side | None) -> int:
    """Give which way the clip lies from its column, along the tube."""
    return {Side.RIGHT: 1, Side.LEFT: -1, None: 0}[side]


def _clip(number: int, column: L, side: Side | None, offset: L) -> L:
    beside = (
        f"{{1}} to the {side.value} of the column at {{0}}, seen from the back; sides alternate so"
        " that the sideways pulls cancel, with the outermost clips standing inward."
        if side
        else "On its column at {0}; every tape starts at the same rotation of the tube."
    )
    return derived(
        f"clip {number}",
        column.value + offset.value * _outward(side),
        Unit.LENGTH,
        beside,
        column,
        offset,
    )


def _band_end(number: int, clip: L, side: Side | None, wraps: Wraps) -> L:
    return derived(
        f"band {number} to",
        clip.value - wraps.width.value * _outward(side),
        Unit.LENGTH,
        "The wraps walk {1} from the clip at {0} towards the column.",
        clip,
        wraps.width,
    )


def _tape_band(number: int, column: L, wraps: Wraps) -> tuple[L, L]:
    def edge(word: str, half: Length) -> L:
        return derived(
            f"band {number} {word}",
            column.value + half,
            Unit.LENGTH,
            "Half the tape's width of {1} beside its column at {0}.",
            column,
            wraps.width,
        )

    half = wraps.width.value / 2
    return edge("from", -half), edge("to", half)


def stretch_taken(line: CordLine, wraps: Wraps, habits: Habits) -> Stretch:
    """Give the piece of tube that one cord or tape needs to itself.

    Takes: the line; the wraps; the habits with the clip's length.

    Gives: from half the wraps' width beyond the column to the far end of the clip.

    Source: common practice for half the band beyond the column; derived here.

    >>> from foldwright.core.rig.example import ORDER, PARTS
    >>> taken = stretch_taken(PARTS.lines[0], PARTS.wraps, ORDER.habits)
    >>> round(taken.start.in_millimetres, 1), round(taken.end.in_millimetres, 1)
    (29.9, 110.9)
    """
    half_wraps = needed_width(wraps) / 2
    half_clip = habits.clip_length.value / 2
    if line.clip_side is Side.RIGHT:
        return Stretch(start=line.column.value - half_wraps, end=line.clip.value + half_clip)
    if line.clip_side is Side.LEFT:
        return Stretch(start=line.clip.value - half_clip, end=line.column.value + half_wraps)
    return Stretch(start=line.column.value - half_wraps, end=line.column.value + half_wraps)
