"""What may be wrong, the likeliest first: rival explanations weighed by what each foretold.

No table of symptoms. Each explanation is a shade of its own with its own physics; what was
noted is worked out for each, and the one that foretold it best gains on the others. An
explanation that can account for anything foretells little and pays for it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Reals
from foldwright.core.prove.advice import Cause, CauseName, Diagnosis
from foldwright.core.prove.hypotheses import Hypothesis, all_hypotheses
from foldwright.core.prove.learning import Learned, learn
from foldwright.core.prove.observing import Observation
from foldwright.core.prove.telling_causes import Tale, tales
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

DRAWS_EACH = 1024  # for each explanation; chances need fewer than ranges


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Rival:
    """One explanation, with what it leaves possible and how well it foretold what was seen."""

    hypothesis: Hypothesis
    learned: Learned
    log: float


def diagnose(case: LiftCase, observations: Sequence[Observation], draws: Reals) -> Diagnosis:
    """Explain what was noted, the likeliest cause first.

    Takes: the case as planned; what was noted, sound or not; uniform numbers as for `learn`.

    Gives: every cause with its chance, what it would mean in numbers, and the test that tells
    it from the others.

    Holds for: one cause at a time.

    Source: derived here; how often each trouble comes is a house default.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.observing import FullRise, Weighed
    >>> seen = [FullRise(turns=12.0, rose=False), Weighed(mass_kg=2.4)]
    >>> diagnose(CASE, seen, qmc.Sobol(16, seed=1).random(1024)).causes[0].name.value
    'weight mistaken'
    """
    rivals = [
        _rival(hypothesis, chance, case, observations, draws[:DRAWS_EACH])
        for hypothesis, chance in all_hypotheses()
    ]
    logs = np.array([rival.log for rival in rivals])
    chances = np.exp(logs - logs.max()) / np.exp(logs - logs.max()).sum()
    ranked = sorted(zip(chances.tolist(), rivals, strict=True), key=lambda each: -each[0])
    planned = learn(case, (), draws[:DRAWS_EACH])
    causes = tuple(_cause(chance, rival, planned) for chance, rival in ranked)
    return Diagnosis(causes=causes, contradicted=causes[0].name is not CauseName.NOTHING)


def _rival(
    hypothesis: Hypothesis,
    chance: float,
    case: LiftCase,
    observations: Sequence[Observation],
    draws: Reals,
) -> Rival:
    learned = learn(hypothesis.changing(case), observations, draws, hypothesis.trouble)
    log = float(np.log(chance)) + learned.evidence + hypothesis.noted_log(observations)
    return Rival(hypothesis=hypothesis, learned=learned, log=log)


def _cause(chance: float, rival: Rival, planned: Learned) -> Cause:
    tale: Tale = tales(rival.hypothesis.name, rival.learned, planned)
    return Cause(
        name=rival.hypothesis.name,
        chance=_chance(chance, rival.hypothesis),
        sentence=tale.sentence,
        figures=tale.figures,
        test=tale.test,
    )


def _chance(chance: float, hypothesis: Hypothesis) -> Figure[float]:
    because = "How well it foretold what was noted, beside the other causes; before that {0}."
    inputs = (hypothesis.often,) if hypothesis.often else ()
    if not inputs:
        because = "How well a sound shade foretold what was noted, beside all that may be wrong."
    return derived("chance of this cause", chance, Unit.SHARE, because, *inputs)
