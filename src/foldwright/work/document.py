"""A job as typed, read into a `Job`: every fault at once, each with its place and remedy.

A document is the job file's tables as plain values (text, numbers, lists, tables). It
is what is saved, so that what was typed survives; a `Job` is only ever read from it.
"""

from __future__ import annotations

from dataclasses import dataclass, field, fields, make_dataclass, replace
from functools import cache
from typing import Any

from foldwright.core.check.boards.board import SharedBoard
from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.source import Status
from foldwright.work.contradictions import faults_between_fields, faults_between_shades
from foldwright.work.group_faults import faults_of_groups
from foldwright.work.job import Job, JobHead
from foldwright.work.references import faults_of_references
from foldwright.work.shop import house_shop, unlisted_cloth, unlisted_names
from foldwright.work.walk import Walk

Document = dict[str, Any]


@dataclass(frozen=True, kw_only=True, slots=True)
class Reading:
    """What came of reading a document: a job, or every fault that stands in the way."""

    document: Document
    job: Job | None
    faults: tuple[Fault, ...] = ()


@cache
def typed_habits() -> type:
    """Give the table `[habits]`: the house's habits, each one typed or left as it is."""
    house = house_habits()
    slots = [
        (slot.name, _typed_as(getattr(house, slot.name)), field(default=None))
        for slot in fields(Habits)
    ]
    return make_dataclass("TypedHabits", slots, frozen=True, kw_only=True)


def _typed_as(habit: Figure[Any]) -> Any:
    return Length | None if habit.unit is Unit.LENGTH else float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Tables:
    """The tables of a document as read, and every fault that shows without the shop's list."""

    head: JobHead | None
    habits: Habits
    shades: tuple[ShadeSpec, ...]
    rolls: tuple[ReceivedRoll, ...]
    groups: tuple[ShadeGroup, ...]
    boards: tuple[SharedBoard, ...]
    faults: tuple[Fault, ...]


def read_document(document: object, shop: ShopList | None = None) -> Reading:
    """Read a document into a job.

    Takes: plain values as typed; the shop's list, or None for the one that comes along.
    Gives: a `Reading` with the job, or with None and every fault found.

    >>> [fault.sentence for fault in read_document({"job": {"name": "A"}}).faults]
    ['job.system: it is missing. Type it; nothing can stand in for it.']
    """
    kept = document if isinstance(document, dict) else {}
    listed = house_shop() if shop is None else shop
    tables = read_tables(document)
    faults = (*tables.faults, *_unlisted(kept, listed))
    if tables.head is None or faults:
        return Reading(document=kept, job=None, faults=faults)
    job = Job(
        head=tables.head,
        habits=tables.habits,
        shop=listed,
        shades=tables.shades,
        rolls=tables.rolls,
        groups=tables.groups,
        boards=tables.boards,
    )
    return Reading(document=kept, job=job)


def read_tables(document: object) -> Tables:
    """Read a document's tables without asking whether the shop lists the materials."""
    kept = document if isinstance(document, dict) else {}
    walk = Walk(system=typed_system(kept))
    typed = walk.table(document, "", ("job", "habits", "shades", "rolls", "groups", "boards")) or {}
    head = walk.record(JobHead, typed.get("job", {}), "job")
    habits = _read_habits(walk, typed.get("habits", {}))
    shades = walk.value(tuple[ShadeSpec, ...], typed.get("shades", []), "shades", "shades")
    rolls = walk.value(tuple[ReceivedRoll, ...], typed.get("rolls", []), "rolls", "rolls")
    groups = walk.value(tuple[ShadeGroup, ...], typed.get("groups", []), "groups", "groups")
    boards = walk.value(tuple[SharedBoard, ...], typed.get("boards", []), "boards", "boards")
    faults = (*walk.faults, *_contradictions(kept))
    return Tables(
        head=head,
        habits=habits,
        shades=shades,
        rolls=rolls,
        groups=groups,
        boards=boards,
        faults=faults,
    )


def typed_system(document: Document) -> System:
    """Give the units of a document's bare numbers; inches until it says so itself."""
    head = document.get("job")
    word = head.get("system") if isinstance(head, dict) else None
    return next((system for system in System if system.value == word), System.INCH)


def _tables(document: Document, name: str) -> list[tuple[str, dict[Any, Any]]]:
    typed = document.get(name)
    listed = typed if isinstance(typed, list) else []
    return [(f"{name}.{n}", table) for n, table in enumerate(listed, 1) if isinstance(table, dict)]


def _contradictions(document: Document) -> tuple[Fault, ...]:
    tables = _tables(document, "shades")
    within = [fault for where, shade in tables for fault in faults_between_fields(shade, where)]
    without = faults_of_references(tables, _tables(document, "rolls"))
    grouped = faults_of_groups(_tables(document, "groups"), tables, "group")
    boarded = faults_of_groups(_tables(document, "boards"), tables, "board")
    return (*within, *faults_between_shades(tables), *without, *grouped, *boarded)


def _unlisted(document: Document, shop: ShopList) -> tuple[Fault, ...]:
    tables = _tables(document, "shades")
    of_shades = (fault for where, shade in tables for fault in unlisted_names(shade, shop, where))
    rolls = _tables(document, "rolls")
    return (
        *of_shades,
        *(fault for where, roll in rolls for fault in unlisted_cloth(roll, shop, where)),
    )


def _read_habits(walk: Walk, typed: object) -> Habits:
    """Give the house's habits, with those replaced that the shop typed."""
    house = house_habits()
    changed = walk.record(typed_habits(), typed, "habits")
    named: dict[str, Any] = vars(changed) if changed else {}
    own = {
        name: _own(getattr(house, name), value)
        for name, value in named.items()
        if value is not None
    }
    return replace(house, **own)


def _own(house: Figure[Any], value: Any) -> Figure[Any]:
    return Figure(
        name=house.name,
        value=value,
        unit=house.unit,
        because="The shop's own habit, as its file says.",
        status=Status.CHOSEN,
        rounding=house.rounding,
    )
