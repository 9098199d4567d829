"""The bench card on paper, with what was noted so far."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from foldwright.papers.bench_sheet import CardSheet, FilledStep, bench_sheet
from foldwright.papers.sheets import Header
from foldwright.web.bench import BenchView, StepView
from foldwright.web.desk import moment
from foldwright.web.opened import OpenJob
from foldwright.web.pages.bench import bench_view
from foldwright.web.pages.papers import file_name, paper_asked
from foldwright.web.printing import papers_of

SHEET_NAME = "bench-card"
JUDGED = ("pass", "ask", "stop")


def give_bench_card(request: Request) -> Response:
    """Give the card as a PDF, in the units of the job."""
    view, job = bench_view(request), OpenJob.of(request)
    history = job.desk.book.history(job.entry.job_id)
    plan = view.shade.plan
    assert plan is not None  # noqa: S101 - without a plan there is no card
    standing = papers_of(history, job.entry.number, view.shade.number, plan).standing
    header = Header(
        job=job.entry.name,
        version=standing.header_version,
        printed_at=job.desk.clock(),
        replaces=standing.header_replaces,
    )
    pdf = bench_sheet(plan, header, paper_asked(request), job.job_system, _sheet(view))
    name = file_name(view.shade, SHEET_NAME)
    return Response(
        pdf,
        media_type="application/pdf",
        headers={"Content-Disposition": f'inline; filename="{name}"'},
    )


def _sheet(view: BenchView) -> CardSheet:
    filled = {one.step.id: _filled(one, view) for one in view.steps}
    session = view.words_of(view.record) if view.record else ""
    return CardSheet(steps=view.session.steps, filled=filled, session=session)


def _filled(one: StepView, view: BenchView) -> FilledStep:
    standing = [line.entry for line in one.noted if not line.undone]
    if not standing:
        return FilledStep()
    last = standing[-1]
    return FilledStep(
        typed=view.session.typed(one.step),
        outcome=one.state if one.state in JUDGED else "",
        noted=", ".join(filter(None, (last.by, moment(last.noted_at)))),
    )
