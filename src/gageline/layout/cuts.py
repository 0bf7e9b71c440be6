"""Marks of everything that is cut: ends, copes, trims, clips and openings."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.layout.mark import Bench, Mark, MarkKind
from gageline.part import (
    Clip,
    Cope,
    End,
    Face,
    FlangeTrim,
    Opening,
    Part,
    Side,
    extent_z,
    face_point,
    face_range,
    faces_of,
)
from gageline.steel import Profile
from gageline.units import ZERO, Length

__all__ = [
    "clip_marks",
    "clip_name",
    "cope_marks",
    "cope_name",
    "cut_x",
    "end_line_x",
    "end_marks",
    "flange_face",
    "is_hollow",
    "opening_marks",
    "opposite_wall",
    "other_wall",
    "trim_level",
    "trim_marks",
    "trim_name",
    "web_faces",
]

_OPPOSITE = {Face.TOP: Face.BOTTOM, Face.BOTTOM: Face.TOP, Face.NEAR: Face.FAR, Face.FAR: Face.NEAR}
_HOLLOW = frozenset({Profile.BOX, Profile.TUBE})
_WEB = {Profile.ANGLE: (Face.LEG_A,), Profile.PLATE: (Face.FACE,)}


def is_hollow(part: Part) -> bool:
    """Whether a part is a box or a tube, whose faces are walls."""
    return part.profile in _HOLLOW


def web_faces(part: Part) -> tuple[Face, ...]:
    """The faces that a cope is struck on: the near web, both walls, the upright leg or the plate."""
    if is_hollow(part):
        return Face.NEAR, Face.FAR
    return _WEB.get(part.profile, (Face.NEAR,))


def flange_face(part: Part, edge: Face) -> Face | None:
    """The flange, wall or lying leg at an edge of the section; None where there is only an edge."""
    face = Face.LEG_B if part.profile is Profile.ANGLE and edge is Face.BOTTOM else edge
    return face if face in faces_of(part.stock) else None


def other_wall(name: str) -> str:
    """What a feature is called on the wall that it comes out of."""
    return f"{name}, other wall"


def opposite_wall(face: Face) -> Face:
    """The wall of a hollow section across from a face."""
    return _OPPOSITE[face]


def cut_x(part: Part, end: End, length: Length) -> Length:
    """Where a cut lies that is a length in from the furthest point of an end."""
    return length if end is End.LEFT else part.length - length


def end_marks(bench: Bench, end: End) -> Iterator[Mark]:
    """The line of an end cut on every face, from edge to edge."""
    part = bench.part
    for face in faces_of(part.stock):
        low, high = face_range(part.stock, face)
        start, stop = ((end_line_x(part, end, face, y), y) for y in (high, low))
        yield bench.line(face, MarkKind.CUT_LINE, start, stop, f"{end} end")


def end_line_x(part: Part, end: End, face: Face, y: Length) -> Length:
    """Where an end cut crosses a face at one of the face's y."""
    _, space_y, space_z = face_point(part.stock, face, ZERO, y)
    return part.end_x(end, space_y, space_z)


def cope_name(cope: Cope) -> str:
    """What a cope is called on cards."""
    return f"{cope.end} {cope.edge} cope"


def cope_marks(bench: Bench, cope: Cope) -> Iterator[Mark]:
    """Length line, depth line and radius centre on the web, and the line across the flange."""
    part, name = bench.part, cope_name(cope)
    x = cut_x(part, cope.end, cope.length)
    x_centre = cut_x(part, cope.end, cope.length - cope.radius)
    for face in web_faces(part):
        low, high = face_range(part.stock, face)
        edge, inward = (high, -1) if cope.edge is Face.TOP else (low, 1)
        level = edge + cope.depth * inward
        start = (end_line_x(part, cope.end, face, level), level)
        yield bench.line(face, MarkKind.CUT_LINE, (x, edge), (x, level), name)
        yield bench.line(face, MarkKind.CUT_LINE, start, (x, level), name)
        if cope.radius:
            centre = bench.spot(face, x_centre, edge + (cope.depth - cope.radius) * inward)
            yield Mark(face, MarkKind.RADIUS_CENTRE, centre, name, size=cope.radius)
    flange = flange_face(part, cope.edge)
    if flange:
        low, high = face_range(part.stock, flange)
        yield bench.line(flange, MarkKind.CUT_LINE, (x, high), (x, low), name)


def trim_name(trim: FlangeTrim) -> str:
    """What a flange trim is called on cards."""
    return f"{trim.end} {trim.flange} trim, {trim.side} side"


def clip_name(clip: Clip) -> str:
    """What a clip is called on cards."""
    return f"{clip.end} {clip.edge} clip"


def trim_level(part: Part, trim: FlangeTrim) -> tuple[Length, Length]:
    """Where a trimmed flange ends beside the web, and its full edge, both as y of the flange face."""
    far, near = extent_z(part.stock)
    if trim.side is Side.NEAR:
        return face_point(part.stock, Face.NEAR, ZERO, ZERO)[2] + trim.keep, near
    return face_point(part.stock, Face.FAR, ZERO, ZERO)[2] - trim.keep, far


def trim_marks(bench: Bench, trim: FlangeTrim) -> Iterator[Mark]:
    """The line along the web and the line out to the flange's edge."""
    part, face = bench.part, trim.flange
    if face not in faces_of(part.stock):
        return
    name = trim_name(trim)
    x = cut_x(part, trim.end, trim.length)
    level, edge = trim_level(part, trim)
    yield bench.line(face, MarkKind.CUT_LINE, (x, edge), (x, level), name)
    yield bench.line(
        face, MarkKind.CUT_LINE, (end_line_x(part, trim.end, face, level), level), (x, level), name
    )


def clip_marks(bench: Bench, clip: Clip) -> Iterator[Mark]:
    """The line across a corner of a plate."""
    part = bench.part
    if part.profile is not Profile.PLATE:
        return
    low, high = face_range(part.stock, Face.FACE)
    edge, inward = (high, -1) if clip.edge is Face.TOP else (low, 1)
    start = (cut_x(part, clip.end, clip.along), edge)
    stop = (cut_x(part, clip.end, ZERO), edge + clip.across * inward)
    yield bench.line(Face.FACE, MarkKind.CUT_LINE, start, stop, clip_name(clip))


def opening_marks(bench: Bench, opening: Opening, name: str) -> Iterator[Mark]:
    """Centre lines and outline of an opening, with its radius centres, on each wall it goes through."""
    yield from _opening_on(bench, opening, opening.face, name)
    if opening.through:
        yield from _opening_on(bench, opening, opposite_wall(opening.face), other_wall(name))


def _opening_on(bench: Bench, opening: Opening, face: Face, name: str) -> Iterator[Mark]:
    x, y, half_x, half_y = opening.x, opening.y, *_halves(opening)
    left, right, low, high = x - half_x[0], x + half_x[1], y - half_y[0], y + half_y[1]
    yield bench.line(face, MarkKind.CENTRE_LINE, (x, high), (x, low), name)
    yield bench.line(face, MarkKind.CENTRE_LINE, (left, y), (right, y), name)
    r = opening.radius
    if opening.is_round:
        yield Mark(face, MarkKind.RADIUS_CENTRE, bench.spot(face, x, y), name, size=r)
        return
    corners = ((left, high), (right, high), (right, low), (left, low))
    for start, stop in zip(corners, (*corners[1:], corners[0]), strict=True):
        yield bench.line(face, MarkKind.CUT_LINE, start, stop, name)
    if r:
        for at in ((left + r, high - r), (right - r, high - r), (right - r, low + r), (left + r, low + r)):
            yield Mark(face, MarkKind.RADIUS_CENTRE, bench.spot(face, *at), name, size=r)


def _halves(opening: Opening) -> tuple[tuple[Length, ...], tuple[Length, ...]]:
    return opening.length.parts(2), opening.depth.parts(2)
