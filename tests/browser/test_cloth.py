"""The cloth of a job in a browser: better plans come by themselves, a button ends the search."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import Workroom

LONG_ENOUGH_MS = 40_000


def many_windows() -> dict[str, Any]:
    """Ask for more windows of one print than can be proven while the page is looked at."""
    shades = [
        {
            "tag": f"W{number}",
            "room": f"Room {number % 8}",
            "asked": {"width": 500 + 37 * number % 800, "drop": 900 + 53 * number % 1100},
            "materials": {"face": "Meadow print, indigo"},
        }
        for number in range(40)
    ]
    return {"job": {"name": "Forty", "system": "metric"}, "shades": shades}


@pytest.fixture
def forty(workroom: Workroom) -> str:
    entry = workroom.book.begin(many_windows())
    return f"{workroom.address}/jobs/{entry.job_id}/cloth"


def test_a_search_is_seen_and_ended_by_a_button(page: Page, forty: str) -> None:
    page.goto(forty)
    expect(page.get_by_role("heading", name="Meadow print, indigo")).to_be_visible()
    expect(page.get_by_text("Looking for better plans")).to_be_visible()
    page.get_by_role("button", name="Take the best so far").click()
    expect(page.get_by_text("The search has ended.")).to_be_visible(timeout=LONG_ENOUGH_MS)
    expect(page.get_by_text("a better plan may exist")).to_be_visible()
    expect(page.get_by_role("link", name="Cut sheet, A4 of Meadow print, indigo")).to_be_visible()


def test_what_if_is_asked_and_answered_on_the_page(page: Page, workroom: Workroom) -> None:
    page.goto(f"{workroom.address}/jobs/1/cloth")
    page.get_by_label("Each repeat longer by").fill("1/8")
    page.get_by_role("button", name="See what moves").click()
    expect(page.get_by_role("heading", name="Meadow print, indigo, as it would be")).to_be_visible()
