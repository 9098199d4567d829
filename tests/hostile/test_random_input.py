"""Whatever is typed: faults with a place and a remedy, or a job; never a stumble."""

from __future__ import annotations

import json
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.cli.cases import CASE
from tests.work.documents import anything, documents, small

from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.work.document import read_document
from foldwright.work.files import CannotUse, parse_toml
from foldwright.work.kinds import hints
from foldwright.work.lifting import answer_line
from foldwright.work.planning import plan_job
from foldwright.work.schemas import schemas
from foldwright.work.walk import Walk

SCHEMA = schemas()["job.schema.json"]
TABLES = SCHEMA["$defs"]
LINES = [
    "[job]",
    "[[shades]]",
    "[shades.opening]",
    'name = "A"',
    'system = "inch"',
    'tag = "A"',
    'width_top = "35 3/16"',
    "width_top = nan",
    "width_top = 1e999",
    "date = 2026-05-04T12:00:00Z",
    "= =",
    '"""',
]


def told_in_full(faults: tuple[Fault, ...]) -> bool:
    return all(fault.where and fault.what and fault.remedy for fault in faults)


def reads_or_tells(document: object) -> None:
    reading = read_document(document)
    assert (reading.job is None) == bool(reading.faults)
    assert told_in_full(reading.faults)
    for fault in reading.faults:
        fault.sentence.encode()  # it can be printed


@given(anything)
def test_any_value_as_a_document(document: Any) -> None:
    reads_or_tells(document)


@st.composite
def nearly(draw: st.DrawFn) -> dict[str, Any]:
    """Draw a document that reads but for a few fields with anything typed into them."""
    document = draw(documents())
    if not document["shades"]:
        document["shades"] = small()["shades"]
    shade = document["shades"][0]
    for _ in range(draw(st.integers(1, 4))):
        name = draw(st.sampled_from(["opening", "mount", "asked", "design", "materials", "lift"]))
        table = shade.setdefault(name, {})
        record = TABLES["ShadeSpec"]["properties"][name]["$ref"].rsplit("/", 1)[1]
        field = draw(st.sampled_from(list(TABLES[record]["properties"])))
        table[field] = draw(anything)
    return document


@given(nearly())
@settings(max_examples=300)
def test_anything_typed_into_any_field(document: dict[str, Any]) -> None:
    reads_or_tells(document)


@given(documents())
@settings(max_examples=60, deadline=None)
def test_whatever_can_be_read_can_be_planned(document: dict[str, Any]) -> None:
    job = read_document(document).job
    assert job is not None
    for plan in plan_job(job).shades:
        assert plan.headrail is not None or plan.findings


@given(st.text(max_size=200) | st.lists(st.sampled_from(LINES), max_size=8).map("\n".join))
@settings(max_examples=300)
def test_any_text_as_a_job_file(text: str) -> None:
    try:
        document = parse_toml(text, "job.toml")
    except CannotUse as trouble:
        document, faults = {}, trouble.faults
    else:
        faults = ()
    assert told_in_full(faults)
    reads_or_tells(document)


@given(st.dictionaries(st.sampled_from(list(hints(ShopList))), anything | st.lists(anything)))
def test_anything_as_a_shop_list(lists: dict[str, Any]) -> None:
    walk = Walk(system=System.METRIC)
    read = walk.record(ShopList, lists, "")
    assert (read is None) == bool(walk.faults)
    assert told_in_full(tuple(walk.faults))


plain_values = st.one_of(
    st.floats(allow_nan=False, allow_infinity=False),
    st.integers(-5, 5),
    st.lists(st.floats(-1, 3), max_size=4),
    st.sampled_from([None, "x", True, {}, 1e-300, 1e300]),
)


FIELDS = [
    *((name,) for name in CASE),
    *(("load", name) for name in CASE["load"]),
    *(("spring", name) for name in CASE["spring"]),
]


@st.composite
def nearly_a_case(draw: st.DrawFn) -> str:
    """Draw a lift with anything typed into a few fields."""
    case = json.loads(json.dumps(CASE))
    for path in draw(st.lists(st.sampled_from(FIELDS), min_size=1, max_size=3)):
        table = case.get(path[0]) if len(path) > 1 else case
        if isinstance(table, dict):
            table[path[-1]] = draw(plain_values)
    return json.dumps(case)


@given(st.text(max_size=100) | anything.map(json.dumps) | nearly_a_case())
@settings(max_examples=400, deadline=None)
def test_any_line_as_a_lift(line: str) -> None:
    answer = answer_line(line)
    assert (answer.answer is None) == bool(answer.faults)
    assert told_in_full(answer.faults)
