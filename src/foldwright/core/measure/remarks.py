"""What is worth knowing about a window, whatever the mount."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.facts.window_limits import (
    DIAGONAL_DISAGREEMENT,
    HEAD_FALL_SHARE,
    HEIGHT_SPREAD_SEEN,
    NARROWEST_USUAL,
    TALLEST_SHARE,
    WIDEST_USUAL,
)
from foldwright.core.measure.clearances import height_spread
from foldwright.core.measure.drafting import draft
from foldwright.core.measure.opening import Substrate
from foldwright.core.measure.site import Site
from foldwright.core.measure.sizing import finished_drop, finished_width
from foldwright.core.measure.squareness import diagonal_disagreement
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived, measured
from foldwright.core.why.trying import Draft, by_hand

L = Figure[Length]

SUBSTRATE_CAUTIONS = {
    Substrate.VINYL: "Screws strip in a vinyl frame and may pierce its seal; fix beside it, and"
    " ask the window's maker before drilling.",
    Substrate.TILE: "Tile cracks under a hammer drill and hides pipes and cables; drill with a"
    " tile bit into the wall behind, after searching for both.",
    Substrate.DRYWALL: "Drywall alone holds no shade that is pulled every day; find studs, or"
    " use anchors at a quarter of their rating.",
}


def draft_remarks(site: Site) -> Iterator[Draft[Site]]:
    """Draft what is worth knowing about a window, whatever the mount.

    Takes: the site.

    Gives: drafts of findings.

    Source: common practice.
    """
    yield from _nothing_left(site)
    yield from _diagonals(site)
    yield from _spread(site)
    yield from _fall(site)
    yield from _unusual(site)
    yield from _substrate(site)


def _nothing_left(site: Site) -> Iterator[Draft[Site]]:
    for figure in (finished_width(site), finished_drop(site)):
        if figure is not None and figure.value <= ZERO:
            word = figure.name.rpartition(" ")[2]
            yield draft(
                Severity.STOP,
                f"no-{word}",
                f"Nothing is left of the {word}: it comes to {{0}}.",
                figure,
                ways=(by_hand("Check the measures, the deduction and the clearances."),),
            )


def _diagonals(site: Site) -> Iterator[Draft[Site]]:
    gap = diagonal_disagreement(site)
    if gap is not None and gap.value > DIAGONAL_DISAGREEMENT.value:
        yield draft(
            Severity.ASK,
            "diagonals-disagree",
            "The diagonals do not belong to these widths and heights: they are {0} off, where {1}"
            " is usual.",
            gap,
            DIAGONAL_DISAGREEMENT,
            ways=(by_hand("Measure widths, heights and both diagonals again."),),
        )


def _spread(site: Site) -> Iterator[Draft[Site]]:
    spread = height_spread(site)
    if spread is not None and spread.value > HEIGHT_SPREAD_SEEN.value:
        yield draft(
            Severity.NOTE,
            "heights-spread",
            "The heights differ by {0}; beyond {1} a level bar looks crooked to the sill.",
            spread,
            HEIGHT_SPREAD_SEEN,
            ways=(
                by_hand("Show the client which way the sill runs, and agree on the height rule."),
            ),
        )


def _fall(site: Site) -> Iterator[Draft[Site]]:
    width, fall = finished_width(site), site.opening.head_fall
    if width is None or fall is None:
        return
    limit = derived(
        "fall that needs shims",
        Length.metres(width.value.in_metres * HEAD_FALL_SHARE.value),
        Unit.LENGTH,
        "Over a width of {0}, at {1} of it.",
        width,
        HEAD_FALL_SHARE,
    )
    if abs(fall) > limit.value:
        yield draft(
            Severity.NOTE,
            "head-falls",
            "The head falls by {0} across the width; beyond {1} the board is shimmed level.",
            measured("fall of the head", fall),
            limit,
            ways=(by_hand("Take shims for the low end, and level the board, never the cords."),),
            stage=Stage.INSTALL,
        )


def _unusual(site: Site) -> Iterator[Draft[Site]]:
    width, drop = finished_width(site), finished_drop(site)
    if width is not None and width.value > WIDEST_USUAL.value:
        yield _owner("wide", "The shade is {0} wide; beyond {1} one shade", width, WIDEST_USUAL)
    if width is not None and ZERO < width.value < NARROWEST_USUAL.value:
        yield _owner("narrow", "The shade is {0} wide; under {1} it", width, NARROWEST_USUAL)
    if width is not None and drop is not None and width.value > ZERO:
        yield from _tall(width, drop)


def _tall(width: L, drop: L) -> Iterator[Draft[Site]]:
    shape = derived(
        "drop over width",
        float(drop.value / width.value),
        Unit.RATIO,
        "The drop {0} over the width {1}.",
        drop,
        width,
    )
    if shape.value > TALLEST_SHARE.value:
        yield _owner(
            "tall", "The shade is {0} times as long as wide; beyond {1} it", shape, TALLEST_SHARE
        )


def _owner(
    word: str,
    sentence: str,
    found: Figure[Length] | Figure[float],
    limit: Figure[Length] | Figure[float],
) -> Draft[Site]:
    return draft(
        Severity.NOTE,
        f"unusually-{word}",
        f"{sentence} wants the owner's agreement.",
        found,
        limit,
        ways=(by_hand("Agree with the owner, or divide the window."),),
    )


def _substrate(site: Site) -> Iterator[Draft[Site]]:
    ground = site.opening.substrate
    if ground in SUBSTRATE_CAUTIONS:
        yield draft(
            Severity.NOTE,
            "substrate",
            f"The fixings go into {{0}}. {SUBSTRATE_CAUTIONS[ground]} Local codes come first.",
            chosen("ground for the fixings", ground.value, Unit.WORD),
            ways=(by_hand("Plan the fixings before the visit."),),
            stage=Stage.INSTALL,
        )
