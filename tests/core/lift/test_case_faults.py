"""A lift case that cannot be is refused, with all that is wrong at once."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from tests.core.lift.worked import LIKELIEST, PANEL, B, case, wound

from foldwright.core.lift.case import LiftCase, answer_case
from foldwright.core.lift.givens import ImpossibleCase
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.weigh.impossible import ImpossiblePanel

WRONG: list[tuple[str, dict[str, Any]]] = [
    ("tube_outside_m", {"tube_outside_m": 0.0}),
    ("tube_outside_m", {"tube_outside_m": math.nan}),
    ("cord_diameter_m", {"cord_diameter_m": -0.001}),
    ("cord_diameter_m", {"cord_diameter_m": None}),
    ("cord_diameter_m", {"tape_thickness_m": 0.0004}),
    ("load_friction", {"load_friction": 1.0}),
    ("load_friction", {"load_friction": Span(likely=0.1, low=-0.1, high=0.2)}),
    ("load_friction", {"load_friction": Span(likely=0.1, low=0.2, high=0.3)}),
    (
        "spring.rate_n_m_turn",
        {"spring": SpringCase(rate_n_m_turn=Span(likely=0.1, low=0.01, high=0.02))},
    ),
    ("spring_hysteresis", {"spring_hysteresis": math.inf}),
    ("cloth_mass_spread", {"cloth_mass_spread": -0.1}),
    ("springs_side_by_side", {"springs_side_by_side": 0}),
    ("hand_force_limit_n", {"hand_force_limit_n": 0.0}),
    ("turns", {"turns": -1.0}),
    ("winding_step_turns", {"winding_step_turns": 0.0}),
    ("spring.rate_n_m_turn", {"spring": SpringCase()}),
    ("spring.rate_n_m_turn", {"spring": SpringCase(rate_n_m_turn=-0.03)}),
    ("spring.pairs", {"spring": SpringCase(pairs=((0.03, 0.0),))}),
]


@pytest.mark.parametrize(("where", "wrong"), WRONG)
def test_what_cannot_be_is_named(where: str, wrong: dict[str, Any]) -> None:
    with pytest.raises(ImpossibleCase) as refusal:
        answer_case(case(wound(B), **wrong) if "spring" not in wrong else case(**wrong), LIKELIEST)
    assert [fault.where for fault in refusal.value.faults] == [where]
    assert refusal.value.faults[0].remedy.endswith(".")


def test_all_faults_are_named_at_once() -> None:
    with pytest.raises(ImpossibleCase) as refusal:
        answer_case(case(tube_outside_m=-1.0, turns=-1.0, load_friction=2.0), LIKELIEST)
    assert {fault.where for fault in refusal.value.faults} == {
        "tube_outside_m",
        "turns",
        "load_friction",
    }


def test_an_impossible_panel_is_refused() -> None:
    with pytest.raises(ImpossiblePanel):
        answer_case(case(load=replace(PANEL, rows_n=())), LIKELIEST)


@pytest.mark.parametrize("draws", [np.zeros((3, 4)), np.zeros(16)])
def test_draws_of_another_shape_are_refused(draws: np.ndarray[Any, np.dtype[np.float64]]) -> None:
    with pytest.raises(ValueError, match="rows of 16"):
        answer_case(case(wound(B)), draws)


def test_what_is_left_out_is_the_house_habit() -> None:
    bare = LiftCase(load=PANEL, tube_outside_m=0.038, cord_diameter_m=0.0014)
    assert isinstance(bare.load_friction, Span)
    assert bare.load_friction.low < bare.load_friction.likely < bare.load_friction.high
    assert answer_case(bare, LIKELIEST).window is None
