"""How far a tube, a board and a bottom bar sag.

Sags are downward and positive, in m; places along a beam are measured from its left end.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

Samples = NDArray[np.float64]

_GRID = 401  # two passes over this many places find the lowest place to 1e-5 of the span


@dataclass(frozen=True, kw_only=True, slots=True)
class PointLoad:
    """A load at one place: a cord on the tube."""

    load_n: float
    at_m: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Sag:
    """The greatest sag of a beam, and where it is."""

    sag_m: float
    at_m: float


def tube_second_moment(outside_m: float, wall_m: float) -> float:
    """Give the second moment of area of a round tube.

    Takes: outside diameter and wall in m.

    Gives: m^4.

    Holds for: walls up to the radius, which is a solid rod.

    Source: derived here, geometry.

    >>> round(tube_second_moment(0.038, 0.0015) * 1e12, 4)
    28692.1166
    """
    inside_m = outside_m - 2 * wall_m
    return pi * (outside_m**4 - inside_m**4) / 64


def rectangle_second_moment(breadth_m: float, height_m: float) -> float:
    """Give the second moment of area of a flat bar or a board.

    Takes: breadth across and height along the load, in m; a bar on edge is higher than broad.

    Gives: m^4.

    Holds for: any solid rectangle.

    Source: derived here, geometry.

    >>> round(rectangle_second_moment(0.020, 0.003) * 1e12, 9)
    45.0
    """
    return breadth_m * height_m**3 / 12


@dataclass(frozen=True, kw_only=True, slots=True)
class Beam:
    """A tube between its brackets or a board between its fixings: two supports, free to turn.

    `rigidity_n_m2` is the modulus of the material times the second moment of area.

    Holds for: sags small against the span; ends that a bracket holds stiffly sag less.

    Source: beam-page; off-centre-beam-page.

    >>> tube = Beam(span_m=1.8, rigidity_n_m2=68.9e9 * tube_second_moment(0.038, 0.0015))
    >>> worst = tube.greatest_sag([PointLoad(load_n=20.0, at_m=0.6)])
    >>> round(worst.sag_m * 1000, 4), round(worst.at_m, 4)
    (1.0573, 0.8202)
    """

    span_m: float
    rigidity_n_m2: float

    def sag_under(self, load: PointLoad, at_m: float | Samples) -> Samples:
        """Give the sag in m at each place under one point load."""
        place = np.asarray(at_m, dtype=np.float64)
        left, right = load.at_m, self.span_m - load.at_m
        near = right * place * (self.span_m**2 - right**2 - place**2)
        far_place = self.span_m - place
        far = left * far_place * (self.span_m**2 - left**2 - far_place**2)
        shape = np.where(place <= left, near, far)
        return load.load_n * shape / (6 * self.rigidity_n_m2 * self.span_m)

    def sag_spread(self, load_n_m: float, at_m: float | Samples) -> Samples:
        """Give the sag in m at each place under a load spread evenly over the span."""
        place = np.asarray(at_m, dtype=np.float64)
        shape = place * (self.span_m**3 - 2 * self.span_m * place**2 + place**3)
        return load_n_m * shape / (24 * self.rigidity_n_m2)

    def greatest_sag(self, loads: Sequence[PointLoad], spread_n_m: float = 0.0) -> Sag:
        """Give the greatest sag under point loads and a spread load together."""

        def sag(place: Samples) -> Samples:
            points = sum((self.sag_under(load, place) for load in loads), np.zeros_like(place))
            return points + self.sag_spread(spread_n_m, place)

        return lowest(sag, 0.0, self.span_m)


@dataclass(frozen=True, kw_only=True, slots=True)
class HungBar:
    """A bottom bar that hangs on cords and carries an evenly spread load.

    Takes: the places of the cords from the bar's left end, left to right, at least two;
    the bar's length; its rigidity.

    Holds for: cords that all pull alike in length, so that the bar is straight at them.

    Source: derived here, by Clapeyron's equation of three moments.

    >>> bar = HungBar(cords_m=(0.1, 0.5), length_m=0.6, rigidity_n_m2=3.0)
    >>> round(bar.greatest_sag(4.0).sag_m * 1000, 4)  # 4 N/m 0.4^4 (5 - 24 (0.1/0.4)^2)/(384 EI)
    0.3111
    """

    cords_m: tuple[float, ...]
    length_m: float
    rigidity_n_m2: float

    def cord_moments(self, load_n_m: float) -> Samples:
        """Give the bending moment in N.m at each cord; overhanging ends make it negative."""
        spans = np.diff(self.cords_m)
        count = len(self.cords_m)
        matrix, right = np.eye(count), np.zeros(count)
        right[0] = -load_n_m * self.cords_m[0] ** 2 / 2
        right[-1] = -load_n_m * (self.length_m - self.cords_m[-1]) ** 2 / 2
        for inner in range(1, count - 1):
            left, after = spans[inner - 1], spans[inner]
            matrix[inner, inner - 1 : inner + 2] = left, 2 * (left + after), after
            right[inner] = -load_n_m * (left**3 + after**3) / 4
        return np.asarray(np.linalg.solve(matrix, right), dtype=np.float64)

    def greatest_sag(self, load_n_m: float) -> Sag:
        """Give the greatest sag below the line of the cords, overhanging ends included."""
        moments = self.cord_moments(load_n_m)
        between = [
            self._in_span(load_n_m, index, moments) for index in range(len(self.cords_m) - 1)
        ]
        return max([*between, *self._ends(load_n_m, moments)], key=lambda sag: sag.sag_m)

    def _in_span(self, load_n_m: float, index: int, moments: Samples) -> Sag:
        start, end = self.cords_m[index], self.cords_m[index + 1]
        beam = Beam(span_m=end - start, rigidity_n_m2=self.rigidity_n_m2)

        def sag(place: Samples) -> Samples:
            by_moments = _moment_sag(beam, moments[index], moments[index + 1], place)
            return beam.sag_spread(load_n_m, place) + by_moments

        worst = lowest(sag, 0.0, beam.span_m)
        return Sag(sag_m=worst.sag_m, at_m=start + worst.at_m)

    def _ends(self, load_n_m: float, moments: Samples) -> tuple[Sag, Sag]:
        spans = np.diff(self.cords_m)
        right_overhang = self.length_m - self.cords_m[-1]
        return (
            Sag(
                sag_m=self._tip(load_n_m, self.cords_m[0], spans[0], moments[:2]),
                at_m=0.0,
            ),
            Sag(
                sag_m=self._tip(load_n_m, right_overhang, spans[-1], moments[:-3:-1]),
                at_m=self.length_m,
            ),
        )

    def _tip(self, load_n_m: float, overhang: float, span: float, moments: Samples) -> float:
        """Give the sag of an overhanging end; moments from the outermost cord inwards."""
        slope = load_n_m * span**3 / 24 + (2 * moments[0] + moments[1]) * span / 6
        cantilever = load_n_m * overhang**4 / 8
        return float((cantilever - slope * overhang) / self.rigidity_n_m2)


def lowest(sag: Callable[[Samples], Samples], start_m: float, end_m: float) -> Sag:
    """Search the place where a sag is greatest.

    Takes: the sag in m as a function of places in m; the ends of the search.

    Gives: the greatest sag and its place, to 1e-5 of the length searched.

    Holds for: sags with one greatest place in any four hundredth of the length.

    Source: derived here, a search in two passes.

    >>> lowest(lambda place: place * (1.0 - place), 0.0, 1.0)
    Sag(sag_m=0.25, at_m=0.5)
    """
    step = (end_m - start_m) / (_GRID - 1)
    middle = _lowest_place(sag, np.linspace(start_m, end_m, _GRID))
    near = np.linspace(max(start_m, middle - step), min(end_m, middle + step), _GRID)
    place = _lowest_place(sag, near)
    return Sag(sag_m=float(sag(np.asarray(place))), at_m=place)


def _lowest_place(sag: Callable[[Samples], Samples], places: Samples) -> float:
    return float(places[np.argmax(sag(places))])


def _moment_sag(beam: Beam, left_n_m: float, right_n_m: float, place: Samples) -> Samples:
    """Give the sag by moments at the two ends of a span; hogging moments lift it."""
    span = beam.span_m
    pull = left_n_m * (2 * span - place) + right_n_m * (span + place)
    return place * (span - place) * pull / (6 * beam.rigidity_n_m2 * span)
