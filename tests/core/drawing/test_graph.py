from dataclasses import replace
from itertools import pairwise

import pytest
from tests.core.drawing.building import SPEC, plan

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.graph import raise_graph
from foldwright.core.drawing.model import (
    Circle,
    Drawing,
    Hatch,
    Layer,
    Line,
    LineKind,
    Polyline,
    Text,
)
from foldwright.core.lift.balance import RaiseCurve
from foldwright.core.quantity.rounding import System

# A curve that can be read with the eye: a metre of raise, one pick-up half way.
CURVE = RaiseCurve(
    raise_m=(0.0, 0.5, 0.5, 1.0),
    load_n=(2.0, 4.0, 6.0, 8.0),
    load_low_n=(1.0, 3.0, 5.0, 7.0),
    load_high_n=(3.0, 5.0, 7.0, 9.0),
    spring_n=(18.0, 14.0, 14.0, 10.0),
    spring_lifting_n=(16.0, 12.0, 12.0, 8.0),
    spring_resisting_n=(20.0, 16.0, 16.0, 12.0),
)


def drawn(share: float, system: System = System.METRIC, curve: RaiseCurve = CURVE) -> Drawing:
    made = plan()
    assert made.balance is not None
    return raise_graph(replace(made, balance=replace(made.balance, curve=curve)), share, system)


def lines(drawing: Drawing, layer: Layer) -> list[Polyline]:
    return [e for e in drawing.elements if isinstance(e, Polyline) and e.layer is layer]


def test_load_and_spring_share_one_scale() -> None:
    load = lines(drawn(0.0), Layer.LOAD)[0].points
    lifting = lines(drawn(0.0), Layer.SPRING)[0].points
    assert lifting[-1] == load[-1]  # both 8 N fully raised
    assert load[2].x == load[1].x  # a pick-up is a step
    steps = [b.y - a.y for a, b in pairwise(load)]
    assert steps == pytest.approx([steps[0]] * 3)  # 2 N each


def test_lines_differ_by_kind_and_by_the_words_at_their_end() -> None:
    drawing = drawn(0.0)
    kinds = [line.kind for line in lines(drawing, Layer.LOAD) + lines(drawing, Layer.SPRING)]
    assert len(set(kinds)) == len(kinds) == 4
    assert {"Load, 14.5 N raised", "Spring lifts", "Spring resists"} <= set(drawing.words())


def test_the_heading_names_the_turns_it_is_drawn_at() -> None:
    wound = drawn(0.5, curve=replace(CURVE, turns=11.5))
    (heading,) = [words for words in wound.words() if words.startswith("Raised")]
    assert heading == "Raised 500 mm: load 6 N, spring lifts 12 N with 11.5 turns"
    assert "the spring with 11.5 turns lifts" in wound.description


def test_doubt_and_friction_are_hatched_apart() -> None:
    hatches = [e for e in drawn(0.0).elements if isinstance(e, Hatch)]
    assert [hatch.layer for hatch in hatches] == [Layer.LOAD, Layer.SPRING]
    assert hatches[0].degrees != hatches[1].degrees


def test_the_marker_stands_on_the_lines_at_the_present_raise() -> None:
    drawing = drawn(0.25)
    dots = [e for e in drawing.elements if isinstance(e, Circle)]
    load, lifting = lines(drawing, Layer.LOAD)[0], lines(drawing, Layer.SPRING)[0]
    middle_of_load = (load.points[0].y + load.points[1].y) / 2
    middle_of_lift = (lifting.points[0].y + lifting.points[1].y) / 2
    assert [dot.centre.y for dot in dots] == pytest.approx([middle_of_load, middle_of_lift])
    assert "Raised 250 mm: load 3 N, spring lifts 14 N" in list(drawing.words())


def test_the_marker_moves_across_the_plot() -> None:
    def at(share: float) -> float:
        markers = [
            e for e in drawn(share).elements if isinstance(e, Line) and e.layer is Layer.MARKER
        ]
        return markers[0].start.x

    assert at(0.5) - at(0.0) == pytest.approx(at(1.0) - at(0.5))
    assert at(1.0) > at(0.0)


def test_axes_have_round_figures_in_the_readers_units() -> None:
    metric, inch = set(drawn(0.0).words()), set(drawn(0.0, System.INCH).words())
    assert {"Raise, mm", "Force on all cords, N", "200", "1000", "5", "20"} <= metric
    assert {"Raise, in", "Force on all cords, lbf", "10", "30", "1", "4"} <= inch


def test_a_clutch_has_a_load_and_no_spring() -> None:
    bare = replace(CURVE, spring_n=(), spring_lifting_n=(), spring_resisting_n=())
    drawing = drawn(0.5, curve=bare)
    assert lines(drawing, Layer.SPRING) == []
    assert not any("pring" in words for words in drawing.words())
    assert "spring" not in drawing.description


def test_labels_stand_apart_where_lines_meet() -> None:
    labels = [
        e.at.y
        for e in drawn(0.0).elements
        if isinstance(e, Text) and e.layer in {Layer.LOAD, Layer.SPRING}
    ]
    gaps = [b - a for a, b in pairwise(sorted(labels))]
    assert min(gaps) >= 4.9


def test_every_line_kind_is_one_of_the_standard() -> None:
    assert {e.kind for e in drawn(0.3).elements} <= set(LineKind)


def test_without_a_balance_it_says_what_is_missing() -> None:
    drawing = raise_graph(ShadePlan(spec=SPEC), 0.0, System.INCH)
    assert list(drawing.words()) == [drawing.description]
