"""Shades to print: the demo's, and some at the ends of what a workroom makes."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from functools import cache
from importlib.resources import as_file, files
from typing import Any

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.design.choices import RodPlace, RodPocket
from foldwright.core.measure.opening import AskedSize
from foldwright.core.quantity.length import Length
from foldwright.core.why.finding import Override
from foldwright.papers.sheets import Header
from foldwright.work.job import Job
from foldwright.work.jobfile import load_job
from foldwright.work.planning import plan_one

HEADER = Header(
    job="Guesthouse at the weir",
    version="3",
    printed_at=datetime(2026, 5, 4, 14, 10, tzinfo=UTC),
    replaces="2",
)
OVERRIDE = Override(
    finding="lift.nothing-fits", name="The maker", reason="The client asked for it in writing."
)


@cache
def demo_job() -> Job:
    with as_file(files("foldwright") / "demo" / "guesthouse.toml") as path:
        job = load_job(path).job
    assert job is not None
    return job


def _of(tag: str) -> ShadeSpec:
    return next(spec for spec in demo_job().shades if spec.tag == tag)


@cache
def demo_plan(tag: str) -> ShadePlan:
    return plan_one(demo_job(), _of(tag))


@cache
def overridden_plan() -> ShadePlan:
    """Plan the demo's impossible shade with its stop answered for."""
    return plan_one(demo_job(), replace(_of("Library"), overrides=(OVERRIDE,)))


def demo_tags() -> list[str]:
    return [spec.tag for spec in demo_job().shades]


def sized(tag: str, width: int, drop: int, **design: Any) -> ShadePlan:
    """Plan one of the demo's shades at another size."""
    spec = _of(tag)
    size = AskedSize(width=Length.inches(width), drop=Length.inches(drop), given_by="the client")
    return plan_one(demo_job(), replace(spec, asked=size, design=replace(spec.design, **design)))


EXTREMES = {
    "thirteen rows, eight columns": ("Parlour", 72, 96, {"row_count": 13, "column_count": 8}),
    "narrow and tall": ("Parlour", 14, 102, {}),
    "very wide": ("Parlour", 120, 36, {}),
    "very wide on a motor": ("Dining", 118, 84, {}),
    "looped": ("Bay", 30, 90, {}),
    "on tape": ("Snug", 72, 90, {}),
    "rods in mid-fold": ("Garden", 34, 84, {}),
    "rods in the lining": (
        "Garden",
        34,
        84,
        {"rods": RodPlace.ROWS, "rod_pocket": RodPocket.LINING},
    ),
    "small": ("Kitchen", 16, 24, {}),
}


@cache
def extreme(name: str) -> ShadePlan:
    tag, width, drop, design = EXTREMES[name]
    return sized(tag, width, drop, **design)
