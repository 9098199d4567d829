"""What to change when a spring does not do: each remedy tried before it is offered."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from foldwright.core.facts.balancing import LEAST_RAISE, RAISE_STEP
from foldwright.core.lift.balance import Verdict
from foldwright.core.lift.choices import Brake, LiftKind
from foldwright.core.lift.clutch import clutch_remedy, try_clutches
from foldwright.core.lift.judging import WORKING, Judged, judge
from foldwright.core.lift.motor import motor_remedy, try_motors
from foldwright.core.lift.ranking import try_springs
from foldwright.core.lift.telling_load import LoadFigures, load_figures
from foldwright.core.lift.telling_window import window_figures
from foldwright.core.weigh.weighing import weigh_shade
from foldwright.core.why.finding import Change, Remedy

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from foldwright.core.design.layout import Layout
    from foldwright.core.facts.records import Bar, Chosen, Cloth, Tube
    from foldwright.core.lift.order import LiftOrder

_SPRINGS_OFFERED = 2


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Proposal:
    """One change to the shade, in words, as the job file has it, and the order it makes."""

    sentence: str
    order: LiftOrder
    changes: tuple[Change, ...]


def remedies(judged: Judged, loads: LoadFigures, tried: tuple[Judged, ...]) -> tuple[Remedy, ...]:
    """Give what would make the shade work, each tried on the same draws before it is offered.

    Takes: the spring that does not do; the figures of the load; all springs of the list tried,
    the best first.

    Gives: at most two springs and one remedy of each other kind: one more spring side by side,
    another tube, a lighter lining, a lighter bar, a shorter raise, a clutch, a motor.

    Source: derived here: the order is from the least to the greatest change of the shade.
    """
    return tuple(_in_order(judged, loads, tried))


def _in_order(judged: Judged, loads: LoadFigures, tried: tuple[Judged, ...]) -> Iterator[Remedy]:
    others = [other for other in tried if other.spring.name != judged.spring.name]
    yield from working_springs(others, loads)[:_SPRINGS_OFFERED]
    yield from _first_that_works(judged, _one_more_spring(judged.order))
    yield from _first_that_works(judged, _other_tubes(judged.order))
    yield from _first_that_works(judged, _lighter_linings(judged.order))
    yield from _first_that_works(judged, _lighter_bars(judged.order))
    yield from _first_that_works(judged, _shorter_raises(judged.order))
    yield from working_clutches(judged.order, loads)[:1]
    yield from working_motors(judged.order, loads)[:1]


def spring_remedy(judged: Judged, loads: LoadFigures) -> Remedy:
    """Give the change to another spring of the list, with the window it gives.

    Takes: a spring that works; the figures of the load.

    Gives: a remedy that names the spring and its turns.

    Source: derived here.
    """
    name = judged.spring.name
    changes = [Change(path="lift.spring", text=name)]
    if judged.order.choices.kind is not LiftKind.SPRING:
        changes.insert(0, Change(path="lift.kind", text=LiftKind.SPRING.value))
    return _with_window(f"Take the spring “{name}”", judged, loads, tuple(changes))


def braked_spring(order: LiftOrder, loads: LoadFigures) -> tuple[Remedy, ...]:
    """Give the best spring of the list that works with the brake on its own sheet.

    Takes: the order; the figures of the load.

    Gives: one remedy, or none.

    Source: derived here.
    """
    braked = [each for each in order.shop.springs.values() if each.speed_brake_n_m_s is not None]
    fitted = replace(
        order,
        choices=replace(order.choices, brake=Brake.FITTED),
        shop=replace(order.shop, springs={spring.name: spring for spring in braked}),
    )
    change = Change(path="lift.brake", text=Brake.FITTED.value)
    return tuple(
        replace(remedy, changes=(*remedy.changes, change))
        for remedy in working_springs(try_springs(fitted), loads)[:1]
    )


def working_clutches(order: LiftOrder, loads: LoadFigures) -> tuple[Remedy, ...]:
    """Give the clutches of the list that work, the lightest pull first.

    Takes: the order; the figures of the load.

    Gives: a remedy for each.

    Source: derived here.
    """
    tried = try_clutches(order, loads)
    return tuple(clutch_remedy(trial) for trial in tried if trial.verdict is Verdict.WORKS)


def working_motors(order: LiftOrder, loads: LoadFigures) -> tuple[Remedy, ...]:
    """Give the motors of the list that work, the weakest first.

    Takes: the order; the figures of the load.

    Gives: a remedy for each.

    Source: derived here.
    """
    tried = try_motors(order, loads)
    return tuple(motor_remedy(trial) for trial in tried if trial.verdict is Verdict.WORKS)


def working_springs(tried: Iterable[Judged], loads: LoadFigures) -> tuple[Remedy, ...]:
    """Give the springs that work, the best first.

    Takes: springs tried on one shade, the best first; the figures of the load.

    Gives: a remedy for each.

    Source: derived here.
    """
    return tuple(spring_remedy(judged, loads) for judged in tried if judged.verdict in WORKING)


def _with_window(
    sentence: str, judged: Judged, loads: LoadFigures, changes: tuple[Change, ...]
) -> Remedy:
    window = window_figures(judged, loads)
    turns = window.recommended_turns or window.least_turns
    wound = judged.order.choices.turns
    rewound = () if wound is None else (Change(path="lift.turns", text=f"{turns.value:g}"),)
    return Remedy(
        sentence=f"{sentence}: it lifts with {{0}} and may have {{1}}; wind {{2}}.",
        figures=(window.least_turns, window.most_turns, turns),
        changes=(*changes, *rewound),
    )


def _first_that_works(judged: Judged, proposals: Iterable[Proposal]) -> Iterator[Remedy]:
    for proposal in proposals:
        changed = judge(proposal.order, judged.spring)
        if changed and changed.verdict in WORKING:
            loads = load_figures(proposal.order, changed.answer)
            yield _with_window(proposal.sentence, changed, loads, proposal.changes)
            return


def _one_more_spring(order: LiftOrder) -> Iterator[Proposal]:
    count = order.choices.springs_side_by_side + 1
    yield Proposal(
        sentence=f"Use {count} of these springs side by side",
        order=replace(order, choices=replace(order.choices, springs_side_by_side=count)),
        changes=(Change(path="lift.springs_side_by_side", text=str(count)),),
    )


def _other_tubes(order: LiftOrder) -> Iterator[Proposal]:
    """Propose the other tubes, the nearest in diameter first."""
    current = order.chosen.tube
    if current is None:
        return

    def difference(tube: Tube) -> int:
        return abs((tube.outside - current.outside).nanometres)

    for tube in sorted(order.shop.tubes.values(), key=difference):
        if tube.outside != current.outside:
            yield Proposal(
                sentence=f"Take the tube “{tube.name}”",
                order=replace(order, chosen=replace(order.chosen, tube=tube)),
                changes=(Change(path="materials.tube", text=tube.name),),
            )


def _lighter_linings(order: LiftOrder) -> Iterator[Proposal]:
    """Propose to leave the interlining out, then plain lighter cloths, the heaviest first."""
    if order.chosen.interlining:
        chosen = replace(order.chosen, interlining=None)
        change = Change(path="materials.interlining", text="")
        yield from _reweighed(order, "Leave the interlining out", chosen, change)
    for cloth in _plain_and_lighter(order):
        chosen = replace(order.chosen, lining=cloth)
        change = Change(path="materials.lining", text=cloth.name)
        yield from _reweighed(order, f"Line it with “{cloth.name}”", chosen, change)


def _plain_and_lighter(order: LiftOrder) -> list[Cloth]:
    lining = order.chosen.lining
    if lining is None:
        return []
    lighter = [
        cloth
        for cloth in order.shop.cloths.values()
        if cloth.areal_mass_kg_m2 < lining.areal_mass_kg_m2 and cloth.vertical_repeat is None
    ]
    return sorted(lighter, key=lambda cloth: -cloth.areal_mass_kg_m2)


def _lighter_bars(order: LiftOrder) -> Iterator[Proposal]:
    """Propose lighter bars, the heaviest of them first.

    A heavier bar eases the pull at given turns, but asks for more turns than it eases: it never
    opens a window that is closed.
    """
    current = order.chosen.bar

    def mass(bar: Bar) -> float:
        return -bar.line_mass_kg_m

    for bar in sorted(order.shop.bars.values(), key=mass):
        if current and mass(bar) > mass(current):
            chosen = replace(order.chosen, bar=bar)
            change = Change(path="materials.bar", text=bar.name)
            yield from _reweighed(order, f"Take the lighter bar “{bar.name}”", chosen, change)


def _reweighed(
    order: LiftOrder, sentence: str, chosen: Chosen, change: Change
) -> Iterator[Proposal]:
    layout = _recut(order.layout, chosen)
    weights = weigh_shade(layout, order.size, chosen, order.habits).result
    if weights is not None:
        changed = replace(order, layout=layout, chosen=chosen, weights=weights)
        yield Proposal(sentence=sentence, order=changed, changes=(change,))


def _recut(layout: Layout, chosen: Chosen) -> Layout:
    """Cut lining and interlining of the cloths now chosen, as large as they were."""
    now = {"lining": chosen.lining, "interlining": chosen.interlining}
    cuts = []
    for cut in layout.cuts:
        cloth = now.get(cut.layer)
        if cloth is not None:
            cuts.append(replace(cut, cloth=cloth.name))
        elif cut.layer not in now:
            cuts.append(cut)
    return replace(layout, cuts=tuple(cuts))


def _shorter_raises(order: LiftOrder) -> Iterator[Proposal]:
    """Propose to raise the shade less far, the highest first."""
    for share in np.arange(1.0, LEAST_RAISE.value, -RAISE_STEP.value).round(6).tolist()[1:]:
        if share < order.travel_share:
            choices = replace(order.choices, raise_limit_share=share)
            yield Proposal(
                sentence=f"Raise it {share:.0%} of the way only",
                order=replace(order, choices=choices),
                changes=(Change(path="lift.raise_limit_share", text=f"{share:g}"),),
            )
