"""The headrail sheet: both views, the spring end, every bench step with its figures."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.rail import headrail_from_back, headrail_from_room
from foldwright.core.drawing.spring_end import spring_end
from foldwright.core.lift.choices import LiftKind
from foldwright.core.quantity.rounding import System
from foldwright.core.rig.headrail import Adjustment, Headrail
from foldwright.core.why.telling import show
from foldwright.papers.cautions import lettered_cautions, letters_of
from foldwright.papers.header import SIZES, Header, Paper
from foldwright.papers.heading import shared
from foldwright.papers.runs import runs
from foldwright.papers.typesetting import (
    LEAST_WORDS_PT,
    SMALLER_WORDS_PT,
    WORDS_PT,
    lettered,
    picture,
    typeset,
)

TITLE = "Headrail"
TEMPLATE = "headrail.typ"
END_WIDTH, END_HEIGHT = 50.0, 31.0
FACTS_WIDTH, GAP = 40.0, 3.0
VIEW_HEIGHT = 60.0


def headrail_sheet(plan: ShadePlan, header: Header, paper: Paper, system: System) -> bytes:
    """Print what is cut, marked, wound and tested at the bench, on one page.

    Takes: the plan, with size and headrail; the header; the paper; the reader's system.

    Gives: a tagged PDF of one page.

    Raises: ValueError when the shade has no finished size or no headrail yet.

    Source: common practice (what a headrail sheet holds).
    """
    rail = plan.headrail
    if rail is None:
        message = f"shade {plan.spec.tag} has no headrail yet: see its findings before printing"
        raise ValueError(message)
    data = shared(plan, header, paper, system, TITLE)
    data |= _views(plan, paper, system)
    data |= _steps(rail, system)
    data["facts"] = _facts(plan, rail, system)
    data["adjustments"] = _adjustments(rail, system)
    return typeset(TEMPLATE, _drafts(data), header.printed_at)


def _drafts(data: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Let first the letters give way, then the remedies of open stops, which the screen has."""
    for size in (WORDS_PT, *SMALLER_WORDS_PT):
        yield lettered(data, size)
    stops = [stop | {"remedy": []} for stop in data["stops"]]
    yield lettered(data | {"stops": stops}, LEAST_WORDS_PT)


def _views(plan: ShadePlan, paper: Paper, system: System) -> dict[str, Any]:
    """Draw the headrail across the page, and beside each other room view and spring end."""
    width = SIZES[paper].inside_width
    end = Frame(width=END_WIDTH, height=END_HEIGHT)
    room = Frame(width=width - END_WIDTH - FACTS_WIDTH - 2 * GAP, height=VIEW_HEIGHT)
    return {
        "back": picture(headrail_from_back(plan, system, Frame(width=width, height=VIEW_HEIGHT))),
        "room_view": picture(headrail_from_room(plan, system, room, tube_marks=False)),
        "end": picture(spring_end(plan, system, end)),
    }


def _facts(plan: ShadePlan, rail: Headrail, system: System) -> list[list[str]]:
    """List what the bench asks first: the lift, its lock and brake, and the turns."""
    lift = plan.spec.lift
    names = {LiftKind.SPRING: lift.spring, LiftKind.CLUTCH: lift.clutch, LiftKind.MOTOR: lift.motor}
    facts = []
    if lift.kind is not None:
        facts.append([lift.kind.value.capitalize(), names[lift.kind]])
    if lift.kind is LiftKind.SPRING:
        turns = rail.pretension_turns
        facts += [
            ["Turns at the up-stop", show(turns, system) if turns else "none fit"],
            ["Lock", lift.lock.value],
            ["Speed brake", lift.brake.value],
        ]
    return facts


def _steps(rail: Headrail, system: System) -> dict[str, Any]:
    """List the steps, and each caution once under a letter."""
    letters = lettered_cautions([step.caution for step in rail.steps if step.caution])
    return {
        "steps": [
            {
                "number": step.number,
                "title": step.title,
                "runs": runs(step.instruction, step.figures, system),
                "caution": letters_of(step.caution, letters),
            }
            for step in rail.steps
        ],
        "cautions": [[letter, caution] for caution, letter in letters.items()],
    }


def _adjustments(rail: Headrail, system: System) -> list[dict[str, Any]]:
    """List what to do about each symptom, those at the same end and turning together."""
    ends = dict.fromkeys(show(one.end, system) for one in rail.adjustments)
    return [
        {
            "end": end,
            "lines": [
                _adjustment(one, system) for one in rail.adjustments if show(one.end, system) == end
            ],
        }
        for end in ends
    ]


def _adjustment(one: Adjustment, system: System) -> dict[str, str]:
    """Print one line of the adjustment table."""
    return {
        "symptom": one.symptom,
        "action": show(one.action, system),
        "amount": show(one.amount, system) if one.is_measured else "",
    }
