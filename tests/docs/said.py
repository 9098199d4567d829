"""All that the tool says of the demo job: on its pages, at the terminal, on its papers."""

from __future__ import annotations

import contextlib
import html
import io
import os
import re
import socket
import tempfile
from collections.abc import Iterator
from datetime import UTC, datetime
from functools import cache
from pathlib import Path

import pdfplumber
from starlette.testclient import TestClient
from tests.docs.reading import ROOT

from foldwright.cli.main import main
from foldwright.web.app import create_app
from foldwright.web.fields import every_field
from foldwright.web.forms import text_at
from foldwright.work.book import Book
from foldwright.work.shop import house_shop

ADDRESS = "http://127.0.0.1:8137"
DEMO = "src/foldwright/demo/guesthouse.toml"
GARDEN = "/jobs/1/shades/4"
NOTED_AT_THE_BENCH = (
    {"step": "wind", "turns": "12"},
    {"step": "stall", "ended": "stalled", "raise": "38", "turns": "12"},
    {"step": "stall", "ended": "free", "raise": "30", "turns": "12"},
    {"step": "wind", "turns": "24"},
    {"step": "wind", "turns": "400"},
)
NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)


def run(*words: str) -> str:
    """Run a command as from the root of the project, and give all that it prints."""
    said = io.StringIO()
    home = Path.cwd()
    os.chdir(ROOT)
    try:
        with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said):
            main(words)
    finally:
        os.chdir(home)
    return said.getvalue()


@cache
def everything() -> str:
    """Give all that can be read anywhere, with one blank between words."""
    return " ".join(" ".join([*_terminal(), *_screen()]).split())


def _terminal() -> Iterator[str]:
    yield run("plan", DEMO)
    yield run("why", DEMO, "Garden", "least turns")
    yield run("cut", DEMO, "--seconds", "2")
    yield run("stock", DEMO, "--seconds", "2")
    with tempfile.TemporaryDirectory() as folder:
        yield run("plan", DEMO, "--shop", folder)
        with socket.create_server(("127.0.0.1", 0)) as taken:
            yield run("serve", "--port", str(taken.getsockname()[1]), "--data", folder)


def _screen() -> Iterator[str]:
    with tempfile.TemporaryDirectory() as folder:
        book = Book(Path(folder) / "book.sqlite", lambda: NOON)
        book.enter_demo_job()
        app = create_app(book, house_shop(), lambda: NOON)
        client = TestClient(app, base_url=ADDRESS, headers={"Origin": ADDRESS})
        yield from _pages(client)
        yield from _edits(client, book)
        yield from _bench(client)
        yield from _papers(client)
        book.close()


def _pages(client: TestClient) -> Iterator[str]:
    shades = (f"/jobs/1/shades/{number}?raise=0.5" for number in range(1, 10))
    client.get("/jobs/1/cloth")  # begins the search
    cloth = "/jobs/1/cloth?repeat_longer=1/16"
    for address in (
        "/",
        "/jobs/1",
        "/jobs/1/papers",
        cloth,
        *shades,
        f"{GARDEN}/why?figure=size.width",
    ):
        yield _words(client.get(address).text)


def _edits(client: TestClient, book: Book) -> Iterator[str]:
    """Begin a job, type what cannot be read and what can; save the Garden changed, and go back."""
    client.post("/jobs", data={"name": "Mill house", "units": "inch"})
    empty = client.post("/jobs/2/shades", data={"tag": "Stair"})
    yield _words(empty.text)
    typed = {"version": "2", "tag": "Stair", "opening.width_top": "35 3/15"}
    yield _words(client.post("/jobs/2/shades/1", data=typed).text)
    sized = {"version": "2", "tag": "Stair", "asked.width": "35 3/16", "asked.drop": "54"}
    yield _words(client.post("/jobs/2/shades/1/preview", data=sized).text)
    yield _words(client.post("/jobs/2/shades/1", data=sized).text)
    garden = book.open(1).document["shades"][3]
    form = {one.path: text_at(garden, one) for one in every_field()}
    changed = {**form, "version": "1", "design.skirt": "3"}
    yield _words(client.post(f"{GARDEN}/preview", data=changed).text)
    yield _words(client.post(GARDEN, data=changed).text)
    answer = {"finding": "lift.nothing-fits", "name": "The maker", "reason": "In writing."}
    client.post("/jobs/1/shades/9/override", data=answer)
    yield _words(client.get("/jobs/1/shades/9").text)
    yield _words(client.get("/jobs/1/history").text)
    client.post("/jobs/1/restore", data={"number": "1"})
    client.post("/jobs/2/put-away")
    yield _words(client.get("/").text)


def _bench(client: TestClient) -> Iterator[str]:
    """Wind the Garden, let it rise, type what cannot be, and let it go free."""
    yield _words(client.get("/jobs/1/shades/8/bench").text)
    yield _words(client.get(f"{GARDEN}/bench").text)
    for key, typed in enumerate(NOTED_AT_THE_BENCH):
        client.post(f"{GARDEN}/bench", data={"key": str(key), **typed})
        yield _words(client.get(f"{GARDEN}/bench").text)
    yield _words(client.get(f"{GARDEN}/bench/rise").text)
    client.post(f"{GARDEN}/bench/begin", data={"kind": "visit"})
    yield _words(client.get(f"{GARDEN}/bench").text)
    yield _words(client.get("/shop").text)
    for script in ("bench", "benchbox"):
        yield (ROOT / "frontend" / "src" / f"{script}.ts").read_text(encoding="utf-8")


def _papers(client: TestClient) -> Iterator[str]:
    for sheet in ("table-layout", "headrail", "safety"):
        answer = client.get(f"{GARDEN}/papers/{sheet}.pdf?size=letter")
        with pdfplumber.open(io.BytesIO(answer.content)) as document:
            words = document.pages[0].extract_words(use_text_flow=True)
            yield " ".join(word["text"] for word in words)


def _words(page: str) -> str:
    return html.unescape(re.sub(r"<[^>]+>", " ", page))
