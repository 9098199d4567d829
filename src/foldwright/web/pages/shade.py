"""One shade: its drawing, what stands against it, and the form whose edits show at once."""

from __future__ import annotations

from dataclasses import dataclass, replace

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.check.layouts.offers import Offer
from foldwright.core.why.finding import Change, Remedy
from foldwright.web.desk import Sorry, see, text_of
from foldwright.web.forms import shade_from_form
from foldwright.web.opened import (
    OpenJob,
    number_of,
    raise_share,
    shade_number,
    shades_of,
    whole_number,
    with_shade,
)
from foldwright.web.printing import papers_of
from foldwright.web.shifts import with_shifts
from foldwright.web.view import ShadeView
from foldwright.work.book import Entry
from foldwright.work.changing import change_shade
from foldwright.work.document import Document, Reading, read_document

PARTS = ("drawing", "all")
NO_FORM = "The form did not arrive. Open the shade again and send it from there."
GONE = (
    "That remedy belongs to findings that have changed since. "
    "Look at the shade as it now stands and choose again."
)

GONE_LAYOUT = (
    "That layout is offered no more, since something has changed. "
    "Look at the shade as it now stands and choose again."
)


@dataclass(frozen=True, kw_only=True)
class Typed:
    """The form as typed, laid into the save that it was made from."""

    job: OpenJob
    number: int
    base: Entry
    document: Document
    reading: Reading
    share: float

    @classmethod
    def over(cls, job: OpenJob, number: int, base: Entry, fields: dict[str, str]) -> Typed:
        """Lay the form into a save and read what comes of it."""
        shade = shade_from_form(fields, shades_of(base.document)[number - 1])
        document = with_shade(base.document, number, shade)
        share = raise_share(fields.get("raise"))
        return cls.reading_of(job, number, base, document, share)

    @classmethod
    def reading_of(
        cls, job: OpenJob, number: int, base: Entry, document: Document, share: float
    ) -> Typed:
        """Read a document made from a save."""
        reading = read_document(document, job.desk.shop)
        return cls(
            job=job, number=number, base=base, document=document, reading=reading, share=share
        )

    @property
    def view(self) -> ShadeView:
        """Look at the shade as typed, and at what it moves against the saved one."""
        typed = self.document != self.base.document
        look = self.job.look(self.document, self.reading, self.number, self.share, typed=typed)
        return with_shifts(look, self.job.view(self.number).plan, "If you save this")

    def changed(self, changes: tuple[Change, ...]) -> Typed:
        """Make changes on top of what was typed."""
        document = change_shade(self.document, self.number - 1, changes)
        return Typed.reading_of(self.job, self.number, self.base, document, self.share)


def show_shade(request: Request) -> Response:
    """Show a shade as saved, and what the changes since an earlier save moved."""
    job = OpenJob.of(request)
    number = shade_number(request, job)
    view = job.view(number, raise_share(request.query_params.get("raise")))
    since = whole_number(request.query_params.get("since"))
    if since is not None:
        view = _since(request, job, view, since)
    return _shade_page(request, job, view)


def draw_shade(request: Request) -> Response:
    """Give the drawings alone, at the raise asked for."""
    job = OpenJob.of(request)
    share = raise_share(request.query_params.get("raise"))
    view = job.view(shade_number(request, job), share)
    return job.desk.page(request, "parts/drawing.html", view=view, system=job.system)


def preview_shade(request: Request, form: FormData) -> Response:
    """Show what the form as typed would do, without saving it."""
    fields = text_of(form)
    typed = typed_over(request, fields)
    extent = fields.get("parts")
    if extent not in PARTS:
        return _shade_page(request, typed.job, typed.view)
    template, view = f"parts/{extent}.html", replace(typed.view, searched=False)
    return typed.job.desk.page(request, template, view=view, system=typed.job.system)


def save_shade(request: Request, form: FormData) -> Response:
    """Save the form as a new version, or show all that is wrong with it, as typed."""
    return _save(request, typed_over(request, text_of(form)))


def apply_remedy(request: Request, form: FormData) -> Response:
    """Apply a remedy on top of the form as typed, and save both."""
    fields = text_of(form)
    typed = typed_over(request, fields)
    if typed.reading.faults:
        return _shade_page(request, typed.job, typed.view, status=422)
    return _save(request, typed.changed(_changes(typed.view, fields.get("remedy", ""))))


def apply_layout(request: Request, form: FormData) -> Response:
    """Lay the shade out as offered, on top of the form as typed, and save both."""
    fields = text_of(form)
    typed = typed_over(request, fields)
    if typed.reading.faults:
        return _shade_page(request, typed.job, typed.view, status=422)
    return _save(request, typed.changed(_layout_changes(typed.view, fields.get("layout", ""))))


def _save(request: Request, typed: Typed) -> Response:
    if typed.reading.faults:
        return _shade_page(request, typed.job, typed.view, status=422)
    job = typed.job
    job.desk.book.save(job.entry.job_id, typed.document, follows=typed.base.number)
    address = f"{job.url}/shades/{typed.number}"
    return see(f"{address}?since={job.entry.number}&raise={typed.share:g}")


def typed_over(request: Request, fields: dict[str, str]) -> Typed:
    """Lay the form that was sent into the save that it was made from."""
    if "tag" not in fields:
        raise Sorry(400, "Nothing was changed", NO_FORM)
    job = OpenJob.of(request)
    number = shade_number(request, job)
    base = _base(job, number, whole_number(fields.get("version")))
    return Typed.over(job, number, base, fields)


def _base(job: OpenJob, number: int, version: int | None) -> Entry:
    """Give the save to lay the form into: the standing one, unless this shade moved meanwhile."""
    if version is None or version == job.entry.number:
        return job.entry
    earlier = job.save_number(version)
    if earlier is None or number > len(shades_of(earlier.document)):
        return job.entry
    untouched = shades_of(earlier.document)[number - 1] == job.shades[number - 1]
    return job.entry if untouched else earlier


def _changes(view: ShadeView, remedy: str) -> tuple[Change, ...]:
    """Find a remedy by its finding's id and the two places it was shown at."""
    name, _, places = remedy.partition("/")
    finding_place, _, remedy_place = places.partition("/")
    try:
        finding = view.findings[int(finding_place)]
        changes = finding.remedies[int(remedy_place)].changes
    except (ValueError, IndexError):
        raise Sorry(409, "Not applied", GONE) from None
    if finding.id != name or not changes:
        raise Sorry(409, "Not applied", GONE)
    return changes


def _layout_changes(view: ShadeView, layout: str) -> tuple[Change, ...]:
    """Find an offered layout, or a typed value in the way, by its place and its name."""
    ways = {
        **{f"{n}/{offer.title}": offer.way for n, offer in enumerate(_offered(view))},
        **{f"way-{n}/{way.changes[0].path}": way for n, way in enumerate(_in_the_way(view))},
    }
    way = ways.get(layout)
    if way is None or not way.changes:
        raise Sorry(409, "Not applied", GONE_LAYOUT)
    return way.changes


def _offered(view: ShadeView) -> tuple[Offer, ...]:
    return view.offers.all if view.offers else ()


def _in_the_way(view: ShadeView) -> tuple[Remedy, ...]:
    return view.offers.in_the_way if view.offers else ()


def _since(request: Request, job: OpenJob, view: ShadeView, since: int) -> ShadeView:
    """Add what moved since an earlier save, found there by its tag or its place."""
    earlier = job.save_number(since)
    if earlier is None:
        return view
    before = OpenJob.at(request, earlier)
    number = number_of(earlier.document, view.tag) or view.number
    if number > len(before.shades):
        return view
    return with_shifts(view, before.view(number).plan, f"Moved since version {since}")


def _shade_page(request: Request, job: OpenJob, view: ShadeView, *, status: int = 200) -> Response:
    """Fill the page; its papers are always those of the shade as saved."""
    history = job.desk.book.history(job.entry.job_id)
    saved = job.view(view.number)
    papers = papers_of(history, job.entry.number, view.number, saved.plan)
    return job.desk.page(
        request, "shade.html", status=status, job=job, view=view, papers=papers, system=job.system
    )
