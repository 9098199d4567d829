"""The drawing that is shown while nothing can be drawn: it says what is missing."""

from __future__ import annotations

from foldwright.core.drawing.frame import text_width
from foldwright.core.drawing.model import (
    Anchor,
    Box,
    Drawing,
    Layer,
    Lettering,
    LineKind,
    Point,
    Text,
)

MARGIN = 8.0


def blank(*, name: str, title: str, seen_from: str, missing: str) -> Drawing:
    """Draw nothing but the sentence that says what must be known first.

    Takes: the drawing's name, title and view; the sentence.

    Gives: a small drawing at full scale.

    Source: derived here.

    >>> sentence = "Type a width and a drop."
    >>> list(blank(name="a", title="A", seen_from="", missing=sentence).words())
    ['Type a width and a drop.']
    """
    half = text_width(missing, Lettering.FIGURE) / 2 + MARGIN
    words = Text(
        at=Point(0.0, 0.0),
        words=missing,
        anchor=Anchor.MIDDLE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )
    return Drawing(
        name=name,
        title=title,
        seen_from=seen_from,
        description=missing,
        extent=Box(left=-half, bottom=-MARGIN * 2, right=half, top=MARGIN * 2),
        scale=1.0,
        elements=(words,),
    )
