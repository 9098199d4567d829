"""What the bench is told: what to turn, what is doubtful in the record, what is now known."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from foldwright.core.check.plan import ShadePlan
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.order import LiftOrder
from foldwright.core.prove.advice import (
    Advice,
    Diagnosis,
    Explained,
    NextStep,
    Question,
    RiseTold,
    Symptom,
)
from foldwright.core.prove.advising import advise
from foldwright.core.prove.asking import next_best
from foldwright.core.prove.diagnosing import diagnose
from foldwright.core.prove.explaining import explain_symptom
from foldwright.core.prove.kinds import is_evidence
from foldwright.core.prove.learning import Learned, learn
from foldwright.core.prove.observing import Observation
from foldwright.core.prove.questioning import questions, taken
from foldwright.core.prove.starting import bench_case
from foldwright.core.prove.telling_rise import tell_rise
from foldwright.core.prove.visit import Since, revisit
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen
from foldwright.work.bench import Entry
from foldwright.work.bench_session import Session
from foldwright.work.draws import TRIALS_AT_THE_BENCH, TRIALS_OF_CAUSES, house_draws
from foldwright.work.job import Job

CONFIRM = "confirm"  # an entry that holds to one that was questioned
FAR_FROM_THE_PLAN = {"prove.far-off", "prove.contradiction"}
NEXT_STEPS_SHOWN = 3
CONFIRMED = "entry"  # its field: the key of that one


Expected = Callable[[LiftCase], LiftCase]


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
    torque_left: Figure[float] | None = None  # at a visit, years after the bench
    whole: bool = True  # no: causes and next steps are still to be worked out

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


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Learnt:
    """A shade as it is known after all that was noted."""

    case: LiftCase
    learned: Learned
    turns: float  # in the spring now
    noted: list[Observation]
    asked: tuple[Question, ...]
    confirmed: list[int]
    evidence: int


def learnt_from(
    session: Session, plan: ShadePlan, job: Job, expected: Expected | None = None
) -> Learnt | None:
    """Learn from a session; None where no spring lifts the shade, or nothing is known of it.

    `expected` moves the case to what the shop's own record lets be expected of such a shade.
    """
    case, turns = bench_case_of(plan, job), session.turns_now
    if case is None or turns is None:
        return None
    case = expected(case) if expected else case
    noted = [one.observation for one in session.observed]
    asked, confirmed = _asked(session, case, noted), _confirmed(session)
    evidence = [one for one in taken(noted, asked, confirmed) if is_evidence(one)]
    return Learnt(
        case=case,
        learned=learn(case, evidence, house_draws(TRIALS_AT_THE_BENCH)),
        turns=turns,
        noted=noted,
        asked=asked,
        confirmed=confirmed,
        evidence=len(evidence),
    )


def _asked(session: Session, case: LiftCase, noted: Sequence[Observation]) -> tuple[Question, ...]:
    """Question what was noted; a spring that has tired may well be far from its plan."""
    asked = questions(case, noted, house_draws())
    if not session.is_visit:
        return asked
    return tuple(one for one in asked if one.finding.id not in FAR_FROM_THE_PLAN)


def told_of(
    session: Session,
    plan: ShadePlan,
    job: Job,
    expected: Expected | None = None,
    *,
    whole: bool = True,
) -> Told | None:
    """Work out the advice; None where there is nothing to turn.

    `whole`: with the causes and the next steps, which take longer than what to turn.
    """
    learnt = learnt_from(session, plan, job, expected)
    if learnt is None:
        return None
    if session.is_visit:
        return _told_at_visit(session, learnt, plan)
    told = Told(
        advice=advise(learnt.learned, learnt.turns, plan.headrail),
        evidence=learnt.evidence,
        doubts=_doubts(session, learnt.asked, learnt.confirmed),
        whole=whole,
    )
    return _with_causes(told, learnt) if whole else told


def _with_causes(told: Told, learnt: Learnt) -> Told:
    """Add what may be wrong, and what to observe next."""
    tells = any(map(is_evidence, learnt.noted))
    draws = house_draws(TRIALS_OF_CAUSES)
    return replace(
        told,
        next_steps=next_best(learnt.learned, learnt.noted, learnt.turns)[:NEXT_STEPS_SHOWN],
        diagnosis=diagnose(learnt.case, learnt.noted, draws) if tells else None,
    )


def _told_at_visit(session: Session, learnt: Learnt, plan: ShadePlan) -> Told:
    """Go by the record of the bench and what is seen now: the spring has tired meanwhile."""
    before = [one.observation for one in session.observed_earlier]
    sound = taken(before, questions(learnt.case, before, house_draws()))
    since = Since(record=tuple(filter(is_evidence, sound)), turns=learnt.turns, years=session.years)
    now = taken(learnt.noted, learnt.asked, learnt.confirmed)
    seen = [one for one in now if is_evidence(one)]
    draws = house_draws(TRIALS_AT_THE_BENCH)
    visit = revisit(learnt.case, since, seen, draws, plan.headrail)
    return Told(
        advice=visit.advice,
        evidence=learnt.evidence,
        doubts=_doubts(session, learnt.asked, learnt.confirmed),
        torque_left=visit.torque_left,
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class Rising:
    """How the shade rises when it is let go, and each symptom explained on it."""

    turns: Figure[float]
    told: RiseTold
    symptoms: tuple[Explained, ...]


def rising_of(
    session: Session, plan: ShadePlan, job: Job, expected: Expected | None = None
) -> Rising | None:
    """Work out the rise with the turns that are in the spring; None without a spring."""
    learnt = learnt_from(session, plan, job, expected)
    if learnt is None:
        return None
    return Rising(
        turns=chosen("turns in the spring", learnt.turns, Unit.TURN),
        told=tell_rise(learnt.learned, learnt.turns),
        symptoms=tuple(explain_symptom(one, learnt.learned, learnt.turns) for one in Symptom),
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
