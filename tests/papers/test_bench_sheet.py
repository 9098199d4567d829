"""The bench card on paper: the steps of the screen, what was noted, and room for the rest."""

from __future__ import annotations

import re

import pytest
from tests.papers.reading import Sheet, read
from tests.papers.shades import EXTREMES, HEADER, demo_job, demo_plan, demo_tags, extreme

from foldwright.core.prove.card_step import CardStep
from foldwright.core.quantity.rounding import System
from foldwright.papers.bench_sheet import CardSheet, FilledStep, bench_sheet
from foldwright.papers.header import SIZES
from foldwright.papers.sheets import Paper
from foldwright.work.bench_card import card_order, card_steps

NOTED = {
    "weigh": FilledStep(typed={"mass": "2 lb 6 oz"}, outcome="pass", noted="AB, 4 May 2026, 12:00"),
    "stall": FilledStep(typed={"ended": "stalled", "raise": "38 1/4"}, outcome="ask"),
}


def steps_of(tag: str) -> tuple[CardStep, ...]:
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    order = card_order(made, demo_job().habits, demo_job().markets)
    assert order is not None
    return card_steps(order)


def printed(tag: str, paper: Paper = Paper.LETTER, *, noted: bool = False) -> Sheet:
    made = extreme(tag) if tag in EXTREMES else demo_plan(tag)
    card = CardSheet(steps=steps_of(tag), filled=NOTED if noted else {}, session="bench test")
    return read(bench_sheet(made, HEADER, paper, System.INCH, card))


def words(sheet: Sheet) -> str:
    return re.sub(r" ([.,;:)])", r"\1", sheet.said())


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("tag", [*demo_tags(), *EXTREMES])
def test_every_card_takes_one_page_within_its_margins(tag: str, paper: Paper) -> None:
    found, size = printed(tag, paper), SIZES[paper]
    assert found.pages == 1
    assert found.universal
    assert min(word.size_pt for word in found.words) >= 7.99
    assert max(word.right for word in found.words) <= size.width - size.margin + 0.3
    assert max(word.bottom for word in found.words) <= size.height - size.margin + 0.3


def test_the_paper_has_the_steps_of_the_screen_in_their_order() -> None:
    said = words(printed("Garden"))
    places = [said.index(f"{step.title}.") for step in steps_of("Garden")]
    assert places == sorted(places)


def test_what_was_noted_is_printed_and_the_rest_has_room() -> None:
    said = words(printed("Garden", noted=True))
    assert "Panel with bar, rods and rings: 2 lb 6 oz PASS AB, 4 May 2026, 12:00" in said
    assert "How it ended: Stood still by itself" in said
    assert "Raised by, where it stood still: 38 1/4" in said
    assert "Is it all there?: Yes No" in said


def test_a_figure_noted_is_as_large_as_any_figure() -> None:
    found = printed("Garden", noted=True)
    assert {word.size_pt for word in found.words if word.text == "38"} == {11.0}


def test_the_cautions_stand_at_the_foot_under_the_letters_of_the_steps() -> None:
    said = words(printed("Garden"))
    foot = said[said.index("Cautions") :]
    for text in ("crank", "eye protection", "loosen a bracket", "child's neck"):
        assert text in foot
    assert re.search(r"now in the spring\. ?\( ?A\)", said)
