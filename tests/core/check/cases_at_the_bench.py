"""What must be noted at the bench for each question about it to be asked."""

from __future__ import annotations

from dataclasses import replace
from math import nan

from tests.core.check.cases_of_rooms import OfRoom

from foldwright.core.lift.choices import Lock
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
from foldwright.core.prove.questioning import questions
from foldwright.work.draws import house_draws

Noted = tuple[Observation, ...]
SCALE = ScalePair(turns=14.0, raise_m=0.7, down_n=20.0, up_n=12.0)


def _noted(*spoilt: Observation, lock: Lock = Lock.ONE_WAY) -> OfRoom[Noted]:
    case = replace(CASE, lock=lock)
    return OfRoom(
        judge=lambda noted: [each.finding for each in questions(case, noted, house_draws())],
        spoilt=spoilt,
        sound=(Weighed(mass_kg=1.55),),
    )


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
