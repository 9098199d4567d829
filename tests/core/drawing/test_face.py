"""The face of shades whose hem dips."""

from __future__ import annotations

from itertools import pairwise
from math import dist

import pytest
from tests.core.layouts import inches, laid_out, sized

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.layout import Layout
from foldwright.core.drawing.face import Edge, Face, draw_face, draw_outline, face_of
from foldwright.core.drawing.folding import hang
from foldwright.core.drawing.model import Line, Polyline, Rectangle

INCH = 25.4
RELAXED = Choices(style=StyleName.RELAXED, dip=inches("4"), edge_distance=inches("2"))


def layout(design: Choices = RELAXED, width: str = "34") -> Layout:
    return laid_out(design, sized(width, "60"))


def face(share: float, made: Layout | None = None, width: str = "34") -> Face:
    made = made or layout()
    up = hang(made, drop_mm=60 * INCH, pitch_mm=3.0, raise_share=share)
    return face_of(made, up, width=float(inches(width).in_millimetres), scale=10.0)


def test_fully_down_a_relaxed_shade_is_a_plain_rectangle() -> None:
    down = face(0.0)
    assert down.hang.dip == 0
    assert isinstance(draw_outline(down), Rectangle)
    assert not [*draw_face(down)]


def test_the_middle_lags_behind_until_it_has_dipped() -> None:
    """Two inches up the middle is still on the sill; six inches up it has come up by two."""
    travel = layout().travel.value.in_inches
    for risen, dip, lowest in ((2, 2, 0), (4, 4, 0), (6, 4, 2)):
        up = face(float(risen / travel))
        assert up.hang.dip == pytest.approx(dip * INCH)
        assert up.hang.lowest == pytest.approx(lowest * INCH, abs=1e-6)


def test_the_hem_is_drawn_as_long_as_it_is() -> None:
    """Sides and columns stand where the layout says, and the swag is 30 in of hem."""
    up = face(1.0)
    made = layout()
    assert made.swag is not None
    assert made.swag.draw_in is not None
    drawn = made.swag.draw_in.value.in_millimetres
    hem = up.edge(up.lowest)
    assert hem[0].x == pytest.approx(drawn)
    assert hem[1].x == pytest.approx(2 * INCH + drawn)
    assert min(point.y for point in hem) == pytest.approx(up.hang.lowest)
    swag = hem[1:-1]
    long = sum(dist(here, there) for here, there in pairwise(swag))
    assert long == pytest.approx(30 * INCH, rel=1e-3)


def test_half_a_dip_draws_the_sides_in_by_a_quarter() -> None:
    travel = layout().travel.value.in_inches
    half, whole = (face(float(risen / travel)).draw_in for risen in (2, 4))
    assert half == pytest.approx(whole / 4)


def test_the_sides_taper_to_nothing_at_the_head() -> None:
    up = face(0.5)
    top = up.edge(Edge(height=up.hang.top, dip=up.hang.dip))
    assert (top[0].x, top[-1].x) == (0.0, up.width)
    outline = draw_outline(up)
    assert isinstance(outline, Polyline)
    assert outline.points[-2:] == ((up.width, up.hang.top), (0.0, up.hang.top))


def test_two_swags_meet_at_their_column() -> None:
    made = layout(RELAXED, "80")
    up = face(1.0, made, "80")
    hem = up.edge(up.lowest)
    at_columns = [point for point in hem if point.y == pytest.approx(up.hang.lowest_at_columns)]
    assert len(at_columns) == 5  # two sides and three columns
    assert at_columns[2].x == pytest.approx(40 * INCH)


def test_a_straight_shade_keeps_straight_lines() -> None:
    made = layout(Choices())
    up = face(0.5, made)
    assert all(isinstance(each, Line) for each in draw_face(up))
    assert isinstance(draw_outline(up), Rectangle)


def test_a_london_shade_swags_when_it_is_down_and_its_tails_hang_as_low() -> None:
    made = layout(Choices(style=StyleName.LONDON, dip=inches("6"), pouf=inches("12")), "42")
    down = face(0.0, made, "42")
    assert down.hang.dip == pytest.approx(6 * INCH)
    assert down.hang.lowest == pytest.approx(0.0, abs=1e-5)
    edge = down.edge(down.lowest)
    lows = [edge[0].y, min(point.y for point in edge[1:-1]), edge[-1].y]
    assert lows == pytest.approx([0.0, 0.0, 0.0], abs=1e-5)
    assert edge[1] == (down.columns[-1], pytest.approx(6 * INCH))


def test_a_balloon_is_pinched_at_its_rings_and_hangs_its_whole_pouf_between_them() -> None:
    made = layout(Choices(style=StyleName.BALLOON, width_fullness=2.5), "40")
    down = face(0.0, made, "40")
    assert made.swag is not None
    assert down.hang.dip == 0.0
    assert down.hang.lowest == pytest.approx(0.0, abs=1e-5)
    edge = down.edge(down.lowest)
    assert min(point.y for point in edge) == pytest.approx(0.0, abs=1e-5)
    assert max(point.y for point in edge) == pytest.approx(made.swag.dip.value.in_millimetres)


@pytest.mark.parametrize("share", [0.0, 0.5, 1.0])
def test_an_austrian_hem_hangs_in_scallops_at_every_raise(share: float) -> None:
    made = layout(Choices(style=StyleName.AUSTRIAN), "40")
    hung = face(share, made, "40")
    assert made.swag is not None
    assert hung.hang.dip == pytest.approx(made.swag.dip.value.in_millimetres)
    thin = [each for each in draw_face(hung) if isinstance(each, Polyline)]
    free = sum(not panel.closed for panel in hung.hang.panels)
    assert len(thin) >= 3 * free
    if share == 0.0:
        assert hung.hang.lowest == pytest.approx(0.0, abs=1e-5)


@pytest.mark.parametrize("share", [0.0, 0.5, 1.0])
def test_gathers_hang_from_the_head_of_gathered_cloth_and_of_no_other(share: float) -> None:
    def upright(style: StyleName) -> list[Line]:
        up = face(share, layout(Choices(style=style), "40"), "40")
        lines = [each for each in draw_face(up) if isinstance(each, Line)]
        return [each for each in lines if each.start.x == each.end.x]

    assert upright(StyleName.FLAT) == []
    gathers = upright(StyleName.BALLOON)
    assert len(gathers) > 20
    top = max(each.start.y for each in gathers)
    assert all(each.start.y == top and each.end.y < top for each in gathers)
