"""`foldwright plan` in the terminal."""

from __future__ import annotations

from pathlib import Path

import pdfplumber
import pytest
from tests.cli.asking import ask, holds_to

JOB = Path(__file__).parents[1] / "work" / "cottage.toml"
BAD = """
[job]
name = "A"
system = "inch"
[[shades]]
tag = "A"
opening = { width_top = "35 3/15", widht_middle = 3 }
mount = { place = "inside", above = "2" }
"""


@pytest.fixture
def bad(tmp_path: Path) -> Path:
    file = tmp_path / "bad.toml"
    file.write_text(BAD, encoding="utf-8")
    return file


def test_without_a_file_it_plans_the_demo_job() -> None:
    said = ask("plan")
    assert said.code == 0
    assert said.err == ""
    assert "Guesthouse at the weir: 9 shades" in said.out
    assert "Stair (Back stair): finished 18 in wide, 74 3/16 in drop" in said.out
    assert "STOP before headrail parts are cut: “Wound wire 1.9” does not do" in said.out
    assert "1 to stop at" in said.out


def test_a_metric_job_is_told_in_metric() -> None:
    said = ask("plan", JOB)
    assert said.code == 0
    assert "Kitchen: finished 893 mm wide" in said.out
    assert " in wide" not in said.out


def test_json_holds_to_its_schema() -> None:
    said = ask("plan", JOB, "--json")
    assert said.code == 0
    (answer,) = said.answers
    holds_to(answer, "plan-answer.schema.json")
    width = answer["shades"][0]["size"]["width"]
    assert (width["value"], width["unit"]) == (893.0, "mm") or width["text"] == "893 mm"


def test_all_of_the_demo_job_holds_to_the_schema() -> None:
    (answer,) = ask("plan", "--json").answers
    holds_to(answer, "plan-answer.schema.json")


def test_every_fault_is_told_and_the_code_is_2(bad: Path) -> None:
    said = ask("plan", bad)
    assert (said.code, said.out) == (2, "")
    lines = said.err.splitlines()
    assert [line.split(": ")[0] for line in lines] == [
        "shades.1.opening.widht_middle",
        "shades.1.opening.width_top",
        "shades.1.mount.above",
    ]
    assert "Did you mean “width_middle”?" in lines[0]


def test_faults_come_as_json_too(bad: Path) -> None:
    said = ask("plan", bad, "--json")
    assert said.code == 2
    (answer,) = said.answers
    holds_to(answer, "faults.schema.json")
    assert len(answer["faults"]) == 3
    assert said.err.count("\n") == 3


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (None, "no such file"),
        ("[job\n", "not written as TOML"),
        ("", "job.name: it is missing"),
        ('[job]\nname = "A"\nsystem = "inch"\n', "the job holds no shade"),
        ("x = " + "[" * 3000, "nested too deep"),
    ],
)
def test_what_is_no_job_file_is_told(tmp_path: Path, text: str | None, told: str) -> None:
    file = tmp_path / "job.toml"
    if text is not None:
        file.write_text(text, encoding="utf-8")
    said = ask("plan", file)
    assert (said.code, said.out) == (2, "")
    assert told in said.err
    assert "Traceback" not in said.err


def test_a_folder_or_a_picture_is_no_job_file(tmp_path: Path) -> None:
    picture = tmp_path / "job.toml"
    picture.write_bytes(b"\x89PNG\xff\xfe\x00")
    for path in (tmp_path, picture):
        said = ask("plan", path)
        assert said.code == 2
        assert said.err.startswith(str(path))
        assert "Traceback" not in said.err


def test_a_shop_folder_goes_before_the_list_that_comes_along(tmp_path: Path) -> None:
    said = ask("plan", JOB, "--shop", tmp_path)
    assert said.code == 2
    assert "there is no shop list here" in said.err


def test_help_and_version_answer() -> None:
    assert ask("--help").code == 0
    assert ask("--version").out.startswith("foldwright ")
    assert ask().code == 2
    assert ask("paln").code == 2


def test_papers_are_written_for_every_shade(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "papers"
    said = ask("plan", JOB, "--out", folder, "--paper", "letter", "--json")
    assert said.code == 0
    (answer,) = said.answers
    assert sorted(Path(name).name for name in answer["papers"]) == sorted(
        file.name for file in folder.iterdir()
    )
    names = [Path(name).name for name in answer["papers"]]
    assert len(names) == 9
    assert sum(name.startswith("cloth-") for name in names) == 3
    for name in answer["papers"]:
        with pdfplumber.open(name) as pdf:
            (page,) = pdf.pages
            assert (float(page.width), float(page.height)) == pytest.approx((612, 792), abs=0.1)
            assert "cottage.toml" in page.extract_text()


def test_papers_that_cannot_be_written_are_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    said = ask("plan", JOB, "--out", tmp_path / "file" / "papers")
    assert said.code == 2
    assert said.err.count("\n") == 1
    assert "the papers could not be written" in said.err
