"""`foldwright why` in the terminal."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.cli.asking import ask, holds_to

JOB = Path(__file__).parents[1] / "work" / "cottage.toml"


def test_a_figure_is_explained_down_to_what_was_measured() -> None:
    said = ask("why", JOB, "Kitchen", "finished width")
    assert said.code == 0
    first, *rest = said.out.splitlines()
    assert first.startswith("finished width: 893 mm.")
    assert any("[measured]" in line and line.startswith("  ") for line in rest)


def test_a_figure_is_found_by_its_place_and_the_tag_in_any_case() -> None:
    """It is told once, although the sewing and the bench steps quote it too."""
    by_place = ask("why", JOB, "kitchen", "size.width")
    assert by_place.out == ask("why", JOB, "Kitchen", "finished width").out


def test_without_a_figure_all_are_listed() -> None:
    said = ask("why", JOB, "Kitchen")
    assert "size.width: finished width, 893 mm" in said.out
    assert "headrail." in said.out


def test_json_holds_to_its_schema() -> None:
    for words in (("finished drop",), ()):
        said = ask("why", JOB, "Landing", *words, "--json")
        assert said.code == 0
        for answer in said.answers:
            holds_to(answer, "why-answer.schema.json")


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        (("Kitchn", "finished width"), "“Kitchen”"),
        (("Kitchen", "finishd width"), "finished width"),
        (("Kitchen", "qqq"), "Leave the name out"),
    ],
)
def test_a_slip_is_answered_with_the_nearest(words: tuple[str, str], meant: str) -> None:
    said = ask("why", JOB, *words)
    assert (said.code, said.out) == (2, "")
    assert meant in said.err
