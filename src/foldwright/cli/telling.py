"""What every command prints: answers on one channel, what must be mended on the other."""

from __future__ import annotations

import json
import sys
from typing import Any

from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.work.answers import FaultsAnswer
from foldwright.work.plain import plain


def say(text: str = "") -> None:
    """Print a line of the answer."""
    sys.stdout.write(f"{text}\n")


def say_json(answer: Any, system: System) -> None:
    """Print an answer as one JSON object on one line."""
    say(json.dumps(plain(answer, system), ensure_ascii=False, allow_nan=False))


def tell_faults(faults: tuple[Fault, ...], *, as_json: bool) -> None:
    """Print every fault for a person, and for a program where it asked."""
    for fault in faults:
        sys.stderr.write(f"{fault.sentence}\n")
    if as_json:
        say_json(FaultsAnswer(faults=faults), System.METRIC)
