"""An angle or a plate folded open flat at true size."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, cos, pi, radians, sin

from shapely import Polygon as Shape
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from gageline.part import End, Face, Hole, Part, face_outline, face_point, face_range, faces_of
from gageline.sheets.scene import Point
from gageline.sheets.view import DOWNWARD
from gageline.steel import Profile
from gageline.units import ZERO

__all__ = ["Drilled", "Spread", "spread_out"]

_MM = 25.4


@dataclass(frozen=True, slots=True)
class Drilled:
    """A hole of the template.

    Args:
        number: on the template and in its table.
        face: the face it is on.
        at: its centre, true mm in the flat drawing.
        hole: of record.
        half: from the centre to the centre of a round end, true mm; (0, 0) for a round hole.
    """

    number: int
    face: Face
    at: Point
    hole: Hole
    half: Point

    @property
    def reach(self) -> float:
        """From the centre to the furthest point of the rim, mm."""
        return self.hole.length.mm / 2

    def rim(self) -> list[Point]:
        """The closed rim of the hole, its corners on the true curve."""
        radius = self.hole.width.mm / 2
        start = atan2(self.half[1], self.half[0]) - pi / 2
        points = []
        for turned, sign in ((0.0, 1), (pi, -1)):
            x, y = self.at[0] + sign * self.half[0], self.at[1] + sign * self.half[1]
            for n in range(49):
                angle = start + turned + pi * n / 48
                points.append((x + radius * cos(angle), y + radius * sin(angle)))
        return [*points, points[0]]


@dataclass(frozen=True, slots=True)
class Spread:
    """A part folded open flat, in true millimetres from its upper left corner, y down.

    Args:
        part: the part.
        turned: a quarter turn to the right, the left end at the top of the paper.
        size: width and height, mm.
        outlines: closed lines of the steel that is left.
        folds: the heel, or nothing.
        starts: the middle of each face's left end.
        holes: numbered in the order of the table.
    """

    part: Part
    turned: bool
    size: Point
    outlines: tuple[tuple[Point, ...], ...]
    folds: tuple[tuple[Point, Point], ...]
    starts: tuple[tuple[Face, Point], ...]
    holes: tuple[Drilled, ...]

    @property
    def steel(self) -> BaseGeometry:
        """The steel that is left, holes not taken out, mm."""
        return unary_union([Shape(ring) for ring in self.outlines if Shape(ring).area > 0])


def spread_out(part: Part, *, turned: bool = False) -> Spread:
    """A part folded open flat: both legs of an angle at the heel, a plate as it lies.

    Args:
        part: an angle or a plate.
        turned: a quarter turn to the right.
    """
    offsets, height = {}, 0.0
    for face in faces_of(part.stock):
        low, high = face_range(part.stock, face)
        offsets[face] = height
        height += (high - low).mm
    size = part.length.mm, height

    def flat(face: Face, x: float, y: float) -> Point:
        low, high = (limit.mm for limit in face_range(part.stock, face))
        down = offsets[face] + (y - low if face in DOWNWARD else high - y)
        return (height - down, x) if turned else (x, down)

    outlines: list[tuple[Point, ...]] = []
    holes: list[Drilled] = []
    for face in faces_of(part.stock):
        steel = face_outline(part, face)
        for shape in getattr(steel, "geoms", [steel]):
            if isinstance(shape, Shape):
                outlines += [
                    tuple(flat(face, x * _MM, y * _MM) for x, y in ring.coords)
                    for ring in (shape.exterior, *shape.interiors)
                ]
        for hole in (hole for group in part.groups if group.face is face for hole in group.holes):
            centre = flat(face, hole.x.mm, hole.y.mm)
            reach, turn = (hole.length - hole.width).mm / 2, radians(float(hole.angle))
            end = flat(face, hole.x.mm + reach * cos(turn), hole.y.mm + reach * sin(turn))
            half = end[0] - centre[0], end[1] - centre[1]
            holes.append(Drilled(len(holes) + 1, face, centre, hole, half))
    folds: tuple[tuple[Point, Point], ...] = ()
    if part.profile is Profile.ANGLE:
        folds = ((flat(Face.LEG_B, 0.0, 0.0), flat(Face.LEG_B, part.length.mm, 0.0)),)
    starts = tuple((face, flat(face, *_start(part, face))) for face in faces_of(part.stock))
    turned_size = (size[1], size[0]) if turned else size
    return Spread(part, turned, turned_size, tuple(outlines), folds, starts, tuple(holes))


def _start(part: Part, face: Face) -> Point:
    """The middle of a face's left end, where its cut leaves it, mm along and in the face's own y."""
    middle = sum(face_range(part.stock, face), ZERO) / 2
    _, y, z = face_point(part.stock, face, ZERO, middle)
    return part.end_x(End.LEFT, y, z).mm, middle.mm
