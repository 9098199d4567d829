"""Answer lifts given as plain SI numbers: one JSON object a line, each line on its own."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from itertools import chain, islice
from multiprocessing import get_context
from typing import Any

import numpy as np

from foldwright.core.lift.case import answer_case
from foldwright.core.lift.case_answer import CaseAnswer
from foldwright.core.lift.givens import ImpossibleCase, LiftCase
from foldwright.core.quantity.rounding import System
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.impossible import ImpossiblePanel
from foldwright.core.weigh.load import PanelLoad
from foldwright.core.why.fault import Fault
from foldwright.work.draws import house_draws
from foldwright.work.files import CannotUse
from foldwright.work.walk import Walk

PROCESSES = 2
LINES_AT_A_TIME = 20
CURVE_POINTS = 65
GREATEST = 1e9  # no quantity of a shade in SI comes near
NAME = "name"


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadLine:
    """The load on all cords against the raise, with both ends of every step."""

    raise_m: tuple[float, ...]
    load_n: tuple[float, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class LiftAnswer:
    """What is answered to one line: an answer with its load curve, or the faults."""

    line: int
    name: str
    answer: CaseAnswer | None = None
    load_curve: LoadLine | None = None
    faults: tuple[Fault, ...] = ()


class PlainWalk(Walk):
    """A reading of plain SI: numbers are numbers, and text is no number."""

    def number(self, typed: object, where: str, name: str) -> float | None:
        """Read a number in the unit that its field's name says."""
        del name  # its limits are for the lift to judge
        if isinstance(typed, bool) or not isinstance(typed, int | float):
            self.wrong_type(typed, where, "a number in SI")
        elif not abs(typed) < GREATEST:
            self.fault(where, f"{typed:g} is no quantity", "Give a number in SI.")
        else:
            return float(typed)
        return None

    def areal_mass(self, typed: str, width: object, where: str, name: str) -> float | None:
        """Refuse text, here as anywhere."""
        del width
        return self.number(typed, where, name)


def answer_lines(lines: Sequence[str]) -> Iterator[LiftAnswer]:
    """Answer many lines, in order; a line that cannot be read has faults, the others answers.

    Many lines are shared out to two processes.
    """
    numbered = [(number, line) for number, line in enumerate(lines, 1) if line.strip()]
    if len(numbered) <= LINES_AT_A_TIME:
        yield from _answer_some(numbered)
        return
    with ProcessPoolExecutor(PROCESSES, mp_context=get_context("spawn")) as pool:
        yield from chain.from_iterable(pool.map(_answer_some, _parts(numbered)))


def answer_line(line: str, number: int = 1) -> LiftAnswer:
    """Answer one lift.

    >>> answer_line('{"tube_outside_m": 0.038}').faults[0].sentence
    'load: it is missing. Type it; nothing can stand in for it.'
    """
    try:
        typed = parse_json(line)
    except CannotUse as trouble:
        return LiftAnswer(line=number, name="", faults=trouble.faults)
    name = str(typed.get(NAME, "")) if isinstance(typed, dict) else ""
    try:
        return _answered(typed, name, number)
    except CannotUse as trouble:
        return LiftAnswer(line=number, name=name, faults=trouble.faults)


def _answered(typed: Any, name: str, number: int) -> LiftAnswer:
    case = read_case(typed)
    try:
        with np.errstate(all="ignore"):
            answer = answer_case(case, house_draws())
            curve = _load_line(case.load)
    except ImpossibleCase as trouble:
        raise CannotUse(trouble.faults) from None
    except ImpossiblePanel as trouble:
        faults = (replace(fault, where=f"load.{fault.where}") for fault in trouble.faults)
        raise CannotUse(tuple(faults)) from None
    return LiftAnswer(line=number, name=name, answer=answer, load_curve=curve)


def read_case(typed: object) -> LiftCase:
    """Read one lift case from plain values.

    Raises: CannotUse with every fault found.
    """
    walk = PlainWalk(system=System.METRIC)
    kept = (
        {key: value for key, value in typed.items() if key != NAME}
        if isinstance(typed, dict)
        else typed
    )
    case = walk.record(LiftCase, kept, "")
    if case is None:
        raise CannotUse(tuple(walk.faults))
    return case


def parse_json(text: str) -> Any:
    """Read JSON, refusing a name that stands twice.

    Raises: CannotUse.

    >>> parse_json('{"a": 1}')
    {'a': 1}
    """
    try:
        return json.loads(text, object_pairs_hook=_each_once)
    except (ValueError, RecursionError) as trouble:
        reason = "nested too deep" if isinstance(trouble, RecursionError) else str(trouble)
        what = f"this is not JSON as it should be ({reason})"
        fault = Fault(where="the line", what=what, remedy="Give one JSON object on one line.")
        raise CannotUse((fault,)) from None


def _each_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    names = [name for name, _ in pairs]
    if twice := {name for name in names if names.count(name) > 1}:
        message = "given twice: " + ", ".join(sorted(twice))
        raise ValueError(message)
    return dict(pairs)


def _load_line(panel: PanelLoad) -> LoadLine:
    curve = LoadCurve.of(panel)
    evenly = np.linspace(0.0, panel.travel_m, CURVE_POINTS)
    steps = np.array([pick for pick in curve.pick_ups if 0 < pick <= panel.travel_m])
    raises = np.concatenate([evenly, steps, steps])
    before, after = curve.load_before(steps), curve.load_after(np.concatenate([evenly, steps]))
    loads = np.concatenate([after[: evenly.size], before, after[evenly.size :]])
    order = np.lexsort((loads, raises))
    return LoadLine(raise_m=tuple(raises[order].tolist()), load_n=tuple(loads[order].tolist()))


def _answer_some(numbered: Sequence[tuple[int, str]]) -> list[LiftAnswer]:
    return [answer_line(line, number) for number, line in numbered]


def _parts(numbered: list[tuple[int, str]]) -> Iterator[list[tuple[int, str]]]:
    rest = iter(numbered)
    while part := list(islice(rest, LINES_AT_A_TIME)):
        yield part
