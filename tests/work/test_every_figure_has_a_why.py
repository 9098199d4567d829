"""Every value of the demo job that a person can see says why it is what it is."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from foldwright.core.check.plan import ShadePlan
from foldwright.core.quantity.length import ZERO
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.source import Status
from foldwright.core.why.telling import SLOT, explain
from foldwright.core.why.walking import bare_numbers, walk_figures
from foldwright.work.asking import ROOMS
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.planning import plan_job

JOB = load_job(DEMO_JOB).job
PLANS = plan_job(JOB).shades if JOB else ()
SAMPLES = ("load.", "curve.")  # the panel in SI, and the lines of the raise graph
ORDINALS = ".number"  # the third cord, the seventh step
BY_DEFINITION = (0, 1, ZERO)  # no rows are tied, a flat shade's fullness is one
NEED_A_SOURCE = (Status.PUBLISHED,)


def rooms(plan: ShadePlan) -> dict[str, Any]:
    return {room: getattr(plan, room) for room in ROOMS}


def family(plan: ShadePlan) -> Iterator[Figure[Any]]:
    """Give every figure of a plan, of its findings and their remedies, and what they rest on."""
    told = [each.figures for each in plan.findings]
    offered = [remedy.figures for each in plan.findings for remedy in each.remedies]
    for figure in walk_figures((rooms(plan), told, offered)):
        yield from figure.family()


def test_the_demo_job_is_planned_whole() -> None:
    assert len(PLANS) == 9
    assert all(all(rooms(plan).values()) for plan in PLANS)


@pytest.mark.parametrize("plan", PLANS, ids=lambda plan: plan.spec.tag)
def test_no_value_stands_without_a_figure(plan: ShadePlan) -> None:
    for room, result in rooms(plan).items():
        places = bare_numbers(result)
        bare = [place for place in places if not place.startswith(SAMPLES)]
        assert [place for place in bare if not place.endswith(ORDINALS)] == [], room


@pytest.mark.parametrize("plan", PLANS, ids=lambda plan: plan.spec.tag)
def test_every_figure_has_a_sentence_that_names_all_it_rests_on(plan: ShadePlan) -> None:
    for figure in family(plan):
        assert figure.name.strip(), figure
        assert figure.because.strip().endswith((".", ")")), figure
        slots = {int(slot[1]) for slot in SLOT.finditer(figure.because)}
        assert slots <= set(range(len(figure.inputs))), figure.because


@pytest.mark.parametrize("plan", PLANS, ids=lambda plan: plan.spec.tag)
def test_what_is_derived_rests_on_something_and_what_is_published_has_a_source(
    plan: ShadePlan,
) -> None:
    for figure in family(plan):
        if figure.status is Status.DERIVED:
            by_definition = figure.value in BY_DEFINITION
            assert figure.inputs or by_definition, figure
        if figure.status in NEED_A_SOURCE:
            assert figure.source is not None, figure


@pytest.mark.parametrize("plan", PLANS, ids=lambda plan: plan.spec.tag)
@pytest.mark.parametrize("system", System)
def test_every_figure_can_be_explained(plan: ShadePlan, system: System) -> None:
    for figure in walk_figures(rooms(plan)):
        for line in explain(figure, system):
            assert line.told_above or line.sentence
            assert "{" not in line.text
