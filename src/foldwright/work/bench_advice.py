"""What the bench is told: what to turn, what is doubtful in the record, what is now known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from foldwright.core.check.plan import ShadePlan
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.order import LiftOrder
from foldwright.core.prove.advice import Advice, Diagnosis, NextStep, Question
from foldwright.core.prove.advising import advise
from foldwright.core.prove.asking import next_best
from foldwright.core.prove.diagnosing import diagnose
from foldwright.core.prove.kinds import is_evidence
from foldwright.core.prove.learning import learn
from foldwright.core.prove.questioning import questions, taken
from foldwright.core.prove.starting import bench_case
from foldwright.core.why.figure import Figure
from foldwright.work.bench import Entry
from foldwright.work.bench_session import Session
from foldwright.work.draws import TRIALS_AT_THE_BENCH, house_draws
from foldwright.work.job import Job

CONFIRM = "confirm"  # an entry that holds to one that was questioned
NEXT_STEPS_SHOWN = 3
CONFIRMED = "entry"  # its field: the key of that one


@dataclass(frozen=True, kw_only=True, slots=True)
class Doubt:
    """A question about one entry, or about two that cannot both be right."""

    question: Question
    entries: tuple[Entry, ...]
    confirmed: bool = False  # the person holds to it


@dataclass(frozen=True, kw_only=True, slots=True)
class Told:
    """All that the advice panel shows."""

    advice: Advice
    evidence: int  # observations that were learned from
    doubts: tuple[Doubt, ...]
    next_steps: tuple[NextStep, ...] = ()  # the most telling first
    diagnosis: Diagnosis | None = None  # None while nothing noted tells of the shade

    @property
    def amount(self) -> Figure[float]:
        """Give how many turns to wind in or let out, without a sign."""
        change = self.advice.change_turns
        name = "turns to let out" if change.value < 0 else "turns to wind in"
        return replace(change, name=name, value=abs(change.value))

    @property
    def way(self) -> str:
        """Say whether to wind in, to let out, or to leave it."""
        change = self.advice.change_turns.value
        if not change:
            return "leave"
        return "wind" if change > 0 else "let out"


def told_of(session: Session, plan: ShadePlan, job: Job) -> Told | None:
    """Work out the advice; None where no spring lifts the shade, or nothing is known of it."""
    case, turns = bench_case_of(plan, job), session.turns_now
    if case is None or turns is None:
        return None
    noted = [one.observation for one in session.observed]
    asked = questions(case, noted, house_draws())
    confirmed = _confirmed(session)
    sound = taken(noted, asked, confirmed)
    evidence = [one for one in sound if is_evidence(one)]
    learned = learn(case, evidence, house_draws(TRIALS_AT_THE_BENCH))
    return Told(
        advice=advise(learned, turns, plan.headrail),
        evidence=len(evidence),
        doubts=_doubts(session, asked, confirmed),
        next_steps=next_best(learned, noted, turns)[:NEXT_STEPS_SHOWN],
        diagnosis=diagnose(case, noted, house_draws()) if any(map(is_evidence, noted)) else None,
    )


def bench_case_of(plan: ShadePlan, job: Job) -> LiftCase | None:
    """Give the case of a planned shade as it comes to the bench; None without a known spring."""
    if plan.weights is None or plan.layout is None or plan.size is None:
        return None
    return bench_case(
        LiftOrder(
            choices=plan.spec.lift,
            weights=plan.weights,
            layout=plan.layout,
            size=plan.size,
            chosen=plan.chosen,
            shop=job.shop,
            habits=job.habits,
            draws=house_draws(),
        )
    )


def _confirmed(session: Session) -> list[int]:
    """Give the places of the observations that the person holds to."""
    entries = session.record.standing if session.record else ()
    held = {one.typed.get(CONFIRMED) for one in entries if one.step == CONFIRM}
    return [place for place, one in enumerate(session.observed) if one.entry.key in held]


def _doubts(
    session: Session, asked: Sequence[Question], confirmed: Sequence[int]
) -> tuple[Doubt, ...]:
    return tuple(
        Doubt(
            question=question,
            entries=tuple(session.observed[place].entry for place in question.about),
            confirmed=len(question.about) == 1 and question.about[0] in confirmed,
        )
        for question in asked
    )
