"""From the window as measured to the finished size."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Board
from foldwright.core.measure import clearances
from foldwright.core.measure.asking import draft_questions
from foldwright.core.measure.doubts import draft_doubts
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.inside_fit import draft_inside_fit
from foldwright.core.measure.opening import AskedSize, Mount, Opening
from foldwright.core.measure.outside_fit import draft_outside_fit
from foldwright.core.measure.remarks import draft_remarks
from foldwright.core.measure.site import Site
from foldwright.core.measure.sizing import finished_drop, finished_width
from foldwright.core.measure.squareness import racking, side_gaps
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.answer import Answer
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding
from foldwright.core.why.trying import Draft, settle

L = Figure[Length]


def finished_size(
    opening: Opening, mount: Mount, asked: AskedSize, habits: Habits, board: Board | None = None
) -> Answer[FinishedSize]:
    """Work out the finished size of a shade, and say what must still be asked.

    Takes: the opening as measured; the mount; a size asked for, which goes before what the
    opening gives; the shop's habits; the board where it is chosen, for returns and depths.

    Gives: the size, or None while width or drop cannot be known, and the findings; every
    remedy that changes a field has been tried.

    Holds for: one shade in one opening.

    Source: measuring-page, shade-length-page, make-your-own-page; common practice.

    >>> from foldwright.core.facts.house import house_habits
    >>> asked = AskedSize(width=Length.inches(35), drop=Length.inches(60), given_by="the client")
    >>> answer = finished_size(Opening(), Mount(), asked, house_habits())
    >>> answer.result.drop.value.in_inches
    Fraction(60, 1)
    """
    site = Site(opening=opening, mount=mount, asked=asked, habits=habits, board=board)
    findings = settle(_drafts(site), _judge)
    return Answer(result=_size(site), findings=findings)


def _drafts(site: Site) -> Iterator[Draft[Site]]:
    yield from draft_questions(site)
    yield from draft_doubts(site)
    yield from draft_inside_fit(site)
    yield from draft_outside_fit(site)
    yield from draft_remarks(site)


def _judge(site: Site) -> list[Finding]:
    return [draft.finding for draft in _drafts(site)]


def _size(site: Site) -> FinishedSize | None:
    width, drop = finished_width(site), finished_drop(site)
    if width is None or drop is None or width.value <= ZERO or drop.value <= ZERO:
        return None
    left, right = side_gaps(site, width) or (None, None)
    return FinishedSize(
        width=width,
        drop=drop,
        board_length=clearances.board_length(site, width),
        return_depth=clearances.return_depth(site),
        side_gap_left=left,
        side_gap_right=right,
        racking=racking(site),
        height_spread=clearances.height_spread(site),
        light_gap_area=clearances.light_gap_area(site, width, drop),
        sill_gap=clearances.sill_gap(site, drop),
        top_above_glass=clearances.top_above_glass(site),
        outside=site.outside,
        clear_depth=clearances.clear_depth(site),
    )
