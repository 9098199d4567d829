"""Try every spring of the shop's list on one shade, best first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from foldwright.core.lift.balance import SpringRank, Verdict
from foldwright.core.lift.case_answer import Limit
from foldwright.core.lift.choices import Brake
from foldwright.core.lift.judging import WORKING, Judged, judge
from foldwright.core.lift.telling_load import LoadFigures
from foldwright.core.lift.telling_window import window_figures
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied

if TYPE_CHECKING:
    from collections.abc import Iterable

    from foldwright.core.lift.order import LiftOrder

_BEST_FIRST = tuple(Verdict)


def try_springs(order: LiftOrder) -> tuple[Judged, ...]:
    """Try every spring of the shop's list, the best first.

    Takes: the order.

    Gives: each spring whose sheet says enough, by verdict, then by its chance, then those that
    have the brake that is to be fitted, then the one that stores least energy: it is the
    gentlest to wind, to pull and to hold.

    Holds for: orders whose tube and cord or tape are chosen; otherwise nothing is tried.

    Source: derived here.
    """
    tried = (judge(order, spring) for spring in order.shop.springs.values())
    return tuple(sorted((each for each in tried if each), key=_goodness))


def _goodness(judged: Judged) -> tuple[int, float, bool, float]:
    found = judged.window
    return (
        _BEST_FIRST.index(judged.verdict),
        0.0 if judged.verdict in WORKING else -found.chance,
        _names_no_brake(judged),
        found.spring_energy_j.likely,
    )


def _names_no_brake(judged: Judged) -> bool:
    """Tell where a brake is to be fitted and the spring's sheet names none."""
    return judged.case.brake is Brake.FITTED and judged.spring.speed_brake_n_m_s is None


def rank(tried: Iterable[Judged], loads: LoadFigures) -> tuple[SpringRank, ...]:
    """Put the tried springs into figures, each with one remark.

    Takes: springs tried on one shade, best first; the figures of the load.

    Gives: one line for each spring.

    Source: derived here.
    """
    return tuple(
        SpringRank(
            spring=judged.spring.name,
            verdict=judged.verdict,
            window=window_figures(judged, loads),
            remark=remark(judged),
        )
        for judged in tried
    )


_WHY_NOT = {
    Limit.SPRING: "runs out of turns before it can lift",
    Limit.HAND: "too strong to pull down for this light a shade",
    Limit.SPEED: "arrives too fast, brake and all",
}


def remark(judged: Judged) -> Figure[str]:
    """Say in a few words how a spring does on this shade."""
    if judged.obstacle:
        return _obstacle(judged)
    found = judged.window
    words = {
        Verdict.WORKS: "fits; its sheet names no brake" if _names_no_brake(judged) else "fits",
        Verdict.BY_HAND: "fits, guided by hand",
        Verdict.NARROW: f"only just, because of {found.limited_above_by.value}",
        Verdict.NOTHING_FITS: _WHY_NOT.get(found.limited_above_by, "does not fit"),
    }[found.verdict]
    return derived(
        "remark",
        words,
        Unit.WORD,
        "Its rate {0} sets what it lifts, and its strength what it can be wound to.",
        judged.reading.rate,
    )


def _obstacle(judged: Judged) -> Figure[str]:
    spring, order = judged.spring, judged.order
    if judged.obstacle == "too long for the tube" and spring.body_length and order.tube_cut:
        body = supplied("least tube length", spring.body_length, Unit.LENGTH, spring.name)
        board = order.size.board_length
        because = "It needs {0} of tube; the tube, cut for the board {1}, is shorter."
        return derived("remark", judged.obstacle, Unit.WORD, because, body, board)
    tube = order.chosen.tube
    if tube is None or spring.least_tube_inside is None:
        return derived("remark", judged.obstacle, Unit.WORD, "By the sheets of spring and tube.")
    need = supplied("least tube inside", spring.least_tube_inside, Unit.LENGTH, spring.name)
    outside = supplied("tube outside diameter", tube.outside, Unit.LENGTH, tube.name)
    because = "It needs {0} inside the tube, more than the tube of {1} has."
    return derived("remark", judged.obstacle, Unit.WORD, because, need, outside)
