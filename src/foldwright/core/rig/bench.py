"""The bench steps in their order for each kind of lift."""

from __future__ import annotations

from dataclasses import replace

from foldwright.core.lift.choices import LiftKind
from foldwright.core.rig import building_steps as build
from foldwright.core.rig import testing_steps as test
from foldwright.core.rig import winding_steps as wind
from foldwright.core.rig.headrail import Step
from foldwright.core.rig.parts import Maker, Parts

CUT: tuple[Maker, ...] = (
    build.board,
    build.head_tape,
    build.brackets,
    build.cradles,
    build.tube,
)
DRIVE: dict[LiftKind, Maker] = {
    LiftKind.SPRING: build.spring,
    LiftKind.CLUTCH: build.clutch,
    LiftKind.MOTOR: build.motor,
}
DRESS: tuple[Maker, ...] = (build.clips, build.cut_cords, build.thread, wind.safety_wraps)
RUN: dict[LiftKind, tuple[Maker, ...]] = {
    LiftKind.SPRING: (
        wind.up_stop,
        wind.pretension,
        wind.hang,
        wind.lower,
        wind.lowest_lock,
        test.handle,
        test.level,
        test.release,
        test.hand_force,
        test.cycles,
    ),
    LiftKind.CLUTCH: (wind.up_stop, wind.hang, wind.chain, test.level, test.cycles),
    LiftKind.MOTOR: (wind.up_stop, wind.hang, wind.limits, test.level, test.cycles),
}


def bench_steps(parts: Parts) -> tuple[Step, ...]:
    """Lay out the bench work in its order for this kind of lift.

    Takes: everything the headrail is made of.

    Gives: numbered steps; what this shade does not need is left out.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> [step.title for step in bench_steps(PARTS)][:3]
    ['board', 'brackets', 'tube']
    """
    order = (*CUT, DRIVE[parts.kind], *DRESS, *RUN[parts.kind])
    kept = (drawn for make in order if (drawn := make(parts)) is not None)
    return tuple(replace(drawn, number=number) for number, drawn in enumerate(kept, start=1))
