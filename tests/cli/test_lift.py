"""`foldwright lift` in the terminal: one lift or many, in plain SI."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from tests.cli.asking import SCHEMAS, ask, holds_to
from tests.cli.cases import CASE, PANEL, line

from foldwright.cli import lift
from foldwright.core.lift.span import Span
from foldwright.work.lifting import answer_line


def test_one_lift_is_answered_in_words() -> None:
    said = ask("lift", given=line())
    assert said.code == 0
    assert said.out.startswith("worked example: ")
    assert "3.73 N lowered, 14.5 N raised" in said.out
    assert "11.4 turns of travel" in said.out


def test_turns_below_nothing_are_told_with_a_minus_sign() -> None:
    minus = "\N{MINUS SIGN}"
    told = lift._turns(Span(likely=-1.5, low=-2.5, high=0.5))
    assert told == f"{minus}1.5 turns (90 % between {minus}2.5 and 0.5)"


def test_one_lift_written_over_many_lines_is_one(tmp_path: Path) -> None:
    file = tmp_path / "case.json"
    file.write_text(json.dumps(CASE, indent=2))
    said = ask("lift", file, "--json")
    assert said.code == 0
    assert len(said.answers) == 1


def test_the_answer_holds_to_its_schema() -> None:
    said = ask("lift", "-", "--json", given=f"{line()}\n{line(spring=None)}\n{{}}\n")
    for answer in said.answers:
        holds_to(answer, "lift-answer.schema.json")


def test_a_bad_line_does_not_keep_the_others_from_being_answered() -> None:
    said = ask("lift", "--json", given=f"{line(name='a')}\nnonsense\n\n{line(name='b')}\n")
    assert said.code == 2
    assert [each["line"] for each in said.answers] == [1, 2, 4]
    assert [bool(each["answer"]) for each in said.answers] == [True, False, True]
    second = said.answers[1]
    assert second["faults"][0]["where"] == "the line"
    assert "line 2: the line: this is not JSON" in said.err


def test_many_lines_are_answered_in_order_by_two_processes() -> None:
    names = [str(number) for number in range(45)]
    given = "\n".join(line(name=name) for name in [*names[:40], "x", *names[40:]])
    given = given.replace(line(name="x"), "{}")
    said = ask("lift", "--json", given=given)
    answers = said.answers
    assert [each["line"] for each in answers] == list(range(1, 47))
    assert [each["name"] for each in answers if each["answer"]] == names
    assert [each["line"] for each in answers if each["faults"]] == [41]
    assert len({json.dumps(each["answer"]) for each in answers if each["answer"]}) == 1


@pytest.mark.parametrize(
    ("changes", "where"),
    [
        ({"tube_outside_m": "0.038"}, "tube_outside_m"),
        ({"tube_outside_m": -1}, "tube_outside_m"),
        ({"tube_outside_m": 0}, "tube_outside_m"),
        ({"tube_outside_m": True}, "tube_outside_m"),
        ({"tube_outside": 0.038}, "tube_outside"),
        ({"brake": "maybe"}, "brake"),
        ({"load": PANEL | {"rows_n": []}}, "load.rows_n"),
        ({"load": PANEL | {"rows_n": [0.4]}}, "load.row_spacings_m"),
        ({"load": PANEL | {"travel_m": 40.0}}, "load.travel_m"),
        ({"load": PANEL | {"cloth_n_m": "5"}}, "load.cloth_n_m"),
        ({"cord_diameter_m": {"likely": 0.001}}, "cord_diameter_m.low"),
        ({"tape_thickness_m": 0.0004}, "cord_diameter_m"),
        ({"spring": {"pairs": [[0.03]]}}, "spring.pairs.1"),
        ({"spring": {}}, "spring.rate_n_m_turn"),
        ({"load_friction": 3}, "load_friction"),
    ],
)
def test_a_slip_is_told_with_its_place(changes: dict[str, object], where: str) -> None:
    answer = answer_line(line(**changes), 7)
    assert (answer.line, answer.answer) == (7, None)
    assert where in {fault.where for fault in answer.faults}


@pytest.mark.parametrize("odd", ["NaN", "Infinity", "-Infinity", "1e400"])
def test_what_is_no_number_is_refused(odd: str) -> None:
    assert answer_line(line().replace("0.038", odd)).faults


def test_a_name_given_twice_is_refused() -> None:
    answer = answer_line('{"tube_outside_m": 1, "tube_outside_m": 2}')
    assert "given twice: tube_outside_m" in answer.faults[0].what


def test_nothing_piped_in_is_told() -> None:
    said = ask("lift", given=" \n")
    assert said.code == 2
    assert "there is no lift to answer" in said.err


def test_the_schema_holds_for_what_is_answered() -> None:
    schema = json.loads((SCHEMAS / "lift-case.schema.json").read_text(encoding="utf-8"))
    validator = Draft202012Validator(schema)
    validator.validate(CASE)
    assert not validator.is_valid(CASE | {"tube_outside_m": "0.038"})
    assert not validator.is_valid(CASE | {"tube": 1})


def test_the_load_curve_steps_where_rows_are_picked_up() -> None:
    curve = answer_line(line()).load_curve
    assert curve is not None
    points = list(zip(curve.raise_m, curve.load_n, strict=True))
    at_first_row = [round(load, 3) for raised, load in points if abs(raised - 0.195) < 1e-9]
    assert at_first_row == [4.275, 5.25]
    assert points == sorted(points)
