"""The house habits: complete, of the right kind, and honest about what is invented."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

import pytest

from foldwright.core.facts.habits import Habits
from foldwright.core.facts.house import house_habits
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.source import Status
from foldwright.core.why.telling import show, show_value
from foldwright.core.why.walking import walk_figures

HABITS = house_habits()
INVENTED_RANGES = ("constant_friction_n_m", "load_friction", "spring_hysteresis")


@pytest.mark.parametrize("field", fields(Habits), ids=lambda field: field.name)
def test_each_habit_is_of_the_kind_its_field_asks(field: object) -> None:
    name, kind = field.name, field.type  # type: ignore[attr-defined]
    figure: Figure[Any] = getattr(HABITS, name)
    assert isinstance(figure.value, Length if kind == "L" else float)
    assert (figure.unit is Unit.LENGTH) == (kind == "L")
    assert figure.because.endswith(".")
    assert not figure.inputs


def test_published_habits_name_their_source_and_others_do_not_borrow_one() -> None:
    for figure in walk_figures(HABITS):
        assert (figure.source is not None) == (figure.status is Status.PUBLISHED), figure.name


def test_no_habit_poses_as_measured_or_as_a_suppliers() -> None:
    allowed = {Status.PUBLISHED, Status.PRACTICE, Status.HOUSE}
    assert {figure.status for figure in walk_figures(HABITS)} == allowed


@pytest.mark.parametrize("name", INVENTED_RANGES)
def test_invented_friction_is_a_range_that_says_so(name: str) -> None:
    figure: Figure[float] = getattr(HABITS, name)
    assert figure.status is Status.HOUSE
    assert "Invented" in figure.because
    assert figure.low is not None
    assert figure.high is not None
    assert figure.low < figure.value < figure.high


def test_values_lie_inside_their_ranges() -> None:
    for figure in walk_figures(HABITS):
        if figure.low is not None:
            assert figure.low <= figure.value <= figure.high, figure.name


def test_names_are_the_shops_own_words_and_differ() -> None:
    names = [figure.name for figure in walk_figures(HABITS)]
    assert len(set(names)) == len(names)


def test_habits_of_the_trade_stand_as_the_trade_says_them() -> None:
    assert HABITS.safety_wraps.value == 3
    assert HABITS.release_turns.value == 0.25
    assert (HABITS.clip_nearest.value, HABITS.clip_farthest.value) == (Length.mm(50), Length.mm(75))
    assert show(HABITS.inside_deduction, System.INCH) == "1/4 in"
    assert show_value(HABITS.load_friction, System.METRIC) == "12 %"
