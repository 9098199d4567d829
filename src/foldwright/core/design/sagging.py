"""How far the raised folds sag between two columns, and whether rods must carry them.

The cloth of every row hangs from its rings as a gutter turned over, as wide as the nose of a
free fold. Limp cloth sags until what it is longer than its span is used up; stiff cloth bends
as a beam of that section, and the smaller of the two is what is seen. A layer's stiffness in
its own plane is taken from its bending and its thickness, which makes it out too small: real
cloth sags less. No measurement stands behind the sum, so its range is wide.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import pi

from foldwright.core.design.choices import RodPlace
from foldwright.core.design.columns import largest_pitch
from foldwright.core.design.hanging import HangingEdge
from foldwright.core.design.layout import ColumnPlan, RowPlan
from foldwright.core.design.order import Order, draft
from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.loads import HEM_EASE
from foldwright.core.facts.panel_limits import THICKNESS_WHEN_UNKNOWN
from foldwright.core.facts.stiffness import (
    FOLD_SAG,
    NOSE_RADIUS,
    SPAN_SAG,
    bending_length_m,
    bending_length_of,
    rigidity_n_m,
    stiffness_of_layers,
)
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]

# A thin half circle about the level line through its own centre of area, in thicknesses times
# the third power of its radius.
GUTTER = pi / 2 - 4 / pi
MEMBRANE = 12.0  # stretching over bending, by the square of the thickness
MORE_COLUMNS_TRIED = 12


def fold_sag(order: Order, rows: RowPlan, pitch: L) -> L | None:
    """Work out how far the raised folds sag between two columns.

    Takes: the order; its rows; the distance between two columns.

    Gives: a length with its range; None where the face's bending length is not known.

    Holds for: folds without rods, at an even pitch, of layers that slide on each other; an
    order of magnitude.

    Source: derived here; catenary-page for limp cloth, structural-handbook for the beam.

    >>> from foldwright.core.design.example import ORDER
    >>> from foldwright.core.design.styles import row_count, style_of
    >>> rows = style_of(ORDER.design.style).rows(ORDER, row_count(ORDER))
    >>> fold_sag(ORDER, rows, largest_pitch(ORDER)) is None  # nobody tested this cloth
    True
    """
    if order.chosen.face is None or bending_length_of(order.chosen.face) is None:
        return None
    apart = pitch.value.in_metres
    limp, load = _limp_sag_m(apart), _load_n_m(order, rows)

    def sag(span: float, radius: float) -> Length:
        bent = span * load * apart**4 / _stiffness_n_m2(order, radius)
        return Length.metres(min(limp, bent))

    return derived(
        "sag of the raised folds",
        sag(SPAN_SAG.value, NOSE_RADIUS.value),
        Unit.LENGTH,
        "Cloth that is {0} stiff carries the folds of rows {1} apart over {2} as a gutter does,"
        " its radius {3} bending lengths; it sags no farther than limp cloth would, longer than"
        " its span by {4}. No measurement stands behind this.",
        stiffness_of_layers(order.layers),
        rows.spacing,
        pitch,
        NOSE_RADIUS,
        HEM_EASE,
        low=sag(SPAN_SAG.low or 0.0, NOSE_RADIUS.high or 1.0),
        high=sag(SPAN_SAG.high or 0.0, NOSE_RADIUS.low or 1.0),
    )


def draft_sag_checks(order: Order, rows: RowPlan, columns: ColumnPlan) -> Iterator[Draft[Order]]:
    """Draft what is wrong where no rod carries the folds.

    Takes: the order; its rows; its columns.

    Gives: drafts of findings.

    Source: derived here; cord-spacing-page for the pitch that needs no test of the cloth.
    """
    if order.design.rods is not RodPlace.NONE or order.chosen.face is None:
        return
    sag = fold_sag(order, rows, columns.pitch)
    if sag is None:
        yield from _untested(order, columns)
    elif sag.value > FOLD_SAG.value:
        yield draft(
            Severity.NOTE,
            "folds-sag",
            "Without rods the raised folds sag by about {0:range} between columns {1} apart; more"
            " than {2} is seen.",
            sag,
            columns.pitch,
            FOLD_SAG,
            ways=(*_carried(order), *_closer(order, rows, columns)),
        )


def _untested(order: Order, columns: ColumnPlan) -> Iterator[Draft[Order]]:
    """Ask how stiff the cloth is where it alone must carry a pitch wider than the usual one."""
    usual = order.habits.largest_pitch
    if columns.pitch.value <= usual.value or largest_pitch(order).value <= usual.value:
        return
    yield draft(
        Severity.ASK,
        "stiffness-unknown",
        "Columns stand {0} apart without rods, farther than {1}: only stiff cloth bears that, and"
        " the bending length of the face is not known.",
        columns.pitch,
        usual,
        ways=(
            by_hand(
                "Push a strip 25 mm (1 in) wide over an edge until its end touches a plane that"
                " falls at 41.5 degrees, and write what hangs over into the shop's list."
            ),
            *_carried(order),
            by_change(
                order, order.system, "Keep within {0}.", usual, design__largest_pitch=usual.value
            ),
        ),
        source=usual.source,
    )


def _carried(order: Order) -> Iterator[Way[Order]]:
    yield by_change(order, order.system, "Put rods at the rows.", design__rods=RodPlace.ROWS)


def _closer(order: Order, rows: RowPlan, columns: ColumnPlan) -> Iterator[Way[Order]]:
    """Take the fewest more columns between which the folds are seen to hang straight."""
    clear = order.width.value - columns.edge_distance.value * 2
    for count in range(columns.count.value + 1, columns.count.value + MORE_COLUMNS_TRIED):
        pitch = derived(
            "column pitch",
            clear / (count - 1),
            Unit.LENGTH,
            f"{{0}} less {{1}} at each side, shared by {count - 1} spaces.",
            order.width,
            columns.edge_distance,
        )
        closer = fold_sag(order, rows, pitch)
        if closer is not None and closer.value <= FOLD_SAG.value:
            number = derived("number of columns", count, Unit.COUNT, "At a pitch of {0}.", pitch)
            sentence = "Use {0} columns, {1} apart: the folds sag by about {2}."
            fields = {"design__column_count": count}
            yield by_change(order, order.system, sentence, number, pitch, closer, **fields)
            return


def _limp_sag_m(pitch_m: float) -> float:
    return HangingEdge.of_length(pitch_m, pitch_m * (1 + HEM_EASE.value)).sag_m


def _load_n_m(order: Order, rows: RowPlan) -> float:
    """Give the weight of one row's folds over one unit of width."""
    areal = sum(cloth.areal_mass_kg_m2 for cloth in order.layers)
    return areal * GRAVITY.value * rows.spacing.value.in_metres * rows.fullness.value


def _stiffness_n_m2(order: Order, radius: float) -> float:
    """Give the stiffness of all layers as gutters, each by itself."""
    metres = radius * bending_length_m(order.layers)
    stretch = sum(
        MEMBRANE
        * rigidity_n_m(cloth)
        / (cloth.thickness or THICKNESS_WHEN_UNKNOWN.value).in_metres ** 2
        for cloth in order.layers
    )
    return stretch * GUTTER * metres**3
