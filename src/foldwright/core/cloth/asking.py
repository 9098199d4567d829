"""What if: the same job with a repeat that came out otherwise, or one flaw more."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from foldwright.core.cloth.order import ClothOrder, ClothPlan, Flaw
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import Length
from foldwright.core.why.answer import Answer


@dataclass(frozen=True, kw_only=True, slots=True)
class Difference:
    """The plan as it would be, how much more it takes (below zero: less), and what moves."""

    plan: ClothPlan
    more: Length
    moved: tuple[str, ...]


def with_repeat(order: ClothOrder, vertical_repeat: Length) -> ClothOrder:
    """Give an order on a cloth whose repeat along is another.

    Takes: an order; the repeat as it was measured.

    Gives: the order; phases stay, as they are lengths from the motif.

    Source: derived here.

    >>> from foldwright.core.cloth.order import Pattern
    >>> order = ClothOrder(pieces=(), pattern=Pattern(vertical_repeat=Length.mm(640)))
    >>> with_repeat(order, Length.mm(642)).pattern.vertical_repeat.in_millimetres
    642.0
    """
    return replace(order, pattern=replace(order.pattern, vertical_repeat=vertical_repeat))


def with_flaw(order: ClothOrder, roll: str, flaw: Flaw) -> ClothOrder:
    """Give an order with one more flaw on one of its rolls.

    Takes: an order; the name of a roll in hand; the flaw.

    Gives: the order.

    Source: derived here.

    >>> from foldwright.core.cloth.order import Roll
    >>> flaw = Flaw(along=Length.mm(0), across=Length.mm(0), length=Length.mm(5),
    ...             width=Length.mm(5))
    >>> roll = Roll(name="1", lot="", usable_width=Length.mm(1400), length=Length.mm(9000))
    >>> len(with_flaw(ClothOrder(pieces=(), rolls=(roll,)), "1", flaw).rolls[0].flaws)
    1
    """
    rolls = tuple(
        replace(each, flaws=(*each.flaws, flaw)) if each.name == roll else each
        for each in order.rolls
    )
    return replace(order, rolls=rolls)


def what_if(
    order: ClothOrder, plan: ClothPlan, *, time_given_s: float, clock: Callable[[], float]
) -> Answer[Difference]:
    """Plan a changed order and tell how it differs from a plan made before.

    Takes: the changed order; the plan of the order as it was; the seconds to use at most; a
    clock that gives seconds.

    Gives: the difference, or the faults of the changed order.

    Source: derived here.

    >>> from foldwright.core.cloth.order import Buying, ClothPiece
    >>> piece = ClothPiece(name="1", shade="A", room="", layer="face",
    ...                    width=Length.mm(900), length=Length.mm(1500))
    >>> buying = Buying(usable_width=Length.mm(1400), increment=Length.mm(100))
    >>> order = ClothOrder(pieces=(piece,), buying=buying)
    >>> plan = plan_cloth(order, time_given_s=1.0, clock=lambda: 0.0).result
    >>> longer = replace(order, pieces=(replace(piece, length=Length.mm(1650)),))
    >>> what_if(longer, plan, time_given_s=1.0, clock=lambda: 0.0).result.more.in_millimetres
    200.0
    """
    answer = plan_cloth(order, time_given_s=time_given_s, clock=clock)
    if answer.result is None:
        return Answer(result=None, findings=answer.findings)
    before = {each.piece: each for each in plan.placements}
    moved = tuple(each.piece for each in answer.result.placements if before.get(each.piece) != each)
    more = answer.result.bought - plan.bought
    difference = Difference(plan=answer.result, more=more, moved=moved)
    return Answer(result=difference, findings=answer.findings)
