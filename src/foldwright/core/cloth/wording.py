"""A plan's length in words, with how near it is to the least possible, and to simpler ways."""

from __future__ import annotations

from foldwright.core.cloth.order import ClothPlan
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_cloth
from foldwright.core.quantity.rounding import Rounding, System


def gap_in_words(plan: ClothPlan, system: System) -> str:
    """Say what a plan takes and what is proven impossible to beat.

    Takes: a plan that has been checked; the reader's system.

    Gives: one or two sentences; the bound is rounded down, what is bought up.

    Source: derived here.

    >>> from foldwright.core.cloth.example import PLAN
    >>> gap_in_words(PLAN, System.METRIC)
    '3.34 m; it is proven that no plan takes less.'
    """
    takes = print_cloth(plan.bought, system)
    if plan.proven:
        words = f"{takes}; it is proven that no plan takes less."
    elif not plan.bound:
        words = f"{takes}; how much less is possible is not proven yet."
    else:
        least = print_cloth(plan.bound, system, Rounding.MUST_FIT)
        words = f"{takes}; less than {least} is proven impossible ({gap_percent(plan)} apart)."
    if not plan.cut_short or plan.proven:
        return words
    return f"{words} The search was ended early: a better plan may exist."


def gap_percent(plan: ClothPlan) -> str:
    """Give how far a plan may lie above the least possible, as a share of the bound.

    Takes: a plan.

    Gives: text such as "0.4 %", rounded up to the tenth.

    Source: derived here.

    >>> from foldwright.core.cloth.example import PLAN
    >>> gap_percent(PLAN)
    '0.0 %'
    """
    if not plan.bound:
        return "100.0 %"
    over = (plan.bought - plan.bound) / plan.bound
    return f"{-(-over * 1000 // 1) / 10:.1f} %"


def comparison_rows(plan: ClothPlan, system: System) -> tuple[tuple[str, str, str], ...]:
    """Set the plan beside each shade on its own, the simple filling, and the least possible.

    Takes: a plan; the reader's system.

    Gives: rows of name, length and what this plan saves against it; none without figures.

    Source: derived here.

    >>> from foldwright.core.cloth.example import PLAN
    >>> comparison_rows(PLAN, System.METRIC)
    ()
    """
    compared = plan.comparison
    if compared is None:
        return ()
    least = Rounding.MUST_FIT if compared.bound < compared.plan else Rounding.CUT_OVERSIZE
    proven = print_cloth(compared.bound, system, least) if compared.bound else "not known yet"
    return (
        ("This plan", print_cloth(compared.plan, system), ""),
        _row("Each shade on its own", compared.shade_by_shade, compared.plan, system),
        _row("Longest first, side by side", compared.first_fit, compared.plan, system),
        ("Proven least", proven, ""),
    )


def _row(name: str, other: Length, plan: Length, system: System) -> tuple[str, str, str]:
    saved = other - plan
    if saved.nanometres <= 0:
        return name, print_cloth(other, system), "the same" if not saved else ""
    return name, print_cloth(other, system), f"{print_cloth(saved, system, Rounding.MARK)} saved"
