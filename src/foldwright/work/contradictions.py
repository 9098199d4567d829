"""What cannot both be true: faults that show only when two fields are seen together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from foldwright.core.design.choices import ONLY_FOR, Choices
from foldwright.core.why.fault import Fault
from foldwright.work.wording import is_blank, short

Table = dict[Any, Any]


@dataclass(frozen=True, kw_only=True, slots=True)
class Clash:
    """A field that has no meaning while another holds a certain word."""

    field: str
    other: str
    word: str
    what: str
    remedy: str


_INSIDE = {
    "other": "mount.place",
    "word": "inside",
    "what": "an inside mount has no overlap over the wall",
    "remedy": "Leave it out, or choose an outside mount.",
}
_CLASHES = (
    *(
        Clash(field=f"mount.{name}", **_INSIDE)
        for name in ("overlap_left", "overlap_right", "above", "below")
    ),
    Clash(
        field="mount.deduction",
        other="mount.place",
        word="outside",
        what="an outside mount has no deduction from the opening",
        remedy="Leave it out, or choose an inside mount.",
    ),
)


def faults_between_fields(shade: Table, where: str) -> Iterator[Fault]:
    """Give the contradictions within one shade as typed."""
    yield from _clashes(shade, where)
    yield from _of_another_style(shade, where)
    yield from _cord_and_tape(shade, where)
    yield from _returns_inside(shade, where)
    yield from _sill_cleared_without_sill(shade, where)


def faults_between_shades(tables: Iterable[tuple[str, Table]]) -> Iterator[Fault]:
    """Give each tag that was typed for more than one shade."""
    tags = [(where, str(shade.get("tag")).strip()) for where, shade in tables]
    count = Counter(tag for _, tag in tags)
    for where, tag in tags:
        if count[tag] > 1 and tag:
            yield Fault(
                where=f"{where}.tag",
                what=f"the tag “{short(tag)}” is used for {count[tag]} shades",
                remedy="Give each window its own tag.",
            )


def typed_at(shade: Table, path: str) -> object:
    """Give what was typed at a dotted path, or None.

    >>> typed_at({"mount": {"place": "inside"}}, "mount.place")
    'inside'
    """
    found: object = shade
    for key in path.split("."):
        found = found.get(key) if isinstance(found, dict) else None
    return None if is_blank(found) else found


def _clashes(shade: Table, where: str) -> Iterator[Fault]:
    for clash in _CLASHES:
        if typed_at(shade, clash.other) == clash.word and typed_at(shade, clash.field) is not None:
            yield Fault(where=f"{where}.{clash.field}", what=clash.what, remedy=clash.remedy)


def _of_another_style(shade: Table, where: str) -> Iterator[Fault]:
    """Find fields that only mean something in other styles than the one typed."""
    style = typed_at(shade, "design.style") or Choices().style.value
    for field, styles in ONLY_FOR.items():
        words, typed = sorted(each.value for each in styles), typed_at(shade, f"design.{field}")
        if typed is not None and typed is not False and style not in words:
            yield Fault(
                where=f"{where}.design.{field}",
                what=f"it belongs to other styles than {short(str(style))}: {', '.join(words)}",
                remedy="Leave it out, or choose such a style.",
            )


def _cord_and_tape(shade: Table, where: str) -> Iterator[Fault]:
    if typed_at(shade, "materials.cord") and typed_at(shade, "materials.tape"):
        yield Fault(
            where=f"{where}.materials.tape",
            what="a shade is lifted by cords or by tapes, and both are named",
            remedy="Leave one of the two out.",
        )


def _returns_inside(shade: Table, where: str) -> Iterator[Fault]:
    if typed_at(shade, "mount.place") == "inside" and typed_at(shade, "mount.returns") is True:
        yield Fault(
            where=f"{where}.mount.returns",
            what="a shade inside the opening has no returns to the wall",
            remedy="Leave it out, or choose an outside mount.",
        )


def _sill_cleared_without_sill(shade: Table, where: str) -> Iterator[Fault]:
    rule = typed_at(shade, "mount.height_rule")
    if typed_at(shade, "opening.sill") is False and rule == "clear sill":
        yield Fault(
            where=f"{where}.mount.height_rule",
            what="the window has no sill to clear",
            remedy="Take the other rule, or say that there is a sill.",
        )
