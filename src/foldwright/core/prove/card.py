"""The bench card: the steps by which a finished shade is proved, in the order of the work."""

from __future__ import annotations

from collections.abc import Callable

from foldwright.core.prove import card_measuring as measure
from foldwright.core.prove import card_running as run
from foldwright.core.prove.card_step import CardOrder, CardStep

Maker = Callable[[CardOrder], CardStep | None]

STEPS: tuple[Maker, ...] = (
    measure.weigh,
    measure.width,
    measure.drop,
    measure.square,
    measure.rows,
    run.wind,
    run.hang,
    run.stall,
    run.rise_time,
    run.scale,
    run.release,
    run.level,
    run.hold,
    run.cycles,
    measure.up_stop,
    measure.loops,
    measure.light,
    measure.label,
)


def bench_card(order: CardOrder) -> tuple[CardStep, ...]:
    """Write the bench card of a shade.

    Takes: the shade as planned.

    Gives: its steps in the order of the work; what this shade does not need is left out.

    Source: common practice.

    >>> from foldwright.core.prove.card_example import order
    >>> [step.id for step in bench_card(order())][:5]
    ['weigh', 'width', 'drop', 'square', 'rows']
    """
    made = (make(order) for make in STEPS)
    return tuple(step for step in made if step is not None)
