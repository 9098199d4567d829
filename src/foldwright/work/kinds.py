"""What a record's fields may hold, read off their types."""

from __future__ import annotations

import typing
from dataclasses import MISSING, Field
from functools import cache
from types import UnionType
from typing import Any


@cache
def hints(record: type[Any]) -> dict[str, Any]:
    """Give the types of a record's fields, in order.

    >>> from foldwright.core.measure.opening import AskedSize
    >>> list(hints(AskedSize))
    ['width', 'drop', 'given_by']
    """
    return typing.get_type_hints(record)


def alternatives(hint: Any) -> tuple[Any, ...]:
    """Give the types that a field may hold, None left out.

    >>> alternatives(int | str | None)
    (<class 'int'>, <class 'str'>)
    """
    if isinstance(hint, UnionType) or typing.get_origin(hint) is typing.Union:
        return tuple(part for part in typing.get_args(hint) if part is not type(None))
    return (hint,)


def is_required(slot: Field[Any]) -> bool:
    """Tell whether a record's field must be typed."""
    return slot.default is MISSING and slot.default_factory is MISSING
