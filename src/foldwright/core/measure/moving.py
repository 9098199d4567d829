"""Move a shade inside or outside, leaving behind what belongs to the other mount."""

from __future__ import annotations

from typing import Any

from foldwright.core.measure.opening import MountPlace
from foldwright.core.measure.site import Site
from foldwright.core.why.figure import Figure
from foldwright.core.why.trying import Way, by_change

OUTSIDE_FIELDS = ("overlap_left", "overlap_right", "above", "below")


def move(site: Site, place: MountPlace, sentence: str, *figures: Figure[Any]) -> Way[Site]:
    """Make the way that mounts the shade in a place.

    Takes: the site; the place; the way's sentence and the figures in it.

    Gives: a way that also clears the fields that mean nothing in that place.

    Source: derived here.
    """
    fields = {"mount__place": place, **_left_behind(site, place)}
    return by_change(site, site.system, sentence, *figures, **fields)


def _left_behind(site: Site, place: MountPlace) -> dict[str, object]:
    """Clear only what is typed, so that a remedy changes no more than it must."""
    names = OUTSIDE_FIELDS if place is MountPlace.INSIDE else ("deduction",)
    typed = [name for name in names if getattr(site.mount, name) is not None]
    cleared: dict[str, object] = {f"mount__{name}": None for name in typed}
    if place is MountPlace.INSIDE and site.mount.returns:
        cleared["mount__returns"] = False
    return cleared
