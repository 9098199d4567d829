"""The layout search by examples whose best can be reckoned by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import cloth, figure, inches, sized
from tests.core.searched import offered, reviewed, shape

from foldwright.core.check.choices import Cutting
from foldwright.core.check.layouts.offers import Offer
from foldwright.core.check.layouts.proposing import propose_layouts
from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.making import Making
from foldwright.core.facts.layout_taste import BEST, NEXT, OTHERS, Merit, Wish
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill

PRINT = Chosen(face=cloth("54", vertical_repeat=inches("19 1/2")))


def told(offer: Offer) -> str:
    return fill(offer.way.sentence, offer.way.figures, System.INCH)


def typed(offer: Offer) -> dict[str, str]:
    return {change.path.removeprefix("design."): change.text for change in offer.way.changes}


def test_a_seam_on_a_column_is_cleared_by_the_edge_and_saves_a_column() -> None:
    """Own arithmetic: 75 in joined at 11 and 64: 2 in from the edge 9 columns stand 8 7/8 apart,
    one 1/8 in from the seam; 2 1/2 in from it 8 stand 10 apart, the nearest 1 1/2 in off."""
    best = offered(Choices(), "75", "60").best
    assert best.layout.columns.count.value == 8
    assert best.layout.columns.edge_distance.value == inches("2 1/2")
    assert best.layout.columns.pitch.value == inches("10")
    assert best.layout.widths.nearest_column is not None
    assert best.layout.widths.nearest_column.value == inches("1 1/2")
    assert best.stands
    assert "a seam lies 1 1/2 in from the nearest column" in told(best)


def test_with_the_edge_typed_the_seam_moves_instead() -> None:
    """Own arithmetic: the 53-in middle cut to 52 puts the seams at 11 1/2: 5/8 in from a column."""
    offers = offered(Choices(edge_distance=inches("2")), "75", "60")
    assert offers.best.layout.columns.edge_distance.value == inches("2")
    assert typed(offers.best) == {"middle_piece": "52 in", "column_count": "9"}
    nearest = offers.best.layout.widths.nearest_column
    assert nearest is not None
    assert nearest.value == inches("5/8")
    assert offers.in_the_way == ()


def test_typed_edge_and_columns_and_middle_leave_no_way_and_are_named() -> None:
    design = Choices(edge_distance=inches("2"), column_count=9, middle_piece=inches("53"))
    offers = offered(design, "75", "60")
    assert {change.path for way in offers.in_the_way for change in way.changes} == {
        "design.edge_distance",
        "design.column_count",
        "design.middle_piece",
    }
    assert all(change.text == "" for way in offers.in_the_way for change in way.changes)
    sentence = fill(offers.in_the_way[0].sentence, offers.in_the_way[0].figures, System.INCH)
    assert sentence == (
        "With the edge distance of 2 in that is typed, no layout is without a stop. Leave it to"
        " the tool."
    )


def test_one_column_fewer_saves_a_ring_in_each_row_and_a_cord() -> None:
    """Own arithmetic: 34 in less twice 2 takes 4 columns; less twice 2 in, 30 in exactly 4; at
    34 1/2 it takes 5, and 4 again 2 1/4 in from the edge."""
    offers = offered(Choices(), "34 1/2", "60")
    assert typed(offers.best) == {"column_count": "4", "edge_distance": "2 1/4 in"}
    rows = offers.best.layout.rows.count.value
    assert f"1 column fewer saves {rows} rings and a cord." in told(offers.best)
    assert offers.others[0].title == "By the house's habits"
    assert offers.others[0].stands


def test_a_pattern_is_locked_by_a_whole_part_of_its_repeat() -> None:
    """Own arithmetic: a repeat of 19 1/2 in three parts is a spacing of 6 1/2; two are 9 3/4,
    over the cap, and four 4 7/8, too shallow to fold well."""
    offers = offered(Choices(), "48", "60", PRINT)
    locked = next(each for each in offers.all if "third fold" in told(each))
    drift = abs(locked.layout.rows.spacing.value - inches("6 1/2"))
    assert drift * locked.layout.rows.count.value <= inches("1/16")
    assert "every third fold shows the same part of the print" in told(locked)
    assert set(typed(locked)) <= {
        "row_count",
        "skirt",
        "head_allowance",
        "column_count",
        "edge_distance",
    }


def test_a_plain_cloth_has_no_pattern_to_lock() -> None:
    assert not any("print" in told(each) for each in offered(Choices(), "48", "60").all)


def test_loops_are_locked_by_their_fullness_within_the_longest_loop() -> None:
    """hobbled-pattern-diary: 17 in of repeat, every third fold alike, on 7 in of tape makes a
    loop of 18.3, over 16.9; what is offered keeps under it."""
    design = Choices(style=StyleName.LOOPED)
    offers = offered(design, "36", "63", Chosen(face=cloth("54", vertical_repeat=inches("17"))))
    locked = next(each for each in offers.all if "fold shows" in told(each))
    rows = locked.layout.rows
    loop = rows.spacing.value + rows.fold_depth.value * 2
    assert loop <= inches("16 9/10")
    half = inches("17").nanometres / 2
    assert rows.fold_depth.value.nanometres * 2 / half == pytest.approx(1, abs=0.001)
    assert "every other fold shows the same part of the print" in told(locked)
    assert "fullness" in typed(locked)


def test_typed_fullness_asks_for_more_rows_and_both_typed_are_named() -> None:
    """hobbled-pattern-diary: at 2 to 1 the spacing is at most 16.9/3 = 5.63, so 63 in take 12
    rows; ten rows of 6.3 in make loops of 18.9."""
    double = Choices(style=StyleName.LOOPED, fullness=2.0)
    assert offered(double, "36", "63").best.layout.rows.count.value == 12
    ten = offered(replace(double, row_count=10), "36", "63")
    assert {change.path for way in ten.in_the_way for change in way.changes} == {
        "design.row_count",
        "design.fullness",
    }


def test_a_longer_skirt_saves_a_row_and_says_what_it_takes() -> None:
    """Own arithmetic: 64 1/2 in less a head of 65 mm and a skirt of 1 1/2 in are 60.44, over
    7 1/2 times 8; less a skirt of 2 in they are 59.94, and 7 rows do."""
    offers = offered(Choices(column_count=5, edge_distance=inches("2")), "36", "64 1/2")
    assert typed(offers.best) == {"skirt": "2 in"}
    assert told(offers.best) == (
        "7 rows at 8 in, 5 columns 8 in apart, the first 2 in from the edge. 1 row fewer saves 5"
        " rings; the raised shade is 13/16 in longer; the hem shows 2 in below the folds instead"
        " of 1 1/2 in."
    )


def test_rows_keep_off_a_band() -> None:
    """A band from 5 to 6 in over the hem lies where the lowest row would be: 1 1/2 and half of
    7.46."""
    plain = offered(Choices(), "36", "60").best.layout
    first = plain.rows.first_row.value
    making = Making(band_height=inches("1"), band_above_hem=first - inches("1/2"))
    best = offered(Choices(), "36", "60", making=making).best.layout
    assert making.band_above_hem is not None
    band = (making.band_above_hem, making.band_above_hem + inches("1"))
    assert not any(band[0] <= mark.value <= band[1] for mark in best.rows.marks)


def test_the_lowest_row_keeps_off_a_motif() -> None:
    """A motif 1/2 in high is centred where the lowest row would be, and at every 19 1/2 in."""
    first = offered(Choices(), "36", "60", PRINT).best.layout.rows.first_row.value
    cutting = Cutting(motif_height=inches("1/2"), motif_above_hem=first)
    best = offered(Choices(), "36", "60", PRINT, cutting=cutting).best
    assert abs(best.layout.rows.first_row.value - first) >= inches("1/4")
    assert "the lowest row folds no motif in two" in told(best)


def test_glass_that_may_not_be_covered_is_kept_free() -> None:
    """A stop before any saving: the client allows the stack 1 in on the glass."""
    size = sized("36", "60", top_above_glass=figure("top above the glass", "7 1/2"))
    design = Choices(stack_allowed_on_glass=inches("1"))
    offers = propose_layouts(reviewed(design, size))
    assert offers is not None
    covered = offers.best.layout.stack.glass_covered
    assert covered is not None
    assert covered.value <= inches("1")


def test_where_everything_is_typed_there_is_one_layout() -> None:
    design = Choices(
        row_count=7,
        skirt=inches("1 1/2"),
        head_allowance=inches("3"),
        edge_distance=inches("2"),
        column_count=6,
    )
    offers = offered(design, "48", "60")
    assert offers.others == ()
    assert offers.best.stands
    assert "Nothing that was tried is better." in told(offers.best)


def test_nothing_is_offered_where_nothing_can_be_drawn() -> None:
    assert propose_layouts(reviewed(Choices(), sized("48", "4"))) is None


def test_a_metric_shade_is_offered_whole_millimetres() -> None:
    size = sized(Length.mm(900), Length.mm(1640))
    offers = propose_layouts(reviewed(Choices(), size))
    assert offers is not None
    lengths = [
        text
        for each in offers.all
        for field, text in typed(each).items()
        if field not in {"row_count", "column_count"}
    ]
    assert lengths
    assert all(text.endswith(" mm") for text in lengths)


@pytest.mark.parametrize("wish", [BEST, *OTHERS, NEXT], ids=lambda wish: wish.title)
def test_faults_come_before_everything_a_person_may_wish(wish: Wish) -> None:
    assert wish.order[:2] == (Merit.STOPS, Merit.ASKS)


def test_an_offer_beside_the_best_differs_in_more_than_its_name() -> None:
    for width in ("34 1/2", "48", "75", "110"):
        shapes = [shape(each.layout) for each in offered(Choices(), width, "60").all]
        assert len(shapes) == 3
        assert len(set(shapes)) == 3
