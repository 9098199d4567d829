"""Whether an inside shade passes its reveal: width, lean, depth, handles."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.facts.window_limits import HANDLE_CLEARANCE, LEAST_REVEAL_DEPTH
from foldwright.core.measure.clearances import behind_cloth, clear_depth
from foldwright.core.measure.drafting import draft
from foldwright.core.measure.moving import move
from foldwright.core.measure.opening import Face, MountPlace
from foldwright.core.measure.site import Site
from foldwright.core.measure.sizing import deduction, finished_width, narrowest_width
from foldwright.core.measure.squareness import racking, side_gaps
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import derived, measured
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, Way, by_change, by_hand, on_mark

L = Figure[Length]


def draft_inside_fit(site: Site) -> Iterator[Draft[Site]]:
    """Draft what keeps an inside shade from passing its reveal.

    Takes: the site.

    Gives: drafts of findings; none outside.

    Source: measuring-page; common practice.
    """
    width = finished_width(site)
    if site.inside and width is not None:
        yield from _width(site, width)
        yield from _lean(site, width)
        yield from _tight(site, width)
        yield from _depth(site)
    yield from _handle(site)


def _width(site: Site, width: L) -> Iterator[Draft[Site]]:
    """Find a shade as wide as its reveal: it binds, however square the reveal is."""
    if not site.widths or width.value < narrowest_width(site).value:
        return
    narrow = narrowest_width(site)
    yield draft(
        Severity.STOP,
        "width-binds",
        "The shade is {0} wide and the reveal {1} at its narrowest: it binds.",
        width,
        narrow,
        ways=(_narrower(site, _usual_deduction(site)), _mount_outside(site), _measure_again()),
        source=Source(id="make-your-own-page"),
    )


def _lean(site: Site, width: L) -> Iterator[Draft[Site]]:
    """Find a reveal that leans over its height by more than the side gap."""
    gaps, shift = side_gaps(site, width), racking(site)
    if gaps is None or shift is None or width.value >= narrowest_width(site).value:
        return
    tight = min(gaps, key=lambda gap: gap.value)
    if tight.value > ZERO:
        return
    leaning, gap = _leaning(shift), _square_gap(site, width)
    yield draft(
        Severity.STOP,
        "racking-binds",
        "The reveal leans {0} over its height, and the gap beside the centred shade is only {1}:"
        f" it rubs at the {tight.name.rpartition(' ')[2]}.",
        leaning,
        gap,
        ways=(
            _narrower(site, _leaning_deduction(site, leaning)),
            _mount_outside(site),
            _measure_again(),
        ),
    )


def _tight(site: Site, width: L) -> Iterator[Draft[Site]]:
    """Find a shade that passes, but with less room than the house leaves."""
    if not site.widths:
        return
    narrow, usual = narrowest_width(site), _usual_deduction(site)
    if narrow.value - usual.value < width.value < narrow.value:
        left = derived(
            "room beside the shade",
            narrow.value - width.value,
            Unit.LENGTH,
            "The narrowest width {0} less the finished width {1}.",
            narrow,
            width,
        )
        yield draft(
            Severity.NOTE,
            "width-tight",
            "The shade leaves {0} of the reveal in all; the house leaves {1}.",
            left,
            usual,
            ways=(_narrower(site, usual), by_hand("Keep it where the reveal is true.")),
            source=usual.source,
        )


def _leaning(shift: L) -> L:
    side = "left" if shift.value > ZERO else "right"
    because = f"The head lies {{0}} off the sill, to the {side} as seen from the room."
    return derived("lean of the reveal", abs(shift.value), Unit.LENGTH, because, shift)


def _square_gap(site: Site, width: L) -> L:
    narrow = narrowest_width(site)
    return derived(
        "gap in a square reveal",
        (narrow.value - width.value) / 2,
        Unit.LENGTH,
        "Half of what the narrowest width {0} leaves beside the shade {1}.",
        narrow,
        width,
        rounding=Rounding.MUST_FIT,
    )


def _usual_deduction(site: Site) -> L:
    habits = site.habits
    wide = narrowest_width(site).value >= habits.wide_from.value
    return habits.wide_inside_deduction if wide else habits.inside_deduction


def _leaning_deduction(site: Site, leaning: L) -> L:
    """Add the lean twice, since a centred shade loses at both sides what one side needs."""
    usual = _usual_deduction(site)
    return derived(
        "deduction",
        usual.value + leaning.value * 2,
        Unit.LENGTH,
        "The usual {0}, and twice the lean {1}, because a shade centred at the head"
        " must keep the gap on the side that leans in.",
        usual,
        leaning,
    )


def _narrower(site: Site, less: L) -> Way[Site]:
    """Take the deduction in the field that governs: the deduction, or the typed width."""
    if site.asked.width is not None:
        width = narrowest_width(site).value - less.value
        typed = on_mark(width, site.system, Rounding.MUST_FIT)
        figure = derived(
            "finished width",
            typed,
            Unit.LENGTH,
            "The narrowest width {0} less {1}, rounded down.",
            narrowest_width(site),
            less,
            rounding=Rounding.MUST_FIT,
        )
        sentence = "Make the shade {0} wide."
        return by_change(site, site.system, sentence, figure, asked__width=typed)
    typed = on_mark(less.value, site.system, Rounding.CUT_OVERSIZE)
    figure = derived("deduction", typed, Unit.LENGTH, "At least {0}, rounded up to a mark.", less)
    sentence = "Deduct {0} instead of {1}."
    return by_change(site, site.system, sentence, figure, deduction(site), mount__deduction=typed)


def _mount_outside(site: Site) -> Way[Site]:
    return move(site, MountPlace.OUTSIDE, "Mount it outside, over the casing.")


def _measure_again() -> Way[Site]:
    return by_hand("Measure the reveal again, or have it trued.")


def _depth(site: Site) -> Iterator[Draft[Site]]:
    depth = clear_depth(site)
    if depth is not None and depth.value < LEAST_REVEAL_DEPTH.value:
        yield draft(
            Severity.STOP,
            "reveal-shallow",
            "The reveal is {0} deep; an inside mount needs {1}.",
            depth,
            LEAST_REVEAL_DEPTH,
            ways=(
                _mount_outside(site),
                by_hand("Build the board out from the wall, or find room for it outside."),
            ),
            source=LEAST_REVEAL_DEPTH.source,
        )


def _handle(site: Site) -> Iterator[Draft[Site]]:
    """Find a handle that reaches the lowered cloth, inside and outside alike."""
    room, reach = behind_cloth(site), site.opening.obstruction_projection
    if room is None or reach is None:
        return
    projection = measured("projection of the handle", reach)
    needed = derived(
        "room for the handle",
        reach + HANDLE_CLEARANCE.value,
        Unit.LENGTH,
        "The projection {0} and {1} before it.",
        projection,
        HANDLE_CLEARANCE,
    )
    if room.value < needed.value:
        yield draft(
            Severity.STOP,
            "handle-hits",
            "The cloth hangs {0} before the glass, and a handle needs {1}.",
            room,
            needed,
            ways=tuple(_handle_ways(site, room, needed)),
        )


def _handle_ways(site: Site, room: L, needed: L) -> Iterator[Way[Site]]:
    if site.mount.board_edge is Face.WINDOW:
        sentence = "Let the cloth leave the room-side edge of the board."
        yield by_change(site, site.system, sentence, mount__board_edge=Face.ROOM)
    if site.inside:
        yield _mount_outside(site)
    forward = derived(
        "distance forward",
        on_mark(needed.value - room.value, site.system, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "The room needed {0} less the room there is {1}.",
        needed,
        room,
        rounding=Rounding.CUT_OVERSIZE,
    )
    yield by_hand("Bring the board forward by {0}, or take a deeper board.", forward)
