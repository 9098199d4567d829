"""The rise against a general integrator at tight tolerance, and against energy.

The reference is scipy's DOP853 at a relative tolerance of 1e-11, given an equation written
here once more from the staircase of the flat shade: load, slope and pick-ups by the rows,
not by the project's load curve. Tolerance of times and speeds: 1e-5 relative, a thousand
times what the rise itself asks of its integrator.

Energy is kept in books: what the spring gives is what the load takes, what friction and
brake eat, what is lost as rows are picked up, and what still moves.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.integrate import solve_ivp
from tests.core.prove.rises import CHAIN_PANEL, chain, worked

from foldwright.core.prove.rising import End, Folding, Rise, RisingShade, rise
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.load import PanelLoad

GRAVITY = 9.80665
TIGHT = 1e-5
Reals = NDArray[np.float64]


@dataclass
class Reference:
    """One rise by the general integrator."""

    seconds: float = 0.0
    speed: float = 0.0
    top: float = 0.0


def staircase(panel: PanelLoad, fold: int) -> tuple[float, float]:
    """Give the load at the start of a fold and its slope, by the rows of a flat shade."""
    weight = panel.cloth_n_m
    hanging = panel.bar_n + weight * panel.skirt_cloth_m + sum(panel.rows_n[: fold + 1])
    return hanging + weight * sum(panel.row_spacings_m[:fold]), weight / 2


def reference(shade: RisingShade, folding: Folding) -> Reference:
    """Integrate fold by fold; momentum is kept as each row is picked up."""
    panel, found = shade.curve.panel, Reference()
    travels = [spacing - panel.stacked_pitch_m for spacing in panel.row_spacings_m]
    starts = [0.0, *np.cumsum(travels).tolist(), panel.travel_m]
    for fold, (start, end) in enumerate(pairwise(starts)):
        load, slope = staircase(panel, fold)
        if fold:
            below, half = staircase(panel, fold - 1)
            before = below + half * travels[fold - 1]
            found.speed *= mass(shade, before) / mass(shade, load)
        _integrate(shade, folding, found, (start, end), (load, slope))
    return found


def arm(shade: RisingShade) -> float:
    return float(shade.winding.arm(0.0))


def mass(shade: RisingShade, load: float) -> float:
    return load / GRAVITY + shade.turning_inertia_kg_m2 / arm(shade) ** 2


def _integrate(
    shade: RisingShade,
    folding: Folding,
    found: Reference,
    stretch: tuple[float, float],
    stair: tuple[float, float],
) -> None:
    (start, end), (load0, slope), r = stretch, stair, arm(shade)

    def rates(_: float, state: Reals) -> tuple[float, float]:
        x, v = state
        load = load0 + slope * (x - start)
        turns = shade.turns + (shade.curve.panel.travel_m - x) / (2 * np.pi * r)
        torque = (1 - shade.spring_hysteresis) * shade.rate_n_m_turn * turns
        force = (torque - shade.constant_friction_n_m) / r - (1 + shade.load_friction) * load
        force -= shade.brake_drag_n_m_s / r**2 * v + folding.value * slope / GRAVITY * v**2
        return v, force / mass(shade, load)

    def arrives(_: float, state: Reals) -> float:
        return float(state[0]) - end

    arrives.terminal = True  # type: ignore[attr-defined]
    arrives.direction = 1  # type: ignore[attr-defined]
    solved = solve_ivp(
        rates, (0, 60), (start, found.speed), method="DOP853", rtol=1e-11, atol=1e-13,
        events=arrives, dense_output=True,
    )  # fmt: skip
    times = np.linspace(0, solved.t[-1], 2000)
    found.top = max(found.top, float(solved.sol(times)[1].max()))
    found.seconds += float(solved.t[-1])
    found.speed = float(solved.y[1, -1])


@pytest.mark.parametrize("folding", Folding)
@pytest.mark.parametrize("drag", [0.0, 0.008, 0.02])
def test_the_rise_is_that_of_a_general_integrator(folding: Folding, drag: float) -> None:
    shade = worked(brake_drag_n_m_s=drag)
    expected, found = reference(shade, folding), rise(shade, 0.0, folding)
    assert found.end is End.AT_THE_STOP
    assert found.duration_s == pytest.approx(expected.seconds, rel=TIGHT)
    assert found.arrival_speed_m_s == pytest.approx(expected.speed, rel=TIGHT)
    # Samples may miss the very crest of the speed by their spacing.
    assert found.top_speed_m_s == pytest.approx(expected.top, rel=1e-3)


def spring_j(shade: RisingShade, raise_m: float) -> float:
    """Give what the spring gives up from fully down to a raise, friction in it taken off."""
    going = shade.turns + float(shade.winding.turns_to_go(0.0, shade.stop_m))
    left = shade.turns + float(shade.winding.turns_to_go(raise_m, shade.stop_m))
    kept = 1 - shade.spring_hysteresis
    return np.pi * kept * shade.rate_n_m_turn * (going**2 - left**2)


def moving_j(shade: RisingShade, found: Rise) -> float:
    load = float(shade.curve.load_before(found.end_m))
    return shade.mass_kg(found.end_m, load) * float(found.speed_m_s[-1]) ** 2 / 2


def test_undamped_within_one_fold_energy_is_kept() -> None:
    shade = replace(
        chain(6.0, 0.0), constant_friction_n_m=0.0, travel_m=CHAIN_PANEL.row_spacings_m[0] - 0.009
    )
    found = rise(shade, 0.0, Folding.HARSH)
    given = spring_j(shade, found.end_m)
    lifted = float(shade.curve.energy(found.end_m))
    assert moving_j(shade, found) == pytest.approx(given - lifted, rel=1e-7)


def test_counting_momentum_in_the_fold_loses_energy() -> None:
    shade = replace(chain(6.0, 0.0), travel_m=0.19)
    kept, lost = (rise(shade, 0.0, folding) for folding in Folding)
    assert moving_j(shade, lost) < 0.99 * moving_j(shade, kept)


@pytest.mark.parametrize("drag", [0.0, 0.012])
def test_over_the_whole_rise_the_books_balance(drag: float) -> None:
    shade = worked(brake_drag_n_m_s=drag)
    found = rise(shade, 0.0, Folding.HARSH)
    rubbed = shade.constant_friction_n_m * found.end_m / arm(shade)
    lifted = (1 + shade.load_friction) * float(shade.curve.energy(found.end_m))
    braked = drag / arm(shade) ** 2 * np.trapezoid(found.speed_m_s**2, found.time_s)
    left = spring_j(shade, found.end_m) - rubbed - lifted - braked - picked_up_j(shade, found)
    assert moving_j(shade, found) == pytest.approx(left, abs=2e-3)


def picked_up_j(shade: RisingShade, found: Rise) -> float:
    """Give what is lost as resting rows are taken along, momentum kept."""
    curve: LoadCurve = shade.curve
    lost = 0.0
    for at_m in curve.pick_ups:
        if at_m >= found.end_m:
            continue
        first = int(np.flatnonzero(found.raise_m == at_m)[0])
        before = shade.mass_kg(at_m, float(curve.load_before(at_m)))
        after = shade.mass_kg(at_m, float(curve.load_after(at_m)))
        lost += before * float(found.speed_m_s[first]) ** 2 / 2 * (1 - before / after)
    return lost
