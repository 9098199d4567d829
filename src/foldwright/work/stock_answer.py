"""The cuts from stock as they are answered: whole millimetres, bar by bar in cutting order."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from foldwright.core.facts.records import RackPiece
from foldwright.core.quantity.length import Length
from foldwright.core.stock.order import Bar, StockPlan
from foldwright.core.why.fault import Fault
from foldwright.work.job import JobHead, JobPlan
from foldwright.work.stock import MaterialCut, rack_after, whole_millimetres


@dataclass(frozen=True, kw_only=True, slots=True)
class PartAnswer:
    """One part that is needed."""

    piece: str
    length_mm: int


@dataclass(frozen=True, kw_only=True, slots=True)
class CutAnswer:
    """One part on its bar, from the bar's marked end."""

    piece: str
    start_mm: int
    length_mm: int


@dataclass(frozen=True, kw_only=True, slots=True)
class BarAnswer:
    """One bar with its cuts in order, and what is left of it."""

    bar: str
    from_rack: bool
    length_mm: int
    cuts: tuple[CutAnswer, ...]
    remainder_mm: int


@dataclass(frozen=True, kw_only=True, slots=True)
class BoughtAnswer:
    """So many bars of one length to buy."""

    bar: str
    count: int
    length_mm: int


@dataclass(frozen=True, kw_only=True, slots=True)
class MaterialAnswer:
    """One material: what it must give, how it is cut, what is bought, and the proof."""

    material: str
    needed: tuple[PartAnswer, ...]
    bars: tuple[BarAnswer, ...]
    bought: tuple[BoughtAnswer, ...]
    cost: float | None  # in the shop's money; metres where no price is listed; None: no plan
    least_cost: float | None  # no plan can cost less
    proven: bool
    cut_short: bool  # the search for a cheaper plan was ended
    said: str  # the cost and the proof in words; empty without a plan
    priced: bool
    faults: tuple[Fault, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class RackAnswer:
    """One offcut on the rack after the job."""

    name: str
    material: str
    length_mm: int


@dataclass(frozen=True, kw_only=True, slots=True)
class StockAnswer:
    """What a job cuts from stock lengths, and the rack after it; lengths in whole mm."""

    program_version: str
    job: JobHead
    materials: tuple[MaterialAnswer, ...]
    rack_after: tuple[RackAnswer, ...]


def stock_answer(cuts: tuple[MaterialCut, ...], plan: JobPlan, version: str) -> StockAnswer:
    """Put the cuts of a job into the shape in which they are answered."""
    return StockAnswer(
        program_version=version,
        job=plan.job.head,
        materials=tuple(_material(cut) for cut in cuts),
        rack_after=tuple(_racked(piece) for piece in rack_after(cuts, plan)),
    )


def _material(cut: MaterialCut) -> MaterialAnswer:
    plan = cut.plan
    return MaterialAnswer(
        material=cut.material,
        needed=tuple(
            PartAnswer(piece=part.name, length_mm=_mm(whole_millimetres(part)))
            for part in cut.parts
        ),
        bars=tuple(_bar(bar) for bar in plan.bars) if plan else (),
        bought=bought_in(plan) if plan else (),
        cost=plan.cost if plan else None,
        least_cost=plan.least_cost if plan else None,
        proven=plan.proven if plan else False,
        cut_short=plan.cut_short if plan else False,
        said=cut.said,
        priced=cut.priced,
        faults=cut.faults,
    )


def _bar(bar: Bar) -> BarAnswer:
    return BarAnswer(
        bar=bar.name,
        from_rack=bar.from_rack,
        length_mm=_mm(bar.length),
        cuts=tuple(
            CutAnswer(piece=cut.need, start_mm=_mm(cut.start), length_mm=_mm(cut.length))
            for cut in bar.cuts
        ),
        remainder_mm=_mm(bar.remainder),
    )


def bought_in(plan: StockPlan) -> tuple[BoughtAnswer, ...]:
    """Count the bars to buy, by their kinds."""
    count = Counter((bar.name, bar.length) for bar in plan.bars if not bar.from_rack)
    return tuple(
        BoughtAnswer(bar=name, count=number, length_mm=_mm(length))
        for (name, length), number in count.items()
    )


def _racked(piece: RackPiece) -> RackAnswer:
    return RackAnswer(name=piece.name, material=piece.material, length_mm=_mm(piece.length))


def _mm(length: Length) -> int:
    return round(length.in_millimetres)
