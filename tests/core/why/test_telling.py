"""One figure reads alike everywhere: its value, its range, its sentence, its ground."""

from __future__ import annotations

from typing import Any

import pytest

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding, System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, fact, measured, supplied
from foldwright.core.why.source import Source, Status
from foldwright.core.why.telling import cite, explain, fill, show, show_value, tell

INCH, METRIC = System.INCH, System.METRIC

WIDTH = measured("narrowest width", Length.inches("35.4375"))
DEDUCTION = fact(
    "inside deduction",
    Length.inches("0.25"),
    Unit.LENGTH,
    "It keeps the shade from binding.",
    Status.PUBLISHED,
    source=Source(id="make-your-own-page"),
)
FINISHED = derived(
    "finished width",
    Length.inches("35.1875"),
    Unit.LENGTH,
    "{0} less {1}.",
    WIDTH,
    DEDUCTION,
    rounding=Rounding.MUST_FIT,
)
BOARD = derived(
    "board", Length.inches("34.9375"), Unit.LENGTH, "{0} less {1}.", FINISHED, DEDUCTION
)


def figure_of(value: Any, unit: Unit, **rest: Any) -> Figure[Any]:
    return Figure(name="it", value=value, unit=unit, because="It is.", **rest)


@pytest.mark.parametrize(
    ("value", "unit", "metric", "inch"),
    [
        (Length.inches("35.1875"), Unit.LENGTH, "894 mm", "35 3/16 in"),
        (Length.mm("1.4"), Unit.LENGTH, "1.4 mm", "55 thousandths of an inch"),
        (1.858, Unit.AREA, "1.86 m²", "20 ft²"),
        (0.35, Unit.MASS, "350 g", "12.3 oz"),
        (0.271246, Unit.AREAL_MASS, "271 g/m²", "8 oz/yd²"),
        (0.465, Unit.LINE_MASS, "465 g/m", "5 oz/ft"),
        (22.24, Unit.FORCE, "22.2 N", "5 lbf"),
        (0.3423, Unit.TORQUE, "0.342 N·m", "3.03 in·lb"),
        (0.03747, Unit.RATE, "0.0375 N·m a turn", "0.332 in·lb a turn"),
        (9.825, Unit.TURN, "9.8 turns", "9.8 turns"),
        (2.25, Unit.TIME, "2.25 s", "2.25 s"),
        (0.5, Unit.SPEED, "0.5 m/s", "1.64 ft/s"),
        (58.9, Unit.ENERGY, "58.9 J", "43.4 ft·lbf"),
        (3.86, Unit.ANGLE, "3.86°", "3.86°"),
        (68.9e9, Unit.STIFFNESS, "68.9 GPa", "9.99 million psi"),
        (0.95, Unit.SHARE, "95 %", "95 %"),
        (1.5, Unit.RATIO, "1.5", "1.5"),
        (7, Unit.COUNT, "7", "7"),
        ("right", Unit.WORD, "right", "right"),
    ],
)
def test_every_unit_is_shown_in_both_systems(
    value: object, unit: Unit, metric: str, inch: str
) -> None:
    assert show(figure_of(value, unit), METRIC) == metric
    assert show(figure_of(value, unit), INCH) == inch


def test_no_unit_is_forgotten() -> None:
    shown = test_every_unit_is_shown_in_both_systems.pytestmark[0].args[1]  # type: ignore[attr-defined]
    assert {row[1] for row in shown} == set(Unit)


def test_a_range_is_shown_in_words() -> None:
    turns = figure_of(9.825, Unit.TURN, low=8.6, high=11.3)
    assert show(turns, METRIC) == "9.8 turns (90 % between 8.6 and 11.3)"
    assert show_value(turns, METRIC) == "9.8 turns"


def test_a_range_of_lengths_leaves_the_unit_out_of_its_ends() -> None:
    arm = figure_of(
        Length.inches(2), Unit.LENGTH, low=Length.inches("1.9375"), high=Length.inches("2.125")
    )
    assert show(arm, INCH) == "2 in (90 % between 1 15/16 and 2 1/8)"


def test_a_range_that_crosses_into_another_unit_names_both() -> None:
    mass = figure_of(1.05, Unit.MASS, low=0.95, high=1.15)
    assert show(mass, METRIC) == "1.05 kg (90 % between 950 g and 1.15 kg)"


def test_a_range_around_one_turn_keeps_one_word_for_turns() -> None:
    turns = figure_of(1.4, Unit.TURN, low=0.8, high=2.0)
    assert show(turns, METRIC) == "1.4 turns (90 % between 0.8 and 2)"


def test_a_range_of_per_cents_keeps_its_signs_apart_from_the_90_per_cent() -> None:
    friction = figure_of(0.12, Unit.SHARE, low=0.02, high=0.35)
    assert show(friction, METRIC) == "12 % (90 % between 2 % and 35 %)"


def test_half_a_range_is_no_range() -> None:
    assert show(figure_of(9.825, Unit.TURN, low=8.6), METRIC) == "9.8 turns"


def test_a_length_honours_the_rounding_of_its_use() -> None:
    length = Length.mm("893.7625")
    fitting = figure_of(length, Unit.LENGTH, rounding=Rounding.MUST_FIT)
    oversize = figure_of(length, Unit.LENGTH, rounding=Rounding.CUT_OVERSIZE)
    assert show(fitting, METRIC) == "893 mm"
    assert show(oversize, METRIC) == "894 mm"


def test_a_sentence_is_filled_in_the_readers_units() -> None:
    assert tell(FINISHED, INCH) == "35 7/16 in less 1/4 in."
    assert tell(FINISHED, METRIC) == "900 mm less 6.4 mm."


def test_slots_may_repeat_come_in_any_order_and_ask_for_the_range() -> None:
    rows = chosen("rows", 7, Unit.COUNT)
    turns = figure_of(9.825, Unit.TURN, low=8.6, high=11.3)
    sentence = "{1} for {0} rows; {0} rows need {1:range}."
    assert fill(sentence, (rows, turns), METRIC) == (
        "9.8 turns for 7 rows; 7 rows need 9.8 turns (90 % between 8.6 and 11.3)."
    )


def test_braces_that_are_no_slots_are_left_alone() -> None:
    assert fill("{left} {0}", (chosen("rows", 7, Unit.COUNT),), INCH) == "{left} 7"


def test_a_slot_without_a_figure_is_a_fault_of_the_sentence() -> None:
    with pytest.raises(IndexError):
        fill("{1}", (chosen("rows", 7, Unit.COUNT),), INCH)


def test_an_explanation_goes_down_to_the_ground_and_tells_shared_inputs_once() -> None:
    lines = explain(BOARD, INCH)
    assert [(line.depth, line.name, line.told_above) for line in lines] == [
        (0, "board", False),
        (1, "finished width", False),
        (2, "narrowest width", False),
        (2, "inside deduction", False),
        (1, "inside deduction", True),
    ]
    assert [line.text for line in lines] == [
        "board: 34 15/16 in. 35 3/16 in less 1/4 in. [derived, resting on published]",
        "finished width: 35 3/16 in. 35 7/16 in less 1/4 in. [derived, resting on published]",
        "narrowest width: 35 7/16 in. The narrowest width as measured. [measured]",
        f"inside deduction: 1/4 in. {DEDUCTION.because} [published: make-your-own-page]",
        "inside deduction: 1/4 in (told above)",
    ]


def test_what_reads_alike_is_told_once_even_if_made_twice() -> None:
    twin = derived(
        FINISHED.name,
        FINISHED.value,
        Unit.LENGTH,
        FINISHED.because,
        WIDTH,
        DEDUCTION,
        rounding=Rounding.MUST_FIT,
    )
    both = derived("both", FINISHED.value, Unit.LENGTH, "{0}, {1}.", FINISHED, twin)
    assert [line.told_above for line in explain(both, INCH)] == [False, False, False, False, True]


def test_what_stands_on_its_own_arithmetic_says_no_more_than_derived() -> None:
    flat = derived("fullness", 1.0, Unit.RATIO, "A flat shade has as much cloth as drop.")
    assert explain(flat, INCH)[0].known == "derived"


def shared_by_many(levels: int) -> Figure[Length]:
    figure: Figure[Length] = WIDTH
    for level in range(levels):
        name = f"level {level}"
        figure = derived(name, figure.value, Unit.LENGTH, "{0}, {1}.", figure, figure)
    return figure


def test_an_explanation_of_a_figure_shared_by_many_stays_short() -> None:
    lines = explain(shared_by_many(40), INCH)  # told in full each time, 2**40 lines
    assert len(lines) == 81


def test_a_figure_shown_to_a_programmer_leaves_out_what_it_rests_on() -> None:
    assert len(repr(shared_by_many(40))) < 500


def test_a_source_is_cited_with_its_clause() -> None:
    assert cite(Source(id="sor-2019-97", clause="s. 6")) == "sor-2019-97, s. 6"
    assert cite(Source(id="sor-2019-97")) == "sor-2019-97"


def test_makers_mark_how_a_figure_is_known() -> None:
    tube = supplied("tube", Length.mm(38), Unit.LENGTH, "tube 38")
    assert (tube.status, tube.because) == (Status.SUPPLIER, "The tube on the sheet of “tube 38”.")
    assert chosen("rows", 7, Unit.COUNT).status is Status.CHOSEN
    assert WIDTH.status is Status.MEASURED
    assert FINISHED.status is Status.DERIVED
    assert FINISHED.rests_on is Status.PUBLISHED
    memory = fact("steel", 200e9, Unit.STIFFNESS, "Remembered.", Status.MEMORY)
    assert derived("sag", 1.0, Unit.RATIO, "{0}", FINISHED, memory).rests_on is Status.MEMORY
