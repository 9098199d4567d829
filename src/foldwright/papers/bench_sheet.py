"""The bench card on paper: the same steps as on the screen, with what was noted or room for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.prove.card_step import Ask, CardStep
from foldwright.core.quantity.rounding import System
from foldwright.papers.cautions import lettered_cautions, letters_of
from foldwright.papers.header import Header, Paper
from foldwright.papers.heading import shared
from foldwright.papers.runs import runs
from foldwright.papers.typesetting import SMALLER_WORDS_PT, WORDS_PT, lettered, typeset

TITLE = "Bench card"
TEMPLATE = "bench.typ"


@dataclass(frozen=True, kw_only=True, slots=True)
class FilledStep:
    """What was noted in one step, and what it came to."""

    typed: Mapping[str, str] = field(default_factory=dict)
    outcome: str = ""
    noted: str = ""  # by whom and when


@dataclass(frozen=True, kw_only=True, slots=True)
class CardSheet:
    """The steps of a card, and what was noted in each."""

    steps: Sequence[CardStep]
    filled: Mapping[str, FilledStep] = field(default_factory=dict)
    session: str = ""  # which test it is, and when it was begun


def bench_sheet(
    plan: ShadePlan, header: Header, paper: Paper, system: System, card: CardSheet
) -> bytes:
    """Print the bench card, on one page.

    Takes: the plan, with a finished size; the header; the paper; the reader's system; the
    card.

    Gives: a tagged PDF of one page.

    Raises: ValueError when the shade has no finished size yet.

    Source: common practice (what a bench card holds).
    """
    data = shared(plan, header, paper, system, TITLE)
    cautions = [step.caution for step in card.steps if step.caution]
    letters = lettered_cautions(cautions)
    data |= {
        "session": card.session,
        "steps": [
            _step(number, step, card, system) | {"caution": letters_of(step.caution, letters)}
            for number, step in enumerate(card.steps, start=1)
        ],
        "cautions": [[letter, caution] for caution, letter in letters.items()],
    }
    return typeset(TEMPLATE, _drafts(data), header.printed_at)


def _drafts(data: dict[str, Any]) -> Iterator[dict[str, Any]]:
    for size in (WORDS_PT, *SMALLER_WORDS_PT):
        yield lettered(data, size)


def _step(number: int, step: CardStep, card: CardSheet, system: System) -> dict[str, Any]:
    filled = card.filled.get(step.id, FilledStep())
    return {
        "number": number,
        "title": step.title,
        "runs": runs(step.instruction, step.figures, system),
        "outcome": filled.outcome,
        "noted": filled.noted,
        "fields": [_field(ask, filled) for ask in step.asks],
    }


def _field(ask: Ask, filled: FilledStep) -> dict[str, Any]:
    """Print a field with what was noted in it, or with a line or boxes to fill in."""
    label = f"{ask.group}, {ask.label[:1].lower()}{ask.label[1:]}" if ask.group else ask.label
    typed = filled.typed.get(ask.name, "")
    return {
        "label": label,
        "text": dict(ask.options).get(typed, typed),
        "options": [shown for _, shown in ask.options],
    }
