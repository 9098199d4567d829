"""A clutch with its bead chain: the pull on the chain, and whether the clutch holds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foldwright.core.facts.balancing import RATING_SHARE
from foldwright.core.lift.balance import Verdict
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import chosen, derived, supplied

if TYPE_CHECKING:
    from foldwright.core.facts.records import Clutch
    from foldwright.core.lift.order import LiftOrder
    from foldwright.core.lift.telling_load import LoadFigures, N


def chain_pull(
    torque_n_m: float, *, gear_ratio: float, efficiency: float, sprocket_radius_m: float
) -> float:
    """Give the pull on a bead chain that turns a tube.

    Takes: the torque at the tube in N.m; gear ratio, chain turns for one turn of the tube; the
    share of the work that arrives; sprocket radius in m.

    Gives: newtons.

    Holds for: slow pulling.

    Source: derived here, by the lever and the ratio.

    >>> round(chain_pull(0.34975, gear_ratio=1.5, efficiency=0.7, sprocket_radius_m=0.016), 2)
    20.82
    """
    return torque_n_m / (gear_ratio * efficiency * sprocket_radius_m)


@dataclass(frozen=True, kw_only=True, slots=True)
class ClutchTrial:
    """One clutch of the shop's list on one shade."""

    clutch: Clutch
    pull: N
    pull_limit: N
    torque: N
    rating: N

    @property
    def strong_enough(self) -> bool:
        """Tell whether the clutch carries the torque within its rating."""
        return self.torque.value <= self.rating.value

    @property
    def light_enough(self) -> bool:
        """Tell whether a hand can pull the chain."""
        return self.pull.value <= self.pull_limit.value

    @property
    def verdict(self) -> Verdict:
        """Say whether the clutch lifts the shade."""
        fits = self.strong_enough and self.light_enough
        return Verdict.WORKS if fits else Verdict.NOTHING_FITS


def try_clutch(order: LiftOrder, clutch: Clutch, loads: LoadFigures) -> ClutchTrial:
    """Try a clutch on a shade.

    Takes: the order; a clutch of the shop list; the figures of the load.

    Gives: the pull on the chain and the torque, each beside its limit.

    Source: derived here; the rating is used up to a house share of it.
    """
    return ClutchTrial(
        clutch=clutch,
        pull=_pull(clutch, loads.torque_needed),
        pull_limit=_pull_limit(order),
        torque=loads.torque_needed,
        rating=_rating(clutch),
    )


def try_clutches(order: LiftOrder, loads: LoadFigures) -> tuple[ClutchTrial, ...]:
    """Try every clutch of the shop's list: those that work first, the lightest pull first."""
    tried = [try_clutch(order, clutch, loads) for clutch in order.shop.clutches.values()]
    return tuple(
        sorted(tried, key=lambda trial: (trial.verdict is not Verdict.WORKS, trial.pull.value))
    )


def _pull(clutch: Clutch, torque: N) -> N:
    pull = chain_pull(
        torque.value,
        gear_ratio=clutch.gear_ratio,
        efficiency=clutch.efficiency,
        sprocket_radius_m=clutch.sprocket_radius.in_metres,
    )
    scale = pull / torque.value
    return derived(
        "pull on the chain",
        pull,
        Unit.FORCE,
        "The torque {0} over the ratio {1}, of which {2} arrives, on a sprocket of radius {3}.",
        torque,
        supplied("gear ratio", clutch.gear_ratio, Unit.RATIO, clutch.name),
        supplied("efficiency", clutch.efficiency, Unit.SHARE, clutch.name),
        supplied("sprocket radius", clutch.sprocket_radius, Unit.LENGTH, clutch.name),
        low=None if torque.low is None else torque.low * scale,
        high=None if torque.high is None else torque.high * scale,
    )


def _pull_limit(order: LiftOrder) -> N:
    limit = order.choices.hand_force_limit_n
    if limit is None:
        return order.habits.hand_force_limit_n
    return chosen("greatest pull", limit, Unit.FORCE)


def _rating(clutch: Clutch) -> N:
    stated = supplied("greatest torque", clutch.greatest_torque_n_m, Unit.TORQUE, clutch.name)
    return derived(
        "torque that may be used",
        stated.value * RATING_SHARE.value,
        Unit.TORQUE,
        "{1} of the clutch's rating {0}.",
        stated,
        RATING_SHARE,
    )


def clutch_remedy(trial: ClutchTrial) -> Remedy:
    """Give the change that turns the shade's lift into this clutch."""
    return Remedy(
        sentence=f"Take the clutch “{trial.clutch.name}”: {{0}} on the chain.",
        figures=(trial.pull,),
        changes=(
            Change(path="lift.kind", text="clutch"),
            Change(path="lift.clutch", text=trial.clutch.name),
        ),
    )


def clutch_findings(trial: ClutchTrial, remedies: tuple[Remedy, ...]) -> tuple[Finding, ...]:
    """Say what is wrong with a clutch on a shade, and what any chain asks for.

    Takes: the clutch tried; the other lifts that work.

    Gives: findings with those remedies.

    Source: derived here; *common practice* for the chain.
    """
    findings = []
    if not trial.strong_enough:
        findings.append(_too_weak(trial, remedies))
    if not trial.light_enough:
        findings.append(_too_heavy(trial, remedies))
    return (*findings, CHAIN_LOOP)


def _too_weak(trial: ClutchTrial, remedies: tuple[Remedy, ...]) -> Finding:
    return Finding(
        id="lift.clutch-too-weak",
        severity=Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence="The shade asks the clutch for {0}; {1} may be used.",
        figures=(trial.torque, trial.rating),
        remedies=remedies,
    )


def _too_heavy(trial: ClutchTrial, remedies: tuple[Remedy, ...]) -> Finding:
    return Finding(
        id="lift.chain-pull",
        severity=Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence="The chain is pulled with {0}; at most {1} is asked of a hand.",
        figures=(trial.pull, trial.pull_limit),
        remedies=remedies,
    )


CHAIN_LOOP = Finding(
    id="lift.chain-loop",
    severity=Severity.NOTE,
    stage=Stage.INSTALL,
    sentence="A chain loop can strangle a child: its height and its fixed tension device follow the"
    " rules of the place, and without the device it is not handed over.",
    remedies=(Remedy(sentence="Where children live or visit, choose a spring or a motor."),),
)
