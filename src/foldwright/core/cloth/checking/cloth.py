"""A second look at the cloth: its rolls and lots, its flaws, what is bought and what is left."""

from __future__ import annotations

from collections import Counter, defaultdict

from foldwright.core.cloth.checking.second_look import (
    Look,
    Said,
    Spot,
    across,
    along,
    meet,
    off,
    overlapping,
    spot_of,
)
from foldwright.core.cloth.order import ClothPiece, Flaw, Placement, Remnant, RollUse

LEFT = "what is left"


def cloth(look: Look) -> Said:
    """Look at the rolls as they are said to be, and at every length that is told."""
    yield from _rolls(look)
    yield from _flaws(look)
    yield from _lots(look)
    yield from _amounts(look)
    yield from _told_twice(look)
    yield from _remnants(look)


def _rolls(look: Look) -> Said:
    """Look whether every roll is one in hand, or one as it is sold."""
    for name, times in Counter(roll.name for roll in look.plan.rolls).items():
        if times > 1:
            yield name, "it is used as two rolls"
    for use in look.plan.rolls:
        yield from _in_hand(look, use) if look.order.buying is None else _sold(look, use)
    for placement in look.plan.placements:
        if placement.roll not in look.used:
            yield placement.piece, f"it lies on the roll “{placement.roll}”, which is not used"


def _in_hand(look: Look, use: RollUse) -> Said:
    roll = next((each for each in look.order.rolls if each.name == use.name), None)
    if roll is None:
        yield use.name, "there is no such roll"
        return
    measured = roll.lot, roll.usable_width, roll.length
    repeat = look.order.pattern.vertical_repeat.nanometres
    if measured != (use.lot, use.usable_width, use.length):
        yield use.name, "it is not the roll as it was measured"
    elif off((use.origin_along - roll.origin_along).nanometres, repeat):
        yield use.name, "its pattern does not begin where it was measured"
    if use.bought:
        yield use.name, "it is in hand, and said to be bought"


def _sold(look: Look, use: RollUse) -> Said:
    """Look whether a piece of cloth to buy is one that the supplier sells."""
    buying = look.order.buying
    whole = None if buying is None else buying.whole_roll
    length = look.plan.bought if whole is None else whole
    width = None if buying is None else buying.usable_width
    if use.usable_width != width or (use.length, use.bought) != (length, length):
        yield use.name, "it is not as the cloth is sold"


def _flaws(look: Look) -> Said:
    """Look for flaws where they would be seen."""
    flawed = {roll.name: roll.flaws for roll in look.order.rolls}
    for placement in look.plan.placements:
        piece = look.asked.get(placement.piece)
        for flaw in flawed.get(placement.roll, ()):
            if piece is not None and _shows(flaw, placement, piece):
                yield placement.piece, "it covers a flaw"


def _shows(flaw: Flaw, placement: Placement, piece: ClothPiece) -> bool:
    """Tell whether a flaw lies between the ends of a piece that nobody sees."""
    low, high = across(placement) if placement.turned else along(placement)
    seen = low + piece.hidden_head.nanometres, high - piece.hidden_foot.nanometres
    spans = (along(placement), seen) if placement.turned else (seen, across(placement))
    flawed_along = flaw.along.nanometres, (flaw.along + flaw.length).nanometres
    flawed_across = flaw.across.nanometres, (flaw.across + flaw.width).nanometres
    return meet(spans[0], flawed_along) and meet(spans[1], flawed_across)


def _lots(look: Look) -> Said:
    """Look for rooms of two dye lots."""
    found: dict[str, set[str]] = defaultdict(set)
    for name, placement in look.placed.items():
        if name in look.asked and placement.roll in look.used:
            found[look.asked[name].one_lot].add(look.used[placement.roll].lot)
    for group, lots in found.items():
        if len(lots) > 1:
            yield group, f"its pieces come from {len(lots)} dye lots"


def _amounts(look: Look) -> Said:
    """Look whether what is used and bought is what is said, and no less than the bound."""
    plan, total = look.plan, 0
    for use in plan.rolls:
        end = _end(look, use.name)
        if abs(use.used.nanometres - end) > 1:
            yield use.name, "what is used of it is not what is said"
        total += end
    bought = plan.bought.nanometres
    if look.order.buying is None and abs(bought - total) > len(plan.rolls):
        yield "bought", "it is not what is used of the rolls"
    if look.order.buying is not None and bought != _to_buy(look, total):
        yield "bought", "it is not what must be bought"
    if plan.bound > plan.bought:
        yield "bound", "the plan takes less than is said to be possible"
    if plan.proven and plan.bound != plan.bought:
        yield "bound", "the plan is said to be proven and the bound is below it"


def _end(look: Look, roll: str) -> int:
    """Give up to where a roll is cut: the last of its pieces and of its cut lengths."""
    levels = (each.start + each.length for each in look.plan.levels if each.roll == roll)
    ends = [along(each)[1] for each in look.on_roll[roll]]
    return max([*ends, *(end.nanometres for end in levels)], default=0)


def _to_buy(look: Look, used: int) -> int:
    buying = look.order.buying
    assert buying is not None  # noqa: S101 - asked only of orders to buy
    if buying.whole_roll is not None:
        whole = buying.whole_roll.nanometres
        return max(len(look.plan.rolls), -(-buying.least.nanometres // whole)) * whole
    step = buying.increment.nanometres
    return -(-max(used, buying.least.nanometres) // step) * step


def _told_twice(look: Look) -> Said:
    """Look whether the comparison tells of this plan."""
    plan, compared = look.plan, look.plan.comparison
    if compared is not None and (compared.plan, compared.bound) != (plan.bought, plan.bound):
        yield "comparison", "it is made with another plan"


def _remnants(look: Look) -> Said:
    """Look whether what is left is there, and large enough for what it is said to be good for."""
    spots: dict[str, list[Spot]] = defaultdict(list)
    for remnant in look.plan.remnants:
        use = look.used.get(remnant.roll)
        spots[remnant.roll].append(spot_of(LEFT, remnant))
        if use is None or _beyond(remnant, use):
            yield remnant.roll, "what is left of it lies beside the cloth"
        if remnant.uses != _uses(look, remnant):
            yield remnant.roll, "what is left of it is not good for what is said"
    for roll, left in spots.items():
        pieces = [spot_of(each.piece, each) for each in look.on_roll[roll]]
        for spot, other in overlapping([*pieces, *left]):
            if LEFT in {spot.name, other.name}:
                over = spot.name if other.name == LEFT else other.name
                over = "something else that is left" if over == LEFT else over
                yield roll, f"what is left of it lies over {over}"


def _beyond(remnant: Remnant, use: RollUse) -> bool:
    (left, right), (start, end) = across(remnant), along(remnant)
    on = 0 <= left < right <= use.usable_width.nanometres
    return not (on and 0 <= start < end <= use.length.nanometres)


def _uses(look: Look, remnant: Remnant) -> tuple[str, ...]:
    return tuple(
        use.name
        for use in look.order.remnant_uses
        if use.width <= remnant.width and use.length <= remnant.length
    )
