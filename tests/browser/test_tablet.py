"""Under a finger: the key pad with fractions, and the pull on the drawing."""

from __future__ import annotations

from playwright.sync_api import Page, expect
from tests.browser.conftest import Workroom


def open_measure(tablet: Page, workroom: Workroom) -> None:
    tablet.goto(workroom.shade(1))
    tablet.locator("#measure > summary").tap()


def test_a_finger_on_a_length_opens_the_key_pad(tablet: Page, workroom: Workroom) -> None:
    open_measure(tablet, workroom)
    tablet.get_by_label("Width at the middle").tap()
    pad = tablet.get_by_role("region", name="Key pad")
    expect(pad).to_be_visible()
    expect(pad).to_contain_text("Width at the middle")
    pad.get_by_role("button", name="clear").tap()
    for key in ("1", "7", "5/8"):
        pad.get_by_role("button", name=key, exact=True).tap()
    expect(tablet.get_by_label("Width at the middle")).to_have_value("17 5/8")
    expect(tablet.get_by_text("17 5/8 in · 447.7 mm")).to_be_visible()


def test_another_fraction_takes_the_place_of_the_first(tablet: Page, workroom: Workroom) -> None:
    open_measure(tablet, workroom)
    tablet.get_by_label("Width at the middle").tap()
    pad = tablet.get_by_role("region", name="Key pad")
    pad.get_by_role("button", name="15/16", exact=True).tap()
    expect(tablet.get_by_label("Width at the middle")).to_have_value("18 15/16")
    pad.get_by_role("button", name="Delete the last sign").tap()
    expect(tablet.get_by_label("Width at the middle")).to_have_value("18 15/1")


def test_next_leads_to_the_next_length_and_done_closes(tablet: Page, workroom: Workroom) -> None:
    open_measure(tablet, workroom)
    tablet.get_by_label("Width at the middle").tap()
    pad = tablet.get_by_role("region", name="Key pad")
    pad.get_by_role("button", name="next").tap()
    expect(tablet.get_by_label("Width at the bottom")).to_be_focused()
    expect(pad).to_contain_text("Width at the bottom")
    pad.get_by_role("button", name="done").tap()
    expect(pad).to_be_hidden()


def test_the_page_is_no_wider_than_the_tablet(tablet: Page, workroom: Workroom) -> None:
    for address in ("/", "/jobs/1", "/jobs/1/shades/2?raise=0.5", "/jobs/1/history"):
        tablet.goto(workroom.address + address)
        overflow = "() => document.documentElement.scrollWidth - innerWidth"
        assert tablet.evaluate(overflow) <= 0, address


def test_a_finger_pulls_the_shade_up_on_the_drawing(tablet: Page, workroom: Workroom) -> None:
    tablet.goto(workroom.shade(1))
    grip = tablet.locator("[data-pull]").bounding_box()
    assert grip is not None
    assert grip["height"] >= 48
    x, y = grip["x"] + grip["width"] / 2, grip["y"] + grip["height"] / 2
    finger = tablet.context.new_cdp_session(tablet)

    def touch(kind: str, *points: dict[str, float]) -> None:
        finger.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": list(points)})

    touch("touchStart", {"x": x, "y": y})
    for step in range(1, 11):
        touch("touchMove", {"x": x, "y": y - 12 * step})
    touch("touchEnd")
    share = float(tablet.locator("#raise").input_value())
    assert 0.2 < share < 0.6
    expect(tablet.locator(".plate .layer-marker").first).to_be_visible()
    assert tablet.evaluate("() => scrollY") == 0
