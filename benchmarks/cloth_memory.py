"""How much memory the largest cutting jobs take, and how soon their first plan is there.

    python benchmarks/cloth_memory.py [shades] [seconds] [family …]

Each family runs in a process of its own, so that one job's memory says nothing of another's.
"""

from __future__ import annotations

import resource
import subprocess
import sys
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parent))

from cloth import run
from cloth_jobs import FAMILIES

MOST_MB = 2048  # what a workroom's machine is taken to have
SHADES, SECONDS = 2000, 60.0
ALONE = "--alone"
BYTES_OF_A_STEP = 1 if sys.platform == "darwin" else 1024


def main() -> int:
    """Print a line for each family; give 1 where one takes more memory than there is."""
    if sys.argv[1:2] == [ALONE]:
        return alone(sys.argv[2], int(sys.argv[3]), float(sys.argv[4]))
    shades = int(sys.argv[1]) if len(sys.argv) > 1 else SHADES
    seconds = float(sys.argv[2]) if len(sys.argv) > 2 else SECONDS
    asked = sys.argv[3:] or [""]
    families = [name for name in FAMILIES if any(name.startswith(each) for each in asked)]
    print("family: plan m, bound m, first s, all s, most MB")
    return max(beside(family, shades, seconds) for family in families)


def beside(family: str, shades: int, seconds: float) -> int:
    """Run one family in a process of its own."""
    command = [sys.executable, __file__, ALONE, family, str(shades), str(seconds)]
    return subprocess.run(command, check=False).returncode  # noqa: S603 - our own program


def alone(family: str, shades: int, seconds: float) -> int:
    """Plan one job in this process and print what it took."""
    begun = perf_counter()
    plan, first, _ = run(family, shades, 0, seconds)
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * BYTES_OF_A_STEP / 2**20
    print(
        f"{family}: {plan.bought.in_metres:.3f} {plan.bound.in_metres:.3f} "
        f"{first:.2f} {perf_counter() - begun:.1f} {most:.0f}",
        flush=True,
    )
    return int(most > MOST_MB)


if __name__ == "__main__":
    sys.exit(main())
