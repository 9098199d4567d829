"""The words for what was typed, and for what was probably meant."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

LONGEST_QUOTE = 60
_KINDS: dict[type, str] = {
    bool: "yes or no",
    int: "a number",
    float: "a number",
    str: "text",
    list: "a list",
    dict: "a table",
    type(None): "nothing",
}


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Give the known word that was probably meant.

    >>> nearest("widht_top", ["width_top", "height_left"])
    'width_top'
    """
    lowered = {name.lower(): name for name in known}
    found = difflib.get_close_matches(word.lower()[:LONGEST_QUOTE], lowered, n=1, cutoff=0.5)
    return lowered[found[0]] if found else None


def suggestion(word: str, known: Iterable[str], otherwise: str) -> str:
    """Give the remedy for an unknown word: the nearest known one, or else all there are."""
    close = nearest(word, known)
    return f"Did you mean “{close}”?" if close else otherwise


def short(typed: object) -> str:
    """Give what was typed as it is quoted in a sentence, cut where it is long.

    >>> short("a" * 70)[-3:]
    'aa…'
    """
    text = str(typed)
    kept = text if len(text) <= LONGEST_QUOTE else text[:LONGEST_QUOTE] + "…"
    return kept.encode("utf-8", "backslashreplace").decode()


def kind_of(typed: object) -> str:
    """Give the word for what was typed.

    >>> kind_of([1]), kind_of("a")
    ('a list', 'text')
    """
    return _KINDS.get(type(typed), "something else")


def is_blank(typed: object) -> bool:
    """Tell whether nothing was typed: a form sends empty text for it."""
    return typed is None or (isinstance(typed, str) and not typed.strip())


def has_odd_characters(text: str, *, one_line: bool) -> bool:
    r"""Tell whether text holds what no paper can show: control characters, half letters.

    >>> has_odd_characters("Stair", one_line=True), has_odd_characters("A\nB", one_line=True)
    (False, True)
    """
    allowed = "" if one_line else "\n\t"
    return any(_is_odd(letter) and letter not in allowed for letter in text)


def _is_odd(letter: str) -> bool:
    return letter < " " or letter == "\x7f" or "\ud800" <= letter <= "\udfff"
