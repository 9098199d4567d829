"""The shop's own record: for each spring type what was reckoned, and what the bench found."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby

from foldwright.core.check.plan import ShadePlan
from foldwright.core.prove.advising import advise
from foldwright.core.prove.learning import learn
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived
from foldwright.work.bench import Kind, Record
from foldwright.work.bench_advice import learnt_from
from foldwright.work.bench_session import Session
from foldwright.work.draws import house_draws
from foldwright.work.job import Job

N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadeFound:
    """One shade proved at the bench: the rate its sheet gave, and the rate it was found to have."""

    spring: str
    tag: str
    job: str
    address: str
    when: datetime
    predicted: N
    found: N
    share: N  # found over predicted
    evidence: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Opened:
    """A session with the shade it is about, as it stood when the session began."""

    session: Session
    plan: ShadePlan
    job: Job
    address: str


Find = Callable[[Record], ShadeFound | None]


def found_by_spring(records: Sequence[Record], find: Find) -> dict[str, list[ShadeFound]]:
    """Give what each bench test with evidence found, by spring, the oldest first.

    Takes: every record of the shop; what finds the spring in one, or gives None where its
    shade is gone or nothing noted tells of it.
    """
    tests = [record for record in records if record.kind is Kind.BENCH and record.standing]
    found = [one for one in map(find, tests) if one is not None]
    found.sort(key=lambda one: (one.spring, one.when))
    return {name: list(alike) for name, alike in groupby(found, key=lambda one: one.spring)}


def shade_found(opened: Opened) -> ShadeFound | None:
    """Learn the spring of one shade from what was noted; None where nothing tells of it."""
    session, record = opened.session, opened.session.record
    learnt = learnt_from(session, opened.plan, opened.job)
    if learnt is None or record is None or not learnt.evidence:
        return None
    before = advise(learn(learnt.case, (), house_draws()), learnt.turns).rate
    after = advise(learnt.learned, learnt.turns).rate
    return ShadeFound(
        spring=opened.plan.spec.lift.spring,
        tag=record.subject,
        job=opened.job.head.name,
        address=opened.address,
        when=record.begun_at,
        predicted=before,
        found=after,
        share=_share(after, before),
        evidence=learnt.evidence,
    )


def _share(found: N, predicted: N) -> N:
    low = None if found.low is None else found.low / predicted.value
    high = None if found.high is None else found.high / predicted.value
    return derived(
        "found over reckoned",
        found.value / predicted.value,
        Unit.SHARE,
        "{0:range} found at the bench, {1} by the sheet.",
        found,
        predicted,
        low=low,
        high=high,
    )
