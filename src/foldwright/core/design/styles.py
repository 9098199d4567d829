"""The styles of the house, by the name in the job file; a new style is one line here."""

from __future__ import annotations

from foldwright.core.design.austrian import AustrianStyle
from foldwright.core.design.cascade import CascadeStyle
from foldwright.core.design.choices import StyleName
from foldwright.core.design.flat import FlatStyle
from foldwright.core.design.gathered import BalloonStyle, GatheredStyle
from foldwright.core.design.london import LondonStyle
from foldwright.core.design.looped import LoopedStyle
from foldwright.core.design.order import Order
from foldwright.core.design.relaxed import RelaxedStyle
from foldwright.core.design.style import Style
from foldwright.core.design.tucked import TuckedStyle
from foldwright.core.design.untyped_rows import untyped_row_count
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen

ALL: tuple[Style, ...] = (
    FlatStyle(),
    LoopedStyle(),
    CascadeStyle(),
    TuckedStyle(),
    RelaxedStyle(),
    LondonStyle(),
    BalloonStyle(),
    GatheredStyle(),
    AustrianStyle(),
)
STYLES: dict[StyleName, Style] = {style.name: style for style in ALL}


def row_count(order: Order) -> Figure[int]:
    """Tell how many ring rows a shade has.

    Takes: the order.

    Gives: as typed, else as its style and the headrail want them.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> row_count(ORDER).value
    7
    """
    typed = order.design.row_count
    if typed is not None:
        return chosen("number of rows", typed, Unit.COUNT)
    return untyped_row_count(order, style_of(order.design.style))


def style_of(name: StyleName) -> Style:
    """Find a style by its name.

    Takes: the name.

    Gives: the style.

    Source: derived here.

    >>> style_of(StyleName.LOOPED).name.value
    'looped'
    """
    return STYLES[name]
