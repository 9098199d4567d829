"""Cut sizes of face, lining and interlining."""

from __future__ import annotations

import pytest
from tests.core.layouts import BOARD, cloth, inches, laid_out, sized

from foldwright.core.design.choices import Choices
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import Rounding, System

PLAIN = Choices(shrinkage=0.0, hem_allowance=inches("4"), top_allowance=inches("3"))


def test_a_lined_shade_by_hand() -> None:
    """Own arithmetic: 48 by 60 in: face 51 by 67, lining 47 3/4 by 63, interlining 48 by 60."""
    materials = Chosen(face=cloth(), lining=cloth(), interlining=cloth())
    cuts = laid_out(PLAIN, sized("48", "60"), materials).cuts
    found = [(cut.layer, cut.width.value, cut.length.value) for cut in cuts]
    assert found == [
        ("face", inches("51"), inches("67")),
        ("lining", inches("47 3/4"), inches("63")),
        ("interlining", inches("48"), inches("60")),
    ]


def test_shrinkage_lengthens_the_cut_and_print_goes_up() -> None:
    """Own arithmetic: (60 + 3 + 4)/0.97 = 69.0722 in, printed 69 1/8 at eighths."""
    design = Choices(shrinkage=0.03, hem_allowance=inches("4"), top_allowance=inches("3"))
    length = laid_out(design, sized("48", "60")).cuts[0].length
    assert float(length.value.in_inches) == pytest.approx(69.0722, abs=0.0005)
    assert length.rounding is Rounding.CUT_OVERSIZE
    eighth = inches("1/8")
    assert print_length(length.value, System.INCH, length.rounding, mark=eighth) == "69 1/8 in"


def test_every_cut_is_printed_up() -> None:
    materials = Chosen(face=cloth(), lining=cloth(), interlining=cloth())
    cuts = laid_out(Choices(), sized("48", "60"), materials).cuts
    assert {figure.rounding for cut in cuts for figure in (cut.width, cut.length)} == {
        Rounding.CUT_OVERSIZE
    }


def test_the_cloth_at_the_top_goes_over_the_board() -> None:
    with_board = laid_out(Choices(), sized("48", "60"), Chosen(face=cloth(), board=BOARD))
    without = laid_out(Choices(), sized("48", "60"))
    tops = [layout.top_allowance for layout in (with_board, without)]
    assert [top.value for top in tops if top] == [inches("3 1/2"), inches("2")]


def test_a_layout_tells_its_turns_and_allowances() -> None:
    layout = laid_out(PLAIN, sized("48", "60"))
    figures = (layout.side_turn, layout.hem_allowance, layout.top_allowance)
    assert [each.value for each in figures if each] == [
        inches("1 1/2"),
        inches("4"),
        inches("3"),
    ]
