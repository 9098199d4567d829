"""An exact length never drifts, whatever is done to it."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from foldwright.core.quantity.length import ZERO, Length

sixty_fourths = st.integers(min_value=0, max_value=30_000)


@given(st.lists(sixty_fourths, max_size=50))
def test_sixty_fourths_add_up_exactly(counts: list[int]) -> None:
    total = sum((Length.inches(Fraction(count, 64)) for count in counts), ZERO)
    assert total.in_inches == Fraction(sum(counts), 64)


@given(st.integers(min_value=1, max_value=5_000), st.integers(min_value=1, max_value=40))
def test_parts_of_a_length_make_the_length_again(millimetres: int, parts: int) -> None:
    length = Length.mm(millimetres)
    assert abs(length / parts * parts - length).nanometres <= parts
    assert length / (length / 2) == 2 or millimetres % 2


def test_a_length_over_a_length_is_a_plain_ratio() -> None:
    assert Length.inches(10) / Length.inches(4) == Fraction(5, 2)


def test_metres_come_in_from_computations_and_go_out_to_them() -> None:
    assert Length.metres(0.0254) == Length.inches(1)
    assert Length.inches(1).in_metres == 0.0254
    assert Length.inches(1).in_millimetres == 25.4


def test_only_zero_is_nothing() -> None:
    assert not ZERO
    assert Length(1)
