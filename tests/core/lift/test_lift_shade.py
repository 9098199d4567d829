"""A whole shade against its lift: verdicts, questions, remedies that work when applied."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.core.lift.bench import CHOICES, SHOP, Shade, bar, lifted, made_of, named, spring

from foldwright.core.facts.records import ShopList
from foldwright.core.lift.balance import Verdict
from foldwright.core.lift.choices import Brake, LiftChoices, LiftKind, Lock
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Severity
from foldwright.core.why.source import Status
from foldwright.core.why.telling import fill, show, tell
from foldwright.core.why.walking import bare_numbers, walk_figures

WORKING = (Verdict.WORKS, Verdict.BY_HAND)

SHADES = {
    "spring": Shade(),
    "braked": lifted(spring="soft, braked", brake=Brake.FITTED),
    "asked": lifted(lock=Lock.UNKNOWN, brake=Brake.UNKNOWN),
    "too stiff": lifted(spring="stiff"),
    "side by side": lifted(spring="weak", springs_side_by_side=2, turns=14.0),
    "unnamed": lifted(spring=""),
    "tape": made_of(cord="", tape="tape"),
    "clutch": lifted(kind=LiftKind.CLUTCH, clutch="geared clutch"),
    "motor": lifted(kind=LiftKind.MOTOR, motor="motor"),
    "no kind": lifted(kind=None),
    "no lock": lifted(lock=Lock.NONE),
}


@pytest.mark.parametrize("shade", SHADES.values(), ids=SHADES)
def test_every_figure_tells_why(shade: Shade) -> None:
    answer = shade.answer
    figures = list(walk_figures((answer.result, answer.findings)))
    assert figures
    for figure in figures:
        for system in System:
            assert "{" not in tell(figure, system) + show(figure, system)
        for part in figure.family():
            given = part.status is not Status.DERIVED or part.name == "fullness"
            assert part.inputs or given, part.name
    assert {place.split(".")[0] for place in bare_numbers(answer.result)} <= {"curve"}


@pytest.mark.parametrize("shade", SHADES.values(), ids=SHADES)
def test_every_sentence_fills(shade: Shade) -> None:
    for finding in shade.answer.findings:
        assert "{" not in fill(finding.sentence, finding.figures, System.INCH)
        for remedy in finding.remedies:
            assert "{" not in fill(remedy.sentence, remedy.figures, System.INCH)


def test_a_spring_that_fits() -> None:
    balance = Shade().balance
    window = balance.window
    assert window is not None
    assert window.recommended_turns is not None
    assert balance.verdict is Verdict.BY_HAND
    assert window.least_turns.high is not None
    assert window.least_turns.high <= window.recommended_turns.value <= window.most_turns.value
    assert window.recommended_turns.value * 2 == int(window.recommended_turns.value * 2)
    assert balance.hand_force_down is not None
    assert balance.spring_energy is not None


def test_without_a_brake_the_answer_is_to_guide_it_by_hand() -> None:
    finding = Shade().finding("lift.brake-none")
    said = fill(finding.sentence, finding.figures, System.METRIC).lower()
    assert "guide it by hand" in said
    assert "do not release it free" in said
    assert "fit a speed brake" in said
    assert "no spring" not in said
    assert {remedy.changes for remedy in finding.remedies if remedy.changes}
    for remedy in finding.remedies:
        if remedy.changes:
            assert Shade().applied(remedy).balance.verdict is Verdict.WORKS


def test_a_brake_too_weak_for_the_shade_is_not_offered() -> None:
    slack = spring("slack brake", 0.0225, 36, speed_brake_n_m_s=0.0005)
    shop = replace(SHOP, springs=named(SHOP.springs["middle"], slack))  # type: ignore[arg-type]
    finding = replace(Shade(), shop=shop).finding("lift.brake-none")
    assert all("slack brake" not in remedy.sentence for remedy in finding.remedies)
    offered = Shade().finding("lift.brake-none").remedies[-1]
    assert offered.changes[0].text == "soft, braked"


def test_the_brake_is_asked_and_either_answer_goes_on() -> None:
    asked = lifted(brake=Brake.UNKNOWN)
    assert asked.balance.verdict is Verdict.ASK
    assert asked.balance.window is not None
    finding = asked.finding("lift.brake-unknown")
    assert finding.severity is Severity.ASK
    verdicts = [asked.applied(remedy).balance.verdict for remedy in finding.remedies]
    assert verdicts == [Verdict.WORKS, Verdict.BY_HAND]


def test_a_brake_on_the_sheet_is_told_while_it_is_asked() -> None:
    finding = lifted(brake=Brake.UNKNOWN, spring="soft, braked").finding("lift.brake-unknown")
    assert "names a brake" in finding.sentence
    assert finding.figures[2].name == "most turns by the speed"


def test_the_lock_is_asked_and_each_answer_means_something() -> None:
    asked = lifted(lock=Lock.UNKNOWN)
    assert asked.balance.verdict is Verdict.ASK
    finding = asked.finding("lift.lock-unknown")
    answers = [asked.applied(remedy) for remedy in finding.remedies if remedy.changes]
    assert [answer.lift.lock for answer in answers] == [Lock.ONE_WAY, Lock.TWO_WAY, Lock.NONE]
    assert [answer.balance.verdict for answer in answers[:2]] == [Verdict.BY_HAND] * 2
    assert "lift.lock-two-way" in answers[1].ids()


def test_without_a_lock_it_does_not_stay_down() -> None:
    loose = lifted(lock=Lock.NONE)
    assert loose.balance.verdict is Verdict.NOTHING_FITS
    finding = loose.finding("lift.lock-none")
    assert finding.severity is Severity.STOP
    assert 0 <= finding.figures[0].value < 1
    for remedy in finding.remedies:
        assert loose.applied(remedy).balance.verdict in WORKING


def test_where_only_the_lock_is_missing_the_spring_is_not_blamed() -> None:
    assert not {"lift.nothing-fits", "lift.narrow"} & lifted(lock=Lock.NONE).ids()
    assert "lift.nothing-fits" in lifted(lock=Lock.NONE, spring="weak").ids()


def test_what_does_not_do_is_not_cautioned_about() -> None:
    """No pull and no speed is told of turns that nobody will wind."""
    assert lifted(spring="weak").ids() == {"lift.nothing-fits"}


TROUBLES = {
    "too stiff": lifted(spring="stiff"),
    "too weak": lifted(spring="weak"),
    "too weak, turns typed": lifted(spring="weak", turns=9.0),
    "too long": lifted(spring="long"),
    "too thick": lifted(spring="thick"),
    "too heavy a lining": replace(made_of(lining="bump"), drop="78"),
    "interlined, turns typed": replace(
        made_of(lining="bump", interlining="bump"), lift=replace(CHOICES, turns=10.0)
    ),
    "too heavy a bar": replace(made_of(bar="bar 0.8"), drop="68"),
    "too light": lifted(spring="middle", hand_force_limit_n=33.0),
    "on a thin tube": replace(made_of(tube="tube 25"), drop="70"),
}


@pytest.mark.parametrize("shade", TROUBLES.values(), ids=TROUBLES)
def test_every_remedy_works_when_it_is_applied(shade: Shade) -> None:
    trouble = next(
        finding
        for finding in shade.answer.findings
        if finding.id in {"lift.nothing-fits", "lift.spring-does-not-go-in", "lift.narrow"}
    )
    assert shade.balance.verdict in {Verdict.NOTHING_FITS, Verdict.NARROW}
    assert trouble.remedies
    for remedy in trouble.remedies:
        after = shade.applied(remedy)
        assert after.balance.verdict in WORKING, remedy.sentence
        assert "lift.turns-outside" not in after.ids()


def paths(shade: Shade, name: str) -> list[str]:
    return [remedy.changes[0].path for remedy in shade.finding(name).remedies]


def test_remedies_go_from_the_least_change_to_the_greatest() -> None:
    order = [
        "lift.spring",
        "lift.springs_side_by_side",
        "materials.tube",
        "materials.lining",
        "materials.bar",
        "lift.raise_limit_share",
        "lift.kind",
    ]
    offered = paths(lifted(spring="stiff"), "lift.nothing-fits")
    places = [order.index(path) for path in offered]
    assert places == sorted(places)
    assert offered.count("lift.spring") <= 2


def test_a_shade_too_light_for_its_spring_is_offered_a_softer_one_first() -> None:
    shade = TROUBLES["too light"]
    window = shade.balance.window
    assert window is not None
    assert window.limited_above_by.value == "the pull on the bar fully lowered"
    first = shade.finding("lift.nothing-fits").remedies[0]
    softer = SHOP.springs[first.changes[0].text].rate_n_m_turn
    assert softer is not None
    assert softer < 0.034


@pytest.mark.parametrize(
    ("name", "path"),
    [
        ("too heavy a lining", "materials.lining"),
        ("interlined, turns typed", "materials.interlining"),
        ("too heavy a bar", "materials.bar"),
        ("on a thin tube", "materials.tube"),
        ("too stiff", "lift.raise_limit_share"),
        ("too long", "lift.spring"),
    ],
)
def test_the_part_at_fault_is_offered_for_change(name: str, path: str) -> None:
    shade = TROUBLES[name]
    offered = [
        remedy.changes[0].path
        for finding in shade.answer.findings
        for remedy in finding.remedies
        if remedy.changes
    ]
    assert path in offered


def test_two_weak_springs_side_by_side() -> None:
    alone = lifted(spring="weak")
    shop = replace(SHOP, springs=named(spring("weak", 0.017, 30)))  # type: ignore[arg-type]
    trouble = replace(alone, shop=shop).finding("lift.nothing-fits")
    both = next(
        remedy
        for remedy in trouble.remedies
        if remedy.changes[0].path == "lift.springs_side_by_side"
    )
    assert replace(alone, shop=shop).applied(both).balance.verdict in WORKING


def test_two_springs_end_to_end_need_twice_the_tube() -> None:
    long = spring(
        "half long", 0.0225, 36, body_length=lifted().shop.springs["middle"].body_length * 2
    )
    shop = replace(SHOP, springs=named(long))  # type: ignore[arg-type]
    one = replace(lifted(spring="half long"), shop=shop)
    two = replace(lifted(spring="half long", springs_side_by_side=2), shop=shop)
    assert one.balance.verdict in WORKING
    assert two.balance.verdict is Verdict.NOTHING_FITS
    assert "lift.spring-does-not-go-in" in two.ids()


def test_where_the_turns_do_only_just() -> None:
    shade = lifted(hand_force_limit_n=38.0)
    window = shade.balance.window
    assert window is not None
    assert shade.balance.verdict is Verdict.NARROW
    assert 0.5 <= window.chance.value < 0.9
    assert window.recommended_turns is not None
    finding = shade.finding("lift.narrow")
    assert finding.severity is Severity.ASK
    assert finding.figures[2].value == window.recommended_turns.value


@pytest.mark.parametrize(("turns", "words"), [(5.0, "too few"), (20.0, "too many")])
def test_typed_turns_outside_the_window(turns: float, words: str) -> None:
    shade = lifted(turns=turns)
    finding = shade.finding("lift.turns-outside")
    assert words in finding.sentence
    (remedy,) = finding.remedies
    assert "lift.turns-outside" not in shade.applied(remedy).ids()


def test_typed_turns_near_the_edge_of_the_window() -> None:
    shade = lifted(turns=9.5)
    finding = shade.finding("lift.turns-unsure")
    assert 0.3 < finding.figures[0].value < 0.9
    (remedy,) = finding.remedies
    assert not {"lift.turns-unsure", "lift.turns-outside"} & shade.applied(remedy).ids()


def test_typed_turns_inside_the_window_are_taken() -> None:
    shade = lifted(turns=12.0)
    assert not {"lift.turns-unsure", "lift.turns-outside"} & shade.ids()
    curve = shade.balance.curve
    assert curve is not None
    window = shade.balance.window
    assert window is not None
    rate = 0.034
    arm = shade.balance.arm_raised.value.in_metres
    assert curve.spring_n[-1] == pytest.approx(rate * 12.0 / arm, rel=1e-3)


def test_the_raise_graph() -> None:
    shade = Shade()
    curve = shade.balance.curve
    assert curve is not None
    load = np.array(curve.load_n)
    assert np.all(np.diff(curve.raise_m) >= 0)
    assert np.all(np.array(curve.load_low_n) <= load)
    assert np.all(load <= np.array(curve.load_high_n))
    assert curve.load_n[-1] == pytest.approx(shade.balance.load_raised.value)
    assert np.all(np.array(curve.spring_lifting_n) >= load)
    assert np.all(np.array(curve.spring_lifting_n) < np.array(curve.spring_n))
    assert np.all(np.array(curve.spring_n) < np.array(curve.spring_resisting_n))
    steps = [
        at
        for at, following in zip(curve.raise_m, curve.raise_m[1:], strict=False)
        if at == following
    ]
    assert len(steps) == 6  # seven rows


def test_the_graph_of_a_clutch_has_no_spring() -> None:
    curve = SHADES["clutch"].balance.curve
    assert curve is not None
    assert curve.load_n
    assert curve.spring_n == curve.spring_lifting_n == curve.spring_resisting_n == ()


def test_an_unnamed_spring_is_asked_for_with_those_that_do() -> None:
    shade = SHADES["unnamed"]
    finding = shade.finding("lift.spring")
    assert shade.balance.verdict is Verdict.ASK
    assert finding.severity is Severity.ASK
    names = [remedy.changes[0].text for remedy in finding.remedies]
    assert names == [rank.spring for rank in shade.balance.ranking][: len(names)]
    for remedy in finding.remedies:
        assert shade.applied(remedy).balance.verdict in WORKING


def test_a_spring_that_is_not_in_the_list() -> None:
    assert "not in the shop's list" in lifted(spring="gold").finding("lift.spring").sentence


def test_where_no_spring_of_the_list_does_other_lifts_are_offered() -> None:
    shop = replace(SHOP, springs=named(SHOP.springs["stiff"]))  # type: ignore[arg-type]
    shade = replace(lifted(spring=""), shop=shop)
    finding = shade.finding("lift.spring")
    assert "None of the list" in finding.sentence
    kinds = [remedy.changes[-1].path for remedy in finding.remedies]
    assert "lift.clutch" in kinds
    for remedy in finding.remedies:
        assert shade.applied(remedy).balance.verdict in (*WORKING, Verdict.ASK)


def test_the_ranking_puts_what_works_first_and_says_why_not() -> None:
    ranking = Shade().balance.ranking
    verdicts = [list(Verdict).index(rank.verdict) for rank in ranking]
    assert verdicts == sorted(verdicts)
    assert {rank.spring for rank in ranking} == set(SHOP.springs)
    remarks = {rank.spring: rank.remark.value for rank in ranking}
    assert remarks["long"] == "too long for the tube"
    assert remarks["thick"] == "too thick for the tube"
    assert "before it can lift" in remarks["weak"]


def test_where_a_brake_is_to_be_fitted_springs_that_have_one_come_first() -> None:
    fitting = [
        rank for rank in lifted(brake=Brake.FITTED).balance.ranking if rank.verdict is Verdict.WORKS
    ]
    assert fitting[0].spring == "soft, braked"
    assert "names no brake" in fitting[1].remark.value


def test_a_brake_of_known_drag_bounds_the_turns_by_speed() -> None:
    window = SHADES["braked"].balance.window
    assert window is not None
    assert window.most_by_speed is not None
    assert window.recommended_turns is not None
    assert window.recommended_turns.value <= window.most_by_speed.value


def test_the_sensitivities_point_the_right_way() -> None:
    window = Shade().balance.window
    assert window is not None
    stiffer, heavier_bar, longer_arm, heavier_cloth = (
        figure.value for figure in window.sensitivities
    )
    assert stiffer == pytest.approx(window.least_turns.value * (1 / 1.1 - 1))
    assert min(heavier_bar, longer_arm, heavier_cloth) > 0


def test_a_heavier_bar_moves_the_least_turns_as_told() -> None:
    before = Shade().balance.window
    shop = replace(SHOP, bars=named(bar("heavy bar", 0.25 + 0.2 / 1.194)))  # type: ignore[arg-type]
    after = replace(made_of(bar="heavy bar"), shop=shop).balance.window
    assert before is not None
    assert after is not None
    told = before.sensitivities[1].value
    moved = after.least_turns.value - before.least_turns.value
    assert moved == pytest.approx(told, rel=0.03)  # the bar is a little shorter than the shade


def test_nothing_typed_asks_for_kind_tube_and_cord() -> None:
    shade = replace(made_of(tube="", cord=""), lift=LiftChoices())
    answer = shade.answer
    assert answer.result is None
    assert shade.ids() == {"lift.tube", "lift.cord"}
    with_tube = shade.applied(shade.finding("lift.tube").remedies[0])
    whole = with_tube.applied(with_tube.finding("lift.cord").remedies[0])
    assert whole.balance.verdict is Verdict.ASK
    kinds = [whole.applied(remedy).lift.kind for remedy in whole.finding("lift.kind").remedies]
    assert kinds == list(LiftKind)


def test_only_tubes_that_are_stiff_enough_are_offered() -> None:
    wide = replace(made_of(tube=""), width="94")
    offered = wide.finding("lift.tube").remedies
    tubes = [remedy.changes[0].text for remedy in offered]
    assert "tube 25" not in tubes
    assert tubes
    for remedy in offered:
        sag = wide.applied(remedy).balance.tube_sag
        assert sag is not None
        assert sag.value.in_metres < 2.4 * wide.habits.tube_sag_share.value


def test_a_cord_and_a_tape_at_once_are_asked_about() -> None:
    both = made_of(tape="tape")
    finding = both.finding("lift.cord-and-tape")
    for remedy in finding.remedies:
        assert "lift.cord-and-tape" not in both.applied(remedy).ids()
    cord, tape = (both.applied(remedy).balance for remedy in finding.remedies)
    assert tape.arm_raised.value > cord.arm_raised.value
    assert tape.arm_raised.value > tape.arm_lowered.value


def test_a_shorter_raise_asks_for_less() -> None:
    whole, part = Shade().balance, lifted(raise_limit_share=0.7).balance
    assert part.load_raised.value < whole.load_raised.value
    assert part.travel_turns.value == pytest.approx(0.7 * whole.travel_turns.value)


def test_clutches() -> None:
    balance = SHADES["clutch"].balance
    assert balance.verdict is Verdict.WORKS
    assert balance.chain_pull is not None
    asked = lifted(kind=LiftKind.CLUTCH)
    finding = asked.finding("lift.clutch")
    assert [remedy.changes[-1].text for remedy in finding.remedies] == [
        "geared clutch",
        "plain clutch",
    ]
    assert "lift.chain-loop" in SHADES["clutch"].ids()


def test_a_chain_too_heavy_to_pull() -> None:
    hard = lifted(kind=LiftKind.CLUTCH, clutch="plain clutch", hand_force_limit_n=20.0)
    finding = hard.finding("lift.chain-pull")
    assert hard.balance.verdict is Verdict.NOTHING_FITS
    assert finding.remedies
    for remedy in finding.remedies:
        assert hard.applied(remedy).balance.verdict in (*WORKING, Verdict.ASK)


def test_motors() -> None:
    balance = SHADES["motor"].balance
    assert balance.verdict is Verdict.WORKS
    assert balance.motor_torque is not None
    assert balance.motor_torque.value == pytest.approx(1.3 * balance.torque_needed.value)
    assert balance.motor_time is not None
    assert balance.motor_speed is not None
    rise = balance.motor_time.value * balance.motor_speed.value
    turned = 2 * np.pi * balance.arm_raised.value.in_metres * balance.travel_turns.value
    assert rise == pytest.approx(turned)
    weak = lifted(kind=LiftKind.MOTOR, motor="small motor")
    assert weak.balance.verdict is Verdict.NOTHING_FITS
    findings = [f for f in weak.answer.findings if f.id == "lift.motor-too-weak"]
    assert len(findings) == 3  # torque, brake and counted turns
    for remedy in findings[0].remedies:
        assert weak.applied(remedy).balance.verdict in WORKING


def test_an_empty_shop_still_answers() -> None:
    shop = replace(
        ShopList(),
        **{
            name: getattr(SHOP, name)
            for name in ("cloths", "tubes", "cords", "bars", "boards", "brackets")
        },
    )
    for kind in LiftKind:
        answer = replace(lifted(kind=kind, spring=""), shop=shop).answer
        assert answer.result is not None
        assert answer.result.verdict is Verdict.ASK


def test_what_is_stiff_enough_is_silent() -> None:
    balance = Shade().balance
    assert balance.tube_sag is not None
    assert balance.bar_sag is not None
    assert balance.board_sag is not None
    assert not {name for name in Shade().ids() if name.startswith("lift.sag")}


def test_a_bar_that_sags_is_found() -> None:
    soft = replace(SHOP.bars["light bar"], stiffness_pa=2e8)
    shop = replace(SHOP, bars=named(soft))  # type: ignore[arg-type]
    assert "lift.sag-bottom-bar" in replace(Shade(), shop=shop).ids()


def test_an_accessible_pull_is_told() -> None:
    finding = Shade().finding("lift.accessible")
    assert finding.figures[1].value == pytest.approx(22.24, abs=0.01)
    assert finding.source is not None
    assert finding.source.id == "ada-2010"
