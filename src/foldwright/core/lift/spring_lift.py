"""A spring shade: its window, what is asked, what is found, and the springs that would do."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foldwright.core.facts.balancing import LEAST_SURE_TURNS, LOAD_RATIO, NARROW_CHANCE
from foldwright.core.facts.constants import ACCESSIBLE_FORCE
from foldwright.core.lift.balance import Verdict, Window
from foldwright.core.lift.choices import Lock
from foldwright.core.lift.judging import WORKING, Judged
from foldwright.core.lift.questions import brake_findings, lock_findings
from foldwright.core.lift.remedies import remedies, spring_remedy
from foldwright.core.lift.span import TAIL
from foldwright.core.lift.telling_window import (
    at_turns,
    hand_limit,
    spring_rate,
    window_figures,
)
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import chosen, derived

if TYPE_CHECKING:
    from collections.abc import Iterator

    from foldwright.core.lift.order import LiftOrder
    from foldwright.core.lift.telling_load import LoadFigures, N


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class SpringLift:
    """The chosen spring on the shade, in figures."""

    judged: Judged
    loads: LoadFigures
    window: Window

    @property
    def verdict(self) -> Verdict:
        """Say what can be promised of the spring in this tube."""
        judged = self.judged
        return Verdict.NOTHING_FITS if judged.obstacle else judged.answer.verdict

    @property
    def hand_force(self) -> N:
        """Give the pull on the bar just off the sill."""
        judged, loads = self.judged, self.loads
        return at_turns(
            "pull on the bar fully lowered",
            judged.window.hand_force_n,
            Unit.FORCE,
            "{0} at the up-stop and {1} of travel at {2} pull up on the arm {3}, friction added;"
            " the load {4} helps down.",
            judged,
            loads.travel_turns,
            spring_rate(judged),
            loads.arm_lowered,
            loads.load_lowered,
        )

    @property
    def energy(self) -> N:
        """Give what the spring stores with the shade fully lowered."""
        judged, loads = self.judged, self.loads
        return at_turns(
            "energy in the spring fully lowered",
            judged.window.spring_energy_j,
            Unit.ENERGY,
            "{0} at the up-stop and {1} of travel, wound against the rate {2}.",
            judged,
            loads.travel_turns,
            spring_rate(judged),
        )


def spring_lift(judged: Judged, loads: LoadFigures) -> SpringLift:
    """Put a spring on a shade into figures.

    Takes: a spring tried on a shade; the figures of the load.

    Gives: its window, its pull and its energy.

    Source: derived here.
    """
    return SpringLift(judged=judged, loads=loads, window=window_figures(judged, loads))


def spring_findings(lift: SpringLift, tried: tuple[Judged, ...]) -> Iterator[Finding]:
    """Say all that is to be said of the chosen spring on the shade.

    Takes: the spring in figures; all springs of the list tried, the best first.

    Gives: findings, those that stop the job first.

    Source: derived here.
    """
    judged = lift.judged
    yield from judged.reading.findings
    if _lock_alone_is_missing(judged) or judged.verdict is not Verdict.NOTHING_FITS:
        yield from _only_just(lift, tried)
        yield from brake_findings(judged, lift.loads)
        yield from lock_findings(judged, lift.loads, lift.window.least_turns)
        yield from _asked_turns(lift)
        yield from _cautions(lift)
    else:
        refusal = _does_not_go_in if judged.obstacle else _nothing_fits
        yield refusal(lift, remedies(judged, lift.loads, tried))


def _lock_alone_is_missing(judged: Judged) -> bool:
    """Tell where turns would do, and only the lack of a lock lets the shade fly up."""
    turns_do = judged.window.chance >= NARROW_CHANCE.value
    return judged.case.lock is Lock.NONE and turns_do and not judged.obstacle


def _only_just(lift: SpringLift, tried: tuple[Judged, ...]) -> Iterator[Finding]:
    window, judged = lift.window, lift.judged
    if judged.verdict is not Verdict.NARROW or window.recommended_turns is None:
        return
    yield Finding(
        id="lift.narrow",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence="Only just: it needs {0:range} to lift, and "
        f"{window.limited_above_by.value} allows {{1:range}}. {{2}} satisfies every limit in {{3}}"
        " of shades like this one: try it on the rig before it leaves.",
        figures=(
            window.least_turns,
            window.most_turns,
            window.recommended_turns,
            window.chance,
        ),
        remedies=remedies(judged, lift.loads, tried),
    )


def _does_not_go_in(lift: SpringLift, offered: tuple[Remedy, ...]) -> Finding:
    return Finding(
        id="lift.spring-does-not-go-in",
        severity=Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence=f"The spring “{lift.judged.spring.name}” is {lift.judged.obstacle}.",
        remedies=offered,
    )


def _nothing_fits(lift: SpringLift, offered: tuple[Remedy, ...]) -> Finding:
    window, limit = lift.window, lift.window.limited_above_by.value
    some = window.most_turns.value > 0
    return Finding(
        id="lift.nothing-fits",
        severity=Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence=f"“{lift.judged.spring.name}” does not do for this shade: it needs {{0:range}} to"
        f" lift, and {limit} " + ("allows {1:range}." if some else "is used up by {2} of travel."),
        figures=(window.least_turns, window.most_turns, lift.loads.travel_turns),
        remedies=offered,
    )


def _asked_turns(lift: SpringLift) -> Iterator[Finding]:
    """Find turns that were typed and lie outside the window, or near its edge."""
    asked, window, found = lift.judged.order.choices.turns, lift.window, lift.judged.window
    if asked is None:
        return
    typed = chosen("turns at the up-stop", asked, Unit.TURN)
    if not window.least_turns.value <= asked <= window.most_turns.value:
        yield _outside(lift, typed)
    elif window.recommended_turns and found.turns_chance < min(1 - 2 * TAIL, found.chance):
        yield _near_the_edge(lift, typed, window.recommended_turns)


def _outside(lift: SpringLift, typed: N) -> Finding:
    window = lift.window
    too_few = typed.value < window.least_turns.value
    above = window.limited_above_by.value
    return Finding(
        id="lift.turns-outside",
        severity=Severity.STOP,
        stage=Stage.BENCH,
        sentence="{0} at the up-stop is too few to lift the shade: at least {1:range}."
        if too_few
        else f"{{0}} at the up-stop is too many for {above}: at most {{1:range}}.",
        figures=(typed, window.least_turns if too_few else window.most_turns),
        remedies=_wind(window.recommended_turns),
    )


def _near_the_edge(lift: SpringLift, typed: N, best: N) -> Finding:
    chance = derived(
        "chance of the typed turns",
        lift.judged.window.turns_chance,
        Unit.SHARE,
        "The share of shades like this one that lift with {0} and stay within every limit.",
        typed,
    )
    return Finding(
        id="lift.turns-unsure",
        severity=Severity.NOTE,
        stage=Stage.BENCH,
        sentence="{1} at the up-stop satisfies every limit in {0} of shades like this one; {2} in"
        " {3}.",
        figures=(chance, typed, best, lift.window.chance),
        remedies=_wind(best),
    )


def _wind(turns: N | None) -> tuple[Remedy, ...]:
    if turns is None:
        return ()
    change = Change(path="lift.turns", text=f"{turns.value:g}")
    return (Remedy(sentence="Wind {0}.", figures=(turns,), changes=(change,)),)


def _cautions(lift: SpringLift) -> Iterator[Finding]:
    judged, loads, force = lift.judged, lift.loads, lift.hand_force
    yield _wound(lift.energy)
    if lift.window.least_turns.value < LEAST_SURE_TURNS.value:
        yield _too_strong(lift)
    if force.value > hand_limit(judged).value and judged.verdict in WORKING:
        yield _hard_pull(force, hand_limit(judged))
    if force.value > ACCESSIBLE_FORCE.value:
        yield _not_accessible(force)
    ratio = derived(
        "raised load over lowered load",
        loads.load_raised.value / loads.load_lowered.value,
        Unit.RATIO,
        "{0} over {1}.",
        loads.load_raised,
        loads.load_lowered,
    )
    if ratio.value > LOAD_RATIO.value:
        yield _steep(ratio)


def _wound(energy: N) -> Finding:
    return Finding(
        id="lift.wound-spring",
        severity=Severity.NOTE,
        stage=Stage.BENCH,
        sentence="Fully lowered the spring holds {0}: hands clear, eye protection, the maker's tool"
        " and method, a whole turn at a time, never a locking pin drawn under tension. A lock is no"
        " protection when a spring or a cord fails.",
        figures=(energy,),
    )


def _too_strong(lift: SpringLift) -> Finding:
    return Finding(
        id="lift.spring-too-strong",
        severity=Severity.NOTE,
        stage=Stage.HEADRAIL,
        sentence="{0} lifts this shade already; below {1} the count of turns cannot be trusted.",
        figures=(lift.window.least_turns, LEAST_SURE_TURNS),
        remedies=(Remedy(sentence="Take a softer spring or a heavier bar."),),
    )


def _hard_pull(force: N, limit: N) -> Finding:
    return Finding(
        id="lift.hand-force",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence="The bar is pulled down with {0} at the bottom; at most {1} is asked of a hand.",
        figures=(force, limit),
        remedies=(Remedy(sentence="Wind fewer turns, take a softer spring or a heavier bar."),),
    )


def _not_accessible(force: N) -> Finding:
    return Finding(
        id="lift.accessible",
        severity=Severity.NOTE,
        stage=Stage.HEADRAIL,
        sentence="Where accessible operation is asked for, {0} at the bar is more than {1}: a"
        " clutch or a motor meets it.",
        figures=(force, ACCESSIBLE_FORCE),
        source=ACCESSIBLE_FORCE.source,
    )


def _steep(ratio: N) -> Finding:
    return Finding(
        id="lift.load-ratio",
        severity=Severity.NOTE,
        stage=Stage.HEADRAIL,
        sentence="Fully raised the shade weighs {0} times as much on the cords as fully lowered,"
        " where {1} can still be near balance everywhere: a lock holds it, a brake slows it.",
        figures=(ratio, LOAD_RATIO),
        remedies=(Remedy(sentence="A heavier bar evens it out."),),
    )


def which_spring(order: LiftOrder, loads: LoadFigures, tried: tuple[Judged, ...]) -> Finding:
    """Ask for the spring, with those of the list that do.

    Takes: the order; the figures of the load; all springs of the list tried, the best first.

    Gives: a finding with the best springs as remedies.

    Source: derived here.
    """
    fitting = [judged for judged in tried if judged.verdict in WORKING]
    name = order.choices.spring
    asks = f"“{name}” is not in the shop's list of springs." if name else "Which spring?"
    says = "" if fitting else " None of the list does for this shade."
    return Finding(
        id="lift.spring",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence=asks + says,
        remedies=tuple(spring_remedy(judged, loads) for judged in fitting[:3])
        or (remedies(tried[0], loads, tried) if tried else ()),
    )
