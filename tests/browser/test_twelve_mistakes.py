"""An order with twelve mistakes in it shows twelve findings, and its remedies alone mend it."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Locator, Page, expect
from tests.browser.conftest import Workroom

ORDER = Path(__file__).parent / "twelve.toml"
MISTAKES = {
    1: (
        "measure.exchanged",  # widths and heights stand in each other's fields
        "check.no-screw",  # the board is to be screwed into tile
        "design.edge-too-near",  # the outer cords are too near the edge
        "lift.nothing-fits",  # the spring is used up by the travel
    ),
    2: (
        "measure.overlap-left",  # light comes round one edge
        "check.row-on-band",  # a ring row on the band
        "safety.chain-near-children",  # a chain where children are
        "check.fixing-near-end",  # the board would split
    ),
    3: (
        "design.head-too-short",  # it would never raise fully
        "check.turned-pattern",  # the print would lie on its side
        "check.motif-cut",  # the hem cuts through a motif
        "check.parcel-short",  # the box is shorter than the shade
    ),
}
MOST_VERSIONS = 20  # one for each press; thirteen are enough


def shade(workroom: Workroom, number: int) -> str:
    return f"{workroom.address}/jobs/2/shades/{number}"


def open_all(page: Page) -> None:
    """Unfold the notes, so that their buttons can be seen."""
    for notes in page.locator("#findings details.notes:not([open]) > summary").all():
        notes.click()


def buttons_of(page: Page, name: str) -> Locator:
    return page.locator(f"#findings button.apply[value^='{name}/']")


def said(page: Page, name: str) -> bool:
    """Tell whether a finding stands on the page, by its button or by the form to override it."""
    own = page.locator(f"#findings .finding button[value^='{name}']")
    return own.count() > 0


def press_the_first(page: Page, names: tuple[str, ...], version: int) -> bool:
    """Press the first remedy of the first mistake that is left; tell whether there was one."""
    open_all(page)
    for name in names:
        if buttons_of(page, name).count():
            buttons_of(page, name).first.click()
            expect(page.locator("#faults")).to_contain_text(f"Saved as version {version}")
            return True
    return False


def test_twelve_mistakes_show_and_are_mended_by_their_remedies_alone(
    page: Page, workroom: Workroom
) -> None:
    page.goto(workroom.address)
    page.get_by_label("Job file (.toml)").set_input_files(ORDER)
    page.get_by_role("button", name="Take it in").click()
    expect(page.get_by_role("heading", name="Toll house")).to_be_visible()
    shown = []
    for number, names in MISTAKES.items():
        page.goto(shade(workroom, number))
        open_all(page)
        shown += [name for name in names if said(page, name)]
    assert len(shown) == 12
    assert len({name.partition(".")[0] for name in shown}) >= 5

    version = 2
    for number, names in MISTAKES.items():
        page.goto(shade(workroom, number))
        while press_the_first(page, names, version):
            version += 1
            assert version <= MOST_VERSIONS

    for number, names in MISTAKES.items():
        page.goto(shade(workroom, number))
        open_all(page)
        expect(page.locator("#findings .finding.stop")).to_have_count(0)
        assert [name for name in names if said(page, name)] == []
        expect(page.locator(".plate")).to_be_visible()
    page.goto(f"{workroom.address}/jobs/2")
    expect(page.locator(".open-findings .to-findings")).to_have_count(0)
