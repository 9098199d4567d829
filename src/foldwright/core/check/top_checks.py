"""Whether the head of the shade holds on its board, where it is not stapled."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.fixing_load import pull_of_a_hand
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.design.layout import TapePlan
from foldwright.core.design.making import TopFixing
from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.panel_limits import TAPE_HOLDS
from foldwright.core.measure.opening import Face
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import derived, supplied
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]
N = Figure[float]


def draft_top_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what is wrong with a head that is held by tape."""
    tape = review.layout.tape if review.layout else None
    if tape is None:
        return
    yield from _too_heavy(review, tape)
    yield from _wider_than_board(review, tape)
    yield from _against_the_wall(review)


def load_on_tape(review: Review) -> N | None:
    """Work out what pulls at the tape with the shade fully down and a hand at the bar."""
    weights = review.plan.weights
    if weights is None:
        return None
    pull = pull_of_a_hand(review)
    return derived(
        "load on the tape",
        weights.total.value * GRAVITY.value + pull.value,
        Unit.FORCE,
        "The weight of {0}, all of it on the head when the cords hang slack, and a pull of {1}.",
        weights.total,
        pull,
    )


def load_allowed_on_tape(tape: TapePlan) -> N:
    """Tell what a tape may carry."""
    return derived(
        "load allowed on the tape",
        TAPE_HOLDS.value * tape.length.value.in_metres,
        Unit.FORCE,
        "{0} on each metre of {1}.",
        TAPE_HOLDS,
        tape.length,
    )


def _too_heavy(review: Review, tape: TapePlan) -> Iterator[Draft[ShadeSpec]]:
    load, allowed = load_on_tape(review), load_allowed_on_tape(tape)
    if load is not None and load.value > allowed.value:
        yield draft(
            Severity.STOP,
            "tape-overloaded",
            "The hook-and-loop tape at the head carries {0} with a hand at the bar; {1} may be put"
            " on it.",
            load,
            allowed,
            ways=(_staple(review), by_hand("Or staple through the tape as well.")),
            stage=Stage.ORDER,
        )


def _wider_than_board(review: Review, tape: TapePlan) -> Iterator[Draft[ShadeSpec]]:
    board = review.chosen.board
    if board is None or tape.width.value <= board.thickness:
        return
    yield draft(
        Severity.ASK,
        "tape-wider-than-board",
        "The tape is {0} wide, and the edge of the board that it goes on is {1}.",
        tape.width,
        supplied("thickness of the board", board.thickness, Unit.LENGTH, board.name),
        ways=(_staple(review), by_hand("Or choose a thicker board.")),
        stage=Stage.ORDER,
    )


def _against_the_wall(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a tape on the face of the board that lies against the wall."""
    if not review.outside or review.spec.mount.board_edge is Face.ROOM:
        return
    yield draft(
        Severity.ASK,
        "tape-against-wall",
        "The cloth leaves the board at its window edge, which lies against the wall: nobody gets at"
        " the tape there.",
        ways=(
            by_change(
                review.spec,
                review.system,
                "Let the cloth leave the room edge of the board.",
                mount__board_edge=Face.ROOM,
            ),
            _staple(review),
        ),
        stage=Stage.ORDER,
    )


def _staple(review: Review) -> Way[ShadeSpec]:
    return by_change(
        review.spec,
        review.system,
        "Staple the head over the board.",
        making__top=TopFixing.STAPLES,
    )
