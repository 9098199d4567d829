"""What the scale has to say: what is missing, what is guessed, what is stiff."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from foldwright.core.design.choices import RodPlace
from foldwright.core.design.hanging import HangingEdge
from foldwright.core.design.styles import style_of
from foldwright.core.facts.loads import HEM_EASE
from foldwright.core.quantity.length import Length
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.drafting import ask, note
from foldwright.core.weigh.impossible import ImpossiblePanel
from foldwright.core.weigh.load import Weights
from foldwright.core.weigh.made_up import MadeUp
from foldwright.core.weigh.stiffness import stiffness_remarks
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived

L = Figure[Length]
N = Figure[float]


def missing_parts(shade: MadeUp) -> Iterator[Finding]:
    """Ask for what a shade cannot be weighed without.

    Takes: the shade.

    Gives: a question for each part that is not chosen, or not in the shop's list.

    Source: common practice.
    """
    if shade.chosen.face is None:
        yield ask(
            "face",
            "No face cloth from the shop's list is chosen, so its weight is not known.",
            remedy="Choose the face cloth, or add it to the shop's list with its weight.",
        )
    if shade.chosen.bar is None and style_of(shade.layout.style).straight_hem:
        sag = hem_sag(shade)
        yield ask(
            "bar",
            "No bottom bar is chosen. Without one the hem sags by about {0} between columns {1}"
            " apart, and the cords hang slack.",
            sag,
            shade.layout.columns.pitch,
            remedy="Choose a bottom bar.",
        )
    if shade.layout.rows.rods is not RodPlace.NONE and shade.chosen.rod is None:
        yield ask(
            "rod",
            f"Rods are asked for {shade.layout.rows.rods.value}, but no rod is chosen.",
            remedy="Choose a rod, or make the shade without rods.",
        )


def hem_sag(shade: MadeUp) -> L:
    """Give how far a hem without a bar sags between its cord columns.

    Takes: the shade.

    Gives: a length, downward.

    Holds for: a limp hem a little longer than the line it hangs on.

    Source: catenary-page; the ease is a house default.
    """
    pitch = shade.layout.columns.pitch
    span = pitch.value.in_metres
    edge = HangingEdge.of_length(span, span * (1 + HEM_EASE.value))
    return derived(
        "sag of the hem",
        Length.metres(edge.sag_m),
        Unit.LENGTH,
        "A hem longer by {1} than the {0} between two columns hangs as an even chain does.",
        pitch,
        HEM_EASE,
    )


def impossible(refusal: ImpossiblePanel) -> Finding:
    """Stop a shade whose parts contradict each other.

    Takes: what the load curve refused.

    Gives: a stop in its words.

    Source: derived here.
    """
    return Finding(
        id="weigh.impossible",
        severity=Severity.STOP,
        stage=Stage.ORDER,
        sentence="The shade cannot hang as designed: "
        + "; ".join(fault.what for fault in refusal.faults)
        + ".",
        remedies=tuple(Remedy(sentence=fault.remedy) for fault in refusal.faults),
    )


def load_bound(shade: MadeUp) -> Figure[str] | None:
    """Tell why the load of a shade is an upper bound, where it is.

    Takes: the shade.

    Gives: a figure in words, or None where the load is computed as it is.

    Source: derived here (by the work that raising takes).
    """
    if shade.layout.swag is None:
        return None
    return derived(
        "how the load is known",
        "upper bound",
        Unit.WORD,
        "Reckoned as if the whole hem rose with its cords; the middle lags behind by up to {0}, so"
        " the cords carry less, and never more.",
        shade.layout.swag.dip,
    )


def remarks(shade: MadeUp, weights: Weights) -> Iterator[Finding]:
    """Note what is worth knowing about a shade's weight.

    Takes: the shade; its weights.

    Gives: notes.

    Source: common practice; derived here for stiff cloth.
    """
    yield from _bound(shade, weights)
    yield from _unweighed(shade, weights)
    yield from stiffness_remarks(shade, weights)


def _bound(shade: MadeUp, weights: Weights) -> Iterator[Finding]:
    """Say that a load is a bound; of gathered cloth also to what it would climb evenly."""
    if weights.bound is None or shade.layout.swag is None:
        return
    sentence = (
        "The load of a shade whose hem dips is an {0}: the cloth between the columns lags behind"
        " its cords."
    )
    figures: tuple[Figure[Any], ...] = (weights.bound,)
    if shade.layout.swag.pinched:
        sentence += " Gathered evenly, without steps from row to row, it would climb to {1}."
        figures = (weights.bound, _even_climb(shade, weights))
    yield note(
        "bound",
        sentence,
        *figures,
        remedy="Lift by the bound; for the pull at the bar, trust the scale on the rig.",
    )


def _even_climb(shade: MadeUp, weights: Weights) -> N:
    travel = shade.layout.travel
    return derived(
        "load gathered evenly",
        float(LoadCurve.of(weights.load).even_climb(travel.value.in_metres)),
        Unit.FORCE,
        "The same cloth and rows lifted over {0} with no step at any row: what many close rows"
        " tend to.",
        travel,
    )


def _unweighed(shade: MadeUp, weights: Weights) -> Iterator[Finding]:
    guessed = [
        mass
        for (_, cloth), mass in zip(shade.layers, weights.layers, strict=True)
        if cloth.areal_mass_spread is None and not cloth.weighed
    ]
    if guessed:
        yield note(
            "swatch",
            "The cloth's weight is taken from a sheet that does not say how far it may differ;"
            " {0} either way is assumed.",
            shade.habits.cloth_mass_spread,
            remedy="Weigh an off-cut of 10 by 10 cm (4 by 4 in) on a kitchen scale.",
        )
