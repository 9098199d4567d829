"""A tubular motor: torque, holding without friction, limit turns, time and speed."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING

from foldwright.core.lift.balance import Verdict
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, supplied

if TYPE_CHECKING:
    from collections.abc import Iterator

    from foldwright.core.facts.records import Motor
    from foldwright.core.lift.order import LiftOrder
    from foldwright.core.lift.telling_load import LoadFigures, N


def raise_time(travel_turns: float, speed_rpm: float) -> float:
    """Give the time in which a motor raises a shade; safety wraps are not turned.

    Takes: turns of travel; turns of the tube in a minute.

    Gives: seconds.

    Holds for: a motor that keeps its speed.

    Source: derived here.

    >>> round(raise_time(11.3663, 28.0), 1)
    24.4
    """
    return 60 * travel_turns / speed_rpm


def cord_speed(arm_m: float, speed_rpm: float) -> float:
    """Give the speed of the cords of a motor-driven shade.

    Takes: the arm of the load in m; turns of the tube in a minute.

    Gives: m/s.

    Holds for: a motor that keeps its speed.

    Source: derived here.

    >>> round(cord_speed(0.0197013, 28.0), 3)
    0.058
    """
    return 2 * pi * arm_m * speed_rpm / 60


@dataclass(frozen=True, kw_only=True, slots=True)
class MotorTrial:
    """One motor of the shop's list on one shade; what it has beside what it needs."""

    motor: Motor
    torque: N
    torque_needed: N
    hold: N
    hold_needed: N
    turns: N
    turns_needed: N
    time: N
    speed: N
    obstacle: str  # why it cannot go into the tube; empty where it can

    @property
    def verdict(self) -> Verdict:
        """Say whether the motor lifts and holds the shade."""
        fits = not self.obstacle and not any(self.shortages())
        return Verdict.WORKS if fits else Verdict.NOTHING_FITS

    def shortages(self) -> Iterator[tuple[str, N, N]]:
        """Give each thing the motor has too little of: in words, what it has, what it needs."""
        for what, has, needs in (
            ("is rated for", self.torque, self.torque_needed),
            ("holds with its brake", self.hold, self.hold_needed),
            ("can count", self.turns, self.turns_needed),
        ):
            if has.value < needs.value:
                yield what, has, needs


def try_motor(order: LiftOrder, motor: Motor, loads: LoadFigures) -> MotorTrial:
    """Try a motor on a shade.

    Takes: the order; a motor of the shop list; the figures of the load.

    Gives: its torque, brake and limit turns, each beside what the shade needs.

    Source: *common practice* for the margin on the torque; derived here otherwise.
    """
    return MotorTrial(
        motor=motor,
        torque=supplied("torque of the motor", motor.torque_n_m, Unit.TORQUE, motor.name),
        torque_needed=_torque_needed(order, loads),
        hold=supplied("torque of the brake", motor.brake_torque_n_m, Unit.TORQUE, motor.name),
        hold_needed=_hold_needed(loads),
        turns=supplied("turns between limits", motor.limit_turns, Unit.TURN, motor.name),
        turns_needed=loads.travel_turns,
        time=_time(motor, loads),
        speed=_speed(motor, loads),
        obstacle=_obstacle(order, motor),
    )


def try_motors(order: LiftOrder, loads: LoadFigures) -> tuple[MotorTrial, ...]:
    """Try every motor of the shop's list: those that work first, the weakest of them first."""
    tried = [try_motor(order, motor, loads) for motor in order.shop.motors.values()]
    return tuple(
        sorted(tried, key=lambda trial: (trial.verdict is not Verdict.WORKS, trial.torque.value))
    )


def _torque_needed(order: LiftOrder, loads: LoadFigures) -> N:
    margin, torque = order.habits.motor_margin, loads.torque_needed
    because = "The torque to raise {0}, {1} times over."
    needed = torque.value * margin.value
    return derived("torque a motor needs", needed, Unit.TORQUE, because, torque, margin)


def _hold_needed(loads: LoadFigures) -> N:
    load, arm = loads.load_raised, loads.arm_raised
    return derived(
        "torque the brake needs",
        load.value * arm.value.in_metres,
        Unit.TORQUE,
        "The load fully raised {0} on its arm {1}, without any help of friction.",
        load,
        arm,
    )


def _time(motor: Motor, loads: LoadFigures) -> N:
    return derived(
        "time to raise",
        raise_time(loads.travel_turns.value, motor.speed_rpm),
        Unit.TIME,
        "{0} of travel at {1} turns a minute.",
        loads.travel_turns,
        supplied("speed of the motor", motor.speed_rpm, Unit.RATIO, motor.name),
    )


def _speed(motor: Motor, loads: LoadFigures) -> N:
    return derived(
        "speed of the cords",
        cord_speed(loads.arm_raised.value.in_metres, motor.speed_rpm),
        Unit.SPEED,
        "The way round at the arm {0}, {1} times a minute.",
        loads.arm_raised,
        supplied("speed of the motor", motor.speed_rpm, Unit.RATIO, motor.name),
    )


def _obstacle(order: LiftOrder, motor: Motor) -> str:
    length, inside = order.tube_cut, order.tube_inside
    if motor.least_tube_length and length and motor.least_tube_length > length:
        return "too long for the tube"
    if motor.least_tube_inside and inside and motor.least_tube_inside > inside:
        return "too thick for the tube"
    return ""


def motor_remedy(trial: MotorTrial) -> Remedy:
    """Give the change that turns the shade's lift into this motor."""
    return Remedy(
        sentence=f"Take the motor “{trial.motor.name}”: {{0}} where {{1}} is needed, up in {{2}}.",
        figures=(trial.torque, trial.torque_needed, trial.time),
        changes=(
            Change(path="lift.kind", text="motor"),
            Change(path="lift.motor", text=trial.motor.name),
        ),
    )


def motor_findings(trial: MotorTrial, remedies: tuple[Remedy, ...]) -> tuple[Finding, ...]:
    """Say what is wrong with a motor on a shade, and what any motor asks for.

    Takes: the motor tried; the other lifts that work.

    Gives: findings with those remedies.

    Source: derived here; *common practice* for the wiring.
    """
    short = tuple(_too_little(trial, *each, remedies) for each in trial.shortages())
    blocked = (_does_not_fit(trial, remedies),) if trial.obstacle else ()
    wiring = () if trial.motor.battery else (MAINS,)
    return (*blocked, *short, *wiring)


def _too_little(
    trial: MotorTrial, what: str, has: N, needs: N, remedies: tuple[Remedy, ...]
) -> Finding:
    return Finding(
        id="lift.motor-too-weak",
        severity=Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence=f"The motor “{trial.motor.name}” {what} {{0}}; this shade needs {{1}}.",
        figures=(has, needs),
        remedies=remedies,
    )


def _does_not_fit(trial: MotorTrial, remedies: tuple[Remedy, ...]) -> Finding:
    return Finding(
        id="lift.motor-does-not-fit",
        severity=Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence=f"The motor “{trial.motor.name}” is {trial.obstacle}.",
        remedies=remedies,
    )


MAINS = Finding(
    id="lift.motor-mains",
    severity=Severity.NOTE,
    stage=Stage.INSTALL,
    sentence="Mains wiring is for a licensed person, by the local code; cut off and prove dead"
    " before a cover is opened.",
)
