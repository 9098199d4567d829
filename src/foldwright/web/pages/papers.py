"""The papers of a job: which there are, which are superseded, and each as a PDF."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from foldwright.web.opened import OpenJob


def list_papers(request: Request) -> Response:
    job = OpenJob.of(request)
    return job.desk.page(request, "papers.html", job=job, system=job.system)


def give_paper(request: Request) -> Response:
    return Response("")
