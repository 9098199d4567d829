"""Without any script the same forms and links do the same job."""

from __future__ import annotations

from playwright.sync_api import Page, expect
from tests.browser.conftest import Workroom

STAIR = 1
LIBRARY = 9


def test_the_whole_job_without_script(plain: Page, workroom: Workroom) -> None:
    plain.goto(workroom.address)
    plain.get_by_label("Name of the job").fill("Mill house")
    plain.get_by_role("button", name="Begin the job").click()
    plain.get_by_label("Tag").fill("Kitchen")
    plain.get_by_role("button", name="Add the shade").click()
    plain.get_by_label("Finished width, if given").fill("30")
    plain.get_by_label("Finished drop, if given").fill("60")
    plain.get_by_role("button", name="See what it does").click()
    expect(plain.locator("#faults")).to_contain_text("Not saved yet")
    expect(plain.locator(".title-block")).to_contain_text("30 in")
    plain.get_by_role("button", name="Save", exact=True).click()
    expect(plain.locator("#faults")).to_contain_text("Saved as version 3")


def test_the_shade_is_raised_without_script(plain: Page, workroom: Workroom) -> None:
    plain.goto(workroom.shade(STAIR))
    plain.get_by_role("button", name="Raise one fold").click()
    expect(plain.locator(".plate .layer-marker").first).to_be_visible()


def test_why_is_a_page_without_script(plain: Page, workroom: Workroom) -> None:
    plain.goto(workroom.shade(STAIR))
    plain.locator(".title-block a.figure").first.click()
    expect(plain.get_by_role("heading", name="Why: ")).to_be_visible()
    expect(plain.locator(".why")).to_contain_text("narrowest")


def test_a_remedy_is_applied_without_script(plain: Page, workroom: Workroom) -> None:
    plain.goto(workroom.shade(LIBRARY))
    plain.get_by_role("button", name="Apply").first.click()
    expect(plain.locator("#faults")).to_contain_text("Saved as version 2")
