"""What must be asked before anything can be promised, and what each answer would mean."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.lift.raising import likeliest_stand
from foldwright.core.lift.remedies import braked_spring
from foldwright.core.lift.telling_window import at_turns, by_speed, wound_turns
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived

if TYPE_CHECKING:
    from collections.abc import Iterator

    from foldwright.core.lift.judging import Judged
    from foldwright.core.lift.telling_load import LoadFigures, N

FITTED = Remedy(
    sentence="A speed brake is fitted, or will be.",
    changes=(Change(path="lift.brake", text=Brake.FITTED.value),),
)
NOT_FITTED = Remedy(
    sentence="There is no speed brake: the shade is guided by hand.",
    changes=(Change(path="lift.brake", text=Brake.NONE.value),),
)
ONE_WAY = Remedy(
    sentence="The lock is one-way: it blocks rising only.",
    changes=(Change(path="lift.lock", text=Lock.ONE_WAY.value),),
)
TWO_WAY = Remedy(
    sentence="The lock is two-way: it blocks both ways.",
    changes=(Change(path="lift.lock", text=Lock.TWO_WAY.value),),
)
NO_LOCK = Remedy(
    sentence="There is no lock.",
    changes=(Change(path="lift.lock", text=Lock.NONE.value),),
)
LOOK_AT_IT = Remedy(
    sentence="Look at the lock itself, and say under Lift which it is, whatever follows from it."
)


def brake_findings(judged: Judged, loads: LoadFigures) -> Iterator[Finding]:
    """Ask whether a speed brake is fitted, or say what its absence means.

    Takes: a spring tried on a shade; the figures of the load.

    Gives: a finding with the energy and the speed of a free release; never that no spring fits.

    Source: derived here: without a brake no turns both lift the shade and let it arrive gently.
    """
    speed, energy = arrival(judged, loads)
    gentle = judged.order.habits.arrival_speed_limit_m_s
    if judged.case.brake is Brake.UNKNOWN:
        yield _is_a_brake_fitted(judged, loads, speed, gentle)
    if judged.case.brake is Brake.NONE:
        braked = braked_spring(judged.order, loads)
        yield _guide_by_hand((speed, gentle, energy), braked)
    if judged.case.brake is Brake.FITTED and judged.case.brake_drag_n_m_s is None:
        yield _drag_not_known(judged, gentle)


def arrival(judged: Judged, loads: LoadFigures) -> tuple[N, N]:
    """Give the greatest speed and energy with which a free release reaches the up-stop.

    Takes: a spring tried on a shade; the figures of the load.

    Gives: speed in m/s and energy in J, without a brake.

    Source: derived here, from the work of the spring.
    """
    energy = at_turns(
        "energy on arrival",
        judged.window.arrival_energy_j,
        Unit.ENERGY,
        "What a spring with {0} at the up-stop gives over {1} more, less what raises the shade"
        " and rubs; folding cloth takes a part of it.",
        judged,
        loads.travel_turns,
    )
    speed = at_turns(
        "speed on arrival",
        judged.window.arrival_speed_m_s,
        Unit.SPEED,
        "All of {1} in the motion of the raised shade {2}, released free with {0}.",
        judged,
        energy,
        loads.load_raised,
    )
    return speed, energy


def _is_a_brake_fitted(judged: Judged, loads: LoadFigures, speed: N, gentle: N) -> Finding:
    sentence = (
        "Is a speed brake fitted? Without one the shade, released free, reaches the up-stop at up"
        " to {0}, where {1} is gentle: it would always be guided by hand."
    )
    braked = by_speed(judged, loads)
    if braked:
        sentence += " The spring's sheet names a brake; with it up to {2} arrive gently."
    return Finding(
        id="lift.brake-unknown",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence=sentence,
        figures=(speed, gentle, braked) if braked else (speed, gentle),
        remedies=(FITTED, NOT_FITTED),
    )


def _guide_by_hand(figures: tuple[N, ...], braked: tuple[Remedy, ...]) -> Finding:
    return Finding(
        id="lift.brake-none",
        severity=Severity.NOTE,
        stage=Stage.BENCH,
        sentence="Guide it by hand, do not release it free, or fit a speed brake: released free it"
        " reaches the up-stop at up to {0} with up to {2}, where {1} is gentle.",
        figures=figures,
        remedies=(
            Remedy(sentence="Write on the hand-over sheet: guide the bar by hand."),
            Remedy(sentence="Fit a speed brake.", changes=FITTED.changes),
            *braked,
        ),
    )


def _drag_not_known(judged: Judged, gentle: N) -> Finding:
    return Finding(
        id="lift.brake-drag",
        severity=Severity.NOTE,
        stage=Stage.BENCH,
        sentence=f"The sheet of “{judged.spring.name}” does not say how strongly its brake drags:"
        " watch on the rig that the bar arrives slower than {0}.",
        figures=(gentle,),
        remedies=(Remedy(sentence="Ask the supplier for the drag of the brake."),),
    )


def lock_findings(judged: Judged, loads: LoadFigures, least: N) -> Iterator[Finding]:
    """Ask which way the lock holds, or say what the kind of lock means.

    Takes: a spring tried on a shade; the figures of the load; the least turns.

    Gives: a finding for the kind of lock.

    Source: *common practice* for the kinds of lock, derived here for friction alone.
    """
    held = held_by_friction(judged, loads)
    if judged.case.lock is Lock.UNKNOWN:
        yield _which_lock(least, held)
    if judged.case.lock is Lock.NONE:
        yield _no_lock(judged, held)
    if judged.case.lock is Lock.TWO_WAY:
        yield _two_way(least)


def held_by_friction(judged: Judged, loads: LoadFigures) -> N:
    """Give the share of the raise over which friction alone keeps the shade where it is.

    Takes: a spring tried on a shade; the figures of the load.

    Gives: a share of the raise, at the likeliest friction.

    Source: derived here: the shade stays where the load lies between the load that the spring
    just raises and the load that just sinks against it.
    """
    case, turns = judged.case, wound_turns(judged)
    raises = np.linspace(0.0, case.load.travel_m, 201)
    rate = judged.window.rate_n_m_turn.likely
    stays = likeliest_stand(case, raises, rate, turns.value).stays
    return derived(
        "raise held by friction alone",
        float(np.mean(stays)),
        Unit.SHARE,
        "With {0} the load lies within the friction of {1} and {2} over this share of {3}.",
        turns,
        judged.order.habits.load_friction,
        judged.order.habits.spring_hysteresis,
        loads.travel,
    )


def _which_lock(least: N, held: N) -> Finding:
    return Finding(
        id="lift.lock-unknown",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence="One-way or two-way lock? A one-way lock blocks rising only, so the spring must"
        " also keep the shade from sinking: {0} at least. A two-way lock holds it anywhere, and"
        " hides too few turns until it is released. With no lock friction alone holds it, over {1}"
        " of the raise.",
        figures=(least, held),
        remedies=(ONE_WAY, TWO_WAY, NO_LOCK, LOOK_AT_IT),
    )


def _no_lock(judged: Judged, held: N) -> Finding:
    everywhere = held.value >= 1
    return Finding(
        id="lift.lock-none",
        severity=Severity.NOTE if everywhere else Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence=(
            "Without a lock friction alone holds the shade, over {0} of its raise; elsewhere it"
            " rises or sinks by itself. That it holds at the top does not prove that it lifts."
        )
        if held.value
        else "Without a lock the shade rises by itself from everywhere: with {1} no friction here"
        " holds it.",
        figures=(held, wound_turns(judged)),
        remedies=(
            Remedy(sentence="Fit a one-way lock.", changes=ONE_WAY.changes),
            Remedy(sentence="Fit a two-way lock.", changes=TWO_WAY.changes),
        ),
    )


def _two_way(least: N) -> Finding:
    return Finding(
        id="lift.lock-two-way",
        severity=Severity.NOTE,
        stage=Stage.BENCH,
        sentence="A two-way lock hides too few turns until it is released: hold the bar, release,"
        " and see that it lifts with at least {0}.",
        figures=(least,),
    )
