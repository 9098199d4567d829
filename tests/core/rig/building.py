"""An invented shade in every size, so that a headrail can be tried on it.

The worked shade is the one of the examples beside the code: 1200 by 1600 mm, 8 rows, 4
columns, cord 1.4 mm on a tube of 38 mm. What a test changes it names.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from foldwright.core.design.layout import ColumnPlan, Layout
from foldwright.core.facts.records import Bracket, Cord, ShopList, Spring, Tape, Tube
from foldwright.core.lift.balance import Balance, Window
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.lift.winding import CordWinding, TapeWinding, Winding
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import Mount
from foldwright.core.quantity.length import Length
from foldwright.core.rig import example
from foldwright.core.rig.headrail import Headrail
from foldwright.core.rig.rigging import rig_headrail
from foldwright.core.why.answer import Answer
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen

NOT_RAISED = Length.mm(193)  # head, stacked rows and skirt of the worked shade

TAPE = Tape(name="tape 16", thickness=Length.mm("0.4"), width=Length.mm(16))


def length(name: str, value: Length) -> Figure[Length]:
    return chosen(name, value, Unit.LENGTH)


def mm(millimetres: str | float, name: str = "length") -> Figure[Length]:
    return length(name, Length.metres(float(millimetres) / 1000))


def number(name: str, value: float, unit: Unit = Unit.TURN) -> Figure[float]:
    return chosen(name, value, unit)


def size(width: float = 1200, drop: float = 1600, **more: Any) -> FinishedSize:
    board = length("board length", Length.metres((width - 6) / 1000))
    return FinishedSize(width=mm(width), drop=mm(drop), board_length=board, **more)


def columns(count: int, edge: float, width: float) -> ColumnPlan:
    """Mirror columns about the centre; a single one stands in the middle."""
    first, last = Length.metres(edge / 1000), Length.metres((width - edge) / 1000)
    pitch = (last - first) / max(count - 1, 1)
    half = [first + pitch * place for place in range(count // 2)]
    middle = [Length.metres(width / 2000)] * (count % 2)
    whole = Length.metres(width / 1000)
    marks = (*half, *middle, *(whole - mark for mark in reversed(half)))
    return ColumnPlan(
        count=chosen("columns", count, Unit.COUNT),
        marks=tuple(length("column", mark) for mark in marks),
        pitch=length("pitch", pitch),
        edge_distance=length("edge distance", first),
    )


def layout(count: int = 4, edge: float = 60, width: float = 1200, drop: float = 1600) -> Layout:
    travel = Length.metres(drop / 1000) - NOT_RAISED
    return replace(
        example.LAYOUT, columns=columns(count, edge, width), travel=length("travel", travel)
    )


def winding(tube: Tube, line: Cord | Tape, wraps: float = 3) -> Winding:
    radius = tube.outside.in_metres / 2
    if isinstance(line, Cord):
        return CordWinding(
            tube_radius_m=radius, cord_diameter_m=line.diameter.in_metres, safety_wraps=wraps
        )
    return TapeWinding(
        tube_radius_m=radius,
        tape_thickness_m=line.thickness.in_metres,
        tape_width_m=line.width.in_metres,
        safety_wraps=wraps,
    )


def balance(made: Layout, tube: Tube, line: Cord | Tape, **more: Any) -> Balance:
    wound, travel = winding(tube, line), made.travel.value.in_metres
    changes = {
        "travel_turns": number("turns of travel", float(wound.turns(travel))),
        "arm_lowered": length("arm when lowered", Length.metres(float(wound.arm(0.0)))),
        "arm_raised": length("arm when raised", Length.metres(float(wound.arm(travel)))),
    }
    return replace(example.BALANCE, **{**changes, **more})


def window(least: float, recommended: float | None, spring: float, hand: float) -> Window:
    return Window(
        least_turns=number("least turns", least),
        most_by_spring=number("most by spring", spring),
        most_by_hand=number("most by hand", hand),
        most_by_speed=None,
        recommended_turns=None if recommended is None else number("turns", recommended),
        chance=number("chance", 0.9, Unit.SHARE),
        limited_below_by=chosen("limit below", "the load", Unit.WORD),
        limited_above_by=chosen("limit above", "the hand", Unit.WORD),
    )


def cord(diameter: str) -> Cord:
    return Cord(name=f"cord {diameter}", diameter=Length.mm(diameter))


def tube(outside: int) -> Tube:
    return replace(example.TUBE, name=f"tube {outside}", outside=Length.mm(outside))


def spring(hand: str | None = None, body: int = 900) -> Spring:
    return replace(example.SPRING, hand=hand, body_length=Length.mm(body))


def rigged(  # noqa: PLR0913 - a test names what it changes
    *,
    mount: Mount | None = None,
    made: Layout | None = None,
    finished: FinishedSize | None = None,
    line: Cord | Tape = example.CORD,
    wound_on: Tube = example.TUBE,
    bracket: Bracket = example.BRACKET,
    choices: LiftChoices = example.LIFT,
    habits: dict[str, Any] | None = None,
    shop: ShopList = example.SHOP,
    **more: Any,
) -> Answer[Headrail]:
    made = made or layout()
    parts: dict[str, Any] = {"cord": None, "tape": None, "tube": wound_on, "bracket": bracket}
    parts["cord" if isinstance(line, Cord) else "tape"] = line
    return rig_headrail(
        mount or Mount(),
        finished or size(),
        made,
        balance(made, wound_on, line, kind=choices.kind, **more),
        example.WEIGHTS,
        replace(example.CHOSEN, **parts),
        choices,
        replace(example.ORDER.habits, **(habits or {})),
        shop,
    )


def headrail(**changes: Any) -> Headrail:
    result = rigged(**changes).result
    assert result is not None
    return result


def found(answer: Answer[Headrail]) -> dict[str, Any]:
    return {finding.id: finding for finding in answer.findings}


def kind(lift: LiftKind, **more: Any) -> LiftChoices:
    return replace(example.LIFT, kind=lift, **more)
