"""What a plan of linear stock costs in words, with what is proven impossible to beat."""

from __future__ import annotations

from foldwright.core.stock.order import StockPlan


def proof_in_words(plan: StockPlan, unit: str = "") -> str:
    """Say what a plan costs and what is proven impossible to beat.

    Takes: a plan that has been checked; the unit behind its figures, none for money.

    Gives: one or two sentences.

    Source: derived here.

    >>> proof_in_words(StockPlan(bars=(), cost=66.0, least_cost=66.0, proven=True))
    '66.00 in all; it is proven that no plan costs less.'
    >>> proof_in_words(StockPlan(bars=(), cost=9.0, least_cost=6.0, proven=False), " m")
    '9.00 m in all; less than 6.00 m is proven impossible (50.0 % apart).'
    """
    if plan.proven:
        return f"{plan.cost:.2f}{unit} in all; it is proven that no plan costs less."
    apart = _percent_apart(plan)
    words = (
        f"{plan.cost:.2f}{unit} in all; less than {plan.least_cost:.2f}{unit} is proven"
        f" impossible{apart}."
    )
    if not plan.cut_short:
        return words
    return f"{words} The search was ended early: a cheaper plan may exist."


def _percent_apart(plan: StockPlan) -> str:
    """Give how far a plan may lie above the least possible, rounded up to the tenth."""
    if not plan.least_cost:
        return ""
    over = plan.cost / plan.least_cost - 1
    return f" ({-(-over * 1000 // 1) / 10:.1f} % apart)"
