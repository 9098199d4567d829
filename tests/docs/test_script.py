"""The twelve examples for people who script the tool run as they are printed."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest
from tests.docs.reading import ROOT

PAGES = sorted((ROOT / "docs" / "script").glob("[0-9]*.md"))


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_an_example_runs_as_it_is_printed(page: Path) -> None:
    text = page.read_text(encoding="utf-8")
    test = doctest.DocTestParser().get_doctest(text, {}, page.stem, page.name, 0)
    said: list[str] = []
    result = doctest.DocTestRunner(verbose=False).run(test, out=said.append)
    assert result.attempted > 3
    assert not result.failed, "".join(said)


def test_the_list_of_examples_leads_to_each_of_twelve_in_order() -> None:
    text = (PAGES[0].parent / "README.md").read_text(encoding="utf-8")
    assert re.findall(r"^\d+\. \[[^]]+\]\((.+?)\)", text, re.MULTILINE) == [
        page.name for page in PAGES
    ]
    assert len(PAGES) == 12
