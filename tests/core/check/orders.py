"""Orders typed as in a job file, planned through every room, and mended by their remedies."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.why.finding import Finding, Remedy
from foldwright.work.changing import change_shade
from foldwright.work.document import read_document
from foldwright.work.planning import plan_one

Document = dict[str, Any]

PLAIN: dict[str, Any] = {
    "tag": "One",
    "asked": {"width": "36", "drop": "60", "given_by": "the client"},
    "mount": {"place": "inside", "height_rule": "clear sill"},
    "design": {"style": "flat"},
    "materials": {
        "face": "Harbour linen, flax",
        "lining": "Sateen lining, ivory",
        "bar": "Steel flat 20 \N{MULTIPLICATION SIGN} 3",
        "board": "Pine 19 \N{MULTIPLICATION SIGN} 64",
        "bracket": "End bracket, standard",
        "tube": "Tube 38",
        "cord": "Cord 1.2",
    },
    "lift": {"kind": "motor", "motor": "Motor 1.1, battery"},
}


def order(**tables: dict[str, Any]) -> Document:
    """Give a job of one plain lined shade, with some of its fields typed anew."""
    shade = deepcopy(PLAIN)
    for name, fields in tables.items():
        shade[name] = shade.get(name, {}) | fields
    return {
        "job": {"name": "Orders", "system": "inch", "markets": ["United States"]},
        "shades": [shade],
    }


def planned(document: Document) -> ShadePlan:
    """Plan the one shade of a job, which must read without a fault."""
    reading = read_document(document)
    assert reading.job is not None, reading.faults
    return plan_one(reading.job, reading.job.shades[0])


def found(plan: ShadePlan, name: str) -> Finding | None:
    """Give the finding of that name, or None where it is silent."""
    return next((each for each in plan.findings if each.id == name), None)


def ways(plan: ShadePlan, name: str) -> list[Remedy]:
    """Give the remedies of a finding that change a field."""
    finding = found(plan, name)
    assert finding is not None, [each.id for each in plan.findings]
    return [remedy for remedy in finding.remedies if remedy.changes]


def mended(document: Document, remedy: Remedy) -> ShadePlan:
    """Plan the shade once more, with a remedy's changes typed into its fields."""
    return planned(change_shade(document, 0, remedy.changes))
