"""What a job takes by simpler ways of planning, to set beside the plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.laying.laying_out import lay_out
from foldwright.core.cloth.level import Level
from foldwright.core.cloth.order import ClothOrder
from foldwright.core.cloth.whole import Cloth, length_of
from foldwright.core.cloth.writing_out import to_buy
from foldwright.core.quantity.length import ZERO, Length


def on_one_roll(order: ClothOrder, cloth: Cloth, levels: Sequence[Level]) -> Length:
    """Give what cut lengths take on one endless roll without flaws.

    Takes: the order; its cloth in whole units; cut lengths that hold every piece.

    Gives: what must be bought, or is used.

    Source: derived here.
    """
    begin = min(bolt.begin for bolt in cloth.bolts)
    bolt = replace(cloth.bolts[0], begin=begin, end=None, origin=None, flaws=())
    layout = lay_out(replace(cloth, bolts=(bolt,)), levels, 1)
    return ZERO if layout is None else to_buy(order, length_of(cloth, layout.rank[0]))


def shade_by_shade(order: ClothOrder, cloth: Cloth) -> Length:
    """Give what the job takes if each shade is cut on its own, in whole repeats.

    Takes: the order; its cloth in whole units.

    Gives: what must be bought, or is used; the two sides of a shade share a cut length if
    they fit.

    Source: repeat-newsletter; curtain-book, p. 119.
    """
    pieces = (order.railroaded or ()) if cloth.turned else order.pieces
    shades = {piece.name: piece.shade for piece in pieces}
    of_shade: dict[str, list[int]] = {}
    for number, kind in enumerate(cloth.kinds):
        for name in kind.names:
            of_shade.setdefault(shades[name], []).append(number)
    total = min(bolt.begin for bolt in cloth.bolts)
    for numbers in of_shade.values():
        for level in first_fit(cloth, numbers):
            total += _in_whole_repeats(cloth, level)
    return to_buy(order, length_of(cloth, total))


def _in_whole_repeats(cloth: Cloth, level: Level) -> int:
    on = level.length + cloth.spare
    if level.start is None or not cloth.repeat:
        return on
    return -(-on // cloth.repeat) * cloth.repeat
