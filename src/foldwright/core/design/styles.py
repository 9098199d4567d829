"""The styles of the house, by the name in the job file; a new style is one line here."""

from __future__ import annotations

from foldwright.core.design.choices import StyleName
from foldwright.core.design.flat import FlatStyle
from foldwright.core.design.looped import LoopedStyle
from foldwright.core.design.style import Style

STYLES: dict[StyleName, Style] = {style.name: style for style in (FlatStyle(), LoopedStyle())}


def style_of(name: StyleName) -> Style:
    """Find a style by its name.

    Takes: the name.

    Gives: the style.

    Source: derived here.

    >>> style_of(StyleName.LOOPED).name.value
    'looped'
    """
    return STYLES[name]
