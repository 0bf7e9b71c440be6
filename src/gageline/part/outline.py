"""The flat outline of a face after everything is cut: for rules, for drawings and for the eye."""

from __future__ import annotations

import math

from shapely import Polygon, box
from shapely.geometry.base import BaseGeometry

from gageline.part.faces import End, Face, Side, extent_z, face_point, face_range
from gageline.part.features import Clip, Cope, FlangeTrim, Opening
from gageline.part.part import Part
from gageline.steel import Plate, Profile
from gageline.units import ZERO, Length

__all__ = [
    "clip_outline",
    "cope_boundary",
    "cope_outline",
    "face_outline",
    "opening_outline",
    "trim_outline",
]

Flat = tuple[float, float]
_QUARTER = 24  # chords in a quarter circle: 0.05 % of the radius off at the most, 0.07 % of the area
_BEYOND = 1.0  # inches: a cut runs this far past the steel's edge
_LYING = {Face.TOP: Face.TOP, Face.BOTTOM: Face.BOTTOM, Face.LEG_B: Face.BOTTOM}  # face: its cope's edge
_UPRIGHT = frozenset({Face.NEAR, Face.FAR})
_HOLLOW = frozenset({Profile.BOX, Profile.TUBE})
_ACROSS = {Face.NEAR: Face.FAR, Face.FAR: Face.NEAR, Face.TOP: Face.BOTTOM, Face.BOTTOM: Face.TOP}


def _quarter(centre: Flat, radius: float, start: float) -> list[Flat]:
    """A quarter circle counter-clockwise from an angle in degrees."""
    angles = [math.radians(start + 90 * step / _QUARTER) for step in range(_QUARTER + 1)]
    return [(centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a)) for a in angles]


def cope_boundary(part: Part, cope: Cope) -> tuple[Flat, ...]:
    """The line of a cope on the web, from the end of the steel round the corner to the flange.

    Args:
        part: the part that is coped.
        cope: one of its copes.

    Returns:
        Points (x, y) in inches from the part's left end and bottom.
    """
    low, high = face_range(part.stock, _web_face(part))
    top = cope.edge is Face.TOP
    level = (high - cope.depth if top else low + cope.depth).inches
    beyond = (high if top else low).inches
    length = cope.length.inches
    radius = min(cope.radius, cope.length, cope.depth).inches  # a larger one is refused by the rules
    centre_y = level + radius if top else level - radius
    arc = _quarter((length - radius, centre_y), radius, 270 if top else 0)
    if not top:
        arc.reverse()
    line = [(0.0, level), *(arc if radius else [(length, level)]), (length, beyond)]
    if cope.end is End.RIGHT:
        overall = part.length.inches
        line = [(overall - x, y) for x, y in line]
    return tuple(line)


def _web_face(part: Part) -> Face:
    if part.profile is Profile.PLATE:
        return Face.FACE
    return Face.LEG_A if part.profile is Profile.ANGLE else Face.NEAR


def cope_outline(part: Part, cope: Cope) -> Polygon:
    """What a cope takes off the web, run on past the steel, in inches from the left end and bottom."""
    line = cope_boundary(part, cope)
    out = _BEYOND if cope.edge is Face.TOP else -_BEYOND
    aside = -_BEYOND if cope.end is End.LEFT else _BEYOND
    (x0, y0), (x1, y1) = line[0], line[-1]
    return Polygon([(x0 + aside, y0), *line, (x1, y1 + out), (x0 + aside, y1 + out)])


def _span(part: Part, end: End, length: Length) -> tuple[float, float]:
    """From outside the steel to a distance in from the furthest point of an end."""
    overall = part.length.inches
    return (-_BEYOND, length.inches) if end is End.LEFT else (overall - length.inches, overall + _BEYOND)


def _cope_on_flange(part: Part, face: Face, cope: Cope) -> Polygon:
    low, high = (limit.inches for limit in face_range(part.stock, face))
    start, stop = _span(part, cope.end, cope.length)
    return box(start, low - _BEYOND, stop, high + _BEYOND)


def trim_outline(part: Part, trim: FlangeTrim) -> Polygon:
    """What a trim takes off its flange, run on past the steel, in inches on the flange's face."""
    far, near = extent_z(part.stock)
    web_far, web_near = (face_point(part.stock, side, ZERO, ZERO)[2] for side in (Face.FAR, Face.NEAR))
    low, high = (
        ((web_near + trim.keep).inches, near.inches + _BEYOND)
        if trim.side is Side.NEAR
        else (far.inches - _BEYOND, (web_far - trim.keep).inches)
    )
    start, stop = _span(part, trim.end, trim.length)
    return box(start, low, stop, high)


def clip_outline(part: Part, clip: Clip) -> Polygon:
    """The corner that a clip takes off a plate, in inches on its face."""
    low, high = face_range(part.stock, Face.FACE)
    left, top = clip.end is End.LEFT, clip.edge is Face.TOP
    corner = (0.0 if left else part.length.inches, (high if top else low).inches)
    dx = clip.along.inches if left else -clip.along.inches
    dy = -clip.across.inches if top else clip.across.inches
    return Polygon([corner, (corner[0] + dx, corner[1]), (corner[0], corner[1] + dy)])


def opening_outline(opening: Opening) -> Polygon:
    """The outline of an opening, in inches on its face."""
    half_x, half_y = opening.length.inches / 2, opening.depth.inches / 2
    r = min(opening.radius.inches, half_x, half_y)  # a larger one is refused by the rules
    x, y = opening.x.inches, opening.y.inches
    if not r:
        return box(x - half_x, y - half_y, x + half_x, y + half_y)
    corners = ((1, 1, 0), (-1, 1, 90), (-1, -1, 180), (1, -1, 270))
    return Polygon(
        [
            point
            for sx, sy, start in corners
            for point in _quarter((x + sx * (half_x - r), y + sy * (half_y - r)), r, start)
        ]
    )


def _blank(part: Part, face: Face) -> Polygon:
    """The face between its end cuts and edges."""
    ys = face_range(part.stock, face)

    def corner(end: End, y: Length) -> Flat:
        _, space_y, space_z = face_point(part.stock, face, ZERO, y)
        return part.end_x(end, space_y, space_z).inches, y.inches

    low, high = ys
    return Polygon(
        [corner(End.LEFT, low), corner(End.RIGHT, low), corner(End.RIGHT, high), corner(End.LEFT, high)]
    )


def _opens(part: Part, opening: Opening, face: Face) -> bool:
    """Whether an opening is cut into a face: its own, the other side of its web, or a wall it goes on to."""
    both = opening.through if part.profile in _HOLLOW else opening.face in _UPRIGHT
    return opening.face is face or (both and _ACROSS.get(opening.face) is face)


def face_outline(part: Part, face: Face) -> BaseGeometry:
    """What is left of a face when all cuts, copes, trims, clips and openings are made.

    Holes are not taken out. A face that is cut in two comes back in two pieces.

    Args:
        part: the part.
        face: one of the faces of its section.

    Returns:
        A shapely polygon (or several) in inches, x along the part, y the face's own.
    """
    cuts: list[Polygon] = [opening_outline(o) for o in part.openings if _opens(part, o, face)]
    if face in _LYING:
        cuts.extend(_cope_on_flange(part, face, cope) for cope in part.copes if cope.edge is _LYING[face])
        cuts.extend(trim_outline(part, trim) for trim in part.trims if trim.flange is face)
    else:
        cuts.extend(cope_outline(part, cope) for cope in part.copes)
        if isinstance(part.stock, Plate):
            cuts.extend(clip_outline(part, clip) for clip in part.clips)
    steel: BaseGeometry = _blank(part, face)
    for cut in cuts:
        steel = steel.difference(cut)
    return steel
