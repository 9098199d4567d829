"""How far a shade of stiff cloth departs from the load of limp cloth."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.facts.loads import STIFF_FROM, STIFF_START
from foldwright.core.facts.records import Coating
from foldwright.core.facts.stiffness import bending_length_of, stiffness_of_layers
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.drafting import ask, note
from foldwright.core.weigh.load import Weights
from foldwright.core.weigh.made_up import MadeUp
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding
from foldwright.core.why.making import derived, fact
from foldwright.core.why.source import Status

L = Figure[Length]
N = Figure[float]


def stiffness_remarks(shade: MadeUp, weights: Weights) -> Iterator[Finding]:
    """Note how far stiff cloth departs from limp, or ask for it where nothing says.

    Takes: the shade; its weights.

    Gives: notes and questions.

    Source: derived here (a fit to chains of stiff links).
    """
    bending = stiffness_of_layers(cloth for _, cloth in shade.layers)
    bound = _bound_of_stiffness(shade.layout.rows.spacing)
    if bending.value > bound.value:
        yield note(
            "stiff",
            "The cloth is stiff: its bending length is {0}, and the load is that of limp cloth,"
            " good to about 1 %, only up to {1}. At the start of each fold it adds about {2:range},"
            " {3} of the greatest load: that is in the turns, and rests on a fit.",
            bending,
            bound,
            _extra(weights, bending),
            _extra_share(weights),
            remedy="Wind and test with the made-up shade; with limper layers, or rows {0} apart,"
            " the sum would hold as it stands.",
            in_remedy=(_spacing_for(bending),),
        )
    yield from _stiffness_unknown(shade, bound)


def _stiffness_unknown(shade: MadeUp, bound: L) -> Iterator[Finding]:
    """Ask how stiff the layers are that can be stiff: coated ones and interlinings."""
    unknown = [
        fact(cut.layer, cloth.name, Unit.WORD, "As chosen.", Status.CHOSEN)
        for cut, cloth in shade.layers
        if (cloth.coating is not Coating.NONE or cut.layer == "interlining")
        and bending_length_of(cloth) is None
    ]
    if unknown:
        yield ask(
            "stiffness",
            "How stiff is “{0}”? Coated and interlined shades can bend over more than {1}, and then"
            " the load is greater at the start of each fold.",
            unknown[0],
            bound,
            remedy="Push a strip 25 mm (1 in) wide over an edge until its end touches a plane that"
            " falls at 41.5 degrees, and write what hangs over into the shop's list.",
        )


def _bound_of_stiffness(spacing: L) -> L:
    return derived(
        "bending length that still counts as limp",
        Length.metres(STIFF_FROM.value * spacing.value.in_metres),
        Unit.LENGTH,
        "An eighth of the row spacing {0}: below it the load of limp cloth is good to about 1 %.",
        spacing,
    )


def _spacing_for(bending: L) -> L:
    return derived(
        "row spacing for so stiff a cloth",
        Length.metres(bending.value.in_metres / STIFF_FROM.value),
        Unit.LENGTH,
        "Eight times the bending length {0}.",
        bending,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _extra(weights: Weights, bending: L) -> N:
    """Give what stiffness adds at the start of a fold; its range is what the fit leaves over."""
    extra = float(LoadCurve.of(weights.load).stiffness_extra(0.0))
    return derived(
        "extra load of stiff cloth",
        extra,
        Unit.FORCE,
        "Fitted to simulated stiff cloth: about twice the weight of one bending length {0} of all"
        " layers, good to a fifth.",
        bending,
        low=extra * (STIFF_START.low or 0.0) / STIFF_START.value,
        high=extra * (STIFF_START.high or 0.0) / STIFF_START.value,
    )


def _extra_share(weights: Weights) -> N:
    curve = LoadCurve.of(weights.load)
    greatest = derived(
        "greatest load", float(curve.greatest_load()), Unit.FORCE, "{0}, raised.", weights.total
    )
    return derived(
        "share of stiff cloth in the load",
        float(curve.stiffness_extra(0.0)) / greatest.value,
        Unit.SHARE,
        "Of the greatest load {0}.",
        greatest,
    )
