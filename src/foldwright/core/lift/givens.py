"""One shade's lift in plain SI numbers: all that the balance depends on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, fields
from functools import cache
from math import inf

from foldwright.core.facts.house import house_habits
from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.weigh.load import PanelLoad
from foldwright.core.why.fault import Fault


@cache
def _house(habit: str) -> Span:
    """Give a house habit in plain numbers."""
    return Span.of_figure(getattr(house_habits(), habit))


def _usual(habit: str) -> float:
    return _house(habit).likely


@dataclass(frozen=True, kw_only=True, slots=True)
class LiftCase:
    """All that the lift depends on, in SI; what is left out is the house habit.

    A quantity with a range may be a plain number, then known exactly, or a `Span`.
    Give `cord_diameter_m` or `tape_thickness_m`; leave `spring` out for a clutch or motor.
    """

    load: PanelLoad
    tube_outside_m: float
    cord_diameter_m: float | Span | None = None
    tape_thickness_m: float | Span | None = None
    safety_wraps: float = field(default_factory=lambda: _usual("safety_wraps"))
    spring: SpringCase | None = None
    springs_side_by_side: int = 1
    constant_friction_n_m: float | Span = field(
        default_factory=lambda: _house("constant_friction_n_m")
    )
    load_friction: float | Span = field(default_factory=lambda: _house("load_friction"))
    spring_hysteresis: float | Span = field(default_factory=lambda: _house("spring_hysteresis"))
    cloth_mass_spread: float = field(default_factory=lambda: _usual("cloth_mass_spread"))
    bar_mass_spread: float = 0.0
    load_margin: float = field(default_factory=lambda: _usual("load_margin"))
    release_turns: float = field(
        default_factory=lambda: _usual("release_turns") + _usual("lock_pitch_turns")
    )
    brake: Brake = Brake.UNKNOWN
    brake_drag_n_m_s: float | Span | None = None
    speed_limit_m_s: float = field(default_factory=lambda: _usual("arrival_speed_limit_m_s"))
    hand_force_limit_n: float = field(default_factory=lambda: _usual("hand_force_limit_n"))
    winding_step_turns: float = field(default_factory=lambda: _usual("winding_step_turns"))
    lock: Lock = Lock.UNKNOWN
    turns: float | None = None
    turning_inertia_kg_m2: float = 0.0


class ImpossibleCase(ValueError):  # noqa: N818 - named in the trade's words
    """All that contradicts itself in a lift case: what, where, and what to do."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__(" ".join(fault.sentence for fault in faults))
        self.faults = faults


def check_case(case: LiftCase) -> None:
    """Refuse a case that no lift can have, naming all that is wrong with it.

    Takes: a case.

    Raises: ImpossibleCase.

    Holds for: plain numbers; the panel is checked where its load is computed.

    Source: derived here.

    >>> panel = PanelLoad(
    ...     row_spacings_m=(), stacked_pitch_m=0.005, skirt_cloth_m=0.06, top_panel_m=0.4,
    ...     cloth_n_m=5.0, bar_n=3.0, rows_n=(0.4,), travel_m=0.3,
    ... )
    >>> try:
    ...     check_case(LiftCase(load=panel, tube_outside_m=0.0, cord_diameter_m=0.0014))
    ... except ImpossibleCase as impossible:
    ...     print(impossible)
    tube_outside_m: 0 is not above zero. Give the tube's outside diameter in metres.
    """
    faults = tuple(_faults(case))
    if faults:
        raise ImpossibleCase(faults)


def _faults(case: LiftCase) -> Iterator[Fault]:
    yield from _not_positive(case)
    yield from _not_shares(case)
    yield from _not_in_order(case)
    if (case.cord_diameter_m is None) == (case.tape_thickness_m is None):
        yield Fault(
            where="cord_diameter_m",
            what="give either a cord or a tape, not both and not neither",
            remedy="Type the cord's diameter as wound, or the tape's thickness.",
        )
    if case.springs_side_by_side < 1:
        yield Fault(
            where="springs_side_by_side",
            what=f"{case.springs_side_by_side} springs turn nothing",
            remedy="Type 1 or more.",
        )
    if case.spring is not None:
        yield from _spring_faults(case.spring)


_POSITIVE = {
    "tube_outside_m": "Give the tube's outside diameter in metres.",
    "cord_diameter_m": "Give the cord's diameter as wound in metres.",
    "speed_limit_m_s": "Give a speed in metres per second.",
    "hand_force_limit_n": "Give a force in newtons.",
    "winding_step_turns": "Give the step in turns, such as 0.5.",
}
_NOT_NEGATIVE = {
    "tape_thickness_m": "Give the tape's thickness in metres.",
    "safety_wraps": "Give the wraps that stay on the tube, such as 3.",
    "constant_friction_n_m": "Give a torque in newton metres.",
    "release_turns": "Give the turns of a release pull, such as 0.5.",
    "brake_drag_n_m_s": "Give the drag torque per angular speed.",
    "turns": "Give the turns in the spring at the up-stop.",
    "turning_inertia_kg_m2": "Give what turns with the tube, or 0.",
}
_SHARES = (
    "load_friction",
    "spring_hysteresis",
    "cloth_mass_spread",
    "bar_mass_spread",
    "load_margin",
)


def _not_positive(case: LiftCase) -> Iterator[Fault]:
    for where, remedy in _POSITIVE.items():
        for value in _numbers(getattr(case, where)):
            if not 0 < value < inf:
                yield Fault(where=where, what=f"{value:g} is not above zero", remedy=remedy)
    for where, remedy in _NOT_NEGATIVE.items():
        for value in _numbers(getattr(case, where)):
            if not 0 <= value < inf:
                yield Fault(where=where, what=f"{value:g} is not zero or more", remedy=remedy)


def _not_shares(case: LiftCase) -> Iterator[Fault]:
    for where in _SHARES:
        for value in _numbers(getattr(case, where)):
            if not 0 <= value < 1:
                yield Fault(
                    where=where,
                    what=f"{value:g} is not between 0 and 1",
                    remedy="Give a share, such as 0.12 for 12 %.",
                )


def _not_in_order(case: LiftCase) -> Iterator[Fault]:
    parts = [("", case), ("spring.", case.spring)]
    for prefix, part in parts:
        for each in fields(part) if part else ():
            span = getattr(part, each.name)
            if isinstance(span, Span) and not span.low <= span.likely <= span.high:
                yield Fault(
                    where=f"{prefix}{each.name}",
                    what="the likeliest value does not lie between the ends of its range",
                    remedy="Give low, likely and high in that order.",
                )


def _spring_faults(spring: SpringCase) -> Iterator[Fault]:
    if spring.rate_n_m_turn is None and not spring.pairs:
        yield Fault(
            where="spring.rate_n_m_turn",
            what="the spring has neither a rate nor pairs",
            remedy="Type its rate in N.m per turn.",
        )
    named = ("rate_n_m_turn", "greatest_torque_n_m", "greatest_turns")
    values = [(name, value) for name in named for value in _numbers(getattr(spring, name))]
    values += [("pairs", value) for pair in spring.pairs for value in pair]
    for name, value in values:
        if not 0 < value < inf:
            yield Fault(
                where=f"spring.{name}",
                what=f"{value:g} is not above zero",
                remedy="Read it from the spring's sheet again.",
            )


def _numbers(value: float | Span | None) -> tuple[float, ...]:
    if value is None:
        return ()
    return (value.likely, value.low, value.high) if isinstance(value, Span) else (value,)
