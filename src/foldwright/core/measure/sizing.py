"""The finished width and the finished drop, by the mount and by what was asked for."""

from __future__ import annotations

from dataclasses import replace

from foldwright.core.measure.opening import HeightRule
from foldwright.core.measure.site import Site, greatest, least, nothing, typed_or
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, fact, measured
from foldwright.core.why.source import Source, Status

L = Figure[Length]

NARROWEST_RULE = Source(id="measuring-page", clause="inside mount, width")
LONGEST_RULE = Source(id="measuring-page", clause="inside mount, height")
SHORTEST_RULE = Source(id="shade-length-page", clause="inside mount")


def finished_width(site: Site) -> L | None:
    """Work out the finished width.

    Takes: the site; a width asked for goes before what the opening gives.

    Gives: the exact width, printed rounded down where it must fit a reveal, or None while
    the mount or every width is unknown.

    Holds for: one shade in one opening.

    Source: measuring-page (the narrowest width governs an inside mount).
    """
    if site.asked.width is not None:
        return _as_given("finished width", site.asked.width, site.asked.given_by)
    if site.inside and site.widths:
        return _inside_width(site)
    return _outside_width(site) if site.outside else None


def finished_drop(site: Site) -> L | None:
    """Work out the finished drop, from the top of the board to the bottom edge.

    Takes: the site; a drop asked for goes before what the opening gives. While the height
    rule of an inside mount is unknown the drop that cannot drag on the sill is taken;
    without a sill there is nothing to drag on, and the longest height is covered.

    Gives: the exact drop, or None while the mount or every height is unknown.

    Holds for: one shade in one opening.

    Source: measuring-page (longest of three heights) and shade-length-page (shortest)
    contradict each other, so the rule is asked for.
    """
    if site.asked.drop is not None:
        return _as_given("finished drop", site.asked.drop, site.asked.given_by)
    if site.inside and site.heights:
        return _inside_drop(site)
    return _outside_drop(site) if site.outside else None


def narrowest_width(site: Site) -> L:
    """Find the narrowest of the measured widths.

    Takes: a site with one measured width or more.

    Gives: the least width.

    Source: measuring-page.
    """
    return least("narrowest width", site.widths, "headrail and shade must pass every width")


def deduction(site: Site) -> L:
    """Tell what is taken off the narrowest width for an inside mount.

    Takes: a site with one measured width or more.

    Gives: the whole deduction, both sides together: as typed, else the house's for a usual
    or a wide opening.

    Source: make-your-own-page (a quarter inch); common practice for wide openings.
    """
    habits = site.habits
    wide = narrowest_width(site).value >= habits.wide_from.value
    habit = habits.wide_inside_deduction if wide else habits.inside_deduction
    return typed_or("deduction", site.mount.deduction, habit)


def with_rule(site: Site, rule: HeightRule) -> Site:
    """Answer the question for the height rule, for the sake of seeing the drop.

    Takes: the site; the rule.

    Gives: the site with that rule.

    Source: derived here.
    """
    return replace(site, mount=replace(site.mount, height_rule=rule))


def _as_given(name: str, length: Length, giver: str) -> L:
    by = giver.replace("{", "(").replace("}", ")").strip()
    because = f"The {name} as given by {by}." if by else f"The {name} as typed."
    return fact(name, length, Unit.LENGTH, because, Status.CHOSEN)


def _inside_width(site: Site) -> L:
    narrow, less = narrowest_width(site), deduction(site)
    return derived(
        "finished width",
        narrow.value - less.value,
        Unit.LENGTH,
        "The narrowest width {0} less the deduction {1}, half of it for each side.",
        narrow,
        less,
        rounding=Rounding.MUST_FIT,
        source=NARROWEST_RULE,
    )


def _outside_width(site: Site) -> L | None:
    base = _outside_base(site.opening.casing_width, "casing width", site.widths)
    if base is None:
        return None
    left = typed_or("overlap at the left", site.mount.overlap_left, site.habits.outside_overlap)
    right = typed_or("overlap at the right", site.mount.overlap_right, site.habits.outside_overlap)
    return derived(
        "finished width",
        base.value + left.value + right.value,
        Unit.LENGTH,
        "{0} across, {1} over at the left and {2} over at the right.",
        base,
        left,
        right,
    )


def _outside_base(casing: Length | None, name: str, opening: tuple[L, ...]) -> L | None:
    """Take the casing where there is one, else the opening at its greatest."""
    if casing is not None:
        return measured(name, casing)
    if not opening:
        return None
    return greatest(f"opening for want of a {name}", opening, "the shade must cover it everywhere")


def _inside_drop(site: Site) -> L:
    if site.mount.height_rule is HeightRule.COVER_SILL or site.opening.sill is False:
        longest = greatest("longest height", site.heights, "the opening is to be covered")
        because = "The longest height {0}, because the shade is to cover the opening everywhere."
        return derived(
            "finished drop", longest.value, Unit.LENGTH, because, longest, source=LONGEST_RULE
        )
    return _clear_drop(site)


def _clear_drop(site: Site) -> L:
    short = least("shortest height", site.heights, "the shade must not drag anywhere")
    clear = site.habits.sill_clearance
    asked = site.mount.height_rule is HeightRule.CLEAR_SILL
    because = "The shortest height {0} less {1}, because the shade is to clear the sill."
    guess = "The shortest height {0} less {1}: it cannot drag. Taken until the rule is chosen."
    return derived(
        "finished drop",
        short.value - clear.value,
        Unit.LENGTH,
        because if asked else guess,
        short,
        clear if asked else replace(clear, status=Status.HOUSE),
        rounding=Rounding.MUST_FIT,
        source=SHORTEST_RULE,
    )


def above_opening(site: Site) -> L:
    """Tell how far the top of an outside shade stands above the casing, or the opening.

    Takes: the site.

    Gives: the distance as typed, else the house's.

    Source: common practice.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.measure.opening import AskedSize, Mount, Opening
    >>> mount = Mount(above=Length.mm(60))
    >>> site = Site(opening=Opening(), mount=mount, asked=AskedSize(), habits=house_habits())
    >>> above_opening(site).value.in_millimetres
    60.0
    """
    return typed_or("height above", site.mount.above, site.habits.outside_above)


def below_opening(site: Site) -> L:
    """Tell how far an outside shade reaches below the sill, apron or opening.

    Takes: the site.

    Gives: the distance as typed; nothing where there is a sill, or while that is unknown;
    the house's where there is none.

    Source: measuring-page (1 1/2 in where there is no sill).
    """
    if site.mount.below is not None:
        return chosen("length below", site.mount.below, Unit.LENGTH)
    if site.opening.sill is False:
        return site.habits.outside_below_no_sill
    return nothing("length below", "The shade ends at the sill.")


def _outside_drop(site: Site) -> L | None:
    base = _outside_base(site.opening.casing_height, "casing height", site.heights)
    if base is None:
        return None
    above, below = above_opening(site), below_opening(site)
    return derived(
        "finished drop",
        above.value + base.value + below.value,
        Unit.LENGTH,
        "{0} above, {1} down and {2} below.",
        above,
        base,
        below,
    )
