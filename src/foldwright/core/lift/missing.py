"""What must be chosen before the lift can be computed: tube, cord or tape, and the kind of lift."""

from __future__ import annotations

from typing import TYPE_CHECKING

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.lift.choices import LiftKind
from foldwright.core.lift.sags import tube_sag_m
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import supplied

if TYPE_CHECKING:
    from collections.abc import Iterator

    from foldwright.core.facts.records import Tube
    from foldwright.core.lift.order import LiftOrder

_OFFERED = 3  # more choices than this are a list, not an answer


def missing(order: LiftOrder) -> Iterator[Finding]:
    """Ask for the parts without which no arm and no turns can be computed.

    Takes: the order.

    Gives: a finding for a missing tube, for a missing cord or tape, and for both at once.

    Source: derived here.
    """
    if order.chosen.tube is None:
        yield _asked("lift.tube", "Which tube do the cords wind on?", _tubes(order))
    if order.chosen.cord is None and order.chosen.tape is None:
        yield _asked("lift.cord", "Cords or tapes: what winds on the tube?", _cords(order))
    if order.chosen.cord and order.chosen.tape:
        yield _asked(
            "lift.cord-and-tape",
            "Both a cord and a tape are chosen; the cord is computed. Keep one.",
            (
                _take("Keep the cord.", "materials.tape", ""),
                _take("Keep the tape.", "materials.cord", ""),
            ),
        )


def which_kind() -> Finding:
    """Ask what turns the tube."""
    kinds = {
        LiftKind.SPRING: "A spring: no cord and no chain to reach.",
        LiftKind.CLUTCH: "A clutch with a bead chain.",
        LiftKind.MOTOR: "A motor.",
    }
    remedies = tuple(_take(words, "lift.kind", kind.value) for kind, words in kinds.items())
    return _asked("lift.kind", "What turns the tube: a spring, a clutch or a motor?", remedies)


def _asked(name: str, sentence: str, remedies: tuple[Remedy, ...]) -> Finding:
    return Finding(
        id=name,
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence=sentence,
        remedies=remedies,
    )


def _take(sentence: str, path: str, text: str) -> Remedy:
    return Remedy(sentence=sentence, changes=(Change(path=path, text=text),))


def _tubes(order: LiftOrder) -> tuple[Remedy, ...]:
    """Offer the thinnest tubes that are stiff enough for the whole shade, or the stiffest."""
    span = order.tube_cut or order.size.board_length.value
    limit = order.habits.tube_sag_share.value * span.in_metres
    weight = order.weights.total.value * GRAVITY.value
    sags = {tube.name: tube_sag_m(order, tube, weight) for tube in _wide_enough(order)}
    tubes = sorted(_wide_enough(order), key=lambda tube: (tube.outside, sags[tube.name]))
    stiff = [tube for tube in tubes if sags[tube.name] <= limit]
    return tuple(
        Remedy(
            sentence=f"Take the tube “{tube.name}”, {{0}} outside.",
            figures=(supplied("tube outside diameter", tube.outside, Unit.LENGTH, tube.name),),
            changes=(Change(path="materials.tube", text=tube.name),),
        )
        for tube in (stiff or tubes[::-1])[:_OFFERED]
    )


def _wide_enough(order: LiftOrder) -> list[Tube]:
    """Give the tubes that the spring or the motor of the shade goes into."""
    lift, shop = order.choices, order.shop
    inside = {
        LiftKind.SPRING: shop.springs.get(lift.spring),
        LiftKind.MOTOR: shop.motors.get(lift.motor),
    }
    part = inside.get(lift.kind) if lift.kind else None
    needed = part.least_tube_inside if part else None
    tubes = shop.tubes.values()
    return [tube for tube in tubes if needed is None or tube.outside - 2 * tube.wall >= needed]


def _cords(order: LiftOrder) -> tuple[Remedy, ...]:
    cords = [_take(f"Take the cord “{name}”.", "materials.cord", name) for name in order.shop.cords]
    tapes = [_take(f"Take the tape “{name}”.", "materials.tape", name) for name in order.shop.tapes]
    return (*cords[:_OFFERED], *tapes[:1])
