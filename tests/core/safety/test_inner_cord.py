"""What a pull draws out behind a shade, against statics worked another way."""

from __future__ import annotations

from dataclasses import replace
from math import acos, exp, sin, sqrt

import pytest
from scipy.optimize import brentq
from tests.core.safety.shades import shade

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.length import Length
from foldwright.core.safety.choices import CordGuard
from foldwright.core.safety.example import ORDER
from foldwright.core.safety.inner_cord import drawn_cord_m, inner_cord, longest_stretch
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.load import PanelLoad
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import chosen


def weightless_cloth(bar_n: float) -> LoadCurve:
    """Give a shade whose load is its bar, however far it is raised."""
    return LoadCurve.of(
        PanelLoad(
            row_spacings_m=(0.2,) * 6,
            stacked_pitch_m=0.0,
            skirt_cloth_m=0.0,
            top_panel_m=0.2,
            cloth_n_m=0.0,
            bar_n=bar_n,
            rows_n=(0.0,) * 7,
            travel_m=1.4,
        )
    )


def drawn(bar_n: float, *, pull_n: float = 35.0, friction: float = 0.0, columns: int = 4) -> float:
    curve = weightless_cloth(bar_n)
    return drawn_cord_m(curve, columns=columns, stretch_m=0.2, pull_n=pull_n, friction=friction)


@pytest.mark.parametrize("bar_n", [75.0, 100.0, 200.0, 1000.0])
def test_two_legs_without_friction_stand_where_statics_puts_them(bar_n: float) -> None:
    """Twice the column's load times the sine of the legs' lean is the pull."""
    lean = 35.0 / (2 * bar_n / 4)
    assert drawn(bar_n) == pytest.approx(0.2 / sqrt(1 - lean**2) - 0.2, abs=0.0004)


@pytest.mark.parametrize("friction", [0.1, 0.2, 0.3])
@pytest.mark.parametrize("bar_n", [75.0, 120.0])
def test_friction_at_the_ring_helps_by_the_capstan(bar_n: float, friction: float) -> None:
    """Source: capstan-article, solved for the lean by a root finder."""
    lean = brentq(
        lambda angle: 2 * bar_n / 4 * exp(friction * angle) * sin(angle) - 35.0, 0.0, 1.57
    )
    expected = 0.2 / sqrt(1 - sin(lean) ** 2) - 0.2
    assert drawn(bar_n, friction=friction) == pytest.approx(expected, abs=0.0004)
    assert expected < drawn(bar_n)


def test_under_a_light_bar_the_whole_shade_can_be_drawn_up() -> None:
    """Both legs hang straight down, and still lift less than the pull."""
    assert drawn(2 * 35.0 - 1) == pytest.approx(1.4)
    assert drawn(3.0) == pytest.approx(1.4)


def test_a_harder_pull_draws_more_and_more_columns_hold_less() -> None:
    assert drawn(100, pull_n=20) < drawn(100, pull_n=35) < drawn(100, pull_n=49)
    assert drawn(100, columns=2) < drawn(100, columns=3) < drawn(100, columns=4)


def test_the_rows_that_are_raised_stop_it() -> None:
    """With nothing but rows of 20 N a column, it runs to the pick-up that holds it."""
    rows = (1.0, *(80.0,) * 6)
    curve = LoadCurve.of(replace(weightless_cloth(1.0).panel, rows_n=rows))
    found = drawn_cord_m(curve, columns=4, stretch_m=0.2, pull_n=35.0, friction=0.0)
    lean = acos(0.2 / (0.2 + found))
    assert found == pytest.approx(0.2, abs=0.0004)
    assert 2 * float(curve.load_before(0.19)) / 4 * sin(lean) < 35.0
    assert 2 * float(curve.load(found)) / 4 * sin(lean) >= 35.0


def test_the_freest_stretch_is_the_longer_of_rows_and_head() -> None:
    order = shade(Market.CANADA)
    assert longest_stretch(order).value == Length.mm(200)  # rows; 140 less 27 to the tube
    rows = replace(order.layout.rows, top_panel=chosen("top panel", Length.mm(260), Unit.LENGTH))
    order = replace(order, layout=replace(order.layout, rows=rows))
    assert longest_stretch(order).value == Length.mm(233)
    bare = replace(order, chosen=replace(order.chosen, bracket=None))
    assert longest_stretch(bare).value == Length.mm(260)


def test_span_and_loop_add_up_and_carry_the_range_of_the_friction() -> None:
    weights = ORDER.weights
    assert weights is not None
    heavy = replace(weights, load=replace(weights.load, bar_n=90.0))
    found = inner_cord(replace(shade(Market.CANADA), weights=heavy))
    assert found.drawn is not None
    assert found.span is not None
    assert found.loop is not None
    assert found.span.value == found.stretch.value + found.drawn.value
    assert found.loop.value == found.stretch.value + found.span.value
    assert found.drawn.low is not None
    assert found.drawn.high is not None
    assert found.drawn.low < found.drawn.value < found.drawn.high


def test_nothing_slides_into_a_cord_that_is_held() -> None:
    found = inner_cord(shade(Market.CANADA, cord_guard=CordGuard.HELD))
    assert found.span is not None
    assert found.span.value == found.stretch.value


def test_without_weights_only_the_taut_cord_is_known() -> None:
    found = inner_cord(replace(shade(Market.CANADA), weights=None))
    assert found.stretch.value == Length.mm(200)
    assert found.span is found.drawn is found.loop is None
