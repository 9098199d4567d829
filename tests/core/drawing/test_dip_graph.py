"""Dip against draw-in, drawn by both curves."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from tests.core.drawing.building import plan
from tests.core.drawing.measuring import collisions, strays
from tests.core.layouts import inches, laid_out, sized

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.hanging import EvenlyHungEdge, HangingEdge
from foldwright.core.drawing.dip_graph import EDGES, UNDER_ELEVATION, dip_graph
from foldwright.core.drawing.model import Circle, Layer, Polyline
from foldwright.core.drawing.tags import figure_at
from foldwright.core.quantity.rounding import System

RELAXED = Choices(style=StyleName.RELAXED, dip=inches("4"), edge_distance=inches("2"))


def made(design: Choices = RELAXED, width: str = "34") -> ShadePlan:
    size = sized(width, "60")
    return replace(plan(), size=size, layout=laid_out(design, size))


def lines(shade: ShadePlan) -> list[Polyline]:
    drawing = dip_graph(shade, System.INCH)
    return [e for e in drawing.elements if isinstance(e, Polyline) and e.layer is Layer.CLOTH]


def test_both_curves_end_at_twice_the_dip_and_the_chain_draws_in_more() -> None:
    """A hem of 30 in that dips 8 in: by its two closed forms, at the graph's own scale."""
    chain, evenly = lines(made())
    spans = [kind.of_length_and_sag(30.0, 8.0).span_m for kind in (HangingEdge, EvenlyHungEdge)]
    right = UNDER_ELEVATION.width - EDGES.right
    assert chain.points[-1].x == pytest.approx(right)
    share = (30 - spans[1]) / (30 - spans[0])
    plot = right - EDGES.left
    assert evenly.points[-1].x == pytest.approx(EDGES.left + plot * share, rel=1e-6)
    assert evenly.points[-1].x < chain.points[-1].x


def test_a_curve_starts_at_nothing_and_grows_ever_less_steep() -> None:
    for curve in lines(made()):
        assert (curve.points[0].x, curve.points[0].y) == (EDGES.left, EDGES.bottom)
        slopes = [(b.y - a.y) / (b.x - a.x) for a, b in pairwise(curve.points)]
        assert all(later < earlier for earlier, later in pairwise(slopes))


def test_the_marker_lies_on_the_chain_at_the_dip_of_the_shade() -> None:
    shade = made()
    drawing = dip_graph(shade, System.INCH)
    (dot,) = [e for e in drawing.elements if isinstance(e, Circle)]
    chain = lines(shade)[0]
    before = max(point for point in chain.points if point.x <= dot.centre.x + 1e-9)
    after = min(point for point in chain.points if point.x >= dot.centre.x - 1e-9)
    assert before.y - 1e-6 <= dot.centre.y <= after.y + 1e-6
    plot = UNDER_ELEVATION.height - EDGES.bottom - EDGES.top
    assert dot.centre.y == pytest.approx(EDGES.bottom + plot / 2)


@pytest.mark.parametrize("dip", ["1/16", "3/4", "4", "12"])
@pytest.mark.parametrize("system", System)
def test_words_stand_clear_and_marks_lead_to_figures(dip: str, system: System) -> None:
    shade = made(replace(RELAXED, dip=inches(dip)))
    drawing = dip_graph(shade, system)
    assert collisions(drawing) == []
    assert strays(drawing) == []
    assert all(figure_at(shade, each.path) is not None for each in drawing.tags())


@pytest.mark.parametrize(
    "design", [Choices(), replace(RELAXED, widened_hem=True), replace(RELAXED, dip=inches("0"))]
)
def test_sides_that_do_not_draw_in_have_no_graph(design: Choices) -> None:
    assert dip_graph(made(design), System.INCH).description.startswith("Nothing to draw")
