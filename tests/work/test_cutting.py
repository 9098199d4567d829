"""From a job to orders of cloth, and to plans that pass the second look."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from foldwright.core.check.boards.board import SharedBoard
from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.order import ClothOrder, ClothPiece, Flaw, Roll
from foldwright.core.design.making import Valance
from foldwright.core.facts.records import Cloth
from foldwright.core.pieces.matching import PatternAcross, widest_about_motif
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import show
from foldwright.work.cut_orders import ClothToCut
from foldwright.work.cutting import ClothCut, cloths_of, cut_cloths, cut_one
from foldwright.work.files import CannotUse
from foldwright.work.job import Job
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.planning import plan_job
from foldwright.work.stock import parts_of
from foldwright.work.what_if import (
    FlawHere,
    OtherSize,
    WhatIf,
    as_if,
    change_between,
    check_question,
    concerns,
)

ROLLS = Path(__file__).parent / "rolls.toml"
PRINT, SATEEN = "Meadow print, indigo", "Sateen lining, ivory"


def mm(value: int) -> Length:
    return Length.mm(value)


@cache
def job(path: Path = ROLLS) -> Job:
    read = load_job(path).job
    assert read is not None
    return read


@cache
def cloths(path: Path = ROLLS) -> dict[str, ClothToCut]:
    return {cloth.title: cloth for cloth in cloths_of(job(path))}


def still() -> float:
    return 0.0


def test_rolls_in_hand_are_cut_as_they_were_measured() -> None:
    order = cloths()[PRINT].order
    (roll,) = order.rolls
    assert order.buying is None
    assert roll.usable_width == mm(1368)
    assert roll.origin_along == mm(210)
    assert roll.flaws == (Flaw(along=mm(3200), across=mm(300), length=mm(60), width=mm(60)),)
    assert order.pattern.vertical_repeat == Length.mm("495.3")
    assert roll.head_loss == job().habits.straightening.value


@pytest.mark.parametrize(
    ("along", "across", "kept"),
    [("495.4", "342.9", True), ("497.0", "342.9", False), ("495.3", "344.0", False)],
)
def test_a_roll_on_which_the_pattern_repeats_otherwise_is_left_out_and_named(
    along: str, across: str, *, kept: bool
) -> None:
    (first,) = job().rolls
    other = replace(
        first,
        name="R2",
        vertical_repeat=Length.mm(along),
        horizontal_repeat=Length.mm(across),
    )
    for rolls in ((first, other), (other, first)):
        (cloth, *_) = cloths_of(replace(job(), rolls=rolls))
        names = [roll.name for roll in cloth.order.rolls]
        assert names == [roll.name for roll in rolls if kept or roll is rolls[0]]
        told = [each for each in cloth.remarks if "is left out: its pattern repeats" in each]
        assert len(told) == (0 if kept else 1)


def test_a_roll_that_shades_name_is_planned_with_its_own_repeat() -> None:
    (first,) = job().rolls
    other = replace(first, name="R2", vertical_repeat=Length.mm(500))
    shade = job().shades[0]
    named = replace(shade, cutting=replace(shade.cutting, roll="R2"))
    both = replace(job(), rolls=(first, other), shades=(named, *job().shades[1:]))
    repeats = {
        cloth.order.rolls[0].name: cloth.order.pattern.vertical_repeat
        for cloth in cloths_of(both)
        if cloth.order.rolls
    }
    assert repeats["R2"] == mm(500)
    assert repeats.get("R1", Length.mm("495.3")) == Length.mm("495.3")


def test_cloth_that_is_not_in_hand_is_bought_as_it_is_sold() -> None:
    order = cloths()[SATEEN].order
    assert order.rolls == ()
    assert order.buying is not None
    assert order.buying.increment == job().habits.order_increment.value
    demo = cloths(DEMO_JOB)
    flax = demo["Harbour linen, flax"].order.buying
    assert flax is not None
    assert flax.increment == mm(100)
    indigo = demo[PRINT].order.buying
    assert indigo is not None
    assert indigo.start_allowance == Length.inches("19.5") + Length.inches(1)


@pytest.mark.parametrize(
    ("path", "mark"), [(ROLLS, mm(1)), (DEMO_JOB, Length.inches("1/16"))], ids=["metric", "inches"]
)
def test_every_cut_size_lies_on_the_next_mark_of_the_tape(path: Path, mark: Length) -> None:
    for cloth in cloths(path).values():
        for ordered, piece in zip(cloth.order.pieces, cloth.pieces, strict=True):
            assert ordered.name == piece.name
            for cut, figure in ((ordered.width, piece.width), (ordered.length, piece.length)):
                whole = cut == cloth.cloth.usable_width
                assert whole or cut.nanometres % mark.nanometres == 0
                assert whole or Length(0) <= cut - figure.value < mark


def test_a_middle_piece_is_narrowed_so_that_a_motif_stands_in_its_middle() -> None:
    sizes = {piece.name: piece.width for piece in cloths()[PRINT].order.pieces}
    assert sizes["P2 face middle"] == mm(1364)
    cloth = replace(job().shop.cloths[PRINT], motif_from_edge=Length.inches("6.75"))
    assert widest_about_motif(cloth, PatternAcross.MOTIF) == Length.inches("40.5")
    assert widest_about_motif(cloth, PatternAcross.BETWEEN) == Length.inches(54)
    plain = Cloth(name="plain", areal_mass_kg_m2=0.2, usable_width=mm(1400))
    assert widest_about_motif(plain, PatternAcross.MOTIF) == mm(1400)


def test_a_room_takes_the_height_of_a_motif_from_the_shade_that_says_it() -> None:
    order = cloths()[PRINT].order
    assert order.free_rooms == frozenset()
    p1, p2 = (
        next(piece for piece in order.pieces if piece.name == name)
        for name in ("P1 face", "P2 face middle")
    )
    assert p1.phase_along == p2.phase_along
    assert cloths(DEMO_JOB)[PRINT].order.free_rooms == {"Parlour"}


def test_only_a_plain_cloth_may_be_turned() -> None:
    demo = cloths(DEMO_JOB)
    assert demo[PRINT].order.railroaded is None
    assert demo["Tarn velvet, moss"].order.railroaded is None
    turned = demo["Chalk sheer"].order.railroaded
    assert turned is not None
    assert {piece.name for piece in turned} == {"Bay face", "Bay board cover"}


def test_a_shade_that_names_a_roll_is_cut_from_it_alone() -> None:
    first, *others = job().shades
    named = replace(first, cutting=replace(first.cutting, roll="R1"))
    found = cloths_of(replace(job(), shades=(named, *others)))
    prints = [cloth for cloth in found if cloth.title == PRINT]
    assert [len(cloth.pieces) for cloth in prints] == [1, 4]
    assert [bool(cloth.order.rolls) for cloth in prints] == [True, False]


def test_a_steam_test_on_the_roll_lengthens_what_is_cut_unless_one_was_typed() -> None:
    (roll,) = job().rolls
    tested = replace(job(), rolls=(replace(roll, steam_shrinkage=0.03),))
    before, after = (
        next(piece for piece in cloths_of(each)[0].order.pieces if piece.name == "P1 face").length
        for each in (job(), tested)
    )
    assert after.in_metres / before.in_metres == pytest.approx(0.99 / 0.97, abs=1e-3)


def test_what_is_not_measured_is_said() -> None:
    (roll,) = job().rolls
    bare = replace(job(), rolls=(replace(roll, length=None),))
    left_out = cloths_of(bare)[0]
    assert left_out.order.rolls == ()
    assert any("left out" in remark for remark in left_out.remarks)
    anywhere = replace(job(), rolls=(replace(roll, repeat_begins=None),))
    assert any("repeat_begins" in remark for remark in cloths_of(anywhere)[0].remarks)


@cache
def demo_cuts() -> tuple[ClothCut, ...]:
    return cut_cloths(cloths_of(job(DEMO_JOB)), time_given_s=1.0, clock=still)


def test_every_cloth_of_the_demo_job_is_planned_and_passes_the_second_look() -> None:
    for cut in demo_cuts():
        assert cut.plan is not None, cut.to_cut.title
        assert faults_of(cut.plan, cut.to_cut.order) == ()
        placed = Counter(place.piece for place in cut.plan.placements)
        wanted = cut.to_cut.order.railroaded if cut.plan.railroaded else cut.to_cut.order.pieces
        assert placed == Counter(piece.name for piece in wanted or ())


def test_the_trade_s_rule_never_orders_less_than_a_plan_that_covers_no_board() -> None:
    for cut in demo_cuts():
        covered = any(piece.layer == "board cover" for piece in cut.to_cut.pieces)
        if cut.plan is not None and not covered:
            assert cut.plan.bought <= cut.to_cut.yardage.ordered.value + mm(1)


def test_a_longer_repeat_concerns_only_a_cloth_with_one() -> None:
    what = WhatIf(repeat_longer=mm(2))
    order = as_if(cloths()[PRINT].order, what)
    assert order.pattern.vertical_repeat == Length.mm("497.3")
    assert concerns(cloths()[PRINT].order, what)
    assert not concerns(cloths()[SATEEN].order, what)


def test_a_flaw_and_another_size_are_taken_in_and_the_motif_stays_in_the_middle() -> None:
    flaw = Flaw(along=mm(900), across=mm(0), length=mm(100), width=mm(1368))
    what = WhatIf(
        flaws=(FlawHere(roll="R1", flaw=flaw),),
        pieces=(OtherSize(piece="P1 face", width=mm(1000), length=mm(1500)),),
    )
    before = cloths()[PRINT].order
    after = as_if(before, what)
    assert after.rolls[0].flaws[-1] == flaw
    old, new = before.pieces[0], after.pieces[0]
    assert (new.width, new.length) == (mm(1000), mm(1500))
    assert old.phase_across is not None
    assert new.phase_across is not None
    assert old.phase_across - new.phase_across == (mm(1000) - old.width) * Fraction(1, 2)


@pytest.mark.parametrize("part", ["left", "middle", "right"])
def test_a_joined_face_with_a_piece_of_another_width_still_runs_on_over_its_seams(
    part: str,
) -> None:
    before = cloths()[PRINT].order
    old = next(piece for piece in before.pieces if piece.name == f"P2 face {part}")
    size = OtherSize(piece=old.name, width=old.width - mm(41), length=old.length)
    order = as_if(before, WhatIf(pieces=(size,)))
    cut = cut_one(cloths()[PRINT], order, time_given_s=1.0, clock=still, watch=lambda *_: True)
    assert cut.plan is not None, cut.answer.findings
    starts = {piece.name: piece.phase_across for piece in order.pieces}
    for seam in order.seams:
        left, right = starts[seam.left], starts[seam.right]
        assert left is not None
        assert right is not None
        assert right - left == seam.across


def test_a_joined_face_whose_middle_nobody_minds_can_be_cut_and_its_sides_match() -> None:
    p1, p2, p3 = job().shades
    anywhere = replace(p2, cutting=replace(p2.cutting, pattern_across=PatternAcross.ANYWHERE))
    (face, *_) = cloths_of(replace(job(), shades=(p1, anywhere, p3)))
    (cut,) = cut_cloths((face,), time_given_s=1.0, clock=still)
    assert cut.plan is not None, cut.answer.findings
    places = {place.piece: place for place in cut.plan.placements}
    assert places["P2 face middle"].across == mm(0)
    assert len(face.order.seams) == 2


WRONG_QUESTIONS = {
    "no size": (
        WhatIf(pieces=(OtherSize(piece="P1 face", width=mm(0), length=mm(-3)),)),
        ["pieces.P1 face.width: it is not above zero", "pieces.P1 face.length: it is not above"],
    ),
    "two sizes of one piece": (
        WhatIf(pieces=(OtherSize(piece="P1 face", width=mm(900), length=mm(1500)),) * 2),
        ["“P1 face” is given 2 sizes. Ask for one size"],
    ),
    "no repeat left": (
        WhatIf(repeat_longer=-Length.mm("495.3")),
        ["nothing would be left of the repeat of Meadow print, indigo. Shorten it by less than"],
    ),
    "a flaw beyond the roll and one beside it": (
        WhatIf(
            flaws=tuple(
                FlawHere(
                    roll="R1",
                    flaw=Flaw(along=mm(along), across=mm(across), length=mm(9), width=mm(9)),
                )
                for along, across in ((24_000, 0), (500, 1368))
            )
        ),
        ["flaws.2.along: a flaw at 24000 mm", "flaws.3.across: a flaw at 1368 mm across"],
    ),
    "a flaw of no size": (
        WhatIf(
            flaws=(
                FlawHere(
                    roll="R1", flaw=Flaw(along=mm(5), across=mm(5), length=mm(0), width=mm(9))
                ),
            )
        ),
        ["rolls.R1.flaws.2.length: it is not above zero"],
    ),
}


@pytest.mark.parametrize("name", WRONG_QUESTIONS)
def test_what_cannot_be_asked_is_refused_before_anything_is_planned(name: str) -> None:
    what, words = WRONG_QUESTIONS[name]
    with pytest.raises(CannotUse) as refused:
        check_question(tuple(cloths().values()), what)
    said = " ".join(fault.sentence for fault in refused.value.faults)
    assert len(refused.value.faults) == len(words)
    assert all(each in said for each in words)


def test_a_longer_repeat_is_refused_where_no_cloth_has_one() -> None:
    with pytest.raises(CannotUse, match="no cloth of the job has a repeat along"):
        check_question((cloths()[SATEEN],), WhatIf(repeat_longer=mm(2)))


def test_unknown_rolls_and_pieces_are_refused_with_the_nearest() -> None:
    flaw = Flaw(along=mm(1), across=mm(1), length=mm(1), width=mm(1))
    what = WhatIf(
        flaws=(FlawHere(roll="R2", flaw=flaw),),
        pieces=(OtherSize(piece="P1 fase", width=mm(9), length=mm(9)),),
    )
    with pytest.raises(CannotUse) as refused:
        check_question(tuple(cloths().values()), what)
    roll, piece = refused.value.faults
    assert "“R1”" in roll.remedy or "R1" in roll.remedy
    assert "“P1 face”" in piece.remedy


def test_a_change_names_what_moves_and_counts_what_stays() -> None:
    plan = next(cut.plan for cut in demo_cuts() if cut.to_cut.title == SATEEN)
    assert plan is not None
    first, *others = plan.placements
    moved = replace(plan, placements=(replace(first, along=first.along + mm(5)), *others))
    change = change_between(plan, moved)
    assert [each.piece for each in change.moved] == [first.piece]
    assert change.stays == len(others)
    assert change_between(plan, plan).moved == ()
    fewer = change_between(plan, replace(plan, placements=tuple(others)))
    assert fewer.moved[0].after is None
    assert fewer.stays == len(others)


def test_a_board_of_several_shades_is_cut_and_covered_once() -> None:
    gap = mm(12)
    pair = SharedBoard(name="Pair", shades=("P1", "P2"), gap=gap)
    together = replace(job(), boards=(pair,))
    apart = {part.name: part.length.value for part in parts_of(plan_job(job()))}
    parts = {part.name: part.length.value for part in parts_of(plan_job(together))}
    assert set(apart) - set(parts) == {"P2 board"}
    less = job().habits.board_deduction.value
    assert parts["P1 board"] == apart["P1 board"] + apart["P2 board"] + gap + less
    covers = [p for c in cloths_of(together) for p in c.pieces if p.layer == "board cover"]
    assert [cover.shade for cover in covers] == ["P1", "P3"]
    long = max(covers[0].width.value, covers[0].length.value)
    assert long == parts["P1 board"] + job().habits.cover_beyond_board.value


def test_a_roll_with_an_inch_and_a_half_to_spare_is_told() -> None:
    """Four cuts of 61 1/2 in from 6 7/8 yd: 246 in of 247 1/2, where 2 in are wanted."""
    cut = Length.inches("61.5")
    pieces = tuple(
        ClothPiece(name=f"F{n}", shade=f"F{n}", room="R", layer="face", width=mm(1300), length=cut)
        for n in range(4)
    )
    long = Length.inches("247.5")
    roll = Roll(name="R", lot="", usable_width=mm(1370), length=long)
    order = ClothOrder(pieces=pieces, rolls=(roll,))
    cloth = replace(cloths()[SATEEN], order=order, remarks=())
    tight = cut_one(cloth, order, time_given_s=1.0, clock=still, watch=lambda *_: True)
    assert tight.plan is not None
    assert tight.plan.bought == Length.inches(246)
    assert "1 1/2 in to spare" in tight.remarks(System.INCH)[0]
    longer = replace(order, rolls=(replace(roll, length=long + Length.inches("0.5")),))
    easy = cut_one(cloth, longer, time_given_s=1.0, clock=still, watch=lambda *_: True)
    assert easy.remarks(System.INCH) == ()


def test_remnants_name_what_the_shop_makes_of_them() -> None:
    for cut in demo_cuts():
        for left in cut.plan.remnants if cut.plan else ():
            large = min(left.width, left.length) >= mm(450)
            assert ("a cushion" in left.uses) == large


def test_a_shade_that_was_to_be_turned_is_named_where_the_plan_lies_along_the_roll() -> None:
    demo = job(DEMO_JOB)
    shades = tuple(
        replace(each, cutting=replace(each.cutting, turned=True)) if each.tag == "Stair" else each
        for each in demo.shades
    )
    flax = next(c for c in cloths_of(replace(demo, shades=shades)) if c.asked_turned)
    cut = cut_one(flax, flax.order, time_given_s=1.0, clock=still, watch=lambda *_: True)
    assert cut.plan is not None
    assert not cut.plan.railroaded
    assert any(remark.endswith(": Stair.") for remark in cut.remarks(System.INCH))


WIDE = """
[job]
name = "Landing"
system = "metric"
date = "2026-11-25"
markets = ["United States"]

[[shades]]
tag = "Landing"
opening = { width_top = "1794", width_middle = "1792", width_bottom = "1793" }
mount = { place = "inside", height_rule = "clear sill" }
asked = { drop = "1500" }
design = { style = "flat" }
materials = { face = "Meadow print, indigo" }
"""


def test_a_piece_as_wide_as_an_inch_cloth_can_be_cut_in_whole_millimetres(tmp_path: Path) -> None:
    # 54 in are 1371.6 mm: rounded up, the middle piece would be wider than its roll.
    path = tmp_path / "job.toml"
    path.write_text(WIDE, encoding="utf-8")
    read = load_job(path)
    assert read.job is not None, read.faults
    face = next(cloth for cloth in cloths_of(read.job) if cloth.title == PRINT)
    middle = next(piece for piece in face.order.pieces if "middle" in piece.name)
    assert middle.width == Length.inches(54)
    (cut,) = cut_cloths((face,), time_given_s=0.0, clock=still)
    assert cut.plan is not None, cut.answer.findings


def test_a_cloth_too_narrow_for_its_motif_is_refused_and_nothing_hangs() -> None:
    """No motif stands in the middle of so narrow a cloth, so no middle piece is narrowed to it."""
    (roll,) = job().rolls
    narrow = replace(job(), rolls=(replace(roll, usable_width=mm(300), flaws_at=()),))
    (face, *_) = cloths_of(narrow)
    (cut,) = cut_cloths((face,), time_given_s=0.0, clock=still)
    assert cut.plan is None
    assert "across is wider than any roll" in cut.answer.findings[0].sentence


@pytest.mark.parametrize("path", [ROLLS, DEMO_JOB], ids=["rolls", "demo"])
def test_a_piece_has_one_cut_size_on_every_paper(path: Path) -> None:
    asked = {piece.name: piece for cloth in cloths_of(job(path)) for piece in cloth.order.pieces}
    system = job(path).system
    seen = 0
    for shade in plan_job(job(path)).shades:
        for cut in shade.layout.cuts if shade.layout else ():
            piece = asked.get(f"{shade.spec.tag} {cut.layer}")
            if piece is not None:
                seen += 1
                assert print_length(piece.length, system) == show(cut.length, system)
                assert print_length(piece.width, system) == show(cut.width, system)
    assert seen >= 4


def test_the_steam_test_and_the_width_of_a_roll_reach_every_room() -> None:
    (roll,) = job().rolls
    narrow = replace(roll, usable_width=mm(1300), steam_shrinkage=0.05)
    other = replace(job(), rolls=(narrow,))
    before, after = (plan_job(each).shades[1].layout for each in (job(), other))
    assert before is not None
    assert after is not None
    assert after.cuts[0].length.value > before.cuts[0].length.value
    assert after.widths.side_cut is not None
    assert before.widths.side_cut is not None
    sides = [p for c in cloths_of(other) for p in c.order.pieces if p.name == "P2 face left"]
    assert print_length(sides[0].width, System.METRIC) == show(after.widths.side_cut, System.METRIC)


def test_the_motifs_of_a_valance_stand_over_those_of_its_shade() -> None:
    narrow = job().shades[0]
    making = replace(narrow.making, valance=Valance.ATTACHED, band_height=mm(60))
    other = replace(job(), shades=(replace(narrow, making=making),))
    (cloth,) = (each for each in cloths_of(other) if each.title == PRINT)
    (cut,) = cut_cloths((cloth,), time_given_s=1.0, clock=still)
    assert cut.plan is not None
    middles = {
        place.piece: place.across + place.width / 2
        for place in cut.plan.placements
        if place.piece in {"P1 face", "P1 valance", "P1 band"}
    }
    assert len(middles) == 3
    repeat = cloth.order.pattern.horizontal_repeat
    for name in ("P1 valance", "P1 band"):
        repeats = (middles[name] - middles["P1 face"]) / repeat
        assert abs(repeats - round(repeats)) < Fraction(1, 500), name


def test_a_valance_as_wide_as_its_cloth_lies_as_its_pattern_falls() -> None:
    wide = replace(job().shades[0], asked=replace(job().shades[0].asked, width=mm(1290)))
    making = replace(wide.making, valance=Valance.ATTACHED)
    other = replace(job(), shades=(replace(wide, making=making),))
    (cloth,) = (each for each in cloths_of(other) if each.title == PRINT)
    phases = {piece.name: piece.phase_across for piece in cloth.order.pieces}
    valance = [phase for name, phase in phases.items() if "valance" in name]
    assert valance == [None] * len(valance)
    assert valance


def test_a_middle_piece_narrowed_in_inches_still_has_its_place() -> None:
    (roll,) = job().rolls
    measured = replace(
        roll,
        usable_width=Length.inches("53.875"),
        horizontal_repeat=Length.inches("13.5"),
        vertical_repeat=Length.inches("19.625"),
    )
    inches = replace(job(), rolls=(measured,), head=replace(job().head, system=System.INCH))
    (cloth,) = (each for each in cloths_of(inches) if each.title == PRINT)
    (cut,) = cut_cloths((cloth,), time_given_s=1.0, clock=still)
    assert cut.plan is not None, cut.answer.findings
