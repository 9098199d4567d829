"""A lining that was steamed by itself: cut for what it loses, not for what the face loses."""

from __future__ import annotations

from dataclasses import replace

from foldwright.core.design.layout import LayerCut, Layout
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

LINING = "lining"


def lining_as_tested(layout: Layout, face: Figure[float], lining: Figure[float]) -> Layout:
    """Cut the lining of a layout by its own shrinkage.

    Takes: the layout; the shrinkage of the face, by which all its layers are cut, and that of
    the lining, as shares.

    Gives: the layout with another length of its lining.

    Source: common practice.

    >>> from foldwright.core.pieces.example import SHADE
    >>> from foldwright.core.why.making import chosen
    >>> tested = chosen("shrinkage of the lining", 0.1, Unit.SHARE)
    >>> cuts = lining_as_tested(SHADE.layout, SHADE.shrinkage, tested).cuts
    >>> [after.length.value > before.length.value
    ...  for before, after in zip(SHADE.layout.cuts, cuts)]
    [False, True]
    """
    cuts = (_tested(cut, face, lining) if cut.layer == LINING else cut for cut in layout.cuts)
    return replace(layout, cuts=tuple(cuts))


def _tested(cut: LayerCut, face: Figure[float], lining: Figure[float]) -> LayerCut:
    kept = cut.length.value.in_metres * (1 - face.value) / (1 - lining.value)
    because = "{0}, which allows for the face's shrinkage {1}, cut for the lining's own {2}."
    length = derived(
        "cut length of the lining",
        Length.metres(kept),
        Unit.LENGTH,
        because,
        cut.length,
        face,
        lining,
        rounding=Rounding.CUT_OVERSIZE,
    )
    return replace(cut, length=length)
