"""What the bench accepts before a shade leaves: how far off it may be, and how it is tried."""

from __future__ import annotations

from collections.abc import Sequence

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.measure_reading import POUND_FORCE_N
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact
from foldwright.core.why.source import Source, Status

WIDER = fact(
    "wider than the finished width",
    ZERO,
    Unit.LENGTH,
    "After a day on the rig no shade may be wider than its finished width: it would not go in.",
    Status.PRACTICE,
    rounding=Rounding.MUST_FIT,
)

NARROWER = fact(
    "narrower than the finished width",
    Length.inches("0.125"),
    Unit.LENGTH,
    "After a day on the rig an eighth of an inch less than the finished width is accepted.",
    Status.PRACTICE,
)

DROP_OFF = fact(
    "off the finished drop",
    Length.inches("0.125"),
    Unit.LENGTH,
    "After a day on the rig the drop may be an eighth of an inch off, either way.",
    Status.PRACTICE,
)

ACROSS = fact(
    "bar out of square with the board",
    Length.inches("0.125"),
    Unit.LENGTH,
    "From board to bar the two sides may differ by an eighth of an inch.",
    Status.PRACTICE,
)

DIAGONALS_OFF = fact(
    "difference between the diagonals, per 60 in",
    Length.inches("0.125"),
    Unit.LENGTH,
    "The two diagonals may differ by an eighth of an inch for every 60 in of their length.",
    Status.PRACTICE,
)

DIAGONALS_OVER = fact(
    "length over which the diagonals are judged",
    Length.inches(60),
    Unit.LENGTH,
    "The difference between the diagonals is judged for every 60 in of their length.",
    Status.PRACTICE,
)

ROWS_PARALLEL = fact(
    "difference from row to row",
    Length.inches("0.0625"),
    Unit.LENGTH,
    "From one row to the next the two sides may differ by a sixteenth of an inch.",
    Status.PRACTICE,
)

LIFT_TO_LOWER = fact(
    "lifting force over lowering force",
    3.0,
    Unit.RATIO,
    "A hand that must lift more than three times as hard as it must lower calls it a bad shade.",
    Status.HOUSE,
)

DRIFT = fact(
    "drift in ten minutes",
    Length.inches("0.5"),
    Unit.LENGTH,
    "Left where it was put, a shade may move by half an inch in ten minutes.",
    Status.HOUSE,
)

DRIFT_MINUTES = fact(
    "minutes that it is left alone",
    10.0,
    Unit.RATIO,
    "Ten minutes show a lock that slips.",
    Status.HOUSE,
)

DRIFT_IN_A_DAY = fact(
    "drift in a day",
    Length.inches(1),
    Unit.LENGTH,
    "Left where it was put, a shade may move by an inch in a day.",
    Status.HOUSE,
)

UP_STOP_CLEAR = fact(
    "clear of the headrail at the up-stop",
    Length.inches("0.5"),
    Unit.LENGTH,
    "At the up-stop half an inch stays free between the highest ring and whatever is above it.",
    Status.PRACTICE,
)

LIGHT_DISTANCE = fact(
    "distance from the shade at the light test",
    Length.metres(3),
    Unit.LENGTH,
    "With a lamp behind it no hole is seen from three metres.",
    Status.HOUSE,
)

LOOP_PULL: dict[Market, Figure[float]] = {
    Market.CANADA: fact(
        "pull at a cord, Canada",
        35.0,
        Unit.FORCE,
        "Cords are measured while they are pulled, in any direction, with a force that rises to"
        " this.",
        Status.PUBLISHED,
        source=Source(id="sor-2019-97", clause="ss. 5 to 8"),
    ),
    Market.UNITED_STATES: fact(
        "pull at a cord, United States",
        5 * POUND_FORCE_N,
        Unit.FORCE,
        "A pull of five pounds is remembered; the edition that holds has to be read.",
        Status.MEMORY,
    ),
    **{
        market: fact(
            f"pull at a cord, {market.value}",
            35.0,
            Unit.FORCE,
            f"No pull was found for {market.value}; the strongest of the other markets is used.",
            Status.HOUSE,
        )
        for market in (Market.EUROPE_AND_UK, Market.AUSTRALIA)
    },
}


def loop_pull(markets: Sequence[Market]) -> Figure[float]:
    """Give the pull at a cord that satisfies every market.

    Takes: the markets; none means all, because the destination is unknown.

    Gives: the strongest pull, with the market that asks for it.

    Source: sor-2019-97, ss. 5 to 8; from memory for the United States.

    >>> loop_pull((Market.UNITED_STATES, Market.CANADA)).value
    35.0
    """
    pulls = [LOOP_PULL[market] for market in (markets or tuple(Market))]
    strongest = max(pulls, key=lambda pull: pull.value)
    others = [pull for pull in pulls if pull is not strongest]
    compared = ", ".join(f"{{{number}}}" for number, _ in enumerate(others, start=1))
    because = f"{{0}} is the strongest of {compared}." if others else "The only market's: {0}."
    return derived(
        "pull at a cord", strongest.value, Unit.FORCE, because, strongest, *others,
        source=strongest.source,
    )  # fmt: skip
