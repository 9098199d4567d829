"""How a released shade rises: from any height, with brake, friction and folds picked up.

One cord raise x describes the shade. The cloth that hangs on the cords moves with it, so
the moving mass is the load over gravity, and the tube, spring and wheel turn with it:

    M x'' = ((1 - h) k q - T0) / r - (1 + mu) F - c x' - beta M' x'^2

Rows are picked up as events of the integration, never as time steps: the speed at the
stop would move by some per cent otherwise.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from math import pi
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.lift.winding import Winding
from foldwright.core.weigh.curve import LoadCurve

Reals = NDArray[np.float64]
G = float(GRAVITY.value)
STILL_M_S = 1e-9  # slower than this the shade stands
CREEP_M_S = 2e-4  # the last millimetres of a braked stall take for ever; slower is standing
ACCURACY = 1e-8
SAMPLES_A_STRETCH = 40
BALANCE_HEIGHTS = 1001


class Folding(Enum):
    """What the cloth gives back while a fold closes; the value is beta in the equation.

    A folded chain keeps its energy nearly; counting momentum instead is the other bound.
    Ask CAREFUL whether the shade arrives, and HARSH how hard.
    """

    HARSH = 0.5
    CAREFUL = 1.0


class End(Enum):
    """How a rise ends."""

    AT_THE_STOP = "reaches the stop"
    STALLS = "stalls"
    STAYS = "does not move"
    STILL_RISING = "still rising when the time was up"


@dataclass(frozen=True, kw_only=True, eq=False)
class RisingShade:
    """One shade with all that decides how it rises; SI, torques per turn where it says so."""

    curve: LoadCurve
    winding: Winding
    rate_n_m_turn: float
    turns: float  # in the spring at the up-stop
    constant_friction_n_m: float
    load_friction: float
    spring_hysteresis: float
    brake_drag_n_m_s: float = 0.0
    turning_inertia_kg_m2: float = 0.0
    travel_m: float | None = None  # None: the design travel
    cloth_scale: float = 1.0

    @property
    def stop_m(self) -> float:
        """Give the raise of the up-stop."""
        return self.curve.panel.travel_m if self.travel_m is None else self.travel_m

    @cached_property
    def same_arm_m(self) -> float | None:
        """Give the arm where it is the same at every raise, as a cord's is, else None."""
        first, last = (float(self.winding.arm(raise_m)) for raise_m in (0.0, self.stop_m))
        return first if first == last else None

    def arm_m(self, raise_m: float) -> float:
        """Give the arm at a raise."""
        return self.same_arm_m or float(self.winding.arm(raise_m))

    def turns_to_go(self, raise_m: float) -> float:
        """Give the turns from a raise to the stop."""
        if self.same_arm_m:
            return (self.stop_m - raise_m) / (2 * pi * self.same_arm_m)
        return float(self.winding.turns_to_go(raise_m, self.stop_m))

    def drive_n(self, raise_m: float, load_n: float) -> float:
        """Give what is left at the cords to speed the rising shade up, brake left out."""
        turns = self.turns + self.turns_to_go(raise_m)
        torque = (1 - self.spring_hysteresis) * self.rate_n_m_turn * turns
        arm = self.arm_m(raise_m)
        return (torque - self.constant_friction_n_m) / arm - (1 + self.load_friction) * load_n

    def balance_m(self) -> float:
        """Give the raise at which it stops by itself when it is guided up slowly."""
        heights = np.linspace(0.0, self.stop_m, BALANCE_HEIGHTS)
        loads = self.curve.load_after(heights, self.cloth_scale)
        pairs = zip(heights.tolist(), loads.tolist(), strict=True)
        stuck = (raise_m for raise_m, load_n in pairs if self.drive_n(raise_m, load_n) < 0)
        return next(stuck, self.stop_m)

    def mass_kg(self, raise_m: float, load_n: float) -> float:
        """Give all that moves, counted as if it rose with the bar."""
        return load_n / G + self.turning_inertia_kg_m2 / self.arm_m(raise_m) ** 2


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Rise:
    """A rise as it went: samples, and what a person at the bench would note."""

    time_s: Reals
    raise_m: Reals
    speed_m_s: Reals
    end: End
    top_speed_m_s: float
    arrival_speed_m_s: float  # 0 where it does not arrive
    arrival_energy_j: float

    @property
    def duration_s(self) -> float:
        """Give the time from release to the end."""
        return float(self.time_s[-1])

    @property
    def end_m(self) -> float:
        """Give the raise at which it ends."""
        return float(self.raise_m[-1])


def rise(shade: RisingShade, from_m: float, folding: Folding, longest_s: float = 60.0) -> Rise:
    """Let a shade go and follow it until it stops.

    Takes: a shade; the raise in m at which it is let go; what folding cloth gives back; the
    time in s after which the watch is stopped.

    Gives: the rise, sampled, and its end.

    Raises: ValueError where the shade would be let go below its lowest or above its stop.

    Holds for: springs with torque proportional to turns, viscous brakes; a marginal free
    release without a brake cannot be predicted.

    Source: derived here; folded-chain-2006 for the folding that keeps its energy.

    >>> from foldwright.core.lift.winding import CordWinding
    >>> from foldwright.core.weigh.load import PanelLoad
    >>> panel = PanelLoad(
    ...     row_spacings_m=(0.2,) * 7, stacked_pitch_m=0.005, skirt_cloth_m=0.069,
    ...     top_panel_m=0.14, cloth_n_m=5.59214, bar_n=2.942, rows_n=(0.402073,) * 8,
    ...     travel_m=1.407,
    ... )
    >>> shade = RisingShade(
    ...     curve=LoadCurve.of(panel),
    ...     winding=CordWinding(tube_radius_m=0.019, cord_diameter_m=0.0014, safety_wraps=3),
    ...     rate_n_m_turn=0.03747, turns=11.0, constant_friction_n_m=0.03, load_friction=0.12,
    ...     spring_hysteresis=0.05, brake_drag_n_m_s=0.012, turning_inertia_kg_m2=1.5e-4,
    ... )
    >>> found = rise(shade, 0.0, Folding.HARSH)
    >>> found.end.value, round(found.duration_s, 2), round(found.top_speed_m_s, 2)
    ('reaches the stop', 3.49, 1.06)
    """
    if not 0 <= from_m < shade.stop_m:
        what = f"a shade is let go between 0 and its stop at {shade.stop_m:.3f} m, not {from_m} m"
        raise ValueError(what)
    went = _Path(shade, folding, longest_s)
    went.start(from_m)
    return went.told()


class _Path:
    """A rise in the making: one stretch of cloth after another, joined by pick-ups."""

    def __init__(self, shade: RisingShade, folding: Folding, longest_s: float) -> None:
        self.shade, self.folding, self.longest_s = shade, folding, longest_s
        self.times: list[Reals] = []
        self.raises: list[Reals] = []
        self.speeds: list[Reals] = []
        self.end = End.STAYS

    def start(self, from_m: float) -> None:
        """Go stretch by stretch until the shade stands, or is at the stop."""
        self._note(np.array([0.0]), np.array([from_m]), np.array([0.0]))
        joints = [*self._joints(from_m), self.shade.stop_m]
        speed = 0.0
        for joint in joints:
            speed = self._picked_up(float(self.raises[-1][-1]), speed)
            speed = self._stretch(joint, speed)
            if self.end is not End.AT_THE_STOP:
                return

    def _joints(self, from_m: float) -> list[float]:
        curve = self.shade.curve
        steps = sorted({*curve.cloth.at_m.tolist(), *curve.hardware.at_m.tolist()})
        return [step for step in steps if from_m < step < self.shade.stop_m]

    def _loads(self, at_m: float) -> tuple[float, float]:
        """Give the load just below and just above a raise."""
        curve, scale = self.shade.curve, self.shade.cloth_scale
        return float(curve.load_before(at_m, scale)), float(curve.load_after(at_m, scale))

    def _picked_up(self, at_m: float, speed: float) -> float:
        """Slow down as a resting row is taken along: momentum stays, energy does not."""
        before, after = (self.shade.mass_kg(at_m, load) for load in self._loads(at_m))
        return speed * before / after if speed else 0.0

    def _stretch(self, to_m: float, speed: float) -> float:
        start_s, start_m = float(self.times[-1][-1]), float(self.raises[-1][-1])
        load, slope = self._loads(start_m)[1], self._slope()
        if speed <= STILL_M_S and self.shade.drive_n(start_m, load) <= 0:
            self.end = End.STALLS if start_s > 0 else End.STAYS
            return 0.0
        solved = solve_ivp(
            self._pull(start_m, load, slope),
            (start_s, self.longest_s),
            (start_m, speed),
            method="LSODA",
            rtol=ACCURACY,
            atol=ACCURACY * 1e-2,
            events=(_reaches(to_m), self._stands(start_m, load, slope)),
            dense_output=True,
        )
        return self._went(solved, to_m)

    def _slope(self) -> float:
        curve = self.shade.curve
        return self.shade.cloth_scale * curve.cloth.slope_n_m + curve.hardware.slope_n_m

    def _pull(
        self, start_m: float, load_n: float, slope: float
    ) -> Callable[[float, Reals], tuple[float, float]]:
        shade, beta, growing = self.shade, self.folding.value, slope / G

        def rates(_: float, state: Reals) -> tuple[float, float]:
            raised, speed = float(state[0]), float(state[1])
            load = load_n + slope * (raised - start_m)
            arm = shade.arm_m(raised)
            braked = shade.brake_drag_n_m_s / arm**2 * speed
            force = shade.drive_n(raised, load) - braked - beta * growing * speed**2
            return speed, force / shade.mass_kg(raised, load)

        return rates

    def _stands(
        self, start_m: float, load_n: float, slope: float
    ) -> Callable[[float, Reals], float]:
        """Make the event of standing: hardly moving, and not about to speed up."""
        shade = self.shade

        def stands(_: float, state: Reals) -> float:
            drive = shade.drive_n(float(state[0]), load_n + slope * (float(state[0]) - start_m))
            return float(state[1]) - CREEP_M_S if drive <= shade.brake_drag_n_m_s else 1.0

        stands.terminal = True  # type: ignore[attr-defined]  # scipy reads these from the function
        stands.direction = -1  # type: ignore[attr-defined]
        return stands

    def _went(self, solved: Any, to_m: float) -> float:
        reached, stood = (bool(len(events)) for events in solved.t_events)
        times = np.linspace(solved.t[0], solved.t[-1], SAMPLES_A_STRETCH)
        raises, speeds = solved.sol(times)
        # The joint itself, not a hair below it: the next stretch begins with the row picked up.
        raises[-1] = to_m if reached else solved.y[0, -1]
        self._note(times, raises, speeds)
        self.end = End.AT_THE_STOP if reached else End.STALLS if stood else End.STILL_RISING
        return float(speeds[-1])

    def _note(self, times: Reals, raises: Reals, speeds: Reals) -> None:
        self.times.append(times)
        self.raises.append(raises)
        self.speeds.append(speeds)

    def told(self) -> Rise:
        """Give the rise that was."""
        speeds, at_m = np.concatenate(self.speeds), float(self.raises[-1][-1])
        arrived = float(speeds[-1]) if self.end is End.AT_THE_STOP else 0.0
        mass = self.shade.mass_kg(at_m, self._loads(at_m)[1])
        return Rise(
            time_s=np.concatenate(self.times),
            raise_m=np.concatenate(self.raises),
            speed_m_s=speeds,
            end=self.end,
            top_speed_m_s=float(speeds.max()),
            arrival_speed_m_s=arrived,
            arrival_energy_j=mass * arrived**2 / 2,
        )


def _reaches(to_m: float) -> Callable[[float, Reals], float]:
    def reaches(_: float, state: Reals) -> float:
        return float(state[0]) - to_m

    reaches.terminal = True  # type: ignore[attr-defined]  # scipy reads these from the function
    reaches.direction = 1  # type: ignore[attr-defined]
    return reaches
