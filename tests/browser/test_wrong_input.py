"""Wrong input keeps the form as typed, says all that is wrong at once, and saves nothing."""

from __future__ import annotations

from playwright.sync_api import Page, expect
from tests.browser.conftest import Workroom

STAIR = 1


def test_all_faults_stand_beside_their_fields_while_typing(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    page.locator("#measure > summary").click()
    page.get_by_label("Width at the top").fill("18 3/15")
    page.get_by_label("Height at the left").fill("-4")
    expect(page.locator(".fault")).to_have_count(2)
    expect(page.get_by_label("Width at the top")).to_have_attribute("aria-invalid", "true")
    expect(page.locator("#faults")).to_contain_text("2 fields")
    page.get_by_label("Width at the top").fill("18 3/16")
    page.get_by_label("Height at the left").fill("74 1/2")
    expect(page.locator(".fault")).to_have_count(0)
    expect(page.get_by_label("Width at the top")).not_to_have_attribute("aria-invalid", "true")


def test_a_faulty_form_comes_back_as_typed_and_nothing_is_saved(
    page: Page, workroom: Workroom
) -> None:
    page.goto(workroom.shade(STAIR))
    page.locator("#measure > summary").click()
    page.get_by_label("Width at the top").fill("eighteen")
    page.get_by_label("Width at the middle").fill("17 1/2")
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#faults")).to_contain_text("Not saved yet")
    expect(page.get_by_label("Width at the top")).to_have_value("eighteen")
    expect(page.get_by_label("Width at the middle")).to_have_value("17 1/2")
    assert workroom.book.open(1).number == 1


def test_what_was_typed_survives_a_sleeping_tablet(page: Page, workroom: Workroom) -> None:
    type_middle_width(page, workroom)
    page.goto("about:blank")
    page.goto(workroom.shade(STAIR))
    expect(page.locator("[data-brought-back]")).to_be_visible()
    expect(page.locator("[name='opening.width_middle']")).to_have_value("17")
    expect(page.locator(".title-block")).to_contain_text("16 3/4 in")
    page.get_by_role("button", name="Drop it").click()
    expect(page.locator("[data-brought-back]")).to_be_hidden()
    expect(page.locator("[name='opening.width_middle']")).to_have_value("18 1/4")
    page.reload()
    expect(page.locator("[data-brought-back]")).to_be_hidden()


def test_what_comes_back_leaves_alone_what_another_saved_meanwhile(
    page: Page, workroom: Workroom
) -> None:
    type_middle_width(page, workroom)
    page.goto("about:blank")
    document = workroom.book.open(1).document
    document["shades"][STAIR - 1]["room"] = "Hall"
    workroom.book.save(1, document, follows=1)
    page.goto(workroom.shade(STAIR))
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#faults")).to_contain_text("Saved as version 3")
    shade = workroom.book.open(1).document["shades"][STAIR - 1]
    assert (shade["room"], shade["opening"]["width_middle"]) == ("Hall", "17")


def test_a_faulty_form_survives_a_sleeping_tablet_too(page: Page, workroom: Workroom) -> None:
    type_middle_width(page, workroom)
    page.get_by_label("Width at the top").fill("eighteen")
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#faults")).to_contain_text("Not saved yet")
    page.get_by_label("Width at the bottom").fill("17 1/8")
    page.goto("about:blank")
    page.goto(workroom.shade(STAIR))
    for place, text in (("top", "eighteen"), ("middle", "17"), ("bottom", "17 1/8")):
        expect(page.locator(f"[name='opening.width_{place}']")).to_have_value(text)


def test_a_saved_entry_is_not_brought_back(page: Page, workroom: Workroom) -> None:
    type_middle_width(page, workroom)
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#faults")).to_contain_text("Saved as version 2")
    page.reload()
    expect(page.locator("[data-brought-back]")).to_be_hidden()


def type_middle_width(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    page.locator("#measure > summary").click()
    page.get_by_label("Width at the middle").fill("17")
    expect(page.locator(".title-block")).to_contain_text("16 3/4 in")


def test_a_bad_file_is_told_in_sentences(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.address)
    bad = {"name": "mill.toml", "mimeType": "text/plain", "buffer": b"[job\nname = 3"}
    page.get_by_label("Job file (.toml)").set_input_files(bad)
    page.get_by_role("button", name="Take it in").click()
    expect(page.get_by_role("heading", name="This file was not taken in")).to_be_visible()
    expect(page.locator(".fault")).to_contain_text("mill.toml")
    assert len(workroom.book.jobs()) == 1
