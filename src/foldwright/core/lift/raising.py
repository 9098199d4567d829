"""Lines for the raise graph: the load climbing as the shade goes up, the spring falling."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from foldwright.core.lift.balance import RaiseCurve
from foldwright.core.lift.friction import Stand
from foldwright.core.lift.sampling import case_winding
from foldwright.core.lift.span import Reals, Span, span_of
from foldwright.core.weigh.curve import LoadCurve

if TYPE_CHECKING:
    from foldwright.core.lift.givens import LiftCase

_STEPS = 60  # even steps over the raise, beside the pick-ups; a drawing needs no more


def raise_curve(case: LiftCase, rate_n_m_turn: float, turns: float) -> RaiseCurve:
    """Sample load and spring over the whole raise, on both sides of each pick-up.

    Takes: a case; the rate in N.m/turn of all springs together; the turns at the up-stop.

    Gives: newtons at the cord for each raise. The shade rises by itself where the lifting line
    lies above the load, sinks where the resisting line lies below it, and stays between.
    Without a spring (rate 0) the three spring lines are empty.

    Holds for: slow movement; the likeliest inputs, with the load's 90 % band.

    Source: derived here.

    >>> from foldwright.core.lift.givens import LiftCase
    >>> from foldwright.core.weigh.load import PanelLoad
    >>> panel = PanelLoad(
    ...     row_spacings_m=(0.2,), stacked_pitch_m=0.0, skirt_cloth_m=0.1, top_panel_m=0.2,
    ...     cloth_n_m=5.0, bar_n=3.0, rows_n=(0.5, 0.5), travel_m=0.3,
    ... )
    >>> case = LiftCase(load=panel, tube_outside_m=0.038, cord_diameter_m=0.0014)
    >>> curve = raise_curve(case, 0.03, 5.0)
    >>> at = curve.raise_m.index(0.2)
    >>> [round(load, 3) for load in curve.load_n[at : at + 2]]
    [4.5, 5.5]
    """
    curve = LoadCurve.of(case.load)
    raises, loads = _loads(curve, case.load.travel_m)
    _, hardware = _loads(curve, case.load.travel_m, cloth_scale=0.0)
    cloth_band = case.cloth_mass_spread * (loads - hardware)
    band = np.hypot(cloth_band, case.bar_mass_spread * case.load.bar_n)
    stand = _stand(case, raises, loads, rate_n_m_turn, turns) if rate_n_m_turn else None
    return RaiseCurve(
        raise_m=_plain(raises),
        load_n=_plain(loads),
        load_low_n=_plain(loads - band),
        load_high_n=_plain(loads + band),
        spring_n=_plain(stand.torque_n_m / stand.arm_m) if stand else (),
        spring_lifting_n=_plain(stand.lifting_n) if stand else (),
        spring_resisting_n=_plain(stand.resisting_n) if stand else (),
        turns=turns if stand else None,
    )


def likeliest_stand(case: LiftCase, raise_m: Reals, rate_n_m_turn: float, turns: float) -> Stand:
    """Give the likeliest shade as it stands at each raise, pick-ups included.

    Takes: a case; raises in m; the rate of all springs together; the turns at the up-stop.

    Gives: torque, arm, load and friction at each raise.

    Holds for: slow movement.

    Source: derived here.
    """
    loads = LoadCurve.of(case.load).load_after(raise_m)
    return _stand(case, raise_m, loads, rate_n_m_turn, turns)


def _loads(curve: LoadCurve, travel_m: float, cloth_scale: float = 1.0) -> tuple[Reals, Reals]:
    """Give raises, each pick-up twice, and the loads just before and just after."""
    even = np.linspace(0.0, travel_m, _STEPS + 1)
    pick_ups = np.array([at for at in curve.pick_ups if at <= travel_m])
    raises = np.concatenate((pick_ups, np.setdiff1d(even, pick_ups), pick_ups))
    before = curve.load_before(pick_ups, cloth_scale)
    loads = np.concatenate((before, curve.load_after(raises[pick_ups.size :], cloth_scale)))
    order = np.argsort(raises, kind="stable")
    return raises[order], loads[order]


def _stand(
    case: LiftCase, raise_m: Reals, load_n: Reals, rate_n_m_turn: float, turns: float
) -> Stand:
    winding = case_winding(case, np.array([0.5]))
    to_go = winding.turns_to_go(raise_m, case.load.travel_m)
    return Stand(
        torque_n_m=rate_n_m_turn * (turns + to_go),
        arm_m=winding.arm(raise_m),
        load_n=load_n,
        constant_friction_n_m=_likely(case.constant_friction_n_m),
        load_friction=_likely(case.load_friction),
        spring_hysteresis=_likely(case.spring_hysteresis),
    )


def _likely(value: float | Span) -> Reals:
    return np.asarray(span_of(value).likely)


def _plain(values: Reals) -> tuple[float, ...]:
    return tuple(np.asarray(values, dtype=np.float64).tolist())
