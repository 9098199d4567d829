"""What must be cut from cloth, what cloth there is, and the plan that comes out.

Along is measured from the outer end of a roll, across from its left edge as it lies face up,
inside the selvedge. A piece lies with its head towards the outer end; turned, with its head
to the left. The pattern is a lattice: it repeats every `vertical_repeat` along, and the next
horizontal repeat to the right stands lower by `drop_fraction` of the vertical repeat.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from foldwright.core.quantity.length import ZERO, Length


@dataclass(frozen=True, kw_only=True, slots=True)
class Pattern:
    """The repeat of the cloth; a repeat of zero is none, and a plain cloth has neither.

    `origin_across` is where a motif column stands from the left edge; a print is registered
    to the selvedge, so it is the same on every roll.
    """

    vertical_repeat: Length = ZERO
    horizontal_repeat: Length = ZERO
    drop_fraction: Fraction = Fraction(0)  # 1/2 is a half drop
    origin_across: Length = ZERO


@dataclass(frozen=True, kw_only=True, slots=True)
class Flaw:
    """A fault in the cloth, as the box to keep clear of."""

    along: Length
    across: Length
    length: Length
    width: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class Roll:
    """A roll in hand, as it was measured when it came."""

    name: str
    lot: str
    usable_width: Length
    length: Length
    head_loss: Length = ZERO  # cut off to square the outer end
    origin_along: Length = ZERO  # any point where the repeat begins
    flaws: tuple[Flaw, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Buying:
    """How the supplier sells the cloth, before any roll is known.

    The start allowance squares the end of each piece delivered and, as nobody knows where in
    the repeat it begins, holds one whole repeat.
    """

    usable_width: Length
    increment: Length
    least: Length = ZERO
    start_allowance: Length = ZERO
    whole_roll: Length | None = None  # sold by the roll only, of this length


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothPiece:
    """One piece to cut, all allowances in, as it lies unturned: `width` across the roll.

    A phase is how far behind the pattern's origin the left edge or the head must lie; None
    is no rule. `hidden_head` and `hidden_foot` are ends that nobody sees, where a flaw does
    no harm. Pieces of one lot group come from one dye lot; by default that is the room.
    """

    name: str
    shade: str
    room: str
    layer: str
    width: Length
    length: Length
    phase_across: Length | None = None
    phase_along: Length | None = None
    lot_group: str | None = None
    side_partner: str | None = None  # the piece that is the other side of the same shade
    hidden_head: Length = ZERO
    hidden_foot: Length = ZERO

    @property
    def one_lot(self) -> str:
        """Give the name that all pieces of one dye lot share."""
        return self.room if self.lot_group is None else self.lot_group


@dataclass(frozen=True, kw_only=True, slots=True)
class Seam:
    """Two pieces whose pattern must run on: `right` lies so far right of `left`, sewn."""

    left: str
    right: str
    across: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class RemnantUse:
    """Something that a remnant is good for if it is large enough, such as a tie or a cushion."""

    name: str
    width: Length
    length: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothOrder:
    """All pieces of one cloth, and the rolls in hand or the way it is sold.

    `spare` is lost between two cut lengths to straighten the end. The pieces of a free room
    must agree among themselves, but it matters to nobody where in the repeat they start.
    `railroaded` are the pieces to cut instead if the whole cloth is turned; None where it
    may not be.
    """

    pieces: tuple[ClothPiece, ...]
    pattern: Pattern = Pattern()
    rolls: tuple[Roll, ...] = ()
    buying: Buying | None = None
    spare: Length = ZERO
    free_rooms: frozenset[str] = frozenset()
    railroaded: tuple[ClothPiece, ...] | None = None
    sides_share: bool = True  # both sides of a shade may lie in one cut length
    seams: tuple[Seam, ...] = ()
    remnant_uses: tuple[RemnantUse, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Placement:
    """Where one piece lies on its roll, with the box it fills there."""

    piece: str
    roll: str
    along: Length
    across: Length
    width: Length
    length: Length
    turned: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class CutLength:
    """A length cut off the roll over its full width, with its pieces from left to right.

    The cloth between it and the cut length before it is straightened by the spare, waits for
    the repeat, or makes way for a flaw; the two last are told apart here.
    """

    roll: str
    start: Length
    length: Length
    pieces: tuple[str, ...]
    waits_for_repeat: Length = ZERO
    waits_for_flaw: Length = ZERO


@dataclass(frozen=True, kw_only=True, slots=True)
class RollUse:
    """What one roll gives: used up to `used`, and bought as `bought` where it is to buy."""

    name: str
    lot: str
    usable_width: Length
    length: Length
    origin_along: Length
    used: Length
    bought: Length = ZERO


@dataclass(frozen=True, kw_only=True, slots=True)
class Remnant:
    """A rectangle of cloth that is left over, with the uses it is large enough for.

    Flaws in it are not looked at.
    """

    roll: str
    along: Length
    across: Length
    width: Length
    length: Length
    uses: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Comparison:
    """What the job takes by this plan, by two simpler ways, and at the very least.

    The two simpler ways look at no flaw and at no end of a roll.
    """

    plan: Length
    shade_by_shade: Length  # each shade on its own, cut lengths rounded up to repeats
    first_fit: Length  # the longest first, each in the first cut length with room
    bound: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothPlan:
    """Where every piece is cut, what it takes, and the least that is proven possible.

    `bought` is what must be bought, or what is used of rolls in hand. A plan is `cut_short`
    if the time ended or somebody cancelled while a better plan or bound was still sought.
    """

    levels: tuple[CutLength, ...]
    placements: tuple[Placement, ...]
    rolls: tuple[RollUse, ...]
    remnants: tuple[Remnant, ...]
    bought: Length
    bound: Length
    proven: bool
    railroaded: bool = False
    cut_short: bool = False
    comparison: Comparison | None = field(default=None, compare=False)

    @property
    def cuts(self) -> int:
        """Give the number of cuts over the full width."""
        return len(self.levels)
