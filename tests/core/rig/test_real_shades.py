"""Headrails of the demo job, through every room."""

from __future__ import annotations

import math
from functools import cache

import pytest

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import StyleName
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.rig.headrail import Headrail
from foldwright.core.why.telling import fill
from foldwright.work.jobfile import load_job
from foldwright.work.planning import plan_job
from foldwright.work.shop import HOUSE_SHOP

DEMO = HOUSE_SHOP.parent / "demo" / "guesthouse.toml"


@cache
def shades() -> dict[str, ShadePlan]:
    job = load_job(DEMO).job
    assert job is not None
    return {plan.spec.tag: plan for plan in plan_job(job).shades if plan.headrail}


def rail_of(plan: ShadePlan) -> Headrail:
    assert plan.headrail is not None
    return plan.headrail


def every(*, cords_only: bool = False) -> list[ShadePlan]:
    return [plan for plan in shades().values() if plan.chosen.cord or not cords_only]


def test_the_demo_job_has_headrails_to_look_at() -> None:
    assert len(every()) >= 8
    assert 0 < len(every(cords_only=True)) < len(every())


def test_no_headrail_of_the_demo_is_stopped() -> None:
    for plan in every():
        stopped = [
            finding.id
            for finding in plan.findings
            if finding.id.startswith("rig.") and finding.severity.value != "note"
        ]
        assert not stopped, plan.spec.tag


def test_wraps_on_the_tube_take_up_the_raise_to_the_stop() -> None:
    """The turns of the balance and the marks of the headrail tell one and the same raise."""
    for plan in every():
        rail, size, layout, balance = rail_of(plan), plan.size, plan.layout, plan.balance
        assert size
        assert layout
        assert balance
        raised = size.drop.value - layout.rows.first_row.value - rail.up_stop.value
        mean_arm = (balance.arm_lowered.value + balance.arm_raised.value).in_metres / 2
        wound = rail.travel_wraps.value * 2 * math.pi * mean_arm
        assert wound == pytest.approx(raised.in_metres, rel=2e-3), plan.spec.tag


def test_the_bottom_edge_at_the_stop_is_the_lowest_visible_edge_of_a_flat_shade() -> None:
    """Loops may hang lower than the bottom edge, folds of a flat shade may not."""
    for plan in every():
        assert plan.layout
        below = plan.layout.stack.raised_size.value - rail_of(plan).hem_at_stop.value
        assert below >= Length.mm(-1), plan.spec.tag
        if plan.layout.style is StyleName.FLAT:
            assert below <= Length.mm(1), plan.spec.tag


def test_bands_stay_between_the_brackets_and_apart() -> None:
    for plan in every():
        rail, bracket = rail_of(plan), plan.chosen.bracket
        assert bracket
        inner = bracket.inset + bracket.width - rail.tube_start.value
        marks = [inner, rail.tube_cut.value - inner]
        for line in rail.lines:
            marks += sorted((line.band_start.value, line.band_end.value))
        edges = [marks[0], *marks[2:], marks[1]]
        assert edges == sorted(edges), plan.spec.tag


def test_turns_wound_keep_within_the_spring() -> None:
    for plan in every():
        window = plan.balance.window if plan.balance else None
        turns = rail_of(plan).pretension_turns
        if window and turns and window.most_by_spring:
            assert turns.value <= window.most_by_spring.value, plan.spec.tag


@pytest.mark.parametrize("system", list(System))
def test_every_sentence_is_told_without_a_gap(system: System) -> None:
    for plan in every():
        for step in rail_of(plan).steps:
            assert "{" not in fill(step.instruction, step.figures, system)
        for finding in plan.findings:
            if finding.id.startswith("rig."):
                assert "{" not in fill(finding.sentence, finding.figures, system)
