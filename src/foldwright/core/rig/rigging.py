"""From the balance to a headrail that can be cut, marked, wound and tested."""

from __future__ import annotations

from foldwright.core.design.layout import Layout
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Chosen, Clutch, Motor, ShopList, Spring
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import Mount
from foldwright.core.quantity.length import Length
from foldwright.core.rig import clips, fits, lean, release, room, stops
from foldwright.core.rig import wraps as winding
from foldwright.core.rig.adjusting import adjustment_table
from foldwright.core.rig.bench import bench_steps
from foldwright.core.rig.cradles import cradle_findings, place_cradles
from foldwright.core.rig.headrail import Headrail
from foldwright.core.rig.missing import missing_parts
from foldwright.core.rig.order import Order
from foldwright.core.rig.parts import Parts
from foldwright.core.rig.sides import drive_end, end_findings, unread_hand
from foldwright.core.rig.tube import place_tube
from foldwright.core.weigh.load import Weights
from foldwright.core.why.answer import Answer
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding
from foldwright.core.why.making import chosen as chosen_figure

L = Figure[Length]
N = Figure[float]


def rig_headrail(  # noqa: PLR0913, PLR0917 - one argument from each room before this one
    mount: Mount,
    size: FinishedSize,
    layout: Layout,
    balance: Balance,
    weights: Weights,
    chosen: Chosen,
    choices: LiftChoices,
    habits: Habits,
    shop: ShopList | None = None,
) -> Answer[Headrail]:
    """Work out every cut, mark, turn and check of the headrail.

    Takes: the mount; the finished size; the layout; the balance; the weights; the records
    chosen; the lift as chosen; the shop's habits; the shop's list, in which the spring's
    hand and the least tube length of spring or motor are looked up.

    Gives: the headrail, or None with questions while bracket, tube, cord or kind of lift is
    missing; findings where parts do not go together.

    Holds for: one tube along a straight board.

    Source: common practice and derived here, as each figure says.

    >>> from foldwright.core.rig import example
    >>> answer = rig_headrail(
    ...     Mount(), example.SIZE, example.LAYOUT, example.BALANCE, example.WEIGHTS,
    ...     example.CHOSEN, example.LIFT, example.ORDER.habits, example.SHOP,
    ... )
    >>> answer.result.spring_side.value, len(answer.result.steps)
    ('right', 18)
    """
    line = chosen.cord or chosen.tape
    if chosen.bracket is None or chosen.tube is None or line is None or choices.kind is None:
        return Answer(result=None, findings=missing_parts(chosen, choices))
    order = Order(
        mount=mount,
        size=size,
        layout=layout,
        balance=balance,
        weights=weights,
        choices=choices,
        habits=habits,
        kind=choices.kind,
        bracket=chosen.bracket,
        tube=chosen.tube,
        line=line,
        board=chosen.board,
        drive=_drive(choices, shop or ShopList()),
    )
    parts = put_together(order)
    return Answer(result=_headrail(order, parts), findings=_findings(order, parts))


def _drive(choices: LiftChoices, shop: ShopList) -> Spring | Clutch | Motor | None:
    if choices.kind is LiftKind.SPRING:
        return shop.springs.get(choices.spring)
    if choices.kind is LiftKind.CLUTCH:
        return shop.clutches.get(choices.clutch)
    return shop.motors.get(choices.motor)


def pretension_turns(balance: Balance, choices: LiftChoices) -> N | None:
    """Give the turns to wind at the up-stop.

    Takes: the balance; the lift, with turns where the maker has some in mind.

    Gives: the turns in mind, else those recommended; None without a spring, or where
    nothing fits.

    Source: derived here.

    >>> from foldwright.core.rig.example import BALANCE, LIFT
    >>> pretension_turns(BALANCE, LIFT).value
    11.0
    """
    if choices.kind is not LiftKind.SPRING:
        return None
    if choices.turns is not None:
        return chosen_figure("turns at the up-stop", choices.turns, Unit.TURN)
    return balance.window.recommended_turns if balance.window else None


def put_together(order: Order) -> Parts:
    """Put the headrail together, in the order in which one thing fixes the next.

    Takes: everything it is made from.

    Gives: its parts, before steps and adjustments are written down.

    Source: common practice and derived here, as each figure says.

    >>> from foldwright.core.rig.example import ORDER
    >>> round(put_together(ORDER).wraps.walk.value.in_millimetres)
    16
    """
    size, layout, habits = order.size, order.layout, order.habits
    end = drive_end(order.mount, order.kind, order.choices.spring, order.hand)
    place = place_tube(size, order.bracket, order.clutch, end.side)
    depth = winding.tube_below_top(order.bracket)
    wraps = winding.count_wraps(order.tube, order.line, order.balance.travel_turns, habits)
    columns = clips.columns_on_tube(layout.columns, place)
    free = clips.room_for_clips(columns, layout.columns.pitch, place, habits)
    offset = clips.clip_offset(wraps, free, habits)
    cut = winding.cut_length(wraps, size, layout, depth, habits)
    lines = clips.cord_lines(columns, offset, wraps, cut)
    taken = tuple(clips.stretch_taken(line, wraps, habits) for line in lines)
    travel = stops.raise_to_stop(layout, order.choices)
    stop = stops.up_stop(size, layout, travel)
    return Parts(
        tape=order.layout.tape,
        cloth_edge=order.mount.board_edge,
        kind=order.kind,
        size=size,
        board=order.board,
        choices=order.choices,
        balance=order.balance,
        habits=habits,
        place=place,
        cradles=place_cradles(order.balance, place, taken, order.bracket, habits),
        end=end,
        wraps=wraps,
        depth=depth,
        room=free,
        offset=offset,
        lines=lines,
        taken=taken,
        pretension=pretension_turns(order.balance, order.choices),
        travel=travel,
        up_stop=stop,
        hem_at_stop=stops.hem_at_stop(stop, layout),
        top_ring=stops.top_ring_at_stop(stop, layout, stops.stacked_pitch(order.weights)),
        lowest_lock=release.lowest_lock_position(order.balance, size, order.choices, habits),
        release=release.release_travel(order.balance, order.choices, habits),
        handle=stops.handle_position(size),
    )


def _served(order: Order, parts: Parts) -> L | None:
    if parts.wraps.is_tape:
        return None
    return room.longest_drop(parts.wraps, order.tube, order.size, parts.travel, order.habits)


def _lean(order: Order, parts: Parts) -> N | None:
    """Give the lean of the cords; a tape does not lean, and a ring at the tube has no fall."""
    free = lean.fall(parts.depth, order.layout.rows.top_panel, parts.top_ring)
    if parts.wraps.is_tape or free is None:
        return None
    return lean.greatest_lean(parts.offset, parts.wraps, free)


def _findings(order: Order, parts: Parts) -> tuple[Finding, ...]:
    return (
        *end_findings(order.mount, parts.end, order.hand),
        *unread_hand(order.hand_as_written, order.choices.spring),
        *_findings_on_tube(order, parts),
        *fits.too_short_for(parts.place, order.drive),
        *fits.overloaded(parts.place, order.tube, order.balance, order.bracket),
        *fits.fouls_the_board(order.bracket, order.tube, order.board),
        *_findings_at_stops(order, parts),
    )


def _findings_on_tube(order: Order, parts: Parts) -> tuple[Finding, ...]:
    columns, wraps, habits = order.layout.columns, parts.wraps, order.habits
    return (
        *cradle_findings(order.balance, parts.place, parts.cradles, habits),
        *winding.too_few_safety_wraps(wraps),
        *room.at_the_bracket(columns, parts.taken, parts.place),
        *room.between_columns(columns, order.size, wraps, parts.room, habits),
        *room.beyond_the_tube(wraps, order.tube, _served(order, parts), habits),
    )


def _findings_at_stops(order: Order, parts: Parts) -> tuple[Finding, ...]:
    at_sill = release.release_findings(order.size, parts.lowest_lock, parts.release, order.choices)
    at_rail = stops.rings_at_the_rail(
        parts.top_ring, parts.travel, order.bracket, order.choices, order.habits
    )
    return (*at_sill, *at_rail)


def _headrail(order: Order, parts: Parts) -> Headrail:
    return Headrail(
        board_length=parts.size.board_length,
        board_depth=winding.board_depth(order.board),
        tube_cut=parts.place.cut,
        tube_start=parts.place.start,
        bracket_marks=parts.place.bracket_marks,
        cradle_marks=parts.cradles,
        spring_side=parts.end.side_figure,
        wind_direction=parts.end.raising_figure,
        cord_side=parts.end.cord_side,
        lines=parts.lines,
        safety_wraps=parts.wraps.safety,
        travel_wraps=parts.wraps.travel,
        walk=parts.wraps.walk,
        greatest_lean=_lean(order, parts),
        longest_drop=_served(order, parts),
        lowest_lock_position=parts.lowest_lock,
        release_travel=parts.release,
        up_stop=parts.up_stop,
        hem_at_stop=parts.hem_at_stop,
        pretension_turns=parts.pretension,
        handle=parts.handle,
        adjustments=adjustment_table(parts),
        steps=bench_steps(parts),
    )
