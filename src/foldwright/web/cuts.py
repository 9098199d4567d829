"""The searches for cut plans that are under way, and each cloth as its page shows it."""

from __future__ import annotations

import time
from collections import OrderedDict
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from threading import Lock

from markupsafe import Markup

from foldwright.core.cloth.finding.listing import Cut, CutPiece, RollCuts, cut_list
from foldwright.core.cloth.order import ClothPlan, Placement, Remnant
from foldwright.core.cloth.wording import comparison_rows, gap_in_words
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.roll import roll_drawings
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_cloth, print_length
from foldwright.core.quantity.rounding import Rounding, System
from foldwright.core.why.figure import Figure
from foldwright.core.why.telling import fill, tell
from foldwright.work.cut_search import CutSearch
from foldwright.work.cutting import ClothCut, cloths_of
from foldwright.work.job import Job
from foldwright.work.what_if import Change, Moved
from foldwright.write.svg import svg

SEARCHES_KEPT = 12
SECONDS = 20.0
LONGER_SECONDS = 120.0
FIRST_SIGHT_S = 1.0  # the page waits so long for the first plans
FRAME = Frame(width=250.0, height=72.0)


class CutDesk:
    """The searches by the job and the save that they are for; they run one after the other."""

    def __init__(self) -> None:
        self._searches: OrderedDict[tuple[int, int], CutSearch] = OrderedDict()
        self._turn, self._lock = Lock(), Lock()

    def search(self, key: tuple[int, int], job: Job) -> CutSearch:
        """Give the search for a save of a job, begun where it is not known."""
        with self._lock:
            known = self._searches.get(key)
        return known or self.begin(key, job, SECONDS)

    def begin(self, key: tuple[int, int], job: Job, seconds: float) -> CutSearch:
        """Begin a search, and end those for other saves of the same job."""
        search = CutSearch(cloths_of(job), seconds, time.monotonic, self._turn)
        with self._lock:
            for (job_id, _), other in self._searches.items():
                if job_id == key[0]:
                    other.end()
            self._searches[key] = search
            self._searches.move_to_end(key)
            while len(self._searches) > SEARCHES_KEPT:
                self._searches.popitem(last=False)[1].end()
        search.start()
        search.wait(FIRST_SIGHT_S)
        return search


@dataclass(frozen=True, kw_only=True, slots=True)
class RollView:
    """One roll with its drawing, its cuts and what is left."""

    roll: RollCuts
    pictures: tuple[Markup, ...]
    system: System

    @property
    def title(self) -> str:
        """Name the roll, and how much of it is cut."""
        if self.roll.in_hand:
            used = print_cloth(self.roll.use.used, self.system)
            return f"Roll {self.roll.use.name}, lot {self.roll.use.lot or 'not noted'}: {used}"
        return f"To buy: {print_cloth(self.roll.use.bought, self.system)}"

    @property
    def lines(self) -> list[tuple[str, str, str, str, str, str]]:
        """Give the cuts: number, from, to, into the repeat, the pieces, and what is left."""
        return [self._line(cut) for cut in self.roll.cuts]

    @property
    def patterned(self) -> bool:
        """Tell whether each cut has a start in the repeat."""
        return any(cut.start_in_repeat is not None for cut in self.roll.cuts)

    @property
    def counted(self) -> bool:
        """Tell whether what is left on the roll is known."""
        return any(cut.left_on_roll is not None for cut in self.roll.cuts)

    @property
    def left(self) -> list[str]:
        """Give what is left over, with its uses."""
        return [self._left(left) for left in self.roll.worth_keeping]

    def _line(self, cut: Cut) -> tuple[str, str, str, str, str, str]:
        pieces = "; ".join(self._piece(piece) for piece in cut.pieces)
        start, end = self.mark(cut.start), self.mark(cut.end)
        repeat, left = self._known(cut.start_in_repeat), self._known(cut.left_on_roll)
        return str(cut.number), start, end, repeat, pieces, left

    def _piece(self, piece: CutPiece) -> str:
        rip = f"{self.mark(piece.rip_from)} to {self.mark(piece.rip_to)}"
        joins = f", joins {' and '.join(piece.partners)}" if piece.partners else ""
        turned = ", turned" if piece.turned else ""
        return f"{piece.key} {piece.name}, ripped {rip}{turned}{joins}"

    def _left(self, left: Remnant) -> str:
        size = f"{self.mark(left.width)} by {self.mark(left.length)}"
        uses = f", large enough for {', '.join(left.uses)}" if left.uses else ""
        place = f"from mark {self.mark(left.along)}, {self.mark(left.across)} from the left edge"
        return f"{place}: {size}{uses}"

    def _known(self, length: Length | None) -> str:
        return "" if length is None else self.mark(length)

    def mark(self, length: Length) -> str:
        """Write a length as the tape shows it."""
        return print_length(length, self.system)


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothView:
    """One cloth as its page shows it."""

    number: int
    cut: ClothCut
    system: System
    searching: bool = False  # better plans are still looked for

    @property
    def title(self) -> str:
        """Give the cloth's name."""
        return self.cut.to_cut.title

    @property
    def pieces(self) -> str:
        """Count its pieces."""
        count = len(self.cut.to_cut.order.pieces)
        return "1 piece" if count == 1 else f"{count} pieces"

    @property
    def plan(self) -> ClothPlan | None:
        """Give its plan."""
        return self.cut.plan

    @property
    def takes(self) -> str:
        """Give what is to be bought, or used of the rolls in hand."""
        if self.cut.plan is None:
            return "no plan"
        length = print_cloth(self.cut.plan.bought, self.system)
        return f"{length} of what is in hand" if self.cut.to_cut.in_hand else f"{length} to buy"

    @property
    def proof(self) -> str:
        """Give the least that any plan takes, in few words."""
        plan = self.cut.plan
        if plan is None:
            return ""
        if plan.proven:
            return "no plan takes less"
        if not plan.bound:
            return "not known yet"
        return f"at least {print_cloth(plan.bound, self.system, Rounding.MUST_FIT)}"

    @property
    def gap(self) -> str:
        """Say what it takes, and what is proven impossible to beat."""
        plan = self.cut.plan
        if plan is None:
            return ""
        return gap_in_words(
            replace(plan, cut_short=plan.cut_short and not self.searching), self.system
        )

    @property
    def estimate(self) -> list[tuple[str, str, str]]:
        """Give the trade's own estimate, step by step, with the why of each."""
        yardage = self.cut.to_cut.yardage
        steps = (yardage.cuts, yardage.squaring, yardage.needed, yardage.ordered)
        return [self._step(step) for step in steps]

    @property
    def ordered(self) -> str:
        """Give what the trade's own rule orders."""
        return print_cloth(self.cut.to_cut.yardage.ordered.value, self.system)

    @property
    def comparison(self) -> tuple[tuple[str, str, str], ...]:
        """Set the plan beside simpler ways and the least possible."""
        return comparison_rows(self.cut.plan, self.system) if self.cut.plan else ()

    @property
    def findings(self) -> list[tuple[str, str, str]]:
        """Give what stands in the way: how strongly, the sentence, what would work."""
        return [
            (
                finding.severity.value,
                fill(finding.sentence, finding.figures, self.system),
                " ".join(fill(r.sentence, r.figures, self.system) for r in finding.remedies),
            )
            for finding in self.cut.to_settle
        ]

    @property
    def rolls(self) -> Iterator[RollView]:
        """Give its rolls, drawn."""
        order = self.cut.to_cut.order
        for roll in cut_list(self.cut.plan, order) if self.cut.plan else ():
            bands = roll_drawings(roll, order, self.system, FRAME)
            named = (replace(band, name=f"{band.name}-{self.number}") for band in bands)
            pictures = tuple(Markup(svg(band)) for band in named)  # noqa: S704 - the writer escapes
            yield RollView(roll=roll, pictures=pictures, system=self.system)

    def _step(self, step: Figure[Length]) -> tuple[str, str, str]:
        return step.name, print_length(step.value, self.system), tell(step, self.system)


@dataclass(frozen=True, kw_only=True, slots=True)
class ChangeView:
    """What would be, beside what is: the length, and the pieces that move."""

    cloth: ClothView
    change: Change | None
    moved: tuple[tuple[str, str, str], ...] = field(default=())

    @property
    def difference(self) -> str:
        """Say how much longer or shorter it would be."""
        if self.change is None:
            return ""
        longer = self.change.longer
        if not longer:
            return "As much as before."
        size = print_cloth(abs(longer), self.cloth.system)
        return f"{size} {'more' if longer.nanometres > 0 else 'less'} than before."


def change_view(cloth: ClothView, change: Change | None) -> ChangeView:
    """Show what would be."""
    moved = () if change is None else tuple(_moved(m, cloth.system) for m in change.moved)
    return ChangeView(cloth=cloth, change=change, moved=moved)


def _moved(moved: Moved, system: System) -> tuple[str, str, str]:
    return moved.piece, _place(moved.before, system), _place(moved.after, system)


def _place(place: Placement | None, system: System) -> str:
    if place is None:
        return "not cut"
    along, across = (print_length(each, system) for each in (place.along, place.across))
    return f"{along}, {across} across"
