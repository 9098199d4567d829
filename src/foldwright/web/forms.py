"""From the form to the job file's tables, and back, without changing what was typed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable
from foldwright.core.why.fault import Fault
from foldwright.web.fields import Field, Kind, every_field

Table = dict[str, Any]
Value = str | bool

_ASKED = {"yes": True, "no": False}
YES_OR_NO = {"opening.sill": _ASKED, "opening.taller_than_wide": _ASKED}
TENTH_OF_A_MILLIMETRE = Length.mm("0.1")


def shade_from_form(form: Mapping[str, str], saved: Table) -> Table:
    """Lay what was typed into the table of a shade."""
    return form_laid_in(form, saved, every_field())


def form_laid_in(form: Mapping[str, str], saved: Table, fields: Iterable[Field]) -> Table:
    """Lay what was typed in some fields into the table that was saved.

    A field that still reads as it was shown keeps the value that was saved, whatever kind
    of value that was; a field left empty is left out. Keys that the form does not know
    stay as they are, and so do fields that the form does not have.
    """
    table = {key: dict(value) if isinstance(value, dict) else value for key, value in saved.items()}
    for one in fields:
        if one.path not in form and one.kind is not Kind.TICK:
            continue
        if text_at(saved, one) != (typed := _typed(form, one)):
            _put(table, one.path, _value(one, typed))
    return table


def text_at(shade: Table, one: Field) -> str:
    """Give what the form shows for one field of a saved shade."""
    value = value_at(shade, one.path)
    if value is None or (one.kind is Kind.TICK and value is False):
        return one.default
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)


def value_at(shade: Table, path: str) -> Any:
    """Give what is saved under a dotted path, or None."""
    part: Any = shade
    for key in path.split("."):
        part = part.get(key) if isinstance(part, dict) else None
    return part


def _typed(form: Mapping[str, str], one: Field) -> str:
    return form.get(one.path, "").strip()


def _value(one: Field, typed: str) -> Value:
    if one.kind is Kind.TICK:
        return typed == "yes"
    return YES_OR_NO.get(one.path, {}).get(typed, typed)


def _put(table: Table, path: str, value: Value) -> None:
    """Put a value where its path leads, or leave out what is empty."""
    kept = value not in ("", False) or (path in YES_OR_NO and value is False)
    _lay(table, path.split("."), value if kept else None)


def _lay(table: Table, path: list[str], value: Value | None) -> None:
    key, *rest = path
    if rest:
        inner = table.setdefault(key, {})
        _lay(inner, rest, value)
        if not inner:
            del table[key]
        return
    table.pop(key, None)
    if value is not None:
        table[key] = value


@dataclass(frozen=True, kw_only=True, slots=True)
class Filled:
    """One field as the page shows it: what was typed, how it was read, what is wrong."""

    field: Field
    text: str
    echo: str = ""
    faults: tuple[Fault, ...] = ()

    @property
    def typed(self) -> bool:
        """Tell whether something other than the default stands in it."""
        return self.text != self.field.default


def filled_fields(
    shade: Table, faults: tuple[Fault, ...], where: str, system: System
) -> dict[str, Filled]:
    """Give every field of the form with its echo and its faults, by path."""
    places = f"{where}."
    return {one.path: fill(one, shade, faults, places, system) for one in every_field()}


def fill(
    one: Field, saved: Table, faults: tuple[Fault, ...], places: str, system: System
) -> Filled:
    """Fill one field; `places` is what the places of its faults begin with."""
    text = text_at(saved, one)
    own = tuple(fault for fault in faults if fault.where == places + one.path)
    echo = echo_of(text, system) if one.kind is Kind.LENGTH and not own else ""
    return Filled(field=one, text=text, echo=echo, faults=own)


def faults_elsewhere(faults: tuple[Fault, ...], where: str) -> Iterator[Fault]:
    """Give the faults that belong to no field of this shade's form."""
    known = {f"{where}.{one.path}" for one in every_field()}
    return (fault for fault in faults if fault.where not in known)


def echo_of(text: str, system: System) -> str:
    """Read a length back in both units, finely enough to see that nothing was lost.

    >>> echo_of("35-3/16", System.INCH)
    '35 3/16 in · 893.8 mm'
    """
    try:
        length = read_length(text, system)
    except Unreadable:
        return ""
    both = [
        print_length(length, System.INCH),
        print_length(length, System.METRIC, mark=TENTH_OF_A_MILLIMETRE),
    ]
    return " · ".join(both if system is System.INCH else reversed(both))
