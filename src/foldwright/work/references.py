"""What one part of a job file says of another by name: rolls, neighbours, findings."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Any

from foldwright.core.check.catalogue.every import checks_by_finding
from foldwright.core.why.fault import Fault
from foldwright.work.contradictions import typed_at
from foldwright.work.wording import short, suggestion

Table = dict[Any, Any]
Placed = list[tuple[str, Table]]


def faults_of_references(shades: Placed, rolls: Placed) -> Iterator[Fault]:
    """Give a fault for each name that leads nowhere, and each roll that is named twice."""
    yield from _rolls_twice(rolls)
    names = [str(typed_at(roll, "name")) for _, roll in rolls]
    tags = [str(typed_at(shade, "tag")) for _, shade in shades]
    for where, shade in shades:
        yield from _roll(shade, where, names)
        yield from _neighbour(shade, where, tags)
        yield from _overrides(shade, where)


def _rolls_twice(rolls: Placed) -> Iterator[Fault]:
    count = Counter(str(typed_at(roll, "name")) for _, roll in rolls)
    for where, roll in rolls:
        name = str(typed_at(roll, "name"))
        if count[name] > 1:
            what = f"“{short(name)}” is the name of {count[name]} rolls"
            yield Fault(where=f"{where}.name", what=what, remedy="Give each roll its own name.")


def _roll(shade: Table, where: str, names: Iterable[str]) -> Iterator[Fault]:
    name = typed_at(shade, "cutting.roll")
    if isinstance(name, str) and name not in names:
        yield Fault(
            where=f"{where}.cutting.roll",
            what=f"no roll in hand is called “{short(name)}”",
            remedy=suggestion(name, names, "List it under [[rolls]], or leave this out."),
        )


def _neighbour(shade: Table, where: str, tags: Iterable[str]) -> Iterator[Fault]:
    tag = typed_at(shade, "beside")
    others = [each for each in tags if each != typed_at(shade, "tag")]
    if isinstance(tag, str) and tag not in others:
        yield Fault(
            where=f"{where}.beside",
            what=f"no other shade has the tag “{short(tag)}”",
            remedy=suggestion(tag, others, "Type the tag of the shade that hangs beside it."),
        )


def _overrides(shade: Table, where: str) -> Iterator[Fault]:
    typed = typed_at(shade, "overrides")
    for number, override in enumerate(typed if isinstance(typed, list) else [], start=1):
        name = typed_at(override, "finding") if isinstance(override, dict) else None
        if isinstance(name, str) and name not in checks_by_finding():
            otherwise = "Copy the name from the finding; docs/guide/checks.md lists them all."
            yield Fault(
                where=f"{where}.overrides.{number}.finding",
                what=f"no finding is called “{short(name)}”",
                remedy=suggestion(name, checks_by_finding(), otherwise),
            )
