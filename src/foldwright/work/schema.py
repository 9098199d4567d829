"""JSON Schemas of what is read and what is answered, written from the types themselves.

The walk here goes over the same types, with the same limits, as the walk that reads.
"""

from __future__ import annotations

import typing
from collections.abc import Iterable
from dataclasses import Field, dataclass, field, fields, is_dataclass
from datetime import date
from enum import Enum
from typing import Any

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Remedy
from foldwright.work.kinds import alternatives, hints, is_required
from foldwright.work.limits import count_limits, length_limits, number_kind
from foldwright.work.values import LONGEST_NAME, LONGEST_TEXT, NAMES, YES_OR_NO

DIALECT = "https://json-schema.org/draft/2020-12/schema"
Schema = dict[str, Any]

NULL: Schema = {"type": "null"}
TEXT: Schema = {"type": "string"}
NUMBER: Schema = {"type": "number"}


@dataclass(kw_only=True, slots=True)
class Writer:
    """Writes the schema of one document; records are written once, under their names."""

    definitions: dict[str, Schema] = field(default_factory=dict)

    def document(self, record: type, title: str) -> Schema:
        """Write the schema of a whole document, its parts beside it."""
        body = self.record(record)
        return {"$schema": DIALECT, "title": title, **body, "$defs": self.definitions}

    def record(self, record: type) -> Schema:
        """Refer to a record's schema, written where it is met first."""
        name = record.__name__
        if name not in self.definitions:
            self.definitions[name] = {}  # before its parts, which may refer to it
            self.definitions[name] = self._table(record)
        return {"$ref": f"#/$defs/{name}"}

    def _table(self, record: type) -> Schema:
        known = hints(record)
        slots = fields(record)
        return {
            "type": "object",
            "description": _first_sentence(record),
            "properties": {
                slot.name: self.value(known[slot.name], slot.name, record) for slot in slots
            },
            "required": [slot.name for slot in slots if self.is_required(slot)],
            "additionalProperties": False,
        }

    def is_required(self, slot: Field[Any]) -> bool:
        """Tell whether a field must be there."""
        return is_required(slot)

    def value(self, hint: Any, name: str, record: type) -> Schema:
        """Write the schema of one value of a type."""
        kinds = [self.one_kind(kind, name, record) for kind in alternatives(hint)]
        return kinds[0] if len(kinds) == 1 else {"anyOf": kinds}

    def one_kind(self, kind: Any, name: str, record: type) -> Schema:
        """Write the schema of a value that is of one kind."""
        origin, arguments = typing.get_origin(kind), typing.get_args(kind)
        if origin is tuple:
            return self._list(arguments, name, record)
        if origin is dict:
            return {"type": "array", "items": self.value(arguments[1], name, record)}
        if is_dataclass(kind) and kind is not Length:
            return self.record(typing.cast("type", kind))
        return self.single(kind, name, record)

    def _list(self, kinds: tuple[Any, ...], name: str, record: type) -> Schema:
        items = {"type": "array", "items": self.value(kinds[0], name, record)}
        if kinds[-1] is Ellipsis:
            return items
        return {**items, "minItems": len(kinds), "maxItems": len(kinds)}

    def single(self, kind: Any, name: str, record: type) -> Schema:
        """Write the schema of a single value."""
        raise NotImplementedError


@dataclass(kw_only=True, slots=True)
class TypedWriter(Writer):
    """Writes what a person may type: lengths as text or number, words, yes and no."""

    def single(self, kind: Any, name: str, record: type) -> Schema:
        """Write the schema of a single value as typed."""
        if kind is Length:
            return _typed_length(name, record)
        if kind is bool:
            return {"enum": [True, False, *YES_OR_NO]}
        if kind is int:
            least, greatest = count_limits(name)
            return {"type": ["integer", "string"], "minimum": least, "maximum": greatest}
        if kind is float:
            return _typed_number(name)
        if kind is date:
            return {"type": "string", "format": "date"}
        return _words(kind) or _typed_text(name)


@dataclass(kw_only=True, slots=True)
class PlainWriter(Writer):
    """Writes what a program may give: numbers in SI."""

    def single(self, kind: Any, name: str, record: type) -> Schema:
        """Write the schema of a single value in SI."""
        del record
        if kind is int:
            least, greatest = count_limits(name)
            return {"type": "integer", "minimum": least, "maximum": greatest}
        if kind is float:
            return NUMBER
        return _words(kind) or _typed_text(name)


@dataclass(kw_only=True, slots=True)
class AnswerWriter(Writer):
    """Writes what is answered: every field is there, null where nothing is known."""

    def is_required(self, slot: Field[Any]) -> bool:
        """Say yes: answers leave no field out."""
        del slot
        return True

    def value(self, hint: Any, name: str, record: type) -> Schema:
        """Write the schema of one value, null where it may be unknown."""
        kinds = [self.one_kind(kind, name, record) for kind in alternatives(hint)]
        if alternatives(hint) != (hint,):
            kinds.append(NULL)
        return kinds[0] if len(kinds) == 1 else {"anyOf": kinds}

    def one_kind(self, kind: Any, name: str, record: type) -> Schema:
        """Write figures, findings and remedies as they are answered."""
        known = {Figure: FIGURE, Finding: FINDING, Remedy: REMEDY}
        whole = typing.get_origin(kind) or kind
        if whole in known:
            self.definitions[whole.__name__] = known[whole]
            self.definitions.setdefault("Figure", FIGURE)
            return {"$ref": f"#/$defs/{whole.__name__}"}
        if whole is dict:
            value = self.value(typing.get_args(kind)[1], name, record)
            return {"type": "object", "additionalProperties": value}
        return Writer.one_kind(self, kind, name, record)

    def single(self, kind: Any, name: str, record: type) -> Schema:
        """Write the schema of a single answered value."""
        del name, record
        return _words(kind) or _ANSWERED.get(kind, TEXT)


_ANSWERED: dict[Any, Schema] = {
    Length: {"type": "number", "description": "mm"},
    bool: {"type": "boolean"},
    int: {"type": "integer"},
    float: {"type": ["number", "null"], "description": "null: without end"},
    date: {"type": "string", "format": "date"},
}


def _first_sentence(record: type) -> str:
    return (record.__doc__ or "").strip().split("\n")[0]


def _words(kind: Any) -> Schema | None:
    if isinstance(kind, type) and issubclass(kind, Enum):
        return {"enum": [word.value for word in kind]}
    return None


def _typed_length(name: str, record: type) -> Schema:
    limits = length_limits(name, record.__name__)
    return {
        "type": ["string", "number"],
        "minimum": 0,
        "description": "A length: text such as 35 3/16 or 894 mm, or a bare number in the units"
        f" of the file; from {limits.least.in_millimetres:g}"
        f" to {limits.greatest.in_millimetres:g} mm.",
    }


def _typed_number(name: str) -> Schema:
    kind = number_kind(name)
    unit = "" if kind.unit == "1" else f", in {kind.unit} where bare"
    return {
        "type": ["number", "string"],
        "minimum": kind.least,
        "maximum": kind.greatest,
        "description": f"{kind.noun[0].upper()}{kind.noun[1:]}{unit}.",
    }


def _typed_text(name: str) -> Schema:
    return {"type": "string", "maxLength": LONGEST_NAME if name in NAMES else LONGEST_TEXT}


def _answered(properties: Iterable[tuple[str, Schema]], description: str) -> Schema:
    named = dict(properties)
    return {
        "type": "object",
        "description": description,
        "properties": named,
        "required": list(named),
        "additionalProperties": False,
    }


_ANY_VALUE: Schema = {"type": ["number", "string", "null"]}
FIGURE = _answered(
    [
        ("name", TEXT),
        ("value", _ANY_VALUE),
        ("low", _ANY_VALUE),
        ("high", _ANY_VALUE),
        ("unit", {"type": "string", "description": "mm for lengths, else SI; word for words"}),
        ("text", {"type": "string", "description": "as shown, in the units of the job"}),
        ("why", TEXT),
        ("status", TEXT),
        ("rests_on", TEXT),
        ("source", {"type": ["string", "null"]}),
    ],
    "A value a person can see, with the middle 90 % of what is possible and its why.",
)
_CHANGE = _answered([("path", TEXT), ("text", TEXT)], "What to type into a field.")
REMEDY = _answered(
    [("sentence", TEXT), ("changes", {"type": "array", "items": _CHANGE})],
    "One way to mend a finding.",
)
FINDING = _answered(
    [
        ("id", TEXT),
        ("severity", {"enum": ["stop", "ask", "note"]}),
        ("stage", TEXT),
        ("sentence", TEXT),
        ("figures", {"type": "array", "items": {"$ref": "#/$defs/Figure"}}),
        ("remedies", {"type": "array", "items": REMEDY}),
        ("source", {"type": ["string", "null"]}),
    ],
    "One sentence about the order, with the figure found, its limit and what to do.",
)
