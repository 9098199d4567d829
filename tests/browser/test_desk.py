"""At the desk the shade stays in view beside its fields; on a tablet it makes room for them."""

from __future__ import annotations

from playwright.sync_api import Page
from tests.browser.conftest import DESK, TABLET, Workroom

TOP = "() => document.querySelector('.stage').getBoundingClientRect().top"


def top_after_scrolling(page: Page, address: str) -> float:
    page.goto(address)
    page.evaluate("() => scrollTo(0, 900)")
    top: float = page.evaluate(TOP)
    return top


def test_the_drawing_stays_in_view_at_the_desk(page: Page, workroom: Workroom) -> None:
    page.set_viewport_size({"width": DESK["width"], "height": DESK["height"]})
    assert 0 <= top_after_scrolling(page, workroom.shade(9)) < 50


def test_the_drawing_makes_room_on_a_tablet(page: Page, workroom: Workroom) -> None:
    page.set_viewport_size({"width": TABLET["width"], "height": TABLET["height"]})
    assert top_after_scrolling(page, workroom.shade(9)) < 0


def test_the_count_of_stops_leads_to_the_findings(page: Page, workroom: Workroom) -> None:
    page.set_viewport_size({"width": TABLET["width"], "height": TABLET["height"]})
    page.goto(workroom.shade(9))
    page.locator(".to-findings a").click()
    page.wait_for_function("() => scrollY > 0")
    assert page.locator("#findings").evaluate("e => e.getBoundingClientRect().top") < 100
