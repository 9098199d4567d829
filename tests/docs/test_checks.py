"""The table of findings is that of the sources, whole."""

from __future__ import annotations

import ast
import re

from docs.checks import PAGE, page
from docs.findings import findings
from tests.docs.reading import CORE, ROOT, modules, sources

from foldwright.core.check.catalogue.every import EVERY
from foldwright.work.jobfile import load_job
from foldwright.work.planning import plan_job

DEMO = ROOT / "src" / "foldwright" / "demo" / "guesthouse.toml"
LISTED = set(
    re.findall(r"`([a-z]+\.[a-z0-9-]+)` \|$", PAGE.read_text(encoding="utf-8"), re.MULTILINE)
)


def test_the_table_is_current() -> None:
    assert PAGE.read_text(encoding="utf-8") == page(), "run: python -m docs.checks"


def test_every_finding_of_the_demo_job_is_in_it() -> None:
    job = load_job(DEMO).job
    assert job is not None
    given = {finding.id for shade in plan_job(job).shades for finding in shade.findings}
    assert given
    assert given - LISTED == set()


def test_every_id_that_stands_whole_in_the_sources_is_in_it() -> None:
    whole = set()
    for path in modules(CORE):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Finding":
                ids = [word.value for word in node.keywords if word.arg == "id"]
                whole |= {str(one.value) for one in ids if isinstance(one, ast.Constant)}
    assert len(whole) > 30
    assert whole - LISTED == set()


def test_every_room_that_finds_something_has_its_own_names() -> None:
    rooms = {name.partition(".")[0] for name in LISTED}
    assert rooms <= {path.name for path in CORE.iterdir()}
    assert {"measure", "design", "weigh", "lift", "rig"} <= rooms


def test_every_source_in_it_is_listed() -> None:
    cited = {said.source.id for said in findings() if said.source}
    cited |= {limit.source.id for said in findings() for limit in said.limits if limit.source}
    assert cited
    assert cited - set(sources()) == set()


def test_every_check_is_in_it_once_with_what_it_rests_on_and_what_comes_of_it() -> None:
    text = PAGE.read_text(encoding="utf-8")
    rows = re.findall(r"^\|.*\| \*\*([a-z-]+)\*\*: .*\|$", text, re.MULTILINE)
    assert rows == [check.id for check in EVERY]
    for line in (line for line in text.splitlines() if "| **" in line):
        *_, rests_on, outcome = line.strip("| ").split(" | ")
        assert rests_on
        assert "`" in outcome or outcome.endswith(".")
