"""The pieces of a shade: as many, as large and as matched as the table needs them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from foldwright.core.design.choices import Choices
from foldwright.core.facts.records import Chosen
from foldwright.core.pieces.example import BOARD, PARTS, PRINT, SATEEN, shade_to_cut
from foldwright.core.pieces.layers import ShadeToCut, cut_pieces
from foldwright.core.pieces.matching import Matching, PatternAcross, PatternAlong, before_shrinking
from foldwright.core.pieces.own_shrinkage import lining_as_tested
from foldwright.core.pieces.piece import PieceToCut
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import chosen


def inches(value: int | str) -> Length:
    return Length.inches(value)


def named(shade: ShadeToCut) -> dict[str, PieceToCut]:
    return {piece.name: piece for piece in cut_pieces(shade).pieces}


NARROW = shade_to_cut(inches(36), inches(60))
WIDE = shade_to_cut(inches(72), inches(60), tag="Dining")


def test_a_narrow_shade_is_cut_in_one_piece_a_layer() -> None:
    pieces = named(NARROW)
    assert list(pieces) == ["Stair face", "Stair lining", "Stair board cover"]
    assert pieces["Stair face"].width.value == inches(39)
    assert cut_pieces(NARROW).seams == ()


def test_a_wide_shade_has_a_full_middle_and_equal_sides() -> None:
    pieces = named(WIDE)
    assert pieces["Dining face middle"].width.value == inches(54)
    assert pieces["Dining face left"].width.value == inches("11.5")
    assert pieces["Dining face left"].side_partner == "Dining face right"
    assert pieces["Dining face right"].side_partner == "Dining face left"
    assert pieces["Dining face middle"].side_partner is None


def test_the_pattern_runs_on_over_the_seams() -> None:
    shade = cut_pieces(WIDE)
    pieces = {piece.name: piece for piece in shade.pieces}
    assert len(shade.seams) == 2
    for seam in shade.seams:
        left, right = (pieces[name].phase_across for name in (seam.left, seam.right))
        assert left is not None
        assert right is not None
        assert right.value - left.value == seam.across.value
    lengths = {piece.length.value for name, piece in pieces.items() if "face" in name}
    assert len(lengths) == 1


def test_strips_sewn_together_are_as_wide_as_the_face_turned() -> None:
    shade = cut_pieces(WIDE)
    last = next(piece for piece in shade.pieces if piece.name == "Dining face right")
    begins = sum((seam.across.value for seam in shade.seams), ZERO)
    assert shade.turned_face is not None
    assert begins + last.width.value == shade.turned_face.width.value


def test_a_motif_stands_in_the_middle_or_beside_it_or_anywhere() -> None:
    def phase(across: PatternAcross) -> Length | None:
        shade = shade_to_cut(inches(36), inches(60), matching=Matching(across=across))
        found = named(shade)["Stair face"].phase_across
        return None if found is None else found.value

    assert phase(PatternAcross.MOTIF) == -inches("19.5")
    assert phase(PatternAcross.BETWEEN) == inches("6.75") - inches("19.5")
    assert phase(PatternAcross.ANYWHERE) is None


def test_motifs_stand_at_one_height_from_the_hem_or_from_the_head() -> None:
    def motif_over_hem(drop: int, matching: Matching) -> Length:
        shade = shade_to_cut(inches(36), inches(drop), matching=matching)
        face = named(shade)["Stair face"]
        assert face.phase_along is not None
        assert face.hidden_foot is not None
        return face.length.value + face.phase_along.value - face.hidden_foot.value

    hem = Matching(motif_above_hem=inches(8))
    raised = before_shrinking(inches(8), chosen("shrinkage", 0.01, Unit.SHARE))
    for drop in (40, 60):
        assert motif_over_hem(drop, hem).in_millimetres == pytest.approx(raised.in_millimetres)
    head = Matching(along=PatternAlong.HEAD)
    assert motif_over_hem(60, head) - motif_over_hem(40, head) == before_shrinking(
        inches(20), chosen("shrinkage", 0.01, Unit.SHARE)
    )


def test_a_plain_cloth_asks_for_no_phase() -> None:
    plain = replace(PRINT, vertical_repeat=None, horizontal_repeat=None)
    face = named(shade_to_cut(inches(36), inches(60), parts=replace(PARTS, face=plain)))[
        "Stair face"
    ]
    assert face.phase_along is None
    assert face.phase_across is None


def test_a_lining_too_wide_for_its_cloth_is_joined_like_the_face() -> None:
    narrow = replace(SATEEN, usable_width=inches(48))
    pieces = named(shade_to_cut(inches(72), inches(60), parts=replace(PARTS, lining=narrow)))
    sides = pieces["Stair lining left"].width.value * 2
    middle = pieces["Stair lining middle"].width.value
    assert middle == inches(48)
    assert sides + middle == inches("71.75") + inches(2)


def test_very_wide_layers_take_more_full_widths_in_the_middle() -> None:
    pieces = named(shade_to_cut(inches(168), inches(60)))
    assert "Stair face middle 2" in pieces
    assert "Stair lining middle 2" in pieces
    assert all(
        piece.width.value <= inches(54) for piece in pieces.values() if piece.layer != "board cover"
    )


def test_a_tested_lining_is_cut_by_its_own_shrinkage() -> None:
    tested = chosen("shrinkage of the lining", 0.03, Unit.SHARE)
    own = replace(NARROW, layout=lining_as_tested(NARROW.layout, NARROW.shrinkage, tested))
    before, after = (named(shade)["Stair lining"].length.value for shade in (NARROW, own))
    assert after.in_metres / before.in_metres == pytest.approx(0.99 / 0.97)
    assert named(own)["Stair face"] == named(NARROW)["Stair face"]


def test_the_board_is_covered_all_round_with_lining_else_with_face() -> None:
    cover = named(NARROW)["Stair board cover"]
    assert cover.cloth == "sateen"
    assert cover.length.value == (BOARD.thickness + BOARD.depth) * 2 + inches(1)
    assert cover.width.value == NARROW.size.board_length.value + inches(3)
    bare = shade_to_cut(inches(36), inches(60), parts=replace(PARTS, lining=None))
    assert named(bare)["Stair board cover"].cloth == "print"


def test_nothing_is_cut_from_a_cloth_that_is_not_chosen() -> None:
    assert cut_pieces(shade_to_cut(inches(36), inches(60), parts=Chosen())).pieces == ()


def test_a_typed_hem_moves_length_and_hidden_foot_together() -> None:
    deep = shade_to_cut(inches(36), inches(60), design=Choices(hem_allowance=inches(6)))
    before, after = named(NARROW)["Stair face"], named(deep)["Stair face"]
    assert before.hidden_foot is not None
    assert after.hidden_foot is not None
    longer = after.length.value - before.length.value
    foot = after.hidden_foot.value - before.hidden_foot.value
    assert longer.in_millimetres == pytest.approx(foot.in_millimetres, abs=1e-5)
