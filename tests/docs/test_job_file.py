"""The page of the job file names every field, every word and every habit as they are."""

from __future__ import annotations

import re
import tomllib
from dataclasses import fields, is_dataclass
from enum import Enum
from pathlib import Path
from typing import Any

import pytest

from foldwright.core.check.boards.board import SharedBoard
from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Override
from foldwright.core.why.telling import show_value
from foldwright.work.document import read_document
from foldwright.work.job import JobHead
from foldwright.work.kinds import alternatives, hints

PAGE = Path(__file__).parents[2] / "docs" / "job-file.md"
TEXT = PAGE.read_text(encoding="utf-8")
TABLES = [name for name, kind in hints(ShadeSpec).items() if is_dataclass(alternatives(kind)[0])]
RECORDS = [
    JobHead,
    ShadeSpec,
    *(alternatives(hints(ShadeSpec)[table])[0] for table in TABLES),
    Override,
    ReceivedRoll,
    ShadeGroup,
    SharedBoard,
]
FIELDS = [(record, name) for record in RECORDS for name in hints(record)]


@pytest.mark.parametrize(("record", "name"), FIELDS)
def test_every_field_is_named_with_its_words(record: type, name: str) -> None:
    assert f"`{name}`" in TEXT
    for kind in alternatives(hints(record)[name]):
        if isinstance(kind, type) and issubclass(kind, Enum):
            assert all(f"`{word.value}`" in TEXT for word in kind)


@pytest.mark.parametrize("name", [slot.name for slot in fields(Habits)])
def test_every_habit_stands_with_its_figure(name: str) -> None:
    habit = getattr(house_habits(), name)
    inch, metric = (show_value(habit, system) for system in System)
    assert f"| `{name}` | {habit.name} | {inch} | {metric} | {habit.status.value} |" in TEXT


@pytest.mark.parametrize("name", [slot.name for slot in fields(ShopList)])
def test_every_list_of_the_shop_is_named(name: str) -> None:
    assert f"`[[{name}]]`" in TEXT


def test_the_page_names_no_field_that_there_is_not() -> None:
    shop: set[str] = set()
    for hint in hints(ShopList).values():
        shop |= set(hints(hint.__args__[1]))
    known = {name for record in (*RECORDS, Habits) for name in hints(record)} | shop
    known |= {word.value for record, name in FIELDS for word in words(record, name)}
    named = re.findall(r"^\| (`[^|]*`) ", TEXT, re.MULTILINE)
    rows = [name for cell in named for name in re.findall(r"`([^`]+)`", cell)]
    assert set(rows) <= known


def words(record: type, name: str) -> list[Enum]:
    kinds: tuple[Any, ...] = alternatives(hints(record)[name])
    return [
        word for kind in kinds if isinstance(kind, type) and issubclass(kind, Enum) for word in kind
    ]


def test_its_example_reads() -> None:
    (example,) = re.findall(r"```toml\n(.*?)```", TEXT, re.DOTALL)
    assert read_document(tomllib.loads(example)).faults == ()


def test_its_links_lead_somewhere() -> None:
    links = re.findall(r"\]\((?!https?:)([^)]+)\)", TEXT)
    assert len(links) > 5
    assert [link for link in links if not (PAGE.parent / link).exists()] == []
