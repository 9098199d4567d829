"""What must be noted at the bench for each question about it to be asked."""

from __future__ import annotations

from dataclasses import replace
from math import nan

from tests.core.check.cases_of_rooms import OfRoom

from foldwright.core.lift.choices import Lock
from foldwright.core.lift.span import Span
from foldwright.core.prove.example import CASE
from foldwright.core.prove.noting import FreeStall
from foldwright.core.prove.observing import (
    GuidedStall,
    Holding,
    Observation,
    RiseTime,
    ScalePair,
    SpringTorque,
    Weighed,
)
from foldwright.core.prove.pooling import Found
from foldwright.core.prove.questioning import questions
from foldwright.core.prove.shop_record import Made, ShopResult
from foldwright.core.prove.spring_bench import BarReading, SpringBench, characterise
from foldwright.core.prove.telling_record import batch_warnings
from foldwright.work.draws import house_draws

Noted = tuple[Observation, ...]
OLDER, TEN = 6, Span(likely=10.0, low=8.0, high=12.0)
SCALE = ScalePair(turns=14.0, raise_m=0.7, down_n=20.0, up_n=12.0)


def _noted(*spoilt: Observation, lock: Lock = Lock.ONE_WAY) -> OfRoom[Noted]:
    case = replace(CASE, lock=lock)
    return OfRoom(
        judge=lambda noted: [each.finding for each in questions(case, noted, house_draws())],
        spoilt=spoilt,
        sound=(Weighed(mass_kg=1.55),),
    )


def _records(*rates: float) -> list[ShopResult]:
    """Give springs of one kind as the bench found them: the first six of an older batch."""
    return [
        ShopResult(
            made=Made(
                spring="soft",
                batch="06" if number < OLDER else "07",
                line="cord",
                bracket="end",
                cloth_class="linen",
            ),
            expected_turns=TEN,
            found_turns=TEN,
            rate=Found(value=rate, error=0.02),
        )
        for number, rate in enumerate(rates)
    ]


ON_THE_BAR = SpringBench(
    weight_kg=0.3, readings=(BarReading(turns=8.0, winding_m=0.10, back_m=0.09),)
)


def _on_the_bar(*readings: BarReading) -> OfRoom[SpringBench]:
    return OfRoom(
        judge=lambda bench: characterise(bench).findings,
        spoilt=replace(ON_THE_BAR, readings=readings),
        sound=ON_THE_BAR,
    )


BENCH_RECORD: dict[str, OfRoom] = {  # type: ignore[type-arg] - each is given something else
    "prove.batch-differs": OfRoom(
        judge=lambda record: batch_warnings(record, "soft", "07"),
        spoilt=_records(*[0.0] * OLDER, *[0.4] * OLDER),
        sound=_records(*[0.0] * OLDER, *[0.01] * OLDER),
    ),
    "prove.spring-unread": _on_the_bar(),
    "prove.spring-from-nothing": _on_the_bar(BarReading(turns=-8.0, winding_m=0.10, back_m=0.09)),
    "prove.spring-backwards": _on_the_bar(BarReading(turns=8.0, winding_m=0.10, back_m=0.13)),
}

AT_THE_BENCH: dict[str, OfRoom[Noted]] = {
    "prove.above-the-stop": _noted(GuidedStall(turns=14.0, raise_m=2.0)),
    "prove.below-the-bottom": _noted(GuidedStall(turns=14.0, raise_m=-0.1)),
    "prove.contradiction": _noted(
        SpringTorque(turns=10.0, torque_n_m=0.31), SpringTorque(turns=10.0, torque_n_m=0.38)
    ),
    "prove.far-off": _noted(Weighed(mass_kg=9.0)),
    "prove.free-stall": _noted(FreeStall(turns=12.0, raise_m=1.0)),
    "prove.friction-backwards": _noted(replace(SCALE, down_n=12.0, up_n=20.0)),
    "prove.no-number": _noted(Weighed(mass_kg=nan)),
    "prove.no-turns": _noted(SpringTorque(turns=0.0, torque_n_m=0.3)),
    "prove.nothing": _noted(Weighed(mass_kg=0.0)),
    "prove.overwound": _noted(GuidedStall(turns=39.0, raise_m=1.0)),
    "prove.time-without-brake": _noted(RiseTime(turns=14.0, seconds=8.0)),
    "prove.turns-miscounted": _noted(GuidedStall(turns=400.0, raise_m=1.0)),
    "prove.two-way-lock-holds": _noted(
        Holding(turns=14.0, raise_m=0.7, held=True), lock=Lock.TWO_WAY
    ),
}
