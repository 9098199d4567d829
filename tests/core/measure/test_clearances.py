"""What a finished size leaves open: light, sill, glass, depth."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import BOARD, HABITS, inches
from tests.core.measure.test_sizing import INSIDE, OUTSIDE, WINDOW, size_of

from foldwright.core.measure.clearances import behind_cloth
from foldwright.core.measure.opening import AskedSize, Face, Mount, Opening
from foldwright.core.measure.site import Site
from foldwright.core.quantity.length import Length

SQUARE_INCH_M2 = 0.0254**2


def test_two_slits_of_an_eighth_over_sixty_inches_are_fifteen_square_inches() -> None:
    """Own arithmetic: 2 x 1/8 x 60 in; tolerance 1e-9."""
    opening = Opening(width_top=inches("36"), height_centre=inches("60 1/4"))
    area = size_of(opening, INSIDE).light_gap_area
    assert area is not None
    assert area.value / SQUARE_INCH_M2 == pytest.approx(15, rel=1e-9)


def test_a_tapered_reveal_averages_by_the_trapezium_rule() -> None:
    opening = Opening(
        width_top=inches("36"),
        width_middle=inches("36 1/2"),
        width_bottom=inches("36"),
        height_centre=inches("60 1/4"),
    )
    area = size_of(opening, INSIDE).light_gap_area
    assert area is not None
    assert area.value / SQUARE_INCH_M2 == pytest.approx(30, rel=1e-9)


def test_the_sill_gap_is_where_the_sill_is_nearest() -> None:
    gap = size_of(WINDOW, INSIDE).sill_gap
    assert gap is not None
    assert gap.value == inches("1/4")
    longer = AskedSize(drop=inches("60 5/16"), given_by="the designer")
    lying = size_of(WINDOW, INSIDE, longer).sill_gap
    assert lying is not None
    assert lying.value == inches("0") - inches("1/8")


def test_an_outside_shade_meets_a_sill_or_hangs_before_the_wall() -> None:
    opening = Opening(casing_width=inches("42"), casing_height=inches("66"), sill=True)
    on_sill = size_of(opening, OUTSIDE).sill_gap
    assert on_sill is not None
    assert on_sill.value == Length(0)
    assert size_of(opening, replace(OUTSIDE, below=inches("2"))).sill_gap is None
    assert size_of(replace(opening, sill=False), OUTSIDE).sill_gap is None


def test_the_top_stands_over_the_glass_by_overlap_and_casing() -> None:
    opening = replace(WINDOW, glass_below_head=inches("2"))
    inside = size_of(opening, INSIDE).top_above_glass
    bare = size_of(opening, replace(OUTSIDE, above=inches("4"))).top_above_glass
    cased = replace(opening, casing_height=inches("63 5/16"), casing_width=inches("41"))
    over_casing = size_of(cased, replace(OUTSIDE, above=inches("4"))).top_above_glass
    found = [each.value if each else None for each in (inside, bare, over_casing)]
    assert found == [inches("2"), inches("6"), inches("9")]


def test_the_reveal_is_as_deep_as_where_it_is_shallowest() -> None:
    opening = replace(WINDOW, depth_head=inches("3"), depth_sill=inches("2 1/2"))
    depth = size_of(opening, INSIDE).clear_depth
    assert depth is not None
    assert depth.value == inches("2 1/2")
    assert size_of(opening, OUTSIDE).clear_depth is None


@pytest.mark.parametrize(
    ("mount", "room"),
    [
        (INSIDE, "3"),
        (replace(INSIDE, board_edge=Face.WINDOW), "1 1/2"),
        (OUTSIDE, "3 3/4"),
        (replace(OUTSIDE, board_edge=Face.WINDOW), "2 1/4"),
        (replace(OUTSIDE, above=Length(0)), "4 1/2"),
    ],
)
def test_the_room_behind_the_cloth_depends_on_the_edge_it_leaves(mount: Mount, room: str) -> None:
    """3 in of depth, a board of 1 1/2 in, a casing that stands 3/4 in out."""
    opening = Opening(depth_head=inches("3"), casing_projection=inches("3/4"))
    site = Site(opening=opening, mount=mount, asked=AskedSize(), habits=HABITS, board=BOARD)
    behind = behind_cloth(site)
    assert behind is not None
    assert behind.value == inches(room)


def test_the_spread_needs_two_heights() -> None:
    one = replace(WINDOW, height_left=None, height_right=None)
    assert size_of(one, INSIDE).height_spread is None


def test_an_outside_handle_waits_for_the_board() -> None:
    opening = Opening(depth_head=inches("3"))
    site = Site(opening=opening, mount=OUTSIDE, asked=AskedSize(), habits=HABITS)
    assert behind_cloth(site) is None
    unknown = Site(opening=opening, mount=Mount(), asked=AskedSize(), habits=HABITS, board=BOARD)
    assert behind_cloth(unknown) is None


def test_two_heights_make_a_spread() -> None:
    two = replace(WINDOW, height_left=None)
    spread = size_of(two, INSIDE).height_spread
    assert spread is not None
    assert spread.value == inches("1/8")
