"""The shop's own record: what was expected of each shade, and what its bench found."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime

from foldwright.core.check.plan import ShadePlan
from foldwright.core.prove.advising import advise
from foldwright.core.prove.learning import learn
from foldwright.core.prove.shop_record import Made, ShopResult, result_of
from foldwright.core.prove.telling_record import (
    Compared,
    KindTold,
    batch_warnings,
    compare,
    share_as_expected,
    tell_kind,
)
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding
from foldwright.work.bench import Kind, Record
from foldwright.work.bench_advice import learnt_from
from foldwright.work.bench_session import Session
from foldwright.work.bench_springs import SpringTest, spring_tests
from foldwright.work.draws import TRIALS_AT_THE_BENCH, house_draws
from foldwright.work.job import Job

N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Opened:
    """A session with the shade it is about, as it stood when the session began."""

    session: Session
    plan: ShadePlan
    job: Job
    address: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadeFound:
    """One shade proved at the bench: expected, found, and the rate of its spring."""

    tag: str
    job: str
    address: str
    when: datetime
    result: ShopResult
    compared: Compared
    rate_by_sheet: N
    rate_found: N


@dataclass(frozen=True, kw_only=True, slots=True)
class SpringFound:
    """All that the shop knows of one kind of spring by its own bench."""

    name: str
    shades: tuple[ShadeFound, ...]
    told: KindTold
    warnings: tuple[Finding, ...]
    tests: tuple[SpringTest, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class ShopRecord:
    """The whole record of a shop."""

    springs: tuple[SpringFound, ...]
    as_expected: N | None  # None while no shade is on record


Find = Callable[[Record], ShadeFound | None]


def shop_record(records: Sequence[Record], find: Find) -> ShopRecord:
    """Gather the record of the shop, spring by spring, the shades oldest first.

    Takes: every record of the bench; what finds the spring in one, or gives None where its
    shade is gone or nothing noted tells of it.
    """
    shades = shades_found(records, find)
    tests = [test for record in records for test in spring_tests(record)]
    results = [one.result for one in shades]
    names = {one.made.spring for one in results} | {test.spring for test in tests}
    return ShopRecord(
        springs=tuple(_spring(name, shades, tests, results) for name in sorted(names)),
        as_expected=share_as_expected(results) if results else None,
    )


def shades_found(records: Sequence[Record], find: Find) -> list[ShadeFound]:
    """Give what each bench test with evidence found, the oldest first."""
    tests = [record for record in records if record.kind is Kind.BENCH and record.standing]
    found = [one for one in map(find, tests) if one is not None]
    return sorted(found, key=lambda one: one.when)


def _spring(
    name: str,
    shades: Sequence[ShadeFound],
    tests: Sequence[SpringTest],
    results: Sequence[ShopResult],
) -> SpringFound:
    own = tuple(one for one in shades if one.result.made.spring == name)
    batches = dict.fromkeys(one.result.made.batch for one in own if one.result.made.batch)
    warned = (one for batch in batches for one in batch_warnings(results, name, batch))
    return SpringFound(
        name=name,
        shades=own,
        told=tell_kind(name, results),
        warnings=tuple(warned),
        tests=tuple(test for test in tests if test.spring == name),
    )


def shade_found(opened: Opened) -> ShadeFound | None:
    """Learn the spring of one shade from what was noted; None where nothing tells of it."""
    session, record = opened.session, opened.session.record
    learnt = learnt_from(session, opened.plan, opened.job)
    if learnt is None or record is None or not learnt.evidence:
        return None
    before = learn(learnt.case, (), house_draws(TRIALS_AT_THE_BENCH))
    result = result_of(before, learnt.learned, made_of(opened.plan, record))
    return ShadeFound(
        tag=record.subject,
        job=opened.job.head.name,
        address=opened.address,
        when=record.begun_at,
        result=result,
        compared=compare(result),
        rate_by_sheet=advise(before, learnt.turns).rate,
        rate_found=advise(learnt.learned, learnt.turns).rate,
    )


def made_of(plan: ShadePlan, record: Record | None) -> Made:
    """Say what a shade was made of, by the names in the shop's list and the spring's packet."""
    materials = plan.spec.materials
    return Made(
        spring=plan.spec.lift.spring,
        batch=record.typed_at("wind").get("batch", "").strip() if record else "",
        line=materials.tape or materials.cord,
        bracket=materials.bracket,
        cloth_class=materials.face,
    )
