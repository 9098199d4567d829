"""Rows tied together for good at the hem: the pouf that hangs there when a shade is down."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from foldwright.core.design.cloth_marks import mark_the_cloth
from foldwright.core.design.flat import FlatStyle
from foldwright.core.design.layout import Layout, RowPlan, SewingStep
from foldwright.core.design.order import Order, draft, head_allowance, skirt, stacked_pitch
from foldwright.core.design.rows import RowScale, Tie, exact_share, row_plan, untied
from foldwright.core.design.style import usual_rows
from foldwright.core.facts.panel_limits import BILLOWING_POUFS
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]
N = Figure[float]

USUALLY_TIED = 1


@dataclass(frozen=True, kw_only=True, slots=True)
class Setting:
    """What the rows of a shade are set out from; `half` counts spacings below the lowest row."""

    tied: Figure[int]
    room: L
    half: Fraction = Fraction(0)
    tie: Tie | None = None
    first_row: L | None = None


class PoufedStyle(FlatStyle):
    """A shade that may keep a pouf at its hem.

    Tied rows lie on the lowest even when the shade is down, and the cloth between them hangs
    below the hem. Its lowest edge is then the pouf, and the drop is measured to it. Without
    tied rows the rows are set out from the hem, half the cloth of a spacing above the skirt.
    """

    straight_folds = False
    fixed_columns = True
    billow = BILLOWING_POUFS
    shirred = False  # the fullness is gathered along the drop and hangs in no loops

    @abstractmethod
    def fullness(self, order: Order) -> N:
        """Tell how much cloth there is along the drop."""

    @abstractmethod
    def usual_pouf(self, order: Order) -> L:
        """Tell how much cloth is gathered up for good when nobody has typed it."""

    @abstractmethod
    def dip_at_rest(self, order: Order) -> L | None:
        """Tell how much lower the pouf hangs between its columns when the shade is down."""

    def usually_tied(self) -> int:
        """Tell how many rows are tied when nobody has typed it."""
        return USUALLY_TIED

    def usual_row_count(self, order: Order) -> Figure[int]:
        """Take the fewest rows that keep to the largest spacing, and those that are tied."""
        setting, largest = self.setting(order), self.largest_spacing(order)
        free = ceil(setting.room.value / largest.value - setting.half)
        return derived(
            "number of rows",
            max(1, free) + setting.tied.value,
            Unit.COUNT,
            "The fewest rows that keep within {0} on the {1} left to them, and {2} tied ones.",
            largest,
            setting.room,
            setting.tied,
        )

    def least_spacing(self, order: Order, count: int) -> Fraction:
        """Share what head and hem leave among the rows that are free."""
        setting = self.setting(order)
        return setting.room.value.nanometres / (count - setting.tied.value + setting.half)

    def rows(self, order: Order, count: Figure[int]) -> RowPlan:
        """Set the rows out, the tied ones first."""
        setting, exact = self.setting(order), self.least_spacing(order, count.value)
        spacing = derived(
            "row spacing",
            Length(round(exact)),
            Unit.LENGTH,
            "The {0} left to the rows, shared by {1} rows of which {2} stay tied.",
            setting.room,
            count,
            setting.tied,
        )
        scale = RowScale(
            count=count,
            exact=exact,
            spacing=spacing,
            first_row=setting.first_row or self._first_row(order, exact, spacing),
            fullness=self.fullness(order),
            tie=setting.tie,
            shirred=self.shirred,
        )
        return mark_the_cloth(row_plan(order, scale))

    def hangs_below(self, order: Order, rows: RowPlan) -> L:
        """Take what hangs lowest when raised: the pouf, or the fold of an open panel."""
        del order
        return max((rows.fold_depth, rows.first_row), key=lambda figure: figure.value)

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Find no fault with the depth of its folds: they hang free, and are not dressed."""
        del order, rows
        yield from ()

    def refusals(self, order: Order) -> Iterator[Draft[Order]]:
        """Refuse a pouf that leaves no room for a free row."""
        setting, row = self.setting(order), stacked_pitch(order).value * 2
        typed = order.design.row_count
        if typed is not None and 1 <= typed <= setting.tied.value:
            yield draft(
                Severity.STOP,
                "all-rows-tied",
                "{1} of {0} rows are to be tied, which leaves none to raise.",
                chosen("number of rows", typed, Unit.COUNT),
                setting.tied,
                ways=self._untie(order),
            )
        elif setting.room.value <= row:
            yield draft(
                Severity.STOP,
                "pouf-too-long",
                "The pouf leaves {0} of the drop to the rows; one row takes {1}.",
                setting.room,
                derived("room of a row", row, Unit.LENGTH, "Twice {0}.", stacked_pitch(order)),
                ways=self._untie(order),
            )

    def closer_rows(self, order: Order) -> Iterator[Way[Order]]:
        """Take other rows."""
        yield usual_rows(order, self)

    def after_the_rings(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Tie the rows that stay tied."""
        del order
        if layout.rows.pouf is not None:
            yield SewingStep(
                title="Tie the pouf",
                instruction="At each column tie the next {0} up to the lowest ring, so that {1} of"
                " cloth hangs between them for good.",
                figures=(layout.rows.tied_rows, layout.rows.pouf),
            )

    def setting(self, order: Order) -> Setting:
        """Tell what the rows are set out from, tied to a pouf or free."""
        tied = tied_rows(order, self.usually_tied())
        if tied.value == 0:
            return Setting(tied=tied, room=_room(order), half=self._half_folds(order))
        tie = Tie(rows=tied, pitch=stacked_pitch(order), pouf=pouf(order, self.usual_pouf(order)))
        first = self._hem_to_tied(order, tie)
        return Setting(tied=tied, room=_room_over(order, tie, first), tie=tie, first_row=first)

    def _half_folds(self, order: Order) -> Fraction:
        """Count what hangs below the lowest row, in spacings: half of one's cloth."""
        return exact_share(self.fullness(order)) / 2

    def _first_row(self, order: Order, exact: Fraction, spacing: L) -> L:
        full, under = self.fullness(order), skirt(order)
        return derived(
            "first row",
            Length(round(under.value.nanometres + exact * exact_share(full) / 2)),
            Unit.LENGTH,
            "The skirt {0} and half the cloth of a row spacing {1}, at {2} of cloth to one.",
            under,
            spacing,
            full,
        )

    def _hem_to_tied(self, order: Order, tie: Tie) -> L:
        """Let the lowest edge be the pouf, or the skirt or a loop that hangs lower still."""
        hanging, under = self._pouf_depth(order, tie), skirt(order)
        full = exact_share(self.fullness(order))
        loop = self.largest_spacing(order).value * ((full - 1) / 2)
        sag = self.dip_at_rest(order)
        lowest = max(hanging.value, under.value, loop) + (sag.value if sag else ZERO)
        because = "The pouf {0} deep, or the skirt {1} where that hangs lower"
        because += ", and the dip {2} between its columns." if sag else "."
        return derived(
            "first row", lowest, Unit.LENGTH, because, hanging, under, *((sag,) if sag else ())
        )

    def _pouf_depth(self, order: Order, tie: Tie) -> L:
        """Halve the cloth between two tied rows, less what lies between them."""
        full, pitch = self.fullness(order), tie.pitch.value
        cloth = (tie.pouf.value / tie.rows.value + pitch) * exact_share(full)
        return derived(
            "depth of the pouf",
            (cloth - pitch) / 2,
            Unit.LENGTH,
            "Half of the pouf {0} shared by {1} tied rows, at {2} of cloth to one.",
            tie.pouf,
            tie.rows,
            full,
        )

    def _untie(self, order: Order) -> Iterator[Way[Order]]:
        if tied_rows(order, self.usually_tied()).value:
            yield by_change(order, order.system, "Tie no rows.", design__tied_rows=0)
        if order.design.pouf is not None:
            yield by_change(order, order.system, "Take the usual pouf.", design__pouf=None)
        yield by_hand("Make the shade longer, or the pouf shorter.")


def tied_rows(order: Order, usual: int) -> Figure[int]:
    """Tell how many rows are tied to the lowest for good.

    Takes: the order; the style's usual number.

    Gives: as typed, else the usual.

    Source: common practice.
    """
    typed = order.design.tied_rows
    if typed is not None:
        return chosen("tied rows", typed, Unit.COUNT)
    if usual == 0:
        return untied()
    because = "As usual in this style, so that it is full at the hem when it is down."
    return derived("tied rows", usual, Unit.COUNT, because)


def pouf(order: Order, habit: L) -> L:
    """Tell how much cloth is gathered up for good.

    Takes: the order; the style's habit.

    Gives: as typed, else the habit.

    Source: common practice.
    """
    return order.length("pouf", order.design.pouf, habit)


def _room(order: Order) -> L:
    head, under = head_allowance(order), skirt(order)
    return derived(
        "drop left to the rows",
        order.drop.value - head.value - under.value,
        Unit.LENGTH,
        "The drop {0} less head {1} and skirt {2}.",
        order.drop,
        head,
        under,
    )


def _room_over(order: Order, tie: Tie, first: L) -> L:
    head = head_allowance(order)
    stacked = tie.pitch.value * tie.rows.value
    return derived(
        "drop left to the rows",
        order.drop.value - head.value - first.value - stacked,
        Unit.LENGTH,
        "The drop {0} less head {1}, first row {2} and {3} tied rows {4} apart.",
        order.drop,
        head,
        first,
        tie.rows,
        tie.pitch,
    )
