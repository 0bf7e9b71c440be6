"""Where fittings sit: their edges struck on the main part, and the main's edges on an end plate."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from gageline.layout.mark import Bench, Mark, MarkKind, bench_of
from gageline.layout.tongues import Stand, stand_of
from gageline.part import (
    End,
    Face,
    Fitting,
    Part,
    bounds,
    extent_y,
    extent_z,
    face_point,
    face_range,
    foot,
    foot_across,
    lean_across,
)
from gageline.steel import Plate, Profile
from gageline.units import ZERO, Length

__all__ = ["Seat", "overall", "seat_of"]

_FLAT = frozenset({Face.TOP, Face.BOTTOM})
_TWO_FLANGES = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_WEBBED = frozenset({Profile.I_SHAPE, Profile.TEE, Profile.CHANNEL})
Range = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class Seat:
    """Where one fitting sits on the main part.

    Args:
        fitting: the fitting.
        lines: its edges, struck on the main's face.
        on_fitting: the main's edges and the middle of its web (of a channel the back of it), struck on the
            fitting that closes its end; of a round pipe its two middle lines.
        projection: how far it runs past its end of the main, below zero where it stops short; None
            for a fitting in between.
        drop: from the main's top edge down to the fitting's highest edge, below zero where it stands
            above; None on a flange.
        rise: from the main's bottom edge up to its lowest edge, below zero where it hangs below.
        first_row: from the main's top edge down to the fitting's first row of holes; None where it
            has none in view of that edge.
        overhang: how far its outer edge stands past its foot, of one that leans across the main; below zero
            toward the far side or the bottom edge.
        along_cut: of what closes an end that is bevelled, drop, rise and first row lie where steel and plate
            meet, measured along the cut.
        stand: where a tongue stands on its end cap; None for any other fitting.
    """

    fitting: Fitting
    lines: tuple[Mark, ...]
    on_fitting: tuple[Mark, ...]
    projection: Length | None
    drop: Length | None
    rise: Length
    first_row: Length | None
    overhang: Length
    along_cut: bool = False
    stand: Stand | None = None


def overall(main: Part, fittings: tuple[Fitting, ...]) -> Range:
    """From the leftmost to the rightmost point of a piece with its fittings, from the main's left end."""
    spans = [bounds(fitting)[0] for fitting in fittings]
    return min([ZERO, *(span[0] for span in spans)]), max([main.length, *(span[1] for span in spans)])


def seat_of(bench: Bench, fitting: Fitting, cap: Fitting | None = None) -> Seat:
    """The seat of a fitting on the part that lies on the bench.

    Args:
        bench: with that part.
        fitting: of its piece.
        cap: the end cap that it stands on, of a tongue.
    """
    main = bench.part
    left, right = bounds(fitting)[0]
    projection = None
    if fitting.end is not None:
        projection = -left if fitting.end is End.LEFT else right - main.length
    beside = fitting.on not in _FLAT
    overhang = _overhang(fitting, main)
    closes = fitting.on is None and cap is None and isinstance(fitting.part.stock, Plate)
    drop, rise, row = _levels_on_cut(fitting, main) if closes else _levels(fitting, main)
    return Seat(
        fitting=fitting,
        lines=tuple(_edge_lines(bench, fitting)),
        on_fitting=tuple(_main_on_plate(bench, fitting)) if cap is None else (),
        projection=projection,
        drop=drop if beside else None,
        rise=rise,
        first_row=row if beside and not overhang else None,
        overhang=overhang,
        along_cut=closes and bool(main.cut(fitting.end or End.LEFT).bevel),
        stand=stand_of(cap, fitting) if cap else None,
    )


def _levels(fitting: Fitting, main: Part) -> tuple[Length, Length, Length | None]:
    """Drop, rise and drop to the first row of a fitting, square to the main."""
    bottom, top = extent_y(main.stock)
    beside = fitting.on is not None and fitting.on not in _FLAT
    low, high = foot_across(fitting, main.stock) if beside else bounds(fitting)[1]
    return top - high, low - bottom, _first_row(fitting, top)


def _levels_on_cut(fitting: Fitting, main: Part) -> tuple[Length, Length, Length | None]:
    """The same of a plate that closes an end, on the plane where they meet, at the near side."""
    plate, stand = fitting.part, fitting.placement
    axis = 0 if abs(stand.ex[1]) > abs(stand.ey[1]) else 1
    sign = 1 if (stand.ex, stand.ey)[axis][1] > 0 else -1
    near = extent_z(main.stock)[1]
    bottom, top = (_on_plate(fitting, main, y, near)[axis] * sign for y in extent_y(main.stock))
    low, high = sorted((ZERO, (plate.length, extent_y(plate.stock)[1])[axis] * sign))
    rows = [(hole.x, hole.y)[axis] * sign for group in plate.groups for hole in group.holes]
    return top - high, low - bottom, top - max(rows) if rows else None


def _overhang(fitting: Fitting, main: Part) -> Length:
    """From the foot of a fitting that leans across the main to where its outer edge stands."""
    leaning = lean_across(fitting)
    if not leaning:
        return ZERO
    foot_low, foot_high = foot_across(fitting, main.stock)
    low, high = bounds(fitting)[2 if fitting.on in _FLAT else 1]
    return high - foot_high if leaning.ratio > 0 else low - foot_low


def _first_row(fitting: Fitting, top: Length) -> Length | None:
    """The drop to the highest hole; holes that look along the main's height have no row to drop to."""
    heights = [
        _height(fitting, group.face, (hole.x, hole.y))
        for group in fitting.part.groups
        if _stands(fitting, group.face)
        for hole in group.holes
    ]
    return top - max(heights) if heights else None


def _height(fitting: Fitting, face: Face, spot: tuple[Length, Length]) -> Length:
    """How high above the main's origin a point on a fitting's face lies."""
    return fitting.placement.point(face_point(fitting.part.stock, face, *spot))[1]


def _stands(fitting: Fitting, face: Face) -> bool:
    """Whether a fitting's face runs up the main's height, so that a hole in it has a drop."""
    foot = Length.from_inches(12)
    spots = ((ZERO, ZERO), (foot, ZERO), (ZERO, foot))
    return len({_height(fitting, face, spot) for spot in spots}) > 1


def _clear(part: Part, face: Face) -> Range:
    """The flat of a face between what stands on its edges."""
    low, high = face_range(part.stock, face)
    stock = part.stock
    if isinstance(stock, Plate) or face in _FLAT:
        return low, high
    if stock.profile in _TWO_FLANGES:
        return low + stock.tf, high - stock.tf
    return low, high - stock.tf if stock.profile is Profile.TEE else high


def _span_on(face: Face, limits: Range) -> Range:
    """Limits across the main in a face's own y."""
    return (-limits[1], -limits[0]) if face is Face.LEG_B else limits


def _edge_lines(bench: Bench, fitting: Fitting) -> Iterator[Mark]:
    """The edges of the fitting's foot that fall inside the face it lies against."""
    face, part = fitting.on, bench.part
    if face is None:
        return
    low, high = _clear(part, face)
    across, xs = _span_on(face, foot_across(fitting, part.stock)), foot(fitting, part.stock)
    bottom, top = max(across[0], low), min(across[1], high)
    left, right = max(xs[0], ZERO), min(xs[1], part.length)
    if bottom >= top or left >= right:
        return
    for x in xs:
        if ZERO < x < part.length:
            yield bench.line(face, MarkKind.EDGE_LINE, (x, top), (x, bottom), fitting.name)
    for y in reversed(across):
        if low < y < high:
            yield bench.line(face, MarkKind.EDGE_LINE, (left, y), (right, y), fitting.name)


def _main_on_plate(bench: Bench, fitting: Fitting) -> Iterator[Mark]:
    """The main's outer edges and its web line on a plate that closes its end; of a pipe its two middles."""
    plate, main = fitting.part, bench.part
    if fitting.on is not None or not isinstance(plate.stock, Plate):
        return
    board = bench_of(plate, bench.tape, bench.system)
    (bottom, top), (far, near) = extent_y(main.stock), extent_z(main.stock)
    corners = [_on_plate(fitting, main, y, z) for y in (bottom, top) for z in (far, near)]
    x_low, x_high = min(x for x, _ in corners), max(x for x, _ in corners)
    y_low, y_high = min(y for _, y in corners), max(y for _, y in corners)
    if x_low == x_high or y_low == y_high:
        return
    if main.profile is Profile.TUBE:
        middle = bottom + (top - bottom).parts(2)[0]
        for ends in (((top, ZERO), (bottom, ZERO)), ((middle, near), (middle, far))):
            start, stop = (_on_plate(fitting, main, y, z) for y, z in ends)
            yield board.line(Face.FACE, MarkKind.CENTRE_LINE, start, stop, f"{main.mark} middle line")
        return
    width, hair = plate.stock.width, bench.tape / 2  # nearer to the plate's edge no tape shows a line
    x_span, y_span = (max(x_low, ZERO), min(x_high, plate.length)), (max(y_low, ZERO), min(y_high, width))
    name = f"{main.mark} outline"
    for x in (x_low, x_high):
        if hair < x < plate.length - hair:
            yield board.line(Face.FACE, MarkKind.EDGE_LINE, (x, y_span[1]), (x, y_span[0]), name)
    for y in (y_high, y_low):
        if hair < y < width - hair:
            yield board.line(Face.FACE, MarkKind.EDGE_LINE, (x_span[0], y), (x_span[1], y), name)
    if main.profile in _WEBBED:
        start, stop = (_on_plate(fitting, main, y, ZERO) for y in (top, bottom))
        yield board.line(Face.FACE, MarkKind.CENTRE_LINE, start, stop, f"{main.mark} web line")


def _on_plate(fitting: Fitting, main: Part, y: Length, z: Length) -> tuple[Length, Length]:
    """A point of the main's section as its end is cut, in the plate's own x and y."""
    placement = fitting.placement
    end = fitting.end or End.LEFT
    spot = (main.end_x(end, y, z), y, z)
    away = [(a - b).ticks for a, b in zip(spot, placement.origin, strict=True)]
    along, across = (
        round(sum(a * b for a, b in zip(away, way, strict=True))) for way in (placement.ex, placement.ey)
    )
    return Length(along), Length(across)
