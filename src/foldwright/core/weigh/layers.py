"""What each layer of cloth weighs, and where along the shade its weight lies."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.design.layout import LayerCut
from foldwright.core.design.panels import cloth_of, hanging_cloth, looped_fullness, panel_heights
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.loads import WEIGHED_SPREAD
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import Length
from foldwright.core.weigh.made_up import MadeUp
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact, supplied
from foldwright.core.why.source import Status

N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothLie:
    """How the cloth of all layers lies along the shade, in kg and m.

    `line_kg_m` is the mass of all layers per metre of finished cloth length, with what is
    sewn into tucks, pockets and gathers there.
    """

    line_kg_m: float
    below_lowest_row_kg: float
    on_the_board_kg: float


def areal_mass(layer: str, cloth: Cloth, habits: Habits) -> N:
    """Give what a square metre of a cloth weighs, with its range.

    Takes: the layer's name; the cloth as its supplier describes it; the shop's habits.

    Gives: a figure; its range is the sheet's own, or what a weighed swatch or a sheet is
    good for.

    Source: common practice.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.quantity.length import Length
    >>> cloth = Cloth(name="linen", areal_mass_kg_m2=0.28, usable_width=Length.mm(1400))
    >>> areal_mass("face", cloth, house_habits()).low
    0.266
    """
    spread = _spread(cloth, habits)
    name = f"weight of the {layer}'s cloth"
    half_range = cloth.areal_mass_kg_m2 * spread.value
    return derived(
        name,
        cloth.areal_mass_kg_m2,
        Unit.AREAL_MASS,
        "{0}, give or take {1}.",
        _stated(name, cloth),
        spread,
        low=cloth.areal_mass_kg_m2 - half_range,
        high=cloth.areal_mass_kg_m2 + half_range,
    )


def _stated(name: str, cloth: Cloth) -> N:
    if not cloth.weighed:
        return supplied(name, cloth.areal_mass_kg_m2, Unit.AREAL_MASS, cloth.name)
    because = f"A swatch of “{cloth.name}” on the shop's scale."
    return fact(name, cloth.areal_mass_kg_m2, Unit.AREAL_MASS, because, Status.MEASURED)


def _spread(cloth: Cloth, habits: Habits) -> N:
    if cloth.areal_mass_spread is not None:
        name = "spread of the cloth's weight"
        return supplied(name, cloth.areal_mass_spread, Unit.SHARE, cloth.name)
    return WEIGHED_SPREAD if cloth.weighed else habits.cloth_mass_spread


def layer_mass(cut: LayerCut, areal: N) -> N:
    """Give what one layer weighs, cut as it is.

    Takes: the cut; the mass of a square metre.

    Gives: kg, with the range of the cloth.

    Holds for: the whole cut: turns, hem and what lies on the board are in it.

    Source: derived here.
    """
    area = cut.width.value.in_metres * cut.length.value.in_metres
    low, high = (None if end is None else end * area for end in (areal.low, areal.high))
    return derived(
        f"mass of the {cut.layer}",
        areal.value * area,
        Unit.MASS,
        "{0} on a cut of {1} by {2}, turns and hem included.",
        areal,
        cut.width,
        cut.length,
        low=low,
        high=high,
    )


def cloth_lie(
    shade: MadeUp, masses: tuple[N, ...], bands: tuple[tuple[LayerCut, float], ...] = ()
) -> ClothLie:
    """Tell where along the shade the cloth's weight lies.

    Takes: the shade; the mass of each of its layers, in their order; bands that run the whole
    length, with their mass in kg.

    Gives: the mass per metre of finished length, below the lowest row, and on the board;
    with the panels between, they sum to the mass of the cuts.

    Holds for: layers that all shrink alike; a layer's length beyond the drop goes over the
    board first, then into the hem. What tucks, pockets and gathers take up is spread evenly
    over the drop.

    Source: derived here.
    """
    layers = zip(shade.layers, masses, strict=True)
    whole = [*((cut, mass.value) for (cut, _), mass in layers), *bands]
    lies = [_layer_lie(shade, cut, mass_kg) for cut, mass_kg in whole]
    return ClothLie(
        line_kg_m=sum(lie.line_kg_m for lie in lies),
        below_lowest_row_kg=sum(lie.below_lowest_row_kg for lie in lies),
        on_the_board_kg=sum(lie.on_the_board_kg for lie in lies),
    )


def _layer_lie(shade: MadeUp, cut: LayerCut, mass_kg: float) -> ClothLie:
    rows = shade.layout.rows
    length = cut.length.value.in_metres * _left_by_steam(shade)
    body = _body_m(cut, cloth_of(rows))
    on_board = min(shade.top_allowance_m, max(0.0, length - body))
    line = mass_kg / length
    taken_up = line * body / hanging_cloth(rows).in_metres
    panels = looped_fullness(rows) * sum(height.in_metres for height in panel_heights(rows))
    return ClothLie(
        line_kg_m=taken_up,
        below_lowest_row_kg=line * (length - on_board) - taken_up * panels,
        on_the_board_kg=line * on_board,
    )


def _left_by_steam(shade: MadeUp) -> float:
    """Give the share of the cut length that shrinkage leaves, read from the face's cut."""
    face = shade.layout.cuts[0]
    body = _body_m(face, cloth_of(shade.layout.rows))
    finished = body + shade.top_allowance_m + shade.hem_allowance_m
    return finished / face.length.value.in_metres


def _body_m(cut: LayerCut, plain: Length) -> float:
    return (cut.body.value if cut.body else plain).in_metres
