"""How far tube, bottom bar and board sag, at their worst: fully raised."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import ceil
from typing import TYPE_CHECKING

from foldwright.core.facts.balancing import BOARD_CREEP, FIXING_SPACING
from foldwright.core.facts.constants import GRAVITY
from foldwright.core.lift.bending import (
    Beam,
    HungBar,
    PointLoad,
    rectangle_second_moment,
    tube_second_moment,
)
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, supplied

if TYPE_CHECKING:
    from collections.abc import Iterator

    from foldwright.core.facts.records import Tube
    from foldwright.core.lift.order import LiftOrder
    from foldwright.core.lift.telling_load import L, LoadFigures, N


@dataclass(frozen=True, kw_only=True, slots=True)
class Sags:
    """How far each part sags; None where the part is not chosen."""

    tube: L | None
    bar: L | None
    board: L | None
    findings: tuple[Finding, ...]


def sags(order: LiftOrder, loads: LoadFigures) -> Sags:
    """Compute how far tube, bar and board sag, and find those that sag too far.

    Takes: the order; the figures of the load.

    Gives: sags with their why, and a finding for bar and board where they pass the shop's limit; a
    tube that sags too far is borne in cradles when the headrail is laid out.

    Holds for: a tube borne at its two ends, cords that share the load by their bays, a bar
    lying flat, a board fixed as often as is usual.

    Source: beam-page; off-centre-beam-page; for the shares derived here.
    """
    tube = _tube_sag(order, loads.load_raised)
    bar = _bar_sag(order, loads.load_raised)
    board = _board_sag(order)
    return Sags(tube=tube, bar=bar, board=board, findings=tuple(_too_far(order, bar, board)))


def _bays(order: LiftOrder) -> list[float]:
    """Give the width that hangs on each column: half of each bay beside it, and the edges."""
    marks = [mark.value.in_metres for mark in order.layout.columns.marks]
    middles = [(left + right) / 2 for left, right in pairwise(marks)]
    edges = [0.0, *middles, order.size.width.value.in_metres]
    return [right - left for left, right in pairwise(edges)]


def _cords(order: LiftOrder, part_length: Length) -> list[float]:
    """Give the columns from the left end of a part that is centred on the shade."""
    beyond = (order.size.width.value - part_length).in_metres / 2
    return [mark.value.in_metres - beyond for mark in order.layout.columns.marks]


def tube_sag_m(order: LiftOrder, tube: Tube, load_n: float) -> float:
    """Give the sag of a tube under the cords of a shade, its own weight included.

    Takes: the order; a tube of the shop list; the load on all cords in N.

    Gives: m, at the lowest place.

    Holds for: a tube borne at its two ends.

    Source: beam-page; off-centre-beam-page.
    """
    span = order.tube_cut or order.size.board_length.value
    moment = tube_second_moment(tube.outside.in_metres, tube.wall.in_metres)
    beam = Beam(span_m=span.in_metres, rigidity_n_m2=tube.stiffness_pa * moment)
    width = order.size.width.value.in_metres
    loads = [
        PointLoad(load_n=load_n * bay / width, at_m=at)
        for at, bay in zip(_cords(order, span), _bays(order), strict=True)
        if 0 < at < span.in_metres
    ]
    return beam.greatest_sag(loads, tube.line_mass_kg_m * GRAVITY.value).sag_m


def _tube_sag(order: LiftOrder, load: N) -> L | None:
    tube = order.chosen.tube
    if tube is None:
        return None
    span = order.tube_cut or order.size.board_length.value
    return derived(
        "sag of the tube",
        Length.metres(tube_sag_m(order, tube, load.value)),
        Unit.LENGTH,
        "The load fully raised {0} on {1} columns and its own weight bend a tube of {2} over {3}.",
        load,
        order.layout.columns.count,
        supplied("tube outside diameter", tube.outside, Unit.LENGTH, tube.name),
        derived("span of the tube", span, Unit.LENGTH, "About {0}.", order.size.board_length),
    )


def _bar_sag(order: LiftOrder, load: N) -> L | None:
    bar, width = order.chosen.bar, order.size.width.value
    cords = _cords(order, length := width - order.habits.bar_less_than_width.value)
    if bar is None or len(cords) < 2 or cords[0] < 0:  # noqa: PLR2004 - one cord bears no span
        return None
    moment = rectangle_second_moment(bar.width.in_metres, bar.thickness.in_metres)
    hung = HungBar(
        cords_m=tuple(cords),
        length_m=length.in_metres,
        rigidity_n_m2=bar.stiffness_pa * moment,
    )
    return derived(
        "sag of the bottom bar",
        Length.metres(hung.greatest_sag(load.value / width.in_metres).sag_m),
        Unit.LENGTH,
        "As if the whole raised load {0} lay on the bar {1} between its cords {2}, the bar flat.",
        load,
        supplied("bar thickness", bar.thickness, Unit.LENGTH, bar.name),
        order.layout.columns.pitch,
    )


def _board_sag(order: LiftOrder) -> L | None:
    board, length = order.chosen.board, order.size.board_length
    if board is None:
        return None
    spans = ceil(length.value / FIXING_SPACING.value)
    span_m = length.value.in_metres / spans
    section = board.depth.in_metres * board.thickness.in_metres
    moment = rectangle_second_moment(board.depth.in_metres, board.thickness.in_metres)
    beam = Beam(span_m=span_m, rigidity_n_m2=board.stiffness_pa * moment)
    hung_kg_m = order.weights.total.value / length.value.in_metres
    if order.chosen.tube:
        hung_kg_m += order.chosen.tube.line_mass_kg_m
    spread = (hung_kg_m + board.density_kg_m3 * section) * GRAVITY.value
    return derived(
        "sag of the board",
        Length.metres(beam.greatest_sag([], spread).sag_m * BOARD_CREEP.value),
        Unit.LENGTH,
        "The shade {0}, the tube and the board itself bend a board {1} thick between fixings at"
        " most {2} apart, {3} times as far in the end as at once.",
        order.weights.total,
        supplied("board thickness", board.thickness, Unit.LENGTH, board.name),
        FIXING_SPACING,
        BOARD_CREEP,
    )


def _too_far(order: LiftOrder, bar: L | None, board: L | None) -> Iterator[Finding]:
    allowed = order.habits
    if bar and bar.value > allowed.bar_sag.value:
        remedy = Remedy(sentence="Take a stiffer bar, or set the columns closer.")
        yield _sag("bottom bar", bar, allowed.bar_sag, (remedy,))
    if board and board.value > allowed.board_sag.value:
        remedy = Remedy(sentence="Fix the board more often, or take a thicker one.")
        yield _sag("board", board, allowed.board_sag, (remedy,))


def _sag(part: str, found: L, limit: L, remedies: tuple[Remedy, ...]) -> Finding:
    return Finding(
        id=f"lift.sag-{part.replace(' ', '-')}",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence=f"The {part} sags by {{0}}; at most {{1}} keeps the hem straight.",
        figures=(found, limit),
        remedies=remedies,
    )
