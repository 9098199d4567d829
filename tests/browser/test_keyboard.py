"""The whole job with the keyboard alone: no pointer is ever used here."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import Workroom

MOST_STEPS = 400


def focus(page: Page, wanted: str) -> None:
    """Go on by Tab until the element wanted has the focus."""
    for _ in range(MOST_STEPS):
        page.keyboard.press("Tab")
        if page.evaluate("wanted => document.activeElement.matches(wanted)", wanted):
            assert is_seen(page), f"the focus on {wanted} is out of sight"
            return
    message = f"{wanted} is out of the keyboard's reach"
    raise AssertionError(message)


def is_seen(page: Page) -> bool:
    """Tell whether the focus lies in the window, and under nothing that sticks to its edge."""
    return bool(
        page.evaluate(
            """() => {
              const one = document.activeElement;
              const box = one.getBoundingClientRect();
              const top = document.elementFromPoint(
                box.left + box.width / 2, box.top + box.height / 2);
              return one.contains(top) || (top !== null && top.contains(one));
            }"""
        )
    )


def focused_text(page: Page) -> str:
    return str(page.evaluate("() => document.activeElement.textContent"))


def test_the_whole_job_by_keyboard(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.address)
    focus(page, "#name")
    page.keyboard.type("Mill house")
    page.keyboard.press("Enter")

    page.wait_for_url("**/jobs/2")
    focus(page, "#tag")
    page.keyboard.type("Kitchen")
    page.keyboard.press("Enter")

    page.wait_for_url("**/jobs/2/shades/1")
    focus(page, "[name='asked.width']")
    page.keyboard.type("35 3/16")
    focus(page, "[name='asked.drop']")
    page.keyboard.type("60")
    expect(page.locator(".plate")).to_be_visible()
    focus(page, "[name='mount.place']")
    page.keyboard.type("inside")
    focus(page, "[name='materials.face']")
    page.keyboard.type("Harbour linen, flax")
    focus(page, ".save-bar .main")
    page.keyboard.press("Enter")
    page.wait_for_url("**since=*")
    shade = workroom.book.open(2).document["shades"][0]
    assert shade["asked"] == {"width": "35 3/16", "drop": "60"}
    assert shade["materials"] == {"face": "Harbour linen, flax"}


def test_the_shade_is_raised_by_the_arrow_keys(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(1))
    focus(page, "#raise")
    for _ in range(3):
        page.keyboard.press("ArrowUp")
    expect(page.locator("#raise")).to_have_value("0.03")
    page.keyboard.press("End")
    expect(page.locator("#raise")).to_have_value("1")
    expect(page.locator("#raise")).to_have_attribute("aria-valuetext", "raised 100 %")
    expect(page.locator(".plate .layer-marker").first).to_be_visible()


def test_a_figure_of_the_drawing_is_asked_why_by_enter(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(1))
    focus(page, ".plate a[data-figure='size.width']")
    page.keyboard.press("Enter")
    expect(page.get_by_role("dialog")).to_contain_text("finished width")
    page.keyboard.press("Escape")
    assert page.evaluate("() => document.activeElement.dataset.figure") == "size.width"


@pytest.mark.parametrize("place", [".title-block", ".finding .sentence", ".numbers table"])
def test_a_figure_in_the_text_is_within_the_keyboards_reach(
    page: Page, workroom: Workroom, place: str
) -> None:
    page.goto(workroom.shade(9))
    page.evaluate("() => document.querySelectorAll('details').forEach(one => one.open = true)")
    focus(page, f"{place} a.figure")
    page.keyboard.press("Enter")
    expect(page.get_by_role("dialog")).to_be_visible()


def test_a_remedy_is_applied_by_enter(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(9))
    focus(page, "button.apply")
    page.keyboard.press("Enter")
    page.wait_for_url("**since=1*")
    assert workroom.book.open(1).number == 2


def test_the_first_stop_leads_past_the_head(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(1))
    page.keyboard.press("Tab")
    assert focused_text(page) == "Skip to the work"
    page.keyboard.press("Enter")
    assert page.evaluate("() => document.activeElement.id") == "work"


def test_enter_in_a_field_saves_and_applies_no_remedy(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(9))
    expect(page.locator("button.apply").first).to_be_visible()
    before = workroom.book.open(1).document["shades"][8]
    focus(page, "#shade > summary")
    page.keyboard.press("Enter")
    focus(page, "[name=room]")
    page.keyboard.type("Reading room")
    page.keyboard.press("Enter")
    page.wait_for_url("**since=1*")
    assert workroom.book.open(1).document["shades"][8] == before | {"room": "Reading room"}
