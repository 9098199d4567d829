"""Every kind of observation by its word, for forms, records and job files."""

from __future__ import annotations

from collections.abc import Sequence

from foldwright.core.prove.noting import (
    BarLevel,
    Cycled,
    FreeStall,
    Note,
    ReleasePull,
    TurnsWound,
)
from foldwright.core.prove.observing import (
    FullRise,
    GuidedStall,
    Holding,
    Observation,
    RiseTime,
    ScaleForce,
    ScalePair,
    SpringTorque,
    Weighed,
)

KINDS: dict[str, type[Observation]] = {
    "panel weighed": Weighed,
    "spring torque": SpringTorque,
    "turns wound": TurnsWound,
    "guided stall": GuidedStall,
    "guided rise": FullRise,
    "free stall": FreeStall,
    "holds or sinks": Holding,
    "scale, one way": ScaleForce,
    "scale, down and up": ScalePair,
    "rise time": RiseTime,
    "release pull": ReleasePull,
    "bar level": BarLevel,
    "cycles": Cycled,
}


def kind_of(observation: Observation) -> str:
    """Give the word for a kind of observation.

    Takes: an observation of one of the kinds.

    Gives: its word.

    Source: derived here.

    >>> kind_of(TurnsWound(turns=9.0))
    'turns wound'
    """
    return next(word for word, kind in KINDS.items() if kind is type(observation))


def is_evidence(observation: Observation) -> bool:
    """Tell whether an observation says anything about spring, weight or friction.

    Takes: an observation.

    Gives: whether `learn` makes use of it.

    Source: derived here.

    >>> is_evidence(TurnsWound(turns=9.0)), is_evidence(GuidedStall(turns=9.0, raise_m=1.0))
    (False, True)
    """
    return not isinstance(observation, Note)


def on_the_rig(observation: Observation) -> bool:
    """Tell whether it was made on the hung shade: its turns are then counted at the up-stop."""
    return not isinstance(observation, SpringTorque | Weighed)


def turns_now(observations: Sequence[Observation], planned: float) -> float:
    """Give the turns that are in the spring after all that was noted.

    Takes: what was noted, oldest first; the turns planned, taken where none were counted.

    Gives: turns at the up-stop.

    Source: derived here.

    >>> turns_now([TurnsWound(turns=9.0), FreeStall(turns=10.0, raise_m=1.2)], 12.0)
    10.0
    >>> turns_now([], 12.0)
    12.0
    """
    counted = (getattr(each, "turns", None) for each in reversed(observations) if on_the_rig(each))
    return next((float(turns) for turns in counted if turns is not None), planned)
