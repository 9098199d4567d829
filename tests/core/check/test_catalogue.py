"""The catalogue of checks holds every finding of the rooms once, as the rooms give it."""

from __future__ import annotations

from collections import Counter

import pytest
from docs.findings import Said, findings

from foldwright.core.check.catalogue.check import Check
from foldwright.core.check.catalogue.every import EVERY, checks_by_finding
from foldwright.core.why.finding import Severity, Stage

SAID = tuple(findings())
STRENGTH = tuple(Severity)


def said_by(check: Check) -> list[Said]:
    return [said for said in SAID if said.id in check.findings]


def test_every_finding_of_the_rooms_is_in_the_catalogue_and_no_other() -> None:
    assert {said.id for said in SAID} == set(checks_by_finding())


def test_no_check_and_no_finding_is_listed_twice() -> None:
    names = Counter(check.id for check in EVERY)
    told = Counter(name for check in EVERY for name in check.findings)
    assert [name for name, count in (names + told).items() if count > 1 and "." in name] == []
    assert [name for name, count in names.items() if count > 1] == []


@pytest.mark.parametrize("check", [check for check in EVERY if check.findings], ids=lambda c: c.id)
def test_a_check_speaks_as_strongly_and_by_when_its_findings_do(check: Check) -> None:
    said = said_by(check)
    assert check.severity is min((each.severity for each in said), key=STRENGTH.index)
    assert check.stage in {each.stage for each in said}


@pytest.mark.parametrize("check", EVERY, ids=lambda check: check.id)
def test_a_check_without_a_finding_says_what_keeps_it(check: Check) -> None:
    assert check.findings or check.kept_by.endswith(".")
    assert check.looks_at
    assert check.looks_at[0].islower()


def test_the_checks_stand_in_the_order_of_the_work() -> None:
    stages = [list(Stage).index(check.stage) for check in EVERY]
    assert stages == sorted(stages)


def test_a_check_knows_its_rooms_and_its_sources() -> None:
    by_id = {check.id: check for check in EVERY}
    assert by_id["reveal-depth"].rooms == ("measure", "design")
    assert [source.id for source in by_id["bow-and-skew"].sources] == ["cloth-care-page"]
