"""Every door of the core says what it takes, gives and rests on, and shows it.

A door is a function that another room or layer uses. What only its own room uses
tells in one sentence what it does; what else its docstring says must hold too.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

import pytest
from tests.docs.reading import (
    Function,
    cited_ids,
    function,
    public_functions,
    sources,
    used_outside_their_rooms,
    words_like_ids,
)

GROUNDS = ("common practice", "from memory", "derived here", "house default", "supplier's sheet")
FUNCTIONS = tuple(public_functions())
DOORS = tuple(each for each in FUNCTIONS if each.where in used_outside_their_rooms())


def faults(function: Function) -> Iterator[str]:
    yield from plain_faults(function)
    if _parameters(function.node) and not function.paragraph("Takes"):
        yield "it takes something and has no Takes paragraph"
    if _gives(function.node) and not function.paragraph("Gives"):
        yield "it gives something and has no Gives paragraph"
    if _raises(function.node) and not function.paragraph("Raises"):
        yield "it raises and has no Raises paragraph"
    if not function.paragraph("Source"):
        yield "it has no Source paragraph"
    if not any(text.startswith(">>> ") for text in function.paragraphs):
        yield "it has no runnable example"


def plain_faults(function: Function) -> Iterator[str]:
    summary = function.paragraphs[0]
    if not summary.endswith(".") or re.search(r"[.!?] +[A-Z]", summary):
        yield "its first paragraph is not one sentence"
    if source := function.paragraph("Source"):
        yield from _source_faults(source)


def _parameters(node: ast.FunctionDef) -> bool:
    words = node.args
    return bool(words.posonlyargs or words.args or words.kwonlyargs or words.vararg)


def _gives(node: ast.FunctionDef) -> bool:
    return node.returns is not None and ast.unparse(node.returns) != "None"


def _raises(node: ast.FunctionDef) -> bool:
    return any(isinstance(inner, ast.Raise) for inner in ast.walk(node))


def _source_faults(paragraph: str) -> Iterator[str]:
    """A Source paragraph names a listed source or one of the grounds, and no unlisted source."""
    if not cited_ids(paragraph) and not any(ground in paragraph for ground in GROUNDS):
        yield "its Source paragraph names neither a listed source nor one of the grounds"
    for word in sorted(words_like_ids(paragraph) - set(sources())):
        yield f"its source “{word}” is not in docs/sources.toml"


@pytest.mark.parametrize("function", FUNCTIONS, ids=lambda function: function.where)
def test_every_function_tells_in_one_sentence_what_it_does(function: Function) -> None:
    assert list(plain_faults(function)) == []


@pytest.mark.parametrize("function", DOORS, ids=lambda function: function.where)
def test_every_door_of_a_room_is_told_in_full(function: Function) -> None:
    assert list(faults(function)) == []


def test_the_doors_are_found() -> None:
    found = {function.where for function in DOORS}
    assert {"quantity/reading.py:read_length", "check/planning.py:look_over_shade"} <= found


GOOD = '''
def weigh(cloth: float) -> float:
    """Weigh a piece of cloth.

    Takes: kilograms.

    Gives: kilograms.

    Raises: ValueError.

    Source: common practice; sor-2019-97, s. 6.

    >>> weigh(1.0)
    1.0
    """
    raise ValueError
'''


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ("", "", None),
        ("cloth.\n", "cloth. It is heavy.\n", "one sentence"),
        ("    Takes: kilograms.\n\n", "", "no Takes"),
        ("    Gives: kilograms.\n\n", "", "no Gives"),
        ("    Raises: ValueError.\n\n", "", "no Raises"),
        ("    >>> weigh(1.0)\n    1.0\n", "", "no runnable example"),
        ("    Source: common practice; sor-2019-97, s. 6.\n\n", "", "no Source"),
        ("sor-2019-97", "sor-2019-98", "“sor-2019-98” is not in docs/sources.toml"),
        ("sor-2019-97", "no-such-page", "“no-such-page” is not in docs/sources.toml"),
        ("common practice; sor-2019-97", "everybody knows", "neither a listed source"),
    ],
)
def test_the_reader_of_docstrings_sees_each_fault(old: str, new: str, fault: str | None) -> None:
    node = ast.parse(GOOD.replace(old, new) if old else GOOD).body[0]
    assert isinstance(node, ast.FunctionDef)
    found = list(faults(function("example", node)))
    assert [fault in each for each in found] == [True] if fault else found == []
