"""The same job gives the same answer to the byte, in whatever order a process keeps its sets."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from tests.cli.asking import Said, ask

JOBS = Path(__file__).parents[1] / "work"
DEMO: tuple[Path, ...] = ()


def twice(monkeypatch: pytest.MonkeyPatch, *words: str | Path) -> tuple[Said, Said]:
    """Ask in two processes that spread what they hash in two ways."""
    said = []
    for seed in ("1", "271828"):
        monkeypatch.setenv("PYTHONHASHSEED", seed)
        said.append(ask(*words))
    return said[0], said[1]


def all_proven(parts: list[dict[str, Any]]) -> bool:
    return bool(parts) and all(part["proven"] for part in parts)


@pytest.mark.parametrize(
    "job",
    [DEMO, (JOBS / "rolls.toml",), (JOBS / "cottage.toml",)],
    ids=["demo", "rolls in hand", "to buy"],
)
def test_proven_plans_of_cloth_are_the_same_again(
    monkeypatch: pytest.MonkeyPatch, job: tuple[Path, ...]
) -> None:
    once, again = twice(monkeypatch, "cut", *job, "--json", "--seconds", "60")
    (answer,) = once.answers
    assert all_proven([cloth["plan"] for cloth in answer["cloths"]])
    assert once.out == again.out


@pytest.mark.parametrize("job", [DEMO, (JOBS / "cottage.toml",)], ids=["demo", "to buy"])
def test_proven_plans_of_bars_are_the_same_again(
    monkeypatch: pytest.MonkeyPatch, job: tuple[Path, ...]
) -> None:
    once, again = twice(monkeypatch, "stock", *job, "--json")
    (answer,) = once.answers
    assert all_proven(answer["materials"])
    assert once.out == again.out
