"""`foldwright lift`: answer lifts given as plain SI numbers, one or many."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.telling import say, say_json, tell_faults
from foldwright.core.lift.case_answer import CaseAnswer, CaseWindow
from foldwright.core.lift.span import Span
from foldwright.core.quantity.measures import print_force, print_torque, print_turns
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.work.files import CannotUse, read_text
from foldwright.work.lifting import LiftAnswer, answer_lines

STANDARD_INPUT = "-"


def run(options: argparse.Namespace) -> int:
    """Answer each line; one that cannot be read does not keep the others from being answered."""
    try:
        lines = _lines(options.file)
    except CannotUse as trouble:
        tell_faults(trouble.faults, as_json=options.json)
        return BAD_INPUT
    code = GOOD
    for answer in answer_lines(lines):
        code = BAD_INPUT if answer.faults else code
        _tell(answer, as_json=options.json)
    return code


def _lines(file: str) -> list[str]:
    text = _piped_in() if file == STANDARD_INPUT else read_text(Path(file))
    if not text.strip():
        what = "there is no lift to answer"
        fault = Fault(where=file, what=what, remedy="Give one JSON object on each line.")
        raise CannotUse((fault,))
    return one_or_many(text)


def _piped_in() -> str:
    try:
        return sys.stdin.buffer.read().decode("utf-8-sig")
    except UnicodeDecodeError:
        fault = Fault(where="the input", what="it is not plain text", remedy="Give UTF-8 text.")
        raise CannotUse((fault,)) from None


def one_or_many(text: str) -> list[str]:
    r"""Take one object written over many lines as one, and else each line as one.

    >>> one_or_many('{\n"a": 1\n}'), one_or_many('{"a": 1}\n{"a": 2}')
    (['{ "a": 1 }'], ['{"a": 1}', '{"a": 2}'])
    """
    lines = text.splitlines()
    return [" ".join(lines)] if lines[0].strip() in {"{", ""} else lines


def _tell(answer: LiftAnswer, *, as_json: bool) -> None:
    name = answer.name or f"line {answer.line}"
    for fault in answer.faults:
        sys.stderr.write(f"line {answer.line}: {fault.sentence}\n")
    if as_json:
        say_json(answer, System.METRIC)
    elif answer.answer is not None:
        say(f"{name}: {answer.answer.verdict.value}")
        for line in _lift_lines(answer.answer):
            say(f"  {line}")


def _lift_lines(answer: CaseAnswer) -> list[str]:
    load = f"{_force(answer.load_lowered_n)} lowered, {_force(answer.load_raised_n)} raised"
    needed = print_torque(answer.torque_needed_n_m.likely, System.METRIC)
    travel = print_turns(answer.travel_turns.likely)
    lines = [f"load {load}; {needed} needed at the top; {travel} of travel"]
    return lines if answer.window is None else [*lines, *_window_lines(answer.window)]


def _window_lines(window: CaseWindow) -> list[str]:
    turns = window.recommended_turns
    advice = "no turns fit" if turns is None else f"wind {print_turns(turns)} at the up-stop"
    return [
        f"{advice}; the chance that every limit holds is {window.chance:.0%}",
        f"least {_turns(window.least_turns)}, limited by {window.limited_below_by.value}",
        f"most {_turns(window.most_turns)}, limited by {window.limited_above_by.value}",
    ]


def _force(span: Span) -> str:
    return print_force(span.likely, System.METRIC)


def _turns(span: Span) -> str:
    low, high = (print_turns(end).rpartition(" ")[0] for end in (span.low, span.high))
    return f"{print_turns(span.likely)} (90 % between {low} and {high})"
