"""Observations that prove nothing: each refused with its reason, none thrown away."""

from __future__ import annotations

from typing import Any

from foldwright.core.lift.choices import Lock
from foldwright.core.lift.givens import LiftCase
from foldwright.core.prove.figures import noted, reckoned
from foldwright.core.prove.letting_go import likeliest_shade
from foldwright.core.prove.noting import FreeStall
from foldwright.core.prove.observing import Holding, Observation, RiseTime
from foldwright.core.prove.rising import Folding, rise
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage


def refused(shades: TrialShades, observation: Observation) -> Finding | None:
    """Say why an observation is no evidence; None where it is, or claims to be none."""
    if isinstance(observation, FreeStall):
        return _free_stall(shades.case, observation)
    if isinstance(observation, Holding) and shades.case.lock is Lock.TWO_WAY:
        return _locked()
    if isinstance(observation, RiseTime) and not shades.braked:
        return _unbraked()
    return None


def _free_stall(case: LiftCase, stall: FreeStall) -> Finding:
    reached, balance = _free_and_guided(case, stall.turns)
    return Finding(
        id="prove.free-stall",
        severity=Severity.NOTE,
        stage=Stage.BENCH,
        sentence="Let go free, the shade runs past its balance, so where it came to rest, at {0},"
        " proves nothing: by reckoning it comes to {1}, and guided it stops at {2}.",
        figures=(noted("raise where it rested", stall.raise_m, Unit.LENGTH), reached, balance),
        remedies=(Remedy(sentence="Guide the bar slowly, and note where it stops by itself."),),
    )


def _free_and_guided(case: LiftCase, turns: float) -> tuple[Figure[Any], Figure[Any]]:
    """Reckon how high the shade comes let go free, and where it stops guided."""
    shade = likeliest_shade(case, turns)
    balance = reckoned(
        "guided, it would stop at",
        shade.balance_m(),
        Unit.LENGTH,
        "Where spring, load and friction balance by reckoning.",
    )
    reached = reckoned(
        "let go free, it would come to",
        rise(shade, 0.0, Folding.CAREFUL).end_m,
        Unit.LENGTH,
        "The reckoned rise from fully lowered: the moving shade carries on past its balance.",
        balance,
    )
    return reached, balance


def _locked() -> Finding:
    return Finding(
        id="prove.two-way-lock-holds",
        severity=Severity.NOTE,
        stage=Stage.BENCH,
        sentence="A two-way lock holds the shade at any height, so that it holds proves nothing"
        " about the spring.",
        remedies=(Remedy(sentence="Note a guided stall, or read a scale at two heights."),),
    )


def _unbraked() -> Finding:
    return Finding(
        id="prove.time-without-brake",
        severity=Severity.NOTE,
        stage=Stage.BENCH,
        sentence="Without a speed brake of known drag a rise is over in a moment, and its time"
        " proves nothing about spring and load.",
        remedies=(Remedy(sentence="Note a guided stall, or read a scale at two heights."),),
    )
