"""Weigh a shade before it is made: every layer from its cut, bar, rods and rings."""

from __future__ import annotations

from math import hypot

from foldwright.core.design.layout import Layout, Rides
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Chosen
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.weigh.hardware import (
    bar_mass,
    rings_mass,
    rod_mass,
    rods_mass,
    row_of_rings_mass,
)
from foldwright.core.weigh.hung import PartMasses, hang_up
from foldwright.core.weigh.impossible import ImpossiblePanel, check_panel
from foldwright.core.weigh.layers import areal_mass, cloth_lie, layer_mass
from foldwright.core.weigh.load import Weights
from foldwright.core.weigh.made_up import MadeUp
from foldwright.core.weigh.pieces import bands_across, bands_down, riding, weigh_pieces
from foldwright.core.weigh.remarks import impossible, load_bound, missing_parts, remarks
from foldwright.core.why.answer import Answer
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

N = Figure[float]

OFF_THE_CORDS = (Rides.BOARD, Rides.OWN_BOARD)


def weigh_shade(
    layout: Layout, size: FinishedSize, chosen: Chosen, habits: Habits
) -> Answer[Weights]:
    """Weigh a shade from its cuts and its parts.

    Takes: the layout; the finished size; the records of its materials; the shop's habits.

    Gives: the masses, and the panel as the cords feel it; nothing while face or bar, or the
    rods that are asked for, are not chosen, and the questions that are open. A style whose
    hem dips hangs without a bar.

    Holds for: layers that hang from the board; the board itself is not weighed.

    Source: derived here; common practice for what is cut shorter.

    >>> from foldwright.core.design.choices import Choices
    >>> from foldwright.core.design.laying_out import lay_out
    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.facts.markets import edge_distance_floor, row_spacing_cap
    >>> from foldwright.core.measure.finishing import finished_size
    >>> from foldwright.core.measure.opening import AskedSize, Mount, Opening
    >>> from foldwright.core.quantity.length import Length
    >>> habits, parts = house_habits(), Chosen()
    >>> asked = AskedSize(width=Length.mm(1200), drop=Length.mm(1600), given_by="client")
    >>> size = finished_size(Opening(), Mount(), asked, habits).result
    >>> rules = row_spacing_cap(()), edge_distance_floor(())
    >>> layout = lay_out(Choices(), size, parts, habits, *rules).result
    >>> [finding.id for finding in weigh_shade(layout, size, parts, habits).findings]
    ['weigh.face', 'weigh.bar']
    """
    shade = MadeUp(layout=layout, size=size, chosen=chosen, habits=habits)
    questions = tuple(missing_parts(shade))
    if questions:
        return Answer(result=None, findings=questions)
    weights = _weights(shade)
    try:
        check_panel(weights.load)
    except ImpossiblePanel as refusal:
        return Answer(result=None, findings=(impossible(refusal),))
    return Answer(result=weights, findings=tuple(remarks(shade, weights)))


def _weights(shade: MadeUp) -> Weights:
    layers = tuple(
        layer_mass(cut, areal_mass(cut.layer, cloth, shade.habits)) for cut, cloth in shade.layers
    )
    hung, row = bar_mass(shade, shade.chosen.bar), row_of_rings_mass(shade)
    rod = rod_mass(shade, shade.chosen.rod) if _has_rods(shade) and shade.chosen.rod else None
    rods, rings = rods_mass(shade, rod), rings_mass(shade, row)
    pieces = weigh_pieces(shade)
    lifted = tuple(mass for piece, mass in pieces if piece.rides not in OFF_THE_CORDS)
    parts = PartMasses(
        bar_kg=hung.value,
        rod_kg=rod.value if rod else 0.0,
        row_of_rings_kg=row.value,
        strip_kg=riding(pieces, Rides.ROWS) / shade.layout.rows.count.value,
        bands=bands_across(pieces),
    )
    return Weights(
        layers=layers,
        bar=hung,
        rods=rods,
        rings=rings,
        total=_total(*layers, hung, rods, rings, *lifted),
        pieces=lifted,
        beside=tuple(mass for piece, mass in pieces if piece.rides is Rides.BOARD),
        apart=tuple(mass for piece, mass in pieces if piece.rides is Rides.OWN_BOARD),
        load=hang_up(shade, cloth_lie(shade, layers, bands_down(shade, pieces)), parts),
        bound=load_bound(shade),
    )


def _has_rods(shade: MadeUp) -> bool:
    return bool(shade.layout.rows.rod_marks)


def _total(*parts: N) -> N:
    """Sum the parts; each is uncertain for itself, so their ranges add as squares."""
    whole = sum(part.value for part in parts)
    return derived(
        "mass of the whole shade",
        whole,
        Unit.MASS,
        "All that is on the cords together: "
        + ", ".join(f"{{{number}}}" for number in range(len(parts)))
        + ".",
        *parts,
        low=whole - hypot(*(_below(part) for part in parts)),
        high=whole + hypot(*(_above(part) for part in parts)),
    )


def _below(part: N) -> float:
    return 0.0 if part.low is None else part.value - part.low


def _above(part: N) -> float:
    return 0.0 if part.high is None else part.high - part.value
