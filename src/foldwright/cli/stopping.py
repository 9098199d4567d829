"""A clock that a person can end: the first Ctrl-C takes the best plan so far."""

from __future__ import annotations

import math
import signal
import time
from collections.abc import Callable
from types import FrameType, TracebackType
from typing import Any, Self


class Stopwatch:
    """Seconds since it began, or no time left once somebody pressed Ctrl-C.

    A second Ctrl-C ends the program as usual.
    """

    def __init__(self) -> None:
        self._ended = False
        self._before: Callable[[int, FrameType | None], Any] | int | None = None

    def __enter__(self) -> Self:
        self._before = signal.signal(signal.SIGINT, self._end)
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        trouble: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        signal.signal(signal.SIGINT, self._before)

    def _end(self, _number: int, _frame: FrameType | None) -> None:
        self._ended = True
        signal.signal(signal.SIGINT, self._before)

    def read(self) -> float:
        """Give the seconds; endless once it was ended."""
        return math.inf if self._ended else time.monotonic()
