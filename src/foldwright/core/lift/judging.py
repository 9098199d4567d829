"""Try one spring on one shade: the case in plain numbers, and what it answers."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import hypot
from typing import TYPE_CHECKING, Any

from foldwright.core.lift.balance import Verdict
from foldwright.core.lift.case import LiftCase, answer_case
from foldwright.core.lift.case_answer import CaseAnswer, CaseWindow
from foldwright.core.lift.order import LiftOrder, obstacle, tube_inertia
from foldwright.core.lift.sheet import read_spring
from foldwright.core.lift.sheet_parts import SpringReading
from foldwright.core.lift.span import Span

if TYPE_CHECKING:
    from foldwright.core.facts.records import Cord, Spring
    from foldwright.core.why.figure import Figure

WORKING = (Verdict.WORKS, Verdict.BY_HAND)


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Judged:
    """One spring of the shop's list on one shade."""

    order: LiftOrder
    spring: Spring
    reading: SpringReading
    case: LiftCase
    answer: CaseAnswer
    window: CaseWindow
    obstacle: str  # why it cannot go into the tube; empty where it can

    @property
    def verdict(self) -> Verdict:
        """Say what the turns allow and the tube admits, whatever is still to be asked."""
        return Verdict.NOTHING_FITS if self.obstacle else self.window.verdict


def judge(order: LiftOrder, spring: Spring) -> Judged | None:
    """Try a spring; None where its sheet says too little, or tube and cord are not chosen.

    Takes: the order; a spring of the shop list.

    Gives: the spring's reading, its case and its answer.

    Source: derived here.

    >>> import numpy as np
    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.rig import example as e
    >>> order = LiftOrder(
    ...     choices=e.LIFT, weights=e.WEIGHTS, layout=e.LAYOUT, size=e.SIZE, chosen=e.CHOSEN,
    ...     shop=e.SHOP, habits=house_habits(), draws=np.full((2, 16), 0.5))
    >>> judge(order, e.SHOP.springs["spring"]).spring.name
    'spring'
    """
    reading, bare = read_spring(spring, order.habits), bare_case(order)
    if reading is None or bare is None:
        return None
    case = replace(bare, spring=reading.case, brake_drag_n_m_s=spring.speed_brake_n_m_s)
    answer = answer_case(case, order.draws)
    if answer.window is None:
        return None
    return Judged(
        order=order,
        spring=spring,
        reading=reading,
        case=case,
        answer=answer,
        window=answer.window,
        obstacle=obstacle(order, spring),
    )


def bare_case(order: LiftOrder) -> LiftCase | None:
    """Give the case without a spring; None until the tube and its cord or tape are chosen."""
    tube, cord, tape = order.chosen.tube, order.chosen.cord, order.chosen.tape
    if tube is None or (cord is None and tape is None):
        return None
    load, choices, habits = order.weights.load, order.choices, order.habits
    limit = choices.hand_force_limit_n
    return LiftCase(
        load=replace(load, travel_m=load.travel_m * order.travel_share),
        tube_outside_m=tube.outside.in_metres,
        cord_diameter_m=None if cord is None else _as_wound(cord),
        tape_thickness_m=tape.thickness.in_metres if tape and not cord else None,
        safety_wraps=habits.safety_wraps.value,
        springs_side_by_side=choices.springs_side_by_side,
        constant_friction_n_m=Span.of_figure(habits.constant_friction_n_m),
        load_friction=Span.of_figure(habits.load_friction),
        spring_hysteresis=Span.of_figure(habits.spring_hysteresis),
        cloth_mass_spread=_spread(order.weights.layers) or habits.cloth_mass_spread.value,
        bar_mass_spread=_spread((order.weights.bar,)),
        load_margin=habits.load_margin.value,
        release_turns=habits.release_turns.value + habits.lock_pitch_turns.value,
        brake=choices.brake,
        speed_limit_m_s=habits.arrival_speed_limit_m_s.value,
        hand_force_limit_n=habits.hand_force_limit_n.value if limit is None else limit,
        winding_step_turns=habits.winding_step_turns.value,
        lock=choices.lock,
        turns=choices.turns,
        turning_inertia_kg_m2=tube_inertia(tube, order.tube_cut or order.size.board_length.value),
    )


def _as_wound(cord: Cord) -> Span:
    likely = cord.diameter
    low, high = cord.diameter_low or likely, cord.diameter_high or likely
    return Span(likely=likely.in_metres, low=low.in_metres, high=high.in_metres)


def _spread(parts: tuple[Figure[Any], ...]) -> float:
    """Give the share by which a sum of parts may differ, each part for itself."""
    spans = [Span.of_figure(part) for part in parts]
    total = sum(span.likely for span in spans)
    return hypot(*((span.high - span.low) / 2 for span in spans)) / total if total else 0.0
