"""Faces of a section, and where a point on a face lies in space.

A part lies along x from its left end; y is up from the section's bottom; z points at the reader.
z = 0 is the middle of the web of an I-shape or a tee and of a hollow section, the back of a
channel's web, the outside of an angle's upright leg and the face of a plate; what is not
symmetric about it lies behind, at negative z.
"""

from __future__ import annotations

from enum import StrEnum

from gageline.steel import Plate, Profile, Stock
from gageline.units import ZERO, Length

__all__ = [
    "End",
    "Face",
    "Point",
    "Side",
    "extent_y",
    "extent_z",
    "face_point",
    "face_range",
    "face_thickness",
    "faces_of",
    "normal",
]

Point = tuple[Length, Length, Length]


class Face(StrEnum):
    """A face that can be marked."""

    TOP = "top"
    NEAR = "near"
    BOTTOM = "bottom"
    FAR = "far"
    LEG_A = "leg_a"
    LEG_B = "leg_b"
    FACE = "face"


class End(StrEnum):
    """An end of a part as it lies before the reader."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> End:
        """The end across from this one."""
        return End.RIGHT if self is End.LEFT else End.LEFT


class Side(StrEnum):
    """The near side faces the reader, the far side is behind the web."""

    NEAR = "near"
    FAR = "far"

    @property
    def other(self) -> Side:
        """The side across the web."""
        return Side.FAR if self is Side.NEAR else Side.NEAR


_WALLS = (Face.TOP, Face.NEAR, Face.BOTTOM, Face.FAR)
_FACES = {
    Profile.I_SHAPE: _WALLS,
    Profile.CHANNEL: _WALLS,
    Profile.TEE: (Face.TOP, Face.NEAR, Face.FAR),
    Profile.BOX: _WALLS,
    Profile.TUBE: _WALLS,
    Profile.ANGLE: (Face.LEG_A, Face.LEG_B),
    Profile.PLATE: (Face.FACE,),
}
_NORMALS = {
    Face.TOP: (0, 1, 0),
    Face.NEAR: (0, 0, 1),
    Face.BOTTOM: (0, -1, 0),
    Face.FAR: (0, 0, -1),
    Face.LEG_A: (0, 0, 1),
    Face.LEG_B: (0, -1, 0),
    Face.FACE: (0, 0, 1),
}
_FLAT = frozenset({Face.TOP, Face.BOTTOM})
_HALVED = frozenset({Profile.I_SHAPE, Profile.TEE, Profile.BOX, Profile.TUBE})
_HOLLOW = frozenset({Profile.BOX, Profile.TUBE})


def faces_of(stock: Stock) -> tuple[Face, ...]:
    """The faces of a section that can be marked, in the order they unfold from the top."""
    return _FACES[stock.profile]


def normal(face: Face) -> tuple[int, int, int]:
    """The direction that a face looks in, as a unit vector."""
    return _NORMALS[face]


def extent_y(stock: Stock) -> tuple[Length, Length]:
    """The bottom and the top of a section in y."""
    return ZERO, stock.width if isinstance(stock, Plate) else stock.d


def extent_z(stock: Stock) -> tuple[Length, Length]:
    """The far and the near limit of a section in z."""
    if isinstance(stock, Plate):
        return -stock.thickness, ZERO
    if stock.profile in _HALVED:
        near, far = stock.bf.parts(2)
        return -far, near
    return -stock.bf, ZERO


def face_range(stock: Stock, face: Face) -> tuple[Length, Length]:
    """The limits of y on a face, from edge to edge.

    On web faces, walls, an upright leg and a plate y runs up from the bottom edge; on flanges it
    is z, the offset from the middle or the back of the web; on an angle's other leg it runs
    from the heel.
    """
    if face in _FLAT:
        return extent_z(stock)
    if face is Face.LEG_B:
        far, near = extent_z(stock)
        return -near, -far
    return extent_y(stock)


def face_thickness(stock: Stock, face: Face) -> Length:
    """The thickness of the steel under a face: flange, web, wall, leg or plate."""
    if isinstance(stock, Plate):
        return stock.thickness
    return stock.tf if face in _FLAT or face is Face.LEG_B else stock.tw


def _level(stock: Stock, face: Face) -> Length:
    """How far out a face lies along its normal's axis: y of flanges, z of webs."""
    low, high = extent_y(stock)
    if face in {Face.BOTTOM, Face.LEG_B}:
        return low
    if face is Face.TOP:
        return high
    if isinstance(stock, Plate) or face is Face.LEG_A:
        return ZERO
    if stock.profile in _HOLLOW:
        far, near = extent_z(stock)
        return near if face is Face.NEAR else far
    if stock.profile is Profile.CHANNEL:
        return ZERO if face is Face.NEAR else -stock.tw
    near_web, far_web = stock.tw.parts(2)
    return near_web if face is Face.NEAR else -far_web


def face_point(stock: Stock, face: Face, x: Length, y: Length) -> Point:
    """The place in the part's space of a point on a face.

    Args:
        stock: the section.
        face: one of `faces_of(stock)`.
        x: along the part from its left end.
        y: the face's own y, see `face_range`.
    """
    level = _level(stock, face)
    if face in _FLAT:
        return x, level, y
    if face is Face.LEG_B:
        return x, level, -y
    return x, y, level
