"""Shades by hand for the tests of measure and design, and remedies applied as text."""

from __future__ import annotations

from dataclasses import fields, replace
from enum import Enum
from fractions import Fraction
from types import UnionType
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

from foldwright.core.design.choices import Choices
from foldwright.core.design.laying_out import lay_out
from foldwright.core.design.layout import Layout
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.markets import Market, edge_distance_floor, row_spacing_cap
from foldwright.core.facts.records import Bar, Board, Bracket, Chosen, Cloth, Rod
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize, Mount, Opening
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.answer import Answer
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Change, Finding, Severity
from foldwright.core.why.making import chosen as chosen_figure

Part = TypeVar("Part")

HABITS = house_habits()
US = (Market.UNITED_STATES,)


def inches(text: str) -> Length:
    """Read "35 7/16" exactly."""
    return Length.inches(sum(Fraction(part) for part in text.split()))


def habit(name: str, value: Length | float) -> Habits:
    """Give the house's habits with one changed."""
    return replace(HABITS, **{name: replace(getattr(HABITS, name), value=value)})


def cloth(usable: str = "54", **more: Any) -> Cloth:
    return Cloth(name="plain linen", areal_mass_kg_m2=0.27, usable_width=inches(usable), **more)


BOARD = Board(
    name="pine batten",
    thickness=inches("3/4"),
    depth=inches("1 1/2"),
    stiffness_pa=8.5e9,
    density_kg_m3=400,
)
BRACKET = Bracket(
    name="small end bracket",
    tube_deduction=inches("1"),
    width=inches("1/2"),
    inset=inches("1/2"),
    tube_centre_below_board=inches("1"),
    height=inches("2"),
    depth=inches("1 3/4"),
)
BAR = Bar(
    name="flat bar",
    line_mass_kg_m=0.5,
    width=inches("1"),
    thickness=inches("1/8"),
    stiffness_pa=68.9e9,
)
ROD = Rod(name="rib", line_mass_kg_m=0.03, diameter=inches("3/16"))


def sized(width: str | Length, drop: str | Length, **more: Any) -> FinishedSize:
    """Give a size that the client asked for, with more measured facts where told."""
    asked = AskedSize(width=_length(width), drop=_length(drop), given_by="the client")
    size = finished_size(Opening(), Mount(), asked, HABITS).result
    assert size is not None
    return replace(size, **more)


def _length(value: str | Length) -> Length:
    return inches(value) if isinstance(value, str) else value


def figure(name: str, text: str) -> Figure[Length]:
    return chosen_figure(name, inches(text), Unit.LENGTH)


def answer(
    design: Choices,
    size: FinishedSize,
    chosen: Chosen | None = None,
    *,
    habits: Habits = HABITS,
    cap: Figure[Length] | None = None,
) -> Answer[Layout]:
    """Lay a shade out for the United States, with a plain face cloth unless told otherwise."""
    return lay_out(
        design,
        size,
        Chosen(face=cloth()) if chosen is None else chosen,
        habits,
        cap or row_spacing_cap(US),
        edge_distance_floor(US),
    )


def laid_out(design: Choices, size: FinishedSize, *more: Any, **named: Any) -> Layout:
    layout = answer(design, size, *more, **named).result
    assert layout is not None
    return layout


def ids(findings: tuple[Finding, ...]) -> set[str]:
    return {finding.id for finding in findings}


def stops(findings: tuple[Finding, ...]) -> set[str]:
    return {finding.id for finding in findings if finding.severity is Severity.STOP}


def finding(findings: tuple[Finding, ...], name: str) -> Finding:
    return next(each for each in findings if each.id == name)


def changed(part: Part, name: str, changes: tuple[Change, ...]) -> Part:
    """Type the changes of a remedy into one part of the spec, reading their text anew."""
    own = [change for change in changes if change.path.startswith(f"{name}.")]
    values = {change.path.partition(".")[2]: change.text for change in own}
    return replace(part, **{field: _read(part, field, text) for field, text in values.items()})  # type: ignore[type-var]


def _read(part: Any, field: str, text: str) -> Any:
    if not text:
        return next(each.default for each in fields(part) if each.name == field)
    kind = _plain(get_type_hints(type(part))[field])
    if kind is Length:
        return read_length(text, System.INCH)
    if kind is bool:
        return {"true": True, "false": False}[text]
    return (
        next(each for each in kind if each.value == text) if issubclass(kind, Enum) else kind(text)
    )


def _plain(hint: Any) -> type[Any]:
    """Take the type out of `type | None`."""
    if get_origin(hint) in {Union, UnionType}:
        return next(each for each in get_args(hint) if each is not type(None))  # type: ignore[no-any-return]
    return hint  # type: ignore[no-any-return]
