"""Sentences as runs of words and figures, so that a sheet can print the figures larger."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any, Literal, TypedDict

from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.telling import fill

SLOT = re.compile(r"(\{(\d+)(?::range)?\})")


class Run(TypedDict):
    """A stretch of text: plain, a figure in numbers, or a figure that is a word."""

    text: str
    kind: Literal["plain", "figure", "word"]


def runs(sentence: str, figures: Sequence[Figure[Any]], system: System) -> list[Run]:
    """Split a sentence at its slots and fill each with its figure.

    Takes: the sentence with {0}, {1} …; its figures; the reader's system.

    Gives: the runs in reading order, none empty.

    Source: derived here.

    >>> runs("Cut the tube.", (), System.INCH)
    [{'text': 'Cut the tube.', 'kind': 'plain'}]
    """
    return list(_runs(sentence, figures, system))


def _runs(sentence: str, figures: Sequence[Figure[Any]], system: System) -> Iterator[Run]:
    done = 0
    for slot in SLOT.finditer(sentence):
        if slot.start() > done:
            yield Run(text=sentence[done : slot.start()], kind="plain")
        figure = figures[int(slot[2])]
        text = fill(slot[1], figures, system)
        yield Run(text=text, kind="word" if figure.unit is Unit.WORD else "figure")
        done = slot.end()
    if done < len(sentence):
        yield Run(text=sentence[done:], kind="plain")
