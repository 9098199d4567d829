"""Laws of every layout: exact sums, mirrored columns, seams left alone, limits kept."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any

from hypothesis import assume, given
from hypothesis import strategies as st
from tests.core.layouts import US, answer, cloth, inches, laid_out, sized

from foldwright.core.design.choices import (
    GATHERS,
    ONLY_FOR,
    POUFED,
    Choices,
    RodPlace,
    RodPocket,
    StyleName,
)
from foldwright.core.design.layout import Layout
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.markets import edge_distance_floor, row_spacing_cap
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.source import Status
from foldwright.core.why.telling import fill, tell
from foldwright.core.why.walking import walk_figures

HABITS = house_habits()
NANOMETRE = Length(1)
SIXTEENTH = inches("1/16")


def lengths(least: str, greatest: str) -> st.SearchStrategy[Length]:
    """Draw lengths at any nanometre, and often on a sixteenth or a millimetre."""
    low, high = inches(least).nanometres, inches(greatest).nanometres
    marks = [SIXTEENTH.nanometres, Length.mm(1).nanometres, 1]
    return st.sampled_from(marks).flatmap(
        lambda mark: st.integers(low // mark + 1, high // mark).map(lambda n: Length(n * mark))
    )


DIPPED, LOCKED = ONLY_FOR["dip"], ONLY_FOR["alike_after"]
WIDTHS = lengths("12", "200")
DROPS = lengths("14", "150")


@st.composite
def designs(draw: st.DrawFn) -> Choices:
    """Draw designs a person might sign, in any style."""
    style = draw(st.sampled_from(StyleName))
    rods = [RodPlace.NONE, RodPlace.ROWS]
    if style in {StyleName.FLAT, StyleName.CASCADE}:
        rods += [RodPlace.MID_FOLD, RodPlace.SLATS]
    return Choices(
        style=style,
        rods=draw(st.sampled_from(rods)),
        rod_pocket=draw(st.sampled_from(RodPocket)),
        pocket_allowance=draw(st.none() | lengths("1/2", "2")),
        head_allowance=draw(st.none() | lengths("2", "5")),
        skirt=draw(st.none() | lengths("1", "4")),
        row_count=draw(st.none() | st.integers(1, 15)),
        largest_row_spacing=draw(st.none() | lengths("4", "12")),
        fullness=draw(st.sampled_from([None, 1.3, 1.75, 2.0]))
        if style in ONLY_FOR["fullness"]
        else None,
        width_fullness=draw(st.sampled_from([None, 1.0, 1.5, 2.5])) if style in GATHERS else None,
        step=draw(st.none() | lengths("1/16", "1")) if style is StyleName.CASCADE else None,
        alike_after=draw(st.none() | st.integers(1, 4)) if style in LOCKED else None,
        scallop=draw(st.none() | lengths("1/2", "12")) if style is StyleName.AUSTRIAN else None,
        tuck=draw(st.none() | lengths("1/4", "1")) if style is StyleName.TUCKED else None,
        dip=draw(st.none() | lengths("1/16", "6")) if style in DIPPED else None,
        tied_rows=draw(st.none() | st.integers(0, 3)) if style in POUFED else None,
        pouf=draw(st.none() | lengths("4", "16")) if style in POUFED else None,
        widened_hem=style is StyleName.RELAXED and draw(st.booleans()),
        edge_distance=draw(st.none() | lengths("2", "4")),
        column_count=draw(st.none() | st.integers(2, 24)),
        largest_pitch=draw(st.none() | lengths("6", "14")),
    )


USABLE = st.sampled_from(["36", "45", "54", "110"])


def drawn(design: Choices, width: Length, drop: Length, usable: str = "54", **rules: Any) -> Layout:
    """Lay it out; a drop too short for its rows is no layout at all."""
    found = answer(design, sized(width, drop), Chosen(face=cloth(usable)), **rules)
    assume(found.result is not None)
    assert found.result is not None
    return found.result


def flat_width(layout: Layout, width: Length) -> Length:
    """Give how wide the face lies before its pleats and gathers are made."""
    return layout.widths.cloth_width.value if layout.widths.cloth_width else width


@given(designs(), WIDTHS, DROPS)
def test_the_rows_sum_to_the_drop_to_the_nanometre(
    design: Choices, width: Length, drop: Length
) -> None:
    rows = drawn(design, width, drop).rows
    marks = [mark.value for mark in rows.marks]
    assert marks[0] == rows.first_row.value
    assert marks[-1] + rows.top_panel.value == drop
    spacings = [each.value for each in rows.spacings] or [rows.spacing.value] * (len(marks) - 1)
    tied = rows.tied_rows.value
    if rows.stacked_pitch is not None:
        spacings[:tied] = [rows.stacked_pitch.value] * tied
    for (lower, upper), spacing in zip(pairwise(marks), spacings, strict=True):
        assert abs(upper - lower - spacing) <= NANOMETRE
    assert max(spacings, default=rows.spacing.value) <= rows.spacing.value + NANOMETRE
    if design.style is StyleName.FLAT:
        head_and_row = rows.head_allowance.value + rows.spacing.value
        assert abs(rows.top_panel.value - head_and_row) <= NANOMETRE


@given(designs(), WIDTHS, DROPS)
def test_each_fold_of_a_cascade_is_a_step_shorter_than_the_one_below(
    design: Choices, width: Length, drop: Length
) -> None:
    cascade = replace(design, style=StyleName.CASCADE, fullness=None, step=inches("1/4"))
    rows = drawn(cascade, width, drop).rows
    top = rows.top_panel.value - rows.head_allowance.value
    folds = [*(each.value / 2 for each in rows.spacings), top / 2]
    for below, above in pairwise(folds):
        assert abs(below - above - inches("1/4")) <= NANOMETRE * 2


@given(designs(), WIDTHS, DROPS)
def test_marks_never_drift_from_the_exact_spacing(
    design: Choices, width: Length, drop: Length
) -> None:
    """A spacing rounded and added up would drift by half a nanometre a row."""
    rows = drawn(design, width, drop).rows
    count = rows.count.value
    assume(count > 1 and not rows.spacings and not rows.tied_rows.value)
    marks = [mark.value.nanometres for mark in rows.marks]
    for number, mark in enumerate(marks):
        straight = marks[0] + (marks[-1] - marks[0]) * number / (count - 1)
        assert abs(mark - straight) <= 1.5


@given(designs(), WIDTHS, DROPS, USABLE)
def test_columns_mirror_exactly(design: Choices, width: Length, drop: Length, usable: str) -> None:
    columns = drawn(design, width, drop, usable).columns
    marks = [mark.value for mark in columns.marks]
    assert marks[0] == columns.edge_distance.value
    for left, right in zip(marks, reversed(marks), strict=True):
        assert abs(left + right - width) <= NANOMETRE * (left == right)
    for left, right in pairwise(marks):
        assert abs(right - left - columns.pitch.value) <= NANOMETRE * 2


@given(designs(), WIDTHS, DROPS, USABLE)
def test_seams_mirror_exactly_and_never_stand_in_the_centre(
    design: Choices, width: Length, drop: Length, usable: str
) -> None:
    layout = drawn(design, width, drop, usable)
    seams = [seam.value for seam in layout.widths.seams]
    assert len(seams) % 2 == 0
    for left, right in zip(seams, reversed(seams), strict=True):
        assert left + right == flat_width(layout, width)
        assert left != right


@given(WIDTHS, DROPS, lengths("4", "16"), lengths("4", "16"), st.sampled_from(StyleName))
def test_a_larger_spacing_never_asks_for_more_rows(
    width: Length, drop: Length, one: Length, other: Length, style: StyleName
) -> None:
    cap = row_spacing_cap(US)
    small, large = sorted((one, other))
    design = Choices(style=style, step=inches("1/4") if style is StyleName.CASCADE else None)
    smaller, larger = (
        drawn(replace(design, largest_row_spacing=spacing), width, drop, cap=cap).rows
        for spacing in (small, large)
    )
    assume(smaller.spacing.value <= small)  # where no number of rows keeps to it, none is asked for
    assert smaller.count.value >= larger.count.value


@given(WIDTHS, DROPS, st.sampled_from(StyleName))
def test_rows_left_to_the_house_keep_the_cap_and_one_fewer_would_not(
    width: Length, drop: Length, style: StyleName
) -> None:
    cap = row_spacing_cap(US).value
    rows = drawn(Choices(style=style), width, drop).rows
    assert rows.spacing.value <= cap
    if style is StyleName.FLAT and rows.count.value > 1:
        fewer = Choices(style=style, row_count=rows.count.value - 1)
        assert laid_out(fewer, sized(width, drop)).rows.spacing.value > cap - NANOMETRE


@given(designs(), WIDTHS, DROPS, USABLE)
def test_no_seam_near_a_column_unless_the_tool_says_so(
    design: Choices, width: Length, drop: Length, usable: str
) -> None:
    found = answer(design, sized(width, drop), Chosen(face=cloth(usable)))
    assume(found.result is not None)
    assert found.result is not None
    gaps = [
        abs(seam.value - mark.value)
        for seam in found.result.widths.seams
        for mark in found.result.columns.cloth_marks or found.result.columns.marks
    ]
    said = any(each.id == "design.seam-on-column" for each in found.findings)
    assert said == any(gap < HABITS.seam_to_column.value for gap in gaps)
    nearest = found.result.widths.nearest_column
    assert (nearest.value if nearest else None) == min(gaps, default=None)


@given(lengths("12", "90"), DROPS)
def test_columns_left_to_the_house_always_keep_off_two_seams(width: Length, drop: Length) -> None:
    found = answer(Choices(), sized(width, drop), Chosen(face=cloth("54")))
    assert "design.seam-on-column" not in {each.id for each in found.findings}


@given(WIDTHS, DROPS, USABLE)
def test_columns_left_to_the_house_keep_pitch_and_edge(
    width: Length, drop: Length, usable: str
) -> None:
    columns = laid_out(Choices(), sized(width, drop), Chosen(face=cloth(usable))).columns
    assert columns.pitch.value <= HABITS.largest_pitch.value
    assert columns.edge_distance.value >= edge_distance_floor(US).value


@given(designs(), WIDTHS, DROPS, USABLE)
def test_the_widths_give_the_cloth_and_one_fewer_would_not(
    design: Choices, width: Length, drop: Length, usable: str
) -> None:
    """Any width is at most n usable widths less seams and turns."""
    layout = drawn(design, width, drop, usable)
    widths = layout.widths
    turn, seam = HABITS.side_turn.value, HABITS.seam_allowance.value
    count, cut = widths.widths.value, inches(usable)
    flare = layout.swag.flare.value if layout.swag and layout.swag.flare else Length(0)

    def spent(number: int) -> Length:
        face = flat_width(layout, width) + flare
        return face + turn * 2 + seam * (2 * (number - number % 2))

    assert spent(count) <= cut * count
    assert count == 1 or flare or spent(count - 1) > cut * (count - 1)
    pieces = len(widths.seams) + 1
    assert (pieces, count % 2) == (count + 1 - count % 2, count % 2)


@given(designs(), WIDTHS, DROPS, USABLE)
def test_no_piece_is_wider_than_its_cloth(
    design: Choices, width: Length, drop: Length, usable: str
) -> None:
    layout = drawn(design, width, drop, usable)
    widths = layout.widths
    assume(widths.seams)
    assert widths.side_cut is not None
    edges = [Length(0), *(seam.value for seam in widths.seams), flat_width(layout, width)]
    shown = [right - left for left, right in pairwise(edges)]
    full = inches(usable) - HABITS.seam_allowance.value * 2
    assert all(piece <= full for piece in shown[1:-1])
    both_from_one = widths.widths.value % 2 == 0
    assert widths.side_cut.value * (2 if both_from_one else 1) <= inches(usable)


@given(designs(), WIDTHS, DROPS)
def test_the_stacked_rows_end_where_the_travel_takes_them(
    design: Choices, width: Length, drop: Length
) -> None:
    """The top row stops at the head allowance, the lowest one stacked pitch lower a row."""
    layout = drawn(design, width, drop)
    rows = layout.rows
    assert rows.stacked_pitch is not None
    lowest = drop - rows.first_row.value - layout.travel.value
    stacked = rows.stacked_pitch.value * (rows.count.value - 1)
    assert lowest == rows.head_allowance.value + stacked
    folded = rows.top_panel.value - rows.head_allowance.value
    between = rows.marks[-1].value - rows.marks[0].value - stacked
    assert layout.travel.value == between + folded
    assert layout.travel.value > Length(0)
    assert folded >= Length(-1)


@given(designs(), WIDTHS, DROPS)
def test_the_raised_size_holds_all_that_hangs(design: Choices, width: Length, drop: Length) -> None:
    layout = drawn(design, width, drop)
    hem = drop - layout.travel.value
    fold = hem - layout.rows.first_row.value + layout.rows.fold_depth.value
    dip = layout.swag.dip.value if layout.swag and not layout.swag.pinched else Length(0)
    at_rest = dip if layout.rows.tied_rows.value or layout.rows.shirred else Length(0)
    assert layout.stack.raised_size.value == max(hem - at_rest, fold) + dip


@given(WIDTHS, DROPS, designs())
def test_inches_and_millimetres_agree(width: Length, drop: Length, design: Choices) -> None:
    """The same shade typed in hundredths of a millimetre agrees to 0.05 mm, marks and all."""
    typed = [
        read_length(print_length(each, System.METRIC, mark=Length.mm("0.01")), System.METRIC)
        for each in (width, drop)
    ]
    ours, theirs = drawn(design, width, drop), drawn(design, *typed)
    same = (ours.rows.count.value, ours.columns.count.value, ours.columns.edge_distance.value)
    other = (
        theirs.rows.count.value,
        theirs.columns.count.value,
        theirs.columns.edge_distance.value,
    )
    assume(same == other)
    for one, two in zip(_marks(ours), _marks(theirs), strict=True):
        assert abs(one - two) <= Length.mm("0.05")


def _marks(layout: Layout) -> list[Length]:
    figures = (*layout.rows.marks, *layout.columns.marks, *layout.widths.seams, layout.travel)
    return [figure.value for figure in figures]


@given(designs(), WIDTHS, DROPS, USABLE, st.sampled_from(System))
def test_every_figure_and_finding_can_be_told(
    design: Choices, width: Length, drop: Length, usable: str, system: System
) -> None:
    """Each slot has its figure, and each figure its place in a sentence."""
    found = answer(design, sized(width, drop), Chosen(face=cloth(usable), lining=cloth(usable)))
    told = [fill(each.sentence, each.figures, system) for each in found.findings]
    for remedy in (remedy for each in found.findings for remedy in each.remedies):
        told.append(fill(remedy.sentence, remedy.figures, system))
        assert all(f"{{{number}}}" in remedy.sentence for number in range(len(remedy.figures)))
    for figure in walk_figures(found):
        for each in figure.family():
            told.append(tell(each, system))
            assert each.status is not Status.DERIVED or each.inputs or "{" not in each.because
    assert not any("{" in sentence for sentence in told)
    assert all(sentence.endswith((".", "?")) for sentence in told)
