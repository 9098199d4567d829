"""What the finished size leaves open: spread, light, sill, glass, depth."""

from __future__ import annotations

from foldwright.core.measure.opening import Face
from foldwright.core.measure.site import Site, greatest, least, nothing
from foldwright.core.measure.sizing import above_opening, below_opening
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, measured

L = Figure[Length]


def board_length(site: Site, width: L) -> L:
    """Cut the board a little shorter than the shade.

    Takes: the site; the finished width.

    Gives: the board's length, printed rounded down.

    Source: common practice.
    """
    less = site.habits.board_deduction
    return derived(
        "board length",
        width.value - less.value,
        Unit.LENGTH,
        "The finished width {0} less {1}, so that the cloth hides the ends of the board.",
        width,
        less,
        rounding=Rounding.MUST_FIT,
    )


def return_depth(site: Site) -> L | None:
    """Tell how deep the returns of an outside mount are.

    Takes: the site.

    Gives: the board's depth, and the casing's projection where the board stands on the
    casing; None without returns or while the board is not chosen.

    Source: common practice (each return as deep as the board projects).
    """
    board = site.projection
    if not site.outside or not site.mount.returns or board is None:
        return None
    casing = _casing_under_board(site)
    return derived(
        "return",
        board.value + casing.value,
        Unit.LENGTH,
        "The board stands {0} out, on a casing of {1}: the return reaches back to the wall.",
        board,
        casing,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _casing_under_board(site: Site) -> L:
    """Take the casing under a board whose top stands no higher than the casing."""
    projection = site.opening.casing_projection
    if projection is None or above_opening(site).value > ZERO:
        return nothing("casing under the board", "The board is fixed to the wall.")
    return measured("casing projection", projection)


def height_spread(site: Site) -> L | None:
    """Tell how far the measured heights differ.

    Takes: the site.

    Gives: greatest less least, or None with fewer than two heights.

    Source: derived here.
    """
    if len(site.heights) < 2:  # noqa: PLR2004 - a spread needs two
        return None
    longest = greatest("longest height", site.heights, "one end of the spread")
    shortest = least("shortest height", site.heights, "the other end of the spread")
    return derived(
        "spread of the heights",
        longest.value - shortest.value,
        Unit.LENGTH,
        "The longest height {0} less the shortest {1}.",
        longest,
        shortest,
    )


def light_gap_area(site: Site, width: L, drop: L) -> Figure[float] | None:
    """Work out the open slits beside an inside shade.

    Takes: the site; the finished width and drop.

    Gives: the area of both slits together in square metres, or None outside or while no
    width is measured. Racking moves light from one side to the other and takes none away.

    Holds for: a shade narrower than the reveal everywhere.

    Source: derived here.
    """
    if not site.inside or not site.widths:
        return None
    open_width = _mean_width(site) - width.value
    area = max(open_width.in_metres, 0.0) * drop.value.in_metres
    return derived(
        "open slits at the sides",
        area,
        Unit.AREA,
        "What the reveal is wider than the shade {0}, along the drop {1}.",
        width,
        drop,
        *site.widths,
    )


def _mean_width(site: Site) -> Length:
    """Average by the trapezium rule where all three widths are known."""
    widths = [figure.value for figure in site.widths]
    if len(widths) == 3:  # noqa: PLR2004 - top, middle and bottom
        return (widths[0] + widths[1] * 2 + widths[2]) / 4
    return sum(widths, ZERO) / len(widths)


def sill_gap(site: Site, drop: L) -> L | None:
    """Tell how far the bottom edge ends above the sill, where it ends nearest.

    Takes: the site; the finished drop.

    Gives: the least gap; below zero the shade lies on the sill. None where there is no sill
    to meet, or the shade hangs in front of it, or no height is known.

    Source: derived here.
    """
    if site.inside and site.heights:
        short = least("shortest height", site.heights, "there the sill is nearest")
        return derived(
            "gap over the sill",
            short.value - drop.value,
            Unit.LENGTH,
            "The shortest height {0} less the drop {1}.",
            short,
            drop,
        )
    return _outside_sill_gap(site, drop)


def _outside_sill_gap(site: Site, drop: L) -> L | None:
    to_sill = site.opening.casing_height
    if not site.outside or to_sill is None or site.opening.sill is False:
        return None
    if below_opening(site).value > ZERO:
        return None
    casing, above = measured("casing height", to_sill), above_opening(site)
    return derived(
        "gap over the sill",
        casing.value + above.value - drop.value,
        Unit.LENGTH,
        "From the top of the shade, {1} over the casing, it is {0} to the sill; the drop is {2}.",
        casing,
        above,
        drop,
    )


def top_above_glass(site: Site) -> L | None:
    """Tell how far the top of the shade stands above the first visible glass.

    Takes: the site.

    Gives: the distance, or None while the glass is not measured or the mount unknown.

    Source: derived here.
    """
    glass = site.opening.glass_below_head
    return None if glass is None else down_from_top(site, "glass", glass)


def down_from_top(site: Site, thing: str, below_head: Length) -> L | None:
    """Tell how far something in the window stands below the top of the shade.

    Takes: the site; what it is; how far it stands below the head of the opening.

    Gives: the distance, or None while the mount is unknown.

    Source: derived here.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.measure.opening import AskedSize, Mount, MountPlace, Opening
    >>> mount = Mount(place=MountPlace.OUTSIDE, above=Length.mm(50))
    >>> site = Site(opening=Opening(), mount=mount, asked=AskedSize(), habits=house_habits())
    >>> down_from_top(site, "sash", Length.mm(20)).value.in_millimetres
    70.0
    """
    if not (site.inside or site.outside):
        return None
    head = measured(f"head of the opening to the {thing}", below_head)
    above = _above_head(site)
    return derived(
        f"top of the shade to the {thing}",
        head.value + sum((part.value for part in above), ZERO),
        Unit.LENGTH,
        " and ".join(
            (f"{{0}} from head to {thing}", "{1} over it", "{2} of casing")[: 1 + len(above)]
        )
        + ".",
        head,
        *above,
    )


def top_above_floor(site: Site) -> L | None:
    """Tell how high the top of the shade is above the floor.

    Takes: the site.

    Gives: the height, or None while the floor or the mount is unknown.

    Source: derived here.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.measure.opening import AskedSize, Mount, MountPlace, Opening
    >>> opening = Opening(floor_to_head=Length.mm(2100))
    >>> inside = Mount(place=MountPlace.INSIDE)
    >>> site = Site(opening=opening, mount=inside, asked=AskedSize(), habits=house_habits())
    >>> top_above_floor(site).value.in_millimetres
    2100.0
    """
    floor = site.opening.floor_to_head
    if floor is None or not (site.inside or site.outside):
        return None
    head, above = measured("floor to the head of the opening", floor), _above_head(site)
    return derived(
        "top of the shade above the floor",
        head.value + sum((part.value for part in above), ZERO),
        Unit.LENGTH,
        " and ".join(("{0} to the head", "{1} over it", "{2} of casing")[: 1 + len(above)]) + ".",
        head,
        *above,
    )


def _above_head(site: Site) -> tuple[L, ...]:
    """Give what stands above the head of the opening: the overlap, and the casing's face."""
    if site.inside:
        return ()
    casing, heights = site.opening.casing_height, site.heights
    if casing is None or not heights:
        return (above_opening(site),)
    tall = greatest("tallest height", heights, "what the casing stands above it")
    face = derived(
        "face of the casing over the head",
        max(casing - tall.value, ZERO),
        Unit.LENGTH,
        "The casing height {0} less the height of the opening {1}.",
        measured("casing height", casing),
        tall,
    )
    return above_opening(site), face


def clear_depth(site: Site) -> L | None:
    """Tell how deep the reveal is where it is shallowest.

    Takes: the site.

    Gives: the least of the measured depths, or None outside or while none is measured.

    Source: derived here.
    """
    return shallowest(site) if site.inside else None


def shallowest(site: Site) -> L | None:
    """Find the least depth from the glass to the front of the opening.

    Takes: the site.

    Gives: the least of the depths at head and sill, or None while none is measured.

    Source: derived here.
    """
    named = {
        "depth at the head": site.opening.depth_head,
        "depth at the sill": site.opening.depth_sill,
    }
    depths = tuple(measured(name, depth) for name, depth in named.items() if depth is not None)
    return least("depth of the reveal", depths, "headrail and folds need it") if depths else None


def behind_cloth(site: Site) -> L | None:
    """Tell how much room there is between the glass and the lowered cloth.

    Takes: the site. Inside, the board ends at the front of the reveal; outside it stands
    on the wall above the casing, or on the casing itself.

    Gives: the room behind the cloth, or None while the depth, or outside the board, is
    unknown.

    Holds for: cloth that hangs plumb from the edge of the board that it leaves.

    Source: derived here.
    """
    depth, board = shallowest(site), site.projection
    if depth is None:
        return None
    if site.inside:
        return _behind_inside(site, depth, board)
    return _behind_outside(site, depth, board) if site.outside and board else None


def _behind_inside(site: Site, depth: L, board: L | None) -> L:
    if site.mount.board_edge is Face.ROOM or board is None:
        return depth
    because = "The depth {0} less the board {1}, because the cloth leaves its window-side edge."
    value = depth.value - board.value
    return derived("room behind the cloth", value, Unit.LENGTH, because, depth, board)


def _behind_outside(site: Site, depth: L, board: L) -> L:
    if site.mount.board_edge is Face.ROOM:
        foremost = board
    else:
        foremost = nothing("board behind the cloth", "The cloth leaves its window-side edge.")
    casing = _casing_beside_board(site)
    return derived(
        "room behind the cloth",
        depth.value + foremost.value - casing.value,
        Unit.LENGTH,
        "The depth {0} to the front of the casing and the board {1} before it, less {2} of"
        " casing that the board does not stand on.",
        depth,
        foremost,
        casing,
    )


def _casing_beside_board(site: Site) -> L:
    """Take the casing that stands out under a board fixed to the wall above it."""
    projection = site.opening.casing_projection
    if projection is None or above_opening(site).value <= ZERO:
        return nothing("casing before the wall", "The board stands on the casing.")
    return measured("casing projection", projection)
