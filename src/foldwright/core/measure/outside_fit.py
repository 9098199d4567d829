"""Whether an outside shade finds its wall: above the casing, beside it, over it."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.facts.window_limits import (
    BOARD_ABOVE_FRAME,
    HEADROOM_ABOVE_BOARD,
    LEAST_OVERLAP,
    WALL_BESIDE_OVERLAP,
)
from foldwright.core.measure.drafting import draft
from foldwright.core.measure.moving import move
from foldwright.core.measure.opening import MountPlace, Side
from foldwright.core.measure.site import Site, typed_or
from foldwright.core.measure.sizing import above_opening
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import derived, measured, supplied
from foldwright.core.why.trying import Draft, Way, by_change, by_hand, on_mark

L = Figure[Length]


def draft_outside_fit(site: Site) -> Iterator[Draft[Site]]:
    """Draft what an outside shade lacks on its wall.

    Takes: the site.

    Gives: drafts of findings; none inside.

    Source: common practice; measuring-page for the overlap.
    """
    if not site.outside:
        return
    yield from _headroom(site)
    yield from _board_above_frame(site)
    for side in Side:
        yield from _wall_beside(site, side)
        yield from _overlap(site, side)


def _headroom(site: Site) -> Iterator[Draft[Site]]:
    if site.opening.wall_above is None:
        return
    wall, needed = measured("wall above the casing", site.opening.wall_above), _needed_above(site)
    if wall.value < needed.value:
        yield draft(
            Severity.STOP,
            "headroom",
            "There is {0} of wall above the casing; the shade needs {1}.",
            wall,
            needed,
            ways=tuple(_headroom_ways(site, wall)),
        )


def _needed_above(site: Site) -> L:
    """Take wall for the shade's top, and for the board with its brackets."""
    above = above_opening(site)
    if site.board is None or above.value <= ZERO:
        return above
    board = supplied("board thickness", site.board.thickness, Unit.LENGTH, site.board.name)
    value = max(above.value, board.value + HEADROOM_ABOVE_BOARD.value)
    because = "The greater of the height above {0}, and the board {1} with {2} for its brackets."
    return derived(
        "wall needed above", value, Unit.LENGTH, because, above, board, HEADROOM_ABOVE_BOARD
    )


def _headroom_ways(site: Site, wall: L) -> Iterator[Way[Site]]:
    lower = on_mark(wall.value, site.system, Rounding.MUST_FIT)
    figure = derived(
        "height above",
        lower,
        Unit.LENGTH,
        "The wall there is, {0}.",
        wall,
        rounding=Rounding.MUST_FIT,
    )
    if lower >= BOARD_ABOVE_FRAME.value:
        sentence = "Let the shade begin {0} above the casing."
        yield by_change(site, site.system, sentence, figure, mount__above=lower)
    yield by_change(site, site.system, "Fix the board on the casing itself.", mount__above=ZERO)
    yield _mount_inside(site)
    yield by_hand("Fix the board to the ceiling, or hang the shade from it.")


def _mount_inside(site: Site) -> Way[Site]:
    return move(site, MountPlace.INSIDE, "Mount it inside the reveal.")


def _board_above_frame(site: Site) -> Iterator[Draft[Site]]:
    """Find a board too near the casing: its fixings find ground only an inch up."""
    above = above_opening(site)
    if ZERO < above.value < BOARD_ABOVE_FRAME.value:
        least = on_mark(BOARD_ABOVE_FRAME.value, site.system, Rounding.CUT_OVERSIZE)
        sentence = "The shade begins {0} above the casing; its board wants {1} of wall."
        ways = (
            by_change(site, site.system, "Begin {0} above.", BOARD_ABOVE_FRAME, mount__above=least),
            by_hand("Fix the board through the casing into the frame."),
        )
        yield draft(
            Severity.NOTE, "board-near-frame", sentence, above, BOARD_ABOVE_FRAME, ways=ways
        )


def _overlap_of(site: Site, side: Side) -> L:
    typed = getattr(site.mount, f"overlap_{side.value}")
    return typed_or(f"overlap at the {side.value}", typed, site.habits.outside_overlap)


def _wall_beside(site: Site, side: Side) -> Iterator[Draft[Site]]:
    free = getattr(site.opening, f"wall_{side.value}")
    if free is None or site.asked.width is not None:
        return
    wall, overlap = measured(f"free wall at the {side.value}", free), _overlap_of(site, side)
    if wall.value >= overlap.value + WALL_BESIDE_OVERLAP.value:
        return
    severity = Severity.STOP if wall.value < overlap.value else Severity.NOTE
    yield draft(
        severity,
        f"wall-{side.value}",
        f"The free wall at the {side.value} is {{0}}, for an overlap of {{1}} and {{2}} beside it.",
        wall,
        overlap,
        WALL_BESIDE_OVERLAP,
        ways=tuple(_narrower_overlap(site, side, wall)),
    )


def _narrower_overlap(site: Site, side: Side, wall: L) -> Iterator[Way[Site]]:
    fits = on_mark(wall.value - WALL_BESIDE_OVERLAP.value, site.system, Rounding.MUST_FIT)
    if fits >= ZERO:
        figure = derived(
            f"overlap at the {side.value}",
            fits,
            Unit.LENGTH,
            "The free wall {0} less {1} beside it.",
            wall,
            WALL_BESIDE_OVERLAP,
            rounding=Rounding.MUST_FIT,
        )
        sentence = f"Overlap {{0}} at the {side.value}."
        fields: dict[str, object] = {f"mount__overlap_{side.value}": fits}
        yield by_change(site, site.system, sentence, figure, **fields)
    yield _mount_inside(site)
    yield by_hand("Agree with the client what may be moved out of the way.")


def _overlap(site: Site, side: Side) -> Iterator[Draft[Site]]:
    overlap = _overlap_of(site, side)
    if site.asked.width is None and overlap.value < LEAST_OVERLAP.value:
        least = on_mark(LEAST_OVERLAP.value, site.system, Rounding.CUT_OVERSIZE)
        fields: dict[str, object] = {f"mount__overlap_{side.value}": least}
        ways = (
            by_change(site, site.system, "Overlap at least {0}.", LEAST_OVERLAP, **fields),
            by_hand("Keep it, and show the client the light beside the shade."),
        )
        yield draft(
            Severity.NOTE,
            f"overlap-{side.value}",
            f"The overlap at the {side.value} is {{0}}; under {{1}} light comes round the edge.",
            overlap,
            LEAST_OVERLAP,
            ways=ways,
            source=LEAST_OVERLAP.source,
        )
