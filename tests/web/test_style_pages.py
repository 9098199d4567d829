"""The page of a shade in every style: it opens, is drawn at any raise, and can be pulled."""

from __future__ import annotations

import re
from html import unescape

import pytest
from starlette.testclient import TestClient
from tests.work.test_style_jobs import PLANS, READING

from foldwright.core.quantity.rounding import System
from foldwright.web.drawings import picture
from foldwright.work.book import Book

TAGS = list(PLANS)
SHARES = (0.0, 0.5, 1.0)
GRIP = re.compile(r'data-grip="([\d.]+)" x="([\d.-]+)" y="([\d.-]+)" width="([\d.]+)"')
BOX = re.compile(r'viewBox="0 0 ([\d.]+) ([\d.]+)"')


@pytest.fixture
def show_room(book: Book) -> int:
    return book.begin(READING.document).job_id


@pytest.mark.parametrize("tag", TAGS)
@pytest.mark.parametrize("share", SHARES)
def test_the_page_is_opened_and_its_drawing_pulled(
    client: TestClient, show_room: int, tag: str, share: float
) -> None:
    shade = f"/jobs/{show_room}/shades/{TAGS.index(tag) + 1}"
    page = client.get(f"{shade}?raise={share}")
    assert page.status_code == 200
    assert PLANS[tag].spec.design.style.value in page.text
    drawing = client.get(f"{shade}/drawing?raise={share}")
    assert drawing.status_code == 200
    assert "data-grip" in drawing.text


@pytest.mark.parametrize("tag", TAGS)
def test_the_grip_lies_along_the_cloth_and_rises_with_it(tag: str) -> None:
    heights = []
    for share in SHARES:
        plate = picture(PLANS[tag], share, System.INCH, "/why")
        assert plate is not None
        grip, box = GRIP.search(plate.plate), BOX.search(plate.plate)
        assert grip is not None
        assert box is not None
        _, x, y, width = (float(part) for part in grip.groups())
        assert x >= 0
        assert 0 < x + width < float(box[1])
        assert 0 < y < float(box[2])
        heights.append(y)
    assert heights[0] > heights[1] > heights[2]


@pytest.mark.parametrize("tag", TAGS)
def test_every_figure_of_the_page_has_its_why(client: TestClient, show_room: int, tag: str) -> None:
    shade = f"/jobs/{show_room}/shades/{TAGS.index(tag) + 1}"
    page = client.get(f"{shade}?raise=0.5").text
    asked = {unescape(one) for one in re.findall(r'href="([^"]*/why\?figure=[^"]+)"', page)}
    assert len(asked) > 50
    for address in sorted(asked)[::7]:
        assert client.get(f"{address}&part=why").status_code == 200, address
