"""Every fact of the core says how it is known, and whoever claims print shows it."""

from __future__ import annotations

from collections.abc import Iterator
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

import pytest
from tests.docs.reading import sources

from foldwright.core import facts
from foldwright.core.why.figure import Figure
from foldwright.core.why.source import Status
from foldwright.core.why.walking import walk_figures


def facts_of_the_core() -> Iterator[tuple[str, Figure[Any]]]:
    for module in iter_modules(facts.__path__):
        for name, value in vars(import_module(f"{facts.__name__}.{module.name}")).items():
            if name.isupper():
                for number, figure in enumerate(walk_figures(value)):
                    yield f"{module.name}.{name}.{number}", figure


FACTS = dict(facts_of_the_core())


@pytest.mark.parametrize("figure", FACTS.values(), ids=FACTS)
def test_a_fact_says_how_it_is_known(figure: Figure[Any]) -> None:
    assert figure.because.endswith(".")
    assert figure.status not in {Status.MEASURED, Status.SUPPLIER, Status.CHOSEN}
    if figure.status is Status.PUBLISHED:
        assert figure.source is not None
    if figure.source is not None:
        assert figure.source.id in sources()


@pytest.mark.parametrize("figure", FACTS.values(), ids=FACTS)
def test_what_is_only_remembered_or_heard_never_poses_as_published(figure: Figure[Any]) -> None:
    if figure.status is Status.PUBLISHED and figure.source is not None:
        read = sources()[figure.source.id]["status"] in {"read", "secondary"}
        assert read or figure.source.id in DEFINITIONS


# What a definition fixes is exact, although its document was not read here.
DEFINITIONS = {"yard-and-pound-1959", "standard-gravity-1901"}


@pytest.mark.parametrize("figure", FACTS.values(), ids=FACTS)
def test_a_value_lies_inside_its_range(figure: Figure[Any]) -> None:
    assert (figure.low is None) == (figure.high is None)
    if figure.low is not None:
        assert figure.low <= figure.value <= figure.high


def test_the_facts_are_found() -> None:
    assert {"house.AT_THE_BENCH.0", "markets.ROW_SPACING.0", "constants.GRAVITY.0"} <= set(FACTS)
