"""A figure knows all it rests on, and is only as good as the worst of it."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import chosen, derived, fact, measured
from foldwright.core.why.source import Status

WIDTH = measured("width", Length.mm(900))
ROWS = chosen("rows", 7, Unit.COUNT)
HABIT = fact("skirt", Length.mm(38), Unit.LENGTH, "It shows.", Status.HOUSE)


def test_the_family_holds_each_figure_once_nearest_first() -> None:
    middle = derived("middle", 1.0, Unit.RATIO, "{0}", WIDTH)
    end = derived("end", 1.0, Unit.RATIO, "{0} {1} {2}", middle, WIDTH, ROWS)
    assert [figure.name for figure in end.family()] == ["end", "middle", "width", "rows"]


def test_a_figure_rests_on_the_weakest_of_its_ground() -> None:
    good = derived("good", 1.0, Unit.RATIO, "{0}", WIDTH)
    weak = derived("weak", 1.0, Unit.RATIO, "{0} {1}", good, HABIT)
    assert good.rests_on is Status.MEASURED
    assert weak.rests_on is Status.HOUSE
    assert HABIT.rests_on is Status.HOUSE
