"""What is wrong with the cords behind a shade, and what would mend it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from foldwright.core.facts.markets import Market, counts_to_the_tube, row_spacing_cap
from foldwright.core.lift.choices import LiftKind
from foldwright.core.safety.canada import CHILD_PULL
from foldwright.core.safety.choices import CordGuard
from foldwright.core.safety.drafting import draft
from foldwright.core.safety.inner_cord import longest_stretch
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import InnerCord, L, RuleLine
from foldwright.core.safety.reworking import lay_out_again
from foldwright.core.safety.rule import Measure, Subject
from foldwright.core.safety.rules import RuleVerdict
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

MOST_ROWS_MORE = 8
GUARDS = {
    CordGuard.SHROUD: "Sheathe the cord in a shroud from ring to ring and up to the headrail,"
    " fitted in the shop.",
    CordGuard.OUT_OF_REACH: "Run the cord in a pocket sewn into the lining, out of reach in every"
    " position.",
    CordGuard.HELD: "Hold the cord at every ring, by a holder or a close ladder tape that lets it"
    " run when the shade is raised.",
    CordGuard.BREAKAWAY: "Fit a breakaway to every cord.",
}


def draft_cord_checks(
    order: SafetyOrder, inner: InnerCord, lines: tuple[RuleLine, ...]
) -> Iterator[Draft[SafetyOrder]]:
    """Draft what is wrong with the cords behind a shade.

    Takes: the order; its freest cord; its lines.

    Gives: drafts, of cord too long at rest and of cord that a pull makes too long.

    Source: sor-2019-97, ss. 6 and 7; uk-inner-cord-page; derived here for what is drawn in.
    """
    if not is_covered(order):
        yield from _too_long_at_rest(order, inner, lines)
        yield from _drawn_out(order, inner)


def is_covered(order: SafetyOrder) -> bool:
    """Tell whether nothing is left to say of cords: out of reach, or parting where that is enough.

    A cord that has parted still hangs down with a free end, which only Europe is known to allow.
    """
    only_europe = set(order.markets) == {Market.EUROPE_AND_UK}
    parts = order.safety.cord_guard is CordGuard.BREAKAWAY and only_europe
    return order.is_guarded or parts


def _too_long_at_rest(
    order: SafetyOrder, inner: InnerCord, lines: tuple[RuleLine, ...]
) -> Iterator[Draft[SafetyOrder]]:
    cap = row_spacing_cap(order.markets)
    found = _capped(order, inner.stretch, cap)
    if found.value > cap.value:
        unlawful = any(_is_broken_span(line) for line in lines)
        yield draft(
            Severity.STOP if unlawful else Severity.ASK,
            "cord-too-long",
            "Behind the shade {0} of cord lies open between two contact points; the strictest"
            " market sold into allows {1}." + _still_corded(order),
            found,
            cap,
            ways=_ways_at_rest(order),
            stage=Stage.ORDER,
            source=cap.source,
        )


def _capped(order: SafetyOrder, stretch: L, cap: L) -> L:
    """Take the cord that a cap speaks of: not that up to the tube where it speaks of rings."""
    return stretch if counts_to_the_tube(cap) else order.layout.rows.spacing


def _is_broken_span(line: RuleLine) -> bool:
    rule = line.rule
    about_span = rule.subject is Subject.INNER_CORD and rule.measure is Measure.SPAN
    return about_span and line.verdict is RuleVerdict.BREAKS


def _still_corded(order: SafetyOrder) -> str:
    if order.lift.kind in {LiftKind.SPRING, LiftKind.MOTOR}:
        return " A cordless lift does not take these cords away."
    return ""


def _drawn_out(order: SafetyOrder, inner: InnerCord) -> Iterator[Draft[SafetyOrder]]:
    cap = row_spacing_cap(order.markets)
    held = order.safety.cord_guard is CordGuard.HELD
    if inner.span is None or held or inner.span.value <= cap.value:
        return
    yield draft(
        Severity.ASK,
        "cord-drawn-out",
        "Spacing alone proves nothing: by reckoning a pull of {2} makes it {0} of cord between two"
        " contact points, where {1} is allowed." + _still_corded(order),
        inner.span,
        cap,
        CHILD_PULL,
        ways=(
            *_guarded(order),
            by_hand("Or pull at every column of the finished shade, and show that it holds."),
        ),
        source=CHILD_PULL.source,
    )


def _guarded(order: SafetyOrder) -> Iterator[Way[SafetyOrder]]:
    for guard, sentence in GUARDS.items():
        yield by_change(order, order.system, sentence, safety__cord_guard=guard)


def _ways_at_rest(order: SafetyOrder) -> Iterator[Way[SafetyOrder]]:
    yield from _more_rows(order)
    yield from _guarded(order)


def _more_rows(order: SafetyOrder) -> Iterator[Way[SafetyOrder]]:
    """Take the fewest rows more that bring every stretch within the cap."""
    count, cap = order.layout.rows.count.value, row_spacing_cap(order.markets)
    for rows in range(count + 1, count + 1 + MOST_ROWS_MORE):
        changed = replace(order, design=replace(order.design, row_count=rows))
        layout = lay_out_again(changed).result
        if layout and _keeps(replace(changed, layout=layout), cap):
            figures = (chosen("ring rows", rows, Unit.COUNT), layout.rows.spacing)
            sentence = "Use {0} rows at {1}."
            yield by_change(order, order.system, sentence, *figures, design__row_count=rows)
            return


def _keeps(order: SafetyOrder, cap: L) -> bool:
    return _capped(order, longest_stretch(order), cap).value <= cap.value
