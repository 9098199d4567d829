"""Why a symptom shows on this shade: the cause worked through with its own numbers."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from foldwright.core.lift.choices import Lock
from foldwright.core.lift.span import Reals, span_of
from foldwright.core.prove.advice import Explained, Symptom
from foldwright.core.prove.figures import ranged, reckoned
from foldwright.core.prove.learning import Learned
from foldwright.core.prove.letting_go import trial_shade
from foldwright.core.prove.rising import Folding, Rise, rise
from foldwright.core.why.figure import Figure, Unit

HEIGHTS = 25
SEEN = "What the trial shades have that explain what was noted."


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class _Shade:
    """What is known of the shade, and the turns in it now."""

    learned: Learned
    turns: float

    def figure(self, name: str, values: Reals, unit: Unit, because: str = SEEN) -> Figure[Any]:
        return ranged(name, self.learned.span(values), unit, because)

    @property
    def wound(self) -> Figure[Any]:
        return reckoned("turns in the spring", self.turns, Unit.TURN, "Counted at the up-stop.")

    @property
    def least(self) -> Figure[Any]:
        return self.figure("least turns", self.learned.shades.least_turns, Unit.TURN)

    def rise(self, turns: float) -> Rise:
        """Let the middle one of the trial shades go."""
        (middle,) = self.learned.spread(self.learned.shades.least_turns, 1)
        return rise(trial_shade(self.learned.shades, middle, turns), 0.0, Folding.HARSH)


def explain_symptom(symptom: Symptom, learned: Learned, turns: float) -> Explained:
    """Explain what is seen at the rig by its cause, worked through for this shade.

    Takes: what is seen; what was learned, from nothing at first; the turns in the spring now.

    Gives: a sentence with its numbers, and what mends it.

    Holds for: the cause that is usual for the symptom; what else may be wrong is a diagnosis.

    Source: derived here; common practice for what mends it.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.learning import learn
    >>> learned = learn(CASE, (), qmc.Sobol(16, seed=1).random(256))
    >>> explain_symptom(Symptom.STALLS, learned, 8.0).figures[1].name
    'height of the stall'
    """
    return _EXPLAINED[symptom](_Shade(learned=learned, turns=turns))


def _too_fast(shade: _Shade) -> Explained:
    now, fewest = shade.rise(shade.turns), shade.rise(shade.least.value)
    limit = shade.learned.shades.case.speed_limit_m_s
    figures = (
        shade.wound,
        _speed("speed at the stop", now),
        reckoned(
            "energy at the stop", now.arrival_energy_j, Unit.ENERGY, "Half of mass by speed²."
        ),
        reckoned("speed limit at the stop", limit, Unit.SPEED, "As the house has it."),
        shade.least,
        _speed("speed at the stop, fewest turns", fewest),
    )
    sentence = (
        "With {0} the shade, let go, arrives at {1} with {2}, where {3} is gentle; with the fewest"
        " turns that lift it, {4}, at {5}."
    )
    remedy = "Let turns out down to the fewest that surely lift it, or fit a stronger brake."
    if not shade.learned.shades.braked:
        remedy = (
            "The load is least at the bottom, where the spring is strongest, so without a brake no"
            " number of turns arrives gently: guide the bar by hand, or fit a speed brake."
        )
    return _explained(Symptom.RISES_TOO_FAST, sentence, figures, remedy)


def _speed(name: str, went: Rise) -> Figure[Any]:
    because = "The reckoned rise of the likeliest shade, from fully lowered."
    return reckoned(name, went.arrival_speed_m_s, Unit.SPEED, because)


def _sinks(shade: _Shade) -> Explained:
    shades = shade.learned.shades
    heights = np.linspace(0.0, shades.travel_m, HEIGHTS)
    spare = [shades.holding_torque(shade.turns, float(at)) for at in heights]
    worst = int(np.argmin([np.median(each) for each in spare]))
    at_m = float(heights[worst])
    held = spare[worst] / shades.arm_at(at_m) + shades.load_at(at_m)
    figures = (
        reckoned("height where it holds worst", at_m, Unit.LENGTH, "Of all heights reckoned."),
        shade.figure("load there", shades.load_at(at_m), Unit.FORCE),
        shade.figure("held by spring and friction there", held, Unit.FORCE),
        shade.figure("turns that are missing", _missing(shade, spare[worst]), Unit.TURN),
    )
    sentence = "At {0} the load is {1:range}; spring and friction together hold {2:range}: "
    if figures[3].value > 0:
        sentence += "{3:range} are missing."
        remedy = "Wind in what is missing; behind a one-way lock nothing else keeps it up."
    else:
        sentence += "by reckoning it should not sink with the turns that were counted."
        remedy = "Count the turns again and weigh the panel; then see what else may be wrong."
    if shades.case.lock is Lock.TWO_WAY:
        remedy = "A two-way lock should hold it at any number of turns: mend the lock."
    return _explained(Symptom.SINKS, sentence, figures, remedy)


def _missing(shade: _Shade, spare: Reals) -> Reals:
    trials = shade.learned.shades.trials
    return -spare / (trials.rate_n_m_turn * (1 + trials.spring_hysteresis))


def _stalls(shade: _Shade) -> Explained:
    shades = shade.learned.shades
    figures = (
        shade.wound,
        shade.figure("height of the stall", shades.stalls_at(shade.turns), Unit.LENGTH),
        shade.figure("load fully raised", shades.felt.load_raised_n, Unit.FORCE),
        shade.figure("least turns", shades.least_turns, Unit.TURN),
        shade.figure("turns that are missing", shades.least_turns - shade.turns, Unit.TURN),
    )
    sentence = (
        "Going up the load grows to {2:range} and the spring gives out: with {0} they are equal at"
        " a raise of {1:range}. All the way takes {3:range}, {4:range} more."
    )
    remedy = "Look for what rubs first; then wind in what is missing, a whole turn at a time."
    return _explained(Symptom.STALLS, sentence, figures, remedy)


def _will_not_release(shade: _Shade) -> Explained:
    shades = shade.learned.shades
    more = shades.case.release_turns
    pull = 2 * np.pi * more * shades.arm_at(0.0)
    down, _ = shades.hand_forces(shade.turns + more, 0.0)
    figures = (
        reckoned("turns of a release", more, Unit.TURN, "Release pull and one pitch of the lock."),
        shade.figure("further pull at the bar", pull, Unit.LENGTH),
        shade.figure("force it takes", down, Unit.FORCE),
    )
    sentence = (
        "To let go, the lock asks for {0} more: {1:range} of further pull at the bar, against"
        " {2:range}. With the cloth taut, or the bar on the sill, that pull is not there."
    )
    remedy = (
        "Set the lowest lock position higher by that pull, or leave as much more cord; no number of"
        " turns mends it."
    )
    return _explained(Symptom.WILL_NOT_RELEASE, sentence, figures, remedy)


def _crooked(shade: _Shade) -> Explained:
    sentence = (
        "A cord {0} thick that climbs on its own wraps winds up {1} more with each turn. From half"
        " way up there are {2:range} left: one climbed wrap hangs the bar {3:range} out of level"
        " at the stop."
    )
    remedy = (
        "Lower it fully, lay the wraps side by side, and look at the clip's offset; never by turns,"
        " which lift all columns alike."
    )
    return _explained(Symptom.HEM_CROOKED, sentence, _climbing(shade), remedy)


def _climbing(shade: _Shade) -> tuple[Figure[Any], ...]:
    shades = shade.learned.shades
    thick = span_of(shades.case.cord_diameter_m or 0.0).likely
    left = shades.winding.turns_to_go(shades.travel_m / 2, shades.travel_m)
    turns_left = np.broadcast_to(left, shades.cloth_scale.shape)
    return (
        reckoned("cord as wound", thick, Unit.LENGTH, "As on its sheet."),
        reckoned("gain for each turn", 2 * np.pi * thick, Unit.LENGTH, "A circle of that radius."),
        shade.figure("turns from half way up", turns_left, Unit.TURN),
        shade.figure("out of level at the stop", 2 * np.pi * thick * turns_left, Unit.LENGTH),
    )


def _jumps(shade: _Shade) -> Explained:
    shades = shade.learned.shades
    middle = shades.travel_m / 2
    figures = (
        *_climbing(shade)[:2],
        shade.figure("load half way up", shades.load_at(middle), Unit.FORCE),
    )
    sentence = (
        "A cord {0} thick that has climbed slips back beside its wraps with a jump: for each turn"
        " climbed its column drops {1} at once, under its part of {2:range}."
    )
    remedy = (
        "Guide the bar slowly and look along the tube for the wrap that climbs; a greater clip"
        " offset, a cord guide or a tape mends it."
    )
    return _explained(Symptom.CORD_JUMPS, sentence, figures, remedy)


def _explained(
    symptom: Symptom, sentence: str, figures: tuple[Figure[Any], ...], remedy: str
) -> Explained:
    return Explained(symptom=symptom, sentence=sentence, figures=figures, remedy=remedy)


_EXPLAINED: dict[Symptom, Callable[[_Shade], Explained]] = {
    Symptom.RISES_TOO_FAST: _too_fast,
    Symptom.SINKS: _sinks,
    Symptom.STALLS: _stalls,
    Symptom.WILL_NOT_RELEASE: _will_not_release,
    Symptom.HEM_CROOKED: _crooked,
    Symptom.CORD_JUMPS: _jumps,
}
