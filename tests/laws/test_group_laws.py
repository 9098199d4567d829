"""Laws of a matched group: rows level, hems in one line, and no new stop for any shade."""

from __future__ import annotations

from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.core.grouped import matched, planned, room, typed, window
from tests.core.layouts import ids, inches

from foldwright.core.facts.order_limits import LINED_UP
from foldwright.core.why.finding import Severity

NEIGHBOURS = {"check.hems-differ", "check.rows-differ", "check.beside-unmeasured"}
LEVEL = settings(max_examples=30)


def on_marks(low: int, high: int) -> st.SearchStrategy[str]:
    """Draw inches on sixteenths, as a person types them."""
    return st.integers(low * 16, high * 16).map(lambda n: f"{n // 16} {n % 16}/16")


@st.composite
def rooms(draw: st.DrawFn, *, flat: bool = False) -> dict[str, Any]:
    """Draw rooms of two to four windows whose heads and heights are unlike."""
    count = draw(st.integers(2, 4))
    styles = ["flat"] if flat else ["flat", "looped", "relaxed"]
    windows = [
        window(
            f"W{number}",
            draw(on_marks(20, 70)),
            draw(on_marks(36, 80)),
            draw(on_marks(82, 96)),
            style=draw(st.sampled_from(styles)),
        )
        for number in range(count)
    ]
    return room(
        *windows,
        rows_from=draw(st.sampled_from(["hem", "head"])),
        own_hems=draw(st.booleans()),
    )


@LEVEL
@given(rooms())
def test_rows_of_a_matched_group_lie_level_to_a_mark(document: dict[str, Any]) -> None:
    matching = matched(document)
    assume(not matching.missing)
    assert matching.apart is not None
    assert matching.apart.value <= LINED_UP.value
    assert matching.spacing is not None
    for shade in matching.shades:
        spacing = shade.then.layout.rows.spacing.value
        assert abs(spacing - matching.spacing.value) <= inches("1/64")


@LEVEL
@given(rooms())
def test_hems_of_a_matched_group_lie_in_one_line_where_they_should(
    document: dict[str, Any],
) -> None:
    matching = matched(document)
    assume(not matching.missing)
    hems = [shade.then.hem.value for shade in matching.shades]
    if matching.group.own_hems:
        assert hems == [shade.now.hem.value for shade in matching.shades]
    else:
        assert max(hems) - min(hems) <= LINED_UP.value
        assert max(hems) >= max(shade.now.hem.value for shade in matching.shades)


@LEVEL
@given(rooms())
def test_what_is_typed_for_a_group_gives_the_group_shown(document: dict[str, Any]) -> None:
    matching = matched(document)
    assume(not matching.missing)
    for shade, plan in zip(matching.shades, planned(typed(document)).shades, strict=True):
        assert plan.layout is not None
        assert plan.layout.rows.marks == shade.then.layout.rows.marks or [
            mark.value for mark in plan.layout.rows.marks
        ] == [mark.value for mark in shade.then.layout.rows.marks]


@LEVEL
@given(rooms(flat=True))
def test_typing_the_match_silences_the_neighbours_without_a_new_stop(
    document: dict[str, Any],
) -> None:
    matching = matched(document)
    assume(not matching.missing)
    before, after = planned(document).shades, planned(typed(document)).shades
    for old, new in zip(before, after, strict=True):
        assert not ids(new.findings) & NEIGHBOURS
        stops = [
            {each.id for each in plan.findings if each.severity is Severity.STOP}
            for plan in (old, new)
        ]
        assert stops[1] <= stops[0]


@LEVEL
@given(rooms())
def test_a_matched_group_is_left_as_it_is(document: dict[str, Any]) -> None:
    matching = matched(document)
    assume(not matching.missing)
    assert matched(typed(document)).stands
