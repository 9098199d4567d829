"""Why a figure is what it is: a page of its own, or a leaf for the dialog."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.telling import Line, explain
from foldwright.web.desk import Desk, Sorry, text_of
from foldwright.web.opened import OpenJob, shade_number
from foldwright.web.pages.shade import typed_over
from foldwright.web.view import ShadeView

NO_FIGURE = (
    "This shade has no such figure as it now stands. "
    "Go back to the shade and touch the figure there."
)


@dataclass(kw_only=True, slots=True)
class Branch:
    """One line of an explanation with the lines that lie under it."""

    line: Line
    branches: list[Branch] = field(default_factory=list)


def tell_why(request: Request) -> Response:
    """Tell why a figure of the shade as saved is what it is."""
    job = OpenJob.of(request)
    return _why(request, job, job.view(shade_number(request, job)))


def tell_why_typed(request: Request, form: FormData) -> Response:
    """Tell the same of the shade as typed."""
    typed = typed_over(request, text_of(form))
    return _why(request, typed.job, typed.view)


def _why(request: Request, job: OpenJob, view: ShadeView) -> Response:
    figure = view.figures.at(request.query_params.get("figure", ""))
    return why_page(request, figure, job.system, back=view.url, trail=trail_to(job, view))


def trail_to(job: OpenJob, view: ShadeView) -> tuple[tuple[str, str], ...]:
    """Give the way to a shade: addresses with their words."""
    return (job.url, job.entry.name), (view.url, view.tag)


def why_page(
    request: Request,
    figure: Figure[Any] | None,
    system: System,
    *,
    back: str,
    trail: Sequence[tuple[str, str]],
) -> Response:
    """Tell why a figure is what it is, with the way back to where it was touched."""
    if figure is None:
        raise Sorry(404, "No such figure", NO_FIGURE)
    leaf = request.query_params.get("part") == "why"
    template = "parts/why.html" if leaf else "why.html"
    tree = as_tree(explain(figure, system))
    return Desk.of(request).page(
        request, template, trail=trail, back=back, figure=figure, tree=tree, system=system
    )


def as_tree(lines: Sequence[Line]) -> Branch:
    """Hang each line under the nearest line above it that is less deep."""
    root = Branch(line=lines[0])
    path = [root]
    for line in lines[1:]:
        branch = Branch(line=line)
        del path[line.depth :]
        path[-1].branches.append(branch)
        path.append(branch)
    return root
