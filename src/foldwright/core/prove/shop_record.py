"""The shop learns: what the bench found on past shades moves what is expected of the next.

Rates are pooled by kind of spring, weights by class of cloth, frictions by cord and bracket.
From each shade only what its own bench said is taken, the expectation that went into it
taken out again, so that no belief is counted twice.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import exp, log, sqrt

import numpy as np

from foldwright.core.facts import shop_learning as s
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Reals, Span, span_of
from foldwright.core.prove.learning import Learned
from foldwright.core.prove.pooling import Found, Kinds, Pooled, pool
from foldwright.core.prove.true_shade import DEVIATIONS, TrialShades, panel_weight
from foldwright.core.weigh.load import PanelLoad

PIECES = Kinds(kind_spread=float(s.KIND_SPREAD.value), piece_spread=float(s.PIECE_SPREAD.value))
FRICTIONS = Kinds(
    kind_spread=float(s.FRICTION_KIND_SPREAD.value),
    piece_spread=float(s.FRICTION_PIECE_SPREAD.value),
)
LEAST_GAIN = 0.02  # a bench that narrows by less than this share has said nothing
FLOOR = 1e-6  # no friction is so small; its logarithm must be a number


@dataclass(frozen=True, kw_only=True, slots=True)
class Made:
    """What a shade was made of: names in the shop's list, and the class of its cloth."""

    spring: str
    batch: str = ""  # of the spring, as on its packet
    line: str = ""  # cord or tape
    bracket: str = ""
    cloth_class: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class ShopResult:
    """One shade after its bench: expected, found, and what the bench alone said."""

    made: Made
    expected_turns: Span
    found_turns: Span
    rate: Found | None = None
    weight: Found | None = None
    load_friction: Found | None = None
    constant_friction: Found | None = None

    @property
    def as_expected(self) -> bool:
        """Tell whether what was found lies within the range that was expected."""
        return self.expected_turns.low <= self.found_turns.likely <= self.expected_turns.high


def result_of(
    before: Learned, after: Learned, made: Made, expected_turns: Span | None = None
) -> ShopResult:
    """Keep of a shade what the shop can learn from it.

    Takes: what the sheets alone let expect of it, learned from nothing; what was learned at
    its bench, by that same case; what it was made of; the least turns that were planned, where
    the shop's record had moved them.

    Gives: the result, to be kept in the shop's record.

    Holds for: beliefs near normal as logarithms.

    Source: derived here: precisions subtract.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.learning import learn
    >>> from foldwright.core.prove.observing import SpringTorque
    >>> draws = qmc.Sobol(16, seed=1).random(1024)
    >>> seen = [SpringTorque(turns=15.0, torque_n_m=15 * 0.034348 * 1.08)]
    >>> result = result_of(learn(CASE, (), draws), learn(CASE, seen, draws), Made(spring="B"))
    >>> round(result.rate.value, 2), result.weight
    (0.08, None)
    """
    return ShopResult(
        made=made,
        expected_turns=expected_turns or before.span(before.shades.least_turns),
        found_turns=after.span(after.shades.least_turns),
        rate=_found(before, after, lambda shades: shades.trials.rate_n_m_turn),
        weight=_found(before, after, lambda shades: shades.panel_n),
        load_friction=_found(before, after, lambda shades: shades.trials.load_friction),
        constant_friction=_found(before, after, lambda shades: shades.trials.constant_friction_n_m),
    )


def _found(
    before: Learned, after: Learned, quantity: Callable[[TrialShades], Reals]
) -> Found | None:
    """Take the expectation out of what was learned; None where the bench said nothing."""
    expected, expected_spread = _logs(before, quantity(before.shades))
    learned, spread = _logs(after, quantity(after.shades))
    if not expected_spread or spread > (1 - LEAST_GAIN) * expected_spread:
        return None
    said = 1 / spread**2 - 1 / expected_spread**2
    value = (learned - expected) / spread**2 / said
    return Found(value=value, error=said**-0.5)


def _logs(learned: Learned, values: Reals) -> tuple[float, float]:
    logs = np.log(np.maximum(values, FLOOR))
    middle = float(learned.weights @ logs)
    return middle, sqrt(max(float(learned.weights @ np.square(logs - middle)), 0.0))


def expect(case: LiftCase, made: Made, record: Sequence[ShopResult]) -> LiftCase:
    """Give the case of a new shade as the shop's own record lets it be expected.

    Takes: the case by the sheets and house habits alone; what the shade is made of; the record.

    Gives: the case with its rate, cloth, and frictions moved and narrowed; untouched where
    nothing of its kind is on record.

    Holds for: records by the sheets that still hold; start anew where a sheet is changed.

    Source: derived here.

    >>> from foldwright.core.prove.example import CASE
    >>> stiff = ShopResult(
    ...     made=Made(spring="B"), expected_turns=Span.exact(10.0), found_turns=Span.exact(9.5),
    ...     rate=Found(value=0.08, error=0.015))
    >>> rate = expect(CASE, Made(spring="B"), [stiff] * 9).spring.rate_n_m_turn
    >>> 1.07 < rate.likely / 0.034348 < 1.09
    True
    """
    springs = pooled_rate(made.spring, record)
    cloths = _pooled(record, "weight", PIECES, lambda each: each.cloth_class == made.cloth_class)
    rubbed = [
        _pooled(record, name, FRICTIONS, lambda each: _rubs_alike(each, made))
        for name in ("load_friction", "constant_friction")
    ]
    moved = _with_rate(case, springs)
    return replace(
        moved,
        load=_with_cloth(moved, cloths),
        cloth_mass_spread=_cloth_spread(moved, cloths),
        load_friction=_moved(case.load_friction, rubbed[0]),
        constant_friction_n_m=_moved(case.constant_friction_n_m, rubbed[1]),
    )


def _rubs_alike(one: Made, other: Made) -> bool:
    return (one.line, one.bracket) == (other.line, other.bracket)


def pooled_rate(spring: str, record: Sequence[ShopResult]) -> Pooled:
    """Give what the record says of the rate of one kind of spring, by its sheet."""
    return _pooled(record, "rate", PIECES, lambda each: each.spring == spring)


def _pooled(
    record: Sequence[ShopResult], name: str, kinds: Kinds, alike: Callable[[Made], bool]
) -> Pooled:
    found = [getattr(each, name) for each in record if alike(each.made)]
    return pool([each for each in found if each is not None], kinds)


def _with_rate(case: LiftCase, pooled: Pooled) -> LiftCase:
    spring = case.spring
    if spring is None or spring.rate_n_m_turn is None or not pooled.count:
        return case
    likely = span_of(spring.rate_n_m_turn).likely * exp(pooled.middle)
    rate = Span.within(likely, DEVIATIONS * pooled.spread)
    return replace(case, spring=replace(spring, rate_n_m_turn=rate))


def _with_cloth(case: LiftCase, pooled: Pooled) -> PanelLoad:
    """Move the cloth's weight so that the panel as a whole weighs what was found."""
    if not pooled.count:
        return case.load
    cloth_n, rest_n = panel_weight(case.load)
    factor = (exp(pooled.middle) * (cloth_n + rest_n) - rest_n) / cloth_n
    return replace(case.load, cloth_n_m=case.load.cloth_n_m * factor)


def _cloth_spread(case: LiftCase, pooled: Pooled) -> float:
    return DEVIATIONS * pooled.spread if pooled.count else case.cloth_mass_spread


def _moved(friction: float | Span, pooled: Pooled) -> float | Span:
    """Move a friction, and give it the range of the kind and its pieces."""
    if not pooled.count:
        return friction
    likely = log(max(span_of(friction).likely, FLOOR)) + pooled.middle
    reach = DEVIATIONS * pooled.spread
    return Span(likely=exp(likely), low=exp(likely - reach), high=exp(likely + reach))
