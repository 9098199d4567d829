"""What holds for every drawing: marks lead to figures, and words can be read."""

from collections.abc import Callable, Iterator
from functools import partial

import pytest
from tests.core.drawing.building import plan, with_rods
from tests.core.drawing.measuring import collisions, strays

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import RodPlace
from foldwright.core.drawing.elevation import elevation
from foldwright.core.drawing.graph import raise_graph
from foldwright.core.drawing.lock import lock_drawing
from foldwright.core.drawing.model import Drawing
from foldwright.core.drawing.rail import headrail_from_back, headrail_from_room
from foldwright.core.drawing.section import side_section
from foldwright.core.drawing.spring_end import spring_end
from foldwright.core.drawing.table import table_layout
from foldwright.core.drawing.tags import figure_at
from foldwright.core.lift.choices import Lock
from foldwright.core.quantity.rounding import System
from foldwright.core.why.walking import walk_places

SHADES = {
    "worked": plan(),
    "narrow and tall": plan("11.8125", "95.5", row_count=13, column_count=2),
    "very wide": plan(120, "36.4375", row_count=4, column_count=12),
    "many rows and columns": plan(72, 96, row_count=13, column_count=8),
    "small": plan(14, 20, row_count=2, column_count=2),
    "looped": plan(fullness=1.5),
    "rods at rows": with_rods(plan(), RodPlace.ROWS),
    "rods in mid-fold": with_rods(plan(72, 96, row_count=13, column_count=8), RodPlace.MID_FOLD),
}
Draw = Callable[[ShadePlan, System], Drawing]


def _raised(view: Callable[[ShadePlan, float, System], Drawing], share: float) -> Draw:
    return lambda made, system: view(made, share, system)


def views() -> Iterator[tuple[str, Draw]]:
    for view in (elevation, side_section, raise_graph):
        for share in (0.0, 0.01, 0.45, 1.0):
            yield f"{view.__name__} at {share}", _raised(view, share)
    for still in (table_layout, headrail_from_back, headrail_from_room, spring_end):
        yield still.__name__, still
    unmarked = partial(headrail_from_room, tube_marks=False)
    yield "headrail_from_room without tube marks", unmarked


VIEWS = dict(views())


@pytest.mark.parametrize("shade", SHADES)
@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("system", System)
def test_no_words_run_into_each_other_or_off_the_sheet(
    shade: str, view: str, system: System
) -> None:
    drawing = VIEWS[view](SHADES[shade], system)
    assert collisions(drawing) == []
    assert strays(drawing) == []


@pytest.mark.parametrize("lock", [Lock.ONE_WAY, Lock.TWO_WAY, Lock.NONE])
def test_lock_sketches_can_be_read_too(lock: Lock) -> None:
    assert collisions(lock_drawing(lock)) == []
    assert strays(lock_drawing(lock)) == []


@pytest.mark.parametrize("shade", SHADES)
@pytest.mark.parametrize("view", VIEWS)
def test_every_tag_leads_to_a_figure_of_the_plan(shade: str, view: str) -> None:
    made = SHADES[shade]
    places = dict(walk_places(made))
    tags = list(VIEWS[view](made, System.INCH).tags())
    for path, name in tags:
        assert figure_at(made, path) is places[path]
        assert name == places[path].name
    assert tags


@pytest.mark.parametrize("path", ["size", "size.width.value", "layout.rows.marks.99", "nowhere"])
def test_a_path_without_a_figure_is_refused_by_name(path: str) -> None:
    with pytest.raises(LookupError, match=path):
        figure_at(plan(), path)


@pytest.mark.parametrize("view", VIEWS)
def test_every_drawing_says_what_it_is(view: str) -> None:
    drawing = VIEWS[view](plan(), System.INCH)
    assert drawing.title
    assert drawing.description.endswith(".")
