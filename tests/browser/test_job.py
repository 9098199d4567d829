"""The whole job by mouse: type a window, raise the shade, ask why, apply a remedy."""

from __future__ import annotations

import re

from playwright.sync_api import Page, expect
from tests.browser.conftest import Workroom

FORM = "form[data-shade-form]"
STAIR = 1  # the demo's narrow, tall window
LIBRARY = 9  # the demo's window that cannot work as asked


def spring(workroom: Workroom) -> str:
    shade = workroom.book.open(1).document["shades"][LIBRARY - 1]
    return str(shade["lift"]["spring"])


def saved(page: Page, version: int) -> None:
    expect(page.locator("#faults")).to_contain_text(f"Saved as version {version}")


def test_a_window_is_typed_and_a_shade_stands_there(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.address)
    page.get_by_label("Name of the job").fill("Mill house")
    page.get_by_role("button", name="Begin the job").click()
    page.get_by_label("Tag").fill("Kitchen")
    page.get_by_role("button", name="Add the shade").click()
    for place in ("top", "middle", "bottom"):
        page.get_by_label(f"Width at the {place}").fill("35 3/16")
    for place in ("left", "centre", "right"):
        page.get_by_label(f"Height at the {place}").fill("60")
    page.get_by_label("The shade hangs").select_option("inside")
    page.get_by_label("Unequal heights").select_option("clear sill")
    expect(page.get_by_text("35 3/16 in · 893.8 mm").first).to_be_visible()
    expect(page.locator(".title-block")).to_contain_text("34 15/16 in")
    page.get_by_role("button", name="Save", exact=True).click()
    saved(page, 3)
    expect(page.locator(".plate")).to_be_visible()


def test_a_width_and_a_drop_alone_already_show_a_shade(page: Page, workroom: Workroom) -> None:
    page.goto(f"{workroom.address}/jobs/1")
    page.get_by_label("Tag").fill("Attic")
    page.get_by_role("button", name="Add the shade").click()
    expect(page.get_by_text("There is nothing to draw yet")).to_be_visible()
    page.get_by_label("Finished width, if given").fill("30")
    page.get_by_label("Finished drop, if given").fill("1524 mm")
    expect(page.locator(".plate")).to_be_visible()
    expect(page.locator(".title-block")).to_contain_text("60 in")
    expect(page.locator("#findings")).to_contain_text("question")


def test_the_range_raises_the_shade(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    expect(page.locator(".plate .layer-marker")).to_have_count(0)
    page.get_by_label("Pull up or let down").fill("0.5")
    expect(page.locator(".plate .layer-marker").first).to_be_visible()
    page.reload()
    assert page.get_by_label("Pull up or let down").input_value() == "0.5"


def test_the_bar_is_pulled_up_on_the_drawing(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    grip = page.locator("[data-pull]").bounding_box()
    assert grip is not None
    x, y = grip["x"] + grip["width"] / 2, grip["y"] + grip["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y - 60, steps=6)
    page.mouse.move(x + 700, y - 120, steps=6)
    page.mouse.up()
    expect(page.locator(".plate .layer-marker").first).to_be_visible()
    page.wait_for_function(
        "([x, y]) => document.elementFromPoint(x, y)?.matches('[data-pull]')", arg=[x, y - 120]
    )


def test_one_fold_at_a_time(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    step = page.get_by_role("button", name="Raise one fold")
    fold = float(step.get_attribute("value") or 0)
    for folds in (1, 2):
        step.click()
        expect(step).to_have_attribute("value", re.compile(f"^{(folds + 1) * fold:.2f}"))
    page.get_by_role("button", name="Fully down").click()
    expect(page.locator("#raise")).to_have_value("0")


def test_a_touch_on_a_figure_tells_why_and_the_focus_comes_back(
    page: Page, workroom: Workroom
) -> None:
    page.goto(workroom.shade(STAIR))
    width = page.locator(".title-block a.figure").first
    width.click()
    dialog = page.get_by_role("dialog")
    expect(dialog).to_contain_text("narrowest")
    page.keyboard.press("Escape")
    expect(dialog).to_be_hidden()
    expect(width).to_be_focused()


def test_a_figure_in_the_drawing_tells_why(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    page.locator(".plate a[data-figure='size.drop']").click()
    expect(page.get_by_role("dialog")).to_contain_text("finished drop")


def test_the_why_of_an_unsaved_edit_is_that_of_the_edit(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    page.locator("#measure > summary").click()
    page.get_by_label("Width at the middle").fill("17")
    expect(page.locator(".title-block")).to_contain_text("16 3/4 in")
    page.locator(".title-block a.figure").first.click()
    expect(page.get_by_role("dialog")).to_contain_text("17 in")


def test_a_remedy_is_applied_and_what_moved_is_told(page: Page, workroom: Workroom) -> None:
    refused = spring(workroom)
    page.goto(workroom.shade(LIBRARY))
    stop = page.locator(".finding.stop", has_text="does not do for this shade")
    expect(stop).to_have_count(1)
    expect(page.locator(".verdict")).to_contain_text("does not work as asked")
    stop.get_by_role("button", name="Apply").first.click()
    saved(page, 2)
    expect(stop).to_have_count(0)
    expect(page.locator(".verdict")).not_to_contain_text("does not work as asked")
    expect(page.locator("[data-part=moved]")).to_contain_text("Moved since version 1")
    assert spring(workroom) != refused


def test_a_remedy_takes_along_what_was_typed(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(LIBRARY))
    page.locator("#shade > summary").click()
    page.locator("[name=room]").fill("Reading room")
    page.get_by_role("button", name="Apply").first.click()
    saved(page, 2)
    assert workroom.book.open(1).document["shades"][LIBRARY - 1]["room"] == "Reading room"


def test_an_edit_shows_what_moves_before_it_is_saved(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    page.locator("#design > summary").click()
    page.get_by_label("Skirt").fill("3")
    expect(page.locator("[data-part=moved]")).to_contain_text("If you save this")
    expect(page.locator("#faults")).to_contain_text("Not saved yet")
    assert workroom.book.open(1).number == 1
    page.get_by_label("Skirt").fill("")
    saved(page, 1)
    page.get_by_label("Skirt").fill("3")
    expect(page.locator("#faults")).to_contain_text("Not saved yet")
    page.get_by_role("button", name="Set back").click()
    saved(page, 1)
    expect(page.locator("[data-part=moved]")).to_be_hidden()


def test_units_are_the_readers_and_change_nothing_typed(page: Page, workroom: Workroom) -> None:
    page.goto(workroom.shade(STAIR))
    page.get_by_role("button", name="metric").click()
    expect(page.locator(".title-block")).to_contain_text("457 mm")
    page.locator("#measure > summary").click()
    expect(page.get_by_label("Width at the top")).to_have_value("18 3/8")
    assert workroom.book.open(1).number == 1


def test_an_earlier_version_is_restored(page: Page, workroom: Workroom) -> None:
    refused = spring(workroom)
    page.goto(workroom.shade(LIBRARY))
    stop = page.locator(".finding.stop", has_text="does not do for this shade")
    stop.get_by_role("button", name="Apply").first.click()
    saved(page, 2)
    assert spring(workroom) != refused
    page.goto(f"{workroom.address}/jobs/1/history")
    page.get_by_role("button", name="Restore version 1").click()
    expect(page.get_by_text(re.compile("version 3"))).to_be_visible()
    assert spring(workroom) == refused
