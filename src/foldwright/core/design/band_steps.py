"""The steps that put bands and trims on the face."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.layout import BandPlan, Layout, SewingStep
from foldwright.core.design.making import BandSewing


def flat_band_steps(layout: Layout) -> Iterator[SewingStep]:
    """Tell how bands are sewn flat to the face, before its sides are turned.

    Takes: the layout.

    Gives: the steps; none where nothing is sewn flat.

    Source: common practice.
    """
    if layout.bands is not None and layout.bands.sewing is BandSewing.FLAT:
        yield from _across(
            layout, layout.bands, "Sew the band on", "Press its edges in and sew it flat"
        )
        yield from _down(
            layout, layout.bands, "Sew the side bands on", "Press their edges in and sew"
        )


def applied_band_steps(layout: Layout) -> Iterator[SewingStep]:
    """Tell how trims are applied, once the rings are on.

    Takes: the layout.

    Gives: the steps; none where nothing is applied.

    Source: common practice.
    """
    if layout.bands is not None and layout.bands.sewing is BandSewing.APPLIED:
        by_hand = "Glue it or sew it by hand"
        yield from _across(layout, layout.bands, "Apply the trim", by_hand)
        yield from _down(layout, layout.bands, "Apply the side trims", "Glue or sew by hand")


def _across(layout: Layout, plan: BandPlan, title: str, how: str) -> Iterator[SewingStep]:
    if plan.lower is None or plan.upper is None:
        return
    for piece in layout.pieces:
        if piece.name == "band":
            yield SewingStep(
                title=title,
                instruction=f"Cut the band {{0}} by {{1}}. {how} to the face between {{2}} and"
                " {3} from the bottom edge.",
                figures=(piece.width, piece.length, plan.lower, plan.upper),
            )


def _down(layout: Layout, plan: BandPlan, title: str, how: str) -> Iterator[SewingStep]:
    half = plan.side_edges[: len(plan.side_edges) // 2]
    for piece in layout.pieces:
        if piece.name == "side band":
            between = "to {2} in from it" if len(half) == 1 else "between {2} and {3} in from it"
            yield SewingStep(
                title=title,
                instruction=f"Cut two side bands {{0}} by {{1}}. {how} one down each side edge,"
                f" {between}.",
                figures=(piece.width, piece.length, *half),
            )
