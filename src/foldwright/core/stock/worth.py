"""The most worth that one bar can hold: the question behind every bound."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Reals = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Lot:
    """So many pieces of one size taken together, so that counts are tried in few steps."""

    number: int
    pieces: int
    size: int


class Loading:
    """The best loading of a bar with every room up to the largest, for given worths."""

    def __init__(
        self, sizes: tuple[int, ...], counts: tuple[int, ...], room: int, worth: Reals
    ) -> None:
        self._lots = _lots(sizes, counts, room)
        self._kinds = len(sizes)
        self._taken = np.zeros((len(self._lots), room + 1), dtype=bool)
        self.best: Reals = np.zeros(room + 1)
        for row, lot in enumerate(self._lots):
            self._try(row, lot, float(worth[lot.number]) * lot.pieces)

    def _try(self, row: int, lot: Lot, worth: float) -> None:
        if worth <= 0 or lot.size >= self.best.size:
            return
        with_lot = self.best[: self.best.size - lot.size] + worth
        better = with_lot > self.best[lot.size :] + 1e-12
        self._taken[row, lot.size :] = better
        self.best[lot.size :][better] = with_lot[better]

    def pieces(self, room: int) -> NDArray[np.int64]:
        """Give how many pieces of each size make up the best loading of this room."""
        found = np.zeros(self._kinds, dtype=np.int64)
        for row in range(len(self._lots) - 1, -1, -1):
            if self._taken[row, room]:
                lot = self._lots[row]
                found[lot.number] += lot.pieces
                room -= lot.size
        return found


def _lots(sizes: tuple[int, ...], counts: tuple[int, ...], room: int) -> list[Lot]:
    """Split every count into lots of 1, 2, 4 … and a rest, of which all counts can be made."""
    lots = []
    for number, (size, count) in enumerate(zip(sizes, counts, strict=True)):
        left, pieces = min(count, room // size if size else count), 1
        while left > 0:
            pieces = min(pieces, left)
            lots.append(Lot(number, pieces, pieces * size))
            left -= pieces
            pieces *= 2
    return lots
