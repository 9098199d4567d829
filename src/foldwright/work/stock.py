"""Plan what a job cuts from stock lengths: tubes, boards, bars, rods, cords and tapes."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import count

from foldwright.core.check.boards.board import BoardLift
from foldwright.core.check.plan import ShadePlan
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import RackPiece, ShopList, StockBar
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.printing import round_length
from foldwright.core.rig.headrail import Headrail
from foldwright.core.stock.checking import faults_in
from foldwright.core.stock.lengths import Fitted, PartLength, lengths_of
from foldwright.core.stock.order import CutOrder, Need, Offcut, Saw, StockLength, StockPlan
from foldwright.core.stock.planning import CannotCut, plan_stock
from foldwright.core.stock.wording import proof_in_words
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure
from foldwright.work.boards import hang_boards
from foldwright.work.cut_orders import shared_boards
from foldwright.work.job import JobPlan

Clock = Callable[[], float]
Watch = Callable[["MaterialCut"], bool]
WHOLE = Length.mm(1)


@dataclass(frozen=True, kw_only=True, slots=True)
class MaterialCut:
    """One material: what is cut of it, and how; without a plan the faults say why."""

    material: str
    parts: tuple[PartLength, ...]
    order: CutOrder
    plan: StockPlan | None
    priced: bool  # False: nobody knows what a bar costs, and its metres stand in
    faults: tuple[Fault, ...] = ()

    @property
    def said(self) -> str:
        """Say what the plan costs and what is proven; nothing without a plan."""
        if self.plan is None:
            return ""
        if self.priced:
            return proof_in_words(self.plan)
        return f"{proof_in_words(self.plan, ' m')} Metres are counted, as not all have a price."


class PlanAtFault(Exception):  # noqa: N818 - a defect of ours, never the person's
    """A plan did not pass the second look and must not be shown."""


def parts_of(plan: JobPlan) -> tuple[PartLength, ...]:
    """Give every straight part of a job, in the order of its shades."""
    boards, rails = shared_boards(plan), shared_rails(plan)
    return tuple(part for shade in plan.shades for part in _parts(shade, plan, boards, rails))


def shared_rails(plan: JobPlan) -> dict[str, Headrail | None]:
    """Give each headrail with one tube for several shades by its first shade, None by the others.

    Takes: the planned job.

    Gives: nothing for a shade with a tube of its own.
    """
    hung = [board for board in hang_boards(plan.job) if board.board.lift is BoardLift.ONE]
    others = {tag: None for board in hung for tag in board.board.shades[1:]}
    return {**others, **{board.board.shades[0]: board.headrail for board in hung}}


def _parts(
    shade: ShadePlan,
    plan: JobPlan,
    boards: Mapping[str, Figure[Length] | None],
    rails: Mapping[str, Headrail | None],
) -> Iterator[PartLength]:
    tag = shade.spec.tag
    if shade.size is not None:
        yield from lengths_of(
            Fitted(
                tag=tag,
                size=shade.size,
                layout=shade.layout,
                headrail=rails.get(tag, shade.headrail),
                board_length=boards.get(tag, shade.size.board_length),
                chosen=shade.chosen,
                habits=plan.job.habits,
            )
        )


def cut_stock(
    plan: JobPlan,
    *,
    time_given_s: float,
    clock: Clock,
    watch: Watch = lambda _cut: True,
) -> tuple[MaterialCut, ...]:
    """Plan the cuts of every material of a job.

    Takes: the planned job; the seconds given to all of them together; a clock in seconds;
    what looks at each better plan and gives False to take the best so far of this material.

    Gives: the materials in the order in which the job first asks for them.
    """
    materials = _by_material(parts_of(plan))
    end = clock() + time_given_s
    cuts = []
    for left, (material, parts) in zip(count(len(materials), -1), materials.items(), strict=False):
        share_s = max(0.0, end - clock()) / left
        asked = _asked(material, parts, plan)
        cuts.append(_cut(asked, _until(clock() + share_s, clock), watch))
    return tuple(cuts)


def _until(end: float, clock: Clock) -> Clock:
    return lambda: end - clock()


def _by_material(parts: Iterable[PartLength]) -> dict[str, tuple[PartLength, ...]]:
    found: dict[str, tuple[PartLength, ...]] = {}
    for part in parts:
        found[part.material] = (*found.get(part.material, ()), part)
    return found


def _asked(material: str, parts: tuple[PartLength, ...], plan: JobPlan) -> MaterialCut:
    """Put one material into an order that is not planned yet."""
    shop, habits = plan.job.shop, plan.job.habits
    listed = listed_lengths(material, shop)
    priced = all(bar.cost for bar in listed)
    order = CutOrder(
        needs=tuple(Need(name=part.name, length=whole_millimetres(part)) for part in parts),
        stock=tuple(_stock(bar, priced=priced) for bar in listed),
        rack=tuple(_rack(material, shop)),
        saw=_saw(parts, habits),
    )
    return MaterialCut(material=material, parts=parts, order=order, plan=None, priced=priced)


def _cut(asked: MaterialCut, seconds_left: Clock, watch: Watch) -> MaterialCut:
    """Plan a material; every plan is looked at a second time before anyone sees it."""

    def seen(found: StockPlan) -> MaterialCut:
        if wrong := faults_in(found, asked.order):
            raise PlanAtFault(" ".join(wrong))
        return replace(asked, plan=found)

    try:
        found = plan_stock(asked.order, seconds_left, lambda better: watch(seen(better)))
    except CannotCut as trouble:
        faults = (_named(fault, asked) for fault in trouble.faults)
        return replace(asked, faults=tuple(faults))
    return seen(found)


def listed_lengths(material: str, shop: ShopList) -> tuple[StockBar, ...]:
    """Give the lengths in which a material is sold, or its sheet's own."""
    listed = tuple(bar for bar in shop.stock_lengths.values() if bar.material == material)
    tube = shop.tubes.get(material)
    if listed or tube is None or tube.stock_length is None:
        return listed
    return (StockBar(name=f"{material}, full length", material=material, length=tube.stock_length),)


def whole_millimetres(part: PartLength) -> Length:
    """Give the length to cut in whole millimetres, rounded the way its use asks for."""
    return round_length(part.length.value, WHOLE, part.length.rounding)


def _stock(bar: StockBar, *, priced: bool) -> StockLength:
    cost = bar.cost if priced and bar.cost else bar.length.in_metres
    return StockLength(name=bar.name, length=bar.length, cost=cost, quantity=bar.quantity)


def _rack(material: str, shop: ShopList) -> Iterator[Offcut]:
    for piece in shop.offcuts.values():
        if piece.material == material:
            yield Offcut(name=piece.name, length=piece.length)


def _saw(parts: tuple[PartLength, ...], habits: Habits) -> Saw:
    if not all(part.sawn for part in parts):
        return Saw()
    return Saw(kerf=habits.saw_kerf.value, trim=habits.saw_trim.value)


def _named(fault: Fault, asked: MaterialCut) -> Fault:
    """Lead a fault by its part or its material; say where the lengths it lacks are listed."""
    material, (room, _, rest) = asked.material, fault.where.partition(".")
    if room == "needs" and rest:
        part = asked.parts[int(rest.split(".")[0]) - 1].name
        return replace(fault, where=f"{material}, {part}")
    if room == "stock" and rest:
        bar = asked.order.stock[int(rest.split(".")[0]) - 1].name
        return replace(fault, where=f"{material}, “{bar}”")
    if room == "stock" and not asked.order.stock:
        remedy = f"List the lengths of {material} under [[stock_lengths]] in the shop's list."
        return Fault(where=material, what=fault.what, remedy=remedy)
    return replace(fault, where=material)


def rack_after(cuts: tuple[MaterialCut, ...], plan: JobPlan) -> tuple[RackPiece, ...]:
    """Give the rack as it is once everything is cut: what was not used, and the rests kept."""
    used = {bar.name for cut in cuts if cut.plan for bar in cut.plan.bars if bar.from_rack}
    kept = [piece for piece in plan.job.shop.offcuts.values() if piece.name not in used]
    names = {piece.name for piece in kept}
    for cut in cuts:
        kept += _rests(cut, plan.job.habits.least_offcut.value, names)
    return tuple(kept)


def _rests(cut: MaterialCut, least: Length, names: set[str]) -> Iterator[RackPiece]:
    for bar in cut.plan.bars if cut.plan else ():
        if bar.remainder >= max(least, WHOLE):
            yield RackPiece(
                name=_new_name(cut.material, names),
                material=cut.material,
                length=Length.mm(math.floor(bar.remainder.in_millimetres)),
            )


def _new_name(material: str, names: set[str]) -> str:
    name = next(word for number in count(1) if (word := f"{material}, rest {number}") not in names)
    names.add(name)
    return name


def metres_needed(cut: MaterialCut) -> float:
    """Give the metres of a material that its parts add up to."""
    return sum((whole_millimetres(part) for part in cut.parts), ZERO).in_metres
