"""What a number in a file may be: how it is read, and the bounds beyond which it is a slip.

The bounds are generous on purpose: they catch a wrong unit, a lost fraction or a
stray digit, never a daring design, which is for the rooms of the core to judge.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.measures import (
    read_areal_mass,
    read_force,
    read_line_mass,
    read_mass,
    read_number,
    read_share,
    read_torque,
)
from foldwright.work.part_reading import read_rate, read_stiffness


@dataclass(frozen=True, kw_only=True, slots=True)
class LengthLimits:
    """The shortest and the longest that a length can sensibly be."""

    least: Length = ZERO
    greatest: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class NumberKind:
    """What a number counts, how text for it is read, and the bounds that make sense."""

    noun: str
    unit: str
    read: Callable[[str], float]
    least: float
    greatest: float
    zero: bool = False


def _mm(least: str, greatest: str) -> LengthLimits:
    return LengthLimits(least=Length.mm(least), greatest=Length.mm(greatest))


_SPAN = _mm("100", "8000")
_WALL = _mm("0", "20000")
_ALLOWANCE = _mm("0", "1000")
_SECTION = _mm("0.05", "300")
_FINE = _mm("0.05", "20")
_PART = _mm("1", "8000")

_LENGTHS: dict[str, LengthLimits] = {
    **dict.fromkeys(
        (
            "width_top",
            "width_middle",
            "width_bottom",
            "height_left",
            "height_centre",
            "height_right",
            "casing_width",
            "casing_height",
            "width",
            "drop",
            "across",
        ),
        _SPAN,
    ),
    **dict.fromkeys(("diagonal_falling", "diagonal_rising"), _mm("150", "12000")),
    **dict.fromkeys(("wall_left", "wall_right", "wall_above", "floor_to_head"), _WALL),
    **dict.fromkeys(
        ("glass_below_head", "obstruction_above_sill", "inward_sash_below_head"), _mm("0", "8000")
    ),
    **dict.fromkeys(("box_length", "longest_passage"), _mm("100", "15000")),
    **dict.fromkeys(("receivedroll.length", "stockbar.length"), _mm("100", "200000")),
    **dict.fromkeys(("least_order", "whole_rolls"), _mm("100", "200000")),
    **dict.fromkeys(("sold_by", "order_increment"), _mm("1", "10000")),
    **dict.fromkeys(("repeat_begins", "foundflaw.along"), _mm("0", "200000")),
    **dict.fromkeys(("motif_from_edge", "head_loss", "foundflaw.across"), _mm("0", "5000")),
    "foundflaw.length": _mm("1", "200000"),
    "foundflaw.width": _mm("1", "15000"),
    **dict.fromkeys(("smallwork.width", "smallwork.length"), _mm("20", "5000")),
    "rackpiece.length": _mm("10", "200000"),  # a rest of a spool of cord as well
    **dict.fromkeys(("shank", "thread"), _mm("1", "200")),
    "motif_height": _mm("5", "3000"),
    **dict.fromkeys(("motif_above_hem", "band_above_hem", "side_band_inset"), _mm("0", "8000")),
    "usable_width": _mm("5", "15000"),  # of a trim as well
    **dict.fromkeys(("load_drop", "stock_length"), _mm("100", "15000")),
    **dict.fromkeys(("vertical_repeat", "horizontal_repeat"), _mm("5", "3000")),
    **dict.fromkeys(("body_length", "least_tube_length"), _PART),
    "chain_loop_length": _mm("50", "5000"),
    **dict.fromkeys(("wire", "diameter", "diameter_low", "diameter_high"), _FINE),
    "largest_row_spacing": _mm("30", "1000"),
    **dict.fromkeys(("largest_pitch", "widest_swag"), _mm("50", "2000")),
    **dict.fromkeys(("wide_from", "middle_piece"), _mm("100", "8000")),
    "bar.width": _SECTION,
    "tape.width": _SECTION,
    "bracket.width": _SECTION,
    "bracket.depth": _SECTION,
    "bracket.height": _SECTION,
    **dict.fromkeys(("rod.diameter", "rod.width"), _mm("0.5", "50")),
    **dict.fromkeys(("pocket_allowance", "rod_pocket"), _mm("1", "300")),
    **dict.fromkeys(
        (
            "thickness",
            "depth",
            "outside",
            "wall",
            "load_tube_outside",
            "least_tube_inside",
            "mean_coil",
            "sprocket_radius",
        ),
        _SECTION,
    ),
}


def length_limits(name: str, record: str = "") -> LengthLimits:
    """Give the limits of a length field; `record` decides where a name is used twice.

    >>> length_limits("width", "Bar").greatest < length_limits("width", "AskedSize").greatest
    True
    """
    return _LENGTHS.get(f"{record.lower()}.{name}") or _LENGTHS.get(name, _ALLOWANCE)


_TURNS = NumberKind(
    noun="a number of turns", unit="turn", read=read_number, least=0, greatest=200, zero=True
)
_SHARE = NumberKind(
    noun="a share between 0 and 1", unit="1", read=read_share, least=0, greatest=1, zero=True
)
_RATIO = NumberKind(
    noun="a number", unit="1", read=read_number, least=0, greatest=10_000, zero=True
)
AREAL_MASS = NumberKind(
    noun="a mass per area", unit="kg/m2", read=read_areal_mass, least=0.005, greatest=5
)

_BY_NAME: dict[str, NumberKind] = {
    **dict.fromkeys(
        (
            "areal_mass_spread",
            "rate_spread",
            "cloth_mass_spread",
            "shrinkage",
            "lining_shrinkage",
            "steam_shrinkage",
            "load_margin",
            "load_friction",
            "spring_hysteresis",
            "tube_sag_share",
        ),
        _SHARE,
    ),
    **dict.fromkeys(
        (
            "turns",
            "load_turns",
            "greatest_turns",
            "limit_turns",
            "safety_wraps",
            "release_turns",
            "lock_pitch_turns",
            "winding_step_turns",
        ),
        _TURNS,
    ),
    "raise_limit_share": NumberKind(
        noun="a share between 0 and 1", unit="1", read=read_share, least=0.05, greatest=1
    ),
    "efficiency": NumberKind(
        noun="a share between 0 and 1", unit="1", read=read_share, least=0.05, greatest=1
    ),
    **dict.fromkeys(
        (
            "fullness",
            "looped_fullness",
            "width_fullness",
            "balloon_width_fullness",
            "gathered_width_fullness",
            "austrian_fullness",
        ),
        NumberKind(noun="a fullness", unit="1", read=read_number, least=1, greatest=4),
    ),
    "gear_ratio": NumberKind(
        noun="a gear ratio", unit="1", read=read_number, least=0.1, greatest=50
    ),
    "active_coils": NumberKind(
        noun="a number of coils", unit="1", read=read_number, least=1, greatest=5000
    ),
    "motor_margin": NumberKind(
        noun="a factor of at least 1", unit="1", read=read_number, least=1, greatest=5
    ),
    "cost": NumberKind(
        noun="a price", unit="1", read=read_number, least=0, greatest=100_000, zero=True
    ),
}

# Longest endings first, since `_n_m` also ends `rate_n_m`.
_BY_ENDING: tuple[tuple[str, NumberKind], ...] = (
    (
        "_n_m_turn",
        NumberKind(
            noun="a spring rate", unit="N.m/turn", read=read_rate, least=0.0001, greatest=10
        ),
    ),
    (
        "_n_m_s",
        NumberKind(
            noun="a drag in N.m.s",
            unit="N.m.s",
            read=read_number,
            least=0,
            greatest=10,
            zero=True,
        ),
    ),
    (
        "_n_m",
        NumberKind(noun="a torque", unit="N.m", read=read_torque, least=0, greatest=200, zero=True),
    ),
    ("_kg_m2", AREAL_MASS),
    (
        "_kg_m3",
        NumberKind(
            noun="a density in kg/m3", unit="kg/m3", read=read_number, least=50, greatest=9000
        ),
    ),
    (
        "_kg_m",
        NumberKind(
            noun="a mass per length", unit="kg/m", read=read_line_mass, least=0.0005, greatest=30
        ),
    ),
    (
        "_kg",
        NumberKind(noun="a mass", unit="kg", read=read_mass, least=0, greatest=100, zero=True),
    ),
    (
        "_m_s",
        NumberKind(noun="a speed in m/s", unit="m/s", read=read_number, least=0.01, greatest=10),
    ),
    (
        "_pa",
        NumberKind(noun="a stiffness", unit="Pa", read=read_stiffness, least=1e8, greatest=1e12),
    ),
    (
        "_rpm",
        NumberKind(
            noun="turns a minute", unit="turn/min", read=read_number, least=1, greatest=1000
        ),
    ),
    (
        "_n",
        NumberKind(noun="a force", unit="N", read=read_force, least=0.1, greatest=20_000),
    ),
)


def number_kind(name: str) -> NumberKind:
    """Give what a number field holds, told by its name as everywhere in this project.

    >>> number_kind("torque_n_m").unit, number_kind("bar_kg").noun
    ('N.m', 'a mass')
    """
    endings = (kind for ending, kind in _BY_ENDING if name.endswith(ending))
    return _BY_NAME.get(name) or next(endings, _RATIO)


_COUNTS = {
    "row_count": (1, 60),
    "column_count": (2, 40),
    "tied_rows": (0, 10),
    "alike_after": (1, 4),
    "springs_side_by_side": (1, 4),
    "count": (2, 60),
    "drop_steps": (2, 12),
    "quantity": (0, 100_000),
}


def count_limits(name: str) -> tuple[int, int]:
    """Give the least and the greatest of a field that is counted in whole numbers."""
    return _COUNTS.get(name, (0, 1000))
