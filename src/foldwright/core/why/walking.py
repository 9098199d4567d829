"""Walk through a result and find its figures, and any number that has no why."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure


def walk_figures(result: Any) -> Iterator[Figure[Any]]:
    """Find every figure in a result, in the order of its fields.

    Takes: a dataclass, tuple, list or mapping, nested as deep as it likes.

    Gives: each figure that stands in it; what a figure rests on is in its `family`.

    Source: derived here.

    >>> from foldwright.core.why.making import measured
    >>> [figure.name for figure in walk_figures((measured("width", Length.mm(1)), 2))]
    ['width']
    """
    return (leaf for _, leaf in _leaves(result, "") if isinstance(leaf, Figure))


def walk_places(result: Any) -> Iterator[tuple[str, Figure[Any]]]:
    """Find every figure in a result together with the place it stands in.

    Takes: a dataclass, tuple, list or mapping, nested as deep as it likes.

    Gives: dotted paths with their figures; members of tuples and lists are counted from 0.

    Source: derived here.

    >>> from foldwright.core.why.making import measured
    >>> [place for place, _ in walk_places({"rows": (measured("width", Length.mm(1)),)})]
    ['rows.0']
    """
    return ((path, leaf) for path, leaf in _leaves(result, "") if isinstance(leaf, Figure))


def bare_numbers(result: Any) -> tuple[str, ...]:
    """List the places in a result where a number or length stands without a why.

    Takes: a dataclass, tuple, list or mapping, nested as deep as it likes.

    Gives: the dotted path of each such place; members of tuples and lists are counted from 0.

    Source: derived here.

    >>> from foldwright.core.why.making import measured
    >>> bare_numbers((measured("width", Length.mm(1)), {"rows": 7}))
    ('1.rows',)
    """
    return tuple(path for path, leaf in _leaves(result, "") if _is_number(leaf))


def _leaves(node: Any, path: str) -> Iterator[tuple[str, Any]]:
    """Give every end of the branches with its path; a figure and a length are ends."""
    if not _is_branch(node):
        yield path, node
        return
    for name, child in _children(node):
        yield from _leaves(child, f"{path}.{name}" if path else name)


def _children(node: Any) -> Iterator[tuple[str, Any]]:
    if isinstance(node, Mapping):
        yield from ((str(key), child) for key, child in node.items())
    elif isinstance(node, (tuple, list)):
        yield from ((str(number), child) for number, child in enumerate(node))
    else:
        yield from ((field.name, getattr(node, field.name)) for field in fields(node))


def _is_branch(node: Any) -> bool:
    if isinstance(node, (float, Figure, Length)):
        return False
    is_record = is_dataclass(node) and not isinstance(node, type)
    return is_record or isinstance(node, (tuple, list, Mapping))


def _is_number(leaf: Any) -> bool:
    """Tell a number from a yes or no and from a choice; an array is a number too."""
    if isinstance(leaf, (bool, str, Enum, Figure)) or leaf is None:
        return False
    return isinstance(leaf, (int, float, Length)) or hasattr(leaf, "dtype")
