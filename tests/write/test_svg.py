import re
from itertools import pairwise
from xml.etree import ElementTree as ET

import pytest
from tests.core.drawing.building import plan

from foldwright.core.drawing.elevation import elevation
from foldwright.core.drawing.graph import raise_graph
from foldwright.core.drawing.lock import lock_drawing
from foldwright.core.drawing.model import (
    Along,
    Anchor,
    AnyElement,
    Arc,
    Box,
    Circle,
    Dimension,
    Drawing,
    Element,
    Hatch,
    Layer,
    Line,
    LineKind,
    Point,
    Polyline,
    Rectangle,
    Tag,
    Text,
)
from foldwright.core.drawing.section import side_section
from foldwright.core.drawing.table import table_layout
from foldwright.core.lift.choices import Lock
from foldwright.core.quantity.rounding import System
from foldwright.write.strokes import Place, draw
from foldwright.write.svg import svg

SVG = "{http://www.w3.org/2000/svg}"


def drawing_of(*elements: AnyElement, scale: float = 10.0) -> Drawing:
    return Drawing(
        name="test",
        title="A test",
        seen_from="from the room",
        description="A thing < another & more.",
        extent=Box(left=-100.0, bottom=-50.0, right=900.0, top=450.0),
        scale=scale,
        elements=elements,
    )


def tree(drawing: Drawing, **options: str) -> ET.Element:
    return ET.fromstring(svg(drawing, **options))  # noqa: S314 - our own output


def only(root: ET.Element, tag: str) -> ET.Element:
    found = [element for element in root.iter(SVG + tag) if element.get("class") != "hatch"]
    assert len(found) == 1, [element.attrib for element in found]
    return found[0]


REAL = {
    "elevation": elevation(plan(), 0.5, System.INCH),
    "section": side_section(plan(), 0.5, System.INCH),
    "graph": raise_graph(plan(), 0.5, System.INCH),
    "table": table_layout(plan(), System.INCH),
    "lock": lock_drawing(Lock.ONE_WAY),
}


@pytest.mark.parametrize("name", REAL)
def test_it_can_stand_in_a_page_that_forbids_inline_styles_and_scripts(name: str) -> None:
    text = svg(REAL[name])
    assert not re.search(r"\sstyle=|<style|<script|\son\w+=|href=\"(?!#)", text)
    assert "http" not in text.replace("http://www.w3.org/2000/svg", "")


@pytest.mark.parametrize("name", REAL)
def test_every_number_is_written_short_and_finite(name: str) -> None:
    text = re.sub(r">[^<]*<", "><", svg(REAL[name]))
    assert "nan" not in text
    assert "inf" not in text
    assert not re.search(r"\d\.\d{3}", text)


@pytest.mark.parametrize("name", REAL)
def test_references_lead_to_ids_that_exist_once(name: str) -> None:
    text = svg(REAL[name])
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids))
    wanted = re.findall(r"url\(#([^)]+)\)", text)
    wanted += re.findall(r'aria-labelledby="([^"]+)"', text)
    wanted += re.findall(r'aria-describedby="([^"]+)"', text)
    assert set(wanted) <= set(ids)


def test_drawings_in_one_page_never_share_an_id() -> None:
    ids = [re.findall(r'\bid="([^"]+)"', svg(drawing)) for drawing in REAL.values()]
    flat = [one for some in ids for one in some]
    assert len(flat) == len(set(flat))


def test_the_size_is_that_on_paper() -> None:
    root = tree(drawing_of())
    assert root.get("viewBox") == "0 0 100 50"
    assert (root.get("width"), root.get("height")) == ("100mm", "50mm")


def test_title_and_description_are_told_and_escaped() -> None:
    root = tree(drawing_of())
    title, description = only(root, "title"), only(root, "desc")
    assert title.text == "A test, seen from the room"
    assert description.text == "A thing < another & more."
    assert root.get("aria-labelledby") == title.get("id")
    assert root.get("role") == "img"


def test_coordinates_run_down_the_paper_from_the_top_left() -> None:
    line = Line(start=Point(-100.0, 450.0), end=Point(0.0, 250.0), layer=Layer.CLOTH)
    assert only(tree(drawing_of(line)), "path").get("d") == "M0 0L10 20"


@pytest.mark.parametrize(
    ("kind", "width", "dashed"),
    [
        (LineKind.VISIBLE, "0.5", False),
        (LineKind.THIN, "0.25", False),
        (LineKind.HIDDEN, "0.25", True),
        (LineKind.CENTRE, "0.25", True),
        (LineKind.ELSEWHERE, "0.25", True),
    ],
)
def test_line_kinds_differ_in_width_and_dashes(kind: LineKind, width: str, dashed: bool) -> None:  # noqa: FBT001 - a table of cases
    line = Line(start=Point(0, 0), end=Point(9, 9), layer=Layer.CLOTH, kind=kind)
    path = only(tree(drawing_of(line)), "path")
    assert path.get("stroke-width") == width
    assert (path.get("stroke-dasharray") is not None) == dashed
    assert path.get("class") == f"line-{kind.value}"


def test_dashes_tell_every_kind_apart() -> None:
    looks = set()
    for kind in LineKind:
        line = Line(start=Point(0, 0), end=Point(9, 9), layer=Layer.CLOTH, kind=kind)
        path = only(tree(drawing_of(line)), "path")
        looks.add((path.get("stroke-width"), path.get("stroke-dasharray")))
    assert len(looks) == len(LineKind)


def test_layers_are_groups_in_drawing_order() -> None:
    dots = [
        Circle(centre=Point(0, 0), radius=5.0, layer=layer)
        for layer in (Layer.WINDOW, Layer.CLOTH, Layer.CLOTH, Layer.WINDOW)
    ]
    groups = [group.get("class") for group in tree(drawing_of(*dots)).iter(SVG + "g")]
    assert groups == ["layer-window", "layer-cloth", "layer-window"]


def test_a_box_and_a_circle_are_measured_on_paper() -> None:
    box = Rectangle(corner=Point(0, 50), width=200, height=100, layer=Layer.BOARD)
    circle = Circle(centre=Point(0, 450), radius=30, layer=Layer.TUBE, filled=True)
    root = tree(drawing_of(box, circle))
    drawn, dot = only(root, "rect"), only(root, "circle")
    assert [drawn.get(k) for k in ("x", "y", "width", "height")] == ["10", "30", "20", "10"]
    assert [dot.get(k) for k in ("cx", "cy", "r", "fill")] == ["10", "0", "3", "currentColor"]


def test_a_polyline_is_closed_only_where_it_should_be() -> None:
    points = (Point(0, 0), Point(10, 0), Point(10, 10))
    for closed, end in ((True, "Z"), (False, "44")):
        line = Polyline(points=points, closed=closed, layer=Layer.CLOTH)
        assert (only(tree(drawing_of(line)), "path").get("d") or "").endswith(end)


@pytest.mark.parametrize(
    ("first", "last", "reverse", "flags"),
    [(0.0, 90.0, False, "0 0"), (0.0, 270.0, False, "1 0"), (90.0, 0.0, True, "0 1")],
)
def test_arcs_take_the_way_round_they_should(
    first: float,
    last: float,
    reverse: bool,  # noqa: FBT001 - a table of cases
    flags: str,
) -> None:
    arc = Arc(
        centre=Point(0, 0),
        radius=50,
        from_degrees=first,
        to_degrees=last,
        reverse=reverse,
        layer=Layer.LOCK,
    )
    assert f"A5 5 0 {flags} " in (only(tree(drawing_of(arc)), "path").get("d") or "")


def test_an_arrow_points_where_its_line_ends() -> None:
    line = Line(start=Point(0, 0), end=Point(200, 0), arrow=True, layer=Layer.NOTES)
    head = [p for p in tree(drawing_of(line)).iter(SVG + "path") if p.get("class") == "head"]
    numbers = [float(n) for n in re.findall(r"[\d.]+", head[0].get("d") or "")]
    tip, *barbs = list(zip(numbers[::2], numbers[1::2], strict=True))
    assert tip == (30.0, 45.0)
    assert all(x < tip[0] for x, _ in barbs)


def test_letters_stand_about_their_place_in_millimetres() -> None:
    text = Text(at=Point(0, 450), words="5 < 6", anchor=Anchor.END, strong=True, layer=Layer.NOTES)
    words = only(tree(drawing_of(text)), "text")
    assert words.text == "5 < 6"
    assert [words.get(k) for k in ("font-size", "text-anchor", "font-weight")] == [
        "3.9",
        "end",
        "600",
    ]
    assert float(words.get("y") or 0) == pytest.approx(0.36 * 3.9, abs=0.01)


def test_upright_letters_are_read_from_the_right() -> None:
    text = Text(at=Point(0, 450), words="drop", upright=True, layer=Layer.NOTES)
    assert only(tree(drawing_of(text)), "text").get("transform") == "rotate(-90 10 0)"


def test_backed_letters_stand_on_clear_ground() -> None:
    text = Text(at=Point(0, 450), words="drop", backed=True, layer=Layer.NOTES)
    root = tree(drawing_of(text))
    order = [element.tag for element in root.iter() if element.tag in {SVG + "rect", SVG + "text"}]
    assert order == [SVG + "rect", SVG + "text"]
    assert only(root, "rect").get("fill") == "#fff"


def dimension(along: Along, end: Point, line_at: float) -> ET.Element:
    made = Dimension(
        start=Point(0, 0), end=end, line_at=line_at, along=along, words="48 in", layer=Layer.SIZES
    )
    return tree(drawing_of(made))


def paths(root: ET.Element, name: str) -> list[list[float]]:
    return [
        [float(n) for n in re.findall(r"-?[\d.]+", path.get("d") or "")]
        for path in root.iter(SVG + "path")
        if (path.get("class") or "").startswith(name)
    ]


def test_a_dimension_across_has_its_figure_above_the_line() -> None:
    root = dimension(Along.ACROSS, Point(400, 0), 100)
    first, last, line = paths(root, "line-")
    assert line == [10.0, 35.0, 50.0, 35.0]
    assert first[0] == first[2] == 10.0
    assert last[0] == last[2] == 50.0
    assert first[3] < 35.0 < first[1]  # from near the thing to beyond the line
    words = only(root, "text")
    assert (words.get("x"), words.get("transform")) == ("30", None)
    assert float(words.get("y") or 0) < 35.0


def test_a_dimension_up_has_its_figure_left_of_the_line_and_turned() -> None:
    root = dimension(Along.UP, Point(0, 400), 100)
    assert paths(root, "line-")[2] == [20.0, 45.0, 20.0, 5.0]
    turn = only(root, "text").get("transform") or ""
    x = float(turn.split()[1])
    assert turn.startswith("rotate(-90 ")
    assert x < 20.0


def test_heads_go_outside_where_there_is_no_room_between() -> None:
    def tips_point_outwards(length: float) -> bool:
        (tip_x, _, *barbs), _ = paths(dimension(Along.ACROSS, Point(length, 0), 100), "head")
        return all(x > tip_x for x in barbs[::2])

    assert tips_point_outwards(400)
    assert not tips_point_outwards(40)


def test_like_hatches_share_a_pattern() -> None:
    outline = (Point(0, 0), Point(10, 0), Point(10, 10))
    hatches = [Hatch(outline=outline, layer=Layer.BOARD, degrees=angle) for angle in (45, 45, -45)]
    root = tree(drawing_of(*hatches))
    turned = [p.get("patternTransform") for p in root.iter(SVG + "pattern")]
    assert turned == ["rotate(-45)", "rotate(45)"]
    fills = [p.get("fill") for p in root.iter(SVG + "path") if p.get("class") == "hatched"]
    assert len(fills) == 3
    assert len(set(fills)) == 2


TAG = Tag("size.width", "finished width")
TAGGED = Text(at=Point(0, 0), words="48 in", layer=Layer.SIZES, tag=TAG)


def test_a_figure_is_a_button_that_says_its_name_and_value() -> None:
    root = tree(drawing_of(TAGGED))
    figure = next(g for g in root.iter(SVG + "g") if g.get("data-figure"))
    assert figure.attrib == {
        "data-figure": "size.width",
        "tabindex": "0",
        "role": "button",
        "aria-label": "finished width: 48 in",
    }
    assert root.get("role") == "group"  # an image may not hold buttons


def test_a_figure_is_a_link_where_its_why_has_an_address() -> None:
    text = svg(drawing_of(TAGGED), why=lambda path: f"/why?a=1&figure={path}")
    link = only(ET.fromstring(text), "a")  # noqa: S314 - our own output
    assert link.get("href") == "/why?a=1&figure=size.width"
    assert link.get("aria-label") == "finished width: 48 in"


def test_a_finger_has_room_around_a_figure() -> None:
    area = only(tree(drawing_of(TAGGED)), "rect")
    assert area.get("pointer-events") == "all"
    assert float(area.get("width") or 0) >= 12
    assert float(area.get("height") or 0) >= 8


def test_a_mark_without_words_is_no_stop_for_the_keyboard() -> None:
    mark = Circle(centre=Point(0, 0), radius=1, layer=Layer.ROWS, tag=TAG)
    root = tree(drawing_of(mark))
    figure = next(g for g in root.iter(SVG + "g") if g.get("data-figure"))
    assert figure.get("tabindex") is None


def test_every_tag_of_a_real_drawing_is_written() -> None:
    for drawing in REAL.values():
        written = set(re.findall(r'data-figure="([^"]+)"', svg(drawing)))
        assert written == {tag.path for tag in drawing.tags()}


def test_all_its_words_are_written_in_order() -> None:
    for drawing in REAL.values():
        assert [t.text for t in tree(drawing).iter(SVG + "text")] == list(drawing.words())


def test_letters_are_asked_for_by_family() -> None:
    assert tree(drawing_of()).get("font-family") == "system-ui, sans-serif"
    assert tree(drawing_of(), fonts="Inter").get("font-family") == "Inter"


def test_an_element_of_no_known_kind_is_refused() -> None:
    with pytest.raises(TypeError, match="Element"):
        draw(Element(layer=Layer.CLOTH), Place(0.0, 0.0, 1.0, "test"))


def test_a_raise_redraws_small() -> None:
    sizes = [len(svg(elevation(plan(), share / 4, System.INCH))) for share in range(5)]
    assert max(sizes) < 20_000
    assert all(a != b for a, b in pairwise(sizes[:3]))
