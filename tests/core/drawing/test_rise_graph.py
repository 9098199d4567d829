"""The rise graphs: what they show is the rise as told, and every word can be read."""

from __future__ import annotations

from dataclasses import replace

import pytest
from scipy.stats import qmc
from tests.core.drawing.measuring import collisions, strays

from foldwright.core.drawing.model import Circle, Drawing, Hatch, Layer, Polyline
from foldwright.core.drawing.rise_graph import rise_graph
from foldwright.core.lift.choices import Brake
from foldwright.core.prove.advice import RiseTold
from foldwright.core.prove.example import CASE
from foldwright.core.prove.learning import learn
from foldwright.core.prove.telling_rise import tell_rise
from foldwright.core.quantity.rounding import System

DRAWS = qmc.Sobol(16, seed=1).random(256)
BRAKED = replace(CASE, brake=Brake.FITTED, brake_drag_n_m_s=0.012)


@pytest.fixture(scope="module")
def rises() -> dict[str, RiseTold]:
    free, braked = (learn(case, (), DRAWS) for case in (CASE, BRAKED))
    return {
        "free": tell_rise(free, 12.0),
        "braked": tell_rise(braked, 14.0),
        "stalls": tell_rise(braked, 6.0),
        "stays": tell_rise(braked, 0.5, from_m=1.3),
    }


NAMES = ("free", "braked", "stalls", "stays")


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("system", System)
@pytest.mark.parametrize("share", [0.0, 0.4, 1.0])
def test_every_word_can_be_read(
    name: str, system: System, share: float, rises: dict[str, RiseTold]
) -> None:
    told = rises[name]
    drawing = rise_graph(told, share * told.rise_time.value, system)
    assert collisions(drawing) == []
    assert strays(drawing) == []
    assert drawing.description.endswith(".")


def lines(drawing: Drawing) -> list[Polyline]:
    return [each for each in drawing.elements if isinstance(each, Polyline)]


def test_the_lines_are_those_of_the_rise(rises: dict[str, RiseTold]) -> None:
    height, speed, down, up = lines(rise_graph(rises["braked"], 0.0, System.METRIC))
    assert all(a.y <= b.y for a, b in zip(height.points, height.points[1:], strict=False))
    assert speed.points[0].y == pytest.approx(min(point.y for point in speed.points))
    assert all(a.y > b.y for a, b in zip(down.points, up.points, strict=True))


def test_the_marker_rises_with_the_seconds(rises: dict[str, RiseTold]) -> None:
    told = rises["braked"]
    heights = []
    for share in (0.0, 0.5, 1.0):
        drawing = rise_graph(told, share * told.rise_time.value, System.METRIC)
        dots = [each for each in drawing.elements if isinstance(each, Circle)]
        heights.append(dots[0].centre.y)
    assert heights == sorted(heights)
    assert heights[0] < heights[-1]


def test_ranges_are_hatched_apart(rises: dict[str, RiseTold]) -> None:
    drawing = rise_graph(rises["free"], 0.0, System.INCH)
    bands = [each for each in drawing.elements if isinstance(each, Hatch)]
    assert len({(band.degrees, band.gap) for band in bands}) == len(bands) == 2
    assert all(band.layer is Layer.SPRING for band in bands)


def test_the_moving_shade_goes_from_where_it_was_let_go_to_where_it_ends(
    rises: dict[str, RiseTold],
) -> None:
    curve = rises["braked"].curve
    shares = [curve.share_at(seconds) for seconds in curve.time_s]
    assert shares[0] == 0.0
    assert shares[-1] == pytest.approx(1.0)
    assert shares == sorted(shares)
