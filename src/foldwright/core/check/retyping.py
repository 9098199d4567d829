"""Type the changes of a remedy into a shade, as the button does in the job file."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import MISSING, fields, replace
from datetime import date
from enum import Enum
from functools import cache
from typing import Any, get_args, get_type_hints

from foldwright.core.check.plan import ShadeSpec
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Change

READ: dict[type, Callable[[str], Any]] = {
    Length: lambda text: read_length(text, System.INCH),  # a change always names its unit
    bool: lambda text: text == "true",
    int: int,
    float: float,
    str: str,
    date: date.fromisoformat,
}


def retype(spec: ShadeSpec, changes: Iterable[Change]) -> ShadeSpec:
    """Make the changes of a remedy in a shade.

    Takes: the shade as asked for; changes whose paths name its fields, lengths with their unit.

    Gives: the shade as it would be once they are typed; empty text clears a field.

    Raises: KeyError for a field that there is not; Unreadable or ValueError for text that is none.

    Source: derived here.

    >>> changed = retype(ShadeSpec(tag="A"), [Change(path="design.row_count", text="8")])
    >>> changed.design.row_count
    8
    """
    for change in changes:
        spec = _changed(spec, change)
    return spec


def _changed(spec: ShadeSpec, change: Change) -> ShadeSpec:
    part, _, name = change.path.partition(".")
    table = getattr(spec, part)
    value = _read(type(table), name, change.text.strip())
    return replace(spec, **{part: replace(table, **{name: value})})


def _read(table: type, name: str, text: str) -> Any:
    kind, default = _slots(table)[name]
    if not text:
        return default
    if issubclass(kind, Enum):
        return kind(text)
    return READ[kind](text)


@cache
def _slots(table: type) -> dict[str, tuple[type, Any]]:
    """Give of each field what is typed in it, and what it is while it is empty."""
    hints = get_type_hints(table)
    return {slot.name: (_kind(hints[slot.name]), _default(slot)) for slot in fields(table)}


def _kind(hint: Any) -> type:
    """Leave out that a field may be empty."""
    return next((each for each in get_args(hint) if each is not type(None)), hint)  # type: ignore[no-any-return]


def _default(slot: Any) -> Any:
    return None if slot.default is MISSING else slot.default
