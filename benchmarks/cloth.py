"""Plans of seeded cutting jobs beside the hand method, the first fit and the proven bound.

Run with `python benchmarks/cloth.py [shades] [jobs] [seconds] [family …]`; without arguments
a small round of every family. Families are told by their first letters. The last lines are
mean gaps over the one-phase families and over half drop and mixed phases. Free rooms are set
beside one start for all rooms, and beside rooms cut one after another, each on its own.
"""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path
from statistics import mean
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parent))

from cloth_jobs import FAMILIES, ONE_PHASE, order

from foldwright.core.cloth.order import ClothOrder, ClothPlan
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.cloth.writing_out import to_buy
from foldwright.core.quantity.length import Length

SECONDS = {8: 2.0, 20: 10.0, 60: 30.0, 200: 60.0, 2000: 300.0}  # as the target table gives


def run(family: str, shades: int, seed: int, seconds: float) -> tuple[ClothPlan, float, float]:
    """Plan one job; give the plan, the seconds to the first plan, and all seconds."""
    job, begun = order(family, shades, seed), perf_counter()
    first: list[float] = []

    def watch(_: ClothPlan) -> bool:
        first.append(perf_counter() - begun)
        return True

    plan = plan_cloth(job, time_given_s=seconds, clock=perf_counter, watch=watch).result
    if plan is None:
        sys.exit(f"no plan for {family}, {shades}, {seed}")
    return plan, first[0], perf_counter() - begun


def gap_of(plan: ClothPlan) -> float:
    """Give how far a plan lies above the bound, in per cent of the bound."""
    return 100 * float((plan.bought - plan.bound) / plan.bound)


def without_freedom(job: ClothOrder, seconds: float) -> Length:
    """Give the better of one start for all rooms and of rooms cut one after another."""
    given = _planned(replace(job, free_rooms=frozenset()), seconds)
    assert job.buying is not None  # noqa: S101 - all jobs of this family are to buy
    begin, used = job.buying.start_allowance, job.buying.start_allowance - job.spare
    rooms = {piece.room for piece in job.pieces}
    for room in sorted(rooms):
        pieces = tuple(piece for piece in job.pieces if piece.room == room)
        alone = replace(job, pieces=pieces, seams=())
        used += _planned(alone, seconds / len(rooms)).rolls[0].used - begin + job.spare
    return min(given.bought, to_buy(job, used))


def _planned(job: ClothOrder, seconds: float) -> ClothPlan:
    plan = plan_cloth(job, time_given_s=seconds, clock=perf_counter).result
    if plan is None:
        sys.exit("no plan without freedom")
    return plan


def main() -> int:
    """Print a line for each job, and the mean gaps."""
    shades = int(sys.argv[1]) if len(sys.argv) > 1 else 8
    jobs = int(sys.argv[2]) if len(sys.argv) > 2 else 2
    seconds = float(sys.argv[3]) if len(sys.argv) > 3 else SECONDS.get(shades, 10.0)
    asked = sys.argv[4:] or [""]
    families = [name for name in FAMILIES if any(name.startswith(each) for each in asked)]
    gaps: dict[str, list[float]] = {name: [] for name in families}
    savings: list[float] = []
    print("family, seed: plan m, hand m, first fit m, bound m, gap %, first s, all s")
    for family in families:
        for seed in range(jobs):
            plan, first, took = run(family, shades, seed, seconds)
            beside = plan.comparison
            gaps[family].append(gap_of(plan))
            print(
                f"{family}, {seed}: {plan.bought.in_metres:.3f} "
                f"{beside.shade_by_shade.in_metres:.3f} {beside.first_fit.in_metres:.3f} "
                f"{plan.bound.in_metres:.3f} {gaps[family][-1]:.2f} {first:.2f} {took:.1f}",
                flush=True,
            )
            if family == "free rooms":
                beside_it = without_freedom(order(family, shades, seed), seconds)
                savings.append(100 * (1 - float(plan.bought / beside_it)))
                print(f"  not free {beside_it.in_metres:.3f}, saved {savings[-1]:.2f} %")
    for name, some in gaps.items():
        print(f"{name}: mean gap {mean(some):.2f} %")
    if savings:
        print(f"free rooms: {mean(savings):.2f} % saved in the mean")
    for words, group in (
        ("one phase", ONE_PHASE),
        ("half drop and mixed", ("half drop, centred", "mixed head and sill")),
    ):
        if found := [gap for name in group for gap in gaps.get(name, ())]:
            print(f"{words}: mean gap {mean(found):.2f} % over {len(found)} jobs")
    return 0


if __name__ == "__main__":
    sys.exit(main())
