"""What is offered to somebody who lays out a shade: the best layout and two others."""

from __future__ import annotations

from dataclasses import dataclass, field

from foldwright.core.design.layout import Layout
from foldwright.core.why.finding import Remedy


@dataclass(frozen=True, kw_only=True, slots=True)
class Offer:
    """One layout, what it trades in the words of the trade, and what to type for it."""

    title: str
    way: Remedy  # no changes: it stands so already
    layout: Layout

    @property
    def stands(self) -> bool:
        """Tell whether the shade is laid out so as it is."""
        return not self.way.changes


@dataclass(frozen=True, kw_only=True, slots=True)
class Offers:
    """The best layout, others that really differ, and what is typed that leaves none clean."""

    best: Offer
    others: tuple[Offer, ...] = field(default=())
    in_the_way: tuple[Remedy, ...] = field(default=())

    @property
    def all(self) -> tuple[Offer, ...]:
        """Give every layout offered, the best first."""
        return (self.best, *self.others)
