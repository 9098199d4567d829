"""Question what cannot be, set aside what proves nothing, show what contradicts side by side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Reals
from foldwright.core.prove.advice import Question
from foldwright.core.prove.doubting import contradictions, far_off
from foldwright.core.prove.impossible import impossible
from foldwright.core.prove.observing import Observation
from foldwright.core.prove.refusing import refused
from foldwright.core.prove.true_shade import TrialShades


def questions(
    case: LiftCase, observations: Sequence[Observation], draws: Reals
) -> tuple[Question, ...]:
    """Ask about everything noted that cannot be, proves nothing, or contradicts something else.

    Takes: the case; what was noted, oldest first; uniform numbers as for `learn`.

    Gives: one question for each observation that is doubtful by itself, then one for each two
    of the others that cannot both be right. Nothing noted is lost: see `taken`.

    Source: derived here.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.observing import GuidedStall, Weighed
    >>> noted = [GuidedStall(turns=400.0, raise_m=1.0), Weighed(mass_kg=0.0)]
    >>> asked = questions(CASE, noted, qmc.Sobol(16, seed=1).random(1024))
    >>> [(each.about, each.finding.id) for each in asked]
    [((0,), 'prove.turns-miscounted'), ((1,), 'prove.nothing')]
    """
    shades = TrialShades.drawn(case, draws)
    single = tuple(_single(shades, observations))
    doubted = {each.about[0] for each in single}
    sound = [place for place in range(len(observations)) if place not in doubted]
    pairs = contradictions(shades, [observations[place] for place in sound])
    return (
        *single,
        *(Question(about=(sound[one], sound[two]), finding=found) for one, two, found in pairs),
    )


def _single(shades: TrialShades, observations: Sequence[Observation]) -> Iterator[Question]:
    for place, observation in enumerate(observations):
        if finding := (
            impossible(shades, observation)
            or refused(shades, observation)
            or far_off(shades, observation)
        ):
            yield Question(about=(place,), finding=finding)


def taken(
    observations: Sequence[Observation],
    asked: Sequence[Question],
    confirmed: Sequence[int] = (),
) -> tuple[Observation, ...]:
    """Give the observations to learn from: all but those questioned and not confirmed.

    Takes: what was noted; the questions about it; the places of those that were questioned
    and that the person holds to. What proves nothing stays out even so, by itself.

    Gives: the observations in their order. Of two that contradict each other both stay.

    Source: derived here.

    >>> from foldwright.core.prove.observing import Weighed
    >>> taken([Weighed(mass_kg=1.5)], ())
    (Weighed(mass_kg=1.5),)
    """
    doubted = {each.about[0] for each in asked if len(each.about) == 1} - set(confirmed)
    return tuple(each for place, each in enumerate(observations) if place not in doubted)
