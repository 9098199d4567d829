"""Shades that nobody would make, but that can be typed: planned or told why not."""

from __future__ import annotations

import typing
from enum import Enum
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Severity
from foldwright.core.why.telling import fill, show, tell
from foldwright.work.asking import figures_of
from foldwright.work.document import read_document
from foldwright.work.files import read_toml
from foldwright.work.jobfile import DEMO_JOB
from foldwright.work.kinds import alternatives, hints
from foldwright.work.limits import count_limits, length_limits, number_kind
from foldwright.work.planning import plan_one
from foldwright.work.shop import LIST_OF_FIELD, house_shop

DEMO = read_toml(DEMO_JOB)
TABLES = ("opening", "mount", "asked", "design", "materials", "lift")
FIELDS = [
    (table, field) for table in TABLES for field in hints(alternatives(hints(ShadeSpec)[table])[0])
]


def values(table: str, field: str) -> st.SearchStrategy[Any]:
    """Draw anything that a field can hold, or nothing."""
    record = alternatives(hints(ShadeSpec)[table])[0]
    (kind,) = alternatives(hints(record)[field])
    return st.none() | of_kind(kind, f"{table}.{field}", field, record)


def of_kind(kind: Any, path: str, field: str, record: type) -> st.SearchStrategy[Any]:
    if kind is Length:
        limits = length_limits(field, record.__name__)
        least, most = (round(end.in_millimetres) for end in (limits.least, limits.greatest))
        return st.integers(max(least, 1), most).map(lambda mm: f"{mm} mm")
    if kind is bool:
        return st.booleans()
    if kind is int:
        return st.integers(*count_limits(field))
    if kind is float:
        number = number_kind(field)
        return st.floats(number.least, min(number.greatest, 300))
    if isinstance(kind, type) and issubclass(kind, Enum):
        return st.sampled_from([word.value for word in kind])
    listed = getattr(house_shop(), LIST_OF_FIELD[path]) if path in LIST_OF_FIELD else ["A word"]
    return st.sampled_from(list(listed))


@st.composite
def daring(draw: st.DrawFn) -> dict[str, Any]:
    """Draw a shade of the demo job with a few fields typed anew."""
    shade = {key: draw_copy(value) for key, value in draw(st.sampled_from(DEMO["shades"])).items()}
    for table, field in draw(st.lists(st.sampled_from(FIELDS), max_size=6)):
        shade.setdefault(table, {})[field] = draw(values(table, field))
    return {"job": typing.cast("dict[str, Any]", DEMO["job"]), "shades": [shade]}


def draw_copy(value: Any) -> Any:
    return dict(value) if isinstance(value, dict) else value


@given(daring())
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
def test_a_shade_is_planned_or_told_why_not(document: dict[str, Any]) -> None:
    job = read_document(document).job
    if job is None:
        return
    plan = plan_one(job, job.shades[0])
    whole = plan.headrail is not None
    assert whole or any(each.severity is not Severity.NOTE for each in plan.findings)
    everything_can_be_told(plan)


def everything_can_be_told(plan: ShadePlan) -> None:
    every = {id(each): each for asked in figures_of(plan) for each in asked.figure.family()}
    for system in System:
        for figure in every.values():
            assert show(figure, system)
            assert tell(figure, system)
        for finding in plan.findings:
            assert fill(finding.sentence, finding.figures, system)
            for remedy in finding.remedies:
                assert fill(remedy.sentence, remedy.figures, system)
