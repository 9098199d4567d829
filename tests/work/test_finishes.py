"""The sample wall: what hangs on, in and before a shade, planned and drawn without a collision."""

from __future__ import annotations

from io import BytesIO

import pdfplumber
import pytest
from tests.core.drawing.measuring import collisions, strays
from tests.core.drawing.test_every_drawing import VIEWS
from tests.papers.shades import HEADER

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.tags import figure_at
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Severity
from foldwright.papers.header import Paper
from foldwright.papers.table_sheet import table_sheet
from foldwright.work.jobfile import FINISHES_JOB, load_job
from foldwright.work.planning import plan_job

READING = load_job(FINISHES_JOB)
assert READING.job is not None, READING.faults
PLANS = {plan.spec.tag: plan for plan in plan_job(READING.job).shades}


@pytest.mark.parametrize("plan", PLANS.values(), ids=list(PLANS))
def test_each_is_planned_to_the_headrail_and_nothing_stops_it(plan: ShadePlan) -> None:
    loud = [each for each in plan.findings if each.severity is not Severity.NOTE]
    assert [each.id for each in loud if not each.id.startswith("safety.")] == []
    assert [each.id for each in loud if each.severity is Severity.STOP] == []
    assert plan.headrail is not None
    assert plan.spec.note.endswith(".")


@pytest.mark.parametrize("tag", PLANS)
@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("system", System)
def test_words_stand_clear_and_marks_lead_to_figures(tag: str, view: str, system: System) -> None:
    drawing = VIEWS[view](PLANS[tag], system)
    assert collisions(drawing) == []
    assert strays(drawing) == []
    assert all(figure_at(PLANS[tag], each.path) is not None for each in drawing.tags())


@pytest.mark.parametrize("plan", PLANS.values(), ids=list(PLANS))
def test_each_step_of_the_sewing_stands_once(plan: ShadePlan) -> None:
    assert plan.layout is not None
    titles = [step.title for step in plan.layout.sewing]
    assert len(set(titles)) == len(titles)


@pytest.mark.parametrize("tag", PLANS)
def test_the_table_sheet_lists_all_that_is_cut_on_one_page(tag: str) -> None:
    plan = PLANS[tag]
    assert plan.layout is not None
    with pdfplumber.open(BytesIO(table_sheet(plan, HEADER, Paper.A4, System.INCH))) as sheet:
        (page,) = sheet.pages
        words = " ".join(page.extract_text().split())
    assert all(cut.layer in words for cut in plan.layout.cuts)
    assert all(piece.name in words for piece in plan.layout.pieces)
    assert ("Valance and flaps" in words) is (plan.layout.valance is not None)
