"""The form asks for every field of the job file, each once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import fields
from datetime import date
from enum import Enum
from types import NoneType
from typing import get_args, get_type_hints

from foldwright.core.check.plan import ShadeSpec
from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.length import Length
from foldwright.web.fields import Field, Kind, every_field

ROOMS = (
    "opening",
    "mount",
    "asked",
    "design",
    "materials",
    "lift",
    "safety",
    "cutting",
    "making",
    "fixing",
    "delivery",
)
ELSEWHERE = ("overrides",)  # each is typed beside the finding that it answers for


def types_of_spec() -> Iterator[tuple[str, type]]:
    hints = get_type_hints(ShadeSpec)
    for slot in fields(ShadeSpec):
        if slot.name not in (*ROOMS, *ELSEWHERE):
            yield slot.name, hints[slot.name]
    for room in ROOMS:
        for key, kind in get_type_hints(hints[room]).items():
            plain = [part for part in get_args(kind) if part is not NoneType]
            yield f"{room}.{key}", plain[0] if plain else kind


SPEC = dict(types_of_spec())
FORM = {one.path: one for one in every_field()}


def test_every_field_of_the_job_file_is_asked_for_once() -> None:
    asked = Counter(one.path for one in every_field())
    assert set(asked) == set(SPEC)
    assert set(asked.values()) == {1}


def test_every_field_is_asked_in_the_way_its_type_wants() -> None:
    ways: dict[type, tuple[Kind, ...]] = {
        Length: (Kind.LENGTH,),
        float: (Kind.NUMBER,),
        int: (Kind.NUMBER,),
        bool: (Kind.TICK, Kind.CHOICE),
        str: (Kind.TEXT, Kind.RECORD),
        date: (Kind.TEXT,),
    }
    wrong = [
        path for path, kind in SPEC.items() if FORM[path].kind not in ways.get(kind, (Kind.CHOICE,))
    ]
    assert wrong == []


def test_every_choice_offers_exactly_the_words_of_the_job_file() -> None:
    for path, kind in SPEC.items():
        if issubclass(kind, Enum):
            assert offered(FORM[path]) == {member.value for member in kind}, path


def offered(one: Field) -> set[str]:
    return {option.word for option in one.options} - {""}


def test_every_record_is_looked_up_in_a_list_of_the_shop() -> None:
    of_no_shade = {
        "stock_lengths",
        "offcuts",
        "small_works",
    }  # what a job is cut from, not what is chosen
    lists = {slot.name for slot in fields(ShopList)} - of_no_shade
    records = [one for one in every_field() if one.kind is Kind.RECORD]
    assert {one.shop_list for one in records} == lists


def test_every_field_has_a_label_of_its_own() -> None:
    labels = Counter(one.label for one in every_field())
    assert [label for label, count in labels.items() if count > 1] == []
