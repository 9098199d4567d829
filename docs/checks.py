"""Write docs/guide/checks.md, the table of every finding, from the sources.

Run it from the root of the project after a finding was added or changed:

    python -m docs.checks
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import groupby
from pathlib import Path
from typing import Any

from docs.findings import Said, findings

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
# Every finding

All that the tool can say about a shade, by the time it must be settled, the strongest first. What
depends on the shade stands as “…”. A limit that is the same for every shade stands with its figure;
“worked out” means that the shade, the shop's list or the market decides: the finding itself shows
the number. The last column is the name by which `--json` gives the finding. What to do about them:
[findings and remedies](08-findings.md). The sources: [sources.toml](../sources.toml).

This page is written from the sources of the tool by `python -m docs.checks`.
"""


def page() -> str:
    """Give the whole page."""
    return "\n".join([HEAD, *_sections(sorted(findings(), key=_place))])


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
    sources = [one.source for one in alike] + [limit.source for limit in limits.values()]
    rests_on = dict.fromkeys(_source(source) for source in sources if source)
    rests_on |= dict.fromkeys(limit.status.value for limit in limits.values() if not limit.source)
    cells = (
        first.severity.value,
        " *Or:* ".join(sentences),
        "; ".join(map(_limit, limits.values())) or _unsaid(first),
        "; ".join(rests_on),
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
