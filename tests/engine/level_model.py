"""Lengths off a roll, each as long as the longest piece in it, by a published model.

“Models and bounds for two-dimensional level packing problems”, Journal of Combinatorial
Optimization 8 (2004): pieces from long to short, each opens a length or lies in one that a
piece before it has opened. It knows neither repeat nor flaw.
"""

from __future__ import annotations

from pyscipopt import Model, quicksum


def least_by_levels(sizes: list[tuple[int, int]], across: int) -> int:
    """Give the least length of a roll so wide, for pieces given as their width and length."""
    longest_first = sorted(sizes, key=lambda size: -size[1])
    numbers = range(len(sizes))
    model = Model()
    model.hideOutput()
    opens = [model.addVar(vtype="B", obj=long) for _, long in longest_first]
    joins = {(i, j): model.addVar(vtype="B") for i in numbers for j in numbers if i < j}
    for j in numbers:
        model.addCons(opens[j] + quicksum(joins[i, j] for i in range(j)) == 1)
    for i in numbers:
        room = across - longest_first[i][0]
        beside = ((j, longest_first[j][0]) for j in numbers if j > i)
        model.addCons(quicksum(wide * joins[i, j] for j, wide in beside) <= room * opens[i])
    model.optimize()
    assert model.getStatus() == "optimal"
    return round(model.getObjVal())
