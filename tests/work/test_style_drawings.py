"""The views of the show-room's shades: every word stands clear, every mark leads to a figure."""

from __future__ import annotations

import pytest
from tests.core.drawing.measuring import collisions, strays
from tests.core.drawing.test_every_drawing import VIEWS
from tests.work.test_style_jobs import PLANS

from foldwright.core.drawing.tags import figure_at
from foldwright.core.quantity.rounding import System


@pytest.mark.parametrize("tag", PLANS)
@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("system", System)
def test_words_stand_clear_and_marks_lead_to_figures(tag: str, view: str, system: System) -> None:
    drawing = VIEWS[view](PLANS[tag], system)
    assert collisions(drawing) == []
    assert strays(drawing) == []
    assert all(figure_at(PLANS[tag], each.path) is not None for each in drawing.tags())
