"""Read the tool's own modules and its list of sources, for the tests beside this file."""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
CORE = ROOT / "src" / "foldwright" / "core"
PACKAGE = "foldwright.core."
HYPHENATED = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)+")
SOURCES = ROOT / "docs" / "sources.toml"


@dataclass(frozen=True)
class Function:
    """One public function of the core, with its docstring in paragraphs."""

    where: str
    node: ast.FunctionDef
    paragraphs: tuple[str, ...]

    def paragraph(self, word: str) -> str | None:
        starts = (text for text in self.paragraphs if text.startswith(f"{word}: "))
        return next(starts, None)


@cache
def sources() -> dict[str, dict[str, Any]]:
    return tomllib.loads(SOURCES.read_text(encoding="utf-8"))


def modules(folder: Path) -> list[Path]:
    return sorted(path for path in folder.rglob("*.py") if "__pycache__" not in path.parts)


def public_functions(folder: Path = CORE) -> Iterator[Function]:
    for path in modules(folder):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                yield function(f"{path.relative_to(folder)}:{node.name}", node)


@cache
def used_outside_their_rooms() -> set[str]:
    """Give the core's functions that another room of the core, or another layer, imports."""
    used = set()
    for path in modules(CORE.parent):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and (node.module or "").startswith(PACKAGE):
                room, *rest = str(node.module).removeprefix(PACKAGE).split(".")
                if CORE / room not in path.parents:
                    used |= {f"{'/'.join([room, *rest])}.py:{name.name}" for name in node.names}
    return used


def function(where: str, node: ast.FunctionDef) -> Function:
    text = ast.get_docstring(node) or ""
    paragraphs = tuple(" ".join(part.split()) for part in re.split(r"\n\s*\n", text))
    return Function(where, node, paragraphs)


def cited_ids(text: str) -> set[str]:
    """Give the ids of all listed sources that a text names."""
    return set(HYPHENATED.findall(text)) & set(sources())


def words_like_ids(text: str) -> set[str]:
    """Give the hyphenated words that end as the ids of sources do: in a number, a page, a book."""
    endings = {source.rsplit("-", 1)[1] for source in sources()}
    words = HYPHENATED.findall(text)
    return {word for word in words if (end := word.rsplit("-", 1)[1]) in endings or end.isdigit()}


def ids_in_code(path: Path) -> Iterator[str]:
    """Give each id that stands in a `Source(id="…")` of a module."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and _name(node.func) == "Source":
            for word in node.keywords:
                if word.arg == "id" and isinstance(word.value, ast.Constant):
                    yield str(word.value.value)


def _name(node: ast.expr) -> str:
    return node.id if isinstance(node, ast.Name) else ""
