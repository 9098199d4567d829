"""Whether the measures can be believed: width and height exchanged, or taken by somebody else."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.measure.drafting import draft
from foldwright.core.measure.site import HEIGHT_NAMES, WIDTH_NAMES, Site
from foldwright.core.measure.sizing import finished_drop, finished_width
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

PAIRS = (*zip(WIDTH_NAMES, HEIGHT_NAMES, strict=True), ("casing_width", "casing_height"))
SHAPES = {True: "taller than wide", False: "wider than tall"}


def draft_doubts(site: Site) -> Iterator[Draft[Site]]:
    """Draft what makes the measures doubtful.

    Takes: the site.

    Gives: drafts of findings.

    Source: common practice.
    """
    yield from _exchanged(site)
    yield from _unsigned(site)


def _exchanged(site: Site) -> Iterator[Draft[Site]]:
    """Hold the size against what was noted by eye; a square window is either."""
    noted = site.opening.taller_than_wide
    width, drop = finished_width(site), finished_drop(site)
    if noted is None or width is None or drop is None or width.value == drop.value:
        return
    if noted is not (drop.value > width.value):
        yield draft(
            Severity.STOP,
            "exchanged",
            "The shade comes out {0} wide and {1} long, but the window was noted as {2}: width and"
            " height may be exchanged.",
            width,
            drop,
            chosen("shape noted at the window", SHAPES[noted], Unit.WORD),
            ways=(
                _exchange_sizes(site) if site.asked.width is not None else _exchange(site),
                by_change(
                    site,
                    site.system,
                    "Keep the measures: the note was wrong.",
                    opening__taller_than_wide=not noted,
                ),
                by_hand("Look at the photograph, or measure again."),
            ),
        )


def _exchange(site: Site) -> Way[Site]:
    """Write each width where its height stands, and the other way round."""
    fields: dict[str, object] = {}
    for width, height in PAIRS:
        across, along = getattr(site.opening, width), getattr(site.opening, height)
        if across is not None or along is not None:
            fields |= {f"opening__{width}": along, f"opening__{height}": across}
    return by_change(site, site.system, "Exchange the widths and the heights.", **fields)


def _exchange_sizes(site: Site) -> Way[Site]:
    fields = {"asked__width": site.asked.drop, "asked__drop": site.asked.width}
    return by_change(site, site.system, "Exchange width and drop.", **fields)


def _unsigned(site: Site) -> Iterator[Draft[Site]]:
    others = site.opening.measured_by.strip()
    if others and not site.opening.measures_signed:
        yield draft(
            Severity.ASK,
            "measures-unsigned",
            "The window was measured by {0}, who has not signed for it: whose loss is a wrong"
            " measure?",
            chosen("who measured", others, Unit.WORD),
            ways=(
                by_change(site, site.system, "They have signed.", opening__measures_signed=True),
                by_hand("Have it signed, or measure it yourself."),
            ),
        )
