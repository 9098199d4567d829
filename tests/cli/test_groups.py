"""`foldwright groups` in the terminal."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.cli.asking import ask, holds_to
from tests.core.grouped import BAY, room, typed, window

from foldwright.work.document import Document
from foldwright.work.jobfile import DEMO_JOB, save_job_file


def file_of(document: Document, folder: Path) -> Path:
    path = folder / "job.toml"
    save_job_file(document, path)
    return path


def test_a_group_is_matched_and_its_room_drawn(tmp_path: Path) -> None:
    said = ask("groups", file_of(room(*BAY), tmp_path), "--out", tmp_path / "rooms")
    assert said.code == 0
    first, *rest = said.out.splitlines()
    assert first == "Front: they match so, rows 7 5/8 in apart and level within 0 in"
    assert rest[0].startswith("  Left: 6 rows at 7 5/8 in over a skirt of 1 1/2 in.")
    assert rest[1].startswith("    - asked.drop = 57 3/4 in, asked.given_by = the group")
    assert rest[-1] == f"2 drawings are in {tmp_path / 'rooms'}."
    drawn = sorted(path.name for path in (tmp_path / "rooms").iterdir())
    assert drawn == ["group-1-as-they-hang.svg", "group-1-matched.svg"]


def test_a_group_that_matches_says_so(tmp_path: Path) -> None:
    said = ask("groups", file_of(typed(room(*BAY)), tmp_path))
    assert "they match as they hang" in said.out
    assert "    - " not in said.out


def test_json_holds_to_its_schema(tmp_path: Path) -> None:
    said = ask("groups", file_of(room(*BAY), tmp_path), "--json")
    (answer,) = said.answers
    holds_to(answer, "groups-answer.schema.json")
    assert answer["groups"][0]["shades"][0]["way"]["changes"][0]["path"] == "asked.drop"


def test_what_is_missing_is_told(tmp_path: Path) -> None:
    document = room(window("Left", "36", "60", "84"), {"tag": "Right"})
    said = ask("groups", file_of(document, tmp_path))
    assert said.out.splitlines() == [
        "Front: cannot be matched yet",
        "  “Right” cannot be laid out yet: its own page says why.",
    ]


def test_a_job_without_groups_says_what_to_add() -> None:
    said = ask("groups", DEMO_JOB)
    assert said.code == 2
    assert "Add a table [[groups]]" in said.err


@pytest.mark.parametrize(
    ("group", "meant"),
    [
        ({"shades": ["Left", "Midle"]}, "“Middle”"),
        ({"shades": ["Left"]}, "a group holds two shades at least"),
        ({"rows_from": "top"}, "rows_from"),
    ],
)
def test_a_slip_in_a_group_is_told(tmp_path: Path, group: dict[str, object], meant: str) -> None:
    document = room(*BAY)
    document["groups"][0] |= group
    said = ask("groups", file_of(document, tmp_path))
    assert (said.code, said.out) == (2, "")
    assert meant in said.err


def test_a_shade_belongs_to_one_group_and_groups_have_their_own_names(tmp_path: Path) -> None:
    document = room(*BAY)
    document["groups"].append({"name": "Front", "shades": ["Right", "Left"]})
    said = ask("groups", file_of(document, tmp_path))
    assert "“Front” is the name of 2 groups" in said.err
    assert "“Right” is in a group already" in said.err
