"""What one fixing of the board carries, and what may be put on it."""

from __future__ import annotations

from math import ceil

from foldwright.core.check.review import Review
from foldwright.core.facts.balancing import FIXING_SPACING
from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.order_limits import (
    FRAME_GRAVITY,
    INNER_FIXING_SHARE,
    RATED_SHARE,
    WITHDRAWAL,
)
from foldwright.core.facts.records import Board, Fixing, Tube
from foldwright.core.lift.choices import LiftKind
from foldwright.core.measure.opening import Substrate
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, supplied

N = Figure[float]

FEWEST = 2


def fixing_count(review: Review) -> Figure[int]:
    """Tell how many fixings hold the board: as typed, else as many as the trade puts."""
    typed = review.spec.fixing.count
    if typed is not None or review.size is None:
        return chosen("fixings", typed or FEWEST, Unit.COUNT)
    board = review.size.board_length
    count = max(FEWEST, ceil(board.value / FIXING_SPACING.value) + 1)
    because = "One near each end of the board {0}, and no two farther apart than {1}."
    return derived("fixings", count, Unit.COUNT, because, board, FIXING_SPACING)


def load_on_one(review: Review, count: Figure[int] | None = None) -> N | None:
    """Work out what the busiest fixing carries, the pull of a hand included."""
    hung = _hung(review)
    if hung is None:
        return None
    number = count or fixing_count(review)
    if number.value <= FEWEST:
        value = hung.value / number.value
        because = "{0} shared by {1} fixings."
        return derived("load on one fixing", value, Unit.FORCE, because, hung, number)
    bays = number.value - 1
    return derived(
        "load on one fixing",
        min(1.0, INNER_FIXING_SHARE.value / bays) * hung.value,
        Unit.FORCE,
        "{0} on {1} fixings: the busiest carries {2} bays of it.",
        hung,
        number,
        INNER_FIXING_SHARE,
    )


def allowed_on_one(review: Review, fixing: Fixing) -> N | None:
    """Tell what may be put on one fixing, or None where its sheet does not say."""
    in_wood = review.spec.opening.substrate is Substrate.WOOD
    if in_wood and fixing.shank is not None and fixing.thread is not None:
        return _withdrawal(fixing.name, fixing.shank, fixing.thread)
    if fixing.rated_load_n is None:
        return None
    rated = supplied("rated load of a fixing", fixing.rated_load_n, Unit.FORCE, fixing.name)
    return derived(
        "load allowed on one fixing",
        rated.value * RATED_SHARE.value,
        Unit.FORCE,
        "{1} of the rated {0}.",
        rated,
        RATED_SHARE,
    )


def withdrawal_n(gravity: float, shank_m: float, thread_m: float) -> float:
    """Work out what a wood screw may carry, pulled straight out of side grain."""
    return WITHDRAWAL.value * gravity**2 * shank_m * thread_m


def _withdrawal(name: str, shank: Length, thread: Length) -> N:
    value = withdrawal_n(FRAME_GRAVITY.value, shank.in_metres, thread.in_metres)
    return derived(
        "load allowed on one fixing",
        value,
        Unit.FORCE,
        "A shank of {0} with {1} of thread, in wood of specific gravity {2}, at {3}.",
        supplied("shank of the screw", shank, Unit.LENGTH, name),
        supplied("thread in the wood", thread, Unit.LENGTH, name),
        FRAME_GRAVITY,
        WITHDRAWAL,
        source=WITHDRAWAL.source,
    )


def _hung(review: Review) -> N | None:
    """Add up what hangs from the fixings; None until shade and board are known."""
    weights, board, size = review.plan.weights, review.chosen.board, review.size
    if weights is None or board is None or size is None:
        return None
    tube = review.chosen.tube
    parts = [weights.total, *weights.beside, _board_mass(board, size.board_length)]
    if tube is not None:
        parts.append(_tube_mass(tube, size.board_length))
    pull = pull_of_a_hand(review)
    slots = ", ".join(f"{{{number}}}" for number in range(len(parts)))
    return derived(
        "load on the fixings",
        sum(part.value for part in parts) * GRAVITY.value + pull.value,
        Unit.FORCE,
        f"The weight of {slots}, and a pull of {{{len(parts)}}}.",
        *parts,
        pull,
    )


def _board_mass(board: Board, length: Figure[Length]) -> N:
    section = board.thickness.in_metres * board.depth.in_metres
    mass = section * length.value.in_metres * board.density_kg_m3
    depth = supplied("board depth", board.depth, Unit.LENGTH, board.name)
    because = "A board {0} deep and {1} long."
    return derived("mass of the board", mass, Unit.MASS, because, depth, length)


def _tube_mass(tube: Tube, length: Figure[Length]) -> N:
    each = supplied("mass of the tube per metre", tube.line_mass_kg_m, Unit.LINE_MASS, tube.name)
    mass = tube.line_mass_kg_m * length.value.in_metres
    because = "{0} along the board {1}, a little more than the tube is long."
    return derived("mass of the tube", mass, Unit.MASS, because, each, length)


def pull_of_a_hand(review: Review) -> N:
    """Tell how hard a hand may pull at the bar; a motor is not pulled at."""
    if review.spec.lift.kind is LiftKind.MOTOR:
        because = "A motor is not pulled at."
        return derived("pull of a hand", 0.0, Unit.FORCE, because)
    return review.habits.hand_force_limit_n
