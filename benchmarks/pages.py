"""What the pages of the demo job cost, asked over the loopback as a browser asks.

    python benchmarks/pages.py [times]

Reads are of shades already planned; each recompute types a width that was never planned
before, and gives back the whole page's moving parts with the drawing. Budgets: p95 of a
read 50 ms, of a recompute with drawing 100 ms, first load 100 KB, later pages 30 KB.

Each answer is timed by the clock, and by the processor's time that asking and answering
took together; the budget is held against the latter, which no other program can spoil.
"""

from __future__ import annotations

import http.client
import statistics
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from urllib.parse import urlencode

import uvicorn

from foldwright.web.app import create_app
from foldwright.web.desk import static_address
from foldwright.web.fields import every_field
from foldwright.web.forms import text_at
from foldwright.work.book import Book
from foldwright.work.shop import house_shop

TIMES = 200
SHADES = 9
READ_BUDGET_MS, RECOMPUTE_BUDGET_MS = 50.0, 100.0
ADVICE_BUDGET_MS, NOTED = 300.0, 5  # nobody notes more than a few standstills of one shade
FIRST_LOAD_BUDGET_BYTES, LATER_LOAD_BUDGET_BYTES = 100_000, 30_000
STATIC = ("foldwright.css", "foldwright.js", "mark.svg")

Ask = Callable[[int], int]


class Reader:
    """Asks one server over one connection that is kept open, and packed as a browser asks."""

    def __init__(self, port: int) -> None:
        self.origin = f"http://127.0.0.1:{port}"
        self.connection = http.client.HTTPConnection("127.0.0.1", port)

    def get(self, address: str) -> int:
        """Get a page; give its size as sent."""
        self.connection.request("GET", address, headers={"Accept-Encoding": "gzip"})
        return self._size(address)

    def post(self, address: str, fields: dict[str, str]) -> int:
        """Post a form; give the size of the answer as sent."""
        headers = {
            "Accept-Encoding": "gzip",
            "Content-Type": "application/x-www-form-urlencoded",
            "Origin": self.origin,
        }
        self.connection.request("POST", address, urlencode(fields), headers)
        return self._size(address)

    def _size(self, address: str) -> int:
        answer = self.connection.getresponse()
        body = answer.read()
        if answer.status != http.client.OK:
            message = f"{address} answered {answer.status}"
            raise RuntimeError(message)
        return len(body)


@contextmanager
def workroom() -> Iterator[tuple[Reader, Book]]:
    """Serve the demo job from a book of its own."""

    def now() -> datetime:
        return datetime.now(UTC)

    with tempfile.TemporaryDirectory() as folder:
        book = Book(Path(folder) / "book.sqlite", now)
        book.enter_demo_job()
        app = create_app(book, house_shop(), now)
        config = uvicorn.Config(app, port=0, lifespan="off", log_level="error", ws="none")
        server = uvicorn.Server(config)
        thread = threading.Thread(target=server.run, daemon=True)
        thread.start()
        while not server.started:
            time.sleep(0.005)
        yield Reader(server.servers[0].sockets[0].getsockname()[1]), book
        server.should_exit = True
        thread.join()
        book.close()


def p95(took: list[float]) -> float:
    """Give the time that 95 of 100 answers keep to."""
    return statistics.quantiles(took, n=20)[-1]


def measure(name: str, budget_ms: float, ask: Ask, times: int) -> bool:
    """Ask many times, print a line of the table, and tell whether the budget was kept."""
    clock, work, sizes = [], [], []
    for turn in range(times):
        began = time.perf_counter(), time.process_time()
        sizes.append(ask(turn))
        clock.append((time.perf_counter() - began[0]) * 1e3)
        work.append((time.process_time() - began[1]) * 1e3)
    kept = p95(work) <= budget_ms
    figures = (statistics.median(clock), p95(clock), p95(work), budget_ms, max(sizes) / 1e3)
    print(f"{name:34s}" + "".join(f"{one:9.1f}" for one in figures) + ("" if kept else "  OVER"))
    return kept


def forms(book: Book) -> list[dict[str, str]]:
    """Give the form of each shade as its page shows it."""
    shades = book.open(1).document["shades"]
    return [{one.path: text_at(shade, one) for one in every_field()} for shade in shades]


def retyped(form: dict[str, str], turn: int) -> dict[str, str]:
    """Type a middle width never typed before."""
    edit = {"opening.width_middle": f"{400 + turn * 0.1:.1f} mm", "parts": "all", "raise": "0.4"}
    return form | edit


def main() -> int:
    """Print the table, and fail past a budget."""
    times = int(sys.argv[1]) if len(sys.argv) > 1 else TIMES
    with workroom() as (reader, book):
        kept = run(reader, book, times)
    return int(not kept)


def run(reader: Reader, book: Book, times: int) -> bool:
    """Measure every kind of page."""
    typed = forms(book)
    for number in range(1, SHADES + 1):
        reader.get(f"/jobs/1/shades/{number}")
        reader.get(f"/jobs/1/shades/{number}/bench")
    reader.get("/jobs/1/shades/4/bench/rise")
    heads = "".join(f"{head:>9s}" for head in ("median", "p95", "p95 work", "budget", "KB"))
    print(f"{'':34s}{heads}   ms, of {times}")

    def shade(turn: int) -> str:
        return f"/jobs/1/shades/{turn % SHADES + 1}"

    def edit(turn: int) -> int:
        return reader.post(f"{shade(turn)}/preview", retyped(typed[turn % SHADES], turn))

    def note(turn: int) -> int:
        stall = {"key": f"bench {turn}", "step": "stall", "ended": "stalled", "parts": "bench"}
        return reader.post(
            "/jobs/1/shades/4/bench", stall | {"raise": f"{30 + turn % 14}", "turns": "12"}
        )

    reads: dict[str, Ask] = {
        "the jobs": lambda _: reader.get("/"),
        "the job": lambda _: reader.get("/jobs/1"),
        "a shade": lambda turn: reader.get(shade(turn)),
        "a pull: the drawing alone": lambda turn: reader.get(
            f"{shade(turn)}/drawing?raise={turn / times:.3f}"
        ),
        "a why": lambda turn: reader.get(f"{shade(turn)}/why?figure=size.width&part=why"),
        "the versions": lambda _: reader.get("/jobs/1/history"),
        "a bench card": lambda turn: reader.get(f"{shade(turn)}/bench"),
        "a rise: the drawing alone": lambda turn: reader.get(
            f"/jobs/1/shades/4/bench/rise/drawing?raise={turn / times:.3f}"
        ),
    }
    kept = [measure(name, READ_BUDGET_MS, ask, times) for name, ask in reads.items()]
    kept.append(measure("an edit: all parts, planned anew", RECOMPUTE_BUDGET_MS, edit, times))
    kept.append(measure("an entry at the bench: advice anew", ADVICE_BUDGET_MS, note, NOTED))
    return all((*kept, *sizes(reader)))


def sizes(reader: Reader) -> Iterator[bool]:
    """Print what a browser loads first and later."""
    page = max(reader.get(f"/jobs/1/shades/{number}") for number in range(1, SHADES + 1))
    first = page + sum(reader.get(static_address(name)) for name in STATIC)
    for name, size, budget in (
        ("first load of a shade", first, FIRST_LOAD_BUDGET_BYTES),
        ("a shade once the rest is kept", page, LATER_LOAD_BUDGET_BYTES),
    ):
        print(f"{name:34s} {size / 1e3:8.1f} KB of {budget / 1e3:g}")
        yield size <= budget


if __name__ == "__main__":
    sys.exit(main())
