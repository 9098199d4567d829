"""Orders of which nothing is wrong, spoilt in one place each, as documents that are then read."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from copy import deepcopy
from dataclasses import dataclass, field, fields, replace
from functools import cache
from pathlib import Path
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.facts.records import ShopList
from foldwright.core.why.finding import Change, Finding, Severity
from foldwright.work.changing import change_shade
from foldwright.work.document import Document, read_document
from foldwright.work.planning import plan_one
from foldwright.work.shop import house_shop, load_shop

HERE = Path(__file__).parent / "bases"
SOUND = tomllib.loads((HERE / "shades.toml").read_text(encoding="utf-8"))
Typed = Mapping[str, Any]


@cache
def shop() -> ShopList:
    """Give the house's list and the few records that no sound order would use."""
    extra, house = load_shop(HERE / "shop"), house_shop()
    both = {
        each.name: getattr(house, each.name) | getattr(extra, each.name)
        for each in fields(ShopList)
    }
    return replace(house, **both)


@dataclass(frozen=True, kw_only=True)
class Order:
    """One of the sound shades, with what is typed otherwise; it stands last among the others."""

    of: str
    typed: Typed = field(default_factory=dict)
    habits: Typed = field(default_factory=dict)
    markets: Sequence[str] = ("United States",)
    rolls: Sequence[Typed] = ()
    before: Sequence[Typed] = ()  # shades before it, each as it differs from the sound one
    overrides: Sequence[Typed] = ()

    @property
    def document(self) -> Document:
        """Give the order as it is saved."""
        others = [_spoilt(self.of, {"tag": f"B{n}", **one}) for n, one in enumerate(self.before)]
        own = _spoilt(self.of, self.typed)
        if self.overrides:
            own["overrides"] = [dict(one) for one in self.overrides]
        return {
            "job": {"name": "Order", "system": "inch", "markets": list(self.markets)},
            "habits": dict(self.habits),
            "rolls": [dict(roll) for roll in self.rolls],
            "shades": [*others, own],
        }

    @property
    def sound(self) -> Order:
        """Give the same with nothing spoilt."""
        return Order(of=self.of)


def _spoilt(of: str, typed: Typed) -> dict[str, Any]:
    shade = deepcopy(SOUND[of])
    for path, value in typed.items():
        *tables, key = path.split(".")
        table = shade
        for name in tables:
            table = table.setdefault(name, {})
        if value is None:
            table.pop(key, None)
        else:
            table[key] = value
    return shade


def planned(document: Document) -> ShadePlan:
    """Plan the last shade of an order as typed."""
    reading = read_document(document, shop())
    assert reading.job is not None, reading.faults
    return plan_one(reading.job, reading.job.shades[-1])


def mended(document: Document, changes: Sequence[Change]) -> Document:
    """Press the button of a remedy."""
    return change_shade(document, len(document["shades"]) - 1, changes)


def ids(plan: ShadePlan) -> set[str]:
    return {finding.id for finding in plan.findings}


def stops(plan: ShadePlan) -> set[str]:
    return {finding.id for finding in plan.findings if finding.severity is Severity.STOP}


def found(plan: ShadePlan, name: str) -> Finding:
    return next(finding for finding in plan.findings if finding.id == name)
