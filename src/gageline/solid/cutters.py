"""What is taken out of a stick: copes, trims, clips, holes and openings as bodies of their own."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache

import numpy as np
from manifold3d import CrossSection, FillRule, Manifold
from numpy.typing import NDArray
from shapely import LinearRing, get_coordinates

from gageline.errors import ValueProblem
from gageline.part import (
    Face,
    Hole,
    Part,
    clip_outline,
    cope_outline,
    extent_y,
    extent_z,
    face_thickness,
    faces_of,
    opening_outline,
    trim_outline,
)
from gageline.steel import Plate, Profile, Section
from gageline.units import ZERO, Length

__all__ = ["CHORDS", "cutters", "hole_points"]

CHORDS = 16  # to a round hole; its polygon is drawn outside the circle so that the area is exact
_BEYOND = 1.0  # inches: a cut runs this far past the steel
_HOLLOW = frozenset({Profile.BOX, Profile.TUBE})
_FLANGES = frozenset({Face.TOP, Face.BOTTOM})
_LYING = frozenset({Face.TOP, Face.BOTTOM, Face.LEG_B})

Span = tuple[float, float]
Points = NDArray[np.float64]


def cutters(part: Part) -> list[Manifold]:
    """Every cut of a part as a body to take away, in inches in the part's space.

    Raises:
        ValueProblem: when a hole or an opening is on a face that the section does not have.
    """
    return [*_notches(part), *_openings(part), *_holes(part)]


def _notches(part: Part) -> Iterator[Manifold]:
    far, near = (limit.inches for limit in extent_z(part.stock))
    across = (far - _BEYOND, near + _BEYOND)
    face = faces_of(part.stock)[0]
    upright = Face.NEAR if face is Face.TOP else face
    for cope in part.copes:
        yield _prism(cope_outline(part, cope).exterior, upright, across)
    for clip in part.clips if isinstance(part.stock, Plate) else ():
        yield _prism(clip_outline(part, clip).exterior, upright, across)
    for trim in part.trims:
        yield _prism(trim_outline(part, trim).exterior, trim.flange, _through_flange(part, trim.flange))


def _openings(part: Part) -> Iterator[Manifold]:
    for opening in part.openings:
        span = _span(part, opening.face, through=opening.through)
        if opening.is_round:
            hole = Hole(opening.x, opening.y, opening.length, opening.length)
            yield _bored(hole, opening.face, span)
        else:
            yield _prism(opening_outline(opening).exterior, opening.face, span)


def _holes(part: Part) -> Iterator[Manifold]:
    for group in part.groups:
        span = _span(part, group.face, through=group.through)
        for hole in group.holes:
            yield _bored(hole, group.face, span)


def _prism(outline: LinearRing, face: Face, span: Span) -> Manifold:
    """A flat outline on a face, run through a span across that face."""
    section = CrossSection([get_coordinates(outline)], FillRule.NonZero)
    return _stood(Manifold.extrude(section, 1.0), face, (0.0, 0.0), span)


def _bored(hole: Hole, face: Face, span: Span) -> Manifold:
    drill = _drill(hole.width, hole.length, float(hole.angle))
    return _stood(drill, face, (hole.x.inches, hole.y.inches), span)


def _stood(unit: Manifold, face: Face, at: tuple[float, float], span: Span) -> Manifold:
    """A prism of unit height over a face's own x and y, stood across the face.

    The span is along z for upright faces and along y for lying ones.
    """
    (x, y), low, height = at, span[0], span[1] - span[0]
    if face not in _LYING:
        return unit.transform([[1, 0, 0, x], [0, 1, 0, y], [0, 0, height, low]])
    turn = -1 if face is Face.LEG_B else 1  # that leg is measured away from the reader
    return unit.transform([[1, 0, 0, x], [0, 0, height, low], [0, turn, 0, turn * y]])


@lru_cache(maxsize=256)
def _drill(width: Length, length: Length, angle: float) -> Manifold:
    """A hole through one inch, its middle at the origin."""
    points = hole_points(width.inches, length.inches, angle)
    return Manifold.extrude(CrossSection([points], FillRule.NonZero), 1.0)


def hole_points(width: float, length: float, angle: float) -> Points:
    """The outline of a round hole or a slot as a polygon of exactly the same area.

    The ends are chords drawn a little outside their circle; how far follows from the area, which is
    a quadratic equation for a slot because its straight sides move out as well.

    Args:
        width: diameter, or width of a slot, inches.
        length: overall length of a slot, inches; the width again for a round hole.
        angle: of the long axis from x, degrees counter-clockwise.

    Returns:
        Points about the middle, shape (CHORDS + 2, 2), inches.
    """
    radius, straight = width / 2, length - width
    turn = 2 * math.pi / CHORDS
    unit = CHORDS / 2 * math.sin(turn)  # area of the polygon of radius 1
    area = math.pi * radius**2 + width * straight
    out = (math.sqrt(straight**2 + unit * area) - straight) / unit
    around = np.arange(CHORDS // 2 + 1) * turn - math.pi / 2
    end = out * np.column_stack([np.cos(around), np.sin(around)]) + (straight / 2, 0.0)
    outline = np.vstack([end, -end])
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    turned: Points = outline @ np.array([[c, s], [-s, c]])
    return turned


def _span(part: Part, face: Face, *, through: bool) -> Span:
    """How far a drill runs across a face: through its own wall and the fillet beside it, no further.

    Returns:
        Limits of z for upright faces and of y for lying ones, inches.
    """
    stock = part.stock
    if face not in faces_of(stock):
        names = ", ".join(faces_of(stock))
        raise ValueProblem(f"part {part.mark}: {stock.designation} has no face {face}: use one of {names}")
    if isinstance(stock, Plate):
        return -stock.thickness.inches - _BEYOND, _BEYOND
    if stock.profile in _HOLLOW:
        return _through_wall(stock, face, through=through)
    if face in _FLANGES:
        return _through_flange(part, face)
    fillet, wall = (stock.fillet or ZERO).inches, face_thickness(stock, face).inches
    if face is Face.LEG_B:
        return -_BEYOND, wall + fillet
    if stock.profile in {Profile.CHANNEL, Profile.ANGLE}:
        return -wall - fillet, _BEYOND
    return -wall / 2 - fillet, wall / 2 + fillet


def _through_wall(stock: Section, face: Face, *, through: bool) -> Span:
    """Through one wall of a hollow section, or through both."""
    low, high = extent_y(stock) if face in _FLANGES else extent_z(stock)
    if through:
        return low.inches - _BEYOND, high.inches + _BEYOND
    depth = (stock.corner or (high - low) / 2).inches
    if face in {Face.TOP, Face.NEAR}:
        return high.inches - depth, high.inches + _BEYOND
    return low.inches - _BEYOND, low.inches + depth


def _through_flange(part: Part, face: Face) -> Span:
    """From outside a flange to the end of its fillet on the web, which is the end of its taper too."""
    stock = part.stock
    k = face_thickness(stock, face)
    if isinstance(stock, Section):
        k = stock.kdes or k + (stock.fillet or ZERO)
    low, high = extent_y(stock)
    if face is Face.TOP:
        return (high - k).inches, high.inches + _BEYOND
    return low.inches - _BEYOND, k.inches
