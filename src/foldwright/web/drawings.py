"""The picture of the shade page: elevation and section on one plate, and its graphs under it.

Elevation and section share one scale and one datum, the bottom edge fully down, so that
every row lies at the same height in both. The grip, a band along the bottom edge, is what
a finger or a mouse pulls.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from markupsafe import Markup

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.dip_graph import dip_graph
from foldwright.core.drawing.elevation import elevation
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.graph import raise_graph
from foldwright.core.drawing.model import Drawing, Layer, Point, Polyline, Rectangle
from foldwright.core.drawing.section import side_section
from foldwright.core.quantity.rounding import System
from foldwright.write.svg import svg

FRONT_FRAME = Frame(width=130.0, height=130.0)
GRAPH_FRAME = Frame(width=188.0, height=68.0)
WIDE_ENOUGH = 400.0  # so that the height alone decides the scale of the section
SIDE_MARGINS = 35.0  # above and below the shade in the section
GRIP_HEIGHT = 14.0  # 48 px and more, at the size the plate is shown
PAPER_SIZE = re.compile(r' width="[\d.]+mm" height="[\d.]+mm"')

PLATE = Markup(
    '<svg xmlns="http://www.w3.org/2000/svg" class="plate" viewBox="0 0 {width:.2f} {height:.2f}"'
    ' width="{width:.2f}mm" height="{height:.2f}mm">{parts}</svg>'
)
PLACED = ' x="{x:.2f}" y="{y:.2f}" width="{width:.2f}" height="{height:.2f}"'
GRIP = Markup(
    '<rect class="grip" data-grip="{travel:.2f}" x="{x:.2f}" y="{y:.2f}"'
    ' width="{width:.2f}" height="{height:.2f}" aria-hidden="true"/>'
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Picture:
    """What stands on the drawing side of the page."""

    plate: Markup
    graph: Markup


def picture(plan: ShadePlan, raise_share: float, system: System, why_url: str) -> Picture | None:
    """Draw a shade that has a finished size."""
    if plan.size is None:
        return None
    views = _views(plan, raise_share, system, plan.size.drop.value.in_millimetres)
    graph = Markup()
    if plan.balance is not None and plan.balance.curve is not None:
        graph = _svg(raise_graph(plan, raise_share, system, GRAPH_FRAME), why_url)
    if plan.layout is not None and plan.layout.swag is not None and plan.layout.swag.draw_in:
        graph += _svg(dip_graph(plan, system, GRAPH_FRAME), why_url)
    return Picture(plate=_plate(plan, views, why_url), graph=graph)


def _views(
    plan: ShadePlan, raise_share: float, system: System, drop_mm: float
) -> tuple[Drawing, ...]:
    """Draw the front, and the side at the scale that the front took."""
    front = elevation(plan, raise_share, system, FRONT_FRAME)
    if plan.layout is None:
        return (front,)
    frame = Frame(width=WIDE_ENOUGH, height=drop_mm / front.scale + SIDE_MARGINS)
    return front, side_section(plan, raise_share, system, frame)


def _plate(plan: ShadePlan, views: tuple[Drawing, ...], why_url: str) -> Markup:
    scale = views[0].scale
    top = max(view.extent.top for view in views)
    bottom = min(view.extent.bottom for view in views)
    parts, x = Markup(), 0.0
    for view in views:
        parts += _placed(view, x, (top - view.extent.top) / scale, why_url)
        x += view.extent.width / scale
    if plan.layout is not None:
        parts += _grip(plan.layout.travel.value.in_millimetres, views[0], top)
    return PLATE.format(width=x, height=(top - bottom) / scale, parts=parts)


def _placed(view: Drawing, x: float, y: float, why_url: str) -> Markup:
    """Put a drawing at its place on the plate, in millimetres of paper."""
    width, height = view.extent.width / view.scale, view.extent.height / view.scale
    place = PLACED.format(x=x, y=y, width=width, height=height)
    return Markup(PAPER_SIZE.sub(place, _svg(view, why_url), count=1))  # noqa: S704 - numbers alone are put in


def _svg(drawing: Drawing, why_url: str) -> Markup:
    return Markup(svg(drawing, why=lambda path: f"{why_url}?figure={path}"))  # noqa: S704 - the writer escapes


def _grip(travel_mm: float, front: Drawing, top: float) -> Markup:
    """Lay the grip along the lowest edge of the cloth, from side to side."""
    outline = _outline(front)
    left, right = (pick(point.x for point in outline) for pick in (min, max))
    lowest = min(point.y for point in outline)
    return GRIP.format(
        travel=travel_mm / front.scale,
        x=(left - front.extent.left) / front.scale,
        y=(top - lowest) / front.scale - GRIP_HEIGHT * 2 / 3,
        width=(right - left) / front.scale,
        height=GRIP_HEIGHT,
    )


def _outline(front: Drawing) -> tuple[Point, ...]:
    """Give the corners of the cloth, the last outline drawn of it: a box, or with a dipping hem."""
    outlines = [
        one
        for one in front.elements
        if one.layer is Layer.CLOTH
        and (isinstance(one, Rectangle) or (isinstance(one, Polyline) and one.closed))
    ]
    last = outlines[-1]
    if isinstance(last, Polyline):
        return last.points
    far = Point(last.corner.x + last.width, last.corner.y + last.height)
    return (last.corner, far)
