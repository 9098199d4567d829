"""Pieces and remnants where they lie on the roll: outline, name, size and where the top is."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from foldwright.core.cloth.finding.listing import Cut, CutPiece
from foldwright.core.cloth.order import Remnant
from foldwright.core.drawing.frame import text_width
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Text,
)
from foldwright.core.drawing.shapes import rectangle
from foldwright.core.quantity.length import Length

Write = Callable[[Length], str]
Lined = tuple[str, Lettering, bool]

ARROW, ARROW_OFF, WORDS_OFF, LINE_GAP, INSET = 5.0, 2.0, 2.0, 1.2, 0.8  # of paper


def draw_piece(piece: CutPiece, cut: Cut, scale: float, write: Write) -> Iterator[AnyElement]:
    """Draw a piece with an arrow to its top, its name, its size and what it is sewn to.

    Takes: the piece; its cut length; the scale; what writes a length.

    Gives: the elements; where its name does not fit, the key under which the list names it.

    Source: derived here.

    >>> from foldwright.core.cloth.example import ORDER, PLAN
    >>> from foldwright.core.cloth.finding.listing import cut_list
    >>> cut = cut_list(PLAN, ORDER)[0].cuts[0]
    >>> drawn = draw_piece(cut.pieces[0], cut, 25.0, lambda size: f"{size.in_millimetres:.0f}")
    >>> [element.words for element in drawn if isinstance(element, Text)]
    ['1  1 face centre', '1350 by 1600', 'joins 1 face left, 1 face right']
    """
    head = (cut.start + piece.head_trim).in_millimetres
    box = Box(
        left=head,
        bottom=piece.rip_from.in_millimetres,
        right=head + _along(piece, cut),
        top=piece.rip_to.in_millimetres,
    )
    yield rectangle(box, Layer.CUTS, LineKind.VISIBLE)
    yield from _arrow(box, scale, turned=piece.turned)
    size = f"{write(piece.width)} by {write(piece.length)}"
    joins = [(f"joins {', '.join(piece.partners)}", Lettering.NOTE, False)][: len(piece.partners)]
    named = [
        [(words, Lettering.FIGURE, True), (size, Lettering.FIGURE, False), *joins]
        for words in (f"{piece.key}  {piece.name}", piece.key)
    ]
    yield from _words(box, named, scale, past=ARROW_OFF + ARROW + WORDS_OFF)


def _along(piece: CutPiece, cut: Cut) -> float:
    """Give how far a piece reaches along the roll."""
    return (cut.length - piece.head_trim - piece.foot_trim).in_millimetres


def draw_remnant(left: Remnant, end: float, scale: float, write: Write) -> Iterator[AnyElement]:
    """Draw what is left over, inside its edges, with its size and what it is good for.

    Takes: the remnant; where the band ends; the scale; what writes a length.

    Gives: the elements.

    Source: derived here.

    >>> from foldwright.core.cloth.example import PLAN
    >>> drawn = draw_remnant(PLAN.remnants[0], 5000.0, 25.0, lambda size: str(size.in_millimetres))
    >>> [element.words for element in drawn if isinstance(element, Text)]
    ['left 770.0 by 1600.0', 'for board cover']
    """
    inset = INSET * scale
    start = left.along.in_millimetres
    box = Box(
        left=start + inset,
        bottom=left.across.in_millimetres + inset,
        right=min(end, start + left.length.in_millimetres) - inset,
        top=(left.across + left.width).in_millimetres - inset,
    )
    if box.right <= box.left or box.top <= box.bottom:
        return
    yield rectangle(box, Layer.NOTES, LineKind.ELSEWHERE)
    size = (f"left {write(left.width)} by {write(left.length)}", Lettering.NOTE, False)
    uses = [(f"for {', '.join(left.uses)}", Lettering.NOTE, False)][: len(left.uses)]
    yield from _words(box, [[size, *uses], uses], scale, past=WORDS_OFF)


def _arrow(box: Box, scale: float, *, turned: bool) -> Iterator[Line]:
    """Point to the top of the piece: the outer end, or the left edge of a turned piece."""
    if box.width < (ARROW + 2 * ARROW_OFF) * scale:
        return
    near, far = ARROW_OFF * scale, (ARROW_OFF + ARROW) * scale
    middle = (box.bottom + box.top) / 2
    start, end = Point(box.left + far, middle), Point(box.left + near, middle)
    if turned:
        across = box.left + (ARROW_OFF + ARROW / 2) * scale
        reach = min(ARROW / 2 * scale, (box.top - box.bottom) / 2)
        start, end = Point(across, middle + reach), Point(across, middle - reach)
    yield Line(start=start, end=end, arrow=True, layer=Layer.CUTS, kind=LineKind.THIN)


def _words(box: Box, ways: list[list[Lined]], scale: float, *, past: float) -> Iterator[Text]:
    """Write the lines in the first way in which the first of them fits."""
    for lines in ways:
        fitting = _fitting(box, lines, scale, past)
        words = _flat(box, fitting, scale, past) if fitting else _upright(box, lines[:1], scale)
        if written := list(words):
            yield from written
            return


def _flat(box: Box, lines: list[Lined], scale: float, past: float) -> Iterator[Text]:
    top = (box.bottom + box.top) / 2 + _height(lines) / 2 * scale
    for words, size, strong in lines:
        yield Text(
            at=Point(box.left + past * scale, top - size.value / 2 * scale),
            words=words,
            size=size,
            strong=strong,
            backed=True,
            layer=Layer.NOTES,
            kind=LineKind.THIN,
        )
        top -= (size.value + LINE_GAP) * scale


def _fitting(box: Box, lines: list[Lined], scale: float, past: float) -> list[Lined]:
    """Give as many lines as the box holds, none if not the first."""
    room = box.width / scale - past - WORDS_OFF / 2
    fitting = [line for line in lines if text_width(line[0], line[1]) <= room]
    while fitting and _height(fitting) > (box.top - box.bottom) / scale + LINE_GAP:
        fitting.pop()
    return fitting if fitting[:1] == lines[:1] else []


def _upright(box: Box, lines: list[Lined], scale: float) -> Iterator[Text]:
    """Write a line in a box too narrow for it to lie, to be read from the right, if it fits."""
    for words, size, strong in lines:
        tall, wide = (box.top - box.bottom) / scale, box.width / scale
        if size.value <= wide and text_width(words, size) <= tall - WORDS_OFF:
            yield Text(
                at=Point((box.left + box.right) / 2, (box.bottom + box.top) / 2),
                words=words,
                size=size,
                anchor=Anchor.MIDDLE,
                strong=strong,
                upright=True,
                backed=True,
                layer=Layer.NOTES,
                kind=LineKind.THIN,
            )


def _height(lines: list[Lined]) -> float:
    """Give the height of some lines of words, on paper."""
    return sum(size.value + LINE_GAP for _, size, _ in lines)
