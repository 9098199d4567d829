"""`foldwright stock` in the terminal."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
import tomllib
from pathlib import Path
from typing import Any

import pytest
from tests.cli.asking import ask, holds_to

JOB = Path(__file__).parents[1] / "work" / "cottage.toml"
NO_LENGTHS = """
system = "metric"
[[bars]]
name = "Flat"
line_mass_kg_m = 0.5
width = "20 mm"
thickness = "3 mm"
stiffness_pa = 2e11
"""
ONE_BAR = """
[job]
name = "A"
system = "metric"
shop = "shop"
[[shades]]
tag = "Hall"
asked = { width = 900, drop = 1200 }
materials = { bar = "Flat" }
"""


@pytest.fixture
def one_bar(tmp_path: Path) -> Path:
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "all.toml").write_text(NO_LENGTHS, encoding="utf-8")
    job = tmp_path / "job.toml"
    job.write_text(ONE_BAR, encoding="utf-8")
    return job


@pytest.fixture(scope="module")
def demo() -> dict[str, Any]:
    said = ask("stock", "--json")
    assert said.code == 0, said.err
    (answer,) = said.answers
    return answer  # type: ignore[no-any-return]


def test_the_demo_job_is_cut_from_stock_and_rack() -> None:
    said = ask("stock", "--seconds", "2")
    assert said.code == 0, said.err
    assert "Tube 38: 6 pieces" in said.out
    assert "Rack A (from the rack)" in said.out
    assert "it is proven that no plan costs less" in said.out


def test_json_holds_to_its_schema(demo: dict[str, Any]) -> None:
    holds_to(demo, "stock-answer.schema.json")


def test_every_piece_is_cut_once_and_every_bar_adds_up(demo: dict[str, Any]) -> None:
    for material in demo["materials"]:
        needed = sorted((part["piece"], part["length_mm"]) for part in material["needed"])
        cuts = [cut for bar in material["bars"] for cut in bar["cuts"]]
        assert sorted((cut["piece"], cut["length_mm"]) for cut in cuts) == needed
        for bar in material["bars"]:
            last = max(cut["start_mm"] + cut["length_mm"] for cut in bar["cuts"])
            assert last + bar["remainder_mm"] <= bar["length_mm"]


def test_rests_go_back_to_the_rack_as_a_file_of_the_shop(tmp_path: Path) -> None:
    rack = tmp_path / "rack.toml"
    assert ask("stock", "--rack", rack).code == 0
    offcuts = tomllib.loads(rack.read_text(encoding="utf-8"))["offcuts"]
    assert {"Rack A", "Rack B"}.isdisjoint(piece["name"] for piece in offcuts)
    assert any(piece["material"] == "Tube 38" for piece in offcuts)
    assert min(int(piece["length"].split()[0]) for piece in offcuts) >= 300


def test_a_rest_of_a_spool_is_read_back_as_a_piece_on_the_rack(one_bar: Path) -> None:
    rest = '[[offcuts]]\nname = "o"\nmaterial = "Flat"\nlength = "84446 mm"\n'
    (one_bar.parent / "shop" / "all.toml").write_text(NO_LENGTHS + rest, encoding="utf-8")
    said = ask("stock", one_bar)
    assert said.code == 0, said.err
    assert "buy nothing: the rack has it" in said.out


def test_too_few_bars_are_told_with_how_many_more_it_takes(one_bar: Path) -> None:
    listed = '[[stock_lengths]]\nname = "s"\nmaterial = "Flat"\nlength = "1 m"\nquantity = 0\n'
    (one_bar.parent / "shop" / "all.toml").write_text(NO_LENGTHS + listed, encoding="utf-8")
    said = ask("stock", one_bar)
    assert said.code == 2
    assert "Flat: it does not hold the piece, however cut. With 1 more of “s”" in said.err


def sixty_boards() -> str:
    """Ask for sixty boards of as many lengths, sold in two: more than is proven in a minute."""
    shades = [
        f"""
[[shades]]
tag = "W{number}"
asked = {{ width = {500 + 37 * number % 803 + number}, drop = 1200 }}
materials = {{ board = "Pine 19 \u00d7 64" }}
"""
        for number in range(60)
    ]
    return '[job]\nname = "Sixty"\nsystem = "metric"\n' + "".join(shades)


@pytest.mark.skipif(os.name == "nt", reason="sends a signal")
def test_ctrl_c_gives_the_best_plan_so_far_marked(tmp_path: Path) -> None:
    job = tmp_path / "sixty.toml"
    job.write_text(sixty_boards(), encoding="utf-8")
    command = [sys.executable, "-m", "foldwright.cli.main", "stock", str(job), "--seconds", "300"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as running:  # noqa: S603 - our own program
        time.sleep(6.0)
        running.send_signal(signal.SIGINT)
        out, _ = running.communicate(timeout=60)
    assert running.returncode == 0
    assert "The search was ended early: a cheaper plan may exist." in out.decode()


def test_without_time_the_first_plan_is_marked(tmp_path: Path) -> None:
    job = tmp_path / "sixty.toml"
    job.write_text(sixty_boards(), encoding="utf-8")
    (answer,) = ask("stock", job, "--seconds", "0", "--json").answers
    (boards,) = answer["materials"]
    assert boards["cut_short"]
    assert not boards["proven"]
    assert "proven impossible" in boards["said"]


def test_a_material_without_lengths_is_told_and_keeps_no_other(one_bar: Path) -> None:
    said = ask("stock", one_bar)
    assert said.code == 2
    assert said.err.startswith("Flat: nothing to cut from. List the lengths of Flat")
    rack = one_bar.parent / "rack.toml"
    told = ask("stock", one_bar, "--rack", rack)
    assert (told.code, rack.exists()) == (2, False)
    assert "the rack is not written, since not every material can be cut" in told.err
    listed = NO_LENGTHS + '[[stock_lengths]]\nname = "s"\nmaterial = "Flat"\nlength = "800 mm"\n'
    (one_bar.parent / "shop" / "all.toml").write_text(listed, encoding="utf-8")
    said = ask("stock", one_bar)
    assert said.code == 2
    assert "Flat, Hall bar: 887 mm (34 15/16 in) is longer than any bar" in said.err
    assert "790 mm" in said.err


def test_a_bar_without_a_price_is_counted_in_metres(one_bar: Path) -> None:
    listed = NO_LENGTHS + '[[stock_lengths]]\nname = "s"\nmaterial = "Flat"\nlength = "3 m"\n'
    (one_bar.parent / "shop" / "all.toml").write_text(listed, encoding="utf-8")
    said = ask("stock", one_bar)
    assert said.code == 0
    assert "3.00 m in all" in said.out
    assert "Metres are counted" in said.out


def test_wrong_input_gives_one_sentence_and_code_2(tmp_path: Path) -> None:
    missing = ask("stock", tmp_path / "none.toml")
    assert missing.code == 2
    assert missing.err.count("\n") == 1
    assert ask("stock", "--seconds", "-1").code == 2
    assert "Give seconds from 0 to 3600" in ask("stock", "--seconds", "soon").err


def test_a_job_too_bare_to_cut_for_is_told(tmp_path: Path) -> None:
    job = tmp_path / "job.toml"
    job.write_text('[job]\nname = "A"\nsystem = "metric"\n', encoding="utf-8")
    said = ask("stock", job)
    assert said.code == 2
    assert "no shade is known well enough" in said.err


def test_a_metric_job_is_told_in_millimetres() -> None:
    said = ask("stock", JOB)
    assert " mm left" in said.out
    assert " in left" not in said.out
