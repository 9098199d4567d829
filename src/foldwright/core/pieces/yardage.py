"""How much cloth to order, by the trade's own rules, before any roll is known.

It is an answer in an instant; the plan of the cuts, where pieces share a width, needs less.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied
from foldwright.core.why.source import Source

L = Figure[Length]
C = Figure[int]

WHOLE_REPEATS = Source(id="repeat-newsletter")


@dataclass(frozen=True, kw_only=True, slots=True)
class WidthsToCut:
    """So many widths of one cut length: one layer of one shade."""

    name: str
    widths: C
    length: L
    width: L  # of one of them, the widest


@dataclass(frozen=True, kw_only=True, slots=True)
class Yardage:
    """What one cloth takes, step by step, and what is ordered."""

    cloth: str
    lengths: tuple[L, ...]  # each cut length, in whole repeats
    cuts: L
    squaring: L  # lost where each length is squared
    spare: L | None  # of a lot that cannot be had again
    needed: L  # with one repeat more, since a roll may begin anywhere in it
    ordered: L


def in_whole_repeats(length: L, repeat: L | None) -> L:
    """Lengthen a cut to whole repeats, so that every cut begins at the same point of one.

    Takes: the cut length; the vertical repeat, or None for a plain cloth.

    Gives: the least whole number of repeats that holds it; a plain cut stays as it is.

    Source: repeat-newsletter (cut lengths in whole repeats).

    >>> from foldwright.core.why.making import chosen
    >>> def inches(name, value): return chosen(name, Length.inches(value), Unit.LENGTH)
    >>> float(in_whole_repeats(inches("cut", 116), inches("repeat", 25)).value.in_inches)
    125.0
    """
    if repeat is None or not repeat.value:
        return length
    count = math.ceil(length.value / repeat.value)
    name = f"{length.name}, in whole repeats"
    because = f"{count} repeats of {{1}}, the fewest that hold {{0}}."
    value = repeat.value * count
    return derived(
        name, value, Unit.LENGTH, because, length, repeat,
        rounding=Rounding.CUT_OVERSIZE, source=WHOLE_REPEATS,
    )  # fmt: skip


def widths_in_a_run(widths: C, length: L, repeat: L, steps: int) -> L:
    """Add up the widths of a dropping pattern, cut class by class.

    All widths that begin at one height of the repeat are cut in a run, then the roll is
    advanced by one step of the drop, and the next class is cut.

    Takes: how many widths; their cut length in whole repeats; the vertical repeat; after
    how many repeats across the pattern stands level again.

    Gives: the length for all of them.

    Source: half-drop-page.

    >>> from foldwright.core.why.making import chosen
    >>> def inches(name, value): return chosen(name, Length.inches(value), Unit.LENGTH)
    >>> run = widths_in_a_run(chosen("widths", 4, Unit.COUNT), inches("cut", 125),
    ...                       inches("repeat", 25), 2)
    >>> float(run.value.in_inches)
    512.5
    """
    advances = min(widths.value, steps) - 1
    lost = repeat.value * Fraction(advances, steps)
    value = length.value * widths.value + lost
    because = f"{{0}} widths of {{1}}, and {advances} of {steps} parts of the repeat {{2}} lost."
    source = Source(id="half-drop-page")
    return derived(
        "cuts in a run", value, Unit.LENGTH, because, widths, length, repeat, source=source
    )


def order_cloth(layers: tuple[WidthsToCut, ...], cloth: Cloth, habits: Habits) -> Yardage:
    """Tell how much of one cloth to order for a job.

    Takes: the widths to cut, layer by layer; the cloth's sheet; the shop's habits.

    Gives: each step from cut lengths to the order.

    Holds for: every width cut off the roll by itself; cutting side by side takes less.

    Source: repeat-newsletter (whole repeats); placement-page (one repeat more); common
    practice for the rounding up and the spare.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.why.making import chosen
    >>> cut = chosen("cut length", Length.inches(114), Unit.LENGTH)
    >>> width = chosen("cut width", Length.inches(54), Unit.LENGTH)
    >>> four = chosen("widths", 4, Unit.COUNT)
    >>> layer = WidthsToCut(name="face", widths=four, length=cut, width=width)
    >>> cloth = Cloth(name="plain", areal_mass_kg_m2=0.2, usable_width=Length.inches(54))
    >>> float(order_cloth((layer,), cloth, house_habits()).cuts.value.in_inches)
    456.0
    """
    repeat = _repeat(cloth)
    lengths = tuple(in_whole_repeats(layer.length, repeat) for layer in layers)
    cuts = _cuts(layers, lengths, cloth, repeat)
    squaring = _squaring(layers, habits)
    spare = None if cloth.lot_returns else habits.lot_spare
    needed = _needed(cuts, squaring, repeat, spare)
    return Yardage(
        cloth=cloth.name,
        lengths=lengths,
        cuts=cuts,
        squaring=squaring,
        spare=spare,
        needed=needed,
        ordered=as_sold(needed, cloth, habits),
    )


def _repeat(cloth: Cloth) -> L | None:
    if not cloth.vertical_repeat:
        return None
    return supplied("vertical repeat", cloth.vertical_repeat, Unit.LENGTH, cloth.name)


def _cuts(
    layers: tuple[WidthsToCut, ...], lengths: tuple[L, ...], cloth: Cloth, repeat: L | None
) -> L:
    steps = steps_of_the_drop(cloth)
    runs = [
        _run(layer, length, repeat, steps) for layer, length in zip(layers, lengths, strict=True)
    ]
    value = sum((run.value for run in runs), ZERO)
    because = (
        "All cut lengths together: "
        + ", ".join(f"{{{number}}}" for number in range(len(runs)))
        + "."
    )
    return derived("cut lengths", value, Unit.LENGTH, because, *runs)


def _run(layer: WidthsToCut, length: L, repeat: L | None, steps: int) -> L:
    if repeat is not None and steps > 1:
        return widths_in_a_run(layer.widths, length, repeat, steps)
    value = length.value * layer.widths.value
    because = "{0} widths of {1}."
    return derived(layer.name, value, Unit.LENGTH, because, layer.widths, length)


def steps_of_the_drop(cloth: Cloth) -> int:
    """Tell after how many repeats across a pattern stands level again.

    Takes: the cloth's sheet.

    Gives: 1 for a straight match, 2 for a half drop, or as the sheet says.

    Source: common practice.

    >>> steps_of_the_drop(Cloth(name="a", areal_mass_kg_m2=0.2, usable_width=ZERO, half_drop=True))
    2
    """
    return cloth.drop_steps or (2 if cloth.half_drop else 1)


def with_one_repeat(cuts: L, repeat: L) -> L:
    """Add one repeat to an order, since nobody knows where in it a roll begins.

    Takes: the cuts together; the vertical repeat.

    Gives: the length that is enough wherever the roll begins.

    Source: placement-page; half-drop-retailer for a half drop.

    >>> from foldwright.core.why.making import chosen
    >>> cuts = chosen("cuts", Length.mm(5850), Unit.LENGTH)
    >>> repeat = chosen("repeat", Length.mm(650), Unit.LENGTH)
    >>> with_one_repeat(cuts, repeat).value.in_millimetres
    6500.0
    """
    because = "{0}, and one repeat {1} more, since a roll may begin anywhere in it."
    source = Source(id="placement-page")
    value = cuts.value + repeat.value
    return derived("cuts, placed", value, Unit.LENGTH, because, cuts, repeat, source=source)


def _squaring(layers: tuple[WidthsToCut, ...], habits: Habits) -> L:
    count = sum(layer.widths.value for layer in layers)
    because = f"{{0}} at the start of each of {count} cut lengths."
    value = habits.straightening.value * count
    return derived("squaring", value, Unit.LENGTH, because, habits.straightening)


def _needed(cuts: L, squaring: L, repeat: L | None, spare: L | None) -> L:
    placed = cuts if repeat is None else with_one_repeat(cuts, repeat)
    more = (squaring,) if spare is None else (squaring, spare)
    value = sum((each.value for each in more), placed.value)
    because = "{0}, and {1} to square the ends"
    because += "." if spare is None else ", and {2} more, since its lot cannot be had again."
    return derived("cloth needed", value, Unit.LENGTH, because, placed, *more)


def as_sold(needed: L, cloth: Cloth, habits: Habits) -> L:
    """Round an order up to what is sold: steps, a least order, whole rolls.

    Takes: the length needed; the cloth's sheet; the shop's habits.

    Gives: the length to order.

    Source: common practice.
    """
    step, least = _step(cloth, habits), cloth.least_order or ZERO
    count = math.ceil(max(needed.value, least) / step.value)
    what = "whole rolls" if cloth.whole_rolls else "steps"
    because = f"{{0}}, rounded up to {count} {what} of {{1}}"
    because += ", its least order being {2}." if least > needed.value else "."
    smallest = () if not least else (supplied("least order", least, Unit.LENGTH, cloth.name),)
    value = step.value * count
    return derived("cloth to order", value, Unit.LENGTH, because, needed, step, *smallest)


def _step(cloth: Cloth, habits: Habits) -> L:
    if cloth.whole_rolls:
        return supplied("length of a roll", cloth.whole_rolls, Unit.LENGTH, cloth.name)
    if cloth.sold_by:
        return supplied("step of an order", cloth.sold_by, Unit.LENGTH, cloth.name)
    return habits.order_increment
