"""What must be asked of a cloth for its plan of cuts to be refused, or to come unfinished."""

from __future__ import annotations

from itertools import count

from benchmarks.cloth_jobs import order
from tests.core.check.cases_of_rooms import OfRoom
from tests.core.cloth.orders import piece, to_buy

from foldwright.core.cloth.order import ClothOrder
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.why.finding import Finding

SMALL = to_buy(piece("A", 900, 1500))


def _planned(asked: ClothOrder, seconds: float) -> tuple[Finding, ...]:
    ticks = count()
    return plan_cloth(asked, time_given_s=seconds, clock=lambda: next(ticks) * 0.02).findings


OF_CLOTH: dict[str, OfRoom[ClothOrder]] = {
    "cloth.order": OfRoom(
        judge=lambda asked: _planned(asked, 2.0),
        spoilt=to_buy(piece("A", 2000, 1500)),
        sound=SMALL,
    ),
    "cloth.cut-short": OfRoom(
        judge=lambda asked: _planned(asked, 0.0 if len(asked.pieces) > 1 else 2.0),
        spoilt=order("mixed head and sill", 30, 1),
        sound=SMALL,
    ),
}
