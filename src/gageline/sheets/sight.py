"""What a view of slabs shows: the edges in sight and those behind other steel."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from gageline.part import End
from gageline.sheets.slabs import Bore, Slab

__all__ = ["BOTTOM", "ELEVATION", "TOP", "Picture", "Sighted", "View", "end_of", "look"]

_GRID = 1e-4
_SHARP = math.cos(math.radians(160))
"""Corners that turn by less than 20 degrees are chords of an arc and make no edge line."""
_FAR_OFF = 1e5


@dataclass(frozen=True, slots=True)
class View:
    """A way to look at a piece, third-angle: what is nearer to another view lies nearer to it on paper.

    Attributes:
        axis: the axis that is looked along.
        toward: 1 where the reader stands at its high end, -1 at its low end.
        u: the axis that runs to the right on the paper, and its sign.
        v: the axis that runs up the paper, and its sign.
    """

    axis: int
    toward: int
    u: tuple[int, int]
    v: tuple[int, int]


ELEVATION = View(2, 1, (0, 1), (1, 1))
"""The near side."""
TOP = View(1, 1, (0, 1), (2, -1))
"""Looking down on the top."""
BOTTOM = View(1, -1, (0, 1), (2, 1))
"""Looking up at the bottom."""
_ENDS = {End.LEFT: View(0, -1, (2, 1), (1, 1)), End.RIGHT: View(0, 1, (2, -1), (1, 1))}


def end_of(end: End) -> View:
    """Looking at an end from outside."""
    return _ENDS[end]


@dataclass(frozen=True, slots=True)
class Sighted:
    """A hole in a view.

    Attributes:
        bore: the hole in the view's own u and v, in.
        hidden: behind other steel.
    """

    bore: Bore
    hidden: bool


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """A view before it has a scale, u to the right and v up, in.

    Attributes:
        visible: edges in sight.
        hidden: edges behind other steel.
        bores: the holes seen round.
        axes: middles of holes seen from the side: lines across the steel.
        bounds: u and v of the lower left, then of the upper right corner.
    """

    visible: BaseGeometry
    hidden: BaseGeometry
    bores: tuple[Sighted, ...]
    axes: tuple[tuple[tuple[float, float], tuple[float, float]], ...]
    bounds: tuple[float, float, float, float]


@dataclass(frozen=True, slots=True, eq=False)
class _Flat:
    """A slab as the view sees it."""

    cover: BaseGeometry
    edges: BaseGeometry
    behind: BaseGeometry | None
    bores: tuple[Bore, ...]
    axes: tuple[tuple[tuple[float, float], tuple[float, float]], ...]
    far: float
    near: float


def look(slabs: Sequence[Slab], view: View) -> Picture:
    """Look at slabs that do not run into each other.

    Args:
        slabs: in one space.
        view: from where.
    """
    flats = [_face_on(slab, view) if slab.axis == view.axis else _edge_on(slab, view) for slab in slabs]
    visible, hidden, bores = [], [], []
    for flat in flats:
        fronts = [other.cover for other in flats if other is not flat and other.far >= flat.near - _GRID]
        if flat.behind is not None:
            hidden.append(flat.behind)
        if not fronts:
            visible.append(flat.edges)
            bores += [Sighted(bore, hidden=False) for bore in flat.bores]
            continue
        front = shapely.union_all(fronts, grid_size=_GRID)
        visible.append(shapely.difference(flat.edges, front, grid_size=_GRID))
        hidden.append(shapely.intersection(flat.edges, front, grid_size=_GRID))
        bores += [Sighted(bore, bool(front.intersects(shapely.Point(bore.at)))) for bore in flat.bores]
    seen = shapely.union_all([_lines(shape) for shape in visible], grid_size=_GRID)
    unseen = shapely.union_all([_lines(shape) for shape in hidden], grid_size=_GRID)
    return Picture(
        shapely.line_merge(seen),
        shapely.line_merge(_lines(shapely.difference(unseen, seen, grid_size=_GRID))),
        tuple(_once(bores)),
        tuple(axis for flat in flats for axis in flat.axes),
        tuple(shapely.total_bounds([flat.cover for flat in flats]).tolist()),
    )


def _lines(shape: BaseGeometry) -> BaseGeometry:
    """The lines of a shape; the points that cuts leave behind are dropped."""
    return shapely.MultiLineString([part for part in shapely.get_parts(shape) if part.length > 0])


def _once(bores: list[Sighted]) -> Iterator[Sighted]:
    """Holes through several plies once, in sight if any of them is."""
    known: dict[tuple[float, float, float, float], Sighted] = {}
    for sighted in bores:
        u, v = sighted.bore.at
        key = (round(u, 3), round(v, 3), round(sighted.bore.width, 3), round(sighted.bore.length, 3))
        if key not in known or known[key].hidden:
            known[key] = sighted
    yield from known.values()


def _matrix(view: View, axes: tuple[int, int]) -> list[float]:
    """The map from two axes of space to the view's u and v."""
    (u, u_sign), (v, v_sign) = view.u, view.v
    return [
        u_sign * (axes[0] == u), u_sign * (axes[1] == u),
        v_sign * (axes[0] == v), v_sign * (axes[1] == v), 0, 0,
    ]  # fmt: skip


def _beside(axis: int) -> tuple[int, int]:
    """The two other axes in rising order."""
    first, second = (i for i in range(3) if i != axis)
    return first, second


def _turned(m: list[float], p: tuple[float, float]) -> tuple[float, float]:
    return m[0] * p[0] + m[1] * p[1], m[2] * p[0] + m[3] * p[1]


def _face_on(slab: Slab, view: View) -> _Flat:
    m = _matrix(view, _beside(slab.axis))

    bores = tuple(Bore(_turned(m, b.at), b.width, b.length, _turned(m, b.along)) for b in slab.bores)
    shape = affine_transform(slab.shape, m)
    far, near = sorted(view.toward * value for value in (slab.low, slab.high))
    return _Flat(shape, shape.boundary, None, bores, (), far, near)


def _edge_on(slab: Slab, view: View) -> _Flat:
    others = [i for i in range(3) if i != slab.axis]
    depth_at = others.index(view.axis)
    along = others[1 - depth_at]

    def at(w: float, level: float) -> tuple[float, float]:
        values = {along: w, slab.axis: level}
        return view.u[1] * values[view.u[0]], view.v[1] * values[view.v[0]]

    def across(w: float) -> shapely.LineString:
        return shapely.LineString([at(w, slab.low), at(w, slab.high)])

    m = _matrix(view, _beside(view.axis))
    if slab.side is not None:
        cover = affine_transform(slab.side, m)
    else:
        spans = [part.bounds[1 - depth_at :: 2] for part in shapely.get_parts(slab.shape)]
        cover = shapely.union_all(
            [shapely.box(*_sorted(at(a, slab.low), at(b, slab.high))) for a, b in spans]
        )
    front: list[BaseGeometry] = []
    behind: list[BaseGeometry] = []
    for corner in _corners(slab.shape):
        w, depth = corner[1 - depth_at], corner[depth_at]
        covered = _covered(slab.shape, w, depth, view.toward, depth_at)
        (behind if covered else front).append(across(w))
    hidden = shapely.intersection(shapely.union_all(behind), cover)
    edges = shapely.union_all([cover.boundary, *(shapely.intersection(line, cover) for line in front)])
    depths = slab.shape.bounds[depth_at::2]
    far, near = sorted(view.toward * value for value in depths)
    levels = {round(bore.at[1 - depth_at], 4) for bore in slab.bores}
    leaning = tuple((_turned(m, low), _turned(m, high)) for low, high in slab.axes)
    axes = leaning or tuple((at(w, slab.low), at(w, slab.high)) for w in levels)
    return _Flat(cover, _lines(edges), _lines(hidden), (), axes, far, near)


def _sorted(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float, float, float]:
    return min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])


def _corners(shape: BaseGeometry) -> Iterator[tuple[float, float]]:
    """The corners of a shape that make an edge line when it is seen from the side."""
    for part in shapely.get_parts(shape):
        for ring in (part.exterior, *part.interiors):
            points = list(ring.coords)[:-1]
            for i, (x, y) in enumerate(points):
                (x0, y0), (x1, y1) = points[i - 1], points[(i + 1) % len(points)]
                a, b = (x0 - x, y0 - y), (x1 - x, y1 - y)
                cosine = (a[0] * b[0] + a[1] * b[1]) / (math.hypot(*a) * math.hypot(*b))
                if cosine > _SHARP:
                    yield x, y


def _covered(shape: BaseGeometry, w: float, depth: float, toward: int, depth_at: int) -> bool:
    """Whether the slab's own steel stands between one of its corners and the reader."""
    start, end = depth + toward * 0.01, toward * _FAR_OFF
    points = [(start, w), (end, w)] if depth_at == 0 else [(w, start), (w, end)]
    return bool(shapely.intersection(shapely.LineString(points), shape).length > 0.01)
