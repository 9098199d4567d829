"""A whole session at the bench on a tablet, with the network cut in the middle of it."""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, Page, expect
from tests.browser.conftest import Workroom, watched
from tests.browser.test_access import axe, defects
from tests.browser.test_keyboard import focus

from foldwright.work.bench import Record

__all__ = ["axe"]  # a fixture

GARDEN = 4
WHOLE = (
    ("weigh", {"Panel with bar, rods and rings": "2.35"}),
    ("width", {"Top": "34 3/8", "Middle": "34 3/8", "Bottom": "34 7/16"}),
    ("drop", {"Left": "53 5/8", "Centre": "53 5/8", "Right": "53 9/16"}),
    ("square", {"Top left to bottom right": "63 3/4", "Bottom left to top right": "63 3/4"}),
    ("rows", {"Greatest difference": "0"}),
    ("wind", {"Turns in the spring": "12"}),
    ("hang", {}),
    ("stall", {"Raised by": "38"}),
    ("rise-time", {"Seconds": "6"}),
    ("scale", {"low_down": "5", "low_up": "3", "high_down": "3", "high_up": "1.5"}),
    ("release", {"Further pull": "1"}),
    ("level", {"A quarter up": "0", "Half up": "1/16", "Three": "1/8", "Fully up": "1/8"}),
    ("hold", {"low_drift": "0", "middle_drift": "1/8", "high_drift": "1/4", "day": "1/2"}),
    ("cycles", {}),
    ("up-stop", {"Clear above": "3/4"}),
    ("loops", {"Column 1": "14", "Column 2": "14", "Column 3": "14"}),
    ("label", {}),
)
TAPS = {
    "hang": "Hung, and level",
    "stall": "Stood still by itself",
    "release": "Yes",
    "level": "Right",
    "cycles": "Without a fault",
    "label": "Yes",
}
CUT_AT, MENDED_AT = "stall", "hold"


def bench(workroom: Workroom) -> str:
    return f"{workroom.shade(GARDEN)}/bench"


def record(workroom: Workroom) -> Record:
    return workroom.book.bench.of_shade(1, "Garden")[0]


def steps_of(found: Record) -> list[str]:
    return [entry.step for entry in found.entries]


def shown(page: Page) -> str:
    return page.locator("[data-step]:not([hidden])").get_attribute("data-step") or ""


def all_saved(page: Page) -> None:
    """Wait until nothing waits on this page any more."""
    expect(page.locator("[data-waiting='0']")).to_be_attached()
    expect(page.locator("[data-outbox]")).to_be_empty()


def go_to(page: Page, step: str) -> None:
    if shown(page) != step:
        page.locator(f".bench-list [data-step-link={step}]").tap()
    expect(page.locator(f"[data-step={step}]")).to_be_visible()


def do_step(page: Page, step: str, typed: dict[str, str]) -> None:
    """Do one step as a person would: type, take an answer, save."""
    go_to(page, step)
    section = page.locator(f"[data-step={step}]")
    for label, text in typed.items():
        by_name = section.locator(f"[name={label}]") if "_" in label or label == "day" else None
        field = by_name or section.get_by_label(label).first
        field.fill(text)
    answer = TAPS.get(step)
    if answer and not typed and step != "cycles":
        section.get_by_role("button", name=answer).tap()
        return
    if answer:
        section.get_by_label(answer).check()
    section.get_by_role("button", name="Save", exact=True).tap()


def test_a_whole_session_with_the_network_cut_in_its_middle(
    tablet: Page, workroom: Workroom
) -> None:
    tablet.goto(bench(workroom))
    tablet.locator("[data-step=weigh] [name=by]").fill("AB")
    for step, typed in WHOLE:
        if step == CUT_AT:
            all_saved(tablet)
            tablet.context.set_offline(True)
        if step == MENDED_AT:
            kept_so_far = len(record(workroom).entries)
            told = "5 entries are kept on this tablet and not saved yet"
            expect(tablet.locator("[data-outbox]")).to_contain_text(told)
            mark = tablet.locator(".bench-list [data-kept-here=scale]")
            expect(mark).to_have_text("kept on this tablet, not saved yet")
            tablet.context.set_offline(False)
            tablet.reload()
            all_saved(tablet)
            assert kept_so_far == 7
            assert len(record(workroom).entries) == kept_so_far + 5
        do_step(tablet, step, typed)
        if step not in {"stall", "rise-time", "scale", "release", "level"}:
            all_saved(tablet)
    found = record(workroom)
    assert steps_of(found) == [step for step, _ in WHOLE]
    assert len({entry.key for entry in found.entries}) == len(WHOLE)
    assert {entry.by for entry in found.entries} == {"AB"}
    assert found.typed_at("stall")["turns"] == "12"  # noted while the workroom was away
    expect(tablet.locator(".bench-head")).to_contain_text("17 of 17 done")
    expect(tablet.locator(".bench-advice .turn")).to_contain_text("Wind in")


def test_what_waits_outlives_the_page(tablet: Page, workroom: Workroom) -> None:
    tablet.goto(bench(workroom))
    tablet.context.set_offline(True)
    do_step(tablet, "weigh", {"Panel with bar": "2.35"})
    expect(tablet.locator("[data-outbox]")).to_contain_text("1 entry is kept on this tablet")
    tablet.goto("about:blank")
    tablet.context.set_offline(False)
    tablet.goto(bench(workroom))
    expect(tablet.locator(".bench-head")).to_contain_text("1 of 17 done")
    assert steps_of(record(workroom)) == ["weigh"]


def test_an_answer_that_is_lost_on_its_way_back_is_not_noted_twice(
    tablet: Page, workroom: Workroom
) -> None:
    tablet.goto(bench(workroom))

    def lose_the_answer(route) -> None:  # type: ignore[no-untyped-def]  # noqa: ANN001
        route.fetch()
        route.abort("internetdisconnected")

    tablet.route("**/bench", lose_the_answer, times=1)
    do_step(tablet, "weigh", {"Panel with bar": "2.35"})
    expect(tablet.locator("[data-outbox]")).to_contain_text("1 entry is kept")
    tablet.get_by_role("button", name="Try now").tap()
    all_saved(tablet)
    assert steps_of(record(workroom)) == ["weigh"]


def test_what_was_typed_and_not_saved_comes_back_after_a_sleep(
    tablet: Page, workroom: Workroom
) -> None:
    tablet.goto(f"{bench(workroom)}?step=width")
    tablet.locator("#width-top").fill("34 3/8")
    tablet.reload()
    expect(tablet.locator("#width-top")).to_have_value("34 3/8")
    assert shown(tablet) == "width"
    tablet.goto(f"{bench(workroom)}?step=stall")
    tablet.get_by_label("Stood still by itself").check()
    tablet.reload()
    expect(tablet.get_by_label("Stood still by itself")).to_be_checked()


def test_what_cannot_be_read_stays_typed_even_when_it_was_noted_far_from_the_workroom(
    tablet: Page, workroom: Workroom
) -> None:
    tablet.goto(bench(workroom))
    tablet.context.set_offline(True)
    do_step(tablet, "weigh", {"Panel with bar": "heavy"})
    do_step(tablet, "width", {"Top": "34 3/8"})
    tablet.context.set_offline(False)
    expect(tablet.locator("[data-waiting='0']")).to_be_attached()
    expect(tablet.locator("[data-outbox]")).to_contain_text("cannot be read and is not saved")
    expect(tablet.locator(".bench-list [data-kept-here=weigh]")).to_have_text("typed, not saved")
    go_to(tablet, "weigh")
    expect(tablet.locator("[data-outbox]")).to_be_empty()
    expect(tablet.locator("#weigh-mass")).to_have_value("heavy")
    expect(tablet.locator("[data-step=weigh]")).to_contain_text("one plain number")
    assert steps_of(record(workroom)) == ["width"]
    tablet.reload()
    expect(tablet.locator("#weigh-mass")).to_have_value("heavy")


def test_one_undo_takes_back_what_still_waits_here(tablet: Page, workroom: Workroom) -> None:
    tablet.goto(bench(workroom))
    do_step(tablet, "weigh", {"Panel with bar": "2.35"})
    expect(tablet.locator(".bench-head")).to_contain_text("1 of 17 done")
    tablet.context.set_offline(True)
    do_step(tablet, "weigh", {"Panel with bar": "23.5"})
    tablet.get_by_role("button", name="Take back the last").tap()
    expect(tablet.locator("[data-outbox]")).to_contain_text("2 entries are kept")
    tablet.context.set_offline(False)
    all_saved(tablet)
    assert record(workroom).typed_at("weigh") == {"mass": "2.35"}
    assert steps_of(record(workroom)) == ["weigh", "weigh", "undo"]


def test_two_tablets_write_into_one_record(
    tablet: Page, workroom: Workroom, second_tablet: Page
) -> None:
    for page in (tablet, second_tablet):
        page.goto(bench(workroom))
    tablet.context.set_offline(True)
    do_step(tablet, "weigh", {"Panel with bar": "2.35"})
    do_step(second_tablet, "wind", {"Turns in the spring": "12"})
    expect(second_tablet.locator(".bench-head")).to_contain_text("1 of 17 done")
    tablet.context.set_offline(False)
    expect(tablet.locator(".bench-head")).to_contain_text("2 of 17 done")
    assert steps_of(record(workroom)) == ["wind", "weigh"]
    second_tablet.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))")
    expect(second_tablet.locator(".bench-head")).to_contain_text("2 of 17 done")


@pytest.fixture
def second_tablet(tablet: Page, record: object) -> Page:
    browser = tablet.context.browser
    assert browser is not None
    context: BrowserContext = browser.new_context(
        viewport={"width": 820, "height": 1180}, has_touch=True
    )
    return watched(context, record)  # type: ignore[arg-type]


def test_what_the_workroom_turns_away_stays_here_and_says_so(
    tablet: Page, workroom: Workroom
) -> None:
    tablet.goto(bench(workroom))
    tablet.route("**/bench", lambda route: route.fulfill(status=409), times=1)
    do_step(tablet, "weigh", {"Panel with bar": "2.35"})
    expect(tablet.locator("[data-outbox]")).to_contain_text("does not take them")
    tablet.get_by_role("button", name="Try now").tap()
    all_saved(tablet)
    assert steps_of(record(workroom)) == ["weigh"]


def test_the_shade_rises_as_it_would_and_the_arrow_keys_stop_it_anywhere(
    page: Page, workroom: Workroom
) -> None:
    page.goto(f"{bench(workroom)}/rise")
    expect(page.locator(".views")).to_contain_text("0.00 s after the release")
    page.get_by_role("button", name="Let it rise").click()
    expect(page.locator("#raise")).to_have_value("1")
    expect(page.locator(".views")).not_to_contain_text("0.00 s after the release")
    focus(page, "#raise")
    page.keyboard.press("Home")
    expect(page.locator(".views")).to_contain_text("0.00 s after the release")
    assert page.locator("#raise").get_attribute("aria-valuetext") == "0.00 s"
    page.get_by_text("Will not release").click()
    expect(page.get_by_text("What mends it:").nth(3)).to_be_visible()


def test_the_whole_card_is_worked_with_the_keyboard(page: Page, workroom: Workroom) -> None:
    page.goto(bench(workroom))
    focus(page, "#weigh-mass")
    page.keyboard.type("2.35")
    page.keyboard.press("Enter")
    expect(page.locator("[data-step=width]")).to_be_visible()
    assert page.evaluate("() => document.activeElement.id") == "title-width"
    focus(page, "#width-top")
    page.keyboard.type("34 3/8")
    focus(page, "[data-step=width] a[data-step-link=drop]")
    page.keyboard.press("Enter")
    expect(page.locator("[data-step=drop]")).to_be_visible()
    focus(page, ".bench-list [data-step-link=stall]")
    page.keyboard.press("Enter")
    focus(page, "[data-step=stall] [name=ended]")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowDown")
    focus(page, "#stall-raise")
    page.keyboard.type("38")
    page.keyboard.press("Enter")
    expect(page.locator("[data-step=stall] .judgement")).to_contain_text("38 in")
    assert steps_of(record(workroom)) == ["weigh", "stall"]
    assert record(workroom).typed_at("stall")["ended"] == "stalled"


def test_the_card_is_worked_without_script(plain: Page, workroom: Workroom) -> None:
    plain.goto(bench(workroom))
    plain.get_by_label("Panel with bar").fill("2.35")
    plain.get_by_role("button", name="Save", exact=True).click()
    expect(plain.locator("[data-just-now]")).to_contain_text("2.35 lb, expected")
    expect(plain.get_by_role("heading", name="Measure the width")).to_be_visible()
    plain.get_by_role("link", name="Leave it, go on").click()
    plain.get_by_role("link", name="Wind the spring").click()
    plain.locator("#wind-turns").fill("12")
    plain.get_by_role("button", name="Save", exact=True).click()
    plain.get_by_role("button", name="Hung, and level").click()
    plain.get_by_label("Stood still by itself").check()
    plain.get_by_label("Raised by, where it stood still").fill("38")
    plain.get_by_role("button", name="Save", exact=True).click()
    expect(plain.locator(".bench-advice .turn")).to_contain_text("Wind in")
    plain.get_by_role("button", name="Take back the last").click()
    expect(plain.locator(".bench-advice .turn")).not_to_contain_text("clockwise at")
    assert steps_of(record(workroom)) == ["weigh", "wind", "hang", "stall", "undo"]


def test_axe_finds_nothing_on_a_card_with_entries_faults_and_advice(
    tablet: Page, workroom: Workroom, axe: str
) -> None:
    tablet.goto(bench(workroom))
    do_step(tablet, "wind", {"Turns in the spring": "12"})
    expect(tablet.locator("[data-just-now]")).not_to_be_empty()
    do_step(tablet, "stall", {"Raised by": "38"})
    expect(tablet.locator(".bench-advice .turn")).to_contain_text("Wind in")
    do_step(tablet, "width", {"Top": "34 7/15"})
    expect(tablet.locator(".fault")).to_have_count(1)
    tablet.evaluate("() => document.querySelectorAll('details').forEach(one => one.open = true)")
    assert defects(tablet, axe) == []
    tablet.locator(".bench-advice a.figure").first.tap()
    expect(tablet.get_by_role("dialog")).to_be_visible()
    assert defects(tablet, axe) == []


@pytest.mark.parametrize("width", [820, 1440])
def test_the_card_is_no_wider_than_the_screen(tablet: Page, workroom: Workroom, width: int) -> None:
    tablet.set_viewport_size({"width": width, "height": 900})
    for step, _ in WHOLE:
        tablet.goto(f"{bench(workroom)}?step={step}")
        assert tablet.evaluate("() => document.documentElement.scrollWidth - innerWidth") <= 0, step
