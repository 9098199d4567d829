"""The styles of the trade against published pages: tucks, poufs, scallops, swags.

Each check names its source, an id of docs/sources.toml. Where the page prints the number
the check says so; elsewhere the rule is the page's and the size is ours.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from tests.core.layouts import cloth, inches, laid_out, sized

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.tucked import book_tuck_count
from foldwright.core.facts.records import Chosen


def test_a_stitched_tuck_shade_by_the_book() -> None:
    """stitched-tuck-book: (length - 3)/3 tucks to the nearest, spaced evenly, 1/2 in each.

    Published rule: 63 in gives 20 tucks 3.15 in apart and 10 in more of length; rings on
    every other tuck from the lowest lie 6.3 in apart. Tolerance 0.0005 in.
    """
    size = sized("36", "63")
    assert book_tuck_count(size.drop).value == 20
    design = Choices(
        style=StyleName.TUCKED,
        skirt=inches("0"),
        head_allowance=inches("3"),
        hem_allowance=inches("0"),
        top_allowance=inches("0"),
        shrinkage=0.0,
    )
    layout = laid_out(design, size)
    ridges = [float(ridge.value.in_inches) for ridge in layout.rows.ridges]
    assert ridges == pytest.approx([3.15 * number for number in range(1, 21)], abs=0.0005)
    assert [mark.value for mark in layout.rows.marks] == [
        ridge.value for ridge in layout.rows.ridges[::2]
    ]
    assert float(layout.rows.spacing.value.in_inches) == pytest.approx(6.3, abs=0.0005)
    assert layout.cuts[0].length.value == inches("73")


def test_a_london_shade_as_a_workroom_makes_it() -> None:
    """london-gallery-diary. Published numbers: about 45 in the widest for one swag; side
    sections of 5 to 7 in; about 12 in of cloth in a pleat. Exact, and 6 in taken of 5 to 7.
    """
    one, two = (
        laid_out(Choices(style=StyleName.LONDON), sized(each, "60")) for each in ("57", "58")
    )
    assert (one.columns.count.value, two.columns.count.value) == (2, 3)
    assert inches("5") <= one.columns.edge_distance.value <= inches("7")
    assert one.widths.cloth_width is not None
    assert one.widths.cloth_width.value - inches("57") == inches("24")


def test_a_balloon_shade_by_a_tutorial() -> None:
    """balloon-tutorial: cloth two and a half times the window, columns 1 in from its edges.

    Published rule: a 40-in window takes 100 in of cloth, and with three poufs its columns
    stand (100 - 2)/3 = 32.67 in apart on it. Rings 7 to 10 in apart. Tolerance 0.005 in.
    """
    design = Choices(
        style=StyleName.BALLOON,
        edge_distance=inches("1"),
        column_count=4,
        side_turn=inches("0"),
        tied_rows=0,
    )
    layout = laid_out(design, sized("40", "60"), Chosen(face=cloth("118")))
    assert layout.cuts[0].width.value == inches("100")
    marks = [float(mark.value.in_inches) for mark in layout.columns.cloth_marks]
    assert [right - left for left, right in pairwise(marks)] == pytest.approx(
        [32.67] * 3, abs=0.005
    )
    assert inches("7") <= layout.rows.spacing.value <= inches("10")


@pytest.mark.parametrize(
    ("scallop", "fullness", "width", "length"), [("4", 3.0, "67", "180"), ("3", 2.0, "63", "120")]
)
def test_an_austrian_shade_by_a_blog(
    scallop: str, fullness: float, width: str, length: str
) -> None:
    """gathered-shade-blog: 3 to 4 in a scallop of at most 12 in, and 3 in of side seams;
    three lengths of sheer cloth, two of opaque.

    Published rule: 48 by 60 in with four scallops takes 67 (63) in across, and 180 in of
    sheer or 120 in of opaque cloth along. Widths exact, lengths within 0.0005 in.
    """
    design = Choices(
        style=StyleName.AUSTRIAN,
        scallop=inches(scallop),
        fullness=fullness,
        side_turn=inches("3/2"),
        hem_allowance=inches("0"),
        top_allowance=inches("0"),
        shrinkage=0.0,
    )
    layout = laid_out(design, sized("48", "60"), Chosen(face=cloth("118")))
    assert layout.columns.count.value - 1 == 4
    assert layout.cuts[0].width.value == inches(width)
    assert float(layout.cuts[0].length.value.in_inches) == pytest.approx(float(length), abs=0.0005)
