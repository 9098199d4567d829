"""The demo job, walked to the last leaf: no number without a why, no why that does not read."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import foldwright
from foldwright.core.check.plan import ShadePlan
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.source import Status
from foldwright.core.why.telling import explain, fill, show, tell
from foldwright.core.why.walking import bare_numbers, walk_figures
from foldwright.work.jobfile import load_job
from foldwright.work.planning import plan_job

DEMO = Path(foldwright.__file__).parent / "demo" / "guesthouse.toml"
SLOT = re.compile(r"\{(\d+)(?::range)?\}")
LONG_DECIMAL = re.compile(r"[1-9]\d*\.\d{4,}|\d{7,}")

# What stands as a plain number on purpose: inputs and records are what somebody typed,
# panel and curve are the samples behind a drawing, and lists are counted from one.
PLAIN = re.compile(
    r"spec\.|chosen\.|weights\.load\.|balance\.curve\."
    r"|headrail\.(lines|steps)\.\d+\.number$"
    r"|findings\.\d+\.remedies\.\d+\.changes\."
)


@cache
def shades() -> tuple[ShadePlan, ...]:
    job = load_job(DEMO).job
    assert job is not None
    return plan_job(job).shades


def every_figure() -> Iterator[Figure[Any]]:
    """Give each figure of the job once, and each that it rests on."""
    seen: set[int] = set()
    for shade in shades():
        for shown in walk_figures((shade.size, shade.layout, shade.weights, shade.balance,
                                   shade.headrail, shade.findings)):  # fmt: skip
            for figure in shown.family():
                if id(figure) not in seen:
                    seen.add(id(figure))
                    yield figure


def slots(sentence: str) -> set[int]:
    return {int(number) for number in SLOT.findall(sentence)}


def test_the_demo_job_has_shades_to_walk() -> None:
    assert len(shades()) == 9
    assert sum(shade.headrail is not None for shade in shades()) >= 6


def test_no_number_stands_without_a_why() -> None:
    bare = {path for shade in shades() for path in bare_numbers(shade) if not PLAIN.match(path)}
    assert bare == set()


def test_no_sentence_speaks_of_an_input_that_is_not_there() -> None:
    for figure in every_figure():
        assert slots(figure.because) <= set(range(len(figure.inputs))), figure.because


def test_no_finding_speaks_of_a_figure_that_is_not_there() -> None:
    for shade in shades():
        for finding in shade.findings:
            assert slots(finding.sentence) <= set(range(len(finding.figures))), finding.id
            for remedy in finding.remedies:
                assert slots(remedy.sentence) <= set(range(len(remedy.figures))), finding.id


def test_every_sentence_is_one_that_can_be_read_aloud() -> None:
    for figure in every_figure():
        sentence = figure.because
        assert sentence[0].isupper() or sentence[0] in "{0123456789", sentence
        assert sentence.endswith("."), sentence
        assert not LONG_DECIMAL.search(sentence), sentence
        assert "  " not in sentence, sentence
        assert figure.name, sentence


@pytest.mark.parametrize("system", System, ids=lambda system: system.value)
def test_every_figure_is_told_without_a_slot_left_open(system: System) -> None:
    for figure in every_figure():
        told = f"{show(figure, system)} {tell(figure, system)}"
        assert "{" not in told, told
        assert "nan" not in told.lower().split(), told
        assert not LONG_DECIMAL.search(told), told


@pytest.mark.parametrize("system", System, ids=lambda system: system.value)
def test_every_finding_is_told_without_a_slot_left_open(system: System) -> None:
    for shade in shades():
        for finding in shade.findings:
            for each in (finding, *finding.remedies):
                told = fill(each.sentence, each.figures, system)
                assert "{" not in told, told
                assert told.endswith((".", "?")), told


def test_what_is_given_rests_on_nothing_else() -> None:
    given = {Status.MEASURED, Status.SUPPLIER, Status.CHOSEN}
    for figure in every_figure():
        if figure.status in given:
            assert not figure.inputs, figure.name


def test_every_number_is_finite_and_lies_inside_its_range() -> None:
    for figure in every_figure():
        if isinstance(figure.value, float):
            assert math.isfinite(figure.value), figure.name
        if isinstance(figure.value, (int, float, Length)):
            assert (figure.low is None) == (figure.high is None), figure.name
            if figure.low is not None:
                assert figure.low <= figure.value <= figure.high, (figure.name, figure)


def test_every_explanation_ends_on_the_ground() -> None:
    for shade in shades():
        for figure in walk_figures((shade.size, shade.layout, shade.weights, shade.balance)):
            lines = explain(figure, System.INCH)
            assert lines[0].depth == 0
            assert all(line.text for line in lines)
            assert len(lines) < 600, figure.name
