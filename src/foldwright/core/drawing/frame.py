"""The room a drawing may take on paper or screen, and the scale that follows from it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from foldwright.core.drawing.model import Box, Lettering

# Of the letter height, in a wide sans serif face; from memory.
LETTER_WIDTH, NARROW_LETTER_WIDTH = 0.67, 0.36
NARROW_LETTERS = frozenset(" /.,:;'|!()fijlrt")


@dataclass(frozen=True, kw_only=True, slots=True)
class Frame:
    """The greatest width and height, in millimetres of paper."""

    width: float
    height: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Gutters:
    """Room round the thing itself for sizes and notes, in millimetres of paper."""

    left: float
    bottom: float
    right: float
    top: float


SCREEN = Frame(width=180.0, height=200.0)


def text_width(words: str, size: Lettering) -> float:
    """Estimate the width of a line of text, on the wide side.

    Takes: the words; their size.

    Gives: millimetres of paper.

    Holds for: sans serif letters; the estimate keeps room, it does not typeset.

    Source: from memory.

    >>> round(text_width("48 in", Lettering.GREAT), 1)
    19.1
    """
    narrow = sum(letter in NARROW_LETTERS for letter in words)
    wide = len(words) - narrow
    return (wide * LETTER_WIDTH + narrow * NARROW_LETTER_WIDTH) * size.value


def fit(box: Box, frame: Frame, gutters: Gutters) -> float:
    """Find the scale at which a thing and its gutters just fill the frame.

    Takes: the thing's box in millimetres; the frame and the gutters in millimetres of paper.

    Gives: millimetres of the real thing to one of paper, above zero.

    Source: derived here.

    >>> page = Frame(width=100.0, height=200.0)
    >>> edges = Gutters(left=5.0, bottom=10.0, right=15.0, top=10.0)
    >>> fit(Box(left=0.0, bottom=0.0, right=800.0, top=900.0), page, edges)
    10.0
    """
    across = box.width / (frame.width - gutters.left - gutters.right)
    up = box.height / (frame.height - gutters.bottom - gutters.top)
    return max(across, up)


def widened(gutters: Gutters, box: Box, frame: Frame, least_width: float) -> Gutters:
    """Widen both side gutters alike until a line of words fits over or under the thing.

    Takes: the gutters; the thing's box; the frame; the width of the words, on paper.

    Gives: the gutters, wider where the thing and its gutters are narrower than the words.

    Source: derived here.

    >>> edges = Gutters(left=5.0, bottom=10.0, right=5.0, top=10.0)
    >>> page = Frame(width=100.0, height=100.0)
    >>> widened(edges, Box(left=0.0, bottom=0.0, right=10.0, top=80.0), page, 40.0).left
    15.0
    """
    spare = min(
        box.width / fit(box, frame, gutters) + 2 * min(gutters.left, gutters.right),
        frame.width,
    )
    more = max(0.0, least_width - spare) / 2
    return replace(gutters, left=gutters.left + more, right=gutters.right + more)


def with_gutters(box: Box, gutters: Gutters, scale: float) -> Box:
    """Widen a box by its gutters.

    Takes: the box in millimetres; the gutters in millimetres of paper; the scale.

    Gives: the box of the whole drawing in millimetres.

    Source: derived here.

    >>> edges = Gutters(left=1.0, bottom=1.0, right=1.0, top=1.0)
    >>> with_gutters(Box(left=0.0, bottom=0.0, right=10.0, top=10.0), edges, 10.0).width
    30.0
    """
    return Box(
        left=box.left - gutters.left * scale,
        bottom=box.bottom - gutters.bottom * scale,
        right=box.right + gutters.right * scale,
        top=box.top + gutters.top * scale,
    )
