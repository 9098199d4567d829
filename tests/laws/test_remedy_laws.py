"""A remedy that the rooms of measure and design offer always works when it is typed."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from tests.core.layouts import BAR, BOARD, BRACKET, ROD, answer, changed, cloth, ids, sized, stops
from tests.laws.test_layout_laws import DROPS, WIDTHS, designs, lengths

from foldwright.core.design.choices import Choices
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.records import Chosen
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import (
    AskedSize,
    Face,
    HeightRule,
    Mount,
    MountPlace,
    Opening,
)
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill, tell
from foldwright.core.why.walking import walk_figures

HABITS = house_habits()
MATERIALS = st.sampled_from(
    [
        Chosen(),
        Chosen(face=cloth("54")),
        Chosen(face=cloth("45"), lining=cloth("54"), bar=BAR, bracket=BRACKET),
        Chosen(face=cloth("54"), rod=ROD, bar=BAR, board=BOARD),
        Chosen(face=cloth("54", vertical_repeat=Length.inches("19.5")), lining=cloth("54")),
    ]
)


def near(length: Length, spread: str) -> st.SearchStrategy[Length | None]:
    """Draw a measure a little off, or none."""
    return st.none() | lengths("0", spread).flatmap(
        lambda off: st.sampled_from([length + off, length - off])
    )


@st.composite
def windows(draw: st.DrawFn) -> Opening:
    """Draw a window a little out of true, with measures missing here and there."""
    width, height = draw(lengths("14", "90")), draw(lengths("20", "110"))
    diagonal = Length.metres((width.in_metres**2 + height.in_metres**2) ** 0.5)
    return Opening(
        width_top=draw(near(width, "1/2")),
        width_middle=draw(near(width, "1/2")),
        width_bottom=draw(near(width, "1/2")),
        height_left=draw(near(height, "1/2")),
        height_centre=draw(near(height, "1/2")),
        height_right=draw(near(height, "1/2")),
        diagonal_falling=draw(near(diagonal, "1/2")),
        diagonal_rising=draw(near(diagonal, "1/2")),
        depth_head=draw(st.none() | lengths("0", "5")),
        glass_below_head=draw(st.none() | lengths("0", "4")),
        obstruction_projection=draw(st.none() | lengths("0", "4")),
        casing_width=draw(near(width + Length.mm(150), "1")),
        casing_height=draw(near(height + Length.mm(80), "1")),
        casing_projection=draw(st.none() | lengths("0", "2")),
        wall_left=draw(st.none() | lengths("0", "6")),
        wall_right=draw(st.none() | lengths("0", "6")),
        wall_above=draw(st.none() | lengths("0", "8")),
        sill=draw(st.sampled_from([None, True, False])),
    )


@st.composite
def mounts(draw: st.DrawFn) -> Mount:
    """Draw a mount, contradictions included."""
    return Mount(
        place=draw(st.sampled_from([None, *MountPlace])),
        height_rule=draw(st.sampled_from([None, *HeightRule])),
        deduction=draw(st.none() | lengths("0", "2")),
        overlap_left=draw(st.none() | lengths("0", "6")),
        overlap_right=draw(st.none() | lengths("0", "6")),
        above=draw(st.none() | lengths("0", "6")),
        below=draw(st.none() | lengths("0", "4")),
        board_edge=draw(st.sampled_from(Face)),
        returns=draw(st.booleans()),
    )


ASKED = st.builds(
    AskedSize,
    width=st.none() | lengths("14", "90"),
    drop=st.none() | lengths("20", "110"),
    given_by=st.sampled_from(["", "the designer"]),
)


@given(windows(), mounts(), ASKED, st.sampled_from([None, BOARD]))
def test_every_remedy_at_the_window_works(
    opening: Opening, mount: Mount, asked: AskedSize, board: object
) -> None:
    found = finished_size(opening, mount, asked, HABITS, BOARD if board else None).findings
    assert all(each.remedies for each in found)
    for each in found:
        for remedy in each.remedies:
            if remedy.changes:
                after = finished_size(
                    changed(opening, "opening", remedy.changes),
                    changed(mount, "mount", remedy.changes),
                    changed(asked, "asked", remedy.changes),
                    HABITS,
                    BOARD if board else None,
                ).findings
                assert each.id not in ids(after), remedy
                assert stops(after) <= stops(found), remedy


@given(
    designs(),
    WIDTHS,
    DROPS,
    MATERIALS,
    st.none() | lengths("0", "5"),
    st.none() | lengths("0", "9"),
)
def test_every_remedy_of_a_design_works(  # noqa: PLR0913, PLR0917 - all that a design rests on
    design: Choices,
    width: Length,
    drop: Length,
    chosen: Chosen,
    allowed: Length | None,
    glass: Length | None,
) -> None:
    design = replace(design, stack_allowed_on_glass=allowed)
    size = sized(width, drop)
    if glass is not None:
        size = replace(size, top_above_glass=replace(size.drop, value=glass))
    before = answer(design, size, chosen)
    found = before.findings
    assert all(each.remedies for each in found)
    for each in found:
        for remedy in each.remedies:
            if remedy.changes:
                after = answer(changed(design, "design", remedy.changes), size, chosen).findings
                assert each.id not in ids(after), remedy
                # where nothing could be drawn, what a drawing would have shown is not known yet
                assert before.result is None or stops(after) <= stops(found), remedy


@given(windows(), mounts(), ASKED, st.sampled_from(System))
def test_every_figure_and_finding_at_the_window_can_be_told(
    opening: Opening, mount: Mount, asked: AskedSize, system: System
) -> None:
    found = finished_size(opening, mount, asked, HABITS, BOARD)
    told = [fill(each.sentence, each.figures, system) for each in found.findings]
    for remedy in (remedy for each in found.findings for remedy in each.remedies):
        told.append(fill(remedy.sentence, remedy.figures, system))
        assert all(f"{{{number}}}" in remedy.sentence for number in range(len(remedy.figures)))
    for figure in walk_figures(found):
        told.extend(tell(each, system) for each in figure.family())
    assert not any("{" in sentence for sentence in told)
    assert all(sentence.endswith((".", "?")) for sentence in told)
