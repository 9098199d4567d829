"""All checks in the order of the work, and the one that a finding comes of."""

from __future__ import annotations

from functools import cache

from foldwright.core.check.catalogue.at_the_end import AT_THE_BENCH, AT_THE_INSTALLATION
from foldwright.core.check.catalogue.at_the_measure import AT_THE_MEASURE
from foldwright.core.check.catalogue.before_headrail import BEFORE_HEADRAIL
from foldwright.core.check.catalogue.before_ordering import BEFORE_ORDERING
from foldwright.core.check.catalogue.check import Check
from foldwright.core.check.catalogue.on_the_table import ON_THE_TABLE

EVERY = (
    *AT_THE_MEASURE,
    *BEFORE_ORDERING,
    *ON_THE_TABLE,
    *BEFORE_HEADRAIL,
    *AT_THE_BENCH,
    *AT_THE_INSTALLATION,
)


@cache
def checks_by_finding() -> dict[str, Check]:
    """Give the check that each finding comes of, by the finding's id.

    Gives: every finding that the tool knows, in the order of the work.

    Source: derived here.

    >>> checks_by_finding()["measure.width-binds"].id
    'inside-width'
    """
    return {name: check for check in EVERY for name in check.findings}
