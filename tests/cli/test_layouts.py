"""`foldwright layouts` in the terminal."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.cli.asking import ask, holds_to

from foldwright.work.jobfile import DEMO_JOB

COTTAGE = Path(__file__).parents[1] / "work" / "cottage.toml"


def test_one_shade_is_offered_the_best_and_two_others() -> None:
    said = ask("layouts", DEMO_JOB, "garden")
    assert said.code == 0
    first, *rest = said.out.splitlines()
    assert first == "Garden:"
    assert rest[0].startswith("  Best: 6 rows at ")
    assert rest[1] == "    - design.column_count = 4, design.edge_distance = 2 1/4 in"
    assert [line.partition(":")[0] for line in rest if line[2] != " "] == [
        "  Best",
        "  By the house's habits (as it stands)",
        "  Shorter stack",
    ]


def test_without_a_shade_all_are_searched() -> None:
    said = ask("layouts", DEMO_JOB)
    assert said.out.count("  Best") == 9


def test_json_holds_to_its_schema() -> None:
    said = ask("layouts", COTTAGE, "--json")
    assert said.code == 0
    (answer,) = said.answers
    holds_to(answer, "layouts-answer.schema.json")
    best = answer["shades"][0]["layouts"]["best"]
    assert best["title"] == "Best"
    assert best["layout"]["rows"]["count"]["value"] > 0


def test_a_shade_that_cannot_be_drawn_yet_says_so(tmp_path: Path) -> None:
    job = tmp_path / "job.toml"
    job.write_text('[job]\nname = "A"\nsystem = "inch"\n[[shades]]\ntag = "One"\n')
    said = ask("layouts", job)
    assert said.out == "One: no layout can be drawn yet; the plan of the job says why.\n"
    assert ask("layouts", job, "--json").answers[0]["shades"][0]["layouts"] is None


def test_a_typed_value_in_the_way_is_told_to_be_cleared(tmp_path: Path) -> None:
    job = tmp_path / "job.toml"
    job.write_text(
        '[job]\nname = "A"\nsystem = "inch"\nmarkets = ["United States"]\n[[shades]]\n'
        'tag = "One"\n[shades.asked]\nwidth = "40"\ndrop = "60"\ngiven_by = "client"\n'
        '[shades.design]\nedge_distance = "1"\n'
    )
    said = ask("layouts", job)
    assert "With the edge distance of 1 in that is typed, no layout is without a stop." in said.out
    assert "    - clear design.edge_distance\n" in said.out


@pytest.mark.parametrize(("words", "meant"), [(("Gardn",), "“Garden”")])
def test_a_slip_is_answered_with_the_nearest(words: tuple[str, ...], meant: str) -> None:
    said = ask("layouts", DEMO_JOB, *words)
    assert (said.code, said.out) == (2, "")
    assert meant in said.err
