"""How stiff a cloth is, from a strip of it pushed over an edge, and what that is good for."""

from __future__ import annotations

from collections.abc import Iterable

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact, supplied
from foldwright.core.why.source import Source, Status

L = Figure[Length]

OF_OVERHANG = fact(
    "bending length in overhangs",
    0.5,
    Unit.RATIO,
    "A strip is pushed over an edge until its end touches a plane that falls at 41.5 degrees:"
    " half of what hangs over is its bending length.",
    Status.PUBLISHED,
    source=Source(id="bending-length-page"),
)

FOLD_SAG = fact(
    "sag of a fold that is seen",
    Length.inches("0.375"),
    Unit.LENGTH,
    "Set so that the limpest cloth is content with columns 8 in apart, as the trade places them"
    " for soft cloth, and not with 10 in.",
    Status.HOUSE,
)

NOSE_RADIUS = fact(
    "radius of a fold's nose",
    0.875,
    Unit.RATIO,
    "Half the depth of a free fold, in bending lengths; an order of magnitude only.",
    Status.MEMORY,
    low=0.75,
    high=1.0,
)

SPAN_SAG = fact(
    "sag of a span",
    1 / 185,
    Unit.RATIO,
    "Of load, span and stiffness: a span that runs on over one of its ends. One that runs on over"
    " both sags half as much, one that ends at both two and a half times as much.",
    Status.MEMORY,
    source=Source(id="structural-handbook"),
    low=1 / 384,
    high=5 / 384,
)


def bending_length_of(cloth: Cloth) -> L | None:
    """Tell how stiff a cloth is, as its sheet or the shop's own test says.

    Takes: the cloth's record.

    Gives: its bending length, or half of its overhang; None where neither is known.

    Source: bending-length-page; measured as in astm-d1388-23.

    >>> strip = Cloth(name="twill", areal_mass_kg_m2=0.2, usable_width=Length.mm(1400),
    ...               overhang=Length.mm(44))
    >>> bending_length_of(strip).value.in_millimetres
    22.0
    """
    if cloth.bending_length is not None:
        return supplied("bending length", cloth.bending_length, Unit.LENGTH, cloth.name)
    if cloth.overhang is None:
        return None
    overhang = supplied("overhang", cloth.overhang, Unit.LENGTH, cloth.name)
    because = "{1} of the overhang {0}."
    value = Length.metres(overhang.value.in_metres * OF_OVERHANG.value)
    return derived("bending length", value, Unit.LENGTH, because, overhang, OF_OVERHANG)


def rigidity_n_m(cloth: Cloth) -> float:
    """Give the bending stiffness of a cloth over one unit of its width.

    Takes: the cloth's record.

    Gives: N.m, its weight times the third power of its bending length; 0 where that is not
    known, and the cloth counts as limp.

    Source: bending-length-page.

    >>> felt = Cloth(name="felt", areal_mass_kg_m2=0.25, usable_width=Length.mm(1400),
    ...              bending_length=Length.mm(30))
    >>> round(rigidity_n_m(felt) * 1e6, 4)
    66.1949
    """
    bending = bending_length_of(cloth)
    metres = bending.value.in_metres if bending else 0.0
    return float(cloth.areal_mass_kg_m2 * GRAVITY.value * metres**3)


def bending_length_m(cloths: Iterable[Cloth]) -> float:
    """Give the bending length of layers together, sewn at the edges only.

    Takes: their records, one or more.

    Gives: m; a layer whose bending length is not known counts as limp, and 0 is all limp.

    Holds for: layers that slide on each other; fused layers are stiffer.

    Source: bending-length-page; the sum over layers is derived here.

    >>> lining = Cloth(name="lining", areal_mass_kg_m2=0.13, usable_width=Length.mm(1400),
    ...                bending_length=Length.mm(16))
    >>> round(bending_length_m([lining, lining]), 6)
    0.016
    """
    layers = tuple(cloths)
    weight = sum(cloth.areal_mass_kg_m2 for cloth in layers) * GRAVITY.value
    return float((sum(rigidity_n_m(cloth) for cloth in layers) / weight) ** (1 / 3))


def stiffness_of_layers(cloths: Iterable[Cloth]) -> L:
    """Give the bending length of layers together as a figure that says why.

    Takes: their records, one or more.

    Gives: a length.

    Source: derived here.

    >>> lining = Cloth(name="lining", areal_mass_kg_m2=0.13, usable_width=Length.mm(1400),
    ...                bending_length=Length.mm(16))
    >>> stiffness_of_layers([lining]).value.in_millimetres
    16.0
    """
    layers = tuple(cloths)
    known = (bending_length_of(cloth) for cloth in layers)
    return derived(
        "bending length of the shade",
        Length.metres(bending_length_m(layers)),
        Unit.LENGTH,
        "The layers slide on each other, so their stiffnesses add; a layer without a figure"
        " counts as limp.",
        *(figure for figure in known if figure is not None),
    )
