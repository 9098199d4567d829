"""An exact length: a whole number of nanometres, never a rounded one."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Self, overload

NANOMETRES_PER_MILLIMETRE = 1_000_000
NANOMETRES_PER_INCH = 25_400_000

Number = int | Fraction


@dataclass(frozen=True, order=True, slots=True)
class Length:
    """A length held exactly as whole nanometres.

    1/64 in is exactly 396 875 nm and 1 mm exactly 1 000 000 nm, so neither
    workroom fractions nor millimetres ever drift.

    Source: definition of the inch (25.4 mm).

    >>> Length.inches(Fraction(3, 8)).nanometres
    9525000
    """

    nanometres: int

    @classmethod
    def mm(cls, value: Number | str) -> Self:
        """Take millimetres (whole, fraction or decimal text); give the nearest nanometre.

        >>> Length.mm("893.7625").nanometres
        893762500
        """
        return cls(round(Fraction(value) * NANOMETRES_PER_MILLIMETRE))

    @classmethod
    def inches(cls, value: Number | str) -> Self:
        """Take inches (whole, fraction or decimal text); give the nearest nanometre.

        >>> Length.inches("35.1875") == Length.inches(Fraction(563, 16))
        True
        """
        return cls(round(Fraction(value) * NANOMETRES_PER_INCH))

    @classmethod
    def metres(cls, value: float) -> Self:
        """Take metres from a computation in SI; give the nearest nanometre.

        >>> Length.metres(0.0254) == Length.inches(1)
        True
        """
        return cls(round(value * 1e9))

    @property
    def in_metres(self) -> float:
        """Give metres, for computations in SI."""
        return self.nanometres / 1e9

    @property
    def in_millimetres(self) -> float:
        """Give millimetres."""
        return self.nanometres / NANOMETRES_PER_MILLIMETRE

    @property
    def in_inches(self) -> Fraction:
        """Give the exact inches."""
        return Fraction(self.nanometres, NANOMETRES_PER_INCH)

    def __add__(self, other: Length) -> Length:
        return Length(self.nanometres + other.nanometres)

    def __sub__(self, other: Length) -> Length:
        return Length(self.nanometres - other.nanometres)

    def __neg__(self) -> Length:
        return Length(-self.nanometres)

    def __abs__(self) -> Length:
        return Length(abs(self.nanometres))

    def __mul__(self, factor: Number) -> Length:
        return Length(round(self.nanometres * Fraction(factor)))

    __rmul__ = __mul__

    @overload
    def __truediv__(self, other: Length) -> Fraction: ...
    @overload
    def __truediv__(self, other: Number) -> Length: ...
    def __truediv__(self, other: Length | Number) -> Fraction | Length:
        if isinstance(other, Length):
            return Fraction(self.nanometres, other.nanometres)
        return Length(round(self.nanometres / Fraction(other)))

    def __bool__(self) -> bool:
        return self.nanometres != 0


ZERO = Length(0)
