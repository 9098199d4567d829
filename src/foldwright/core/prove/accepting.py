"""Hold what was noted at the bench against what is accepted: pass, ask or stop, in words."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from foldwright.core.prove import accepting_runs as runs
from foldwright.core.prove import accepting_sizes as sizes
from foldwright.core.prove.card_step import CardOrder, Judged, Judgement, Readings

Judge = Callable[[CardOrder, Readings], Iterator[Judgement]]

JUDGES: dict[str, Judge] = {
    "weigh": sizes.weight,
    "width": sizes.widths,
    "drop": sizes.drops,
    "square": sizes.diagonals,
    "rows": sizes.rows,
    "wind": runs.turns,
    "hang": runs.hung,
    "stall": runs.guided_rise,
    "rise-time": runs.timed,
    "scale": runs.hand_forces,
    "release": runs.release,
    "level": runs.level,
    "hold": runs.drift,
    "cycles": runs.cycles,
    "up-stop": sizes.clearance,
    "loops": sizes.loops,
    "light": sizes.light,
    "label": sizes.label,
}


def judge(step: str, readings: Readings, order: CardOrder) -> Judged:
    """Hold the readings of one step against their limits.

    Takes: the step's id; its readings by field, lengths exact, the rest in SI; the shade as
    planned.

    Gives: one judgement for each thing found, none for what was not read.

    Source: common practice; house default where the limit says so.

    >>> from foldwright.core.prove.card_example import order
    >>> from foldwright.core.quantity.length import Length
    >>> judge("width", {"top": Length.mm(1201)}, order()).outcome.value
    'stop'
    """
    return Judged(judgements=tuple(JUDGES[step](order, readings)))
