"""The web app: its addresses in the order of the work, and what it says when it cannot answer."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.middleware.gzip import GZipMiddleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import BaseRoute, Mount, Route
from starlette.staticfiles import StaticFiles

from foldwright.core.facts.records import ShopList
from foldwright.web.desk import HERE, Desk, Sorry, posted
from foldwright.web.guard import THIS_MACHINE, Guard, Refusal
from foldwright.web.pages import (
    bench,
    bench_paper,
    bench_rise,
    boards,
    cloth,
    groups,
    habits,
    history,
    job,
    jobs,
    overriding,
    papers,
    rolls,
    shade,
    shop,
    stock,
    units,
    why,
)
from foldwright.work.book import Book, BookTrouble, NotInBook, SavedMeanwhile

JOB = "/jobs/{job_id:int}"
BOARD = JOB + "/boards/{board:int}"
GROUP = JOB + "/groups/{group:int}"
ROLL = JOB + "/rolls/{roll:int}"
SHADE = JOB + "/shades/{number:int}"
LEAST_WORTH_PACKING_BYTES = 1000

UNFORESEEN = (
    "Something went wrong that nobody foresaw, and nothing was saved. "
    "Go back and try once more; if it happens again, keep the job file and report it."
)
PLAIN_WORDS = {
    404: ("Not here", "There is no such page. Look at the list of jobs."),
    405: ("Not like this", "This address cannot be asked in that way. Open it from its own page."),
}


def create_app(
    book: Book,
    shop: ShopList,
    clock: Callable[[], datetime],
    *,
    hosts: tuple[str, ...] = THIS_MACHINE,
) -> Starlette:
    """Make the app on a book of jobs, with the shop's list and a clock.

    `hosts` are the names under which it answers.
    """
    desk = Desk(book=book, shop=shop, clock=clock)
    app = Starlette(
        routes=_routes(),
        middleware=[
            Middleware(Guard, hosts=hosts, refuse=_refused),
            Middleware(GZipMiddleware, minimum_size=LEAST_WORTH_PACKING_BYTES, compresslevel=5),
        ],
        exception_handlers={
            HTTPException: _sorry,
            NotInBook: _not_in_book,
            SavedMeanwhile: _saved_meanwhile,
            BookTrouble: _book_trouble,
            Exception: _unforeseen,
        },
    )
    app.state.desk = desk
    return app


def _routes() -> list[BaseRoute]:
    return [
        Route("/", jobs.list_jobs),
        Route("/jobs", posted(jobs.begin_job), methods=["POST"]),
        Route("/files", posted(jobs.take_in_file), methods=["POST"]),
        Route("/shop", shop.show_shop),
        Route("/shop/springs", posted(shop.note_spring), methods=["POST"]),
        Route(shop.WHY, shop.tell_shop_why),
        Route("/units", posted(units.choose_units), methods=["POST"]),
        Route(JOB, job.show_job),
        Route(JOB, posted(job.change_head), methods=["POST"]),
        Route(f"{JOB}/habits", posted(habits.change_habits), methods=["POST"]),
        Route(f"{JOB}/shades", posted(job.add_shade), methods=["POST"]),
        Route(f"{JOB}/groups", posted(groups.begin_group), methods=["POST"]),
        Route(f"{GROUP}.svg", groups.draw_group),
        Route(f"{GROUP}/match", posted(groups.match_group), methods=["POST"]),
        Route(f"{GROUP}/take-apart", posted(groups.take_apart), methods=["POST"]),
        Route(f"{JOB}/boards", posted(boards.begin_board), methods=["POST"]),
        Route(f"{BOARD}/widths", posted(boards.type_board_widths), methods=["POST"]),
        Route(f"{BOARD}/take-apart", posted(boards.take_board_apart), methods=["POST"]),
        Route(f"{JOB}/file", job.give_file),
        Route(f"{JOB}/cloth", cloth.show_cloth),
        Route(f"{JOB}/cloth/end", posted(cloth.take_best), methods=["POST"]),
        Route(f"{JOB}/cloth/longer", posted(cloth.look_longer), methods=["POST"]),
        Route(f"{JOB}/cloth/{{number:int}}.pdf", cloth.give_cut_sheet),
        Route(f"{JOB}/stock", stock.show_stock),
        Route(ROLL, rolls.show_roll),
        Route(ROLL, posted(rolls.save_roll), methods=["POST"]),
        Route(f"{ROLL}/take-out", posted(rolls.take_out_roll), methods=["POST"]),
        Route(f"{JOB}/papers", papers.list_papers),
        Route(f"{JOB}/papers.zip", papers.give_all_papers),
        Route(f"{JOB}/history", history.show_history),
        Route(f"{JOB}/restore", posted(history.restore), methods=["POST"]),
        Route(f"{JOB}/put-away", posted(job.put_job_away), methods=["POST"]),
        Route(f"{JOB}/bring-back", posted(job.bring_job_back), methods=["POST"]),
        Route(SHADE, shade.show_shade),
        Route(SHADE, posted(shade.save_shade), methods=["POST"]),
        Route(f"{SHADE}/drawing", shade.draw_shade),
        Route(f"{SHADE}/preview", posted(shade.preview_shade), methods=["POST"]),
        Route(f"{SHADE}/remedy", posted(shade.apply_remedy), methods=["POST"]),
        Route(f"{SHADE}/layout", posted(shade.apply_layout), methods=["POST"]),
        Route(f"{SHADE}/override", posted(overriding.override_stop), methods=["POST"]),
        Route(f"{SHADE}/take-back", posted(overriding.take_override_back), methods=["POST"]),
        Route(f"{SHADE}/copy", posted(job.copy_shade), methods=["POST"]),
        Route(f"{SHADE}/take-out", posted(job.take_out_shade), methods=["POST"]),
        Route(f"{SHADE}/why", why.tell_why),
        Route(f"{SHADE}/why", posted(why.tell_why_typed), methods=["POST"]),
        Route(f"{SHADE}/bench", bench.show_bench),
        Route(f"{SHADE}/bench", posted(bench.note_at_bench), methods=["POST"]),
        Route(f"{SHADE}/bench/begin", posted(bench.begin_session), methods=["POST"]),
        Route(f"{SHADE}/bench/why", bench.tell_bench_why),
        Route(f"{SHADE}/bench/rise", bench_rise.show_rise),
        Route(f"{SHADE}/bench/rise/drawing", bench_rise.draw_rise),
        Route(f"{SHADE}/bench/rise/why", bench_rise.tell_rise_why),
        Route(f"{SHADE}/bench/card.pdf", bench_paper.give_bench_card),
        Route(f"{SHADE}/papers/{{name}}.pdf", papers.give_paper),
        Mount("/static", _KeptForEver(directory=HERE / "static")),
    ]


class _KeptForEver(StaticFiles):
    """Static files, whose addresses change with their content."""

    def file_response(self, *args: object, **options: object) -> Response:
        answer = super().file_response(*args, **options)  # type: ignore[arg-type]
        answer.headers["Cache-Control"] = "max-age=31536000, immutable"
        return answer


def _sorry(request: Request, trouble: Exception) -> Response:
    if isinstance(trouble, Sorry):
        return _page(
            request, trouble.status_code, trouble.title, trouble.detail, faults=trouble.faults
        )
    status, detail = (
        (trouble.status_code, trouble.detail)
        if isinstance(trouble, HTTPException)
        else (500, UNFORESEEN)
    )
    title, sentence = PLAIN_WORDS.get(status, ("Not possible", detail))
    return _page(request, status, title, sentence)


def _not_in_book(request: Request, trouble: Exception) -> Response:
    return _page(request, 404, "Not in the book", str(trouble))


def _saved_meanwhile(request: Request, trouble: Exception) -> Response:
    versions = f"/jobs/{request.path_params['job_id']}/history"
    return _page(request, 409, "Saved by another meanwhile", str(trouble), way_on=versions)


def _book_trouble(request: Request, trouble: Exception) -> Response:
    return _page(request, 503, "The book cannot be used", str(trouble))


def _unforeseen(request: Request, _trouble: Exception) -> Response:
    return _page(request, 500, "Not foreseen", UNFORESEEN)


def _page(request: Request, status: int, title: str, sentence: str, **context: object) -> Response:
    context = {"faults": (), "way_on": ""} | context
    return Desk.of(request).page(
        request, "sorry.html", status=status, title=title, sentence=sentence, **context
    )


def _refused(refusal: Refusal) -> Response:
    """Answer at the door: without a page's links, since the address itself is in doubt."""
    return PlainTextResponse(refusal.sentence, refusal.status)
