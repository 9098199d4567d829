"""A planned job as orders of cloth to cut: one for each cloth, or for each roll that is named."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from foldwright.core.check.plan import ShadePlan
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.cloth.order import (
    Buying,
    ClothOrder,
    ClothPiece,
    Flaw,
    Pattern,
    RemnantUse,
    Roll,
    Seam,
)
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Cloth
from foldwright.core.pieces.layers import COVER, FACE, ShadeToCut, cut_pieces
from foldwright.core.pieces.matching import Matching
from foldwright.core.pieces.piece import PieceToCut, ShadePieces
from foldwright.core.pieces.yardage import WidthsToCut, Yardage, order_cloth, steps_of_the_drop
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.printing import USUAL_MARK, print_length, round_length
from foldwright.core.quantity.rounding import Rounding, System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived
from foldwright.work.boards import hang_boards
from foldwright.work.job import Job, JobPlan
from foldwright.work.measured import rolls_of

L = Figure[Length]
TENTH = Length.mm("0.1")
ACROSS = Length.mm(1)  # so much may the pattern be off at the far edge


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothToCut:
    """One cloth of a job: its pieces with their whys, the order, and the trade's own estimate."""

    cloth: Cloth
    pieces: tuple[PieceToCut, ...]
    order: ClothOrder
    yardage: Yardage
    remarks: tuple[str, ...] = ()  # what was taken for granted
    asked_turned: tuple[str, ...] = ()  # the tags of shades whose face is to lie across the roll
    otherwise: tuple[ClothToCut, ...] = ()  # the same with board covers beside wider pieces
    system: System = System.METRIC  # of who reads what is wrong

    @property
    def in_hand(self) -> bool:
        """Tell whether it is cut from rolls in hand."""
        return bool(self.order.rolls)

    @property
    def title(self) -> str:
        """Give the cloth, and the roll where its shades name one."""
        return self.cloth.name


@dataclass(frozen=True, kw_only=True, slots=True)
class _Shade:
    """A shade of the job with its pieces."""

    plan: ShadePlan
    pieces: ShadePieces

    @property
    def room(self) -> str:
        """Give its room; a shade without one is a room by itself."""
        return self.plan.spec.room.strip() or self.plan.spec.tag


def cloths_to_cut(plan: JobPlan) -> tuple[ClothToCut, ...]:
    """Give every cloth of a planned job with its pieces and its order.

    Takes: the planned job, as measured.

    Gives: the cloths in the order in which the job first asks for them; pieces of shades
    that name a roll are cut from it alone.
    """
    cut = [_Shade(plan=each, pieces=cut_pieces(to_cut)) for each, to_cut in _ready(plan)]
    ways = [_cloths(plan, covers_beside(cut, plan.job, alone=alone)) for alone in (True, False)]
    return tuple(
        replace(cloth, otherwise=tuple(_other_ways(cloth, others)))
        for cloth, *others in zip(_cloths(plan, cut), *ways, strict=True)
    )


def _other_ways(cloth: ClothToCut, others: list[ClothToCut]) -> Iterator[ClothToCut]:
    """Give the other ways that differ; the estimate does not know how a cover will lie."""
    for other in others:
        if other.order != cloth.order:
            yield replace(other, yardage=cloth.yardage)


def _cloths(plan: JobPlan, shades: list[_Shade]) -> tuple[ClothToCut, ...]:
    asked = dict.fromkeys(
        (piece.cloth, shade.plan.spec.cutting.roll if piece.layer == FACE else "")
        for shade in shades
        for piece in shade.pieces.pieces
    )
    return tuple(_cloth(plan, shades, name, roll) for name, roll in asked)


def covers_beside(shades: list[_Shade], job: Job, *, alone: bool) -> list[_Shade]:
    """Turn each board cover that fits into the strip beside a wider piece, one beside each.

    `alone` uses only strips that are too narrow for any other layer.
    """
    layers = [piece for shade in shades for piece in shade.pieces.pieces if piece.layer != COVER]
    hosts = [piece for piece in layers if not alone or _stands_alone(piece, layers, job)]
    covers = [piece for shade in shades for piece in shade.pieces.pieces if piece.layer == COVER]
    turned = {}
    for cover in sorted(covers, key=lambda piece: piece.width.value, reverse=True):
        usable = job.shop.cloths[cover.cloth].usable_width
        host = next((each for each in hosts if _has_room(each, cover, usable)), None)
        if host is not None:
            hosts.remove(host)
            turned[cover.name] = replace(cover, width=cover.length, length=cover.width)
    return [_with_covers(shade, turned) for shade in shades]


def _stands_alone(piece: PieceToCut, layers: list[PieceToCut], job: Job) -> bool:
    beside = job.shop.cloths[piece.cloth].usable_width - piece.width.value
    others = (each for each in layers if each is not piece and each.cloth == piece.cloth)
    return all(other.width.value > beside for other in others)


def _has_room(host: PieceToCut, cover: PieceToCut, usable: Length) -> bool:
    beside = usable - host.width.value
    same = host.cloth == cover.cloth
    return same and beside >= cover.length.value and host.length.value >= cover.width.value


def _with_covers(shade: _Shade, turned: dict[str, PieceToCut]) -> _Shade:
    pieces = tuple(turned.get(piece.name, piece) for piece in shade.pieces.pieces)
    return replace(shade, pieces=replace(shade.pieces, pieces=pieces))


def _ready(plan: JobPlan) -> Iterator[tuple[ShadePlan, ShadeToCut]]:
    shared = shared_boards(plan)
    for shade in plan.shades:
        if shade.layout is not None and shade.size is not None:
            yield (
                shade,
                ShadeToCut(
                    tag=shade.spec.tag,
                    layout=shade.layout,
                    size=shade.size,
                    chosen=shade.chosen,
                    habits=plan.job.habits,
                    shrinkage=_shrinkage(shade, plan.job.habits),
                    board_length=shared.get(shade.spec.tag, shade.size.board_length),
                    matching=_matching(shade, plan),
                ),
            )


def shared_boards(plan: JobPlan) -> dict[str, L | None]:
    """Give the length of each shared board by the tag of its first shade, and None by the others.

    Takes: the planned job.

    Gives: nothing for a shade with a board of its own.
    """
    hung = [board for board in hang_boards(plan.job) if board.length is not None]
    others = {tag: None for board in hung for tag in board.board.shades[1:]}
    return {**others, **{board.board.shades[0]: board.length for board in hung}}


def _shrinkage(shade: ShadePlan, habits: Habits) -> Figure[float]:
    typed = shade.spec.design.shrinkage
    return habits.shrinkage if typed is None else chosen("shrinkage", typed, Unit.SHARE)


def _matching(shade: ShadePlan, plan: JobPlan) -> Matching:
    cutting = shade.spec.cutting
    return Matching(
        across=cutting.pattern_across,
        along=cutting.pattern_along,
        motif_above_hem=cutting.motif_above_hem or _motif_of_the_room(shade, plan),
    )


def _motif_of_the_room(shade: ShadePlan, plan: JobPlan) -> Length | None:
    """Give the height that was typed for another shade of the same room and cloth."""
    room, face = shade.spec.room.strip(), shade.spec.materials.face
    typed = (
        other.spec.cutting.motif_above_hem
        for other in plan.shades
        if room and other.spec.room.strip() == room and other.spec.materials.face == face
    )
    return next((height for height in typed if height is not None), None)


def _cloth(plan: JobPlan, shades: list[_Shade], name: str, roll: str) -> ClothToCut:
    cloth, habits, system = plan.job.shop.cloths[name], plan.job.habits, plan.job.system
    taken = [(shade, _pieces_of(shade, name, roll)) for shade in shades]
    pieces = tuple(piece for _, found in taken for piece in found)
    named = {shade.plan.spec.cutting.roll for shade in shades} - {""}
    held = rolls_of(plan.job, name)
    mine = [each for each in held if (each.name == roll if roll else each.name not in named)]
    cloth = _as_on(mine, cloth)
    received = [each for each in mine if _repeats_like(each, cloth, habits)]
    rolls = tuple(_roll(each, cloth, habits) for each in received if each.length)
    within = [shade for shade, found in taken if found]
    order = ClothOrder(
        pieces=tuple(_piece(p, shade, cloth, system) for shade, found in taken for p in found),
        pattern=_pattern(cloth),
        rolls=rolls,
        buying=None if rolls else _buying(cloth, habits),
        spare=habits.straightening.value + _off_square(received),
        free_rooms=_free_rooms(within) if cloth.vertical_repeat else frozenset(),
        railroaded=_railroaded(cloth, taken, system),
        sides_share=not any(shade.plan.spec.cutting.sides_apart for shade in within),
        seams=tuple(_seams(within, name)),
        remnant_uses=tuple(_uses(plan.job)),
    )
    return ClothToCut(
        cloth=cloth,
        pieces=pieces,
        order=order,
        yardage=order_cloth(tuple(_widths(taken, cloth)), cloth, habits),
        remarks=(*_remarks(cloth, pieces, received), *_apart(mine, received, cloth, system)),
        asked_turned=tuple(_asked_turned(within, name)),
        system=system,
    )


def _as_on(rolls: list[ReceivedRoll], cloth: Cloth) -> Cloth:
    """Give a cloth with the repeat along that was measured first on given rolls of it."""
    measured = (roll.vertical_repeat for roll in rolls if roll.vertical_repeat)
    return replace(cloth, vertical_repeat=next(measured, cloth.vertical_repeat))


def _repeats_like(roll: ReceivedRoll, cloth: Cloth, habits: Habits) -> bool:
    """Tell whether a roll repeats so nearly as planned that the spare of a cut takes it up."""
    along, across = cloth.vertical_repeat, cloth.horizontal_repeat
    off_along = off_across = ZERO
    if along and roll.vertical_repeat and roll.length:
        off_along = roll.length * (abs(roll.vertical_repeat - along) / along)
    if across and roll.horizontal_repeat:
        off_across = cloth.usable_width * (abs(roll.horizontal_repeat - across) / across)
    return off_along <= habits.straightening.value and off_across <= ACROSS


def _apart(
    mine: list[ReceivedRoll], received: list[ReceivedRoll], cloth: Cloth, system: System
) -> Iterator[str]:
    """Name the rolls that are left out since the pattern on them repeats otherwise."""
    for roll in mine:
        if roll not in received:
            along = print_length(roll.vertical_repeat or ZERO, system)
            across = print_length(roll.horizontal_repeat or ZERO, system)
            planned = print_length(cloth.vertical_repeat or ZERO, system)
            yield (
                f"Roll “{roll.name}” is left out: its pattern repeats every {along} along and"
                f" {across} across, and this plan is made for {planned} along. Name the roll for"
                " the shades that are to be cut from it."
            )


def _asked_turned(shades: list[_Shade], cloth: str) -> Iterator[str]:
    for shade in shades:
        if shade.plan.spec.cutting.turned and shade.plan.spec.materials.face == cloth:
            yield shade.plan.spec.tag


def _uses(job: Job) -> Iterator[RemnantUse]:
    """Give what the shop makes of remnants, for their list."""
    for work in job.shop.small_works.values():
        yield RemnantUse(name=work.name, width=work.width, length=work.length)


def _pieces_of(shade: _Shade, cloth: str, roll: str) -> tuple[PieceToCut, ...]:
    """Give a shade's pieces of one cloth; those of its face only from the roll it names."""
    asked = shade.plan.spec.cutting.roll
    return tuple(
        piece
        for piece in shade.pieces.pieces
        if piece.cloth == cloth and (asked if piece.layer == FACE else "") == roll
    )


def _piece(piece: PieceToCut, shade: _Shade, cloth: Cloth, system: System) -> ClothPiece:
    return ClothPiece(
        name=piece.name,
        shade=piece.shade,
        room=shade.room,
        layer=piece.layer,
        width=up_to_mark_within(piece.width.value, cloth.usable_width, system),
        length=up_to_mark(piece.length.value, system),
        phase_across=_to_tenths(piece.phase_across),
        phase_along=_to_tenths(piece.phase_along),
        side_partner=piece.side_partner,
        hidden_head=_to_tenths(piece.hidden_head) or ZERO,
        hidden_foot=_to_tenths(piece.hidden_foot) or ZERO,
    )


def up_to_mark(length: Length, system: System) -> Length:
    """Give a length up to the next mark of the tape, as cloth is cut and as sheets print it.

    >>> up_to_mark(Length.mm("893.2"), System.METRIC) == Length.mm(894)
    True
    >>> up_to_mark(Length.mm("893.2"), System.INCH) == Length.inches("35.1875")
    True
    """
    return round_length(length, USUAL_MARK[system], Rounding.CUT_OVERSIZE)


def up_to_mark_within(width: Length, usable: Length, system: System) -> Length:
    """Give a width up to the next mark, but a piece as wide as its cloth no wider than it.

    >>> up_to_mark_within(Length.inches(54), Length.inches(54), System.METRIC) == Length.inches(54)
    True
    """
    rounded = up_to_mark(width, system)
    return usable if width <= usable < rounded else rounded


def _to_tenths(figure: L | None) -> Length | None:
    """Give a place in the pattern to the tenth of a millimetre: nobody cuts closer."""
    return None if figure is None else round_length(figure.value, TENTH, Rounding.MARK)


def _pattern(cloth: Cloth) -> Pattern:
    across, along = cloth.horizontal_repeat or ZERO, cloth.vertical_repeat or ZERO
    steps = steps_of_the_drop(cloth) if across and along else 1
    return Pattern(
        vertical_repeat=along,
        horizontal_repeat=across,
        drop_fraction=Fraction(1, steps) if steps > 1 else Fraction(0),
        origin_across=cloth.motif_from_edge or ZERO,
    )


def _roll(roll: ReceivedRoll, cloth: Cloth, habits: Habits) -> Roll:
    lost = roll.head_loss
    return Roll(
        name=roll.name,
        lot=roll.lot,
        usable_width=roll.usable_width or cloth.usable_width,
        length=roll.length or ZERO,
        head_loss=habits.straightening.value + _off_square([roll]) if lost is None else lost,
        origin_along=roll.repeat_begins or ZERO,
        flaws=tuple(
            Flaw(along=at.along, across=at.across, length=at.length, width=at.width)
            for at in roll.flaws_at
        ),
    )


def _off_square(rolls: Iterable[ReceivedRoll]) -> Length:
    """Give what cutting square costs on cloth that runs off square, at the worst roll."""
    return max((roll.bow_or_skew for roll in rolls if roll.bow_or_skew), default=ZERO)


def _buying(cloth: Cloth, habits: Habits) -> Buying:
    return Buying(
        usable_width=cloth.usable_width,
        increment=cloth.sold_by or habits.order_increment.value,
        least=cloth.least_order or ZERO,
        start_allowance=habits.straightening.value + (cloth.vertical_repeat or ZERO),
        whole_roll=cloth.whole_rolls,
    )


def _free_rooms(shades: list[_Shade]) -> frozenset[str]:
    """Give the rooms where nobody said at which height a motif is to stand."""
    settled = {s.room for s in shades if s.plan.spec.cutting.motif_above_hem is not None}
    return frozenset({shade.room for shade in shades} - settled)


def _railroaded(
    cloth: Cloth, taken: list[tuple[_Shade, tuple[PieceToCut, ...]]], system: System
) -> tuple[ClothPiece, ...] | None:
    """Give the pieces to cut if the whole cloth is turned, where it may be and they fit."""
    if cloth.directional or cloth.vertical_repeat or cloth.horizontal_repeat:
        return None
    turned = tuple(
        _piece(piece, shade, cloth, system)
        for shade, found in taken
        for piece in _unseamed(shade, found)
    )
    return turned if all(piece.length <= cloth.usable_width for piece in turned) else None


def _unseamed(shade: _Shade, pieces: tuple[PieceToCut, ...]) -> Iterator[PieceToCut]:
    """Give a shade's pieces with its face in one."""
    face = shade.pieces.turned_face
    if face is not None and any(piece.layer == FACE for piece in pieces):
        yield face
    yield from (piece for piece in pieces if piece.layer != FACE)


def _seams(shades: list[_Shade], cloth: str) -> Iterator[Seam]:
    for shade in shades:
        if shade.pieces.turned_face is None or shade.pieces.turned_face.cloth != cloth:
            continue
        begins = {piece.name: _to_tenths(piece.phase_across) for piece in shade.pieces.pieces}
        for seam in shade.pieces.seams:
            left, right = begins[seam.left], begins[seam.right]
            across = right - left if left is not None and right is not None else seam.across.value
            yield Seam(left=seam.left, right=seam.right, across=across)


def _widths(
    taken: list[tuple[_Shade, tuple[PieceToCut, ...]]], cloth: Cloth
) -> Iterator[WidthsToCut]:
    """Count the widths of each layer of each shade, as the trade's own rule counts them."""
    for _, found in taken:
        for layer in dict.fromkeys(piece.layer for piece in found):
            parts = [piece for piece in found if piece.layer == layer]
            yield WidthsToCut(
                name=f"{parts[0].shade} {layer}",
                widths=_count(parts, cloth),
                length=parts[0].length,
                width=max((piece.width for piece in parts), key=lambda width: width.value),
            )


def _count(parts: list[PieceToCut], cloth: Cloth) -> Figure[int]:
    """Count the widths that pieces of one length take: narrow ones lie side by side."""
    widest = max(part.width.value for part in parts)
    beside = max(1, cloth.usable_width.nanometres // widest.nanometres)
    sides = [part for part in parts if part.side_partner]
    rest = math.ceil((len(parts) - len(sides)) / beside)
    together = sum((part.width.value for part in sides), ZERO) <= cloth.usable_width
    count = rest + (math.ceil(len(sides) / 2) if together else len(sides))
    because = "{0} is usable, and the widest piece is {1}."
    usable = derived("usable width", cloth.usable_width, Unit.LENGTH, "As its sheet says.")
    widest_part = max((part.width for part in parts), key=lambda width: width.value)
    return derived("widths to cut", count, Unit.COUNT, because, usable, widest_part)


def _remarks(
    cloth: Cloth, pieces: tuple[PieceToCut, ...], rolls: list[ReceivedRoll]
) -> Iterator[str]:
    """Say what was taken for granted because nobody has measured it."""
    if cloth.motif_from_edge is None and any(piece.phase_across for piece in pieces):
        yield (
            "A motif is taken to stand at the left edge, since the sheet of the cloth does not"
            " say how far from it one stands: measure motif_from_edge."
        )
    for roll in rolls:
        if roll.length is None:
            yield f"Roll “{roll.name}” is left out, since its length is not measured."
        elif cloth.vertical_repeat and roll.repeat_begins is None:
            yield (
                f"On roll “{roll.name}” a motif is taken to stand at the outer end: measure"
                " repeat_begins."
            )
    if any(piece.layer == COVER for piece in pieces):
        yield "Board covers lie as this takes least here; what is proven holds for that."
