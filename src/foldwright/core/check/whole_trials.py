"""Try the remedies of lift and headrail through all the rooms, as those after them would see them.

Such a remedy was tried by its own room, or follows from its sums; neither knows what the rooms
after it, or the last look over the order, have to say of the changed shade.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import fields
from typing import Any

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.retyping import retype
from foldwright.core.facts.records import ShopList
from foldwright.core.why.finding import Finding, Remedy, Severity
from foldwright.core.why.trying import Draft, Way, settle

TRIED_ON_THE_WHOLE = ("lift", "rig")
ANSWERED_BY = {
    "measure": "spec",
    "design": "size",
    "weigh": "layout",
    "lift": "balance",
    "rig": "headrail",
    "safety": "safety",
    "check": "headrail",
}


def try_on_the_whole(
    plan: ShadePlan, judge: Callable[[ShadeSpec], list[Finding]]
) -> tuple[Finding, ...]:
    """Keep of the remedies of lift and headrail those that lead out, seen from every room.

    Takes: the plan as the rooms made it; what finds all that is wrong with a changed shade.

    Gives: the plan's findings, the remedies of the other rooms as they were. A stop of a room
    that had not answered yet says nothing against a remedy: nobody knew of it before either.

    Source: derived here.

    >>> try_on_the_whole(ShadePlan(spec=ShadeSpec(tag="A")), lambda spec: [])
    ()
    """

    def known(spec: ShadeSpec) -> list[Finding]:
        return [each for each in judge(spec) if not _is_news(plan, each)]

    return settle((_draft(plan.spec, finding) for finding in plan.findings), known)


def only_what_is_chosen(listed: ShopList, spec: ShadeSpec) -> ShopList:
    """Give the list with nothing but what a shade names: in a trial nothing is looked for.

    Takes: the shop's list; the shade.

    Gives: a list in which every record is one that the shade is made of or lifted by.

    Source: derived here.

    >>> only_what_is_chosen(ShopList(), ShadeSpec(tag="A")).springs
    {}
    """
    parts = (spec.materials, spec.lift)
    named = {getattr(part, slot.name) for part in parts for slot in fields(part)}
    kept: dict[str, Any] = {
        slot.name: {
            name: record for name, record in getattr(listed, slot.name).items() if name in named
        }
        for slot in fields(listed)
    }
    return ShopList(**kept)


def _draft(spec: ShadeSpec, finding: Finding) -> Draft[ShadeSpec]:
    whole = finding.id.partition(".")[0] in TRIED_ON_THE_WHOLE
    ways = _ways(spec, finding) if whole else map(_untried, finding.remedies)
    return Draft(finding=finding, ways=ways)


def _ways(spec: ShadeSpec, finding: Finding) -> Iterator[Way[ShadeSpec]]:
    for remedy in finding.remedies:
        yield Way(remedy=remedy, inputs=retype(spec, remedy.changes) if remedy.changes else None)


def _untried(remedy: Remedy) -> Way[ShadeSpec]:
    return Way(remedy=remedy)


def _is_news(plan: ShadePlan, finding: Finding) -> bool:
    """Tell whether a stop comes of a room that could not answer before."""
    answered = getattr(plan, ANSWERED_BY[finding.id.partition(".")[0]])
    return finding.severity is Severity.STOP and answered is None
