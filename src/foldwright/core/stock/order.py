"""What must be cut, what it can be cut from, and the plan that comes out."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.quantity.length import ZERO, Length


@dataclass(frozen=True, kw_only=True, slots=True)
class Need:
    """So many pieces of one length."""

    name: str
    length: Length
    count: int = 1


@dataclass(frozen=True, kw_only=True, slots=True)
class StockLength:
    """A length that the supplier sells; `quantity` None is as many as wanted."""

    name: str
    length: Length
    cost: float
    quantity: int | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Offcut:
    """A piece on the rack: one of it, and paid for already."""

    name: str
    length: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class Saw:
    """What every cut takes: `kerf` at each cut, `trim` once off each fresh bar."""

    kerf: Length = ZERO
    trim: Length = ZERO


@dataclass(frozen=True, kw_only=True, slots=True)
class CutOrder:
    """One kind of material: what is needed and what there is."""

    needs: tuple[Need, ...]
    stock: tuple[StockLength, ...]
    rack: tuple[Offcut, ...] = ()
    saw: Saw = Saw()


@dataclass(frozen=True, kw_only=True, slots=True)
class Cut:
    """One piece on a bar, from the bar's marked end."""

    need: str
    start: Length
    length: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class Bar:
    """One bar, bought or from the rack, with its cuts in order and what is left."""

    name: str
    from_rack: bool
    length: Length
    cuts: tuple[Cut, ...]
    remainder: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class StockPlan:
    """Where every piece is cut, what is bought, and the proven least that could be paid.

    A plan is `cut_short` if the time ended or somebody cancelled while a cheaper plan was
    still sought.
    """

    bars: tuple[Bar, ...]
    cost: float
    least_cost: float  # no plan can cost less
    proven: bool  # the plan costs exactly that
    cut_short: bool = False
