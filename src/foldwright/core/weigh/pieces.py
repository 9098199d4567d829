"""What the pieces beside the layers weigh, and which of them ride on the cords."""

from __future__ import annotations

from foldwright.core.design.layout import LayerCut, Piece, Rides
from foldwright.core.weigh.layers import areal_mass
from foldwright.core.weigh.made_up import MadeUp
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

N = Figure[float]
Weighed = tuple[Piece, N]


def weigh_pieces(shade: MadeUp) -> tuple[Weighed, ...]:
    """Weigh every piece that is cut besides the layers.

    Takes: the shade.

    Gives: each piece with the mass of as many as are cut of it; pieces of a cloth that is not
    chosen are left out.

    Source: derived here.
    """
    return tuple(
        (piece, _mass(piece, areal_mass(piece.name, cloth, shade.habits)))
        for piece in shade.layout.pieces
        if (cloth := shade.cloth_named(piece.cloth)) is not None
    )


def riding(pieces: tuple[Weighed, ...], *places: Rides) -> float:
    """Add up what rides at some places.

    Takes: the weighed pieces; the places.

    Gives: kg.

    Source: derived here.

    >>> riding((), Rides.ROWS)
    0.0
    """
    return sum((mass.value for piece, mass in pieces if piece.rides in places), 0.0)


def bands_down(shade: MadeUp, pieces: tuple[Weighed, ...]) -> tuple[tuple[LayerCut, float], ...]:
    """Give the bands that run down the sides as layers, which they lie along.

    Takes: the shade; its weighed pieces.

    Gives: each as a cut, with its mass in kg.

    Source: derived here.
    """
    return tuple(
        (
            LayerCut(
                layer=piece.name,
                cloth=piece.cloth,
                width=piece.width,
                length=piece.length,
                body=shade.layout.cuts[0].body,
            ),
            mass.value,
        )
        for piece, mass in pieces
        if piece.rides is Rides.DROP
    )


def bands_across(pieces: tuple[Weighed, ...]) -> tuple[tuple[float, float], ...]:
    """Give the bands that lie across the shade.

    Takes: the weighed pieces.

    Gives: of each, how far its middle lies over the bottom edge, in m, and its mass in kg.

    Source: derived here.

    >>> bands_across(())
    ()
    """
    return tuple(
        (piece.above_hem.value.in_metres, mass.value)
        for piece, mass in pieces
        if piece.rides is Rides.BAND and piece.above_hem is not None
    )


def _mass(piece: Piece, areal: N) -> N:
    """Weigh so many pieces, cut as they are."""
    area = piece.width.value.in_metres * piece.length.value.in_metres * piece.count.value
    low, high = (None if end is None else end * area for end in (areal.low, areal.high))
    return derived(
        f"mass of the {piece.name}",
        areal.value * area,
        Unit.MASS,
        "{0} on {1} cut {2} by {3}.",
        areal,
        piece.count,
        piece.width,
        piece.length,
        low=low,
        high=high,
    )
