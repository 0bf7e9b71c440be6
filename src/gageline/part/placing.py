"""Where a part stands in the space of another: turned and moved, never stretched."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.part.faces import Point
from gageline.units import ZERO, Length

__all__ = ["HERE", "Placement", "Vector"]

Vector = tuple[float, float, float]


def _cross(a: Vector, b: Vector) -> Vector:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


@dataclass(frozen=True, slots=True)
class Placement:
    """A rigid placing: the part's origin and where its x and y axes point.

    Args:
        origin: of the part, in the space it is placed in.
        ex: unit vector along which the part's x points.
        ey: unit vector along which the part's y points; z follows by the right hand.
    """

    origin: Point = (ZERO, ZERO, ZERO)
    ex: Vector = (1, 0, 0)
    ey: Vector = (0, 1, 0)

    @property
    def ez(self) -> Vector:
        """Unit vector along which the part's z points."""
        return _cross(self.ex, self.ey)

    def turn(self, vector: Vector) -> Vector:
        """A direction of the part, in the space it is placed in."""
        ex, ey, ez = self.ex, self.ey, self.ez
        return (
            vector[0] * ex[0] + vector[1] * ey[0] + vector[2] * ez[0],
            vector[0] * ex[1] + vector[1] * ey[1] + vector[2] * ez[1],
            vector[0] * ex[2] + vector[1] * ey[2] + vector[2] * ez[2],
        )

    def point(self, point: Point) -> Point:
        """A point of the part in the space it is placed in; exact for turns by right angles."""
        x, y, z = (float(length.ticks) for length in point)
        moved = self.turn((x, y, z))
        ox, oy, oz = self.origin
        return ox + Length(round(moved[0])), oy + Length(round(moved[1])), oz + Length(round(moved[2]))

    def then(self, outer: Placement) -> Placement:
        """This placing, itself placed by another."""
        return Placement(outer.point(self.origin), outer.turn(self.ex), outer.turn(self.ey))


HERE = Placement()
