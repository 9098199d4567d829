"""Shared generators: shades as the lift feels them."""

from __future__ import annotations

from hypothesis import strategies as st

from foldwright.core.weigh.folds import greatest_travel
from foldwright.core.weigh.load import Lump, PanelLoad

LONGEST_PITCH_M = 0.02


def between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False, allow_subnormal=False)


@st.composite
def panels(draw: st.DrawFn, *, looped: bool | None = None) -> PanelLoad:
    """Draw a shade of one to nine uneven rows, flat or looped, with lumps and tied rows."""
    rows = draw(st.integers(1, 9))
    loops = draw(st.booleans()) if looped is None else looped
    spacings = draw(st.lists(between(0.05, 0.3), min_size=rows - 1, max_size=rows - 1))
    fullness = draw(between(1.05, 2.5)) if loops else 1.0
    shade = PanelLoad(
        row_spacings_m=tuple(spacings),
        stacked_pitch_m=draw(between(0.0, LONGEST_PITCH_M)),
        skirt_cloth_m=draw(between(0.0, 0.2)),
        top_panel_m=draw(between(0.03, 0.3)),
        cloth_n_m=draw(between(0.5, 30.0)),
        bar_n=draw(between(0.0, 20.0)),
        rows_n=tuple(draw(st.lists(between(0.0, 1.5), min_size=rows, max_size=rows))),
        travel_m=0.01,
        fullness=fullness,
        backing_n_m=draw(between(0.0, 5.0)) if loops else 0.0,
        tied_rows=draw(st.integers(0, rows - 1)),
    )
    return _finished(draw, shade)


def _finished(draw: st.DrawFn, shade: PanelLoad) -> PanelLoad:
    """Add lumps that lie on their panels, and a travel within reach."""
    heights = (*shade.row_spacings_m, shade.top_panel_m)
    places = draw(st.lists(st.tuples(st.integers(0, len(heights) - 1), between(0, 1)), max_size=4))
    return PanelLoad(
        **{
            **{name: getattr(shade, name) for name in shade.__slots__},
            "lumps": tuple(
                Lump(
                    panel=index,
                    arc_m=share * shade.fullness * heights[index],
                    weight_n=draw(between(0.0, 2.0)),
                )
                for index, share in places
            ),
            "travel_m": draw(between(0.2, 1.0)) * greatest_travel(shade),
        }
    )
