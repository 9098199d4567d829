"""Every page in light and dark, at the desk and on a tablet, against WCAG 2.2 AA by axe-core.

Source: axe-core rule tags wcag2a to wcag22aa; target sizes are the house's own 48 px.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect
from tests.browser.conftest import DESK, TABLET, Record, Workroom, watched
from tests.web.node_tools import node_tools

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
PAGES = {
    "the jobs": "/",
    "a job": "/jobs/1",
    "a shade fully down": "/jobs/1/shades/1",
    "a shade half up": "/jobs/1/shades/2?raise=0.5",
    "a shade refused": "/jobs/1/shades/9",
    "the versions": "/jobs/1/history",
    "the papers": "/jobs/1/papers",
    "the cloth": "/jobs/1/cloth",
    "a roll that has come": "/jobs/1/rolls/1",
    "the stock": "/jobs/1/stock",
    "the cloth, what if": "/jobs/1/cloth?repeat_longer=2+mm",
    "a bench card": "/jobs/1/shades/4/bench",
    "a bench card with a caution": "/jobs/1/shades/4/bench?step=wind",
    "a bench card with many fields": "/jobs/1/shades/4/bench?step=scale",
    "how it rises": "/jobs/1/shades/4/bench/rise?raise=0.5",
    "the shop's record": "/shop",
    "a why": "/jobs/1/shades/1/why?figure=size.width",
    "nothing there": "/nowhere",
}
LOOKS = [(size, scheme) for size in ("desk", "tablet") for scheme in ("light", "dark")]
NOT_FOUND = "Failed to load resource: the server responded with a status of 404 (Not Found)"
LEAST_TARGET_PX = 48
LEAST_GAP_PX = 8


@pytest.fixture(scope="session")
def axe() -> str:
    return (node_tools() / "axe-core" / "axe.min.js").read_text()


def defects(page: Page, axe: str) -> list[str]:
    page.evaluate(axe)
    found: dict[str, Any] = page.evaluate(
        "rules => axe.run({ runOnly: { type: 'tag', values: rules } })", RULES
    )
    return [
        f"{defect['id']}: {node['html'][:120]}"
        for defect in found["violations"]
        for node in defect["nodes"]
    ]


@pytest.fixture(params=LOOKS, ids=" ".join)
def look(browser: Browser, request: pytest.FixtureRequest) -> Iterator[BrowserContext]:
    """A browser in each of the looks."""
    size, scheme = request.param
    viewport = DESK if size == "desk" else TABLET
    context = browser.new_context(viewport=viewport, color_scheme=scheme)
    yield context
    context.close()


def test_axe_finds_nothing_on_any_page(
    look: BrowserContext, workroom: Workroom, record: Record, axe: str
) -> None:
    page = watched(look, record)
    found = {}
    for name, address in PAGES.items():
        page.goto(workroom.address + address)
        open_all(page)
        found[name] = defects(page, axe)
    assert record.complaints == [NOT_FOUND]
    assert {name: defects for name, defects in found.items() if defects} == {}


def open_all(page: Page) -> None:
    page.evaluate("() => document.querySelectorAll('details').forEach(one => one.open = true)")


def test_axe_finds_nothing_beside_faults_nor_in_the_dialog(
    page: Page, workroom: Workroom, axe: str
) -> None:
    page.goto(workroom.shade(1))
    open_all(page)
    page.get_by_label("Width at the top").fill("18 3/15")
    expect(page.locator(".fault")).to_have_count(1)
    assert defects(page, axe) == []
    page.get_by_label("Width at the top").fill("18 3/16")
    page.locator(".title-block a.figure").first.click()
    expect(page.get_by_role("dialog")).to_contain_text("narrowest")
    assert defects(page, axe) == []


def test_axe_itself_is_awake(page: Page, workroom: Workroom, axe: str) -> None:
    page.goto(workroom.address)
    page.evaluate("() => document.querySelector('label').remove()")
    assert any(defect.startswith("label") for defect in defects(page, axe))


@pytest.mark.parametrize(
    "address",
    [
        "/",
        "/jobs/1",
        "/jobs/1/shades/9",
        "/jobs/1/history",
        "/jobs/1/shades/4/bench?step=stall",
        "/jobs/1/cloth",
        "/jobs/1/rolls/1",
    ],
)
def test_what_a_finger_presses_is_48_px_and_8_px_apart(
    tablet: Page, workroom: Workroom, address: str
) -> None:
    tablet.goto(workroom.address + address)
    open_all(tablet)
    if "shades" in address:
        tablet.get_by_role("button", name="Key pad").click()
    boxes: list[dict[str, Any]] = tablet.evaluate(
        """() => [...document.querySelectorAll(
          'button, .button, input, select, summary, a.open, label.tap, .bench-list a')]
          .filter(one => one.offsetParent && !one.matches('[type=checkbox], [type=radio], .unseen'))
          .map(one => { const box = one.getBoundingClientRect(); return {
            text: one.textContent.trim() || one.name, stuck: !!one.closest('.save-bar, .keypad'),
            summary: one.tagName === 'SUMMARY',
            x: box.x, y: box.y + scrollY, width: box.width, height: box.height }; })"""
    )
    small = [b for b in boxes if min(b["width"], b["height"]) < LEAST_TARGET_PX]
    assert small == []
    loose = [b for b in boxes if not b["stuck"] and not b["summary"]]
    assert [pair for pair in pairwise(loose) if gap(*pair) < LEAST_GAP_PX] == []


def gap(one: dict[str, Any], other: dict[str, Any]) -> float:
    """Give how far apart two boxes lie, the greater of the two directions."""
    across = max(one["x"], other["x"]) - min(one["x"] + one["width"], other["x"] + other["width"])
    up = max(one["y"], other["y"]) - min(one["y"] + one["height"], other["y"] + other["height"])
    return float(max(across, up))
