"""What finished work is held to: AISC 303, RCSC and AWS D1.1 for US jobs, EN 1090-2 for metric ones."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.part import Part, extent_y
from gageline.quality.limits import Limit, Trust
from gageline.quality.mill import mill_limits
from gageline.quality.mill.steps import each_further
from gageline.units import ZERO, Length

__all__ = ["GAP_FREE", "Rules", "rules_of"]

_IN = Length.from_inches
_MM = Length.from_mm
_FOOT = _IN(12)
_AISC = "AISC 303, 6.4 (11.2 in the 2022 edition, from memory)"
_RCSC = "RCSC 2020 Table 3.1, footnote"
_D11 = "AWS D1.1:2020, 7.21.1"
_EN = "EN 1090-2, annex D"
GAP_FREE = _IN(Fraction(1, 16))
"""A gap at a fillet weld up to which its leg need not grow. Source: AWS D1.1:2020, 7.21.1 (read)."""
_SHORT = _FOOT * 30


@dataclass(frozen=True, slots=True)
class Rules:
    """The limits of one set of standards, one method a reading.

    Args:
        metric: EN 1090-2 in place of AISC 303.
        tolerance_class: of EN 1090-2, 1 or 2.
        bearing: both ends finished for contact bearing.
        camber: what the drawing asks for; zero for a piece that is to be straight.
        compression: a column, or another member in compression.
    """

    metric: bool
    tolerance_class: int = 1
    bearing: bool = False
    camber: Length = ZERO
    compression: bool = False

    def __post_init__(self) -> None:
        if self.tolerance_class not in {1, 2}:
            raise ValueProblem(f"tolerance class {self.tolerance_class} is not one of EN 1090-2: give 1 or 2")

    @property
    def _coarse(self) -> bool:
        return self.tolerance_class == 1

    def length(self, wanted: Length) -> Limit:
        """Overall length, and out-to-out of what frames to other steel."""
        if self.metric:
            share = wanted / (5000 if self._coarse else 10000)
            most = share + _MM(2)
            rule = f"L/{5000 if self._coarse else 10000} + 2 mm, class {self.tolerance_class}"
            return Limit("en1090-length", most, most, rule, _EN, Trust.MEMORY)
        if self.bearing:
            most = _IN(Fraction(1, 32))
            return Limit("aisc303-length", most, most, "both ends finished for bearing", _AISC, Trust.READ)
        most = _IN(Fraction(1, 16)) if wanted <= _SHORT else _IN(Fraction(1, 8))
        rule = "framing to other steel: 1/16 to 30 ft, 1/8 over 30 ft"
        return Limit("aisc303-length", most, most, rule, _AISC, Trust.READ)

    def square(self, part: Part) -> Limit:
        """An end out of square over its depth."""
        low, high = extent_y(part.stock)
        if self.metric:
            share = 1000 if self.bearing else 100 if self._coarse else 300
            rule = f"D/{share}, {'in contact bearing' if self.bearing else f'class {self.tolerance_class}'}"
            return Limit("en1090-square", (high - low) / share, None, rule, _EN, Trust.MEMORY)
        if (limit := mill_limits(part.stock, part.length).square) is None:
            rule = "1/64 in each inch of depth, as for rolled shapes"
            return Limit("a6-square", (high - low) / 64, None, rule, "no rule held", Trust.COMMON)
        return limit

    def hole_place(self) -> Limit:
        """The place of a pattern of holes, along or across."""
        if self.metric:
            most = _MM(2 if self._coarse else 1)
            return Limit("en1090-holes", most, most, f"class {self.tolerance_class}", _EN, Trust.MEMORY)
        most = _IN(Fraction(1, 16))
        return Limit("hole-place", most, most, "1/16", "no rule held in AISC 303", Trust.COMMON)

    def spacing(self) -> Limit:
        """The distance from the first to the last hole of a pattern."""
        if self.metric:
            most = _MM(2 if self._coarse else 1)
            return Limit("en1090-spacing", most, most, f"class {self.tolerance_class}", _EN, Trust.MEMORY)
        most = _IN(Fraction(1, 32))
        return Limit("hole-spacing", most, most, "1/32", "no rule held in AISC 303", Trust.COMMON)

    def hole(self) -> Limit:
        """The size of a hole."""
        if self.metric:
            most = _MM(1) if self._coarse else _MM(Fraction(1, 2))
            return Limit("en1090-hole", most, ZERO, f"class {self.tolerance_class}", _EN, Trust.MEMORY)
        return Limit("rcsc-hole", _IN(Fraction(1, 32)), ZERO, "1/32 over the nominal hole", _RCSC, Trust.READ)

    def bow(self, part: Part, *, sideways: bool) -> Limit | None:
        """Camber or sweep: of a straight member, of one in compression, or of a beam cambered on purpose."""
        if self.camber and not sideways:
            return self._camber(part.length)
        if self.metric:
            most = part.length / 1000
            return Limit("en1090-bow", most, most, "L/1000", _EN, Trust.MEMORY)
        if self.compression:
            most = part.length / 1000
            rule = "compression members: L/1000 between supports"
            return Limit("aisc303-straight", most, most, rule, _AISC, Trust.READ)
        mill = mill_limits(part.stock, part.length)
        return mill.sweep if sideways else mill.camber

    def _camber(self, length: Length) -> Limit:
        """Camber that the drawing asks for, measured in the shop with nothing on the beam."""
        if self.metric:
            most = length / 500
            return Limit("en1090-camber", most, most, "L/500", _EN, Trust.MEMORY)
        more = _IN(Fraction(1, 8)) * each_further(length, _FOOT * 50, _FOOT * 10)
        rule = "1/2 over to 50 ft, 1/8 more for each further 10 ft; nothing under"
        return Limit("aisc303-camber", _IN(Fraction(1, 2)) + more, ZERO, rule, _AISC, Trust.READ)

    def gouge(self) -> Limit | None:
        """The depth of a round-bottomed gouge in a thermally cut edge; none is held for metric jobs."""
        if self.metric:
            return None
        source = "AISC 360-22, M2.2"
        return Limit(
            "gouge", _IN(Fraction(3, 16)), None, "gouges to 3/16, no sharp notch", source, Trust.READ
        )

    def cope(self) -> Limit:
        """Length or depth of a cope."""
        if self.metric:
            most = _MM(3 if self._coarse else 2)
            return Limit("en1090-notch", most, ZERO, f"class {self.tolerance_class}", _EN, Trust.MEMORY)
        most = _IN(Fraction(1, 16))
        return Limit("cope", most, most, "1/16", "no rule held in AISC 303", Trust.COMMON)

    def cope_radius(self, wanted: Length) -> Limit:
        """The radius of a re-entrant corner: 1/2 in is the approximate least."""
        least = _MM(5) if self.metric else _IN(Fraction(1, 2))
        under = max(wanted - least, ZERO)
        if self.metric:
            return Limit("en1090-radius", None, under, "5 mm at the least", _EN, Trust.MEMORY)
        source = "AISC FAQ 2.2.8; AISC 360, J1.6"
        return Limit("cope-radius", None, under, "about 1/2 at the least", source, Trust.READ)

    def fitting(self) -> Limit:
        """The place of a fitting."""
        if self.metric:
            most = _MM(3 if self._coarse else 2)
            return Limit("en1090-fitting", most, most, f"class {self.tolerance_class}", _EN, Trust.MEMORY)
        most = _IN(Fraction(1, 16))
        return Limit("fitting-place", most, most, "1/16", "no rule held in AISC 303", Trust.COMMON)

    def weld_leg(self) -> Limit:
        """The leg of a fillet weld."""
        if self.metric:
            return Limit("en1090-leg", None, ZERO, "not less than drawn", _EN, Trust.MEMORY)
        return Limit("d11-leg", None, ZERO, "the leg, and the gap where it is over 1/16", _D11, Trust.READ)

    def weld_gap(self, thickness: Length) -> Limit | None:
        """The gap between the parts of a fillet weld; none is held for metric jobs.

        Args:
            thickness: of the fitting.
        """
        if self.metric:
            return None
        thick = thickness >= _IN(3)
        most = _IN(Fraction(5, 16)) if thick else _IN(Fraction(3, 16))
        rule = "5/16 for material of 3 in and more" if thick else "3/16"
        return Limit("d11-gap", most, None, rule, _D11, Trust.READ)


def rules_of(
    part: Part,
    *,
    metric: bool,
    tolerance_class: int = 1,
    bearing: bool = False,
    camber: Length = ZERO,
    compression: bool = False,
) -> Rules:
    """The rules that a piece is inspected by; contact bearing counts only for pieces cut square.

    Args:
        part: the main part.
        metric: EN 1090-2 in place of AISC 303.
        tolerance_class: of EN 1090-2.
        bearing: both ends are finished for contact bearing.
        camber: what the drawing asks for.
        compression: a column, or another member in compression.

    Raises:
        ValueProblem: when the tolerance class is neither 1 nor 2.
    """
    square = part.left.square and part.right.square
    return Rules(metric, tolerance_class, bearing and square, camber, compression)
