"""The printed figures of the derivation's worked examples, frozen.

They were derived here, by the same equations in other code; none is a published value, and
none was measured. Tolerance: half of the last printed digit, unless it stands beside.
"""

from __future__ import annotations

import pytest
from tests.core.lift.worked import LIKELIEST, B, case, wound
from tests.core.prove.rises import RATE_B, chain, worked

from foldwright.core.lift.givens import LiftCase
from foldwright.core.prove.rising import End, Folding, RisingShade, rise
from foldwright.core.prove.true_shade import TrialShades

HARSH, CAREFUL = Folding.HARSH, Folding.CAREFUL
SPRING_B = case(wound(B))


def shades(case: LiftCase = SPRING_B) -> TrialShades:
    return TrialShades.drawn(case, LIKELIEST)


@pytest.mark.parametrize(
    ("raise_m", "turns", "torque", "load", "down", "up"),
    [
        (0.0, 22.366, 0.8381, 3.730, 42.91, 34.71),
        (0.5, 18.327, 0.6867, 7.078, 31.89, 23.66),
        (1.0, 14.288, 0.5354, 11.402, 20.02, 11.52),
        (1.407, 11.000, 0.4122, 14.491, 10.74, 2.12),
    ],
)
def test_spring_b_at_eleven_turns(  # noqa: PLR0913, PLR0917 - one row of the table
    raise_m: float, turns: float, torque: float, load: float, down: float, up: float
) -> None:
    worked_out = shades()
    assert worked_out.torque_at(11.0, raise_m) == pytest.approx(torque, abs=5.1e-5)
    assert worked_out.torque_at(11.0, raise_m) / RATE_B == pytest.approx(turns, abs=5.1e-4)
    assert worked_out.load_at(raise_m) == pytest.approx(load, abs=5.1e-4)
    assert worked_out.hand_forces(11.0, raise_m)[0] == pytest.approx(down, abs=5.1e-3)
    assert worked_out.hand_forces(11.0, raise_m)[1] == pytest.approx(up, abs=5.1e-3)


RISES = [
    (0.0, HARSH, 0.351, 5.21, 4.50),
    (0.0, CAREFUL, 0.365, 4.94, 4.13),
    (0.008, HARSH, 2.25, 1.53, 0.115),
    (0.008, CAREFUL, 2.26, 1.52, 0.115),
    (0.012, HARSH, 3.49, 1.07, 0.071),
    (0.012, CAREFUL, 3.50, 1.06, 0.071),
    (0.020, HARSH, 5.92, 0.66, 0.042),
    (0.020, CAREFUL, 5.92, 0.66, 0.042),
]


@pytest.mark.parametrize(("drag", "folding", "seconds", "top", "arrival"), RISES)
def test_spring_b_let_go(
    drag: float, folding: Folding, seconds: float, top: float, arrival: float
) -> None:
    """The last digits of time and top speed are as printed, within one of them."""
    found = rise(worked(brake_drag_n_m_s=drag), 0.0, folding)
    assert found.end is End.AT_THE_STOP
    assert found.duration_s == pytest.approx(seconds, abs=1e-2 if drag else 1e-3)
    assert found.top_speed_m_s == pytest.approx(top, abs=1e-2)
    assert found.arrival_speed_m_s == pytest.approx(arrival, abs=1e-3 if drag else 1e-2)


@pytest.mark.parametrize(("folding", "energy"), [(HARSH, 18.9), (CAREFUL, 15.9)])
def test_what_arrives_without_a_brake(folding: Folding, energy: float) -> None:
    assert rise(worked(), 0.0, folding).arrival_energy_j == pytest.approx(energy, abs=0.06)


def test_the_scale_at_two_heights() -> None:
    low, high = (shades().hand_forces(11.0, raise_m) for raise_m in (0.30, 1.10))
    assert [float(force[0]) for force in low] == pytest.approx([36.470, 28.301], abs=5.1e-4)
    assert [float(force[0]) for force in high] == pytest.approx([18.163, 9.750], abs=5.1e-4)
    halves = [float((down - up)[0] / 2) for down, up in (low, high)]
    assert halves == pytest.approx([4.085, 4.206], abs=1.1e-3)


def test_the_guided_stall_at_eight_turns() -> None:
    stall_m = float(shades().stalls_at(8.0)[0])
    assert stall_m == pytest.approx(1.2826, abs=5e-4)
    assert shades().load_at(1.2826) == pytest.approx(13.168, abs=5.1e-4)
    assert shades().least_turns == pytest.approx(9.825, abs=5.1e-4)


CHAINS = [
    (17.0, 30.0, HARSH, 2.095, 0.952, 0.204),
    (17.0, 30.0, CAREFUL, 2.103, 0.946, 0.203),
    (17.0, 0.0, HARSH, 0.334, 4.18, 3.74),
    (17.0, 0.0, CAREFUL, 0.348, 3.95, 3.42),
]


@pytest.mark.parametrize(("turns", "drag", "folding", "seconds", "top", "arrival"), CHAINS)
def test_the_shade_of_the_chain_let_go(  # noqa: PLR0913, PLR0917 - one row of the table
    turns: float, drag: float, folding: Folding, seconds: float, top: float, arrival: float
) -> None:
    found = rise(chain(turns, drag), 0.0, folding)
    assert found.duration_s == pytest.approx(seconds, abs=1.1e-3)
    assert found.top_speed_m_s == pytest.approx(top, abs=1.1e-3 if drag else 1.1e-2)
    assert found.arrival_speed_m_s == pytest.approx(arrival, abs=1.1e-3 if drag else 1.1e-2)


def test_the_shade_of_the_chain_stalls_braked() -> None:
    found = rise(chain(10.0, 30.0), 0.0, HARSH)
    assert found.end is End.STALLS
    assert found.end_m == pytest.approx(0.891, abs=1e-3)


@pytest.mark.parametrize(("folding", "arrival"), [(HARSH, 1.05), (CAREFUL, 0.69)])
def test_a_marginal_release_arrives_by_the_equation(folding: Folding, arrival: float) -> None:
    found: RisingShade = chain(6.0, 0.0)
    assert found.balance_m() == pytest.approx(0.626, abs=2e-3)
    assert rise(found, 0.0, folding).arrival_speed_m_s == pytest.approx(arrival, abs=1.1e-2)
