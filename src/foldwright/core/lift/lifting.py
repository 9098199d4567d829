"""Balance a shade against its lift: will it rise, will it stay, how far to wind, what to change."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from foldwright.core.lift.balance import Balance, Verdict
from foldwright.core.lift.case import LiftCase, answer_case
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.lift.clutch import clutch_findings, try_clutch
from foldwright.core.lift.judging import bare_case
from foldwright.core.lift.missing import missing, which_kind
from foldwright.core.lift.motor import motor_findings, try_motor
from foldwright.core.lift.order import LiftOrder
from foldwright.core.lift.raising import raise_curve
from foldwright.core.lift.ranking import rank, try_springs
from foldwright.core.lift.remedies import working_clutches, working_motors, working_springs
from foldwright.core.lift.sags import sags
from foldwright.core.lift.spring_lift import spring_findings, spring_lift, which_spring
from foldwright.core.lift.telling_load import LoadFigures, load_figures
from foldwright.core.why.answer import Answer
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage

if TYPE_CHECKING:
    from foldwright.core.design.layout import Layout
    from foldwright.core.facts.habits import Habits
    from foldwright.core.facts.records import Chosen, ShopList
    from foldwright.core.lift.span import Reals
    from foldwright.core.measure.finished import FinishedSize
    from foldwright.core.weigh.load import Weights


def lift_shade(  # noqa: PLR0913, PLR0917 - the rooms before this one, in their order
    choices: LiftChoices,
    weights: Weights,
    layout: Layout,
    size: FinishedSize,
    chosen: Chosen,
    shop: ShopList,
    habits: Habits,
    draws: Reals,
) -> Answer[Balance]:
    """Balance a shade against its lift.

    Takes: what is chosen of the lift; weights, layout, size and materials of the shade; the
    shop's list and habits; uniform numbers of shape (trials, 16 or more).

    Gives: the balance, or nothing until tube and cord or tape are chosen; with findings that
    ask what is not known, and whose remedies have been tried.

    Raises: ValueError where the draws have too few columns.

    Holds for: slow movement; springs whose torque is proportional to their turns.

    Source: derived here; each figure names its own sources.

    >>> import numpy as np
    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.rig import example as e
    >>> answer = lift_shade(
    ...     e.LIFT, e.WEIGHTS, e.LAYOUT, e.SIZE, e.CHOSEN, e.SHOP, house_habits(),
    ...     np.full((1, 16), 0.5)
    ... )
    >>> round(answer.result.travel_turns.value, 2)
    11.37
    """
    order = LiftOrder(
        choices=choices,
        weights=weights,
        layout=layout,
        size=size,
        chosen=chosen,
        shop=shop,
        habits=habits,
        draws=draws,
    )
    asked, case = tuple(missing(order)), bare_case(order)
    if case is None:
        return Answer(result=None, findings=asked)
    answer = _by_kind(order, case)
    return Answer(result=answer.result, findings=(*asked, *answer.findings))


def _by_kind(order: LiftOrder, case: LiftCase) -> Answer[Balance]:
    loads = load_figures(order, answer_case(case, order.draws))
    sagging = sags(order, loads)
    balance = Balance(
        kind=order.choices.kind,
        verdict=Verdict.ASK,
        load_lowered=loads.load_lowered,
        load_raised=loads.load_raised,
        arm_lowered=loads.arm_lowered,
        arm_raised=loads.arm_raised,
        travel_turns=loads.travel_turns,
        torque_needed=loads.torque_needed,
        tube_sag=sagging.tube,
        bar_sag=sagging.bar,
        board_sag=sagging.board,
        curve=raise_curve(case, 0.0, 0.0),
    )
    lifts = {LiftKind.SPRING: _spring, LiftKind.CLUTCH: _clutch, LiftKind.MOTOR: _motor}
    if order.choices.kind is None:
        return Answer(result=balance, findings=(which_kind(), *sagging.findings))
    answer = lifts[order.choices.kind](order, loads, balance)
    return Answer(result=answer.result, findings=(*answer.findings, *sagging.findings))


def _spring(order: LiftOrder, loads: LoadFigures, balance: Balance) -> Answer[Balance]:
    tried = try_springs(order)
    ranked = replace(balance, ranking=rank(tried, loads))
    named = [judged for judged in tried if judged.spring.name == order.choices.spring]
    if not named:
        return Answer(result=ranked, findings=(which_spring(order, loads, tried),))
    lift = spring_lift(named[0], loads)
    found = lift.judged.window
    result = replace(
        ranked,
        verdict=lift.verdict,
        window=lift.window,
        hand_force_down=lift.hand_force,
        spring_energy=lift.energy,
        curve=raise_curve(lift.judged.case, found.rate_n_m_turn.likely, found.turns),
    )
    return Answer(result=result, findings=tuple(spring_findings(lift, tried)))


def _clutch(order: LiftOrder, loads: LoadFigures, balance: Balance) -> Answer[Balance]:
    clutches = working_clutches(order, loads)
    clutch = order.shop.clutches.get(order.choices.clutch)
    if clutch is None:
        return Answer(result=balance, findings=(_which("clutch", clutches),))
    trial = try_clutch(order, clutch, loads)
    result = replace(balance, verdict=trial.verdict, chain_pull=trial.pull)
    remedies: tuple[Remedy, ...] = ()
    if trial.verdict is not Verdict.WORKS:
        motors, springs = working_motors(order, loads), working_springs(try_springs(order), loads)
        remedies = (*clutches[:2], *motors[:1], *springs[:1])
    return Answer(result=result, findings=clutch_findings(trial, remedies))


def _motor(order: LiftOrder, loads: LoadFigures, balance: Balance) -> Answer[Balance]:
    motors, motor = working_motors(order, loads), order.shop.motors.get(order.choices.motor)
    if motor is None:
        return Answer(result=balance, findings=(_which("motor", motors),))
    trial = try_motor(order, motor, loads)
    result = replace(
        balance,
        verdict=trial.verdict,
        motor_torque=trial.torque_needed,
        motor_time=trial.time,
        motor_speed=trial.speed,
    )
    remedies: tuple[Remedy, ...] = ()
    if trial.verdict is not Verdict.WORKS:
        clutches = working_clutches(order, loads)
        springs = working_springs(try_springs(order), loads)
        remedies = (*motors[:2], *clutches[:1], *springs[:1])
    return Answer(result=result, findings=motor_findings(trial, remedies))


def _which(part: str, fitting: tuple[Remedy, ...]) -> Finding:
    says = "" if fitting else f" No {part} of the list is strong enough and fits."
    return Finding(
        id=f"lift.{part}",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence=f"Which {part}?{says}",
        remedies=fitting[:3],
    )
