"""The shop's record at hand for a page: each bench test learned from once."""

from __future__ import annotations

from foldwright.core.check.plan import ShadePlan
from foldwright.core.lift.givens import LiftCase
from foldwright.core.prove.shop_record import expect
from foldwright.web.desk import Desk
from foldwright.web.opened import number_of
from foldwright.work.bench import Record
from foldwright.work.bench_advice import Expected
from foldwright.work.bench_card import card_order, card_steps
from foldwright.work.bench_session import Session
from foldwright.work.bench_shop import Opened, ShadeFound, made_of, shade_found, shades_found
from foldwright.work.book import Entry, NotInBook
from foldwright.work.document import typed_system

MOST_REMEMBERED = 40  # bench tests: enough to know a kind, few enough to learn from at once


def found_in(desk: Desk, record: Record) -> ShadeFound | None:
    """Give what one bench test found, worked out once for each state of it."""
    key = (record.id, len(record.entries))
    return desk.found.get(key, None, lambda: _found(desk, record))


def expectation(desk: Desk, session: Session, plan: ShadePlan) -> Expected:
    """Give what the shop's latest other shades let be expected of this one."""
    own = session.record
    records = desk.book.bench.of_shop()
    others = [record for record in records if own is None or record.id < own.id]
    found = shades_found(others[:MOST_REMEMBERED], lambda each: found_in(desk, each))
    made, results = made_of(plan, own), [one.result for one in found]

    def expected(case: LiftCase) -> LiftCase:
        return expect(case, made, results)

    return expected


def _found(desk: Desk, record: Record) -> ShadeFound | None:
    opened = _opened(desk, record)
    return shade_found(opened) if opened else None


def _opened(desk: Desk, record: Record) -> Opened | None:
    """Open the shade of a record as it stood when the session began."""
    entry = _entry(desk, record)
    job = desk.reading(entry).job if entry else None
    number = number_of(entry.document, record.subject) if entry else None
    if entry is None or job is None or number is None:
        return None
    plan = desk.shelf.plan(entry.document, job, number).plan
    order = card_order(plan, job.habits, job.markets)
    if plan is None or order is None:
        return None
    system = typed_system(entry.document)
    session = Session(order=order, steps=card_steps(order), record=record, system=system)
    address = f"/jobs/{record.job_id}/shades/{number}/bench?session={record.id}"
    return Opened(session=session, plan=plan, job=job, address=address)


def _entry(desk: Desk, record: Record) -> Entry | None:
    if record.job_id is None:
        return None
    try:
        saves = desk.book.history(record.job_id)
    except NotInBook:
        return None
    return next((save for save in saves if save.number == record.version), saves[0])
