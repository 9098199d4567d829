"""Laws of the layout search: nothing tried is better, and what is shown is what is typed."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.core.layouts import BAR, BRACKET, answer, changed, cloth, inches, sized
from tests.core.searched import reviewed, shape
from tests.laws.test_layout_laws import DROPS, USABLE, WIDTHS, designs, lengths

from foldwright.core.check.layouts.column_cases import column_cases
from foldwright.core.check.layouts.offers import Offers
from foldwright.core.check.layouts.proposing import SEARCHED, propose_layouts
from foldwright.core.check.layouts.ranking import Field, Place
from foldwright.core.check.layouts.row_cases import row_cases
from foldwright.core.check.review import Review
from foldwright.core.design.choices import POUFED, Choices, StyleName
from foldwright.core.facts.layout_taste import BEST, OTHERS, Merit
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Severity
from foldwright.core.why.telling import fill

REPEATS = st.none() | lengths("3", "30")
FEW = settings(max_examples=25)  # each example is a search of its own
SWAGGED = POUFED | {StyleName.RELAXED, StyleName.AUSTRIAN}


PLAIN = Choices()


@st.composite
def reviews(draw: st.DrawFn, *, plain: bool = False) -> Review:
    """Draw shades laid out by themselves, with and without a pattern and a bar.

    Plain ones are flat, their columns left to the tool.
    """
    face = cloth(
        draw(USABLE), vertical_repeat=draw(REPEATS), horizontal_repeat=draw(st.none() | REPEATS)
    )
    chosen = draw(st.sampled_from([Chosen(face=face), Chosen(face=face, bar=BAR, bracket=BRACKET)]))
    design = draw(designs())
    if plain:
        design = replace(PLAIN, skirt=design.skirt, edge_distance=design.edge_distance)
    review = reviewed(design, sized(draw(WIDTHS), draw(DROPS)), chosen)
    assume(review.layout is not None)
    return review


def offers_of(review: Review) -> Offers:
    offers = propose_layouts(review)
    assert offers is not None
    return offers


def faults(review: Review, design: Choices, severity: Severity = Severity.STOP) -> int:
    assert review.size is not None
    found = answer(design, review.size, review.chosen).findings
    return sum(each.severity is severity for each in found)


def design_of(review: Review, number: int, offers: Offers) -> Choices:
    return changed(review.spec.design, "design", offers.all[number].way.changes)


@FEW
@given(reviews())
def test_the_best_has_never_more_stops_than_the_usual_layout(review: Review) -> None:
    best = design_of(review, 0, offers_of(review))
    assert faults(review, best) <= faults(review, review.spec.design)


@FEW
@given(reviews())
def test_what_is_typed_for_a_layout_gives_that_layout(review: Review) -> None:
    offers = offers_of(review)
    assert review.size is not None
    for number, offer in enumerate(offers.all):
        applied = answer(design_of(review, number, offers), review.size, review.chosen).result
        assert applied is not None
        assert shape(applied) == shape(offer.layout)
        assert offer.stands == (shape(applied) == shape(offer.layout) and not offer.way.changes)


@FEW
@given(reviews())
def test_what_is_typed_stays_typed(review: Review) -> None:
    typed = {name for name in SEARCHED if getattr(review.spec.design, name) is not None}
    offers = offers_of(review)
    touched = {change.path for offer in offers.all for change in offer.way.changes}
    assert touched <= {f"design.{name}" for name in set(SEARCHED) - typed}
    assert {change.text for offer in offers.all for change in offer.way.changes}.isdisjoint({""})


@FEW
@given(reviews(), st.data())
def test_the_search_counts_the_faults_that_the_rooms_find(
    review: Review, data: st.DataObject
) -> None:
    """Hold any layout that is tried against the room of designs itself."""
    assume(review.spec.design.style not in SWAGGED)
    order = review.order
    assert order is not None
    field = Field(order=order, rows=row_cases(order, None), columns=column_cases(order), rail=None)
    place = Place(
        row=data.draw(st.integers(0, field.shape[0] - 1)),
        column=data.draw(st.integers(0, field.shape[1] - 1)),
    )
    design = field.design(place)
    tube = review.chosen.bracket is not None  # the room of safety stops at the cord to the tube
    counted = field.value(Merit.STOPS, place) - (tube and field.rows[place.row].stops > 0)
    assert counted <= faults(review, design) <= field.value(Merit.STOPS, place)
    assert field.value(Merit.ASKS, place) <= faults(review, design, Severity.ASK)
    layout = answer(design, order.size, review.chosen).result
    assert layout is not None
    assert field.value(Merit.RINGS, place) == layout.rows.count.value * layout.columns.count.value
    assert field.value(Merit.STACK, place) == layout.stack.raised_size.value.nanometres


@FEW
@given(reviews(), st.data())
def test_no_layout_that_is_tried_comes_before_the_best(review: Review, data: st.DataObject) -> None:
    order = review.order
    assert order is not None
    field = Field(order=order, rows=row_cases(order, None), columns=column_cases(order), rail=None)
    best = field.first(BEST)
    assert best is not None
    other = Place(
        row=data.draw(st.integers(0, field.shape[0] - 1)),
        column=data.draw(st.integers(0, field.shape[1] - 1)),
    )
    ranked = [[field.value(merit, place) for merit in BEST.order] for place in (best, other)]
    assert ranked[0] <= ranked[1]


@FEW
@given(reviews())
def test_an_offer_beside_the_best_gains_what_it_is_named_for(review: Review) -> None:
    offers = offers_of(review)
    best = design_of(review, 0, offers)
    wishes = {wish.title: wish for wish in OTHERS}
    for number, offer in enumerate(offers.others, start=1):
        assert faults(review, design_of(review, number, offers)) <= faults(review, best)
        wish = wishes.get(offer.title)
        if wish is not None and wish.aim is Merit.COLUMNS:
            assert offer.layout.columns.count.value < offers.best.layout.columns.count.value
        if wish is not None and wish.aim is Merit.STACK:
            ours, theirs = offer.layout.stack.raised_size, offers.best.layout.stack.raised_size
            assert ours.value <= theirs.value - inches("3/4")


def _least(review: Review) -> tuple[int, ...]:
    order = review.order
    assert order is not None
    field = Field(order=order, rows=row_cases(order, None), columns=column_cases(order), rail=None)
    best = field.first(BEST)
    assert best is not None
    return tuple(field.value(merit, best) for merit in (Merit.STOPS, Merit.ASKS, Merit.WORK))


CAPS = st.sampled_from(["largest_row_spacing", "largest_pitch"])


@FEW
@given(reviews(plain=True), CAPS, lengths("5", "8"), lengths("5", "8"))
def test_a_larger_limit_never_makes_more_work(
    review: Review, name: str, one: Length, other: Length
) -> None:
    design, size = review.spec.design, review.size
    assert size is not None
    chosen = replace(review.chosen, bracket=None)
    tight, loose = (
        reviewed(replace(design, **{name: limit}), size, chosen) for limit in sorted((one, other))
    )
    assume(_system(tight) is _system(loose))  # what is tried lies on the marks of its units
    assert _least(loose) <= _least(tight)


def _system(review: Review) -> System:
    assert review.order is not None
    return review.order.system


@FEW
@given(reviews())
def test_a_typed_value_in_the_way_is_named_and_freed(review: Review) -> None:
    offers = offers_of(review)
    best = faults(review, design_of(review, 0, offers))
    for way in offers.in_the_way:
        freed = reviewed(
            changed(review.spec.design, "design", way.changes),
            *(each for each in (review.size,) if each is not None),
            review.chosen,
        )
        assert best > 0
        assert _least(freed)[0] < _least(review)[0]


@FEW
@given(reviews(), st.sampled_from(System))
def test_every_offer_can_be_told(review: Review, system: System) -> None:
    offers = offers_of(review)
    for way in (*(offer.way for offer in offers.all), *offers.in_the_way):
        text = fill(way.sentence, way.figures, system)
        assert "{" not in text
        assert text.endswith(".")
        assert all(f"{{{number}}}" in way.sentence for number in range(len(way.figures)))
