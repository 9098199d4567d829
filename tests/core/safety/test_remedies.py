"""Every remedy on children, typed into a whole job, silences its finding and stops nothing else."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace
from typing import Any

import pytest

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import Choices
from foldwright.core.safety.example import ORDER
from foldwright.core.safety.reworking import rework
from foldwright.core.why.finding import Change, Severity
from foldwright.work.changing import change_shade
from foldwright.work.document import Document, read_document
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.planning import plan_one

DEMO = load_job(DEMO_JOB).document
ROWS = {  # as many as the ring spacing alone asks for: too few for the cord up to the tube
    "Bay": "10",
    "Stair": "9",
    "Garden": "6",
    "Nursery": "5",
    "Dining": "7",
    "Parlour": "10",
    "Kitchen": "5",
    "Snug": "6",
}
EVERY = ["Canada", "United States", "Europe and United Kingdom", "Australia"]
CASES: list[tuple[str, list[str], dict[str, Any]]] = [
    ("Bay", ["Canada"], {}),
    ("Stair", ["Canada"], {}),
    ("Garden", EVERY, {"cord_guard": "none"}),
    ("Nursery", ["Europe and United Kingdom"], {}),
    ("Dining", ["Australia"], {"children": "yes"}),
    ("Parlour", ["United States"], {"cord_guard": "breakaway"}),
    ("Kitchen", ["Canada"], {"children": "yes"}),
    ("Kitchen", ["Europe and United Kingdom"], {"children": "yes", "chain_device": "none"}),
    (
        "Kitchen",
        ["Europe and United Kingdom"],
        {"chain_device": "fixed tensioner", "chain_loop_length": "1200 mm"},
    ),
    ("Kitchen", ["Australia"], {"chain_device": "breakaway"}),
    ("Snug", EVERY, {}),
    ("Snug", ["Australia"], {"chain_device": "breakaway", "chain_loop_length": "1000 mm"}),
]


def document(tag: str, markets: list[str], safety: dict[str, Any]) -> Document:
    made = deepcopy(DEMO)
    made["job"]["markets"] = markets
    made["shades"] = [shade for shade in made["shades"] if shade["tag"] == tag]
    made["shades"][0]["safety"] = safety
    made["shades"][0].setdefault("design", {})["row_count"] = ROWS[tag]
    return made


def plan(of: Document) -> ShadePlan:
    job = read_document(of).job
    assert job is not None, read_document(of).faults
    return plan_one(job, job.shades[0])


def stops(of: ShadePlan) -> set[str]:
    return {each.id for each in of.findings if each.severity is Severity.STOP}


@pytest.mark.parametrize(("tag", "markets", "safety"), CASES)
def test_every_remedy_that_can_be_applied_works(
    tag: str, markets: list[str], safety: dict[str, Any]
) -> None:
    typed = document(tag, markets, safety)
    before = plan(typed)
    found = [each for each in before.findings if each.id.startswith("safety.")]
    applied = 0
    for finding in found:
        for remedy in (each for each in finding.remedies if each.changes):
            after = plan(change_shade(typed, 0, remedy.changes))
            assert finding.id not in {each.id for each in after.findings}, remedy
            assert stops(after) <= stops(before), remedy
            applied += 1
    assert applied


def test_a_chain_near_children_is_offered_a_spring_and_a_motor() -> None:
    before = plan(document("Kitchen", ["United States"], {"children": "yes"}))
    (found,) = [each for each in before.findings if each.id == "safety.chain-near-children"]
    kinds = [c.text for each in found.remedies for c in each.changes if c.path == "lift.kind"]
    assert kinds == ["spring", "motor"]


def test_the_remedies_alone_mend_a_shade_that_a_child_must_not_meet() -> None:
    typed = document("Kitchen", EVERY, {"children": "yes", "chain_device": "none"})
    for _ in range(8):
        pressing = [each for each in plan(typed).findings if each.id.startswith("safety.")]
        ways = [each for finding in pressing for each in finding.remedies if each.changes]
        if not ways:
            break
        typed = change_shade(typed, 0, ways[0].changes)
    assert {each.id for each in pressing} == {"safety.label", "safety.test"}
    assert stops(plan(typed)) == set()


def test_cord_too_long_at_the_head_is_mended_by_the_fewest_rows_more() -> None:
    typed = document("Stair", ["Canada"], {})
    typed["shades"][0].setdefault("design", {})["row_count"] = 9
    (found,) = [each for each in plan(typed).findings if each.id == "safety.cord-too-long"]
    changes = [each.changes for each in found.remedies if "Use" in each.sentence]
    assert [change.path for change in changes[0]] == ["design.row_count"]
    rows = int(changes[0][0].text)
    assert remains(typed, rows - 1)
    assert not remains(typed, rows)


def remains(typed: Document, rows: int) -> bool:
    change = Change(path="design.row_count", text=str(rows))
    after = plan(change_shade(typed, 0, [change])).findings
    return "safety.cord-too-long" in {each.id for each in after}


def test_a_changed_shade_is_taken_through_the_earlier_rooms() -> None:
    one_row = replace(ORDER, design=Choices(row_count=1))
    reworked = rework(one_row)
    assert reworked.result is not None
    assert reworked.result.layout.rows.count.value == 1
    assert "design.rows-too-far-apart" in {each.id for each in reworked.findings}
    assert all(each.severity is Severity.STOP for each in reworked.findings)
    known = replace(one_row, stops=frozenset({"design.rows-too-far-apart"}))
    assert "design.rows-too-far-apart" not in {each.id for each in rework(known).findings}
