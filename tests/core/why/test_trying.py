"""Remedies are offered only after they were tried, and say in text what they mean."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

import pytest

from foldwright.core.design.choices import Choices, RodPlace
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.trying import (
    Draft,
    Way,
    as_typed,
    by_change,
    by_hand,
    settle,
    system_of,
)


@dataclass(frozen=True, kw_only=True)
class Inputs:
    design: Choices = field(default_factory=Choices)


def said(name: str, severity: Severity = Severity.STOP) -> Finding:
    return Finding(id=name, severity=severity, stage=Stage.ORDER, sentence=f"{name}.")


def way(sentence: str, *after: Finding) -> Way[tuple[Finding, ...]]:
    """Make a way whose inputs are the findings it leads to."""
    return Way(remedy=Remedy(sentence=sentence), inputs=after)


def kept(*ways: Way[tuple[Finding, ...]], others: tuple[Finding, ...] = ()) -> list[str]:
    drafts = [Draft(finding=said("a"), ways=ways), *(Draft(finding=each) for each in others)]
    return [remedy.sentence for remedy in settle(drafts, lambda after: after)[0].remedies]


def test_a_way_that_silences_is_kept_and_one_that_does_not_is_dropped() -> None:
    assert kept(way("mends"), way("does nothing", said("a"))) == ["mends"]


def test_a_way_into_a_new_stop_is_dropped_but_not_into_a_note() -> None:
    note = said("c", Severity.NOTE)
    assert kept(way("worse", said("b")), way("noted", note)) == ["noted"]


def test_a_stop_that_was_there_before_does_not_count_against_a_way() -> None:
    assert kept(way("mends one", said("b")), others=(said("b"),)) == ["mends one"]
    before = said("b", Severity.NOTE)
    assert kept(way("hardens a note", said("b")), others=(before,)) == []


def test_a_way_by_hand_is_never_tried() -> None:
    assert kept(by_hand("Measure again.")) == ["Measure again."]


def test_ways_of_a_trial_are_never_looked_at() -> None:
    def ways() -> Iterator[Way[int]]:
        raise AssertionError
        yield by_hand("never")

    def judge(_: int) -> list[Finding]:
        return [Draft(finding=said("b", Severity.NOTE), ways=ways()).finding]

    draft = Draft(finding=said("a"), ways=(Way(remedy=Remedy(sentence="mends"), inputs=1),))
    assert len(settle([draft], judge)[0].remedies) == 1


def test_a_change_says_in_text_what_its_inputs_hold() -> None:
    way = by_change(
        Inputs(design=Choices(row_count=5)),
        System.METRIC,
        "Change.",
        design__row_count=None,
        design__skirt=Length.mm(40),
        design__rods=RodPlace.ROWS,
    )
    assert way.inputs is not None
    assert way.inputs.design == Choices(skirt=Length.mm(40), rods=RodPlace.ROWS)
    assert [(change.path, change.text) for change in way.remedy.changes] == [
        ("design.row_count", ""),
        ("design.skirt", "40 mm"),
        ("design.rods", "at rows"),
    ]


@pytest.mark.parametrize(
    ("value", "text"), [(1.65, "1.65"), (8, "8"), (None, ""), (False, "false"), ("bar", "bar")]
)
def test_values_as_a_person_types_them(value: object, text: str) -> None:
    assert as_typed(value, System.INCH) == text


def test_the_system_is_told_from_the_marks() -> None:
    assert system_of([]) is System.INCH
    assert system_of([Length.inches("35.1875"), Length.mm(1270)]) is System.INCH
    assert system_of([Length.mm(894), Length.mm(1270)]) is System.METRIC
