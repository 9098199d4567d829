"""What a changed repeat or one more flaw would move."""

from __future__ import annotations

from tests.core.cloth.orders import mm, piece, roll, to_buy

from foldwright.core.cloth.asking import what_if, with_flaw, with_repeat
from foldwright.core.cloth.order import ClothOrder, Flaw, Pattern
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import ZERO


def still() -> float:
    return 0.0


def test_a_repeat_two_millimetres_longer_moves_every_piece_but_the_first() -> None:
    pieces = tuple(piece(str(n), 1400, 1500, phase_along=ZERO) for n in range(3))
    order = to_buy(*pieces, pattern=Pattern(vertical_repeat=mm(640)))
    plan = plan_cloth(order, time_given_s=5.0, clock=still).result
    assert plan is not None
    answer = what_if(with_repeat(order, mm(642)), plan, time_given_s=5.0, clock=still).result
    assert answer is not None
    assert answer.more == mm(2 * 3 * 2)  # two gaps of three repeats each
    assert len(answer.moved) == 2


def test_a_flaw_in_the_first_piece_moves_it() -> None:
    order = ClothOrder(pieces=(piece("1", 1400, 1500),), rolls=(roll("a", 5000),))
    plan = plan_cloth(order, time_given_s=5.0, clock=still).result
    assert plan is not None
    flaw = Flaw(along=mm(100), across=mm(700), length=mm(20), width=mm(20))
    answer = what_if(with_flaw(order, "a", flaw), plan, time_given_s=5.0, clock=still).result
    assert answer is not None
    assert answer.more == mm(120)
    assert answer.moved == ("1",)


def test_a_change_that_cannot_be_cut_gives_its_faults() -> None:
    order = ClothOrder(pieces=(piece("1", 1400, 1500),), rolls=(roll("a", 5000),))
    plan = plan_cloth(order, time_given_s=5.0, clock=still).result
    assert plan is not None
    flaw = Flaw(along=ZERO, across=ZERO, length=mm(5000), width=mm(1400))
    answer = what_if(with_flaw(order, "a", flaw), plan, time_given_s=5.0, clock=still)
    assert answer.result is None
    assert "flaws cover every roll" in answer.findings[0].sentence
