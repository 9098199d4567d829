"""The unrolled roll, face up, its outer end at the left, with every piece where it is cut.

A long roll is drawn in bands, one under the other; no cut length is broken between two. The
roll's left edge, seen with the outer end away from you, lies at the bottom.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count, takewhile

from foldwright.core.cloth.finding.listing import Cut, RollCuts
from foldwright.core.cloth.order import ClothOrder, Flaw
from foldwright.core.drawing.frame import Frame, Gutters, text_width, with_gutters
from foldwright.core.drawing.labels import spread
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Drawing,
    Hatch,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Text,
)
from foldwright.core.drawing.roll_pieces import draw_piece, draw_remnant
from foldwright.core.drawing.shapes import corners, rectangle
from foldwright.core.drawing.words import UNIT_NOTES, UNIT_WORDS
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System

NAME = "roll"
SEEN_FROM = "face up, the outer end at the left"
PAGE = Frame(width=180.0, height=80.0)
TICK, MARK_OFF, LEADER, MARKS_APART = 2.0, 1.5, 4.0, 5.0  # of paper
TOP_GUTTER, SIDE_GUTTER, CAPTION = 9.0, 3.0, 6.0
FLAW_WORDS_OFF = 4.0
LEAST_FLAW = 1.2  # of paper: a smaller flaw is drawn so large, to be seen


@dataclass(frozen=True, kw_only=True, slots=True)
class Band:
    """One stretch of a roll as it is drawn: millimetres from the outer end."""

    roll: RollCuts
    order: ClothOrder
    system: System
    number: int
    start: float
    end: float
    scale: float

    @property
    def width(self) -> float:
        """Give the usable width of the roll."""
        return self.roll.use.usable_width.in_millimetres

    @property
    def cuts(self) -> tuple[Cut, ...]:
        """Give the cut lengths that begin in this stretch."""
        return tuple(c for c in self.roll.cuts if self.start <= c.start.in_millimetres < self.end)

    def holds(self, place: float) -> bool:
        """Tell whether a mark lies in this stretch."""
        return self.start <= place <= self.end

    def mark(self, length: Length) -> str:
        """Write a mark without its unit."""
        return _bare(length, self.system)


def _bare(length: Length, system: System) -> str:
    return print_length(length, system).removesuffix(UNIT_WORDS[system]).rstrip()


def roll_drawings(
    roll: RollCuts, order: ClothOrder, system: System, frame: Frame = PAGE
) -> tuple[Drawing, ...]:
    """Draw one roll to scale with its pieces, repeats, flaws and what is left.

    Takes: the cuts of the roll; the order; the reader's system; the frame of one band.

    Gives: one drawing for each band, from the outer end inwards.

    Source: derived here; line kinds iso-128, marks from a common origin iso-129.

    >>> from foldwright.core.cloth.example import ORDER, PLAN
    >>> from foldwright.core.cloth.finding.listing import cut_list
    >>> [band.name for band in roll_drawings(*cut_list(PLAN, ORDER), ORDER, System.METRIC)]
    ['roll-roll-1-1']
    """
    return tuple(_draw(band) for band in _bands(roll, order, system, frame))


def _bands(roll: RollCuts, order: ClothOrder, system: System, frame: Frame) -> Iterator[Band]:
    """Break the roll where a cut length ends, as far along as the frame lets it."""
    scale = _scale(roll, system, frame)
    room = (frame.width - 2 * SIDE_GUTTER) * scale
    start, number = 0.0, 1
    for cut, following in zip(roll.cuts, (*roll.cuts[1:], None), strict=True):
        if following is None or following.end.in_millimetres - start > room:
            whole = min(_end(roll), start + room)
            end = whole if following is None else cut.end.in_millimetres
            yield Band(
                roll=roll, order=order, system=system,
                number=number, start=start, end=end, scale=scale,
            )  # fmt: skip
            start, number = end, number + 1


def _end(roll: RollCuts) -> float:
    """Give where the roll ends, or where its last cut does if its length is not known."""
    last = roll.cuts[-1].end
    return max(roll.use.length, last).in_millimetres


def _scale(roll: RollCuts, system: System, frame: Frame) -> float:
    """Find the scale at which the width and the longest cut with its waste fit a band."""
    up = frame.height - TOP_GUTTER - _bottom(roll, system) - CAPTION
    along = frame.width - 2 * SIDE_GUTTER
    longest = max((cut.length + cut.waste_before).in_millimetres for cut in roll.cuts)
    return max(roll.use.usable_width.in_millimetres / up, longest / along)


def _bottom(roll: RollCuts, system: System) -> float:
    """Leave room under the cloth for the marks, which are read from the right."""
    marks = [mark for cut in roll.cuts for mark in (cut.start, cut.end)]
    longest = max(text_width(_bare(mark, system), Lettering.FIGURE) for mark in marks)
    return MARK_OFF + LEADER + longest


def _draw(band: Band) -> Drawing:
    cloth = Box(left=band.start, bottom=0.0, right=band.end, top=band.width)
    gutters = Gutters(
        left=SIDE_GUTTER,
        bottom=_bottom(band.roll, band.system) + CAPTION,
        right=SIDE_GUTTER,
        top=TOP_GUTTER,
    )
    extent, caption = with_gutters(cloth, gutters, band.scale), _caption(band)
    words_end = cloth.left + text_width(caption, Lettering.NOTE) * band.scale
    half = MARKS_APART / 2 * band.scale
    marks = [at for _, at in _mark_places(band)]
    return Drawing(
        name=f"{NAME}-{_word(band.roll.use.name)}-{band.number}",
        title=f"{band.roll.use.name.capitalize()}, lot {band.roll.use.lot or 'not noted'}",
        seen_from=SEEN_FROM,
        description=_describe(band),
        extent=Box(
            left=min(extent.left, *(at - half for at in marks)),
            bottom=extent.bottom,
            right=max(extent.right, words_end, *(at + half for at in marks)),
            top=extent.top,
        ),
        scale=band.scale,
        elements=tuple(_elements(band, cloth, caption)),
    )


def _word(name: str) -> str:
    """Make a roll's name fit for an id."""
    return "-".join("".join(c if c.isalnum() else " " for c in name.lower()).split())


def _elements(band: Band, cloth: Box, caption: str) -> Iterator[AnyElement]:
    yield from _cloth(band, cloth)
    for cut in band.cuts:
        for piece in cut.pieces:
            yield from draw_piece(piece, cut, band.scale, band.mark)
    for left in band.roll.remnants:
        if band.holds(left.along.in_millimetres) and left.along.in_millimetres < band.end:
            yield from draw_remnant(left, band.end, band.scale, band.mark)
    yield from _flaws(band)
    yield from _marks(band)
    yield Text(
        at=Point(band.start, -(_bottom(band.roll, band.system) + CAPTION / 2) * band.scale),
        words=caption,
        size=Lettering.NOTE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _cloth(band: Band, cloth: Box) -> Iterator[AnyElement]:
    """Draw the selvedges, the ends of the roll, the cuts over the full width and the repeats."""
    for height in (0.0, band.width):
        yield _line((cloth.left, height), (cloth.right, height), Layer.CLOTH, LineKind.VISIBLE)
    if band.start == 0.0:
        yield _line((0.0, 0.0), (0.0, band.width), Layer.CLOTH, LineKind.VISIBLE)
    if band.end >= _end(band.roll):
        yield _line((band.end, 0.0), (band.end, band.width), Layer.CLOTH, LineKind.VISIBLE)
    for cut in band.cuts:
        for place in (cut.start.in_millimetres, cut.end.in_millimetres):
            yield _line((place, 0.0), (place, band.width), Layer.CUTS, LineKind.VISIBLE)
    tick = TICK * band.scale
    for place in _repeats(band):
        for edge, out in ((0.0, -tick), (band.width, tick)):
            yield _line((place, edge), (place, edge + out), Layer.ROWS, LineKind.CENTRE)


def _repeats(band: Band) -> Iterator[float]:
    """Give the marks at which the repeat begins, on a roll that has been measured."""
    repeat = band.order.pattern.vertical_repeat.in_millimetres
    if not repeat or not band.roll.in_hand:
        return
    origin = band.roll.use.origin_along.in_millimetres
    first = origin + -((origin - band.start) // repeat) * repeat
    yield from takewhile(lambda place: place <= band.end, count(first, repeat))


def _line(
    start: tuple[float, float], end: tuple[float, float], layer: Layer, kind: LineKind
) -> Line:
    return Line(start=Point(*start), end=Point(*end), layer=layer, kind=kind)


def _flaws(band: Band) -> Iterator[AnyElement]:
    """Hatch each flaw as the box to keep clear of, and name it over the cloth."""
    flaws = [flaw for flaw in _known_flaws(band) if band.holds(flaw.along.in_millimetres)]
    middles = [(flaw.along + flaw.length / 2).in_millimetres for flaw in flaws]
    apart = text_width("flaw ", Lettering.NOTE) * band.scale
    for flaw, middle, place in zip(flaws, middles, spread(middles, apart), strict=True):
        box = _flaw_box(flaw, band)
        yield Hatch(outline=corners(box), layer=Layer.NOTES, kind=LineKind.THIN, gap=1.0)
        yield rectangle(box, Layer.NOTES, LineKind.THIN)
        above = band.width + FLAW_WORDS_OFF * band.scale
        yield _line((middle, box.top), (place, above), Layer.NOTES, LineKind.THIN)
        yield Text(
            at=Point(place, above + Lettering.NOTE.value * band.scale / 2),
            words="flaw",
            size=Lettering.NOTE,
            anchor=Anchor.MIDDLE,
            layer=Layer.NOTES,
            kind=LineKind.THIN,
        )


def _known_flaws(band: Band) -> Iterator[Flaw]:
    for roll in band.order.rolls:
        if roll.name == band.roll.use.name:
            yield from roll.flaws


def _flaw_box(flaw: Flaw, band: Band) -> Box:
    """Give a flaw's box inside the band, never too small to be seen."""
    least = LEAST_FLAW * band.scale
    left, bottom = flaw.along.in_millimetres, flaw.across.in_millimetres
    return Box(
        left=left,
        bottom=bottom,
        right=min(band.end, left + max(least, flaw.length.in_millimetres)),
        top=min(band.width, bottom + max(least, flaw.width.in_millimetres)),
    )


def _mark_places(band: Band) -> list[tuple[Length, float]]:
    """Give each mark of the cuts, and where its words stand so that none meets another."""
    marks = sorted({length for cut in band.cuts for length in (cut.start, cut.end)})
    places = [mark.in_millimetres for mark in marks]
    return list(zip(marks, spread(places, MARKS_APART * band.scale), strict=True))


def _marks(band: Band) -> Iterator[AnyElement]:
    """Write each cut's marks from the outer end under the cloth, to be read from the right."""
    top, foot = -MARK_OFF * band.scale, -(MARK_OFF + LEADER) * band.scale
    for mark, at in _mark_places(band):
        yield _line((mark.in_millimetres, top), (at, foot), Layer.SIZES, LineKind.THIN)
        yield Text(
            at=Point(at, foot - MARK_OFF / 2 * band.scale),
            words=band.mark(mark),
            anchor=Anchor.END,
            upright=True,
            layer=Layer.SIZES,
            kind=LineKind.THIN,
        )


def _caption(band: Band) -> str:
    """Say the unit, whence marks are measured, and what the ticks are."""
    repeat = band.order.pattern.vertical_repeat
    ticks = f" Ticks: the repeat, {print_length(repeat, band.system)}." if repeat else ""
    shown = ticks if band.roll.in_hand else ""
    return f"{UNIT_NOTES[band.system]}, from the outer end.{shown}"


def _describe(band: Band) -> str:
    """Say in sentences what the drawing shows."""
    cuts = " ".join(
        f"Cut {cut.number} from {band.mark(cut.start)} to {band.mark(cut.end)}: "
        f"{', '.join(piece.name for piece in cut.pieces)}."
        for cut in band.cuts
    )
    return f"The roll {band.roll.use.name}, {SEEN_FROM}. {_caption(band)} {cuts}"
