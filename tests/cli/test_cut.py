"""`foldwright cut` in the terminal."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from tests.cli.asking import ask, holds_to

ROLLS = Path(__file__).parents[1] / "work" / "rolls.toml"


@pytest.fixture(scope="module")
def cut() -> dict[str, Any]:
    said = ask("cut", ROLLS, "--json", "--seconds", "2")
    assert said.code == 0, said.err
    (answer,) = said.answers
    return answer  # type: ignore[no-any-return]


def test_json_holds_to_its_schema(cut: dict[str, Any]) -> None:
    holds_to(cut, "cut-answer.schema.json")


def test_every_piece_lies_once_on_its_roll_in_whole_millimetres(cut: dict[str, Any]) -> None:
    for cloth in cut["cloths"]:
        sizes = {piece["piece"]: piece for piece in cloth["pieces"]}
        placements = cloth["plan"]["placements"]
        assert {place["piece"] for place in placements} == set(sizes)
        widths = {roll["roll"]: roll["usable_width_mm"] for roll in cloth["plan"]["rolls"]}
        for place in placements:
            assert all(isinstance(place[name], int) for name in place if name.endswith("_mm"))
            size = sizes[place["piece"]]
            assert (place["width_mm"], place["length_mm"]) == (size["width_mm"], size["length_mm"])
            assert 0 <= place["across_mm"] <= widths[place["roll"]] - place["width_mm"]


def test_pieces_do_not_overlap_even_in_whole_millimetres(cut: dict[str, Any]) -> None:
    for cloth in cut["cloths"]:
        for length in cloth["plan"]["cuts"]:
            found = [p for p in cloth["plan"]["placements"] if p["piece"] in length["pieces"]]
            beside = sorted(found, key=lambda place: place["across_mm"])
            for left, right in pairwise(beside):
                assert left["across_mm"] + left["width_mm"] <= right["across_mm"]


def test_the_motif_of_each_face_stands_at_one_height(cut: dict[str, Any]) -> None:
    placements = {p["piece"]: p for p in cut["cloths"][0]["plan"]["placements"]}
    p1, p2 = placements["P1 face"], placements["P2 face middle"]
    apart = (p1["along_mm"] - p2["along_mm"]) % 495.3
    assert min(apart, 495.3 - apart) <= 1.0


def test_a_table_names_cuts_marks_and_proof() -> None:
    said = ask("cut", ROLLS, "--seconds", "2")
    assert said.code == 0, said.err
    assert "Meadow print, indigo: 5 pieces" in said.out
    assert "by the trade's rule, before any roll is known" in said.out
    assert "Roll R1" in said.out
    assert "into the repeat" in said.out
    assert "Proven least" in said.out


def test_what_if_says_what_moves() -> None:
    said = ask("cut", ROLLS, "--seconds", "2", "--if-repeat-longer", "2 mm", "--json")
    assert said.code == 0, said.err
    (answer,) = said.answers
    holds_to(answer, "cut-answer.schema.json")
    printed, plain = answer["cloths"]
    assert printed["what_if"]["change"]["moved"]
    assert plain["what_if"] is None
    flaw = ask("cut", ROLLS, "--seconds", "2", "--if-flaw", "R1", "1 m", "0", "50", "1368")
    assert "What if" in flaw.out


def test_a_piece_wider_than_any_roll_is_one_sentence_with_what_would_work() -> None:
    said = ask("cut", ROLLS, "--seconds", "1", "--if-piece", "P1 face", "3000", "1500")
    assert said.code == 2
    assert "STOP" in said.out
    assert "1364 mm" in said.out or "1368 mm" in said.out


def test_wrong_input_gives_one_sentence_and_code_2(tmp_path: Path) -> None:
    missing = ask("cut", tmp_path / "none.toml")
    assert (missing.code, missing.err.count("\n")) == (2, 1)
    soon = ask("cut", ROLLS, "--seconds", "soon")
    assert (soon.code, "Give seconds from 0 to 3600" in soon.err) == (2, True)
    fifteenth = ask("cut", ROLLS, "--if-repeat-longer", "2 3/15")
    assert (fifteenth.code, fifteenth.err.count("\n")) == (2, 1)
    roll = ask("cut", ROLLS, "--if-flaw", "R9", "1", "1", "1", "1", "--json")
    assert roll.code == 2
    holds_to(roll.answers[0], "faults.schema.json")
    bare = tmp_path / "bare.toml"
    bare.write_text('[job]\nname = "A"\nsystem = "metric"\n', encoding="utf-8")
    assert "no shade is known well enough" in ask("cut", bare).err


def test_all_that_is_wrong_in_a_question_is_said_at_once_and_nothing_is_planned() -> None:
    said = ask(
        "cut", ROLLS, "--json", "--if-repeat-longer", "", "--if-flaw", "R1", "1 m", "-5", "x", "9"
    )
    assert said.code == 2
    (answer,) = said.answers
    holds_to(answer, "faults.schema.json")
    assert [fault["where"] for fault in answer["faults"]] == [
        "--if-repeat-longer",
        "--if-flaw",
        "--if-flaw",
    ]
    small = ask("cut", ROLLS, "--if-piece", "P1 face", "0", "0", "--if-repeat-longer", "-2 m")
    assert (small.code, small.out, small.err.count("\n")) == (2, "", 3)


def many_shades() -> str:
    """Ask for sixty windows of one print in ten rooms: more than can be proven in a minute."""
    shades = [
        f"""
[[shades]]
tag = "W{number}"
room = "Room {number % 10}"
asked = {{ width = {500 + 37 * number % 800}, drop = {900 + 53 * number % 1100} }}
materials = {{ face = "Meadow print, indigo" }}
"""
        for number in range(60)
    ]
    return '[job]\nname = "Sixty"\nsystem = "metric"\n' + "".join(shades)


@pytest.mark.skipif(os.name == "nt", reason="sends a signal")
def test_ctrl_c_gives_the_best_plan_so_far_marked(tmp_path: Path) -> None:
    job = tmp_path / "sixty.toml"
    job.write_text(many_shades(), encoding="utf-8")
    command = [sys.executable, "-m", "foldwright.cli.main", "cut", str(job), "--seconds", "300"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as running:  # noqa: S603 - our own program
        time.sleep(10.0)
        running.send_signal(signal.SIGINT)
        out, _ = running.communicate(timeout=60)
    assert running.returncode == 0
    assert "The search was ended early" in out.decode()
