"""Tubes, boards, bars, rods, cords and tapes: what to buy, and where to cut."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from foldwright.web.desk import Sorry
from foldwright.web.opened import OpenJob
from foldwright.web.stock import material_views

NOT_READ = "This job has faults. Settle those on its page first."


def show_stock(request: Request) -> Response:
    """Show every material with its bars, marked from one end."""
    job = OpenJob.of(request)
    if job.reading.job is None:
        raise Sorry(409, "Not yet", NOT_READ, faults=job.reading.faults)
    views = material_views(job, job.reading.job)
    return job.desk.page(request, "stock.html", job=job, system=job.system, views=views)
