"""The headrail from the room and from the back: lengths to scale, heights as is clearest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.frame import Frame, text_width
from foldwright.core.drawing.labels import levels
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Drawing,
    Layer,
    Lettering,
    LineKind,
    Point,
    Tag,
    Text,
)
from foldwright.core.drawing.rail_parts import (
    COLUMN_FOOT,
    NUMBER_RADIUS,
    SIDE_GUTTER,
    Rail,
    View,
    draw_rail,
    drive_name,
)
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import UNIT_NOTES, bare, in_full
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure

ACROSS_PAGE = Frame(width=186.0, height=60.0)
TOP = 17.6  # of paper, above the middle of the tube
MARKS_FROM = -16.0
MARK_LINE = 5.0
CAPTION_LINE = 4.4


def headrail_from_back(plan: ShadePlan, system: System, frame: Frame = ACROSS_PAGE) -> Drawing:
    """Draw the headrail seen from the back, with every mark along it.

    Brackets are marked from the board's left end, clips and cords from the tube's left
    end, both as seen from the back.

    Takes: the plan; the reader's system; the frame, in millimetres of paper.

    Gives: the drawing, in millimetres of paper; without a headrail, a sentence that asks for it.

    Source: derived here; line kinds iso-128, marks from a common origin iso-129.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> headrail_from_back(ShadePlan(spec=ShadeSpec(tag="1")), System.INCH).seen_from
    'from the back'
    """
    return _draw(plan, system, frame, View.BACK, tube_marks=True)


def headrail_from_room(
    plan: ShadePlan, system: System, frame: Frame = ACROSS_PAGE, *, tube_marks: bool = True
) -> Drawing:
    """Draw the headrail seen from the room: the same marks from the same ends, mirrored.

    Takes: the plan; the reader's system; the frame, in millimetres of paper; whether the
    marks along the tube are written, which a sheet with both views needs only once.

    Gives: the drawing, in millimetres of paper; without a headrail, a sentence that asks for it.

    Source: derived here; line kinds iso-128, marks from a common origin iso-129.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> headrail_from_room(ShadePlan(spec=ShadeSpec(tag="1")), System.INCH).seen_from
    'from the room'
    """
    return _draw(plan, system, frame, View.ROOM, tube_marks=tube_marks)


def _draw(
    plan: ShadePlan, system: System, frame: Frame, view: View, *, tube_marks: bool
) -> Drawing:
    """Draw either view."""
    name, title = f"headrail-{view.value.replace(' ', '-')}", "Headrail"
    if plan.headrail is None:
        missing = "Nothing to draw yet: the headrail must be worked out first."
        return blank(name=name, title=title, seen_from=view.value, missing=missing)
    board = plan.headrail.board_length.value.in_millimetres
    scale = board / (frame.width - 2 * SIDE_GUTTER)
    rail = Rail(
        plan=plan,
        headrail=plan.headrail,
        view=view,
        system=system,
        scale=scale,
        tube_marks=tube_marks,
    )
    bottom = _marks_bottom(rail) - CAPTION_LINE
    return Drawing(
        name=name,
        title=title,
        seen_from=view.value,
        description=_describe(rail),
        extent=Box(left=0.0, bottom=bottom, right=frame.width, top=TOP),
        scale=1.0,
        elements=(*draw_rail(rail), *_marks(rail), _caption(rail, bottom)),
    )


def _caption(rail: Rail, bottom: float) -> Text:
    """Say whence the headrail is seen, and from which end its marks are measured."""
    return Text(
        at=Point(SIDE_GUTTER + rail.board / 2, bottom + CAPTION_LINE / 2),
        words=_caption_words(rail),
        size=Lettering.NOTE,
        anchor=Anchor.MIDDLE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _caption_words(rail: Rail) -> str:
    seen = f"Seen {rail.view.value}"
    if not rail.tube_marks:
        return seen
    from_drive = rail.headrail.spring_side.value == "right"
    end = drive_name(rail) if from_drive else "idle"
    return f"{seen}. Tube marks from its {end} end, bracket marks from that end of the board."


@dataclass(frozen=True, kw_only=True, slots=True)
class _Row:
    """One row of marks along the tube."""

    name: str
    figures: Sequence[Figure[Length]]
    tags: Sequence[Tag]
    strong: bool


def _rows(rail: Rail) -> tuple[_Row, ...]:
    """List what is marked on the tube."""
    lines = rail.headrail.lines if rail.tube_marks else ()
    return tuple(
        _Row(
            name=name,
            figures=[getattr(line, field) for line in lines],
            tags=[tag(rail.plan, f"headrail.lines.{index}.{field}") for index in range(len(lines))],
            strong=field == "clip",
        )
        for name, field in (("clips", "clip"), ("cords", "column"))
        if lines
    )


def _levels(rail: Rail, row: _Row) -> int:
    """Count the lines on which a row's marks stand clear of each other."""
    places = sorted(rail.along_tube(figure.value) for figure in row.figures)
    widest = max(text_width(bare(figure, rail.system), Lettering.FIGURE) for figure in row.figures)
    return levels(places, widest)


def _marks_bottom(rail: Rail) -> float:
    """Find how far down the rows of marks reach, or the numbers where there are none."""
    if not rail.tube_marks:
        return COLUMN_FOOT - NUMBER_RADIUS
    return MARKS_FROM - MARK_LINE * (sum(_levels(rail, row) for row in _rows(rail)) - 0.5)


def _marks(rail: Rail) -> Iterator[AnyElement]:
    """Write the rows of marks under the tube."""
    top = MARKS_FROM
    for row in _rows(rail):
        count = _levels(rail, row)
        yield Text(
            at=Point(0.0, top),
            words=row.name,
            size=Lettering.NOTE,
            layer=Layer.SIZES,
            kind=LineKind.THIN,
        )
        for index, (figure, its_tag) in enumerate(zip(row.figures, row.tags, strict=True)):
            yield Text(
                at=Point(rail.along_tube(figure.value), top - MARK_LINE * (index % count)),
                words=bare(figure, rail.system),
                anchor=Anchor.MIDDLE,
                strong=row.strong,
                layer=Layer.SIZES,
                kind=LineKind.THIN,
                tag=its_tag,
            )
        top -= MARK_LINE * count


def _describe(rail: Rail) -> str:
    """Say in sentences what the drawing shows."""
    board = in_full(rail.headrail.board_length, rail.system)
    tube = in_full(rail.headrail.tube_cut, rail.system)
    clips = ", ".join(bare(line.clip, rail.system) for line in rail.headrail.lines)
    cords = ", ".join(bare(line.column, rail.system) for line in rail.headrail.lines)
    side = rail.headrail.spring_side.value
    return (
        f"The headrail seen {rail.view.value}: board {board}, tube {tube}. Spring or control at "
        f"the {side}, seen from the room. From the tube's left end as seen from the back: clips "
        f"at {clips}; cords come down at {cords}. {UNIT_NOTES[rail.system]}."
    )
