"""A re-tension visit: from the bench's record and one observation years later to what to turn.

The shade is the one that was proved; only its spring has tired and its friction grown. The
record still says what the load is and how stiff the spring was, so one new observation is
enough to tell how much of the torque is left.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from foldwright.core.facts.shop_learning import TORQUE_LOST_AT_MOST, TORQUE_LOST_YEARLY
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Reals
from foldwright.core.prove.advice import Advice
from foldwright.core.prove.advising import advise
from foldwright.core.prove.figures import ranged, reckoned
from foldwright.core.prove.learning import learn
from foldwright.core.prove.observing import Observation, Reading
from foldwright.core.prove.trouble import Trouble
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.rig.headrail import Headrail
from foldwright.core.why.figure import Figure, Unit


@dataclass(frozen=True, kw_only=True, slots=True)
class WhenNew:
    """An observation of the record: it was made before the spring lost any torque."""

    noted: Observation

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give the numbers noted, beside what the shades gave when they were new."""
        return self.noted.readings(shades.when_new())

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give how likely it was for each shade when it was new."""
        return self.noted.log_likelihood(shades.when_new())


@dataclass(frozen=True, kw_only=True, slots=True)
class Visit:
    """What to turn at a visit, and what is left of the spring's torque."""

    advice: Advice
    torque_left: Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Since:
    """What is known at the door: the record of the bench, the turns in it, and the years."""

    record: tuple[Observation, ...]
    turns: float
    years: float


def revisit(
    case: LiftCase,
    since: Since,
    seen: Sequence[Observation],
    draws: Reals,
    headrail: Headrail | None = None,
) -> Visit:
    """Say what to turn at a re-tension visit.

    Takes: the case as it was planned; the record, the turns and the years since; what is
    noted now, one guided stall or one pair of scale readings at least; uniform numbers as for
    `learn`; the headrail for the direction.

    Gives: the advice for the shade as it is now, and what is left of its torque.

    Holds for: the cloth as it was; a washed or changed panel is weighed anew.

    Source: derived here; how fast springs tire is a house default.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.observing import GuidedStall
    >>> since = Since(record=(GuidedStall(turns=8.0, raise_m=1.28),), turns=11.0, years=6.0)
    >>> now = [GuidedStall(turns=11.0, raise_m=1.34)]
    >>> visit = revisit(CASE, since, now, qmc.Sobol(16, seed=1).random(1024))
    >>> visit.advice.change_turns.value > 0, visit.torque_left.value < 1
    (True, True)
    """
    lost = min(
        float(TORQUE_LOST_YEARLY.value) * max(since.years, 0.0), float(TORQUE_LOST_AT_MOST.value)
    )
    record = [WhenNew(noted=each) for each in since.record]
    learned = learn(case, [*record, *seen], draws, Trouble(pull=(1 - lost, 1.0)))
    years = reckoned("years since the bench", since.years, Unit.RATIO, "From the record's date.")
    return Visit(
        advice=advise(learned, since.turns, headrail),
        torque_left=ranged(
            "torque left",
            learned.span(learned.shades.ailing.pull),
            Unit.SHARE,
            "By the record and what was noted now, {0} years later; at most {1} are lost a year.",
            years,
            TORQUE_LOST_YEARLY,
        ),
    )
