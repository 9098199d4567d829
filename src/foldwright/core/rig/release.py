"""The further pull that lets the lock go, and what it costs at the sill."""

from __future__ import annotations

import math

from foldwright.core.facts.habits import Habits
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.choices import LiftChoices, LiftKind, Lock
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, fact
from foldwright.core.why.source import Status

L = Figure[Length]
N = Figure[float]


OTHER_LIFT = Remedy(
    sentence="Lift by motor, which holds at any height without a release pull; a clutch does too,"
    " but its chain loop has rules of its own where there are children."
)


def has_release(choices: LiftChoices) -> bool:
    """Tell whether the lift is let go by a further pull: a spring behind a ratchet.

    Takes: the lift as chosen; a lock not known yet is taken to be there.

    Gives: False for clutch, motor and a spring without a lock.

    Source: derived here.

    >>> has_release(LiftChoices(kind=LiftKind.MOTOR))
    False
    """
    return choices.kind is LiftKind.SPRING and choices.lock is not Lock.NONE


def release_travel(balance: Balance, choices: LiftChoices, habits: Habits) -> L:
    """Give the further pull at the bar that lets the lock go.

    Takes: the balance with the arm when lowered; the lift; the habits.

    Gives: bar travel; nothing where there is no lock to release.

    Source: common practice for the quarter turn; derived here at the cord's centre.

    >>> from foldwright.core.rig.example import BALANCE, LIFT, ORDER
    >>> round(release_travel(BALANCE, LIFT, ORDER.habits).value.in_millimetres, 1)
    30.9
    """
    return _bar_travel("release pull", habits.release_turns, balance, choices)


def _bar_travel(name: str, turns: N, balance: Balance, choices: LiftChoices) -> L:
    if not has_release(choices):
        return _no_release(name)
    return derived(
        name,
        Length.metres(2 * math.pi * balance.arm_lowered.value.in_metres * turns.value),
        Unit.LENGTH,
        "{0} of the tube, at the middle of the cord, {1} from the tube's centre.",
        turns,
        balance.arm_lowered,
    )


def _no_release(name: str) -> L:
    return fact(
        name,
        ZERO,
        Unit.LENGTH,
        "Nothing is released by a further pull: the lift holds, or rests, where it is left.",
        Status.PRACTICE,
    )


def lowest_lock_position(
    balance: Balance, size: FinishedSize, choices: LiftChoices, habits: Habits
) -> L:
    """Give how far above fully down the bottom edge locks at its lowest.

    Takes: the balance; the finished size with its gap to the sill; the lift; the habits.

    Gives: the release pull and a pitch of the ratchet, above the sill where the sill lies
    higher than the bottom edge fully down; nothing where there is no lock.

    Source: derived here: with the cloth taut there is no further pull, and the shade
    cannot be let go.

    >>> from foldwright.core.rig.example import BALANCE, LIFT, ORDER, SIZE
    >>> lowest = lowest_lock_position(BALANCE, SIZE, LIFT, ORDER.habits)
    >>> round(lowest.value.in_millimetres, 1)
    46.4
    """
    if not has_release(choices):
        return _no_release("lowest lock position")
    pull = release_travel(balance, choices, habits)
    pitch = _bar_travel("pitch of the ratchet", habits.lock_pitch_turns, balance, choices)
    blocked = _blocked_by_sill(size)
    return derived(
        "lowest lock position",
        pull.value + pitch.value + (blocked.value if blocked else ZERO),
        Unit.LENGTH,
        "A release needs {0} of further pull before the cloth is taut, and the ratchet may catch a"
        " pitch of {1} late"
        + (", all of it above the sill, {2} higher than the drop." if blocked else "."),
        pull,
        pitch,
        *((blocked,) if blocked else ()),
    )


def _blocked_by_sill(size: FinishedSize) -> L | None:
    """Give how far the drop would reach below the sill."""
    if size.sill_gap is None or size.sill_gap.value >= ZERO:
        return None
    return derived(
        "drop beyond the sill",
        -size.sill_gap.value,
        Unit.LENGTH,
        "The bottom edge fully down stands {0} from the sill: below it.",
        size.sill_gap,
    )


def release_findings(
    size: FinishedSize, lowest: L, pull: L, choices: LiftChoices
) -> tuple[Finding, ...]:
    """Say what the room for the release pull costs at the sill.

    Takes: the finished size; the lowest lock position; the release pull; the lift.

    Gives: a note of the gap left above a sill, or of what the locked shade lacks in drop;
    where the drop reaches below the sill, also of the drop that does not.

    Source: derived here.

    >>> from foldwright.core.rig.example import LIFT, PARTS, SIZE
    >>> found = release_findings(SIZE, PARTS.lowest_lock, PARTS.release, LIFT)
    >>> [finding.id for finding in found]
    ['rig.shorter-when-locked']
    """
    if not has_release(choices):
        return ()
    if size.sill_gap is None:
        return (_shorter_when_locked(size, lowest, pull),)
    blocked = _blocked_by_sill(size)
    if blocked is not None:
        return (_sill_in_the_way(size, blocked, lowest, pull),)
    return (_gap_when_locked(size.sill_gap, lowest, pull),)


def _sill_in_the_way(size: FinishedSize, blocked: L, lowest: L, pull: L) -> Finding:
    shorter = derived(
        "drop that clears the sill",
        size.drop.value - blocked.value,
        Unit.LENGTH,
        "The drop of {0} less the {1} that reaches below the sill.",
        size.drop,
        blocked,
    )
    return Finding(
        id="rig.sill-in-release",
        severity=Severity.NOTE,
        stage=Stage.HEADRAIL,
        sentence="Fully down the bar would stand {0} below the sill, so the sill stops it before"
        " the {1} of release pull are done. The lowest lock is set {2} above fully down instead.",
        figures=(blocked, pull, lowest),
        remedies=(
            Remedy(
                sentence="Make the drop {0}.",
                figures=(shorter,),
                changes=(Change(path="asked.drop", text=_exact_millimetres(shorter.value)),),
            ),
            OTHER_LIFT,
        ),
    )


def _exact_millimetres(length: Length) -> str:
    """Write a length that must not grow, rounded down to a tenth of a millimetre."""
    return f"{math.floor(length.in_millimetres * 10) / 10:g} mm"


def _gap_when_locked(sill_gap: L, lowest: L, pull: L) -> Finding:
    gap = derived(
        "gap under the locked shade",
        lowest.value + sill_gap.value,
        Unit.LENGTH,
        "The lowest lock stands {0} above fully down, and fully down clears the sill by {1}.",
        lowest,
        sill_gap,
    )
    return Finding(
        id="rig.gap-when-locked",
        severity=Severity.NOTE,
        stage=Stage.ORDER,
        sentence="Locked at its lowest the shade leaves {0} open above the sill: a release needs"
        " {1} of further pull, and the sill ends that pull.",
        figures=(gap, pull),
        remedies=(Remedy(sentence="Tell the client before cloth is cut."), OTHER_LIFT),
    )


def _shorter_when_locked(size: FinishedSize, lowest: L, pull: L) -> Finding:
    longer = derived(
        "drop that covers when locked",
        size.drop.value + lowest.value,
        Unit.LENGTH,
        "The drop of {0} and the {1} at which the shade locks above fully down.",
        size.drop,
        lowest,
    )
    return Finding(
        id="rig.shorter-when-locked",
        severity=Severity.NOTE,
        stage=Stage.ORDER,
        sentence="Locked at its lowest the bottom edge stands {0} above the finished drop, because"
        " a release needs {1} of further pull.",
        figures=(lowest, pull),
        remedies=(
            Remedy(
                sentence="If it must cover as asked when locked, ask for a drop of {0}.",
                figures=(longer,),
            ),
        ),
    )
