"""Example plans made by hand, so that a drawing can be tested against known figures.

The worked shade: finished 48 by 60 in, head allowance 3, skirt 1 1/2, rows at most 8 in
apart, so 7 rows 7 2/5 in apart. Cord 0.055 in on a 1 1/2 in tube. Everything else here
is invented.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import pi
from typing import Any

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.design.choices import RodPlace, StyleName
from foldwright.core.design.layout import ColumnPlan, LayerCut, Layout, RowPlan, Stack, WidthPlan
from foldwright.core.facts.records import Bar, Board, Bracket, Chosen, Cloth, Cord, Materials, Tube
from foldwright.core.lift.balance import Balance, RaiseCurve, Verdict, Window
from foldwright.core.lift.choices import Brake, LiftChoices, LiftKind, Lock
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import Mount, MountPlace, Opening, Side
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.rig.headrail import Adjustment, CordLine, Headrail, Step
from foldwright.core.weigh.load import PanelLoad, Weights
from foldwright.core.why.figure import Figure, Unit

Number = int | str | Fraction


def length(name: str, inches: Number, rounding: Rounding = Rounding.MARK) -> Figure[Length]:
    """Make a length figure from inches."""
    value = Length.inches(inches)
    because = f"The {name} as worked out by hand."
    return Figure(name=name, value=value, unit=Unit.LENGTH, because=because, rounding=rounding)


def figure(name: str, value: Any, unit: Unit) -> Figure[Any]:
    """Make any other figure."""
    return Figure(name=name, value=value, unit=unit, because=f"The {name} as worked out by hand.")


def size(width: Number = 48, drop: Number = 60) -> FinishedSize:
    return FinishedSize(
        width=length("finished width", width, Rounding.MUST_FIT),
        drop=length("finished drop", drop),
        board_length=length("board length", Fraction(width) - Fraction(1, 4), Rounding.MUST_FIT),
        side_gap_left=length("side gap at the left", "1/8"),
        side_gap_right=length("side gap at the right", "1/8"),
    )


def rows(drop: Number = 60, count: int = 7, fullness: float = 1.0) -> RowPlan:
    head, skirt = Fraction(3), Fraction(3, 2)
    spacing = (Fraction(drop) - head - skirt) / (count + Fraction(1, 2))
    first = spacing / 2 + skirt
    marks = tuple(length(f"row {i + 1}", first + i * spacing) for i in range(count))
    return RowPlan(
        count=figure("number of rows", count, Unit.COUNT),
        marks=marks,
        spacing=length("row spacing", spacing),
        fold_depth=length("fold depth", spacing / 2),
        first_row=length("bottom edge to the first row", first),
        skirt=length("skirt", skirt),
        head_allowance=length("head allowance", head),
        top_panel=length("top panel", head + spacing),
        fullness=figure("fullness", fullness, Unit.RATIO),
        tied_rows=figure("tied rows", 0, Unit.COUNT),
    )


def columns(width: Number = 48, count: int = 6) -> ColumnPlan:
    edge = Fraction(2)
    pitch = (Fraction(width) - 2 * edge) / (count - 1)
    return ColumnPlan(
        count=figure("number of columns", count, Unit.COUNT),
        marks=tuple(length(f"column {i + 1}", edge + i * pitch) for i in range(count)),
        pitch=length("column pitch", pitch),
        edge_distance=length("edge distance", edge),
    )


def layout(
    width: Number = 48,
    drop: Number = 60,
    row_count: int = 7,
    column_count: int = 6,
    fullness: float = 1.0,
) -> Layout:
    row_plan = rows(drop, row_count, fullness)
    travel = Fraction(drop) - row_plan.first_row.value.in_inches - 3
    return Layout(
        style=StyleName.LOOPED if fullness > 1 else StyleName.FLAT,
        rows=row_plan,
        columns=columns(width, column_count),
        widths=WidthPlan(widths=figure("widths", 1, Unit.COUNT), seams=()),
        cuts=(
            LayerCut(
                layer="face",
                cloth="linen 240",
                width=length("face cut width", Fraction(width) + 3, Rounding.CUT_OVERSIZE),
                length=length("face cut length", Fraction(drop) + 7, Rounding.CUT_OVERSIZE),
            ),
            LayerCut(
                layer="lining",
                cloth="sateen 120",
                width=length("lining cut width", Fraction(width), Rounding.CUT_OVERSIZE),
                length=length("lining cut length", Fraction(drop) + 3, Rounding.CUT_OVERSIZE),
            ),
        ),
        stack=Stack(
            raised_size=length("raised size", "8.7"),
            depth=length("depth of the stack", 2),
            glass_covered=length("glass covered", "2.7"),
        ),
        travel=length("travel", travel),
        side_turn=length("side turn", "3/2"),
        hem_allowance=length("hem allowance", 4),
        top_allowance=length("top allowance", 3),
    )


def weights(plan: Layout) -> Weights:
    spacing = plan.rows.spacing.value.in_metres
    count = plan.rows.count.value
    return Weights(
        layers=(figure("face", 0.66, Unit.MASS), figure("lining", 0.25, Unit.MASS)),
        bar=figure("bar", 0.3, Unit.MASS),
        rods=figure("rods", 0.0, Unit.MASS),
        rings=figure("rings", 0.06, Unit.MASS),
        total=figure("whole shade", 1.27, Unit.MASS),
        load=PanelLoad(
            row_spacings_m=(spacing,) * (count - 1),
            stacked_pitch_m=0.004,
            skirt_cloth_m=plan.rows.first_row.value.in_metres + 0.1,
            top_panel_m=plan.rows.top_panel.value.in_metres,
            cloth_n_m=5.6,
            bar_n=2.9,
            rows_n=(0.08,) * count,
            travel_m=plan.travel.value.in_metres,
            fullness=plan.rows.fullness.value,
        ),
    )


def curve(travel_m: float) -> RaiseCurve:
    """A made-up staircase, a spring that weakens, and what friction leaves of it."""
    raises = tuple(travel_m * i / 40 for i in range(41))
    load = tuple(3.7 + 7.6 * x + (0.9 if i % 6 == 0 else 0) + i // 6 for i, x in enumerate(raises))
    spring = tuple(34 - 15 * x for x in raises)
    return RaiseCurve(
        raise_m=raises,
        load_n=load,
        load_low_n=tuple(0.92 * n for n in load),
        load_high_n=tuple(1.08 * n for n in load),
        spring_n=spring,
        spring_lifting_n=tuple(0.85 * n for n in spring),
        spring_resisting_n=tuple(1.18 * n for n in spring),
    )


def balance(plan: Layout) -> Balance:
    turns = plan.travel.value.in_inches / Fraction(pi * 1.555)
    return Balance(
        kind=LiftKind.SPRING,
        verdict=Verdict.WORKS,
        load_lowered=figure("load just lifted", 3.7, Unit.FORCE),
        load_raised=figure("load fully raised", 14.5, Unit.FORCE),
        arm_lowered=length("winding arm", "0.778"),
        arm_raised=length("winding arm, raised", "0.778"),
        travel_turns=figure("turns of travel", float(turns), Unit.TURN),
        torque_needed=figure("torque needed", 0.35, Unit.TORQUE),
        window=Window(
            least_turns=figure("least turns", 10.7, Unit.TURN),
            most_by_spring=figure("most turns by the spring", 13.0, Unit.TURN),
            most_by_hand=figure("most turns by the hand", 14.5, Unit.TURN),
            most_by_speed=None,
            recommended_turns=figure("recommended turns", 12.0, Unit.TURN),
            chance=figure("chance", 0.94, Unit.SHARE),
            limited_below_by=figure("least turns are set by", "the lift at the top", Unit.WORD),
            limited_above_by=figure("most turns are set by", "the spring", Unit.WORD),
        ),
        curve=curve(plan.travel.value.in_metres),
    )


def cord_line(number: int, column: Figure[Length]) -> CordLine:
    side = Side.RIGHT if number % 2 else Side.LEFT
    sign = -1 if side is Side.LEFT else 1
    at = column.value.in_inches - Fraction(5, 8)
    clip = at + sign * Fraction(5, 2)
    return CordLine(
        number=number,
        column=length(f"column {number} on the tube", at),
        clip=length(f"clip {number}", clip),
        clip_side=side,
        offset=length(f"offset of clip {number}", "5/2"),
        band_start=length(f"band {number} starts", clip),
        band_end=length(f"band {number} ends", clip - sign * Fraction(3, 4)),
        cut_length=length(f"cord {number}", 74, Rounding.CUT_OVERSIZE),
    )


STEPS = (
    Step(
        number=1,
        title="Cut the tube",
        instruction="Cut the tube to {0} and take off the burr.",
        figures=(length("tube", "46.75"),),
        reason="The board less both end fittings.",
        caution="Eye protection.",
    ),
    Step(
        number=2,
        title="Wind the spring",
        instruction="Wind {0} with the shade at the up-stop.",
        figures=(figure("turns", 12.0, Unit.TURN),),
        reason="Between the least turns that lift and the most the spring allows.",
        caution="A wound spring stores energy: hands clear, whole turns at a time.",
    ),
)


def headrail(plan: Layout, width: Number = 48) -> Headrail:
    board = length("board length", Fraction(width) - Fraction(1, 4), Rounding.MUST_FIT)
    return Headrail(
        board_length=board,
        board_depth=length("board depth", "5/2"),
        tube_cut=length("tube", Fraction(width) - Fraction(5, 4)),
        tube_start=length("tube start", "1/2"),
        bracket_marks=(
            length("left bracket", "3/4"),
            length("right bracket", board.value.in_inches - Fraction(3, 4)),
        ),
        cradle_marks=(),
        spring_side=figure("spring side", "right", Unit.WORD),
        wind_direction=figure("winding direction", "clockwise", Unit.WORD),
        cord_side=figure("cord side", "room", Unit.WORD),
        lines=tuple(cord_line(i + 1, mark) for i, mark in enumerate(plan.columns.marks)),
        safety_wraps=figure("safety wraps", 3.0, Unit.TURN),
        travel_wraps=figure("wraps of travel", 10.6, Unit.TURN),
        walk=length("walk of the wraps", "0.583"),
        greatest_lean=figure("greatest lean", 2.1, Unit.ANGLE),
        longest_drop=length("longest drop", 96),
        lowest_lock_position=length("lowest lock position", "5/4"),
        release_travel=length("release travel", "1.18"),
        up_stop=length("up-stop", 3),
        hem_at_stop=length("hem at the stop", "8.2"),
        pretension_turns=figure("pretension", 12.0, Unit.TURN),
        handle=length("pull handle", Fraction(width) / 2),
        adjustments=(
            Adjustment(
                symptom="Will not rise fully",
                action=figure("action", "add turns", Unit.WORD),
                amount=figure("amount", 1.0, Unit.TURN),
                end=figure("end", "at the spring end, clockwise", Unit.WORD),
            ),
        ),
        steps=STEPS,
    )


CHOSEN = Chosen(
    face=Cloth(name="linen 240", areal_mass_kg_m2=0.24, usable_width=Length.mm(1370)),
    lining=Cloth(name="sateen 120", areal_mass_kg_m2=0.12, usable_width=Length.mm(1370)),
    bar=Bar(
        name="steel 25 x 3",
        line_mass_kg_m=0.59,
        width=Length.mm(25),
        thickness=Length.mm(3),
        stiffness_pa=200e9,
    ),
    board=Board(
        name="poplar 3/4 x 2 1/2",
        thickness=Length.inches("0.75"),
        depth=Length.inches("2.5"),
        stiffness_pa=8e9,
        density_kg_m3=450.0,
    ),
    bracket=Bracket(
        name="end bracket 38",
        tube_deduction=Length.inches(1),
        width=Length.mm(12),
        inset=Length.inches("0.5"),
        tube_centre_below_board=Length.inches("1.5"),
        height=Length.inches("2.5"),
        depth=Length.inches("2.25"),
    ),
    tube=Tube(
        name="tube 38",
        outside=Length.inches("1.5"),
        wall=Length.mm("1.2"),
        stiffness_pa=68.9e9,
        line_mass_kg_m=0.37,
    ),
    cord=Cord(name="braid 1.4", diameter=Length.inches("0.055")),
)

SPEC = ShadeSpec(
    tag="204-W1",
    room="Bedroom 204",
    opening=Opening(
        width_top=Length.inches("48.25"),
        width_middle=Length.inches("48.25"),
        width_bottom=Length.inches("48.3125"),
        height_left=Length.inches("60.25"),
        height_centre=Length.inches("60.25"),
        height_right=Length.inches("60.375"),
        glass_below_head=Length.inches(6),
    ),
    mount=Mount(place=MountPlace.INSIDE),
    materials=Materials(face="linen 240", lining="sateen 120", bar="steel 25 x 3"),
    lift=LiftChoices(kind=LiftKind.SPRING, spring="S12", lock=Lock.ONE_WAY, brake=Brake.FITTED),
)


def plan(  # noqa: PLR0913 - the sizes that a test may vary
    width: Number = 48,
    drop: Number = 60,
    *,
    row_count: int = 7,
    column_count: int = 6,
    fullness: float = 1.0,
    spec: ShadeSpec = SPEC,
) -> ShadePlan:
    """Make the worked shade, or one of other sizes built in the same way."""
    laid_out = layout(width, drop, row_count, column_count, fullness)
    return ShadePlan(
        spec=spec,
        chosen=CHOSEN,
        size=size(width, drop),
        layout=laid_out,
        weights=weights(laid_out),
        balance=balance(laid_out),
        headrail=headrail(laid_out, width),
    )


def with_rods(made: ShadePlan, place: RodPlace) -> ShadePlan:
    """Give a plan rods at its rows or midway between them."""
    assert made.layout is not None
    old = made.layout.rows
    marks = old.marks
    if place is RodPlace.MID_FOLD:
        half = old.spacing.value / 2
        marks = tuple(replace(mark, value=mark.value + half) for mark in marks[:-1])
    new_rows = replace(old, rods=place, rod_marks=marks)
    return replace(made, layout=replace(made.layout, rows=new_rows))
