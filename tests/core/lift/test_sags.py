"""How far tube, bar and board sag under the shade, against sums by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.lift.bench import SHOP, Shade, named

from foldwright.core.design.choices import Choices
from foldwright.core.lift.bending import Beam, PointLoad, tube_second_moment
from foldwright.core.quantity.length import Length


def test_two_columns_share_the_load_by_halves() -> None:
    shade = Shade(width="24", drop="40", design=Choices(column_count=2))
    balance = shade.balance
    assert balance.tube_sag is not None
    bracket, tube = SHOP.brackets["bracket"], SHOP.tubes["tube 38"]
    board = Length.inches(24) - shade.habits.board_deduction.value
    span = (board - bracket.tube_deduction).in_metres
    edge = shade.habits.edge_distance.value.in_metres - (0.6096 - span) / 2
    beam = Beam(span_m=span, rigidity_n_m2=68.9e9 * tube_second_moment(0.038, 0.0012))
    half = balance.load_raised.value / 2
    loads = [PointLoad(load_n=half, at_m=at) for at in (edge, span - edge)]
    by_hand = beam.greatest_sag(loads, tube.line_mass_kg_m * 9.80665).sag_m
    assert balance.tube_sag.value.in_metres == pytest.approx(by_hand, rel=1e-3, abs=2e-9)


def test_a_thicker_board_sags_with_the_cube_of_its_thickness() -> None:
    board = SHOP.boards["pine"]
    light = replace(board, density_kg_m3=1e-6)
    double = replace(light, thickness=board.thickness * 2)
    sags = [
        replace(Shade(), shop=replace(SHOP, boards=named(each))).balance.board_sag  # type: ignore[arg-type]
        for each in (light, double)
    ]
    assert sags[0] is not None
    assert sags[1] is not None
    assert float(sags[0].value / sags[1].value) == pytest.approx(8, rel=1e-3)


def test_the_board_sags_twice_as_far_in_the_end_as_a_beam_does_at_once() -> None:
    balance = Shade().balance
    assert balance.board_sag is not None
    length = Length.inches("47.25") - Shade().habits.board_deduction.value
    span = length.in_metres / 2  # fixings at most 30 in apart
    total = balance.board_sag.inputs[0].value
    hung = total / length.in_metres + SHOP.tubes["tube 38"].line_mass_kg_m
    spread = (hung + 450 * 0.05 * 0.019) * 9.80665
    moment = 0.05 * 0.019**3 / 12
    at_once = 5 * spread * span**4 / (384 * 8e9 * moment)
    assert balance.board_sag.value.in_metres == pytest.approx(2 * at_once, rel=1e-4)


def test_bar_and_board_each_have_a_limit_of_their_own() -> None:
    shade, none = Shade(), Length.mm("0.001")

    def strict(name: str) -> set[str]:
        limit = replace(getattr(shade.habits, name), value=none)
        return replace(shade, habits=replace(shade.habits, **{name: limit})).ids()

    assert strict("bar_sag") - shade.ids() == {"lift.sag-bottom-bar"}
    assert strict("board_sag") - shade.ids() == {"lift.sag-board"}


def test_a_bar_between_many_cords_sags_less_than_one_between_two() -> None:
    few = Shade(design=Choices(column_count=5)).balance.bar_sag
    many = Shade(design=Choices(column_count=7)).balance.bar_sag
    assert few is not None
    assert many is not None
    assert many.value < few.value
