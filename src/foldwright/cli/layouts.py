"""`foldwright layouts`: the best layout of a shade and two others, with what each trades."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from foldwright import __version__
from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.telling import say, say_json, tell_faults
from foldwright.core.check.layouts.offers import Offer, Offers
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Change
from foldwright.core.why.telling import fill
from foldwright.work.answers import LayoutsAnswer, ShadeLayouts
from foldwright.work.asking import find_shade
from foldwright.work.files import CannotUse
from foldwright.work.job import Job
from foldwright.work.jobfile import load_job
from foldwright.work.layouts import offer_layouts
from foldwright.work.planning import plan_one

NONE = "no layout can be drawn yet; the plan of the job says why."


def run(options: argparse.Namespace) -> int:
    """Offer layouts for the shade asked for, or for every shade of the job."""
    reading = load_job(options.job, options.shop)
    if reading.job is None:
        tell_faults(reading.faults, as_json=options.json)
        return BAD_INPUT
    job = reading.job
    try:
        specs = (find_shade(job, options.shade),) if options.shade else job.shades
    except CannotUse as trouble:
        tell_faults(trouble.faults, as_json=options.json)
        return BAD_INPUT
    shades = tuple(_searched(job, spec) for spec in specs)
    if options.json:
        say_json(
            LayoutsAnswer(program_version=__version__, job=job.head, shades=shades), job.system
        )
        return GOOD
    for shade in shades:
        for line in _lines(shade, job.system):
            say(line)
    return GOOD


def _searched(job: Job, spec: ShadeSpec) -> ShadeLayouts:
    return ShadeLayouts(shade=spec.tag, layouts=offer_layouts(job, plan_one(job, spec)))


def _lines(shade: ShadeLayouts, system: System) -> Iterator[str]:
    if shade.layouts is None:
        yield f"{shade.shade}: {NONE}"
        return
    yield f"{shade.shade}:"
    for offer in shade.layouts.all:
        yield from _offer_lines(offer, system)
    yield from _in_the_way(shade.layouts, system)


def _offer_lines(offer: Offer, system: System) -> Iterator[str]:
    now = " (as it stands)" if offer.stands else ""
    yield f"  {offer.title}{now}: {fill(offer.way.sentence, offer.way.figures, system)}"
    if offer.way.changes:
        yield f"    - {', '.join(_typed(change) for change in offer.way.changes)}"


def _in_the_way(offers: Offers, system: System) -> Iterator[str]:
    for way in offers.in_the_way:
        yield f"  {fill(way.sentence, way.figures, system)}"
        yield f"    - {', '.join(_typed(change) for change in way.changes)}"


def _typed(change: Change) -> str:
    return f"{change.path} = {change.text}" if change.text else f"clear {change.path}"
