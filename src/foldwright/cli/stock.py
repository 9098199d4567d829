"""`foldwright stock`: what a job cuts from tubes, boards, bars, rods, cords and tapes."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator

from foldwright import __version__
from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.stopping import Stopwatch
from foldwright.cli.telling import say, say_json, tell_faults
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.stock.order import Bar
from foldwright.core.why.fault import Fault
from foldwright.work.files import CannotUse
from foldwright.work.job import JobPlan
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.planning import plan_job
from foldwright.work.racking import save_rack
from foldwright.work.stock import MaterialCut, cut_stock, metres_needed, rack_after
from foldwright.work.stock_answer import bought_in, stock_answer

NO_PARTS = Fault(
    where="shades",
    what="no shade is known well enough to cut a part for",
    remedy="Give each shade its measurements, its mount and its materials.",
)
NOT_ALL_CUT = Fault(
    where="--rack",
    what="the rack is not written, since not every material can be cut",
    remedy="Mend what is said above, and ask again.",
)


def run(options: argparse.Namespace) -> int:
    """Plan the cuts of the job; a material that cannot be cut keeps no other from its plan."""
    reading = load_job(options.job or DEMO_JOB, options.shop)
    if reading.job is None:
        tell_faults(reading.faults, as_json=options.json)
        return BAD_INPUT
    plan = plan_job(reading.job)
    with Stopwatch() as stopwatch:
        cuts = cut_stock(plan, time_given_s=options.seconds, clock=stopwatch.read, watch=_progress)
    if not cuts:
        tell_faults((NO_PARTS,), as_json=options.json)
        return BAD_INPUT
    _tell(cuts, plan, options)
    faults = tuple(fault for cut in cuts for fault in cut.faults)
    faults += _racked(cuts, plan, options)
    tell_faults(faults, as_json=False)
    return BAD_INPUT if faults else GOOD


def _progress(cut: MaterialCut) -> bool:
    """Tell of each better plan where somebody watches."""
    if sys.stderr.isatty():
        sys.stderr.write(f"{cut.material}: {cut.said}\n")
    return True


def _tell(cuts: tuple[MaterialCut, ...], plan: JobPlan, options: argparse.Namespace) -> None:
    if options.json:
        say_json(stock_answer(cuts, plan, __version__), plan.job.system)
        return
    for cut in cuts:
        for line in material_lines(cut, plan.job.system):
            say(line)
        say()


def _racked(
    cuts: tuple[MaterialCut, ...], plan: JobPlan, options: argparse.Namespace
) -> tuple[Fault, ...]:
    """Write the rack as it is after the job, where a file is named for it: all of it or none."""
    if options.rack is None:
        return ()
    if any(cut.faults for cut in cuts):
        return (NOT_ALL_CUT,)
    try:
        save_rack(rack_after(cuts, plan), options.rack)
    except CannotUse as trouble:
        return trouble.faults
    return ()


def material_lines(cut: MaterialCut, system: System) -> Iterator[str]:
    """Give one material in lines: what is bought, each bar in cutting order, and the proof."""
    yield f"{cut.material}: {_count(cut)}, {metres_needed(cut):.2f} m in all"
    if cut.plan is None:
        return
    bought = ", ".join(f"{each.count} of “{each.bar}”" for each in bought_in(cut.plan))
    yield f"  buy {bought or 'nothing: the rack has it'}"
    for number, bar in enumerate(cut.plan.bars, start=1):
        yield f"  {number}. {_bar(bar, system)}"
    yield f"  {cut.said}"


def _count(cut: MaterialCut) -> str:
    return "1 piece" if len(cut.parts) == 1 else f"{len(cut.parts)} pieces"


def _bar(bar: Bar, system: System) -> str:
    cuts = ", ".join(f"{cut.need} {print_length(cut.length, system)}" for cut in bar.cuts)
    place = "from the rack" if bar.from_rack else "new"
    return f"{bar.name} ({place}): {cuts}; {print_length(bar.remainder, system)} left"
