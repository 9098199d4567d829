"""Steps of the bench card that weigh, measure and look."""

from __future__ import annotations

from foldwright.core.facts.acceptance import (
    ACROSS,
    DIAGONALS_OFF,
    DROP_OFF,
    LIGHT_DISTANCE,
    NARROWER,
    ROWS_PARALLEL,
    UP_STOP_CLEAR,
    loop_pull,
)
from foldwright.core.prove.card_fields import YES_NO, choice, lengths
from foldwright.core.prove.card_step import Ask, CardOrder, CardStep, Reads
from foldwright.core.rig import cautions


def weigh(order: CardOrder) -> CardStep:
    """Weigh the panel."""
    return CardStep(
        id="weigh",
        title="Weigh the finished panel",
        instruction="Lay or hang the whole panel on the scale, with bar, rods and rings, before it"
        " is hung. Expected: {0:range}.",
        figures=(order.weights.total,),
        reason="The weight decides the turns, and cloth seldom weighs what its sheet says.",
        asks=(Ask(name="mass", label="Panel with bar, rods and rings", reads=Reads.MASS),),
    )


def width(order: CardOrder) -> CardStep:
    """Measure the width."""
    return CardStep(
        id="width",
        title="Measure the width at three heights",
        instruction="After a day on the rig, width at the top, the middle and the bottom. It should"
        " be {0}: no wider, and at most {1} less.",
        figures=(order.size.width, NARROWER),
        reason="A shade that grew does not go in; one that shrank shows light.",
        asks=lengths(("top", "Top"), ("middle", "Middle"), ("bottom", "Bottom")),
    )


def drop(order: CardOrder) -> CardStep:
    """Measure the drop."""
    return CardStep(
        id="drop",
        title="Measure the drop at three places",
        instruction="Fully down, from the top of the board to the bottom edge. It should be {0},"
        " {1} either way; left and right differ by at most {2}.",
        figures=(order.size.drop, DROP_OFF, ACROSS),
        reason="Cloth that hung a day has found its length.",
        asks=lengths(("left", "Left"), ("centre", "Centre"), ("right", "Right")),
    )


def square(order: CardOrder) -> CardStep:
    """Measure the diagonals."""
    del order  # alike for every shade
    return CardStep(
        id="square",
        title="Measure both diagonals",
        instruction="Fully down, from the board's end to the far end of the bar. They may differ by"
        " {0} for every 60 in of their length.",
        figures=(DIAGONALS_OFF,),
        reason="Two diagonals show a panel that is out of square even where both sides are equal.",
        asks=lengths(
            ("falling", "Top left to bottom right"), ("rising", "Bottom left to top right")
        ),
    )


def rows(order: CardOrder) -> CardStep:
    """Check the rows."""
    del order  # alike for every shade
    return CardStep(
        id="rows",
        title="Check that the rows are parallel",
        instruction="Fully down, from each row to the next, at the left and at the right: they may"
        " differ by {0}. None differs is 0.",
        figures=(ROWS_PARALLEL,),
        reason="A row that is not parallel shows as a fold that hangs crooked.",
        asks=lengths(("off", "Greatest difference, left against right")),
    )


def up_stop(order: CardOrder) -> CardStep:
    """Check the up-stop."""
    return CardStep(
        id="up-stop",
        title="Check the up-stop",
        instruction="At the stop, from the highest ring to whatever is above it: at least {0}. The"
        " bottom edge is then about {1} below the top of the board.",
        figures=(UP_STOP_CLEAR, order.headrail.hem_at_stop),
        reason="Without room the lift pulls the top rings into the headrail and tears them off.",
        asks=lengths(("clear", "Clear above the highest ring")),
    )


def loops(order: CardOrder) -> CardStep:
    """Pull the loops."""
    pull, limit = loop_pull(order.markets), order.loop_limit
    known = (pull, *((limit,) if limit else ()))
    columns = [
        (f"column_{number}", f"Column {number}")
        for number in range(1, order.layout.columns.count.value + 1)
    ]
    return CardStep(
        id="loops",
        title="Pull a loop at every column",
        instruction="Fully down, draw the cord away from the cloth with {0}, in every direction,"
        " and measure the way round the loop that opens"
        + (": at most {1}." if limit else ". No limit is known for this market: read its rule.")
        + " Columns are counted from the left, seen from the back.",
        figures=known,
        reason="A loop that goes over a child's head kills. Row spacing alone proves nothing: slack"
        " counts.",
        caution=cautions.CORDS,
        asks=(
            *lengths(*columns),
            Ask(name="side", label="At the operating side", reads=Reads.LENGTH, optional=True),
        ),
    )


def light(order: CardOrder) -> CardStep | None:
    """Look for light."""
    if not order.blackout:
        return None
    return CardStep(
        id="light",
        title="Look for light",
        instruction="A lamp behind the shade, the room dark, from {0}: no hole shows.",
        figures=(LIGHT_DISTANCE,),
        reason="A needle's hole in coated cloth is seen from the bed.",
        asks=(choice("holes", "What shows?", ("none", "No hole"), ("some", "Holes show")),),
    )


def label(order: CardOrder) -> CardStep:
    """Look for the label."""
    del order  # alike for every shade
    return CardStep(
        id="label",
        title="Look for the label",
        instruction="Warnings, maker and date are on the shade, where they stay readable.",
        reason="Whoever hangs it, buys it or takes it down years later has only the label.",
        asks=(choice("present", "Is it all there?", *YES_NO),),
    )
