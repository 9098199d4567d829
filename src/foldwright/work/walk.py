"""Read what a person typed into the core's records: one walk over their types.

The walk never stops at the first fault: it reads all there is and gives every fault
with its place and its remedy. A record is made only from a table without a fault.
"""

from __future__ import annotations

import difflib
import math
import types
import typing
from collections.abc import Collection, Iterable
from dataclasses import MISSING, Field, dataclass, field, fields, is_dataclass
from datetime import date
from enum import Enum
from functools import cache
from typing import Any, TypeVar

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measures import read_areal_mass
from foldwright.core.quantity.printing import print_both
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable
from foldwright.core.why.fault import Fault
from foldwright.work.limits import AREAL_MASS, count_limits, length_limits, number_kind

R = TypeVar("R")

LONGEST_TEXT = 4000
LONGEST_NAME = 60
_NAMES = ("tag", "name")
_YES_NO = {"yes": True, "true": True, "no": False, "false": False}


@cache
def hints(record: type) -> dict[str, Any]:
    """Give the types of a record's fields, in order."""
    return typing.get_type_hints(record)


def bare(hint: Any) -> Any:
    """Give X for X | None.

    >>> bare(int | None)
    <class 'int'>
    """
    if isinstance(hint, types.UnionType) or typing.get_origin(hint) is typing.Union:
        return next(part for part in typing.get_args(hint) if part is not type(None))
    return hint


def is_required(slot: Field[Any]) -> bool:
    """Tell whether a record's field must be typed."""
    return slot.default is MISSING and slot.default_factory is MISSING


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Give the known word that was probably meant.

    >>> nearest("widht_top", ["width_top", "height_left"])
    'width_top'
    """
    lowered = {name.lower(): name for name in known}
    found = difflib.get_close_matches(word.lower()[:LONGEST_NAME], lowered, n=1, cutoff=0.5)
    return lowered[found[0]] if found else None


def suggestion(word: str, known: Iterable[str], otherwise: str) -> str:
    """Give the remedy for an unknown word: the nearest known one, or all there are."""
    close = nearest(word, known)
    return f"Did you mean “{close}”?" if close else otherwise


def short(typed: object) -> str:
    """Give what was typed as it is quoted in a sentence, cut where it is long."""
    text = str(typed)
    kept = text if len(text) <= LONGEST_NAME else text[:LONGEST_NAME] + "…"
    return kept.encode("utf-8", "backslashreplace").decode()


def kind_of(typed: object) -> str:
    """Give the word for what was typed.

    >>> kind_of([1]), kind_of("a")
    ('a list', 'text')
    """
    names = {bool: "yes or no", int: "a number", float: "a number", str: "text"}
    more = {list: "a list", dict: "a table", type(None): "nothing"}
    return {**names, **more}.get(type(typed), "something else")


def is_blank(typed: object) -> bool:
    """Tell whether nothing was typed: a form sends empty text for it."""
    return typed is None or (isinstance(typed, str) and not typed.strip())


@dataclass(kw_only=True, slots=True)
class Walk:
    """One reading of one document: the units of its bare numbers, and the faults so far."""

    system: System
    faults: list[Fault] = field(default_factory=list)

    def fault(self, where: str, what: str, remedy: str) -> None:
        """Note one fault and go on."""
        self.faults.append(Fault(where=where or "the file", what=what, remedy=remedy))

    def record(self, record: type[R], typed: object, where: str) -> R | None:
        """Read a table into a record; give None where anything in it is at fault."""
        before = len(self.faults)
        table = self.table(typed, where, hints(record))
        if table is None:
            return None
        values = self._fields(record, table, where)
        return record(**values) if len(self.faults) == before else None

    def table(
        self, typed: object, where: str, known: Collection[str]
    ) -> dict[Any, object] | None:
        """Open a table and refuse the names in it that are not known there."""
        if not isinstance(typed, dict):
            self._wrong_type(typed, where, "a table of fields")
            return None
        listed = "Known here: " + ", ".join(known) + "."
        for key in typed:
            if key not in known:
                self.fault(
                    _join(where, short(key)),
                    "this name is not known",
                    suggestion(str(key), known, listed),
                )
        return typed

    def _fields(self, record: type, typed: dict[Any, object], where: str) -> dict[str, Any]:
        values = {}
        for slot in fields(record):  # type: ignore[arg-type]  # every record is a dataclass
            place = _join(where, slot.name)
            kept = typed.get(slot.name)
            if not is_blank(kept):
                values[slot.name] = self._field(record, slot.name, typed, place)
            elif is_required(slot):
                self.fault(place, "it is missing", "Type it; nothing can stand in for it.")
        return values

    def _field(self, record: type, name: str, typed: dict[Any, object], where: str) -> Any:
        hint = bare(hints(record)[name])
        if number_kind(name) is AREAL_MASS and isinstance(typed[name], str):
            return self._areal_mass(typed[name], typed.get("usable_width"), where)
        if hint is Length:
            return self.length(typed[name], where, name, record.__name__)
        return self.value(hint, typed[name], where, name)

    def value(self, hint: Any, typed: object, where: str, name: str) -> Any:
        """Read one value of the given type."""
        origin, arguments = typing.get_origin(hint), typing.get_args(hint)
        if origin is tuple:
            return self._sequence(arguments[0], typed, where, name)
        if origin is dict:
            return self._by_name(arguments[1], typed, where)
        if is_dataclass(hint):
            return self.record(typing.cast("type[object]", hint), typed, where)
        if isinstance(hint, type) and issubclass(hint, Enum):
            return self._word(hint, typed, where)
        return self._simple(hint, typed, where, name)

    def _simple(self, hint: Any, typed: object, where: str, name: str) -> Any:
        if hint is Length:
            return self.length(typed, where, name, "")
        if hint is bool:
            return self._yes_or_no(typed, where)
        if hint is int:
            return self._count(typed, where, name)
        if hint is float:
            return self._number(typed, where, name)
        if hint is date:
            return self._date(typed, where)
        return self._text(typed, where, name)

    def _sequence(self, hint: Any, typed: object, where: str, name: str) -> tuple[Any, ...]:
        if not isinstance(typed, list):
            self._wrong_type(typed, where, "a list")
            return ()
        return tuple(
            self.value(hint, item, f"{where}.{number}", name)
            for number, item in enumerate(typed, start=1)
        )

    def _by_name(self, record: type[R], typed: object, where: str) -> dict[str, R]:
        """Read a list of records that are known by their names, each name once."""
        read = self._sequence(record, typed, where, "")
        kept: dict[str, R] = {}
        for number, item in enumerate(read, start=1):
            if item is None:
                continue
            if item.name in kept:
                self.fault(
                    f"{where}.{number}.name",
                    f"“{short(item.name)}” is listed twice",
                    "Give one of the two another name.",
                )
            kept[item.name] = item
        return kept

    def length(self, typed: object, where: str, name: str, record: str) -> Length | None:
        """Read a length: text as a workroom writes it, or a bare number in the system."""
        text = self._number_as_text(typed, where, "a length such as 35 3/16 or 894 mm")
        if text is None:
            return None
        try:
            length = read_length(text, self.system)
        except Unreadable as trouble:
            self.fault(where, trouble.what, trouble.remedy)
            return None
        return self._sensible_length(length, where, name, record)

    def _sensible_length(
        self, length: Length, where: str, name: str, record: str
    ) -> Length | None:
        limits = length_limits(name, record)
        if limits.least <= length <= limits.greatest:
            return length
        beyond = "less" if length < limits.least else "more"
        self.fault(
            where,
            f"{print_both(length, self.system)} is {beyond} than can be",
            f"Type a length from {print_both(limits.least, self.system)} to "
            f"{print_both(limits.greatest, self.system)}; mind the unit.",
        )
        return None

    def _number_as_text(self, typed: object, where: str, wanted: str) -> str | None:
        if isinstance(typed, str):
            return typed
        if isinstance(typed, bool) or not isinstance(typed, int | float):
            self._wrong_type(typed, where, wanted)
            return None
        if not math.isfinite(typed) or abs(typed) > 1e15:  # noqa: PLR2004 - beyond any quantity
            self.fault(where, f"{short(typed)} is no quantity", f"Type {wanted}.")
            return None
        return str(typed) if isinstance(typed, int) else _plain_decimal(typed)

    def _number(self, typed: object, where: str, name: str) -> float | None:
        kind = number_kind(name)
        if isinstance(typed, str):
            return self._number_from_text(typed, where, name)
        text = self._number_as_text(typed, where, f"{kind.noun} ({kind.unit})")
        return None if text is None else self._sensible_number(float(text), where, name)

    def _number_from_text(self, typed: str, where: str, name: str) -> float | None:
        try:
            number = number_kind(name).read(typed)
        except Unreadable as trouble:
            self.fault(where, trouble.what, trouble.remedy)
            return None
        return self._sensible_number(number, where, name)

    def _areal_mass(self, typed: object, width: object, where: str) -> float | None:
        """Read a mass per area; ounces per linear yard need the width of the cloth."""
        try:
            number = read_areal_mass(str(typed), self._quiet_length(width))
        except Unreadable as trouble:
            self.fault(where, trouble.what, trouble.remedy)
            return None
        return self._sensible_number(number, where, "areal_mass_kg_m2")

    def _quiet_length(self, typed: object) -> Length | None:
        quiet = Walk(system=self.system)
        return None if is_blank(typed) else quiet.length(typed, "", "usable_width", "Cloth")

    def _sensible_number(self, number: float, where: str, name: str) -> float | None:
        kind = number_kind(name)
        if math.isfinite(number) and kind.least <= number <= kind.greatest:
            return float(number)
        self.fault(
            where,
            f"{number:g} {_unit_words(kind.unit)}is outside what can be",
            f"Type {kind.noun} from {kind.least:g} to {kind.greatest:g} "
            f"{_unit_words(kind.unit)}".rstrip() + ".",
        )
        return None

    def _count(self, typed: object, where: str, name: str) -> int | None:
        text = self._number_as_text(typed, where, "a whole number")
        if text is None:
            return None
        least, greatest = count_limits(name)
        number = _whole(text)
        if number is not None and least <= number <= greatest:
            return number
        self.fault(
            where,
            f"“{short(text)}” cannot be used here",
            f"Type a whole number from {least} to {greatest}.",
        )
        return None

    def _yes_or_no(self, typed: object, where: str) -> bool | None:
        answer = typed if isinstance(typed, bool) else _YES_NO.get(str(typed).strip().lower())
        if answer is None:
            self.fault(where, f"“{short(typed)}” is neither yes nor no", "Type true or false.")
        return answer

    def _date(self, typed: object, where: str) -> date | None:
        try:
            return date.fromisoformat(str(typed))
        except ValueError:
            self.fault(
                where,
                f"“{short(typed)}” is no date",
                "Type the year, month and day, for example 2026-05-04.",
            )
            return None

    def _word(self, words: type[Enum], typed: object, where: str) -> Enum | None:
        known = {str(word.value): word for word in words}
        kept = str(typed).strip().lower() if isinstance(typed, str) else ""
        found = next((word for text, word in known.items() if text.lower() == kept), None)
        if found is None:
            listed = "Type one of: " + ", ".join(known) + "."
            remedy = suggestion(str(typed), known, listed)
            self.fault(where, f"“{short(typed)}” is not one of the words known here", remedy)
        return found

    def _text(self, typed: object, where: str, name: str) -> str:
        if not isinstance(typed, str):
            self._wrong_type(typed, where, "text (in quotes)")
            return ""
        longest = LONGEST_NAME if name in _NAMES else LONGEST_TEXT
        if len(typed) > longest:
            self.fault(where, f"it is {len(typed)} letters long", f"Use at most {longest}.")
        if _has_odd_characters(typed, one_line=name in _NAMES):
            self.fault(where, "it holds characters that cannot be printed", "Type it again.")
        return typed

    def _wrong_type(self, typed: object, where: str, wanted: str) -> None:
        self.fault(where, f"this is {kind_of(typed)}", f"Give {wanted}.")


def _join(where: str, key: str) -> str:
    return f"{where}.{key}" if where else key


def _unit_words(unit: str) -> str:
    return "" if unit == "1" else f"{unit} "


def _plain_decimal(number: float) -> str:
    """Give a float's shortest exact digits without an exponent, as a person would type it."""
    text = repr(number)
    return f"{number:.20f}".rstrip("0") if "e" in text else text


def _whole(text: str) -> int | None:
    try:
        number = float(text)
    except ValueError:
        return None
    return int(number) if math.isfinite(number) and number == int(number) else None


def _has_odd_characters(text: str, *, one_line: bool) -> bool:
    allowed = "" if one_line else "\n\t"
    return any(
        (ord(letter) < ord(" ") or "\ud800" <= letter <= "\udfff") and letter not in allowed
        for letter in text
    )
