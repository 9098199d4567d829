"""How a shade rises when it is let go: graphs, the moving shade, and each symptom explained."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.drawing.elevation import elevation
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.rise_graph import rise_graph
from foldwright.core.why.figure import Figure
from foldwright.web.bench import BenchView
from foldwright.web.desk import Sorry
from foldwright.web.figures import FigureIndex
from foldwright.web.opened import OpenJob, raise_share
from foldwright.web.pages.bench import bench_view, state_of
from foldwright.web.pages.why import trail_to, why_page
from foldwright.web.shop_record import expectation
from foldwright.web.wording import Wording
from foldwright.work.bench_advice import Rising, rising_of
from foldwright.write.svg import svg

FRONT = Frame(width=110.0, height=130.0)
GRAPHS = Frame(width=150.0, height=190.0)
NO_SPRING = "No spring of known strength lifts this shade, so it does not rise by itself."
STEP_S = 0.25


@dataclass(frozen=True, kw_only=True)
class RiseView:
    """The rise of one shade at one moment, for one reader."""

    bench: BenchView
    rising: Rising
    share: float  # of the time that it takes

    @property
    def url(self) -> str:
        """Give the address of the page."""
        return f"{self.bench.url}/rise"

    @property
    def longest_s(self) -> float:
        """Give how long the rise takes."""
        return self.rising.told.curve.time_s[-1]

    @property
    def seconds(self) -> float:
        """Give the moment that is shown."""
        return self.share * self.longest_s

    @cached_property
    def figures(self) -> FigureIndex:
        """Give every figure of the page under its name."""
        return FigureIndex(None, {"rise": self.rising})

    @cached_property
    def wording(self) -> Wording:
        """Give what shows the figures."""
        session = self.bench.session_id
        keep = f"session={session}&amp;" if session else ""
        return Wording(self.figures, self.bench.system, f"{self.url}/why", keep)

    @property
    def numbers(self) -> tuple[Figure[Any], ...]:
        """Give what is told of the rise, in the order of the work."""
        told = self.rising.told
        return (
            told.ending,
            told.end_raise,
            told.rise_time,
            told.top_speed,
            told.arrival_speed,
            told.arrival_energy,
            told.hand_force_down,
            told.hand_force_up,
        )

    @property
    def front(self) -> Markup:
        """Draw the shade as it stands at the moment."""
        plan = self.bench.shade.plan
        assert plan is not None  # noqa: S101 - without a plan there is no bench
        travel = self.rising.told.curve.at_m[-1]
        raised = self.rising.told.curve.raise_at(self.seconds) / travel if travel else 0.0
        return Markup(svg(elevation(plan, min(1.0, raised), self.bench.system, FRONT)))  # noqa: S704 - drawn here

    @property
    def graph(self) -> Markup:
        """Draw height, speed and hand forces, with the moment marked."""
        drawing = rise_graph(self.rising.told, self.seconds, self.bench.system, GRAPHS)
        return Markup(svg(drawing))  # noqa: S704 - drawn here

    @property
    def moments(self) -> tuple[tuple[str, str], ...]:
        """Give the steps by which the moment can be moved without a pull."""
        step = STEP_S / self.longest_s if self.longest_s else 1.0
        steps = (
            ("At the release", 0.0),
            ("A little back", self.share - step),
            ("A little on", self.share + step),
            ("At the end", 1.0),
        )
        return tuple((label, f"{min(1.0, max(0.0, share)):.3f}") for label, share in steps)


def show_rise(request: Request) -> Response:
    """Show the rise with the turns that are in the spring now."""
    return _page(request, "rise.html")


def draw_rise(request: Request) -> Response:
    """Give the drawings alone, at the moment asked for."""
    return _page(request, "parts/rise_drawing.html")


def tell_rise_why(request: Request) -> Response:
    """Tell why a figure of the rise is what it is."""
    view, job = _view(request), OpenJob.of(request)
    figure = view.figures.at(request.query_params.get("figure", ""))
    return why_page(
        request, figure, job.system, back=view.url, trail=trail_to(job, view.bench.shade)
    )


def _page(request: Request, template: str) -> Response:
    view, job = _view(request), OpenJob.of(request)
    return job.desk.page(
        request, template, job=job, rise=view, view=view.bench.shade, system=job.system
    )


def _view(request: Request) -> RiseView:
    bench, job = bench_view(request), OpenJob.of(request)
    plan, read = bench.shade.plan, job.reading.job
    assert plan is not None  # noqa: S101 - without a plan there is no bench
    assert read is not None  # noqa: S101 - as above
    desk, session = job.desk, bench.session
    rising = desk.rises.get(
        state_of(desk, session, plan),
        plan,
        lambda: rising_of(session, plan, read, expectation(desk, session, plan)),
    )
    if rising is None:
        raise Sorry(409, "It does not rise by itself", NO_SPRING)
    share = raise_share(request.query_params.get("raise"))
    return RiseView(bench=bench, rising=rising, share=share)
