"""From what was learned to what to turn: how many turns, which way, and how sure that is."""

from __future__ import annotations

import numpy as np

from foldwright.core.facts.proving import SURE_ENOUGH, SURE_TO_LEAVE
from foldwright.core.lift.span import Reals
from foldwright.core.prove.advice import Advice
from foldwright.core.prove.learning import Learned
from foldwright.core.rig.headrail import Headrail
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived

N = Figure[float]
W = Figure[str]

_OPPOSITE = {"clockwise": "counter-clockwise", "counter-clockwise": "clockwise"}


def advise(learned: Learned, turns: float, headrail: Headrail | None = None) -> Advice:
    """Say how many turns to wind in or let out, at which end, which way, and how sure it is.

    Takes: what was learned; the turns now in the spring, as counted at the up-stop; the
    headrail, whose spring end and winding give the direction, None where it is not known.

    Gives: the advice. Turns that already satisfy every limit surely enough are left alone;
    otherwise the fewest that do, or the likeliest where none do.

    Holds for: springs whose strength is known or not; unknown strength does not limit.

    Source: derived here.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.learning import learn
    >>> from foldwright.core.prove.observing import GuidedStall
    >>> seen = [GuidedStall(turns=8.0, raise_m=1.2826)]
    >>> advice = advise(learn(CASE, seen, qmc.Sobol(16, seed=1).random(4096)), 8.0)
    >>> 1.5 <= advice.change_turns.value <= 4.0, advice.chance.value > 0.9
    (True, True)
    """
    now = chosen("turns in the spring now", turns, Unit.TURN)
    least, most = _limits(learned)
    target, chance = _target(learned, turns)
    after = _after(target, least, most)
    change = derived(
        "change in turns",
        target - turns,
        Unit.TURN,
        "{0} are to be in the spring at the up-stop, and {1} are.",
        after,
        now,
    )
    return Advice(
        change_turns=change,
        turns=after,
        direction=_direction(target - turns, headrail),
        end=headrail.spring_side if headrail else None,
        chance=_chance(chance, after, least, most),
        chance_now=_chance(_chances(learned, np.array([turns]))[0], now, least, most),
        least_turns=least,
        most_turns=most,
        contradicted=learned.contradicted,
        **_known(learned),
    )


def _chances(learned: Learned, turns: Reals) -> Reals:
    """Give the chance that each number of turns satisfies every limit."""
    least, most = learned.shades.least_turns, learned.shades.most_turns
    return np.array([learned.chance((least <= n) & (n <= most)) for n in turns])


def _target(learned: Learned, turns: float) -> tuple[float, float]:
    """Choose the turns: those that are in if sure enough, else the fewest that are."""
    (now,) = _chances(learned, np.array([turns]))
    if now >= SURE_TO_LEAVE.value:
        return turns, float(now)
    step = learned.shades.case.winding_step_turns
    highest = learned.span(learned.shades.least_turns).high
    steps = int(np.ceil(1.5 * max(highest, step) / step)) + 1
    tried = np.linspace(step, steps * step, steps)
    chances = _chances(learned, tried)
    enough = min(float(SURE_ENOUGH.value), float(chances.max()))
    best = int(np.argmax(chances >= enough - 1e-12))
    return float(tried[best]), float(chances[best])


def _limits(learned: Learned) -> tuple[N, N]:
    shades = learned.shades
    least = _ranged(
        learned,
        shades.least_turns,
        "least turns",
        Unit.TURN,
        "With fewer the spring no longer carries the load at the top, by all that was noted.",
    )
    most = _ranged(
        learned,
        shades.most_turns,
        "most turns",
        Unit.TURN,
        "With more the spring is over-wound when lowered, the hand pulls too hard, or the braked"
        " shade arrives too fast.",
    )
    return least, most


def _ranged(learned: Learned, values: Reals, name: str, unit: Unit, because: str) -> N:
    span = learned.span(values)
    return derived(name, span.likely, unit, because, low=span.low, high=span.high)


def _after(turns: float, least: N, most: N) -> N:
    return derived(
        "turns afterwards",
        turns,
        Unit.TURN,
        "The fewest that surely lie between {0} and {1}; more would buy only speed and force.",
        least,
        most,
    )


def _chance(chance: float, turns: N, least: N, most: N) -> N:
    return derived(
        "chance of success",
        float(chance),
        Unit.SHARE,
        "The share of the trial shades that explain what was noted, and that {0} lift within"
        " every limit: at least {1}, at most {2}.",
        turns,
        least,
        most,
    )


def _direction(change: float, headrail: Headrail | None) -> W | None:
    if headrail is None or not change:
        return None
    winding = headrail.wind_direction
    turning = winding.value if change > 0 else _OPPOSITE[winding.value]
    word = "winds the spring" if change > 0 else "lets the spring down"
    return derived(
        "which way to turn",
        turning,
        Unit.WORD,
        f"Looking at the {{0}} end, the fixed shaft turned {turning} {word}. Where the maker's"
        " method turns the tube instead, it is the other way round.",
        headrail.spring_side,
    )


def _known(learned: Learned) -> dict[str, N]:
    trials, shades = learned.shades.felt, learned.shades
    told = {
        "rate": (trials.rate_n_m_turn, "rate of the springs", Unit.RATE),
        "load_raised": (trials.load_raised_n, "load fully raised", Unit.FORCE),
        "load_friction": (trials.load_friction, "friction with the load", Unit.SHARE),
        "constant_friction": (trials.constant_friction_n_m, "constant friction", Unit.TORQUE),
        "spring_hysteresis": (trials.spring_hysteresis, "hysteresis of the spring", Unit.SHARE),
        "lost_turns": (-shades.miscount_turns, "turns lost", Unit.TURN),
    }
    because = "As the trial shades have it that explain what was noted at the bench."
    return {
        field: _ranged(learned, values, name, unit, because)
        for field, (values, name, unit) in told.items()
    }
