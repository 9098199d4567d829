"""Where in the repeat a face begins: the motif across, and along from the hem or the head."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, supplied

L = Figure[Length]


class PatternAcross(Enum):
    """What stands in the middle of a face."""

    MOTIF = "a motif in the middle"
    BETWEEN = "the middle between two motifs"
    ANYWHERE = "anywhere"


class PatternAlong(Enum):
    """Whence the motifs of a room are measured, so that they stand at one height."""

    HEM = "from the hem"
    HEAD = "from the head"


@dataclass(frozen=True, kw_only=True, slots=True)
class Matching:
    """How the pattern is to lie on a face."""

    across: PatternAcross = PatternAcross.MOTIF
    along: PatternAlong = PatternAlong.HEM
    motif_above_hem: Length | None = None  # centre of any motif over the bottom edge


@dataclass(frozen=True, kw_only=True, slots=True)
class Ends:
    """The flat cloth beyond the finished face, as cut: over the board, and turned up."""

    length: L
    head: L
    hem: L


def phase_across(width: L, cloth: Cloth, matching: Matching) -> L | None:
    """Tell how far behind a motif's centre the left edge of a face lies.

    Takes: the cut width of the whole face; its cloth; how the pattern is to lie.

    Gives: a length below zero, or None where the cloth has no repeat across or nobody minds.

    Source: common practice.

    >>> from foldwright.core.quantity.length import Length
    >>> cloth = Cloth(name="print", areal_mass_kg_m2=0.2, usable_width=Length.mm(1370),
    ...               horizontal_repeat=Length.mm(340))
    >>> phase = phase_across(chosen("width", Length.mm(1000), Unit.LENGTH), cloth, Matching())
    >>> phase.value.in_millimetres
    -500.0
    """
    repeat = cloth.horizontal_repeat
    if not repeat or matching.across is PatternAcross.ANYWHERE:
        return None
    half = Length(width.value.nanometres // 2)
    if matching.across is PatternAcross.MOTIF:
        because = "Half of the cut width {0}, so that a motif stands in the middle."
        return derived("left edge behind a motif", -half, Unit.LENGTH, because, width)
    across = supplied("horizontal repeat", repeat, Unit.LENGTH, cloth.name)
    because = "Half of {0} less half of the repeat {1}: the middle falls between two motifs."
    value = repeat / 2 - half
    return derived("left edge behind a motif", value, Unit.LENGTH, because, width, across)


def widest_about_motif(cloth: Cloth, across: PatternAcross) -> Length:
    """Tell how wide a piece can be cut with a motif, or the gap between two, in its middle.

    Takes: the cloth; what is to stand in the middle.

    Gives: the usable width where there is no repeat across, or nobody minds.

    Source: derived here.

    >>> cloth = Cloth(name="a", areal_mass_kg_m2=0.2, usable_width=Length.mm(1370),
    ...               horizontal_repeat=Length.mm(340), motif_from_edge=Length.mm(340))
    >>> widest_about_motif(cloth, PatternAcross.MOTIF).in_millimetres
    1360.0
    """
    repeat, usable = cloth.horizontal_repeat, cloth.usable_width
    if not repeat or across is PatternAcross.ANYWHERE:
        return usable
    first = (cloth.motif_from_edge or ZERO).nanometres % repeat.nanometres
    first += repeat.nanometres // 2 if across is PatternAcross.BETWEEN else 0
    places = range(first, usable.nanometres, repeat.nanometres)
    return Length(2 * max(min(at, usable.nanometres - at) for at in places)) if places else usable


def phase_as_it_falls(before: L, cloth: Cloth) -> L | None:
    """Tell how far behind a motif's centre a joined face begins whose middle nobody minds.

    Takes: how far the first full width begins from the left edge of the face; its cloth.

    Gives: the place that lets the full width lie at the edge of the cloth, as the pattern falls
    there, so that the sides can match it; None where the cloth has no repeat across.

    Source: derived here.

    >>> from foldwright.core.quantity.length import Length
    >>> cloth = Cloth(name="print", areal_mass_kg_m2=0.2, usable_width=Length.mm(1370),
    ...               horizontal_repeat=Length.mm(340), motif_from_edge=Length.mm(50))
    >>> begins = chosen("strip begins", Length.mm(200), Unit.LENGTH)
    >>> phase_as_it_falls(begins, cloth).value.in_millimetres
    -250.0
    """
    if not cloth.horizontal_repeat:
        return None
    edge = supplied("motif from the edge", cloth.motif_from_edge or ZERO, Unit.LENGTH, cloth.name)
    because = (
        "Nobody minds what stands in the middle: the full width, {0} from the left edge, lies at"
        " the edge of the cloth, {1} before a motif, and the sides match it."
    )
    value = -(before.value + edge.value)
    return derived("left edge behind a motif", value, Unit.LENGTH, because, before, edge)


def phase_along(ends: Ends, cloth: Cloth, matching: Matching, shrink: Figure[float]) -> L | None:
    """Tell how far behind a motif's centre the head of a face lies.

    Takes: its ends as cut; its cloth; how the pattern is to lie; its shrinkage.

    Gives: a length below zero, or None where the cloth has no repeat along.

    Source: common practice.
    """
    if not cloth.vertical_repeat:
        return None
    if matching.along is PatternAlong.HEAD:
        because = "A motif is centred on the top line, {0} below the head as cut."
        return derived("head behind a motif", -ends.head.value, Unit.LENGTH, because, ends.head)
    above = chosen("motif over the bottom edge", matching.motif_above_hem or ZERO, Unit.LENGTH)
    value = ends.hem.value + before_shrinking(above.value, shrink) - ends.length.value
    because = "The cut length {0} less the hem {1}, and less {2}, longer by the shrinkage {3}."
    figures = (ends.length, ends.hem, above, shrink)
    return derived("head behind a motif", value, Unit.LENGTH, because, *figures)


def before_shrinking(length: Length, shrink: Figure[float]) -> Length:
    """Give the length of flat cloth that is this long once it is steamed.

    Takes: the length as it is to be; the share that the steam takes.

    Gives: the length to cut.

    Source: common practice.

    >>> share = chosen("shrinkage", 0.03, Unit.SHARE)
    >>> round(float(before_shrinking(Length.inches(67), share).in_inches), 4)
    69.0722
    """
    return Length(round(length.nanometres / (1 - Fraction(str(shrink.value)))))
