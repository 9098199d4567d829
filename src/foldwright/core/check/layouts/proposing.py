"""The best layout of a shade and two others, each with what it trades."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from foldwright.core.check.layouts.column_cases import column_cases
from foldwright.core.check.layouts.in_the_way import typed_in_the_way
from foldwright.core.check.layouts.offers import Offer, Offers
from foldwright.core.check.layouts.rail import Rail, rail_of
from foldwright.core.check.layouts.ranking import Field, Place
from foldwright.core.check.layouts.row_cases import Band, band_of, row_cases
from foldwright.core.check.layouts.trading import Seen, tell_offer, tell_title
from foldwright.core.check.motif_checks import Motif, motif_of
from foldwright.core.check.review import Review
from foldwright.core.design.choices import Choices
from foldwright.core.design.laying_out import draw_layout
from foldwright.core.design.order import Order
from foldwright.core.facts.layout_taste import BEST, NEXT, OTHERS, Merit, Wish
from foldwright.core.why.finding import Change, Remedy
from foldwright.core.why.trying import as_typed

OFFERED_BESIDE = 2
SEARCHED = (
    "row_count",
    "skirt",
    "head_allowance",
    "fullness",
    "column_count",
    "edge_distance",
    "middle_piece",
)
"""The fields of the design that the search may type, where nobody has."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Terms:
    """What stays as it is while layouts are tried."""

    band: Band | None
    rail: Rail | None
    motif: Motif | None = None

    def field(self, order: Order) -> Field:
        """Lay out an order in every way."""
        return Field(
            order=order,
            rows=row_cases(order, self.band, self.motif),
            columns=column_cases(order),
            rail=self.rail,
        )

    def least_stops(self, order: Order) -> int:
        """Count the stops that no layout of an order is without."""
        tried = self.field(order)
        best = tried.first(BEST)
        return tried.value(Merit.STOPS, best) if best else 0


@dataclass(frozen=True, kw_only=True, slots=True)
class Found:
    """A layout found for a wish, and the design that gives it."""

    wish: Wish
    design: Choices
    seen: Seen


def propose_layouts(review: Review) -> Offers | None:
    """Search the layouts that what is typed leaves open, and offer the best and two others.

    Takes: the planned shade, with the rules it was planned by.

    Gives: the layouts; None while there is no size, or what is typed cannot be drawn at all.

    Holds for: columns, seams, rows, bands, motifs, brackets and cradles; every combination of
    what is tried is weighed, so none of them is better than the best.

    Source: derived here; the merits and their order are the house's.

    >>> import numpy as np
    >>> from foldwright.core.check.plan import ShadeSpec
    >>> from foldwright.core.check.planning import plan_shade
    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.facts.records import ShopList
    >>> from foldwright.core.measure.opening import AskedSize
    >>> from foldwright.core.quantity.length import Length
    >>> asked = AskedSize(width=Length.inches(48), drop=Length.inches(60), given_by="client")
    >>> shop, habits = ShopList(), house_habits()
    >>> spec = ShadeSpec(tag="A", asked=asked)
    >>> plan = plan_shade(spec, shop, habits, (), np.full((4, 16), 0.5))
    >>> offers = propose_layouts(Review(plan=plan, shop=shop, habits=habits, markets=()))
    >>> [offer.title for offer in offers.all]
    ['Best', "By the house's habits", 'Shorter stack']
    """
    order, plan = review.order, review.plan
    if order is None or plan.layout is None:
        return None
    terms = Terms(
        band=band_of(plan.spec.making),
        rail=rail_of(plan, review.habits),
        motif=motif_of(review),
    )
    field = terms.field(order)
    place = field.first(BEST)
    if place is None:
        return None
    best, own = _found(field, BEST, place), _found(field, BEST, Place(row=0, column=0))
    others = [_found(field, wish, other) for wish, other in _beside(field, place)]
    stops = best.seen.stops
    return Offers(
        best=_offer(order, best, own.seen),
        others=tuple(_offer(order, other, best.seen) for other in others),
        in_the_way=tuple(typed_in_the_way(order, stops, terms.least_stops)) if stops else (),
    )


def _beside(field: Field, best: Place) -> Iterator[tuple[Wish, Place]]:
    """Find others that gain in something and differ from all offered before; then the next best."""
    taken = [best]
    for wish in (*OTHERS, *(NEXT,) * OFFERED_BESIDE):
        among = field.gains(wish, best)
        if wish is NEXT:
            for one in taken:
                among = among & field.differs(one)
        place = field.first(wish, among)
        if place is not None and all(_differ(field, place, one) for one in taken):
            taken.append(place)
            yield wish, place
        if len(taken) > OFFERED_BESIDE:
            return


def _differ(field: Field, one: Place, other: Place) -> bool:
    return bool(field.differs(other)[one.row, one.column])


def _offer(order: Order, found: Found, against: Seen) -> Offer:
    sentence, figures = tell_offer(found.seen, against)
    way = Remedy(sentence=sentence, figures=figures, changes=_changes(order, found.design))
    title = tell_title(found.wish, found.seen, against)
    return Offer(title=title, way=way, layout=found.seen.layout)


def _found(field: Field, wish: Wish, place: Place) -> Found:
    """Draw a layout as the room of designs does once its changes are typed."""
    order, design = field.order, field.design(place)
    seen = Seen(
        layout=draw_layout(replace(order, design=design)),
        lock=field.rows[place.row].lock,
        motif_folded=field.rows[place.row].motif_folded,
        stops=field.value(Merit.STOPS, place),
        system=order.system,
    )
    return Found(wish=wish, design=design, seen=seen)


def _changes(order: Order, design: Choices) -> tuple[Change, ...]:
    return tuple(
        Change(path=f"design.{name}", text=as_typed(getattr(design, name), order.system))
        for name in SEARCHED
        if getattr(design, name) != getattr(order.design, name)
    )
