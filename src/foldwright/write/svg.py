"""Write a drawing as SVG that a browser, a screen reader and a typesetter can use.

Everything is in millimetres of paper. Looks are presentation attributes and classes,
never style attributes, so that a page may forbid inline styles; a style sheet can
override every attribute through its class.
"""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from itertools import groupby

from foldwright.core.drawing.model import AnyElement, Dimension, Drawing, Hatch, Layer, Tag, Text
from foldwright.write.strokes import Place, draw, number, pattern_name, touch_area

SCREEN_FONTS = "system-ui, sans-serif"
HATCH_WIDTH = 0.13  # finer than any outline


def svg(drawing: Drawing, *, fonts: str = SCREEN_FONTS) -> str:
    """Write a drawing as one SVG element.

    A drawing whose figures can be touched is a group of buttons to a screen reader, any
    other is an image; both have the title and the description.

    Takes: the drawing; the font families to ask for.

    Gives: the SVG, without an XML declaration, so that it can stand in a page.

    Source: derived here.
    """
    place = Place(drawing.extent.left, drawing.extent.top, drawing.scale, drawing.name)
    return "".join(
        [
            _opening_tag(drawing, fonts),
            f'<title id="{drawing.name}-title">{escape(_title(drawing))}</title>',
            f'<desc id="{drawing.name}-description">{escape(drawing.description)}</desc>',
            *_patterns(drawing),
            *_layers(drawing, place),
            "</svg>",
        ]
    )


def _opening_tag(drawing: Drawing, fonts: str) -> str:
    """Open the element: its role, its size on paper, the ink and the letters."""
    width = number(drawing.extent.width / drawing.scale)
    height = number(drawing.extent.height / drawing.scale)
    name = drawing.name
    role = "group" if any(drawing.tags()) else "img"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="drawing drawing-{name}" role="{role}"'
        f' aria-labelledby="{name}-title" aria-describedby="{name}-description"'
        f' viewBox="0 0 {width} {height}" width="{width}mm" height="{height}mm"'
        ' fill="none" stroke="currentColor" stroke-linecap="round" stroke-linejoin="round"'
        f' font-family="{escape(fonts)}">'
    )


def _title(drawing: Drawing) -> str:
    """Join the title and the view."""
    return f"{drawing.title}, seen {drawing.seen_from}" if drawing.seen_from else drawing.title


def _patterns(drawing: Drawing) -> Iterator[str]:
    """Define each hatch once."""
    hatches = [element for element in drawing.elements if isinstance(element, Hatch)]
    unlike = {pattern_name(drawing.name, hatch): hatch for hatch in hatches}
    if unlike:
        yield "<defs>"
    for name, hatch in unlike.items():
        gap = number(hatch.gap)
        yield (
            f'<pattern id="{name}" patternUnits="userSpaceOnUse" width="{gap}" height="{gap}"'
            f' patternTransform="rotate({number(-hatch.degrees)})">'
            f'<path class="hatch" d="M0 0H{gap}" stroke-width="{HATCH_WIDTH * 2}"/></pattern>'
        )
    if unlike:
        yield "</defs>"


def _layers(drawing: Drawing, place: Place) -> Iterator[str]:
    """Group what lies together in one layer."""
    for layer, elements in groupby(drawing.elements, _layer):
        yield f'<g class="layer-{layer.value}">'
        for tag, tagged in groupby(elements, _tag):
            yield from _figure(tag, list(tagged), place)
        yield "</g>"


def _layer(element: AnyElement) -> Layer:
    return element.layer


def _tag(element: AnyElement) -> Tag | None:
    return element.tag


def _figure(tag: Tag | None, elements: list[AnyElement], place: Place) -> Iterator[str]:
    """Draw elements; those of one figure together, as a button where it can be read.

    A figure drawn without words can be pointed at, but is no stop for the keyboard: a
    button needs a name that makes sense without the drawing.
    """
    written = [element for element in elements if isinstance(element, Text | Dimension)]
    if tag is not None:
        words = " ".join(element.words for element in written)
        label = escape(f"{tag.name}: {words}")
        button = f' tabindex="0" role="button" aria-label="{label}"' if written else ""
        yield f'<g data-figure="{escape(tag.path)}"{button}>'
        yield from (touch_area(element, place) for element in written)
    for element in elements:
        yield draw(element, place)
    if tag is not None:
        yield "</g>"
