"""Whether cloth carries its own folds between two columns, and what else would."""

from __future__ import annotations

from dataclasses import replace
from math import pi, sin

import pytest
from scipy.integrate import quad
from tests.core.layouts import HABITS, answer, cloth, finding, ids, inches, sized

from foldwright.core.design.choices import Choices, RodPlace, StyleName
from foldwright.core.design.sagging import GUTTER
from foldwright.core.facts.records import Chosen, Cloth
from foldwright.core.facts.stiffness import (
    FOLD_SAG,
    bending_length_m,
    bending_length_of,
    rigidity_n_m,
)
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

SIZE = sized("44", "60")  # four spaces of 10 in between columns 2 in from the edges


def stiff(millimetres: float | None, **more: object) -> Chosen:
    length = None if millimetres is None else Length.mm(str(millimetres))
    return Chosen(face=cloth(bending_length=length, thickness=Length.mm("0.5"), **more))


def sag(millimetres: float, **design: object) -> Figure[Length] | None:
    found = answer(Choices(**design), SIZE, stiff(millimetres)).findings  # type: ignore[arg-type]
    told = [each.figures[0] for each in found if each.id == "design.folds-sag"]
    return told[0] if told else None


def test_the_gutter_is_a_thin_half_circle_about_its_own_centre() -> None:
    """By quadrature: the centre of area lies 2/pi of the radius from the middle of the circle."""
    centre = quad(sin, 0, pi)[0] / pi
    second = quad(lambda angle: (sin(angle) - centre) ** 2, 0, pi)[0]
    assert centre == pytest.approx(2 / pi)
    assert pytest.approx(second) == GUTTER


def test_limp_cloth_sags_by_what_it_is_longer_than_its_span() -> None:
    """Own arithmetic: the square root of 3/8 of half a per cent is 4.33 % of 10 in."""
    limp = sag(5)
    assert limp is not None
    assert limp.value.in_millimetres == pytest.approx(254 * (3 * 0.005 / 8) ** 0.5, rel=0.01)
    assert limp.low is not None
    assert limp.high == limp.value


def test_stiff_cloth_carries_its_folds_and_the_sag_falls_with_stiffness() -> None:
    """The nose of a fold grows with the bending length, and its stiffness with the sixth power."""
    assert sag(30) is None
    soft, softer = sag(15), sag(14)
    assert soft is not None
    assert softer is not None
    assert soft.value < softer.value or softer.value.in_millimetres > 10.9


def test_the_limit_lies_where_the_trade_places_columns_for_soft_cloth() -> None:
    """Common practice: 8 in for soft cloth, 10 in for plain. The limpest cloth keeps to 8 in."""
    limp = stiff(3)
    eight = answer(Choices(column_count=6), sized("44", "60"), limp)
    assert eight.result is not None
    assert eight.result.columns.pitch.value == inches("8")
    assert "design.folds-sag" not in ids(eight.findings)
    assert "design.folds-sag" in ids(answer(Choices(), SIZE, limp).findings)


@pytest.mark.parametrize(("more", "said"), [(Length.mm("0.05"), False), (Length.mm("-0.05"), True)])
def test_the_sag_is_said_from_its_limit_on(more: Length, *, said: bool) -> None:
    limit = FOLD_SAG.value + more
    pitch = limit.in_metres / (3 * 0.005 / 8) ** 0.5 / 1.0011
    width = Length.metres(pitch) * 4 + inches("4")
    found = answer(Choices(column_count=5), sized(width, "60"), stiff(3)).findings
    assert ("design.folds-sag" in ids(found)) is not said


def test_rods_or_closer_columns_silence_it() -> None:
    told = finding(answer(Choices(), SIZE, stiff(3)).findings, "design.folds-sag")
    rods, closer = told.remedies
    assert rods.changes[0].text == "at rows"
    assert closer.changes[0].text == "6"
    for change in ({"rods": RodPlace.ROWS}, {"column_count": 6}):
        again = answer(Choices(**change), SIZE, stiff(3)).findings  # type: ignore[arg-type]
        assert "design.folds-sag" not in ids(again)


@pytest.mark.parametrize(("pitch", "asked"), [("10", False), ("10 1/2", True)])
def test_an_untested_cloth_is_asked_for_only_where_it_matters(pitch: str, *, asked: bool) -> None:
    width = inches("4") + inches(pitch) * 4
    choices = Choices(largest_pitch=inches(pitch), column_count=5)
    found = answer(choices, sized(width, "60"), stiff(None)).findings
    assert ("design.stiffness-unknown" in ids(found)) is asked
    with_rods = replace(choices, rods=RodPlace.ROWS)
    found = answer(with_rods, sized(width, "60"), stiff(None)).findings
    assert "design.stiffness-unknown" not in ids(found)


def test_a_hem_that_dips_by_design_is_not_held_against_it() -> None:
    found = answer(Choices(style=StyleName.RELAXED), sized("34", "54"), stiff(3)).findings
    assert "design.folds-sag" not in ids(found)


def test_half_of_an_overhang_is_a_bending_length() -> None:
    face = cloth(overhang=Length.mm(44))
    found = bending_length_of(face)
    assert found is not None
    assert found.value == Length.mm(22)
    assert bending_length_of(replace(face, bending_length=Length.mm(20))) is not None
    assert bending_length_m([face]) == pytest.approx(0.022)
    assert bending_length_of(cloth()) is None
    assert rigidity_n_m(Cloth(name="x", areal_mass_kg_m2=1, usable_width=Length.mm(9))) == 0
    assert HABITS.largest_pitch.value == inches("10")
