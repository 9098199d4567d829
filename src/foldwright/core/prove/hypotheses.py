"""Every way of explaining a shade at the bench: how often, its physics, and what shows with it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import log, pi, sqrt

from foldwright.core.facts import troubles as t
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Span, span_of
from foldwright.core.prove.advice import CauseName
from foldwright.core.prove.noting import BarLevel, Cycled
from foldwright.core.prove.observing import Observation
from foldwright.core.prove.trouble import SOUND, Trouble
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

Changing = Callable[[LiftCase], LiftCase]


def _as_planned(case: LiftCase) -> LiftCase:
    return case


def _weight_mistaken(case: LiftCase) -> LiftCase:
    share = float(t.WEIGHT_GROSS.value)
    return replace(case, cloth_mass_spread=share, bar_mass_spread=share)


def _other_spring(case: LiftCase) -> LiftCase:
    spring = case.spring
    if spring is None or spring.rate_n_m_turn is None:
        return case
    rate = Span.of_figure(t.RATE_GROSS).times(span_of(spring.rate_n_m_turn).likely)
    return replace(case, spring=replace(spring, rate_n_m_turn=rate))


@dataclass(frozen=True, kw_only=True, slots=True)
class Hypothesis:
    """One explanation: how often it is so, how the case differs then, and what is seen."""

    name: CauseName
    often: Figure[float] | None = None  # None: all that the others leave
    trouble: Trouble = SOUND
    changing: Changing = _as_planned
    level: Figure[Length] = t.LEVEL_USUAL
    jumps: Figure[float] = t.JUMPS_USUAL

    def noted_log(self, observations: Sequence[Observation]) -> float:
        """Give the logarithm of how likely the notes would be that say nothing about torque."""
        return sum(self._note_log(each) for each in observations)

    def _note_log(self, note: Observation) -> float:
        if isinstance(note, BarLevel):
            spread = self.level.value.in_metres
            return -((note.right_above_left_m / spread) ** 2) / 2 - log(spread * sqrt(2 * pi))
        if isinstance(note, Cycled):
            chance = float(self.jumps.value)
            return log(chance if note.cords_jumped else 1 - chance)
        return 0.0


def _up_to(figure: Figure[float]) -> tuple[float, float]:
    return 0.0, float(figure.value)


NOTHING = Hypothesis(name=CauseName.NOTHING)
TROUBLES = (
    Hypothesis(
        name=CauseName.MISCOUNTED,
        often=t.MISCOUNTED_OFTEN,
        trouble=Trouble(miscount_turns=float(t.MISCOUNT_GROSS.value)),
    ),
    Hypothesis(name=CauseName.WEIGHT_MISTAKEN, often=t.WEIGHT_OFTEN, changing=_weight_mistaken),
    Hypothesis(name=CauseName.OTHER_SPRING, often=t.OTHER_SPRING_OFTEN, changing=_other_spring),
    Hypothesis(
        name=CauseName.BAR_DRAGS,
        often=t.DRAGGING_OFTEN,
        trouble=Trouble(drag_n=_up_to(t.DRAG_GROSS)),
    ),
    Hypothesis(
        name=CauseName.RING_CAUGHT,
        often=t.CAUGHT_OFTEN,
        trouble=Trouble(caught_n=_up_to(t.CAUGHT_GROSS)),
        level=t.LEVEL_CAUGHT,
    ),
    Hypothesis(
        name=CauseName.CLIMBED,
        often=t.CLIMBED_OFTEN,
        trouble=Trouble(climbed=_up_to(t.CLIMBED_GROSS)),
        level=t.LEVEL_CLIMBED,
        jumps=t.JUMPS_CLIMBED,
    ),
    Hypothesis(
        name=CauseName.NOT_ENGAGED,
        often=t.UNENGAGED_OFTEN,
        trouble=Trouble(pull=_up_to(t.UNENGAGED_PULL)),
    ),
    Hypothesis(
        name=CauseName.WRONG_SIDE,
        often=t.WRONG_SIDE_OFTEN,
        trouble=Trouble(pull=(-1.0, -1.0)),
    ),
)


def all_hypotheses() -> tuple[tuple[Hypothesis, float], ...]:
    """Give every hypothesis with its chance before anything was seen."""
    often = [float(each.often.value) for each in TROUBLES if each.often]
    chances = [1 - sum(often), *often]
    return tuple(zip((NOTHING, *TROUBLES), chances, strict=True))
