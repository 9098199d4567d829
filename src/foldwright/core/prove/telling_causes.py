"""Each cause in the bench's words, with what it would mean in numbers and how to tell it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.lift.span import Reals
from foldwright.core.prove.advice import CauseName
from foldwright.core.prove.figures import ranged, reckoned
from foldwright.core.prove.learning import Learned
from foldwright.core.why.figure import Figure, Unit

BENCH_TURNS = 15.0  # at which a spring is measured by itself in the test that is proposed
SO = "What the trial shades have that explain what was noted by this cause."
NOT_SO = "What the trial shades of the plan have, before anything was noted."


@dataclass(frozen=True, kw_only=True, slots=True)
class Tale:
    """A cause told: what it means, and the test that tells it from the others."""

    sentence: str
    test: str
    figures: tuple[Figure[Any], ...] = ()


def tales(name: CauseName, so: Learned, not_so: Learned) -> Tale:
    """Tell a cause by what is left possible with it, and what was planned."""
    return _TALES[name](so, not_so)


def _of(learned: Learned, name: str, values: Reals, unit: Unit, because: str = SO) -> Figure[Any]:
    return ranged(name, learned.span(values), unit, because)


def _nothing(_: Learned, __: Learned) -> Tale:
    return Tale(
        sentence="Spring, weight and friction are as sheet and plan allow.",
        test="Wind as advised, and let it rise guided: it must reach the stop.",
    )


def _miscounted(so: Learned, _: Learned) -> Tale:
    return Tale(
        sentence="The count of turns is off by {0:range}; below zero there are fewer in the spring"
        " than were counted.",
        test="Shade at the up-stop, crank kept on: let the spring back under control, hands clear,"
        " and count the turns until it is slack.",
        figures=(_of(so, "turns beyond the count", so.shades.miscount_turns, Unit.TURN),),
    )


def _weight(so: Learned, not_so: Learned) -> Tale:
    masses = [each.shades.panel_n / GRAVITY.value for each in (so, not_so)]
    return Tale(
        sentence="The made-up panel weighs {0:range}, and not {1:range} as planned.",
        test="Weigh the finished panel with its bar and rods: {0:range} would prove it,"
        " {1:range} would clear it.",
        figures=(
            _of(so, "mass of the panel, by this cause", masses[0], Unit.MASS),
            _of(not_so, "mass of the panel, as planned", masses[1], Unit.MASS, NOT_SO),
        ),
    )


def _other_spring(so: Learned, not_so: Learned) -> Tale:
    rates = [each.shades.trials.rate_n_m_turn for each in (so, not_so)]
    turns = reckoned("turns on the bench", BENCH_TURNS, Unit.TURN, "A middling number of turns.")
    torques = [BENCH_TURNS * rate for rate in rates]
    return Tale(
        sentence="The springs give {0:range}, and not {1:range} as on the sheet.",
        test="Measure the spring by itself, the mean of winding and letting back: at {2}"
        " {3:range} would prove it, {4:range} would clear it. Eye protection, hands clear.",
        figures=(
            _of(so, "rate of the springs, by this cause", rates[0], Unit.RATE),
            _of(not_so, "rate of the springs, by the sheet", rates[1], Unit.RATE, NOT_SO),
            turns,
            _of(so, "torque, by this cause", torques[0], Unit.TORQUE),
            _of(not_so, "torque, by the sheet", torques[1], Unit.TORQUE, NOT_SO),
        ),
    )


def _drags(so: Learned, not_so: Learned) -> Tale:
    halves = [_half_difference(each) for each in (so, not_so)]
    return Tale(
        sentence="The bar drags along something with {0:range} all the way.",
        test="Half way up, read the scale drawn slowly down and let slowly up: half the difference"
        " is {1:range} if it drags, {2:range} if not. Then hold the bar clear of reveal and"
        " moulding, and read again.",
        figures=(
            _of(so, "drag of the bar", so.shades.ailing.drag_n, Unit.FORCE),
            _of(so, "half the difference, dragging", halves[0], Unit.FORCE),
            _of(not_so, "half the difference, free", halves[1], Unit.FORCE, NOT_SO),
        ),
    )


def _half_difference(learned: Learned) -> Reals:
    shades = learned.shades
    down, up = shades.hand_forces(float(np.median(shades.least_turns)), shades.travel_m / 2)
    return np.asarray((down - up) / 2, dtype=np.float64)


def _caught(so: Learned, not_so: Learned) -> Tale:
    ailing, shades = so.shades.ailing, not_so.shades
    turns = float(np.median(shades.least_turns)) - 2
    moved = shades.stalls_at(turns + 1) - shades.stalls_at(turns)
    return Tale(
        sentence="From a raise of {0:range} on something holds the shade back with {1:range}.",
        test="Wind one turn more and let it rise guided: what is caught stops it at the same"
        " height; a balance of spring and load would move up by {2:range}. Lift the bar by hand"
        " there, and look along each column.",
        figures=(
            _of(so, "height where it is held", ailing.from_m, Unit.LENGTH),
            _of(so, "hold", ailing.caught_n, Unit.FORCE),
            _of(not_so, "rise of the balance with one turn", moved, Unit.LENGTH, NOT_SO),
        ),
    )


def _climbed(so: Learned, _: Learned) -> Tale:
    diameter = so.shades.case.cord_diameter_m
    thick = diameter if isinstance(diameter, float) else diameter.likely if diameter else 0.0
    gain = reckoned(
        "rise for each climbed turn",
        2 * np.pi * thick,
        Unit.LENGTH,
        "A wrap on a wrap winds one cord thickness further out.",
    )
    return Tale(
        sentence="From a raise of {0:range} on wraps climb on each other: their column rises {1}"
        " further with each turn, the hem goes crooked, and the load counts {2:range} more.",
        test="Look along the tube with a lamp while it goes up, guided: every wrap must lie beside"
        " the last. Measure the bar level at four heights.",
        figures=(
            _of(so, "height where it climbs", so.shades.ailing.from_m, Unit.LENGTH),
            gain,
            _of(so, "load on a longer arm", so.shades.ailing.climbed, Unit.SHARE),
        ),
    )


def _not_engaged(so: Learned, not_so: Learned) -> Tale:
    one_turn = not_so.shades.trials.rate_n_m_turn / not_so.shades.arm_at(0.0)
    return Tale(
        sentence="Only {0:range} of the spring's torque reaches the tube.",
        test="Shade lowered, crank kept on: wind one turn. An engaged spring pulls the bar up by"
        " {1:range} more; if nothing changes, its end is not in its seat. Let it back under"
        " control before anything is opened.",
        figures=(
            _of(so, "share of the torque that arrives", so.shades.ailing.pull, Unit.SHARE),
            _of(not_so, "pull for one turn", one_turn, Unit.FORCE, NOT_SO),
        ),
    )


def _wrong_side(_: Learned, not_so: Learned) -> Tale:
    one_turn = not_so.shades.trials.rate_n_m_turn / not_so.shades.arm_at(0.0)
    return Tale(
        sentence="The spring pulls the shade down instead of up: wound the wrong way, or put in at"
        " the wrong end.",
        test="Crank kept on, wind one turn further: a spring on the right side lifts with"
        " {0:range} more, this one pulls down harder. Let it back under control, then look which"
        " way the tube turns while the shade rises.",
        figures=(_of(not_so, "pull for one turn", one_turn, Unit.FORCE, NOT_SO),),
    )


_TALES: dict[CauseName, Callable[[Learned, Learned], Tale]] = {
    CauseName.NOTHING: _nothing,
    CauseName.MISCOUNTED: _miscounted,
    CauseName.WEIGHT_MISTAKEN: _weight,
    CauseName.OTHER_SPRING: _other_spring,
    CauseName.BAR_DRAGS: _drags,
    CauseName.RING_CAUGHT: _caught,
    CauseName.CLIMBED: _climbed,
    CauseName.NOT_ENGAGED: _not_engaged,
    CauseName.WRONG_SIDE: _wrong_side,
}
