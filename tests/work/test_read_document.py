"""A document is read whole, and every fault names its field and the remedy."""

from __future__ import annotations

from typing import Any

import pytest
from tests.work.documents import small, with_field

from foldwright.core.design.choices import StyleName
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.markets import Market
from foldwright.core.lift.choices import LiftKind, Lock
from foldwright.core.measure.opening import MountPlace
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.source import Status
from foldwright.work.document import read_document


def test_what_is_typed_reaches_the_job() -> None:
    reading = read_document(small())
    assert reading.faults == ()
    assert reading.job is not None
    (shade,) = reading.job.shades
    assert reading.job.system is System.INCH
    assert shade.opening.width_top == Length.inches("35.1875")
    assert shade.opening.height_left == Length.inches(54)
    assert shade.opening.height_right is None
    assert shade.mount.place is MountPlace.INSIDE
    assert shade.design.row_count == 7
    assert shade.lift.kind is LiftKind.SPRING
    assert shade.lift.lock is Lock.TWO_WAY
    assert shade.lift.turns == 11.5


def test_a_bare_number_is_in_the_job_s_system() -> None:
    document = with_field("opening.width_top", 894)
    document["job"]["system"] = "metric"
    document["shades"][0]["opening"]["height_left"] = 1200.5
    reading = read_document(document)
    assert reading.job is not None
    assert reading.job.shades[0].opening.width_top == Length.mm(894)
    assert reading.job.shades[0].opening.height_left == Length.mm("1200.5")


def test_markets_and_date_are_read() -> None:
    document = small()
    document["job"] |= {"markets": ["Canada", "australia"], "date": "2026-05-04"}
    job = read_document(document).job
    assert job is not None
    assert job.markets == (Market.CANADA, Market.AUSTRALIA)
    assert job.head.date is not None
    assert job.head.date.isoformat() == "2026-05-04"


def test_a_habit_typed_replaces_the_house_s_and_says_so() -> None:
    document = small() | {"habits": {"skirt": "1", "load_margin": "12 %"}}
    job = read_document(document).job
    assert job is not None
    assert job.habits.skirt.value == Length.inches(1)
    assert job.habits.skirt.status is Status.CHOSEN
    assert job.habits.load_margin.value == pytest.approx(0.12)
    assert job.habits.side_turn == house_habits().side_turn


@pytest.mark.parametrize("blank", ["", "   ", None])
def test_an_empty_field_is_a_field_not_typed(blank: Any) -> None:
    reading = read_document(with_field("opening.width_top", blank))
    assert reading.job is not None
    assert reading.job.shades[0].opening.width_top is None


@pytest.mark.parametrize(
    ("path", "typed", "told"),
    [
        ("opening.width_top", "35 3/15", "3/15"),
        ("opening.width_top", "thirty", "thirty"),
        ("opening.width_top", -3, "negative"),
        ("opening.width_top", 0, "less than can be"),
        ("opening.width_top", float("nan"), "no quantity"),
        ("opening.width_top", float("inf"), "no quantity"),
        ("opening.width_top", 10**400, "no quantity"),
        ("opening.width_top", True, "yes or no"),
        ("opening.width_top", [35], "a list"),
        ("opening.width_top", {"in": 35}, "a table"),
        ("opening.height_left", "40 m", "40 m"),
        ("opening.height_left", "9 m", "more than can be"),
        ("opening.sill", "perhaps", "neither yes nor no"),
        ("opening.sill", 3, "neither yes nor no"),
        ("opening.obstruction", 3, "a number"),
        ("opening.obstruction", "a\x00b", "cannot be printed"),
        ("opening", "wide", "this is text"),
        ("mount.place", "insde", "not one of the words"),
        ("mount.place", 3, "not one of the words"),
        ("design.row_count", 7.5, "cannot be used"),
        ("design.row_count", 0, "cannot be used"),
        ("design.row_count", "seven", "cannot be used"),
        ("design.shrinkage", 1.5, "outside what can be"),
        ("design.shrinkage", "300 %", "more than the whole"),
        ("lift.turns", -1, "negative"),
        ("lift.turns", 1e9, "outside what can be"),
        ("lift.hand_force_limit_n", "30 kg/m", "unit"),
        ("tag", "x" * 61, "61 letters"),
        ("tag", "a\nb", "cannot be printed"),
    ],
)
def test_a_slip_is_told_with_its_place_and_remedy(path: str, typed: Any, told: str) -> None:
    reading = read_document(with_field(path, typed))
    assert reading.job is None
    (fault,) = reading.faults
    assert fault.where == f"shades.1.{path}"
    assert told in fault.sentence
    assert fault.remedy.endswith((".", "?"))


@pytest.mark.parametrize(
    ("path", "meant"),
    [
        ("opening.widht_top", "width_top"),
        ("mount.hight_rule", "height_rule"),
        ("desing", "design"),
        ("materials.lineing", "lining"),
    ],
)
def test_an_unknown_name_is_answered_with_the_nearest(path: str, meant: str) -> None:
    (fault,) = read_document(with_field(path, "x")).faults
    assert fault.where == f"shades.1.{path}"
    assert f"“{meant}”" in fault.remedy


def test_an_unknown_name_without_a_near_one_lists_them() -> None:
    (fault,) = read_document(with_field("mount.qqqq", "x")).faults
    assert "Known here: place, height_rule" in fault.remedy


@pytest.mark.parametrize(
    ("path", "typed", "meant"),
    [
        ("materials.face", "Harbor linen, flax", "Harbour linen, flax"),
        ("lift.spring", "wilow 21", "Willow 21"),
        ("materials.tube", "Tube 39", "Tube 38"),
    ],
)
def test_a_material_not_listed_is_answered_with_the_nearest(
    path: str, typed: str, meant: str
) -> None:
    (fault,) = read_document(with_field(path, typed)).faults
    assert "not among the shop's" in fault.what
    assert meant in fault.remedy


@pytest.mark.parametrize(
    ("first", "second", "where"),
    [
        (("mount.place", "inside"), ("mount.overlap_left", "2"), "mount.overlap_left"),
        (("mount.place", "inside"), ("mount.returns", True), "mount.returns"),
        (("mount.place", "outside"), ("mount.deduction", "1/4"), "mount.deduction"),
        (("design.style", "flat"), ("design.fullness", 1.8), "design.fullness"),
        (("materials.cord", "Cord 1.2"), ("materials.tape", "Tape 12"), "materials.tape"),
        (("opening.sill", False), ("mount.height_rule", "clear sill"), "mount.height_rule"),
    ],
)
def test_a_contradiction_is_told(
    first: tuple[str, Any], second: tuple[str, Any], where: str
) -> None:
    document = with_field(*first)
    other = with_field(*second)["shades"][0]
    table, key = second[0].split(".")
    document["shades"][0].setdefault(table, {})[key] = other[table][key]
    (fault,) = read_document(document).faults
    assert fault.where == f"shades.1.{where}"


def test_a_tag_used_twice_is_told_at_both() -> None:
    document = small()
    document["shades"] *= 2
    assert [fault.where for fault in read_document(document).faults] == [
        "shades.1.tag",
        "shades.2.tag",
    ]


def test_every_fault_is_told_at_once() -> None:
    document = with_field("opening.width_top", "35 3/15")
    document["shades"][0]["lift"]["kind"] = "crank"
    document["shades"][0]["materials"]["face"] = "Harbour linens, flax"
    document["shades"].append({"room": "Hall", "mount": {"place": "inside", "above": "3"}})
    document["habits"] = {"skrit": "1"}
    del document["job"]["system"]
    wheres = {fault.where for fault in read_document(document).faults}
    assert wheres == {
        "job.system",
        "habits.skrit",
        "shades.1.opening.width_top",
        "shades.1.lift.kind",
        "shades.1.materials.face",
        "shades.2.tag",
        "shades.2.mount.above",
    }


@pytest.mark.parametrize("document", [None, [], "job", 3, {"shades": 3}, {"job": []}])
def test_what_is_no_document_is_told(document: Any) -> None:
    reading = read_document(document)
    assert reading.job is None
    assert reading.faults


@pytest.mark.parametrize(
    ("style", "field", "value"),
    [
        ("draped", None, None),
        ("balloon", "width_fullness", 0.5),
        ("balloon", "width_fullness", 9),
        ("balloon", "pouf", "-2"),
        ("balloon", "dip", "3"),
        ("gathered", "fullness", "twice"),
        ("gathered", "tied_rows", 11),
        ("gathered", "tied_rows", -1),
        ("austrian", "scallop", "9 miles"),
        ("austrian", "fullness", 5),
        ("austrian", "pouf", "12"),
        ("london", "pleat_allowance", "-1"),
        ("looped", "alike_after", 0),
        ("looped", "alike_after", 5),
        ("cascade", "alike_after", 3),
        ("flat", "rod_pocket", "glued"),
        ("flat", "rods", "everywhere"),
        ("flat", "pocket_allowance", "0"),
        ("flat", "scallop", "4"),
        ("relaxed", "widened_hem", "perhaps"),
    ],
)
def test_what_a_style_cannot_take_is_refused_in_one_sentence(
    style: str, field: str | None, value: object
) -> None:
    document = with_field("design.style", style)
    if field is not None:
        document["shades"][0]["design"][field] = value
    (fault,) = read_document(document).faults
    assert fault.where.endswith(f"design.{field or 'style'}")
    assert fault.what
    assert "\n" not in fault.what
    assert fault.remedy.endswith((".", "?"))


@pytest.mark.parametrize("style", StyleName)
def test_every_style_is_read(style: StyleName) -> None:
    job = read_document(with_field("design.style", style.value)).job
    assert job is not None
    assert job.shades[0].design.style is style
