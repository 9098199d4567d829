"""Take the pictures that the README and the guide show, from a served book of its own.

Needs Chromium. Run it from the root of the project after the pages have changed:

    python -m docs.pictures
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Page, ViewportSize, sync_playwright

DOCS = Path(__file__).parent
GUIDE = DOCS / "guide"
CHROMIUM = Path("/usr/bin/chromium")
QUIETLY = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
DESK = ViewportSize(width=1440, height=900)
TABLET = ViewportSize(width=820, height=1180)
FARTHER = 0.75  # a shade with its graph and findings is taller than a desk's screen
GARDEN, LIBRARY = 4, 9  # shades of the demo job, which is job 1


@contextmanager
def workroom() -> Iterator[str]:
    """Serve a fresh book with the demo job, and give its address."""
    with tempfile.TemporaryDirectory() as folder:
        words = [sys.executable, "-m", "foldwright.cli.main", "serve", "--port=0", "--data", folder]
        with subprocess.Popen(words, stdout=subprocess.PIPE, text=True) as server:  # noqa: S603 - our own
            try:
                told = server.stdout.readline() if server.stdout else ""
                yield told.split()[-1].rstrip("/")
            finally:
                server.terminate()


def open_shade(page: Page, address: str, number: int, raised: float) -> None:
    """Open a shade of the demo job, raised by a share of its travel."""
    page.goto(f"{address}/jobs/1/shades/{number}?raise={raised}")


def shade(browser: Browser, address: str) -> None:
    """Show a shade half raised with its graph, and a finding with its remedies."""
    whole = ViewportSize(
        width=round(DESK["width"] / FARTHER), height=round(DESK["height"] / FARTHER)
    )
    page = browser.new_page(viewport=whole, device_scale_factor=FARTHER)
    open_shade(page, address, LIBRARY, 0.5)
    page.screenshot(path=DOCS / "shade.png")


def why(browser: Browser, address: str) -> None:
    """Show why a finished width is what it is."""
    page = browser.new_page(viewport=DESK)
    open_shade(page, address, GARDEN, 0.5)
    page.locator(".title-block a.figure").first.click()
    page.get_by_role("dialog").locator(".why").screenshot(path=GUIDE / "why.png")


def key_pad(browser: Browser, address: str) -> None:
    """Show the key pad with fractions on a tablet."""
    page = browser.new_page(viewport=TABLET, has_touch=True)
    open_shade(page, address, GARDEN, 0.0)
    page.locator("#measure > summary").tap()
    page.get_by_role("button", name="Key pad").tap()
    page.get_by_label("Width at the top").tap()
    page.screenshot(path=GUIDE / "key-pad.png")


def graph(browser: Browser, address: str) -> None:
    """Show a raise graph."""
    page = browser.new_page(viewport=DESK)
    open_shade(page, address, GARDEN, 0.5)
    page.locator(".views svg").last.screenshot(path=GUIDE / "graph.png")


def take() -> None:
    """Take every picture."""
    with workroom() as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIETLY)
        for picture in (shade, why, key_pad, graph):
            picture(browser, address)


if __name__ == "__main__":
    take()
