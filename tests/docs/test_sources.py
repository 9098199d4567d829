"""Each source is listed once and in full, each citation leads to one, and none is idle."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from tests.docs.reading import CORE, ROOT, cited_ids, ids_in_code, modules, sources

KEYS = {"title", "clause_or_page", "year", "status", "where"}
STATUSES = {"read", "secondary", "hearsay", "from memory"}
GROUNDS = ("geometry", "definition", "from memory")
PUBLISHED = ROOT / "tests" / "published"


@pytest.mark.parametrize("source", sources())
def test_each_source_is_told_in_full(source: str) -> None:
    entry = sources()[source]
    assert set(entry) == KEYS
    assert entry["status"] in STATUSES
    assert all(entry[key] for key in KEYS)


def test_no_title_is_listed_twice() -> None:
    titles = [entry["title"] for entry in sources().values()]
    assert len(set(titles)) == len(titles)


@pytest.mark.parametrize("path", modules(CORE.parent), ids=lambda path: path.stem)
def test_every_id_in_the_code_is_listed(path: Path) -> None:
    assert set(ids_in_code(path)) <= set(sources())


def test_every_listed_source_is_used() -> None:
    own = modules(Path(__file__).parent)
    users = [*modules(ROOT / "src"), *modules(ROOT / "tests"), *(ROOT / "docs").rglob("*.md")]
    used = {
        source
        for path in users
        if path not in own
        for source in cited_ids(path.read_text(encoding="utf-8"))
    }
    assert set(sources()) - used == set()


@pytest.mark.parametrize("path", modules(PUBLISHED), ids=lambda path: path.stem)
def test_every_check_against_a_published_value_names_its_source(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    if "common practice, no source" in (ast.get_docstring(ast.parse(text)) or ""):
        return
    for node in ast.parse(text).body:
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_"):
            first = min([node.lineno, *(each.lineno for each in node.decorator_list)])
            told = "\n".join(text.splitlines()[first - 1 : node.end_lineno])
            grounded = any(ground in told.lower() for ground in GROUNDS)
            assert cited_ids(told) or grounded, f"{path.name}: {node.name} names no source"
