"""The cut plans of a job: found while the page is open, and asked what if."""

from __future__ import annotations

import time
from collections.abc import Iterator, Mapping

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.cloth.order import Flaw
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable
from foldwright.core.why.fault import Fault
from foldwright.web.cut_sheets import search_key, search_of, set_cut_sheet
from foldwright.web.cuts import LONGER_SECONDS, ChangeView, ClothView, change_view
from foldwright.web.desk import Sorry, see
from foldwright.web.opened import OpenJob
from foldwright.web.pages.papers import paper_asked
from foldwright.web.printing import PAPER_WORDS
from foldwright.web.rolls import rolls_of
from foldwright.work.cut_search import CutSearch
from foldwright.work.cutting import cut_one
from foldwright.work.files import CannotUse
from foldwright.work.job import Job
from foldwright.work.packet import cut_sheet_name
from foldwright.work.what_if import (
    FlawHere,
    OtherSize,
    WhatIf,
    as_if,
    change_between,
    check_question,
    concerns,
)

SECONDS_TO_ASK = 3.0
LONGEST_ROLL = Length.metres(200)
FLAW_FIELDS = ("flaw_along", "flaw_across", "flaw_length", "flaw_width")
SIZE_FIELDS = ("piece_width", "piece_length")
REPEAT_FIELDS = ("repeat_longer",)  # may be shorter, so below zero
NOT_READ = "This job has faults. Settle those on its page first."
NO_CLOTH = "No shade of this job is known well enough to cut cloth for it."


def show_cloth(request: Request) -> Response:
    """Show every cloth with its plan as it stands, and what would be if asked."""
    job = OpenJob.of(request)
    search = search_of(job, _readable(job))
    views = _views(search, job.system)
    asked = {name: value for name, value in request.query_params.items() if value.strip()}
    answers, faults = _what_if(search, views, asked, job)
    return job.desk.page(
        request,
        "cloth.html",
        job=job,
        sizes=PAPER_WORDS,
        rolls=rolls_of(job.entry.document),
        system=job.system,
        search=search,
        views=views,
        waiting=sum(cut is None for cut in search.cuts),
        asked=asked,
        answers=answers,
        faults=faults,
    )


def look_longer(request: Request, _form: FormData) -> Response:
    """Look for better plans for longer."""
    job = OpenJob.of(request)
    job.desk.cuts.begin(search_key(job), _readable(job), LONGER_SECONDS)
    return see(f"{job.url}/cloth")


def take_best(request: Request, _form: FormData) -> Response:
    """End the search and take the best plans so far."""
    job = OpenJob.of(request)
    search = search_of(job, _readable(job))
    search.end()
    search.wait(1.0)
    return see(f"{job.url}/cloth")


def give_cut_sheet(request: Request) -> Response:
    """Give the cut sheet of one cloth as a PDF, in the units of the job."""
    job = OpenJob.of(request)
    search = search_of(job, _readable(job))
    number: int = request.path_params["number"]
    cut = search.cuts[number - 1] if 1 <= number <= len(search.cuts) else None
    if cut is None or cut.plan is None:
        raise Sorry(
            404, "No such sheet", "This cloth has no cut plan. Look at the cloth of the job."
        )
    pdf = set_cut_sheet(job, cut, cut.plan, paper_asked(request))
    name = cut_sheet_name(number, cut.to_cut.title)
    return Response(
        pdf,
        media_type="application/pdf",
        headers={"Content-Disposition": f'inline; filename="{name}"'},
    )


def _readable(job: OpenJob) -> Job:
    if job.reading.job is None:
        raise Sorry(409, "Not yet", NOT_READ, faults=job.reading.faults)
    if not job.reading.job.shades:
        raise Sorry(409, "Not yet", NO_CLOTH)
    return job.reading.job


def _views(search: CutSearch, system: System) -> list[ClothView]:
    numbered = enumerate(search.cuts, start=1)
    searching = search.running
    return [
        ClothView(number=n, cut=cut, system=system, searching=searching)
        for n, cut in numbered
        if cut is not None
    ]


def _what_if(
    search: CutSearch, views: list[ClothView], asked: Mapping[str, str], job: OpenJob
) -> tuple[list[ChangeView], tuple[Fault, ...]]:
    try:
        what = read_what_if(asked, job.job_system)
        check_question(search.cloths, what)
    except CannotUse as trouble:
        return [], trouble.faults
    return [_answer(view, what) for view in views if concerns(view.cut.to_cut.order, what)], ()


def _answer(view: ClothView, what: WhatIf) -> ChangeView:
    other = cut_one(
        view.cut.to_cut,
        as_if(view.cut.to_cut.order, what),
        time_given_s=SECONDS_TO_ASK,
        clock=time.monotonic,
        watch=lambda _cloth, _plan: True,
    )
    plans = view.cut.plan, other.plan
    change = None if plans[0] is None or plans[1] is None else change_between(plans[0], plans[1])
    return change_view(ClothView(number=view.number, cut=other, system=view.system), change)


def read_what_if(asked: Mapping[str, str], system: System) -> WhatIf:
    """Read the form that asks what if.

    Raises: CannotUse with every length that is missing or cannot be read.
    """
    wanted = [
        name
        for fields in (FLAW_FIELDS, SIZE_FIELDS, REPEAT_FIELDS)
        if any(field in asked for field in fields)
        for name in fields
    ]
    lengths, faults = {}, []
    for name in wanted:
        try:
            lengths[name] = _length(asked, name, system)
        except Unreadable as trouble:
            where = name.replace("_", " ")
            faults.append(Fault(where=where, what=trouble.what, remedy=trouble.remedy))
    if faults:
        raise CannotUse(tuple(faults))
    return WhatIf(
        repeat_longer=lengths.get("repeat_longer", ZERO),
        flaws=tuple(_flaws(asked, lengths)),
        pieces=tuple(_sizes(asked, lengths)),
    )


def _flaws(asked: Mapping[str, str], lengths: Mapping[str, Length]) -> Iterator[FlawHere]:
    if "flaw_along" in lengths:
        along, across, length, width = (lengths[name] for name in FLAW_FIELDS)
        flaw = Flaw(along=along, across=across, length=length, width=width)
        yield FlawHere(roll=asked.get("flaw_roll", ""), flaw=flaw)


def _sizes(asked: Mapping[str, str], lengths: Mapping[str, Length]) -> Iterator[OtherSize]:
    if "piece_width" in lengths:
        width, length = (lengths[name] for name in SIZE_FIELDS)
        yield OtherSize(piece=asked.get("piece", ""), width=width, length=length)


def _length(asked: Mapping[str, str], name: str, system: System) -> Length:
    signed = name in REPEAT_FIELDS
    return read_length(asked.get(name, ""), system, signed=signed, longest=LONGEST_ROLL)
