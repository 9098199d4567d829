"""A thousand spring shades with uncertainty: how long one takes, and the whole batch.

Budget: under 60 s on two cores. Run with `python benchmarks/lift_batch.py [shades]`.
"""

from __future__ import annotations

import statistics
import sys
from time import perf_counter

import numpy as np

from foldwright.core.lift.case import LiftCase, answer_case
from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.weigh.load import PanelLoad

SHADES = 1000
TRIALS = 2000
BUDGET_S = 60.0


def shade(chance: np.random.Generator) -> LiftCase:
    """Draw a flat shade with a spring of about its size; ranges of friction are the house's."""
    rows = int(chance.integers(4, 14))
    spacing, pitch = float(chance.uniform(0.12, 0.22)), 0.006
    panel = PanelLoad(
        row_spacings_m=(spacing,) * (rows - 1),
        stacked_pitch_m=pitch,
        skirt_cloth_m=0.07,
        top_panel_m=0.15,
        cloth_n_m=float(chance.uniform(2, 12)),
        bar_n=float(chance.uniform(2, 8)),
        rows_n=(0.4,) * rows,
        travel_m=(rows - 1) * (spacing - pitch) + 0.04,
    )
    rate = float(chance.uniform(0.015, 0.06))
    return LiftCase(
        load=panel,
        tube_outside_m=float(chance.choice([0.032, 0.038, 0.05])),
        cord_diameter_m=Span.within(0.0014, 0.1),
        spring=SpringCase(rate_n_m_turn=Span.within(rate, 0.1), greatest_torque_n_m=rate * 28),
        brake=Brake.FITTED,
        brake_drag_n_m_s=Span.within(0.012, 0.2),
        lock=Lock.ONE_WAY,
    )


def main() -> int:
    """Answer the batch, print how long it took, and fail past the budget."""
    shades = int(sys.argv[1]) if len(sys.argv) > 1 else SHADES
    chance = np.random.default_rng(20260504)
    draws = chance.random((TRIALS, 16))
    cases = [shade(chance) for _ in range(shades)]
    took, verdicts = [], []
    for case in cases:
        start = perf_counter()
        verdicts.append(answer_case(case, draws).verdict.value)
        took.append(perf_counter() - start)
    for verdict in sorted(set(verdicts)):
        print(f"{verdicts.count(verdict):6d}  {verdict}")
    print(f"{statistics.median(took) * 1e3:.2f} ms a shade (median), {TRIALS} trials each")
    print(f"{sum(took):.2f} s for {shades} shades on one core; budget {BUDGET_S:g} s")
    return int(sum(took) * SHADES / shades > BUDGET_S)


if __name__ == "__main__":
    sys.exit(main())
