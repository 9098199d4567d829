"""Cautions under letters, each printed once at the foot of a sheet."""

from __future__ import annotations

from collections.abc import Sequence

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def lettered_cautions(cautions: Sequence[str]) -> dict[str, str]:
    """Give each caution a letter; those that only put others together get none.

    Takes: the cautions of the steps, in order, repeated or not.

    Gives: the letter of each.

    Source: derived here.

    >>> lettered_cautions(["Eyes.", "Hands.", "Eyes. Hands.", "Eyes."])
    {'Eyes.': 'A', 'Hands.': 'B'}
    """
    return dict(zip(_plain(list(dict.fromkeys(cautions))), LETTERS, strict=False))


def letters_of(caution: str, letters: dict[str, str]) -> str:
    """Give the letters that stand for one caution.

    Takes: the caution; the letters of all.

    Gives: the letters, or nothing where there is no caution.

    Source: derived here.

    >>> letters_of("Eyes. Hands.", {"Eyes.": "A", "Hands.": "B"})
    'A, B'
    """
    return ", ".join(letter for plain, letter in letters.items() if caution and plain in caution)


def _plain(cautions: list[str]) -> list[str]:
    """Leave out cautions that only put others together."""
    plain = []
    for caution in cautions:
        rest = caution
        for other in cautions:
            if other != caution:
                rest = rest.replace(other, "")
        if rest.strip():
            plain.append(caution)
    return plain
