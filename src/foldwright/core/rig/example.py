"""An invented shade, for the examples of the functions beside."""

from __future__ import annotations

from foldwright.core.design.choices import StyleName
from foldwright.core.design.layout import ColumnPlan, Layout, RowPlan, Stack, WidthPlan
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.records import Board, Bracket, Chosen, Cord, ShopList, Spring, Tube
from foldwright.core.lift.balance import Balance, Verdict
from foldwright.core.lift.choices import Brake, LiftChoices, LiftKind, Lock
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import Mount
from foldwright.core.quantity.length import Length
from foldwright.core.rig.order import Order
from foldwright.core.rig.rigging import put_together
from foldwright.core.weigh.load import PanelLoad, Weights
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen


def _mm(name: str, millimetres: str | int) -> Figure[Length]:
    return chosen(name, Length.mm(millimetres), Unit.LENGTH)


def _number(name: str, value: float, unit: Unit) -> Figure[float]:
    return chosen(name, value, unit)


SIZE = FinishedSize(
    width=_mm("finished width", 1200),
    drop=_mm("finished drop", 1600),
    board_length=_mm("board length", 1194),
)

LAYOUT = Layout(
    style=StyleName.FLAT,
    rows=RowPlan(
        count=chosen("rows", 8, Unit.COUNT),
        marks=tuple(_mm(f"row {row + 1}", 60 + 200 * row) for row in range(8)),
        spacing=_mm("row spacing", 200),
        fold_depth=_mm("fold depth", 100),
        first_row=_mm("bottom edge to the lowest row", 60),
        skirt=_mm("skirt", 0),
        head_allowance=_mm("head allowance", 98),
        top_panel=_mm("top panel", 140),
        fullness=_number("fullness", 1.0, Unit.RATIO),
        tied_rows=chosen("tied rows", 0, Unit.COUNT),
    ),
    columns=ColumnPlan(
        count=chosen("columns", 4, Unit.COUNT),
        marks=tuple(_mm(f"column {place + 1}", 60 + 360 * place) for place in range(4)),
        pitch=_mm("pitch", 360),
        edge_distance=_mm("edge distance", 60),
    ),
    widths=WidthPlan(widths=chosen("widths", 1, Unit.COUNT), seams=()),
    cuts=(),
    stack=Stack(raised_size=_mm("raised size", 193), depth=_mm("stack depth", 30)),
    travel=_mm("travel", 1407),
)

WEIGHTS = Weights(
    layers=(),
    bar=_number("bar", 0.3, Unit.MASS),
    rods=_number("rods", 0.28, Unit.MASS),
    rings=_number("rings", 0.048, Unit.MASS),
    total=_number("shade", 1.55, Unit.MASS),
    load=PanelLoad(
        row_spacings_m=(0.2,) * 7,
        stacked_pitch_m=0.005,
        skirt_cloth_m=0.069,
        top_panel_m=0.14,
        cloth_n_m=5.592,
        bar_n=2.942,
        rows_n=(0.402,) * 8,
        travel_m=1.407,
    ),
)

BALANCE = Balance(
    kind=LiftKind.SPRING,
    verdict=Verdict.BY_HAND,
    load_lowered=_number("load when lowered", 3.73, Unit.FORCE),
    load_raised=_number("load when raised", 14.49, Unit.FORCE),
    arm_lowered=_mm("arm when lowered", "19.7013"),
    arm_raised=_mm("arm when raised", "19.7013"),
    travel_turns=_number("turns of travel", 11.3663, Unit.TURN),
    torque_needed=_number("torque needed", 0.35, Unit.TORQUE),
    tube_sag=_mm("sag of the tube", "0.2"),
)

BRACKET = Bracket(
    name="bracket",
    tube_deduction=Length.mm(34),
    width=Length.mm(14),
    inset=Length.mm(13),
    tube_centre_below_board=Length.mm(27),
    height=Length.mm(50),
    depth=Length.mm(50),
)

TUBE = Tube(
    name="tube 38",
    outside=Length.mm(38),
    wall=Length.mm("1.2"),
    stiffness_pa=68.9e9,
    line_mass_kg_m=0.3745,
)

CORD = Cord(name="cord 1.4", diameter=Length.mm("1.4"))

BOARD = Board(
    name="board",
    thickness=Length.mm(7),  # a slim rail: the tube turns close under it
    depth=Length.mm(50),
    stiffness_pa=8e9,
    density_kg_m3=450,
)

SPRING = Spring(name="spring", rate_n_m_turn=0.0375, body_length=Length.mm(900))

CHOSEN = Chosen(bracket=BRACKET, tube=TUBE, cord=CORD, board=BOARD)

LIFT = LiftChoices(
    kind=LiftKind.SPRING, spring="spring", turns=11.0, lock=Lock.ONE_WAY, brake=Brake.NONE
)

SHOP = ShopList(springs={"spring": SPRING})

ORDER = Order(
    mount=Mount(),
    size=SIZE,
    layout=LAYOUT,
    balance=BALANCE,
    weights=WEIGHTS,
    choices=LIFT,
    habits=house_habits(),
    kind=LiftKind.SPRING,
    bracket=BRACKET,
    tube=TUBE,
    line=CORD,
    board=BOARD,
    drive=SPRING,
)

PARTS = put_together(ORDER)
