"""A plan's length in words, and the simpler ways beside it."""

from dataclasses import replace

from foldwright.core.cloth.example import PLAN
from foldwright.core.cloth.order import Comparison
from foldwright.core.cloth.wording import comparison_rows, gap_in_words, gap_percent
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System

OPEN = replace(PLAN, bought=Length.mm(31_500), bound=Length.mm(31_364), proven=False)


def test_an_open_plan_says_what_is_impossible_and_how_far_apart() -> None:
    assert gap_in_words(OPEN, System.METRIC) == (
        "31.50 m; less than 31.36 m is proven impossible (0.5 % apart)."
    )
    # 31.5 m are 34.45 yd and up, 31.364 m are 34.30 yd and down.
    assert gap_in_words(OPEN, System.INCH) == (
        "34 1/2 yd; less than 34 1/4 yd is proven impossible (0.5 % apart)."
    )


def test_a_plan_without_a_bound_claims_nothing() -> None:
    assert gap_in_words(replace(OPEN, bound=Length.mm(0)), System.METRIC) == (
        "31.50 m; how much less is possible is not proven yet."
    )


def test_a_search_that_was_ended_says_so_unless_nothing_was_left_to_find() -> None:
    assert gap_in_words(replace(OPEN, cut_short=True), System.METRIC).endswith(
        "The search was ended early: a better plan may exist."
    )
    assert "ended" not in gap_in_words(replace(PLAN, cut_short=True), System.METRIC)


def test_the_gap_is_rounded_up_to_the_tenth() -> None:
    assert gap_percent(replace(OPEN, bought=Length.mm(31_365))) == "0.1 %"
    assert gap_percent(replace(OPEN, bought=Length.mm(31_364))) == "0.0 %"
    assert gap_percent(replace(OPEN, bound=Length.mm(0))) == "100.0 %"


def test_the_comparison_tells_what_the_plan_saves() -> None:
    compared = Comparison(
        plan=Length.mm(31_500),
        shade_by_shade=Length.mm(39_000),
        first_fit=Length.mm(31_500),
        bound=Length.mm(31_364),
    )
    rows = comparison_rows(replace(OPEN, comparison=compared), System.METRIC)
    assert [row[1:] for row in rows] == [
        ("31.50 m", ""), ("39.00 m", "7.50 m saved"), ("31.50 m", "the same"), ("31.36 m", ""),
    ]  # fmt: skip


def test_a_proven_plan_and_its_bound_are_printed_alike() -> None:
    compared = Comparison(
        plan=Length.mm(6859), shade_by_shade=Length.mm(7000), first_fit=Length.mm(6859),
        bound=Length.mm(6859),
    )  # fmt: skip
    rows = comparison_rows(replace(PLAN, comparison=compared), System.METRIC)
    assert rows[0][1] == rows[-1][1] == "6.86 m"
