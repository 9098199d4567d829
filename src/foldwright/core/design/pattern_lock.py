"""Rows and pattern locked together: every so many folds show the same part of the print."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor, gcd

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.flat import span
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order, draft, head_allowance
from foldwright.core.design.rows import exact_share
from foldwright.core.design.style import Style
from foldwright.core.facts.layout_taste import ALIKE_AFTER, LEAST_FULL_LOOP, LOCK_DRIFT
from foldwright.core.facts.panel_limits import LOOP_LIMIT
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]
N = Figure[float]

LOCKED_BY_SPACING = frozenset({StyleName.FLAT, StyleName.RELAXED})
PATTERN_DIARY = Source(id="hobbled-pattern-diary", clause="June 2017")
FULLNESS_PLACES = 4  # a loop set by so many places runs off by less than a thread
MORE_ROWS_TRIED = 12
SETTLING = 20  # each turn leaves less than a tenth of what the one before was off


@dataclass(frozen=True, kw_only=True, slots=True)
class Lock:
    """A pattern whose repeat goes into the cloth of the folds: every so many are alike."""

    alike_after: int  # folds
    repeats: int  # of the pattern in that many folds


def lock_of(order: Order, rows: RowPlan) -> Lock | None:
    """Tell whether the folds of a shade show its pattern by a rule.

    Takes: the order; its rows.

    Gives: after how many folds the print comes back, the fewest first; None for cloth without
    a repeat, for rows that differ or are tied, and where the print runs off over the drop.

    Holds for: a fold that takes as much cloth as its row spacing and fullness say.

    Source: derived here; common practice for the use of it.

    >>> from foldwright.core.design.example import ORDER
    >>> from foldwright.core.rig.example import LAYOUT
    >>> lock_of(ORDER, LAYOUT.rows) is None  # plain cloth
    True
    """
    repeat = order.chosen.face.vertical_repeat if order.chosen.face else None
    if repeat is None or rows.spacings or rows.ridges or rows.tied_rows.value:
        return None
    fold = rows.spacing.value.nanometres * exact_share(rows.fullness)
    locks = (_alike_after(folds, fold, repeat) for folds in range(1, ALIKE_AFTER.value + 1))
    drift = Fraction(LOCK_DRIFT.value.nanometres, rows.count.value)
    return next((lock for lock, off in locks if lock.repeats and off <= drift), None)


def locked_at(order: Order, spacing: Fraction) -> Choices | None:
    """Type the rows that lie a spacing apart, and leave what is over of the drop to the head.

    Takes: the order of a shade that is flat when it is down; the spacing in nanometres.

    Gives: the design, with as many rows as fit or as are typed; None where they do not fit.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> locked_at(ORDER, Fraction(Length.mm(150).nanometres)).row_count
    8
    """
    room = span(order).nanometres
    count = order.design.row_count or floor(room / spacing - Fraction(1, 2))
    left = room - (count + Fraction(1, 2)) * spacing
    if count < 1 or not 0 <= left < spacing:
        return None
    head = order.marked(head_allowance(order).value + Length(floor(left)), Rounding.CUT_OVERSIZE)
    return replace(order.design, row_count=count, head_allowance=head)


def fullnesses_alike(
    spacing: Fraction, repeat: Length, folds: int, most: Fraction
) -> Iterator[float]:
    """Give each fullness with which whole repeats go into so many loops.

    Takes: the row spacing in nanometres; the repeat; the number of loops after which the
    print is to come back, and not before; the most fullness.

    Gives: fullnesses, the least first; those with which loops hang flat are left out.

    Source: hobbled-pattern-diary, June 2017.

    >>> list(fullnesses_alike(Fraction(7), Length(17), 3, Fraction(2)))
    [1.619]
    """
    part = Fraction(repeat.nanometres, folds)
    for parts in range(1, floor(spacing * most / part) + 1):
        full = round(float(part * parts / spacing), FULLNESS_PLACES)
        if gcd(parts, folds) == 1 and full >= LEAST_FULL_LOOP.value:
            yield full


def locked_fullness(order: Order, style: Style, count: int, fold: Length) -> float:
    """Find the fullness with which one fold takes so much cloth.

    The lowest row may lie as far up as its loop hangs down, so the spacing follows the fullness.

    Takes: the order of a shade with loops; its style; the number of rows; the cloth of a fold.

    Gives: the fullness, to as many places as are typed.

    Source: derived here.

    >>> from foldwright.core.design.example import ORDER
    >>> from foldwright.core.design.styles import style_of
    >>> style = style_of(StyleName.LOOPED)
    >>> locked_fullness(ORDER, style, 12, Length.inches(9))
    1.8
    """
    full = order.habits.looped_fullness.value
    for _ in range(SETTLING):
        tried = replace(order, design=replace(order.design, row_count=count, fullness=full))
        full = float(fold.nanometres / style.least_spacing(tried, count))
    return round(full, FULLNESS_PLACES)


def draft_lock_checks(order: Order, style: Style, rows: RowPlan) -> Iterator[Draft[Order]]:
    """Draft what keeps folds from being alike that are asked to be.

    Takes: the order; its style; its rows.

    Gives: a draft of a question, or none.

    Source: hobbled-pattern-diary, June 2017; common practice for flat shades.
    """
    asked, face = order.design.alike_after, order.chosen.face
    if asked is None or face is None:
        return
    folds = chosen("folds until the print is alike", asked, Unit.COUNT)
    if face.vertical_repeat is None:
        yield draft(
            Severity.ASK,
            "lock-without-repeat",
            f"After {{0}} folds the print is to come back, and “{face.name}” has no repeat in the"
            " shop's list.",
            folds,
            ways=(_unlock(order), by_hand("Measure its repeat, and write it into the list.")),
        )
        return
    lock = lock_of(order, rows)
    if lock is None or asked % lock.alike_after:
        yield draft(
            Severity.ASK,
            "pattern-unlocked",
            "After {0} folds the print is to come back; with {1} of cloth in a fold and a repeat"
            " of {2} it does not.",
            folds,
            cloth_of_a_fold(rows),
            supplied("vertical repeat", face.vertical_repeat, Unit.LENGTH, face.name),
            ways=(*locking_ways(order, style), _unlock(order)),
            source=PATTERN_DIARY,
        )


def cloth_of_a_fold(rows: RowPlan) -> L:
    """Measure the cloth from one row to the next.

    Takes: the rows.

    Gives: the row spacing at the fullness.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> cloth_of_a_fold(LAYOUT.rows).value.in_millimetres
    200.0
    """
    return derived(
        "cloth of a fold",
        Length(round(rows.spacing.value.nanometres * exact_share(rows.fullness))),
        Unit.LENGTH,
        "The row spacing {0}, at {1} of cloth to one.",
        rows.spacing,
        rows.fullness,
    )


def locking_ways(order: Order, style: Style) -> Iterator[Way[Order]]:
    """Find rows that keep to the asked lock and to every limit of their style.

    Takes: the order, with its lock asked for; its style.

    Gives: one way, or none where the face has no repeat or no rows within reason do it.

    Source: hobbled-pattern-diary, June 2017; common practice for flat shades.
    """
    asked, face = order.design.alike_after, order.chosen.face
    if asked is None or face is None or face.vertical_repeat is None:
        return
    if order.design.style in LOCKED_BY_SPACING:
        yield from _by_spacing(order, style, face.vertical_repeat, asked)
    elif order.design.style is StyleName.LOOPED:
        yield from _by_fullness(order, style, face.vertical_repeat, asked)


def _by_spacing(order: Order, style: Style, repeat: Length, asked: int) -> Iterator[Way[Order]]:
    """Take the part of the repeat that is asked for as spacing, or the next that is allowed."""
    free = replace(order, design=replace(order.design, row_count=None, head_allowance=None))
    fewest = ceil(repeat / style.largest_spacing(order).value)
    for folds in range(max(asked, fewest), max(asked, fewest, ALIKE_AFTER.value) + 1):
        design = locked_at(free, Fraction(repeat.nanometres, folds))
        if design is not None:
            locked = replace(order, design=design)
            count = chosen("number of rows", design.row_count or 0, Unit.COUNT)
            head = head_allowance(locked)
            yield by_change(
                order,
                order.system,
                f"Use {{0}} rows at {{1}} under a head of {{2}}: every {folds} folds are alike.",
                count,
                style.rows(locked, count).spacing,
                head,
                design__row_count=count.value,
                design__head_allowance=head.value,
                design__alike_after=folds,
            )
            return


def _by_fullness(order: Order, style: Style, repeat: Length, asked: int) -> Iterator[Way[Order]]:
    """Take the fewest rows whose loops hold whole repeats and keep to the rule of the loop."""
    free = replace(order, design=replace(order.design, row_count=None))
    first = order.design.row_count or style.usual_row_count(free).value
    for number in range(first, first + MORE_ROWS_TRIED):
        spacing = style.least_spacing(order, number)
        if spacing <= 0:
            return
        most = Fraction(LOOP_LIMIT.value.nanometres) / spacing - 1
        usual = order.habits.looped_fullness.value
        fulls = sorted(
            fullnesses_alike(spacing, repeat, asked, most), key=lambda full: abs(full - usual)
        )
        if fulls:
            fold = Length(round(spacing * Fraction(fulls[0]).limit_denominator()))
            yield _loops(order, style, number, locked_fullness(order, style, number, fold))
            return


def _loops(order: Order, style: Style, number: int, full: float) -> Way[Order]:
    count, fullness = (
        chosen("number of rows", number, Unit.COUNT),
        chosen("fullness", full, Unit.RATIO),
    )
    tried = replace(order, design=replace(order.design, row_count=number, fullness=full))
    return by_change(
        order,
        order.system,
        "Use {0} rows at {1} with {2} of cloth to one: a fold takes {3}, and the print stays"
        " locked.",
        count,
        style.rows(tried, count).spacing,
        fullness,
        cloth_of_a_fold(style.rows(tried, count)),
        design__row_count=number,
        design__fullness=full,
    )


def _unlock(order: Order) -> Way[Order]:
    return by_change(
        order, order.system, "Let the folds show the print as it falls.", design__alike_after=None
    )


def _alike_after(folds: int, fold: Fraction, repeat: Length) -> tuple[Lock, Fraction]:
    """Give the whole repeats nearest to so many folds, and what one fold is then off by."""
    repeats = floor(fold * folds / repeat.nanometres + Fraction(1, 2))
    off = abs(fold - Fraction(repeats * repeat.nanometres, folds))
    return Lock(alike_after=folds, repeats=repeats), off
