"""Findings that a job file never reaches, since it is refused or asked about earlier, by room."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Generic, TypeVar

from tests.core.layouts import HABITS, answer, changed, sized
from tests.core.lift.bench import Shade, made_of
from tests.core.weigh.shade import BAR, PARTS, weighed

from foldwright.core.design.choices import Choices, RodPlace, StyleName
from foldwright.core.facts.records import Chosen
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize, HeightRule, Mount, MountPlace, Opening
from foldwright.core.quantity.length import Length
from foldwright.core.rig.cradles import cradle_findings
from foldwright.core.rig.example import BALANCE, CORD, TUBE
from foldwright.core.rig.example import PARTS as RAIL
from foldwright.core.rig.missing import missing_parts
from foldwright.core.why.finding import Finding, Remedy

Given = TypeVar("Given")
SIZE = sized("40", "60")


@dataclass(frozen=True, kw_only=True)
class OfRoom(Generic[Given]):
    """What a room is given when it finds something, and when it finds nothing."""

    judge: Callable[[Given], Iterable[Finding]]
    spoilt: Given
    sound: Given
    mend: Callable[[Given, Remedy], Given] | None = None


def _mount(place: MountPlace, **typed: object) -> OfRoom[Mount]:
    sound = Mount(place=place, height_rule=HeightRule.COVER_SILL)
    asked = AskedSize(width=Length.mm(900), drop=Length.mm(1200), given_by="the client")
    return OfRoom(
        judge=lambda mount: finished_size(Opening(sill=True), mount, asked, HABITS).findings,
        spoilt=replace(sound, **typed),  # type: ignore[arg-type]
        sound=sound,
        mend=lambda mount, remedy: changed(mount, "mount", remedy.changes),
    )


def _design(style: StyleName = StyleName.FLAT, **typed: object) -> OfRoom[Choices]:
    return OfRoom(
        judge=lambda design: answer(design, SIZE).findings,
        spoilt=Choices(style=style, **typed),  # type: ignore[arg-type]
        sound=Choices(style=style),
        mend=lambda design, remedy: changed(design, "design", remedy.changes),
    )


def _scale(spoilt: tuple[Choices, Chosen]) -> OfRoom[tuple[Choices, Chosen]]:
    return OfRoom(
        judge=lambda made: weighed(*made).findings, spoilt=spoilt, sound=(Choices(), PARTS)
    )


def _rail(spoilt: Chosen, kind: LiftKind | None = LiftKind.SPRING) -> OfRoom[Chosen]:
    sound = Chosen(tube=TUBE, cord=CORD)
    return OfRoom(
        judge=lambda chosen: missing_parts(
            chosen, LiftChoices(kind=kind if chosen is spoilt else LiftKind.SPRING)
        ),
        spoilt=spoilt,
        sound=sound,
    )


INSIDE, OUTSIDE, AN_INCH = MountPlace.INSIDE, MountPlace.OUTSIDE, Length.inches(1)

OF_ROOMS: dict[str, OfRoom] = {  # type: ignore[type-arg] - each is given something else
    "measure.above-clash": _mount(INSIDE, above=AN_INCH),
    "measure.below-clash": _mount(INSIDE, below=AN_INCH),
    "measure.deduction-clash": _mount(OUTSIDE, deduction=AN_INCH),
    "measure.overlap-left-clash": _mount(INSIDE, overlap_left=AN_INCH),
    "measure.overlap-right-clash": _mount(INSIDE, overlap_right=AN_INCH),
    "measure.returns-clash": _mount(INSIDE, returns=True),
    "design.columns-too-few": _design(column_count=1),
    "design.fullness-on-flat": _design(fullness=1.5),
    "design.fullness-under-one": _design(StyleName.LOOPED, fullness=0.8),
    "design.width-fullness-under-one": _design(StyleName.GATHERED, width_fullness=0.8),
    "design.rows-too-few": _design(row_count=0),
    "design.shrinkage": _design(shrinkage=-0.01),
    "weigh.face": _scale((Choices(), replace(PARTS, face=None))),
    "weigh.impossible": _scale((Choices(), replace(PARTS, bar=replace(BAR, line_mass_kg_m=-9.0)))),
    "weigh.rod": _scale((Choices(rods=RodPlace.ROWS), replace(PARTS, rod=None))),
    "lift.cord-and-tape": OfRoom(
        judge=lambda shade: shade.answer.findings,
        spoilt=made_of(tape="tape"),
        sound=Shade(),
        mend=lambda shade, remedy: shade.applied(remedy),
    ),
    "rig.choose-cord": _rail(Chosen(tube=TUBE)),
    "rig.choose-lift": _rail(Chosen(tube=TUBE, cord=CORD), kind=None),
    "rig.choose-tube": _rail(Chosen(cord=CORD)),
    "rig.no-room-for-cradle": OfRoom(
        judge=lambda balance: cradle_findings(balance, RAIL.place, (), HABITS),
        spoilt=replace(BALANCE, tube_sag=RAIL.offset),
        sound=BALANCE,
    ),
}
