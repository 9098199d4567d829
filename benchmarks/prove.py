"""How well the bench learns: ranges, coverage and time, over simulated true shades.

Budgets. Before any observation the planned turns lift at least 98 % of the true shades. One
guided stall: the 90 % range of the least turns is at most 1.7 turns wide in the median, and
holds the truth in 88 to 95 % of the shades; two stalls: at most 1.1 turns. Learning and
advice together take at most 300 ms. Run with `python benchmarks/prove.py [shades]`.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass
from time import perf_counter

import numpy as np
from benchmarks.simulated_bench import TrueShade, some_case
from scipy.stats import qmc

from foldwright.core.lift.case import LiftCase, answer_case
from foldwright.core.prove.advising import advise
from foldwright.core.prove.learning import learn
from foldwright.core.prove.observing import Observation

SHADES = 1000
TRIALS = 4096
CASES = 25
DRAWS = qmc.Sobol(16, seed=1).random(TRIALS)
BUDGET_MS = 300.0
Seen = list[Observation]
Bench = Callable[[TrueShade, float, np.random.Generator], Seen]


def nothing(_: TrueShade, __: float, ___: np.random.Generator) -> Seen:
    """Observe nothing."""
    return []


def stalls(count: int) -> Bench:
    """Wind too few turns, and note where the shade stalls; then others."""

    def seen(true: TrueShade, planned: float, chance: np.random.Generator) -> Seen:
        tried = planned * chance.uniform(0.45, 0.85, 12)
        found = (true.stall(round(2 * turns) / 2, chance) for turns in tried)
        return [stall for stall in found if stall is not None][:count]

    return seen


def scales(true: TrueShade, planned: float, chance: np.random.Generator) -> Seen:
    """Read a scale at two heights."""
    return [true.scale(planned, share, chance) for share in (0.25, 0.75)]


def much(true: TrueShade, planned: float, chance: np.random.Generator) -> Seen:
    """Weigh panel and spring, stall twice, and read a scale at two heights."""
    weighed: Seen = [true.weighed(chance), true.spring_torque(15.0, chance)]
    return [*weighed, *stalls(2)(true, planned, chance), *scales(true, planned, chance)]


BENCHES: dict[str, Bench] = {
    "nothing": nothing,
    "one stall": stalls(1),
    "two stalls": stalls(2),
    "scale at two heights": scales,
    "weighed": lambda true, _, chance: [true.weighed(chance)],
    "weighed, stalls and scales": much,
}


@dataclass(frozen=True)
class Outcome:
    """One true shade after one bench."""

    width: float
    covered: bool
    lifted: bool
    milliseconds: float
    explaining: float


def outcome(bench: Bench, planned: float, true: TrueShade, chance: np.random.Generator) -> Outcome:
    """Test one shade, and hold what was learned against the truth."""
    seen = bench(true, planned, chance)
    start = perf_counter()
    learned = learn(true.case, seen, DRAWS)
    advice = advise(learned, planned)
    took = perf_counter() - start
    least = learned.span(learned.shades.least_turns)
    return Outcome(
        width=least.high - least.low,
        covered=least.low <= true.least_turns <= least.high,
        lifted=advice.turns.value >= true.least_turns,
        milliseconds=took * 1e3,
        explaining=learned.explaining,
    )


def planned_turns(case: LiftCase) -> float:
    """Give the turns that the plan advises before the bench."""
    window = answer_case(case, DRAWS[:1024]).window
    return window.likeliest_turns if window else 0.0


def main() -> int:
    """Print the table, and fail past a budget."""
    shades = int(sys.argv[1]) if len(sys.argv) > 1 else SHADES
    chance = np.random.default_rng(20260504)
    cases = [some_case(chance) for _ in range(CASES)]
    trues = [TrueShade.drawn(cases[number % CASES], chance) for number in range(shades)]
    planned = {id(case): planned_turns(case) for case in cases}
    lifted = np.mean([planned[id(true.case)] >= true.least_turns for true in trues])
    print(f"planned turns lift {lifted:.1%} of {shades} true shades; budget 98 %")
    print("bench                        width  coverage  lifted   ms  explaining")
    found = {
        name: [outcome(bench, planned[id(true.case)], true, chance) for true in trues]
        for name, bench in BENCHES.items()
    }
    for name, outcomes in found.items():
        print(_row(name, outcomes))
    return int(lifted < 0.98 or _over_budget(found))


def _row(name: str, outcomes: list[Outcome]) -> str:
    width = np.median([each.width for each in outcomes])
    shares = [np.mean([getattr(each, word) for each in outcomes]) for word in ("covered", "lifted")]
    took = np.quantile([each.milliseconds for each in outcomes], 0.99)
    least = np.quantile([each.explaining for each in outcomes], 0.01)
    return f"{name:28s} {width:5.2f}  {shares[0]:7.1%}  {shares[1]:6.1%} {took:5.0f}  {least:.3f}"


def _over_budget(found: dict[str, list[Outcome]]) -> bool:
    one, two = found["one stall"], found["two stalls"]
    coverage = np.mean([each.covered for each in one])
    slowest = max(each.milliseconds for outcomes in found.values() for each in outcomes)
    wide = np.median([each.width for each in one]) > 1.7
    wide |= np.median([each.width for each in two]) > 1.1
    return bool(wide or not 0.88 <= coverage <= 0.95 or slowest > BUDGET_MS)


if __name__ == "__main__":
    sys.exit(main())
