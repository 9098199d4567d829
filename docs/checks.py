"""Write docs/guide/checks.md, the tables of every check and every finding, from the sources.

Run it from the root of the project after a check or a finding was added or changed:

    python -m docs.checks
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from itertools import groupby
from pathlib import Path
from typing import Any

from docs.findings import Said, findings

from foldwright.core.check.catalogue.check import Check
from foldwright.core.check.catalogue.every import EVERY
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.source import Source
from foldwright.core.why.telling import show_value

PAGE = Path(__file__).parent / "guide" / "checks.md"
STAGES, SEVERITIES = tuple(Stage), tuple(Severity)
SLOT = re.compile(r"\{\d+(:range)?\}")
COMPARED = 2  # figures: one found, one to hold it against

HEAD = """\
# Every check and every finding

First what is looked at in an order, by the time it must be settled, then all that the tool can say
of it, the strongest first. What depends on the shade stands as “…”. A limit that is the same for
every shade stands with its figure; “worked out” means that the shade, the shop's list or the market
decides: the finding itself shows the number. The last column names the finding as `--json` does.
What to do about them: [findings and remedies](08-findings.md). The sources:
[sources.toml](../sources.toml).

This page is written from the sources of the tool by `python -m docs.checks`.
"""
CHECKS_HEAD = """\
## What is checked

| | when | what is looked at | limit | rests on | what comes of it |
|---|---|---|---|---|---|
"""
RECKONED = "derived here"


def page() -> str:
    """Give the whole page."""
    every = sorted(findings(), key=_place)
    rests_on = {name: list(said) for name, said in groupby(sorted(every, key=_name), key=_name)}
    checks = "\n".join(_check(check, rests_on) for check in EVERY)
    return "\n".join([HEAD, CHECKS_HEAD + checks, "", *_sections(every)])


def _name(said: Said) -> str:
    return said.id


def _check(check: Check, said: Mapping[str, list[Said]]) -> str:
    """Give one check with all that its own limits and those of its findings rest on."""
    own = [one for name in check.findings for one in said.get(name, ())]
    limits = {limit.name: limit for limit in (*check.limits, *(x for o in own for x in o.limits))}
    sources = [*check.sources, *(one.source for one in own)]
    cells = (
        check.severity.value,
        check.stage.value,
        f"**{check.id}**: {check.looks_at}",
        "; ".join(map(_limit, limits.values())) or _worked_out(own),
        _grounds(limits.values(), sources) or RECKONED,
        ", ".join(f"`{name}`" for name in check.findings) or check.kept_by,
    )
    return f"| {' | '.join(cells)} |"


def _worked_out(said: Iterable[Said]) -> str:
    return next(filter(None, map(_unsaid, said)), "")


def _grounds(limits: Iterable[Figure[Any]], sources: Iterable[Source | None]) -> str:
    """Name every source, and what limits without a source are."""
    shown = tuple(limits)
    cited = [*sources, *(limit.source for limit in shown)]
    grounds = dict.fromkeys(_source(source) for source in cited if source)
    grounds |= dict.fromkeys(limit.status.value for limit in shown if not limit.source)
    return "; ".join(grounds)


def _place(said: Said) -> tuple[int, int, str]:
    return STAGES.index(said.stage), SEVERITIES.index(said.severity), said.id


def _sections(every: list[Said]) -> Iterator[str]:
    for stage, said in groupby(every, key=lambda one: one.stage):
        yield f"## {stage.value.capitalize()}\n"
        yield "| | what it says | limit | rests on | name |"
        yield "|---|---|---|---|---|"
        for _, alike in groupby(said, key=_place):
            yield _line(list(alike))
        yield ""


def _line(alike: list[Said]) -> str:
    """Give one finding, however many ways there are of saying it."""
    first = alike[0]
    sentences = dict.fromkeys(SLOT.sub("…", one.sentence) for one in alike)
    limits = {limit.name: limit for one in alike for limit in one.limits}
    cells = (
        first.severity.value,
        " *Or:* ".join(sentences),
        "; ".join(map(_limit, limits.values())) or _unsaid(first),
        _grounds(limits.values(), [one.source for one in alike]),
        f"`{first.id}`",
    )
    return f"| {' | '.join(cells)} |"


def _limit(limit: Figure[Any]) -> str:
    both = dict.fromkeys(show_value(limit, system) for system in System)
    return f"{limit.name}: {', '.join(both)}"


def _unsaid(said: Said) -> str:
    return "worked out" if len(SLOT.findall(said.sentence)) >= COMPARED else ""


def _source(source: Source) -> str:
    return ", ".join(filter(None, (source.id, source.clause)))


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
