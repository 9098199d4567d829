"""Read single values as typed: lengths, numbers, words, dates and text, faults noted."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field
from datetime import date
from enum import Enum

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measures import read_areal_mass, read_number
from foldwright.core.quantity.printing import print_both
from foldwright.core.quantity.reading import ABSURD, read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable
from foldwright.core.why.fault import Fault
from foldwright.work.limits import NumberKind, count_limits, length_limits, number_kind
from foldwright.work.wording import has_odd_characters, is_blank, kind_of, short, suggestion

LONGEST_TEXT = 4000
LONGEST_NAME = 60
BEYOND_ANY_QUANTITY = 1e15
BARE_NUMBER = re.compile(r"\s*[\d.,]+\s*", re.ASCII)
NAMES = ("tag", "name")
YES_OR_NO = {"yes": True, "true": True, "no": False, "false": False}


@dataclass(kw_only=True, slots=True)
class Values:
    """One reading: the units of its bare numbers, and the faults noted so far.

    Each method reads one value; where it cannot, it notes why and gives None.
    """

    system: System
    faults: list[Fault] = field(default_factory=list)

    def fault(self, where: str, what: str, remedy: str) -> None:
        """Note one fault and go on."""
        self.faults.append(Fault(where=where or "the file", what=what, remedy=remedy))

    def wrong_type(self, typed: object, where: str, wanted: str) -> None:
        """Note that something of another kind is wanted."""
        self.fault(where, f"this is {kind_of(typed)}", f"Give {wanted}.")

    def length(self, typed: object, where: str, name: str, record: str = "") -> Length | None:
        """Read a length: text as a workroom writes it, or a bare number in the system."""
        text = self._digits(typed, where, "a length such as 35 3/16 or 894 mm")
        if text is None:
            return None
        try:
            longest = max(ABSURD, length_limits(name, record).greatest)
            length = read_length(text, self.system, longest=longest)
        except Unreadable as trouble:
            self.fault(where, trouble.what, trouble.remedy)
            return None
        return self._sensible_length(length, where, name, record)

    def _sensible_length(self, length: Length, where: str, name: str, record: str) -> Length | None:
        limits = length_limits(name, record)
        if limits.least <= length <= limits.greatest:
            return length
        beyond = "less" if length < limits.least else "more"
        least, greatest = (print_both(end, self.system) for end in (limits.least, limits.greatest))
        self.fault(
            where,
            f"{print_both(length, self.system)} is {beyond} than can be",
            f"Type a length from {least} to {greatest}; mind the unit.",
        )
        return None

    def number(self, typed: object, where: str, name: str) -> float | None:
        """Read a number: bare in the unit that its field's name says, or text with a unit."""
        kind = number_kind(name)
        digits = self._digits(typed, where, f"{kind.noun}{_in_unit(kind)}")
        if digits is None:
            return None
        read = read_number if BARE_NUMBER.fullmatch(digits) else kind.read
        try:
            number = read(digits)
        except Unreadable as trouble:
            self.fault(where, trouble.what, trouble.remedy)
            return None
        return self._sensible_number(number, where, name)

    def areal_mass(self, typed: str, width: object, where: str, name: str) -> float | None:
        """Read a cloth weight in words; ounces per linear yard need the width of the cloth."""
        try:
            number = read_areal_mass(typed, self._quiet_width(width))
        except Unreadable as trouble:
            self.fault(where, trouble.what, trouble.remedy)
            return None
        return self._sensible_number(number, where, name)

    def _quiet_width(self, typed: object) -> Length | None:
        """Read the width without noting its faults, which are noted at its own field."""
        quiet = Values(system=self.system)
        return None if is_blank(typed) else quiet.length(typed, "", "usable_width")

    def _sensible_number(self, number: float, where: str, name: str) -> float | None:
        kind = number_kind(name)
        unit = _in_unit(kind)
        if kind.least <= number <= kind.greatest:
            return number
        self.fault(
            where,
            f"{number:g}{unit} is outside what can be",
            f"Type {kind.noun} from {kind.least:g} to {kind.greatest:g}{unit}.",
        )
        return None

    def _digits(self, typed: object, where: str, wanted: str) -> str | None:
        """Give a bare number as it would be typed, and text as it is."""
        if isinstance(typed, str):
            return typed
        if isinstance(typed, bool) or not isinstance(typed, int | float):
            self.wrong_type(typed, where, wanted)
            return None
        if not abs(typed) < BEYOND_ANY_QUANTITY:  # also false for what is not a number
            self.fault(where, f"“{short(typed)}” is no quantity", f"Type {wanted}.")
            return None
        return str(typed) if isinstance(typed, int) else _plain_decimal(typed)

    def count(self, typed: object, where: str, name: str) -> int | None:
        """Read a whole number."""
        text = self._digits(typed, where, "a whole number")
        if text is None:
            return None
        least, greatest = count_limits(name)
        number = _whole(text)
        if number is not None and least <= number <= greatest:
            return number
        what = f"“{short(text)}” cannot be used here"
        self.fault(where, what, f"Type a whole number from {least} to {greatest}.")
        return None

    def yes_or_no(self, typed: object, where: str) -> bool | None:
        """Read yes or no, true or false."""
        answer = typed if isinstance(typed, bool) else YES_OR_NO.get(str(typed).strip().lower())
        if answer is None:
            self.fault(where, f"“{short(typed)}” is neither yes nor no", "Type true or false.")
        return answer

    def date(self, typed: object, where: str) -> date | None:
        """Read a date: year, month, day."""
        try:
            return date.fromisoformat(str(typed))
        except ValueError:
            remedy = "Type the year, month and day, for example 2026-05-04."
            self.fault(where, f"“{short(typed)}” is no date", remedy)
            return None

    def word(self, words: type[Enum], typed: object, where: str) -> Enum | None:
        """Read one of a few words."""
        known = {str(word.value): word for word in words}
        wanted = str(typed).strip().lower()
        for text, word in known.items():
            if text.lower() == wanted:
                return word
        listed = "Type one of: " + ", ".join(known) + "."
        what = f"“{short(typed)}” is not one of the words known here"
        self.fault(where, what, suggestion(str(typed), known, listed))
        return None

    def text(self, typed: object, where: str, name: str) -> str | None:
        """Read text."""
        if not isinstance(typed, str):
            self.wrong_type(typed, where, "text (in quotes)")
            return None
        longest = LONGEST_NAME if name in NAMES else LONGEST_TEXT
        if len(typed) > longest:
            self.fault(where, f"it is {len(typed)} letters long", f"Use at most {longest}.")
        if has_odd_characters(typed, one_line=name in NAMES):
            self.fault(where, "it holds characters that cannot be printed", "Type it again.")
        return typed


def _in_unit(kind: NumberKind) -> str:
    return "" if kind.unit == "1" else f" {kind.unit}"


def _plain_decimal(number: float) -> str:
    """Give a float's own digits without an exponent, as a person would type it."""
    digits = repr(number)
    return f"{number:.20f}".rstrip("0") + "0" if "e" in digits else digits


def _whole(text: str) -> int | None:
    try:
        number = float(text)
    except ValueError:
        return None
    return int(number) if math.isfinite(number) and number == int(number) else None
