"""Parts as flat pieces of steel square to the axes, so that every view of them can be drawn."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

import shapely
from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from gageline.part import (
    Assembly,
    End,
    Face,
    Fitting,
    Hole,
    HoleGroup,
    Part,
    Placement,
    Side,
    extent_y,
    face_outline,
    face_thickness,
    trim_outline,
)
from gageline.steel import Plate, Profile, Section

__all__ = ["Bore", "Slab", "axis_of", "section_shape", "slabs_of_fitting", "slabs_of_main"]

X, Y, Z = 0, 1, 2
_BEYOND = 1.0
_FLANGES = (Face.TOP, Face.BOTTOM)
_GRID = 1e-4
_SQUARE = 1e-9  # of a direction: what turning leaves of one that is square
_ACROSS = {Face.NEAR: Face.FAR, Face.FAR: Face.NEAR, Face.TOP: Face.BOTTOM, Face.BOTTOM: Face.TOP}


@dataclass(frozen=True, slots=True)
class Bore:
    """A hole or a slot on a slab.

    Attributes:
        at: its middle on the slab, in.
        width: diameter, or width of a slot, in.
        length: overall length of a slot, in.
        along: unit vector of the slot's long axis on the slab.
    """

    at: tuple[float, float]
    width: float
    length: float
    along: tuple[float, float]


@dataclass(frozen=True, slots=True, eq=False)
class Slab:
    """A flat piece of steel square to one axis.

    Attributes:
        axis: 0, 1 or 2 for x, y or z: the direction of its thickness.
        shape: its outline on the two other axes in rising order, in; bores not taken out.
        low: where its thickness begins on the axis, in.
        high: where it ends.
        bores: its holes.
        side: its outline as the view that it is made for shows it, on the two other axes in rising order,
            where that is no rectangle; None elsewhere.
        axes: the middles of its holes through its thickness, of one that leans, on the same axes.
    """

    axis: int
    shape: BaseGeometry
    low: float
    high: float
    bores: tuple[Bore, ...] = ()
    side: BaseGeometry | None = None
    axes: tuple[tuple[tuple[float, float], tuple[float, float]], ...] = ()


def slabs_of_main(assembly: Assembly, axis: int, end: End = End.LEFT) -> tuple[Slab, ...]:
    """The main part of a piece for a view along an axis of its own.

    Args:
        assembly: the piece.
        axis: 0 for an end view, 1 for a flange plan, 2 for an elevation.
        end: which end an end view looks at.
    """
    return tuple(_slabs(assembly.main, axis, end))


def slabs_of_fitting(fitting: Fitting, axis: int) -> tuple[Slab, ...]:
    """A fitting in the space of its main part, for a view along an axis of the main part."""
    local = axis_of(fitting.placement, axis)
    slabs = _slabs(fitting.part, local, End.LEFT)
    return tuple(_placed(slab, fitting.placement, axis) for slab in slabs)


def axis_of(placement: Placement, axis: int) -> int:
    """Which axis of a placed part runs along an axis of the space it stands in."""
    lean = [abs(vector[axis]) for vector in (placement.ex, placement.ey, placement.ez)]
    return lean.index(max(lean))


def _placed(slab: Slab, placement: Placement, view: int) -> Slab:
    vectors = (placement.ex, placement.ey, placement.ez)
    normal = vectors[slab.axis]
    axis = _main_axis(normal)
    shift = placement.origin[axis].inches
    ends = sorted(normal[axis] * value + shift for value in (slab.low, slab.high))
    a, b = (vectors[i] for i in range(3) if i != slab.axis)
    p, q = (i for i in range(3) if i != axis)
    origin = (placement.origin[p].inches, placement.origin[q].inches)

    def turned(u: float, v: float) -> tuple[float, float]:
        return u * a[p] + v * b[p], u * a[q] + v * b[q]

    shape = affine_transform(slab.shape, [a[p], b[p], a[q], b[q], *origin])
    bores = []
    for bore in slab.bores:
        x, y = turned(*bore.at)
        bores.append(replace(bore, at=(x + origin[0], y + origin[1]), along=turned(*bore.along)))
    leaning = abs(normal[axis]) < 1.0 - _SQUARE
    if not leaning:
        return Slab(axis, shape, ends[0], ends[1], tuple(bores))
    side, axes = _silhouette(slab, placement, view), tuple(dict.fromkeys(_axes(slab, placement, view)))
    return Slab(axis, shape, ends[0], ends[1], tuple(bores), side, axes)


def _silhouette(slab: Slab, placement: Placement, view: int) -> BaseGeometry:
    """A slab that leans, as it is seen along an axis of the main part."""
    low_u, low_v, high_u, high_v = slab.shape.bounds
    corners = [
        _seen(slab, placement, view, (u, v, w))
        for u in (low_u, high_u)
        for v in (low_v, high_v)
        for w in (slab.low, slab.high)
    ]
    return shapely.MultiPoint(corners).convex_hull


def _axes(
    slab: Slab, placement: Placement, view: int
) -> Iterator[tuple[tuple[float, float], tuple[float, float]]]:
    """The middles of the holes of a slab that leans, as they are seen along an axis of the main part."""
    for bore in slab.bores:
        low, high = (_seen(slab, placement, view, (*bore.at, w)) for w in (slab.low, slab.high))
        yield low, high


def _seen(
    slab: Slab, placement: Placement, view: int, spot: tuple[float, float, float]
) -> tuple[float, float]:
    """A spot on a slab, with its level in its thickness, on the two axes beside the one looked along."""
    vectors = (placement.ex, placement.ey, placement.ez)
    ways = *(vectors[i] for i in range(3) if i != slab.axis), vectors[slab.axis]
    first, second = (
        placement.origin[k].inches + sum(at * way[k] for at, way in zip(spot, ways, strict=True))
        for k in (X, Y, Z)
        if k != view
    )
    return round(first, 6), round(second, 6)


def _main_axis(vector: tuple[float, float, float]) -> int:
    sizes = [abs(value) for value in vector]
    return sizes.index(max(sizes))


def _slabs(part: Part, axis: int, end: End) -> list[Slab]:
    if axis == X and not isinstance(part.stock, Plate):
        return _across(part, end)
    match part.profile:
        case Profile.PLATE:
            thick = face_thickness(part.stock, Face.FACE).inches
            return [Slab(Z, _face(part, Face.FACE), -thick, 0.0, _bores(part, Face.FACE))]
        case Profile.ANGLE:
            return _legs(part, axis)
        case Profile.BOX | Profile.TUBE:
            return _walls(part, axis)
        case _:
            return _web_and_flanges(part, axis)


def _face(part: Part, face: Face) -> BaseGeometry:
    return _solid(shapely.set_precision(face_outline(part, face), _GRID))


def _solid(shape: BaseGeometry) -> BaseGeometry:
    """A shape without the lines and points that cuts along its edges leave behind."""
    return shapely.MultiPolygon([piece for piece in shapely.get_parts(shape) if piece.area > 0])


def _within(shape: BaseGeometry, box: tuple[float, float, float, float]) -> BaseGeometry:
    return _solid(shapely.intersection(shape, shapely.box(*box), grid_size=_GRID))


def _web_and_flanges(part: Part, axis: int) -> list[Slab]:
    stock = _section(part)
    d, tf, tw = stock.d.inches, stock.tf.inches, stock.tw.inches
    web, levels = _face(part, Face.NEAR), {Face.TOP: (d - tf, d), Face.BOTTOM: (0.0, tf)}
    if part.profile is Profile.TEE:
        del levels[Face.BOTTOM]
    # The back of a channel is one flat face: in the elevation its flanges begin behind the web.
    flat_back = part.profile is Profile.CHANNEL and axis != Y
    flanges = []
    for face, (low, high) in levels.items():
        shape = _face(part, face)
        band = shapely.union_all(
            [_band(_reach(part, face, piece), low, high) for piece in shapely.get_parts(shape)]
        )
        side = _solid(shapely.intersection(_face(part, Face.NEAR), band, grid_size=_GRID))
        if flat_back:
            shape = _within(shape, (-1e5, -1e5, 1e5, -tw))
        else:
            web = _solid(shapely.difference(web, band, grid_size=_GRID))
        flanges.append(Slab(Y, shape, low, high, _bores(part, face), side))
    z = (-tw, 0.0) if part.profile is Profile.CHANNEL else (-tw / 2, tw / 2)
    bores = _bores(part, Face.NEAR) + _bores(part, Face.FAR)
    return [Slab(Z, web, *z, bores), *flanges]


def _band(reach: tuple[float, float], low: float, high: float) -> BaseGeometry:
    return shapely.box(reach[0], low, reach[1], high)


def _reach(part: Part, face: Face, piece: BaseGeometry) -> tuple[float, float]:
    """How far a piece of flange runs in the elevation; at an end with no cope it ends with the web."""
    left, _, right, _ = piece.bounds
    coped = {cope.end for cope in part.copes if cope.edge is face}
    overall = part.length.inches
    if End.LEFT not in coped and part.left.bevel and left < overall / 4:
        left -= overall
    if End.RIGHT not in coped and part.right.bevel and right > overall * 3 / 4:
        right += overall
    return left, right


def _legs(part: Part, axis: int) -> list[Slab]:
    stock = _section(part)
    t, depth, width = stock.tw.inches, stock.d.inches, stock.bf.inches
    upright = _face(part, Face.LEG_A)
    # The face of a lying leg is measured from the heel toward the back: z = -y.
    lying = affine_transform(_face(part, Face.LEG_B), [1, 0, 0, -1, 0, 0])
    if axis == Y:
        upright = _within(upright, (-_BEYOND, t, 1e5, depth))
    else:
        lying = _within(lying, (-_BEYOND, -width, 1e5, -t))
    bores = tuple(
        replace(bore, at=(bore.at[0], -bore.at[1]), along=(bore.along[0], -bore.along[1]))
        for bore in _bores(part, Face.LEG_B)
    )
    return [Slab(Z, upright, -t, 0.0, _bores(part, Face.LEG_A)), Slab(Y, lying, 0.0, stock.tf.inches, bores)]


def _walls(part: Part, axis: int) -> list[Slab]:
    stock = _section(part)
    t, d, half = stock.tw.inches, stock.d.inches, stock.bf.inches / 2
    near, far, top, bottom = (_face(part, face) for face in (Face.NEAR, Face.FAR, *_FLANGES))
    if axis == Y:
        near, far = (_within(wall, (-1e5, t, 1e5, d - t)) for wall in (near, far))
    else:
        top, bottom = (_within(wall, (-1e5, t - half, 1e5, half - t)) for wall in (top, bottom))
    return [
        Slab(Z, near, half - t, half, _bores(part, Face.NEAR)),
        Slab(Z, far, -half, t - half, _bores(part, Face.FAR)),
        Slab(Y, top, d - t, d, _bores(part, Face.TOP)),
        Slab(Y, bottom, 0.0, t, _bores(part, Face.BOTTOM)),
    ]


def _across(part: Part, end: End) -> list[Slab]:
    """The section run along x, in two lengths where the end that is looked at is coped."""
    whole = section_shape(_section(part))
    overall = part.length.inches
    copes = [cope for cope in part.copes if cope.end is end]
    trims = [trim for trim in part.trims if trim.end is end]
    if not copes and not trims:
        return [Slab(X, whole, 0.0, overall)]
    back = max([*(cope.length.inches for cope in copes), *(trim.length.inches for trim in trims)])
    left: BaseGeometry = whole
    high = extent_y(part.stock)[1].inches
    for cope in copes:
        depth = cope.depth.inches
        ys = (high - depth, high + _BEYOND) if cope.edge is Face.TOP else (-_BEYOND, depth)
        left = left.difference(shapely.box(ys[0], -1e3, ys[1], 1e3))
    for trim in trims:
        zs = trim_outline(part, trim).bounds[1::2]
        ys = (high / 2, high + _BEYOND) if trim.flange is Face.TOP else (-_BEYOND, high / 2)
        beside = min(zs, key=abs), (1e3 if trim.side is Side.NEAR else -1e3)
        left = left.difference(shapely.box(ys[0], min(beside), ys[1], max(beside)))
    front = (0.0, back) if end is End.LEFT else (overall - back, overall)
    rest = (back, overall) if end is End.LEFT else (0.0, overall - back)
    return [Slab(X, left, *front), Slab(X, whole, *rest)]


def section_shape(stock: Section | Plate) -> shapely.Polygon:
    """The cross section with its fillets on (y, z), where the part has it, in."""
    turn = -1.0 if stock.profile in {Profile.CHANNEL, Profile.ANGLE} else 1.0
    high = extent_y(stock)[1].inches
    rise = {Profile.ANGLE: 0.0, Profile.TEE: high}.get(stock.profile, high / 2)
    aside = -stock.thickness.inches / 2 if isinstance(stock, Plate) else 0.0
    loops = [[(y + rise, turn * z + aside) for z, y in loop] for loop in stock.outline()]
    return shapely.Polygon(loops[0], loops[1:])


def _section(part: Part) -> Section:
    if isinstance(part.stock, Plate):
        raise TypeError("a plate has no web and flanges")
    return part.stock


def _bores(part: Part, face: Face) -> tuple[Bore, ...]:
    """The holes of a face, and those that go through to it from the wall across."""

    def here(group: HoleGroup) -> bool:
        return group.face is face or (group.through and _ACROSS.get(group.face) is face)

    return tuple(_bore(hole) for group in part.groups if here(group) for hole in group.holes)


def _bore(hole: Hole) -> Bore:
    turn = math.radians(float(hole.angle))
    return Bore(
        (hole.x.inches, hole.y.inches),
        hole.width.inches,
        hole.length.inches,
        (math.cos(turn), math.sin(turn)),
    )
