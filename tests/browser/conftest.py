"""A real browser on a real server, and a record of everything it asks for or complains about."""

from __future__ import annotations

import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

import pytest
import uvicorn
from playwright.sync_api import (
    Browser,
    BrowserContext,
    ConsoleMessage,
    Page,
    Request,
    sync_playwright,
)

from foldwright.web.app import create_app
from foldwright.work.book import Book
from foldwright.work.shop import house_shop

CHROMIUM = Path("/usr/bin/chromium")
QUIETLY = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
DESK = {"width": 1440, "height": 900}
TABLET = {"width": 820, "height": 1180}
PATIENCE_MS = 10_000
EXPECTED = ("status of 422", "status of 409", "ERR_INTERNET_DISCONNECTED")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    if not CHROMIUM.exists():
        pytest.fail(f"{CHROMIUM} is missing: apt-get install chromium", pytrace=False)
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIETLY)
        yield opened
        opened.close()


class Server(uvicorn.Server):
    """A server that runs beside the test."""

    def install_signal_handlers(self) -> None:
        """Leave the signals to the test runner."""


@dataclass(kw_only=True)
class Workroom:
    """A served book with the demo job in it, as job 1."""

    address: str
    book: Book

    def shade(self, number: int) -> str:
        return f"{self.address}/jobs/1/shades/{number}"


@pytest.fixture
def workroom(tmp_path: Path) -> Iterator[Workroom]:
    def now() -> datetime:
        return datetime.now(UTC)

    book = Book(tmp_path / "book.sqlite", now)
    book.enter_demo_job()
    app = create_app(book, house_shop(), now)
    server = Server(uvicorn.Config(app, port=0, lifespan="off", log_level="error", ws="none"))
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.005)
    port = server.servers[0].sockets[0].getsockname()[1]
    yield Workroom(address=f"http://127.0.0.1:{port}", book=book)
    server.should_exit = True
    thread.join()
    book.close()


@dataclass(kw_only=True)
class Record:
    """What a page asked for beyond its own server, and what the browser complained about."""

    address: str
    strangers: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)

    def request(self, request: Request) -> None:
        if not request.url.startswith((f"{self.address}/", "blob:", "data:")):
            self.strangers.append(request.url)

    def console(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning") and not _is_expected(message):
            self.complaints.append(message.text)


def _is_expected(message: ConsoleMessage) -> bool:
    """The browser notes as errors a form that is refused, and a network that a test cut."""
    return any(words in message.text for words in EXPECTED)


@pytest.fixture
def record(workroom: Workroom) -> Record:
    return Record(address=workroom.address)


def watched(context: BrowserContext, record: Record) -> Page:
    """Open a page whose every request and complaint is recorded."""
    context.set_default_timeout(PATIENCE_MS)
    context.on("request", record.request)
    page = context.new_page()
    page.on("console", record.console)
    page.on("pageerror", lambda error: record.complaints.append(str(error)))
    return page


@pytest.fixture
def page(browser: Browser, record: Record) -> Iterator[Page]:
    """A page at the desk; at its end nothing was asked of others and nothing complained of."""
    context = browser.new_context(viewport=DESK)
    yield watched(context, record)
    context.close()
    assert record.strangers == []
    assert record.complaints == []


@pytest.fixture
def tablet(browser: Browser, record: Record) -> Iterator[Page]:
    """The same on a tablet under a finger."""
    context = browser.new_context(viewport=TABLET, has_touch=True)
    yield watched(context, record)
    context.close()
    assert record.strangers == []
    assert record.complaints == []


@pytest.fixture
def plain(browser: Browser, record: Record) -> Iterator[Page]:
    """The same without any script."""
    context = browser.new_context(viewport=DESK, java_script_enabled=False)
    yield watched(context, record)
    context.close()
    assert record.strangers == []
    assert record.complaints == []
