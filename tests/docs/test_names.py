"""docs/names.md names every quantity of a result once, and nothing that is not there."""

from __future__ import annotations

import re
from dataclasses import fields
from typing import Any

import pytest
from tests.docs.reading import ROOT

from foldwright.core.design.layout import (
    BandPlan,
    ColumnPlan,
    LayerCut,
    Layout,
    Piece,
    PocketPlan,
    RowPlan,
    SewnLine,
    Stack,
    SwagPlan,
    TapePlan,
    ValancePlan,
    WidthPlan,
)
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Spring
from foldwright.core.lift.balance import Balance, Window
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.prove.advice import Advice, Cause, NextStep, RiseTold
from foldwright.core.prove.spring_bench import Characterised
from foldwright.core.prove.telling_record import Compared, KindTold
from foldwright.core.prove.visit import Visit
from foldwright.core.rig.headrail import Adjustment, CordLine, Headrail
from foldwright.core.safety.choices import SafetyChoices
from foldwright.core.safety.report import (
    Governing,
    InnerCord,
    LabelText,
    RuleLine,
    SafetyReport,
)
from foldwright.core.weigh.load import PanelLoad, Weights

RESULTS: tuple[type[Any], ...] = (
    FinishedSize,
    RowPlan,
    ColumnPlan,
    WidthPlan,
    LayerCut,
    Piece,
    PocketPlan,
    SewnLine,
    Stack,
    SwagPlan,
    TapePlan,
    ValancePlan,
    BandPlan,
    Layout,
    Weights,
    Window,
    Balance,
    CordLine,
    Adjustment,
    Headrail,
    Advice,
    Cause,
    NextStep,
    RiseTold,
    Characterised,
    Compared,
    KindTold,
    Visit,
    InnerCord,
    RuleLine,
    Governing,
    LabelText,
    SafetyReport,
)
OTHERS: tuple[type[Any], ...] = (PanelLoad, Habits, SafetyChoices, Spring)
FIGURES = re.compile(r"^(tuple\[)?(L|N|Figure\[(int|float|Any)\])\b")


def rows() -> list[list[str]]:
    text = (ROOT / "docs" / "names.md").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if line.startswith("| `")]
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines]


def listed() -> list[str]:
    return [name for row in rows() for name in re.findall(r"`(\w+)`", row[0])]


def test_no_name_is_listed_twice() -> None:
    assert sorted(listed()) == sorted(set(listed()))


@pytest.mark.parametrize("result", RESULTS, ids=lambda result: result.__name__)
def test_every_quantity_of_a_result_is_listed(result: type[Any]) -> None:
    quantities = {field.name for field in fields(result) if FIGURES.match(str(field.type))}
    assert quantities - set(listed()) == set()


def test_every_listed_name_is_a_field() -> None:
    known = {field.name for each in (*RESULTS, *OTHERS) for field in fields(each)}
    assert set(listed()) - known == set()


def test_every_listed_name_has_its_unit_and_its_meaning() -> None:
    assert all(row[2] and row[3] for row in rows())
