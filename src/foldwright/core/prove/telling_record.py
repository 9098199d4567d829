"""The shop's record told: expected against found, and a warning where a batch differs."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import exp

from foldwright.core.facts.shop_learning import BATCH_ALARM
from foldwright.core.lift.span import Span
from foldwright.core.prove.figures import ranged, reckoned
from foldwright.core.prove.pooling import BatchTest, Found, Pooled, judge_batch
from foldwright.core.prove.shop_record import PIECES, ShopResult, pooled_rate
from foldwright.core.prove.true_shade import DEVIATIONS
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage

N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Compared:
    """One shade of the record: the least turns as they were expected, and as they were found."""

    result: ShopResult
    expected: N
    found: N


@dataclass(frozen=True, kw_only=True, slots=True)
class KindTold:
    """What the record says of one kind of spring."""

    spring: str
    rate_by_sheet: N  # found rate by the sheet's: 1 where they agree
    trust: N  # share that the shop's own pieces have in it
    pieces: int


def compare(result: ShopResult) -> Compared:
    """Set what was expected of a shade beside what was found.

    Takes: one result of the shop's record.

    Gives: the least turns both ways, with their ranges.

    Source: derived here.

    >>> from foldwright.core.prove.shop_record import Made
    >>> ten = Span(likely=10.0, low=8.5, high=12.0)
    >>> told = compare(ShopResult(made=Made(spring="B"), expected_turns=ten, found_turns=ten))
    >>> told.expected.value, told.found.high
    (10.0, 12.0)
    """
    expected = "What sheets, habits and record let expect before the bench."
    found = "What was learned from all that was noted at the bench."
    return Compared(
        result=result,
        expected=ranged("least turns expected", result.expected_turns, Unit.TURN, expected),
        found=ranged("least turns found", result.found_turns, Unit.TURN, found),
    )


def share_as_expected(record: Sequence[ShopResult]) -> N:
    """Give the share of shades found within the range that was expected; nine in ten is honest.

    Takes: the shop's record, of at least one shade.

    Gives: a share.

    Source: derived here.

    >>> from foldwright.core.prove.shop_record import Made
    >>> ten = Span(likely=10.0, low=8.5, high=12.0)
    >>> share_as_expected(
    ...     [ShopResult(made=Made(spring="B"), expected_turns=ten, found_turns=ten)]).value
    1.0
    """
    share = sum(result.as_expected for result in record) / max(len(record), 1)
    shades = reckoned("shades on record", float(len(record)), Unit.COUNT, "As kept by the shop.")
    because = "Of {0}, those whose least turns were found within the range expected."
    return reckoned("found as expected", share, Unit.SHARE, because, shades)


def tell_kind(spring: str, record: Sequence[ShopResult]) -> KindTold:
    """Tell what the record says of one kind of spring.

    Takes: the spring's name in the shop's list; the record.

    Gives: its rate by the sheet, with range, and how much of that rests on the shop's pieces.

    Source: derived here.

    >>> tell_kind("B", ()).rate_by_sheet.value
    1.0
    """
    pooled = pooled_rate(spring, record)
    return KindTold(
        spring=spring,
        rate_by_sheet=_by_sheet(pooled),
        trust=reckoned(
            "share of the shop's own pieces",
            pooled.trust,
            Unit.SHARE,
            "The more pieces on record and the alike they are, the less the sheet counts.",
        ),
        pieces=pooled.count,
    )


def _by_sheet(pooled: Pooled) -> N:
    reach = DEVIATIONS * pooled.spread
    low, high = exp(pooled.middle - reach), exp(pooled.middle + reach)
    because = "The next piece's rate by that of its sheet, as the record lets it be expected."
    span = Span(likely=exp(pooled.middle), low=low, high=high)
    return ranged("rate by the sheet", span, Unit.RATIO, because)


def batch_warnings(record: Sequence[ShopResult], spring: str, batch: str) -> tuple[Finding, ...]:
    """Warn where a batch of springs differs from those of its kind before it.

    Takes: the shop's record; the spring's name; the batch, as on its packet.

    Gives: a finding, or nothing. A sound batch is warned of in one look of a thousand.

    Source: derived here.

    >>> batch_warnings((), "B", "07")
    ()
    """
    kind = [each for each in record if each.made.spring == spring]
    inside = _rates(each for each in kind if each.made.batch == batch)
    before = _rates(each for each in kind if each.made.batch != batch)
    if not before:
        return ()
    test = judge_batch(inside, before, PIECES)
    return (_differs(test, batch, len(inside)),) if test and test.differs else ()


def _rates(results: Iterable[ShopResult]) -> list[Found]:
    return [each.rate for each in results if each.rate is not None]


def _differs(test: BatchTest, batch: str, count: int) -> Finding:
    reach = DEVIATIONS * test.error
    middle, low, high = (abs(exp(test.difference + by) - 1) for by in (0.0, -reach, reach))
    way = "stiffer" if test.difference > 0 else "softer"
    span = Span(likely=middle, low=min(low, high), high=max(low, high))
    pieces = reckoned("springs of the batch", float(count), Unit.COUNT, "With a rate on record.")
    figures = (
        ranged("difference of the batch", span, Unit.SHARE, "Beside all before it.", pieces),
        pieces,
        reckoned("chance of it in a sound batch", test.chance, Unit.SHARE, "Student's test."),
        BATCH_ALARM,
    )
    return Finding(
        id="prove.batch-differs",
        severity=Severity.ASK,
        stage=Stage.BENCH,
        sentence=f"The springs of batch “{batch}” are {{0:range}} {way} than those of their kind"
        " before, by {1} of them; in a sound batch as much comes in {2} of looks, and below {3} it"
        " is called different.",
        figures=figures,
        remedies=(
            Remedy(sentence="Measure one more spring of the batch with bar and weight."),
            Remedy(sentence="Keep the batch as a spring of its own in the shop's list."),
        ),
    )
