"""The rooms are walked in order, as far as what is known reaches."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.planning import plan_shade
from foldwright.core.facts.markets import Market
from foldwright.core.facts.records import Materials
from foldwright.core.lift.choices import LiftChoices
from foldwright.core.measure.opening import AskedSize, Opening
from foldwright.core.quantity.length import Length
from foldwright.core.why.finding import Severity, Stage
from foldwright.work.draws import house_draws
from foldwright.work.jobfile import load_job

JOB = load_job(Path(__file__).parents[2] / "work" / "cottage.toml").job
assert JOB is not None
KITCHEN, LANDING = JOB.shades
ROOMS = ("size", "layout", "weights", "balance", "headrail")


def planned(spec: ShadeSpec, markets: tuple[Market, ...] = ()) -> ShadePlan:
    assert JOB is not None
    return plan_shade(spec, JOB.shop, JOB.habits, markets, house_draws())


def reached(plan: ShadePlan) -> list[str]:
    return [room for room in ROOMS if getattr(plan, room) is not None]


def test_a_shade_with_all_it_needs_reaches_the_headrail() -> None:
    assert reached(planned(KITCHEN)) == list(ROOMS)
    assert planned(KITCHEN).chosen.face is not None


def test_a_width_and_a_drop_alone_already_show_what_can_be_known() -> None:
    size = AskedSize(width=Length.mm(900), drop=Length.mm(1200))
    plan = planned(ShadeSpec(tag="A", asked=size))
    assert plan.size is not None
    assert plan.layout is not None
    assert plan.headrail is None
    assert any(each.severity is Severity.ASK for each in plan.findings)


@pytest.mark.parametrize(
    ("change", "last"),
    [
        ({"opening": Opening()}, []),
        ({"materials": Materials()}, ["size", "layout"]),
    ],
)
def test_rooms_after_one_without_an_answer_are_not_entered(
    change: dict[str, object], last: list[str]
) -> None:
    plan = planned(replace(KITCHEN, **change))  # type: ignore[arg-type]
    assert reached(plan) == last
    assert any(each.severity is not Severity.NOTE for each in plan.findings)


def test_no_lift_chosen_is_asked_about() -> None:
    plan = planned(replace(KITCHEN, lift=LiftChoices()))
    assert any(each.severity is Severity.ASK for each in plan.findings)


def test_findings_stand_in_the_order_in_which_they_must_be_settled() -> None:
    plan = planned(replace(KITCHEN, materials=Materials(), lift=LiftChoices()))
    order = [
        (list(Stage).index(each.stage), list(Severity).index(each.severity))
        for each in plan.findings
    ]
    assert order == sorted(order)


def spacing(markets: tuple[Market, ...]) -> Length:
    size = AskedSize(width=Length.mm(900), drop=Length.mm(1300))
    layout = planned(ShadeSpec(tag="A", asked=size), markets).layout
    assert layout is not None
    return layout.rows.spacing.value


def test_the_strictest_of_the_markets_named_holds() -> None:
    alone = spacing((Market.CANADA,))
    assert Length.inches(8) < alone <= Length.mm(220)
    assert spacing((Market.CANADA, Market.UNITED_STATES)) <= Length.inches(8)
    assert spacing((Market.CANADA, Market.EUROPE_AND_UK)) <= Length.mm(200)
    assert spacing(()) <= Length.mm(200)


def test_the_same_shade_gives_the_same_plan() -> None:
    assert planned(KITCHEN) == planned(KITCHEN)


def test_what_an_earlier_room_has_asked_is_not_asked_again() -> None:
    asked = [
        each.id
        for shade in (KITCHEN, replace(KITCHEN, lift=LiftChoices()))
        for bare in (shade, replace(shade, materials=Materials()))
        for each in planned(bare).findings
    ]
    assert "design.face-missing" in asked
    assert "lift.kind" in asked
    assert not {"weigh.face", "weigh.rod", "rig.choose-lift"} & set(asked)
