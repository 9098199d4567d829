"""`foldwright why`: tell why a figure of a shade is what it is."""

from __future__ import annotations

import argparse

from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.telling import say, say_json, tell_faults
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import explain, show
from foldwright.work.answers import WhyAnswer
from foldwright.work.asking import Asked, figures_of, find_figures, find_shade
from foldwright.work.files import CannotUse
from foldwright.work.jobfile import load_job
from foldwright.work.planning import plan_one


def run(options: argparse.Namespace) -> int:
    """Explain the figure asked for, or list all that can be asked for."""
    reading = load_job(options.job, options.shop)
    if reading.job is None:
        tell_faults(reading.faults, as_json=options.json)
        return BAD_INPUT
    try:
        spec = find_shade(reading.job, options.shade)
        figures = figures_of(plan_one(reading.job, spec))
        found = find_figures(figures, options.figure) if options.figure else figures
    except CannotUse as trouble:
        tell_faults(trouble.faults, as_json=options.json)
        return BAD_INPUT
    for asked in found:
        _tell(asked, spec.tag, reading.job.system, options)
    return GOOD


def _tell(asked: Asked, tag: str, system: System, options: argparse.Namespace) -> None:
    lines = explain(asked.figure, system)
    if options.json:
        say_json(WhyAnswer(shade=tag, place=asked.place, figure=asked.figure, lines=lines), system)
    elif options.figure:
        for line in lines:
            say("  " * line.depth + line.text)
    else:
        say(f"{asked.place}: {asked.figure.name}, {show(asked.figure, system)}")
