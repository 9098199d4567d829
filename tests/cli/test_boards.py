"""`foldwright boards` in the terminal."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.cli.asking import ask, holds_to
from tests.core.boarded import board, shade

from foldwright.work.document import Document
from foldwright.work.jobfile import DEMO_JOB, save_job_file


def file_of(document: Document, folder: Path) -> Path:
    path = folder / "job.toml"
    save_job_file(document, path)
    return path


PAIR = (shade("Left"), shade("Right", "36"))


def test_a_board_is_told_mark_by_mark(tmp_path: Path) -> None:
    said = ask("boards", file_of(board(*PAIR), tmp_path))
    assert said.code == 0
    lines = said.out.splitlines()
    assert lines[0] == "Pair: board 66 1/4 in, a tube each"
    assert lines[2] == (
        "  Right, 36 in wide: cords at 1 7/8 in, 9 7/8 in, 17 7/8 in, 25 7/8 in, 33 7/8 in"
    )
    assert lines[3].startswith("    brackets at ")


def test_one_tube_tells_its_cut_and_its_turns(tmp_path: Path) -> None:
    said = ask("boards", file_of(board(*PAIR, lift="one tube"), tmp_path))
    assert "  The one tube: " in said.out
    assert "9 cords" in said.out
    assert "They rise and stop together" in said.out


def test_json_holds_to_its_schema(tmp_path: Path) -> None:
    for lift in ("a tube each", "one tube"):
        said = ask("boards", file_of(board(*PAIR, lift=lift), tmp_path), "--json")
        holds_to(said.answers[0], "boards-answer.schema.json")


def test_a_job_without_boards_says_what_to_add() -> None:
    said = ask("boards", DEMO_JOB)
    assert said.code == 2
    assert "Add a table [[boards]]" in said.err


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ({"shades": ["Left", "Rigt"]}, "“Right”"),
        ({"shades": ["Left"]}, "a board holds two shades at least"),
        ({"gap": "35 3/15"}, "gap"),
        ({"lift": "ropes"}, "lift"),
    ],
)
def test_a_slip_in_a_board_is_told(tmp_path: Path, typed: dict[str, object], meant: str) -> None:
    document = board(*PAIR)
    document["boards"][0] |= typed
    said = ask("boards", file_of(document, tmp_path))
    assert (said.code, said.out) == (2, "")
    assert meant in said.err
