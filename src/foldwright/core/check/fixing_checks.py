"""Whether the board will hold: what it is fixed to, by how many, and how strong each is."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.choices import FixingPlace
from foldwright.core.check.drafting import draft
from foldwright.core.check.fixing_load import allowed_on_one, fixing_count, load_on_one
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.facts.order_limits import FIXING_FROM_END, RATED_SHARE
from foldwright.core.measure.opening import Substrate
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

N = Figure[float]

NO_SCREW = (Substrate.VINYL, Substrate.TILE, Substrate.FOAM)
MOST_FIXINGS = 12


def draft_fixing_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what keeps the board from holding; local codes come first."""
    yield from _no_screw(review)
    yield from _near_the_end(review)
    yield from _overloaded(review)


def _no_screw(review: Review) -> Iterator[Draft[ShadeSpec]]:
    ground = review.spec.opening.substrate
    if ground in NO_SCREW and review.spec.fixing.place is None:
        yield draft(
            Severity.STOP,
            "no-screw",
            "The board is to be fixed to {0}, in which no screw holds.",
            chosen("ground for the fixings", ground.value, Unit.WORD),
            ways=(
                by_change(
                    review.spec,
                    review.system,
                    "Fix it beside that, into wood, stud or masonry.",
                    fixing__place=FixingPlace.BESIDE,
                ),
                by_change(
                    review.spec,
                    review.system,
                    "Fix it through that, into what stands behind.",
                    fixing__place=FixingPlace.THROUGH,
                ),
                by_hand("Search for pipes and cables before drilling; local codes come first."),
            ),
            stage=Stage.MEASURE,
        )


def _near_the_end(review: Review) -> Iterator[Draft[ShadeSpec]]:
    typed = review.spec.fixing.from_end
    if typed is not None and typed < FIXING_FROM_END.value:
        inward = review.marked(FIXING_FROM_END.value, Rounding.CUT_OVERSIZE)
        sentence = "Fix it {0} from each end."
        yield draft(
            Severity.STOP,
            "fixing-near-end",
            "The outermost fixing stands {0} from the end of the board; nearer than {1} it splits.",
            chosen("fixing to the end", typed, Unit.LENGTH),
            FIXING_FROM_END,
            ways=(
                by_change(
                    review.spec, review.system, sentence, FIXING_FROM_END, fixing__from_end=inward
                ),
            ),
            stage=Stage.HEADRAIL,
        )


def _overloaded(review: Review) -> Iterator[Draft[ShadeSpec]]:
    load = load_on_one(review)
    if load is None:
        return
    if review.chosen.fixing is None:
        yield from _unchosen(review, load)
        return
    allowed = allowed_on_one(review, review.chosen.fixing)
    if allowed is None:
        yield _unrated(load)
    elif load.value > allowed.value:
        yield draft(
            Severity.STOP,
            "fixings-overloaded",
            "Each fixing carries up to {0}; {1} may be put on one of these.",
            load,
            allowed,
            ways=_stronger(review, load, allowed),
            stage=Stage.INSTALL,
            source=allowed.source,
        )


def _unchosen(review: Review, load: N) -> Iterator[Draft[ShadeSpec]]:
    rating = _rating(load)
    yield draft(
        Severity.NOTE,
        "fixings-unchosen",
        "Each of {1} fixings carries up to {0}, the pull of a hand included.",
        load,
        fixing_count(review),
        ways=(by_hand("Take screws into wood, or anchors rated for {0} each.", rating),),
        stage=Stage.INSTALL,
    )


def _unrated(load: N) -> Draft[ShadeSpec]:
    return draft(
        Severity.ASK,
        "fixing-unrated",
        "The sheet of the fixings does not say what one of them holds; each carries up to {0}.",
        load,
        ways=(by_hand("Ask for a rating of {0} or more, and write it down.", _rating(load)),),
        stage=Stage.INSTALL,
    )


def _rating(load: N) -> N:
    value = load.value / RATED_SHARE.value
    because = "The load {0}, of which an anchor takes {1} of its rating."
    return derived("rating wanted", value, Unit.FORCE, because, load, RATED_SHARE)


def _stronger(review: Review, load: N, allowed: N) -> Iterator[Way[ShadeSpec]]:
    yield from _more_fixings(review, allowed)
    for fixing in review.shop.fixings.values():
        holds = allowed_on_one(review, fixing)
        if holds is not None and holds.value >= load.value:
            sentence = f"Take “{fixing.name}”: {{0}} may be put on one."
            yield by_change(
                review.spec, review.system, sentence, holds, materials__fixing=fixing.name
            )
            break
    yield by_hand("Take anchors rated for {0} each.", _rating(load))


def _more_fixings(review: Review, allowed: N) -> Iterator[Way[ShadeSpec]]:
    for count in range(fixing_count(review).value + 1, MOST_FIXINGS + 1):
        number = chosen("fixings", count, Unit.COUNT)
        each = load_on_one(review, number)
        if each is not None and each.value <= allowed.value:
            sentence = "Use {0} fixings: each then carries up to {1}."
            yield by_change(review.spec, review.system, sentence, number, each, fixing__count=count)
            return
