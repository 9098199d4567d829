"""The page on child safety is that of the rules, and its links lead somewhere."""

from __future__ import annotations

import re

from docs.child_safety import PAGE, page

from foldwright.core.safety.rules import RULES, RuleVerdict

REFRESH = "python -m docs.child_safety"


def test_the_page_is_that_of_the_rules() -> None:
    assert PAGE.read_text(encoding="utf-8") == page(), f"write it anew: {REFRESH}"


def test_it_lists_every_rule_and_every_verdict_once() -> None:
    written = page()
    listed = re.findall(r"\| `([a-z0-9.-]+)` \|$", written, re.MULTILINE)
    assert listed == [rule.id for rule in RULES]
    assert all(f"| {verdict.value} |" in written for verdict in RuleVerdict)


def test_its_links_lead_somewhere() -> None:
    links = re.findall(r"\]\(([^)]+)\)", page())
    assert links
    assert [link for link in links if not (PAGE.parent / link).exists()] == []
