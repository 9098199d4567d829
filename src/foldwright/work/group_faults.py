"""What is wrong with groups and boards: names that lead nowhere, shades in two of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any

from foldwright.core.why.fault import Fault
from foldwright.work.contradictions import typed_at
from foldwright.work.wording import short, suggestion

Table = dict[Any, Any]
Placed = list[tuple[str, Table]]
FEWEST = 2


def faults_of_groups(groups: Placed, shades: Placed, noun: str) -> Iterator[Fault]:
    """Give a fault for each of one shade, each tag that is no shade's, and each used twice."""
    tags = [str(typed_at(shade, "tag")) for _, shade in shades]
    used: Counter[str] = Counter()
    yield from _names_twice(groups, noun)
    for where, group in groups:
        typed = typed_at(group, "shades")
        listed = (
            [each for each in typed if isinstance(each, str)] if isinstance(typed, list) else []
        )
        if isinstance(typed, list) and len(typed) < FEWEST:
            yield Fault(
                where=f"{where}.shades",
                what=f"a {noun} holds two shades at least",
                remedy="Name the tags of its shades.",
            )
        yield from _unknown(where, listed, tags)
        used.update(listed)
        yield from _twice(where, listed, used, noun)


def _names_twice(groups: Placed, noun: str) -> Iterator[Fault]:
    count = Counter(str(typed_at(group, "name")) for _, group in groups)
    for where, group in groups:
        name = str(typed_at(group, "name"))
        if count[name] > 1:
            what = f"“{short(name)}” is the name of {count[name]} {noun}s"
            yield Fault(where=f"{where}.name", what=what, remedy=f"Give each {noun} its own name.")


def _unknown(where: str, listed: list[str], tags: list[str]) -> Iterator[Fault]:
    for tag in listed:
        if tag not in tags:
            yield Fault(
                where=f"{where}.shades",
                what=f"no shade has the tag “{short(tag)}”",
                remedy=suggestion(tag, tags, "Type the tags of shades of this job."),
            )


def _twice(where: str, listed: list[str], used: Counter[str], noun: str) -> Iterator[Fault]:
    for tag in dict.fromkeys(listed):
        if used[tag] > 1:
            yield Fault(
                where=f"{where}.shades",
                what=f"“{short(tag)}” is in a {noun} already",
                remedy="Leave it in one of them.",
            )
