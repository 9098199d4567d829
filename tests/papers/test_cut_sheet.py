"""The cut sheet as printed: marks in order, figures large, nothing in the margins."""

from dataclasses import replace
from functools import cache
from io import BytesIO

import pdfplumber
import pytest
from tests.core.drawing.test_roll import long_roll
from tests.papers.reading import Sheet, read
from tests.papers.shades import HEADER

from foldwright.core.cloth.example import ORDER, PLAN
from foldwright.core.cloth.order import ClothPlan, Comparison
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.papers.cut_sheet import cut_sheet
from foldwright.papers.header import SIZES, Paper

COMPARED = replace(
    PLAN,
    comparison=Comparison(
        plan=Length.mm(3340), shade_by_shade=Length.mm(4920), first_fit=Length.mm(3340),
        bound=Length.mm(3340),
    ),
)  # fmt: skip
LONG = long_roll(40)


def pdf(plan: ClothPlan, paper: Paper, system: System) -> bytes:
    return cut_sheet(plan, ORDER, cloth="Meadow print", header=HEADER, paper=paper, system=system)


@cache
def printed(paper: Paper, system: System) -> Sheet:
    return read(pdf(COMPARED, paper, system))


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("system", System)
def test_it_is_one_tagged_page_with_nothing_in_the_margins(paper: Paper, system: System) -> None:
    found, size = printed(paper, system), SIZES[paper]
    assert found.pages == 1
    assert found.tagged
    assert found.universal
    assert (found.width, found.height) == pytest.approx((size.width, size.height), abs=0.01)
    for word in found.words:
        assert word.left >= size.margin - 0.3, word
        assert word.right <= size.width - size.margin + 0.3, word
        assert word.bottom <= size.height - size.margin + 0.3, word


def test_what_is_taken_is_the_largest_word() -> None:
    found = printed(Paper.A4, System.METRIC)
    largest = max(word.size_pt for word in found.words)
    assert " ".join(w.text for w in found.words if w.size_pt == largest) == "3.34 m"


def test_cuts_stand_in_order_with_marks_balance_and_pieces() -> None:
    said = printed(Paper.A4, System.METRIC).said()
    for words in (
        "1 100 mm 1700 mm 1600 mm 0 mm",
        "2 1740 mm 3340 mm 1600 mm 0 mm",
        "rip from 0 mm to 1350 mm",
        "rip from 300 mm to 600 mm",
        "3300 mm",
        "1660 mm",
        "from mark 1740 mm , 600 mm from the left edge: 770 mm by 1600 mm , large enough for board",
        "Lost between cuts: 20 mm to the repeat.",
    ):
        assert words in said
    assert said.index("1700 mm") < said.index("3340 mm")


def test_a_piece_has_the_same_key_in_the_list_and_on_the_roll() -> None:
    said = printed(Paper.A4, System.METRIC).said()
    for key in ("2a", "2b"):
        assert said.count(key) == 2


def test_no_mere_strip_is_listed_as_left() -> None:
    strip = replace(PLAN.remnants[0], width=Length.mm(20))
    found = read(pdf(replace(PLAN, remnants=(strip,)), Paper.A4, System.METRIC))
    assert "Left over" not in found.said()


def test_a_bound_that_is_not_known_yet_is_not_printed_as_nothing() -> None:
    assert COMPARED.comparison is not None
    unknown = replace(COMPARED.comparison, bound=Length.mm(0))
    found = read(pdf(replace(COMPARED, comparison=unknown), Paper.A4, System.METRIC))
    assert "Proven least not known yet" in found.said()


def test_it_says_what_is_proven_and_what_simpler_ways_take() -> None:
    said = printed(Paper.A4, System.METRIC).said()
    assert "3.34 m; it is proven that no plan takes less." in said
    assert "Each shade on its own 4.92 m (1.58 m saved)" in said


def test_inches_are_fractions_and_cloth_is_in_yards() -> None:
    said = printed(Paper.LETTER, System.INCH).said()
    assert "3 3/4 yd" in said
    assert "66 15/16 in" in said


def test_a_long_roll_runs_over_pages_and_names_every_cut() -> None:
    with pdfplumber.open(BytesIO(pdf(LONG, Paper.A4, System.METRIC))) as document:
        pages = [page.extract_text() for page in document.pages]
    assert len(pages) > 1
    assert f"page {len(pages)} of {len(pages)}" in pages[-1]
    assert all("Version" in page and "Cut sheet" in page for page in pages)
    text = "\n".join(pages)
    assert all(f"{number} a, 600 mm by 850 mm" in text for number in range(40))


def test_figures_are_eleven_points_in_the_list() -> None:
    found = printed(Paper.A4, System.METRIC)
    marks = [word for word in found.words if word.text in {"1700", "1740", "3340"}]
    assert marks
    assert min(word.size_pt for word in marks) >= 10.99
