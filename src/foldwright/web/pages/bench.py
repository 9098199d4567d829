"""The bench card of a shade: each tap saved as it is made, the next step, and what to turn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.check.plan import ShadePlan
from foldwright.core.prove.card_step import CardStep
from foldwright.web.bench import BenchView, Refused, Tell
from foldwright.web.desk import Desk, Sorry, see, text_of
from foldwright.web.opened import OpenJob, shade_number, whole_number
from foldwright.web.pages.why import trail_to, why_page
from foldwright.web.shop_record import expectation
from foldwright.work.bench import LONGEST_NAME, LONGEST_TEXT, UNDO, Kind, Note, Record
from foldwright.work.bench_advice import CONFIRM, CONFIRMED, Told, told_of
from foldwright.work.bench_card import card_order, card_steps
from foldwright.work.bench_reading import read_step
from foldwright.work.bench_session import Session
from foldwright.work.bench_tags import former_tags
from foldwright.work.job import Job

BY_COOKIE = "bench_by"
A_MONTH_S = 31 * 24 * 3600
LONGEST_KEY = 64
PARTS = "parts"
NOT_YET = (
    "This shade has not come far enough for the bench. "
    "Its findings say what is missing; settle those first."
)
NO_FORM = "The form did not arrive. Open the bench card again and send it from there."
NO_STEP = "This shade's card has no such step as it now stands. Open the bench card again."


def show_bench(request: Request) -> Response:
    """Show the card at the step to go on with."""
    return _page(request, bench_view(request))


def note_at_bench(request: Request, form: FormData) -> Response:
    """Keep what was noted, as typed, or say what cannot be read in it."""
    fields, view = text_of(form), bench_view(request, text_of(form).get("session"))
    note = _note(request, fields)
    if note.step == UNDO:
        return _noted(request, view, note, fields)
    if note.step == CONFIRM:
        held = {CONFIRMED: fields.get(CONFIRMED, "")[:LONGEST_KEY]}
        return _noted(request, view, replace(note, typed=held), fields)
    step = next((one for one in view.session.steps if one.id == note.step), None)
    if step is None:
        raise Sorry(409, "Not noted", NO_STEP)
    note = replace(note, typed=_typed(step, fields))
    _, faults = read_step(step, note.typed, view.job_system)
    if faults:
        refused = Refused(step=step.id, typed=note.typed, faults=faults)
        return _page(request, replace(view, refused=refused, by=note.by), status=422, fields=fields)
    return _noted(request, view, note, fields)


def begin_session(request: Request, form: FormData) -> Response:
    """Begin another session; the earlier ones stay as they are."""
    job = OpenJob.of(request)
    view = job.view(shade_number(request, job))
    kinds = {Kind.BENCH.value: Kind.BENCH, Kind.VISIT.value: Kind.VISIT}
    kind = kinds.get(text_of(form).get("kind", ""), Kind.BENCH)
    job.desk.book.bench.begin(job.entry.job_id, view.tag, kind, job.entry.number)
    return see(f"{view.url}/bench")


def tell_bench_why(request: Request) -> Response:
    """Tell why a figure of the card is what it is."""
    view, job = bench_view(request), OpenJob.of(request)
    figure = view.figures.at(request.query_params.get("figure", ""))
    return why_page(request, figure, job.system, back=view.url, trail=trail_to(job, view.shade))


def _noted(request: Request, view: BenchView, note: Note, fields: Mapping[str, str]) -> Response:
    job = OpenJob.of(request)
    record = view.record
    if note.step != UNDO or (record and note.undoes in {one.key for one in record.standing}):
        record = job.desk.book.bench.note(
            job.entry.job_id,
            fields.get("tag") or view.shade.tag,
            note,
            session=record.id if record else None,
            version=job.entry.number,
        )
    fresh = replace(view, session=replace(view.session, record=record), by=note.by, last=note.step)
    fresh = replace(fresh, asked=_next(fresh, note))
    if PARTS in fields:
        answer = _page(request, replace(fresh, whole=False), fields=fields)
    else:
        session = f"session={record.id}&" if record else ""
        answer = see(f"{view.url}?{session}step={fresh.current}&last={note.step}")
    answer.set_cookie(BY_COOKIE, note.by, A_MONTH_S, httponly=True, samesite="strict")
    return answer


def _next(view: BenchView, note: Note) -> str:
    """Go on where a step passed; stay where it asks or stops, and where a note was taken back."""
    if note.step == CONFIRM:
        return view.current
    if note.step == UNDO:
        undone = [one for one in view.noted if one.entry.key == note.undoes]
        return undone[0].entry.step if undone else view.current
    state = view.last_step.state if view.last_step else ""
    return view.session.after(note.step) or note.step if state == "pass" else note.step


def _note(request: Request, fields: Mapping[str, str]) -> Note:
    key, step = fields.get("key", ""), fields.get("step", "")
    if not key or len(key) > LONGEST_KEY or not step:
        raise Sorry(400, "Nothing was noted", NO_FORM)
    return Note(
        key=key,
        step=step,
        by=fields.get("by", _by(request)).strip()[:LONGEST_NAME],
        noted_at=_moment(fields.get("noted_at", "")),
        undoes=fields.get("undoes"),
    )


def _typed(step: CardStep, fields: Mapping[str, str]) -> dict[str, str]:
    return {ask.name: fields.get(ask.name, "")[:LONGEST_TEXT] for ask in step.asks}


def _moment(text: str) -> datetime | None:
    """Read the tablet's clock; without one, or with a wrong one, the server's is taken."""
    try:
        when = datetime.fromisoformat(text)
    except ValueError:
        return None
    return when if when.tzinfo else None


def _by(request: Request) -> str:
    return request.cookies.get(BY_COOKIE, "")


def bench_view(request: Request, session: str | None = None) -> BenchView:
    """Lay the card of the shade over the session that is meant, or over the newest."""
    job = OpenJob.of(request)
    shade = job.view(shade_number(request, job))
    found = job.reading.job
    order = card_order(shade.plan, found.habits, found.markets) if found else None
    if order is None or found is None or shade.plan is None:
        raise Sorry(409, "Not yet", NOT_YET)
    sessions = job.desk.book.bench.of_shade(job.entry.job_id, *_tags_of(job, shade.tag))
    record = _meant(sessions, session or request.query_params.get("session"))
    return BenchView(
        shade=shade,
        session=Session(
            order=order,
            steps=card_steps(order, record.kind if record else Kind.BENCH),
            record=record,
            system=job.job_system,
            earlier=_earlier(sessions, record),
            all_steps=card_steps(order),
        ),
        sessions=sessions,
        system=job.system,
        job_system=job.job_system,
        tell=_teller(job, shade.plan, found),
        asked=request.query_params.get("step", ""),
        last=request.query_params.get("last", ""),
        by=_by(request),
    )


def _tags_of(job: OpenJob, tag: str) -> tuple[str, ...]:
    """Give the tags of a shade under which anything may be noted that no other shade carries."""
    present = {str(shade.get("tag", "")) for shade in job.shades}
    if job.desk.book.bench.subjects(job.entry.job_id) <= present:
        return (tag,)
    had = former_tags(job.desk.book.history(job.entry.job_id), tag)
    return (tag, *(one for one in had if one not in present))


def _teller(open_job: OpenJob, plan: ShadePlan, job: Job) -> Tell:
    """Work the advice out once for each state of the shop's record: a page is asked for often."""
    desk = open_job.desk

    def tell(session: Session, whole: bool) -> Told | None:  # noqa: FBT001 - told by its name
        key = (state_of(desk, session, plan), whole)

        def work_out() -> Told | None:
            expected = expectation(desk, session, plan)
            return told_of(session, plan, job, expected, whole=whole)

        return desk.advice.get(key, plan, work_out)

    return tell


def state_of(desk: Desk, session: Session, plan: ShadePlan) -> tuple[int, int, int]:
    """Name the state that an answer was worked out from: shade, session, and all noted so far."""
    return id(plan), session.record.id if session.record else 0, desk.book.bench.state()


def _meant(sessions: list[Record], asked: str | None) -> Record | None:
    number = whole_number(asked)
    meant = [record for record in sessions if record.id == number] or sessions[:1]
    return meant[0] if meant else None


def _earlier(sessions: list[Record], record: Record | None) -> tuple[Record, ...]:
    """Give what a visit can go by: the sessions before it, oldest first."""
    if record is None or record.kind is not Kind.VISIT:
        return ()
    return tuple(one for one in reversed(sessions) if one.id < record.id)


def _page(
    request: Request,
    view: BenchView,
    *,
    status: int = 200,
    fields: Mapping[str, str] | None = None,
) -> Response:
    job = OpenJob.of(request)
    wants_parts = PARTS in (fields or {}) or PARTS in request.query_params
    template = "parts/bench.html" if wants_parts else "bench.html"
    return job.desk.page(
        request, template, status=status, job=job, bench=view, view=view.shade, system=view.system
    )
