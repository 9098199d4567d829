"""Read what a person typed into the core's records: one walk over their types.

The walk never stops at the first fault: it reads all there is and notes every fault
with its place and its remedy. A record is made only from a table without a fault.
"""

from __future__ import annotations

import typing
from collections.abc import Collection
from dataclasses import dataclass, fields, is_dataclass
from datetime import date
from enum import Enum
from typing import Any, TypeVar

from foldwright.core.quantity.length import Length
from foldwright.work.kinds import alternatives, hints, is_required
from foldwright.work.limits import AREAL_MASS, number_kind
from foldwright.work.values import Values
from foldwright.work.wording import is_blank, short, suggestion

R = TypeVar("R")


@dataclass(kw_only=True, slots=True)
class Walk(Values):
    """One reading of one document."""

    def record(self, record: type[R], typed: object, where: str) -> R | None:
        """Read a table into a record; give None where anything in it is at fault."""
        before = len(self.faults)
        kind: type = record
        table = self.table(typed, where, hints(kind))
        if table is None:
            return None
        values = self._fields(kind, table, where)
        return record(**values) if len(self.faults) == before else None

    def table(self, typed: object, where: str, known: Collection[str]) -> dict[Any, object] | None:
        """Open a table and refuse the names in it that are not known there."""
        if not isinstance(typed, dict):
            self.wrong_type(typed, where, "a table of fields")
            return None
        listed = "Known here: " + ", ".join(known) + "."
        for key in typed:
            if key not in known:
                remedy = suggestion(str(key), known, listed)
                self.fault(_join(where, short(key)), "this name is not known", remedy)
        return typed

    def _fields(self, record: type, typed: dict[Any, object], where: str) -> dict[str, Any]:
        values = {}
        for slot in fields(record):
            place = _join(where, slot.name)
            if not is_blank(typed.get(slot.name)):
                values[slot.name] = self._field(record, slot.name, typed, place)
            elif is_required(slot):
                self.fault(place, "it is missing", "Type it; nothing can stand in for it.")
        return values

    def _field(self, record: type, name: str, table: dict[Any, object], where: str) -> Any:
        typed, hint = table[name], hints(record)[name]
        if number_kind(name) is AREAL_MASS and isinstance(typed, str):
            return self.areal_mass(typed, table.get("usable_width"), where, name)
        if alternatives(hint) == (Length,):
            return self.length(typed, where, name, record.__name__)
        return self.value(hint, typed, where, name)

    def value(self, hint: Any, typed: object, where: str, name: str) -> Any:
        """Read one value of a type; where there are several, a table means the record."""
        plain, *others = alternatives(hint)
        kind = others[0] if others and isinstance(typed, dict) else plain
        origin, arguments = typing.get_origin(kind), typing.get_args(kind)
        if origin is tuple:
            return self._sequence(arguments, typed, where, name)
        if origin is dict:
            return self._by_name(arguments[1], typed, where)
        if is_dataclass(kind):
            return self.record(typing.cast("type[object]", kind), typed, where)
        return self._single(kind, typed, where, name)

    def _single(self, kind: Any, typed: object, where: str, name: str) -> Any:
        if issubclass(kind, Enum):
            return self.word(kind, typed, where)
        if kind is Length:
            return self.length(typed, where, name)
        if kind is bool:
            return self.yes_or_no(typed, where)
        if kind is int:
            return self.count(typed, where, name)
        if kind is float:
            return self.number(typed, where, name)
        return self.date(typed, where) if kind is date else self.text(typed, where, name)

    def _sequence(
        self, kinds: tuple[Any, ...], typed: object, where: str, name: str
    ) -> tuple[Any, ...]:
        """Read a list: as many as there are of one kind, or just as many as are named."""
        if not isinstance(typed, list):
            self.wrong_type(typed, where, "a list")
            return ()
        if kinds[-1] is not Ellipsis and len(typed) != len(kinds):
            self.fault(where, f"it holds {len(typed)} values", f"Give {len(kinds)}.")
        return tuple(
            self.value(kinds[0], item, f"{where}.{number}", name)
            for number, item in enumerate(typed, start=1)
        )

    def _by_name(self, record: type[R], typed: object, where: str) -> dict[str, R]:
        """Read a list of records that are known by their names, each name once."""
        kept: dict[str, Any] = {}
        for number, item in enumerate(self._sequence((record, ...), typed, where, ""), start=1):
            if item is not None and item.name in kept:
                what = f"“{short(item.name)}” is listed twice"
                self.fault(f"{where}.{number}.name", what, "Give one of the two another name.")
            elif item is not None:
                kept[item.name] = item
        return kept


def _join(where: str, key: str) -> str:
    return f"{where}.{key}" if where else key
