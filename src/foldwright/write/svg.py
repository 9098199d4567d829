"""Write a drawing as SVG that a browser, a screen reader and a typesetter can use.

Everything is in millimetres of paper. Looks are presentation attributes and classes,
never style attributes, so that a page may forbid inline styles; a style sheet can
override every attribute through its class.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from html import escape
from itertools import groupby

from foldwright.core.drawing.model import AnyElement, Dimension, Drawing, Hatch, Layer, Tag, Text
from foldwright.write.strokes import Place, draw, number, pattern_name, touch_area

Why = Callable[[str], str]  # from a figure's path to the address of its why

SCREEN_FONTS = "system-ui, sans-serif"
HATCH_WIDTH = 0.13  # finer than any outline


def svg(drawing: Drawing, *, why: Why | None = None, fonts: str = SCREEN_FONTS) -> str:
    """Write a drawing as one SVG element.

    A drawing whose figures can be touched is a group to a screen reader, any other is an
    image; both have the title and the description.

    Takes: the drawing; what gives the address of a figure's why, so that figures become
    links (without it they are buttons for a script); the font families to ask for.

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
            *_layers(drawing, place, why),
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


def _layers(drawing: Drawing, place: Place, why: Why | None) -> Iterator[str]:
    """Group what lies together in one layer."""
    for layer, elements in groupby(drawing.elements, _layer):
        yield f'<g class="layer-{layer.value}">'
        for tag, tagged in groupby(elements, _tag):
            yield from _tagged(tag, list(tagged), place, why)
        yield "</g>"


def _layer(element: AnyElement) -> Layer:
    return element.layer


def _tag(element: AnyElement) -> Tag | None:
    return element.tag


def _tagged(
    tag: Tag | None, elements: list[AnyElement], place: Place, why: Why | None
) -> Iterator[str]:
    """Draw elements, those of one figure together so that a touch can open its why.

    A figure drawn without words can be pointed at, but is no stop for the keyboard: a
    link or button needs a name that makes sense without the drawing.
    """
    drawn = [draw(element, place) for element in elements]
    written = [element for element in elements if isinstance(element, Text | Dimension)]
    if tag is None:
        yield from drawn
        return
    opening, closing = _figure(tag, " ".join(element.words for element in written), why)
    yield opening
    yield from (touch_area(element, place) for element in written)
    yield from drawn
    yield closing


def _figure(tag: Tag, words: str, why: Why | None) -> tuple[str, str]:
    """Open and close the group of one figure: a link, a button, or nothing but a mark."""
    path, label = escape(tag.path), escape(f"{tag.name}: {words}")
    if not words:
        return f'<g data-figure="{path}">', "</g>"
    if why is None:
        return f'<g data-figure="{path}" tabindex="0" role="button" aria-label="{label}">', "</g>"
    address = escape(why(tag.path))
    return f'<a data-figure="{path}" href="{address}" aria-label="{label}">', "</a>"
