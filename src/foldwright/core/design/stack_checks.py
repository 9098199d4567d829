"""What the raised shade covers or stands out of, and what would mend it."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.layout import RowPlan, Stack
from foldwright.core.design.order import Order, draft
from foldwright.core.design.stacking import plan_stack
from foldwright.core.design.style import Style
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]

MORE_ROWS_TRIED = 6


def draft_stack_checks(
    order: Order, style: Style, rows: RowPlan, stack: Stack
) -> Iterator[Draft[Order]]:
    """Draft what the raised shade covers or stands out of.

    Takes: the order; its style, rows and stack.

    Gives: drafts of findings.

    Source: common practice; derived here.

    >>> from foldwright.core.design.example import ORDER
    >>> from foldwright.core.design.styles import row_count, style_of
    >>> style = style_of(ORDER.design.style)
    >>> rows = style.rows(ORDER, row_count(ORDER))
    >>> tuple(draft_stack_checks(ORDER, style, rows, plan_stack(ORDER, style, rows)))
    ()
    """
    yield from _glass(order, style, rows, stack)
    yield from _reveal(order, stack)


def _glass(order: Order, style: Style, rows: RowPlan, stack: Stack) -> Iterator[Draft[Order]]:
    covered, typed = stack.glass_covered, order.design.stack_allowed_on_glass
    if covered is None or covered.value <= (typed or ZERO):
        return
    if typed is None:
        yield draft(
            Severity.NOTE,
            "stack-on-glass",
            "The raised shade keeps {0} of the glass covered. Say so in the quote.",
            covered,
            ways=_off_all_glass(order, covered),
        )
        return
    excess = derived(
        "glass covered too much",
        covered.value - typed,
        Unit.LENGTH,
        "{0} covered less {1} allowed.",
        covered,
        chosen("stack allowed on the glass", typed, Unit.LENGTH),
    )
    yield draft(
        Severity.STOP,
        "stack-over-allowed",
        "The raised shade keeps {0} of the glass covered; the client allows {1}.",
        covered,
        excess.inputs[1],
        ways=_off_the_glass(order, style, rows, excess),
    )


def _off_all_glass(order: Order, covered: L) -> Iterator[Way[Order]]:
    yield _higher(order, covered.value, covered)


def _off_the_glass(order: Order, style: Style, rows: RowPlan, excess: L) -> Iterator[Way[Order]]:
    yield from _more_rows(order, style, rows)
    yield from _shorter_skirt(order, rows, excess)
    yield _higher(order, excess.value, excess)


def _more_rows(order: Order, style: Style, rows: RowPlan) -> Iterator[Way[Order]]:
    """Take the fewest more rows whose shallower folds keep off the glass."""
    allowed = order.design.stack_allowed_on_glass or ZERO
    for more in range(1, MORE_ROWS_TRIED + 1):
        count = chosen("number of rows", rows.count.value + more, Unit.COUNT)
        tried = style.rows(order, count)
        covered = plan_stack(order, style, tried).glass_covered
        if covered is not None and covered.value <= allowed:
            sentence = "Use {0} rows at {1}, which cover {2}."
            yield by_change(
                order,
                order.system,
                sentence,
                count,
                tried.spacing,
                covered,
                design__row_count=count.value,
            )
            return


def _shorter_skirt(order: Order, rows: RowPlan, excess: L) -> Iterator[Way[Order]]:
    """Shorten the skirt by what is too much, and by what the deeper folds take back."""
    share = 2 * rows.count.value
    shorter = rows.skirt.value - excess.value * (share + 1) / share
    skirt = order.marked(shorter, Rounding.MUST_FIT)
    if skirt >= ZERO:
        figure = derived(
            "skirt",
            skirt,
            Unit.LENGTH,
            "The skirt {0} less {1}, and less what deeper folds would take back.",
            rows.skirt,
            excess,
            rounding=Rounding.MUST_FIT,
        )
        yield by_change(order, order.system, "Take a skirt of {0}.", figure, design__skirt=skirt)


def _higher(order: Order, excess: Length, figure: L) -> Way[Order]:
    higher = derived(
        "distance higher",
        order.marked(excess, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "{0}, rounded up to a mark.",
        figure,
        rounding=Rounding.CUT_OVERSIZE,
    )
    return by_hand("Mount it {0} higher, outside the reveal.", higher)


def _reveal(order: Order, stack: Stack) -> Iterator[Draft[Order]]:
    """Find a headrail that stands out of its reveal, alone or with the stack before it."""
    depth, bracket = order.size.clear_depth, order.chosen.bracket
    if depth is None or bracket is None:
        return
    rail = supplied("headrail depth", bracket.depth, Unit.LENGTH, bracket.name)
    needed = derived(
        "depth of headrail and stack",
        rail.value + stack.depth.value,
        Unit.LENGTH,
        "The headrail {0} with the stack {1} before it.",
        rail,
        stack.depth,
    )
    if rail.value > depth.value:
        yield _stands_out(Severity.STOP, "headrail-stands-out", "headrail", depth, rail)
    elif needed.value > depth.value:
        yield _stands_out(Severity.NOTE, "stack-stands-out", "raised shade", depth, needed)


def _stands_out(severity: Severity, name: str, word: str, depth: L, needed: L) -> Draft[Order]:
    return draft(
        severity,
        name,
        f"The {word} is {{0}} deep and the reveal {{1}}: it stands out of the wall.",
        needed,
        depth,
        ways=(by_hand("Mount it outside, take a shallower headrail, or show it to the client."),),
        stage=Stage.MEASURE,
    )
