"""`foldwright cut`: where every piece of a job is cut from its cloths, and what that takes."""

from __future__ import annotations

import argparse
import sys

from foldwright import __version__
from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.cut_lines import change_lines, cloth_lines
from foldwright.cli.stopping import Stopwatch
from foldwright.cli.telling import say, say_json, tell_faults
from foldwright.core.cloth.order import ClothPlan, Flaw
from foldwright.core.cloth.wording import gap_in_words
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable
from foldwright.core.why.fault import Fault
from foldwright.work.cut_answer import CutAnswer, WhatIfAnswer, cloth_answer, what_if_answer
from foldwright.work.cut_orders import ClothToCut
from foldwright.work.cutting import ClothCut, Watch, cloths_of, cut_cloths, cut_one
from foldwright.work.files import CannotUse
from foldwright.work.job import Job
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.what_if import (
    Change,
    FlawHere,
    OtherSize,
    WhatIf,
    as_if,
    change_between,
    check_question,
    concerns,
)

NO_CLOTH = Fault(
    where="shades",
    what="no shade is known well enough to cut cloth for",
    remedy="Give each shade its measurements, its mount and its cloth.",
)
LONGEST_ROLL = Length.metres(200)


def run(options: argparse.Namespace) -> int:
    """Plan the cuts of a job; a cloth that cannot be cut keeps no other from its plan."""
    try:
        job = _job(options)
        what = what_is_asked(options, job.system)
        cloths = cloths_of(job)
        check_question(cloths, what)
    except CannotUse as trouble:
        tell_faults(trouble.faults, as_json=options.json)
        return BAD_INPUT
    if not cloths:
        tell_faults((NO_CLOTH,), as_json=options.json)
        return BAD_INPUT
    return _cut(job, cloths, what, options)


def _job(options: argparse.Namespace) -> Job:
    reading = load_job(options.job or DEMO_JOB, options.shop)
    if reading.job is None:
        raise CannotUse(reading.faults)
    return reading.job


def _cut(
    job: Job, cloths: tuple[ClothToCut, ...], what: WhatIf, options: argparse.Namespace
) -> int:
    share = 0.5 if what.asks else 1.0
    with Stopwatch() as stopwatch:
        watch = _progress(job.system)
        cuts = cut_cloths(
            cloths, time_given_s=options.seconds * share, clock=stopwatch.read, watch=watch
        )
        others = [_other(cut, what, options.seconds * share, stopwatch) for cut in cuts]
    if options.json:
        _say_json(job, cuts, others)
    else:
        _say(job, cuts, others)
    asked = [cut for cut in (*cuts, *others) if cut is not None]
    return BAD_INPUT if any(cut.plan is None for cut in asked) else GOOD


def _progress(system: System) -> Watch:
    """Tell of each better plan where somebody watches."""

    def watch(cloth: ClothToCut, plan: ClothPlan) -> bool:
        if sys.stderr.isatty():
            sys.stderr.write(f"{cloth.title}: {gap_in_words(plan, system)}\n")
        return True

    return watch


def _other(cut: ClothCut, what: WhatIf, seconds: float, stopwatch: Stopwatch) -> ClothCut | None:
    """Plan the cloth as it would be, where anything asked concerns it."""
    order = cut.to_cut.order
    if not concerns(order, what):
        return None
    return cut_one(
        cut.to_cut,
        as_if(order, what),
        time_given_s=seconds,
        clock=stopwatch.read,
        watch=lambda _cloth, _plan: True,
    )


def _change(cut: ClothCut, other: ClothCut) -> Change | None:
    if cut.plan is None or other.plan is None:
        return None
    return change_between(cut.plan, other.plan)


def _say_json(job: Job, cuts: tuple[ClothCut, ...], others: list[ClothCut | None]) -> None:
    cloths = tuple(
        cloth_answer(cut, job.system, _what_if(cut, other, job.system))
        for cut, other in zip(cuts, others, strict=True)
    )
    answer = CutAnswer(program_version=__version__, job=job.head, cloths=cloths)
    say_json(answer, job.system)


def _what_if(cut: ClothCut, other: ClothCut | None, system: System) -> WhatIfAnswer | None:
    return None if other is None else what_if_answer(other, _change(cut, other), system)


def _say(job: Job, cuts: tuple[ClothCut, ...], others: list[ClothCut | None]) -> None:
    for cut, other in zip(cuts, others, strict=True):
        for line in cloth_lines(cut, job.system):
            say(line)
        if other is not None:
            for line in change_lines(other, _change(cut, other), job.system):
                say(f"  {line}")
        say()


def what_is_asked(options: argparse.Namespace, system: System) -> WhatIf:
    """Read what if.

    Raises: CannotUse with every length that cannot be read.
    """
    asked = _Asked(system)
    repeat = options.if_repeat_longer
    longer = ZERO if repeat is None else asked.length("--if-repeat-longer", repeat, signed=True)
    what = WhatIf(
        repeat_longer=longer,
        flaws=tuple(asked.flaw(words) for words in options.if_flaw),
        pieces=tuple(asked.size(words) for words in options.if_piece),
    )
    if asked.faults:
        raise CannotUse(tuple(asked.faults))
    return what


class _Asked:
    """Reads the lengths of a question, and gathers what is wrong with them."""

    def __init__(self, system: System) -> None:
        self.system = system
        self.faults: list[Fault] = []

    def flaw(self, words: list[str]) -> FlawHere:
        along, across, length, width = (self.length("--if-flaw", word) for word in words[1:])
        flaw = Flaw(along=along, across=across, length=length, width=width)
        return FlawHere(roll=words[0], flaw=flaw)

    def size(self, words: list[str]) -> OtherSize:
        width, length = (self.length("--if-piece", word) for word in words[1:])
        return OtherSize(piece=words[0], width=width, length=length)

    def length(self, where: str, text: str, *, signed: bool = False) -> Length:
        try:
            return read_length(text, self.system, signed=signed, longest=LONGEST_ROLL)
        except Unreadable as trouble:
            self.faults.append(Fault(where=where, what=trouble.what, remedy=trouble.remedy))
            return ZERO
