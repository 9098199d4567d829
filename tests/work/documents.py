"""Documents for the tests: a small one that reads, and random ones of the same make."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from hypothesis import strategies as st

SMALL: dict[str, Any] = {
    "job": {"name": "Mill house", "system": "inch"},
    "shades": [
        {
            "tag": "Stair",
            "opening": {"width_top": "35 3/16", "height_left": 54},
            "mount": {"place": "inside", "height_rule": "clear sill"},
            "design": {"style": "flat", "row_count": 7},
            "materials": {"face": "Harbour linen, flax"},
            "lift": {"kind": "spring", "lock": "two-way", "turns": 11.5},
        }
    ],
}


def small() -> dict[str, Any]:
    """Give a fresh copy of the small document."""
    return deepcopy(SMALL)


def with_field(path: str, value: Any) -> dict[str, Any]:
    """Give the small document with one field of its shade typed anew."""
    document = small()
    *tables, key = path.split(".")
    table = document["shades"][0]
    for name in tables:
        table = table.setdefault(name, {})
    table[key] = value
    return document


letters = st.text(st.characters(exclude_categories=("Cs",)), max_size=30)
leaves = st.one_of(
    letters,
    st.integers(-(10**12), 10**12),
    st.floats(allow_nan=False, allow_infinity=False),
    st.booleans(),
)
anything = st.recursive(
    st.one_of(leaves, st.none(), st.floats()),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(letters, inner, max_size=3),
    max_leaves=8,
)


@st.composite
def fractions(draw: st.DrawFn) -> str:
    """Draw a length as on a tape: 35 3/16 in."""
    bottom = draw(st.sampled_from([2, 4, 8, 16, 32, 64]))
    return f"{draw(st.integers(6, 90))} {draw(st.integers(1, bottom - 1))}/{bottom} in"


lengths = st.one_of(
    fractions(),
    st.integers(160, 2400).map(lambda mm: f"{mm} mm"),
    st.integers(16, 240).map(lambda cm: f"{cm} cm"),
)
bare_lengths = {
    "inch": st.one_of(st.integers(6, 90), st.decimals("6", "90", places=4).map(float)),
    "metric": st.one_of(st.integers(160, 2400), st.decimals("160", "2400", places=1).map(float)),
}
NAMED = ("width_top", "width_middle", "height_left", "height_right")


def openings(system: str) -> st.SearchStrategy[dict[str, Any]]:
    """Draw an opening of which some is measured."""
    either = st.one_of(lengths, bare_lengths[system])
    printable = letters.filter(lambda text: text.isprintable())
    return st.fixed_dictionaries(
        {},
        optional=dict.fromkeys(NAMED, either) | {"sill": st.booleans(), "obstruction": printable},
    )


def shades(system: str) -> st.SearchStrategy[dict[str, Any]]:
    """Draw a shade of which some is known."""
    lift = st.fixed_dictionaries(
        {"kind": st.sampled_from(["spring", "clutch", "motor"])},
        optional={"turns": st.floats(0, 40), "hand_force_limit_n": st.just("5 lbf")},
    )
    mounts = st.sampled_from([{"place": "inside"}, {"place": "outside", "above": "3 1/2 in"}])
    return st.fixed_dictionaries(
        {"tag": st.uuids().map(str)},
        optional={"opening": openings(system), "mount": mounts, "lift": lift},
    )


@st.composite
def documents(draw: st.DrawFn) -> dict[str, Any]:
    """Draw a document that reads without a fault."""
    system = draw(st.sampled_from(["inch", "metric"]))
    document: dict[str, Any] = {
        "job": {"name": draw(st.uuids().map(str)), "system": system},
        "shades": draw(st.lists(shades(system), max_size=3)),
    }
    if draw(st.booleans()):
        document["habits"] = {"skirt": "1 in", "load_margin": "10 %"}
    return document
