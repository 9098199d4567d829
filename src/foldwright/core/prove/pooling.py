"""Pool what the bench found on pieces of one kind: shrunk towards the sheet, the less the more.

Plain normal conjugate steps. A kind's average differs from its sheet, a piece differs from
the average of its kind, and the bench reads each piece with its own error.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.stats import t as student

from foldwright.core.facts.shop_learning import BATCH_ALARM, FEWEST_IN_A_BATCH, SPREAD_WORTH


@dataclass(frozen=True, kw_only=True, slots=True)
class Found:
    """What the bench found on one piece: a logarithm of found by expected, and its error."""

    value: float
    error: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Kinds:
    """What is expected before any piece was seen, in logarithms."""

    kind_spread: float  # of averages of kinds
    piece_spread: float  # of pieces within a kind


@dataclass(frozen=True, kw_only=True, slots=True)
class Pooled:
    """What is now expected of the next piece of a kind, in logarithms."""

    middle: float
    error: float  # of the middle
    piece_spread: float
    trust: float  # share that the pieces, not the sheet, have in the middle
    count: int

    @property
    def spread(self) -> float:
        """Give the standard deviation of the next piece."""
        return float(np.hypot(self.error, self.piece_spread))


def pool(found: Sequence[Found], kinds: Kinds) -> Pooled:
    """Pool the pieces of one kind.

    Takes: what was found on each piece; what was expected before any was seen.

    Gives: what is expected of the next one; with no piece, what was expected before.

    Holds for: errors and spreads near normal as logarithms.

    Source: derived here, conjugate normal steps.

    >>> kinds = Kinds(kind_spread=0.06, piece_spread=0.03)
    >>> one = pool([Found(value=0.10, error=0.02)], kinds)
    >>> many = pool([Found(value=0.10, error=0.02)] * 20, kinds)
    >>> 0.05 < one.middle < many.middle < 0.10, one.trust < many.trust
    (True, True)
    """
    values, errors = (np.array([getattr(each, name) for each in found], dtype=np.float64)
                      for name in ("value", "error"))  # fmt: skip
    piece = _piece_spread(values, errors, kinds.piece_spread)
    sheet = 1 / kinds.kind_spread**2
    pieces = 1 / (piece**2 + errors**2)
    weight = sheet + float(pieces.sum())
    return Pooled(
        middle=float((pieces * values).sum()) / weight,
        error=weight**-0.5,
        piece_spread=piece,
        trust=float(pieces.sum()) / weight,
        count=len(found),
    )


def _piece_spread(values: np.ndarray, errors: np.ndarray, before: float) -> float:
    """Give the spread of pieces: the starting one, moved by what the pieces themselves show."""
    worth, count = int(SPREAD_WORTH.value), len(values)
    if count < 2:  # noqa: PLR2004 - one piece shows no spread
        return before
    shown = float(np.square(values - values.mean()).sum()) - float(np.square(errors).mean()) * (
        count - 1
    )
    return float(np.sqrt((worth * before**2 + max(shown, 0.0)) / (worth + count - 1)))


@dataclass(frozen=True, kw_only=True, slots=True)
class BatchTest:
    """Whether a batch differs from the pieces before it."""

    difference: float  # as a logarithm
    error: float
    chance: float  # of as great a difference between batches that are alike
    differs: bool


def judge_batch(batch: Sequence[Found], before: Sequence[Found], kinds: Kinds) -> BatchTest | None:
    """Test whether a batch differs from the pieces of its kind before it.

    Takes: what was found on the pieces of the batch, and on those before; what was expected.

    Gives: the test; None while the batch is too small to tell. It is called different where
    as great a difference comes by chance in fewer than one look of a thousand.

    Holds for: looks after each piece; ten looks at a sound batch raise at most one false alarm
    in a hundred.

    Source: derived here, Student's test with the starting spread counted as pieces.

    >>> kinds = Kinds(kind_spread=0.06, piece_spread=0.03)
    >>> alike = [Found(value=0.0, error=0.02)] * 6
    >>> judge_batch([Found(value=-0.15, error=0.02)] * 4, alike, kinds).differs
    True
    >>> judge_batch(alike, alike, kinds).differs
    False
    """
    if len(batch) < FEWEST_IN_A_BATCH.value:
        return None
    rest, apart = pool(before, kinds), [each.value for each in batch]
    spread = _within(batch, before, kinds)
    weights = [1 / (spread**2 + each.error**2) for each in batch]
    middle = float(np.average(apart, weights=weights))
    error = float(np.hypot(sum(weights) ** -0.5, rest.error))
    freedom = int(SPREAD_WORTH.value) + max(len(before) - 1, 0) + len(batch) - 1
    chance = 2 * float(student.sf(abs(middle - rest.middle) / error, freedom))
    return BatchTest(
        difference=middle - rest.middle,
        error=error,
        chance=chance,
        differs=chance < BATCH_ALARM.value,
    )


def _within(batch: Sequence[Found], before: Sequence[Found], kinds: Kinds) -> float:
    """Give the spread of pieces within batches, batch and the rest each about its own middle."""
    centred: list[Found] = []
    for group in (batch, before):
        middle = float(np.mean([each.value for each in group])) if group else 0.0
        centred += [Found(value=each.value - middle, error=each.error) for each in group]
    return pool(centred, kinds).piece_spread
