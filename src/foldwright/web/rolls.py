"""The rolls in hand as forms: what was measured on each before anything is cut."""

from __future__ import annotations

from collections.abc import Mapping
from copy import deepcopy
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Cloth, ShopList
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.web.fields import Field, Kind
from foldwright.web.forms import Filled, Table, fill, form_laid_in, text_at
from foldwright.work.document import Document

FLAWS = "flaws_at"
ROWS_TO_SPARE = 3
ROLL = (
    Field(path="name", label="Name of the roll", kind=Kind.TEXT, hint="As on its tag."),
    Field(path="cloth", label="Cloth", kind=Kind.RECORD, shop_list="cloths"),
    Field(path="lot", label="Dye lot", kind=Kind.TEXT, hint="No room is cut from two lots."),
    Field(path="length", label="Length", hint="Unrolled to its end."),
    Field(path="usable_width", label="Usable width", hint="The least of three places."),
)
PATTERN = (
    Field(
        path="vertical_repeat",
        label="Repeat along",
        hint="Over several repeats, divided by their number.",
    ),
    Field(path="horizontal_repeat", label="Repeat across", hint="Likewise across."),
    Field(
        path="repeat_begins",
        label="First motif",
        hint="From the outer end to the centre of a motif.",
    ),
)
CLOTH = (
    Field(path="head_loss", label="Squared off", hint="What is cut off the outer end."),
    Field(path="bow_or_skew", label="Off square", hint="How far it climbs over its width."),
    Field(
        path="steam_shrinkage",
        label="Shrinks in steam",
        kind=Kind.NUMBER,
        hint="Share of the length, from a pressed square: 0.02 is two in a hundred.",
    ),
    Field(path="flaws", label="Flaws found", kind=Kind.NUMBER, hint="How many, on the whole roll."),
    Field(path="note", label="Note", kind=Kind.TEXT),
)
FLAW = {
    "along": "From the outer end",
    "across": "From the left edge, face up",
    "length": "Long along the roll",
    "width": "Wide across it",
}


def flaw_fields(number: int) -> tuple[Field, ...]:
    """Give the fields of one flaw, counted from 1."""
    return tuple(Field(path=f"{FLAWS}.{number}.{key}", label=word) for key, word in FLAW.items())


def rolls_of(document: Document) -> list[Table]:
    """Give the rolls of a document, however badly it was typed."""
    rolls = document.get("rolls", [])
    return [roll for roll in rolls if isinstance(roll, dict)] if isinstance(rolls, list) else []


def with_roll(document: Document, number: int, form: Mapping[str, str]) -> Document:
    """Lay the form into the roll of this number, or add it as a new one."""
    rolls = deepcopy(rolls_of(document))
    saved = rolls[number - 1] if number <= len(rolls) else {}
    rolls[number - 1 :] = [_laid_in(form, saved), *rolls[number:]]
    return {**document, "rolls": rolls}


def without_roll(document: Document, number: int) -> Document:
    """Take a roll out of a document; shades that name it say so."""
    rolls = [roll for nth, roll in enumerate(rolls_of(document), start=1) if nth != number]
    kept = {key: value for key, value in document.items() if key != "rolls"}
    return {**kept, "rolls": rolls} if rolls else kept


def _laid_in(form: Mapping[str, str], saved: Table) -> Table:
    """Lay the form into one roll; flaws that are left empty are none."""
    flaws = [field for number in range(1, _rows(saved) + 1) for field in flaw_fields(number)]
    roll = form_laid_in(form, _numbered(saved), (*ROLL, *PATTERN, *CLOTH, *flaws))
    typed = roll.pop(FLAWS, {})
    found = [typed[number] for number in sorted(typed, key=int) if typed[number]]
    return {**roll, FLAWS: found} if found else roll


def _numbered(roll: Table) -> Table:
    """Give a roll with its flaws by their numbers, as the form has them."""
    flaws = {str(number): flaw for number, flaw in enumerate(_flaws(roll), start=1)}
    kept = {key: value for key, value in roll.items() if key != FLAWS}
    return {**kept, FLAWS: deepcopy(flaws)} if flaws else kept


def _flaws(roll: Table) -> list[Any]:
    found = roll.get(FLAWS, [])
    return [flaw for flaw in found if isinstance(flaw, dict)] if isinstance(found, list) else []


def _rows(roll: Table) -> int:
    return len(_flaws(roll)) + ROWS_TO_SPARE


@dataclass(frozen=True, kw_only=True)
class RollView:
    """One roll as typed, for its form; one that is not saved yet is empty."""

    document: Document
    number: int
    version: int
    system: System  # of the job's bare numbers
    shop: ShopList
    habits: Habits
    faults: tuple[Fault, ...] = ()

    @property
    def is_new(self) -> bool:
        """Tell whether it is not among the rolls of the job yet."""
        return self.number > len(rolls_of(self.document))

    @property
    def title(self) -> str:
        """Name it."""
        name = text_at(self._roll, ROLL[0])
        return f"Roll {name}" if name else "A roll that has come"

    @property
    def groups(self) -> tuple[tuple[str, tuple[Filled, ...]], ...]:
        """Give the fields by their groups, in the order in which a roll is looked over."""
        parts = {"The roll": ROLL, "Its pattern": PATTERN, "Its cloth": CLOTH}
        return tuple((title, self._filled(fields)) for title, fields in parts.items())

    @property
    def flaws(self) -> tuple[tuple[Filled, ...], ...]:
        """Give the fields of each flaw, with rows to spare."""
        rows = range(1, _rows(self._saved) + 1)
        return tuple(self._filled(flaw_fields(number)) for number in rows)

    @property
    def other_faults(self) -> list[Fault]:
        """Give what is wrong elsewhere in the job."""
        parts = (*(fields for _, fields in self.groups), *self.flaws)
        shown = {self._places + each.field.path for fields in parts for each in fields}
        return [fault for fault in self.faults if fault.where not in shown]

    def options(self, filled: Filled) -> list[tuple[str, str]]:
        """Give the cloths to choose from; one that the shop has not is kept as typed."""
        names = [*self.shop.cloths]
        typed = [filled.text] if filled.text and filled.text not in names else []
        return [("", "choose"), *((name, name) for name in (*typed, *names))]

    def stand_in(self, field: Field) -> str:
        """Tell what is taken where a field is left empty."""
        cloth = self.shop.cloths.get(text_at(self._roll, ROLL[1]))
        squared = {"head_loss": self.habits.straightening.value}
        length = squared.get(field.path) or (_by_the_sheet(cloth, field) if cloth else None)
        return print_length(length, self.system) if length else ""

    @property
    def _saved(self) -> Table:
        return {} if self.is_new else rolls_of(self.document)[self.number - 1]

    @cached_property
    def _roll(self) -> Table:
        return _numbered(self._saved)

    @property
    def _places(self) -> str:
        return f"rolls.{self.number}."

    def _filled(self, fields: tuple[Field, ...]) -> tuple[Filled, ...]:
        return tuple(fill(f, self._roll, self.faults, self._places, self.system) for f in fields)


def _by_the_sheet(cloth: Cloth, field: Field) -> Any:
    by_sheet = {"usable_width", "vertical_repeat", "horizontal_repeat"}
    return getattr(cloth, field.path) if field.path in by_sheet else None
