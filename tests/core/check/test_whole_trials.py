"""Remedies of lift and headrail are tried as the job file would have them, through every room."""

from __future__ import annotations

import pytest
from tests.core.check.cases_lift import LIFT
from tests.core.check.sound import Order, found, mended, planned, shop

from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.retyping import retype
from foldwright.core.check.whole_trials import only_what_is_chosen
from foldwright.core.lift.choices import LiftKind
from foldwright.core.why.finding import Change
from foldwright.work.document import Document, read_document

RETYPED = ("lift.nothing-fits", "lift.kind", "lift.lock-none", "rig.wraps-at-bracket", "lift.cord")


def spec_of(document: Document) -> ShadeSpec:
    job = read_document(document, shop()).job
    assert job is not None
    return job.shades[-1]


@pytest.mark.parametrize("name", RETYPED)
def test_a_remedy_is_typed_as_its_button_types_it(name: str) -> None:
    document = LIFT[name].document
    offered = [each.changes for each in found(planned(document), name).remedies if each.changes]
    assert offered
    for changes in offered:
        assert retype(spec_of(document), changes) == spec_of(mended(document, changes))


def test_every_kind_of_field_is_typed_and_cleared() -> None:
    typed = {
        "opening.sill": "true",
        "asked.width": "35 3/16 in",
        "lift.turns": "11.5",
        "safety.made_on": "2026-05-04",
        "materials.lining": "Weighed wide",
        "mount.place": "outside",
    }
    spec = ShadeSpec(tag="A")
    changes = [Change(path=path, text=text) for path, text in typed.items()]
    full = retype(spec, changes)
    assert full != spec
    assert retype(full, [Change(path=path, text="") for path in typed]) == spec


@pytest.mark.parametrize(("children", "offered"), [("yes", False), ("no", True)])
@pytest.mark.parametrize("trouble", [{"lift.spring": "Wound wire 1.9"}, {"lift.kind": None}])
def test_a_chain_is_offered_only_where_no_child_can_be(
    trouble: dict[str, str | None], children: str, *, offered: bool
) -> None:
    plan = planned(Order(of="spring", typed={**trouble, "safety.children": children}).document)
    kinds = {
        change.text
        for finding in plan.findings
        for remedy in finding.remedies
        for change in remedy.changes
        if change.path == "lift.kind"
    }
    assert (LiftKind.CLUTCH.value in kinds) is offered
    assert LiftKind.MOTOR.value in kinds


def test_a_trial_knows_nothing_but_what_the_shade_names() -> None:
    listed = only_what_is_chosen(shop(), spec_of(Order(of="spring").document))
    assert set(listed.springs) == {"Alder 26"}
    assert set(listed.cloths) == {"Playroom twill, sea", "Weighed sateen"}
    assert not listed.motors
