"""The rules of the trade for fittings on a main part."""

from __future__ import annotations

from collections.abc import Iterator
from math import atan, degrees

from gageline.part.assembly import Assembly, Fitting, FittingKind
from gageline.part.faces import Face, Point, extent_y, extent_z, face_point, normal
from gageline.part.finding import Finding, Severity
from gageline.part.placing import Vector
from gageline.part.rules import check_part
from gageline.steel import Plate, Profile, Stock
from gageline.units import SQUARE, ZERO, Length, Slope, System, write_length

__all__ = ["bounds", "check_assembly", "corners", "foot", "foot_across", "lean", "lean_across"]

_STRAIGHT = 1e-6  # a lean of less is what directions are rounded by
_ALONG = 0

_WEBS = frozenset({Face.NEAR, Face.FAR})
_ON_WEB = frozenset({FittingKind.ANGLE, FittingKind.PLATE})
_ROLLED_FILLETS = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.TEE})


def bounds(fitting: Fitting) -> tuple[tuple[Length, Length], tuple[Length, Length], tuple[Length, Length]]:
    """The box that a fitting fills in its main part's space: limits in x, y and z."""
    xs, ys, zs = zip(*corners(fitting), strict=True)
    return (min(xs), max(xs)), (min(ys), max(ys)), (min(zs), max(zs))


def corners(fitting: Fitting) -> list[Point]:
    """The eight corners of a fitting, as if its ends were cut square, in its main part's space."""
    part = fitting.part
    return [
        fitting.placement.point((x, y, z))
        for x in (ZERO, part.length)
        for y in extent_y(part.stock)
        for z in extent_z(part.stock)
    ]


def lean(fitting: Fitting) -> Slope:
    """How far a fitting leans along the main part from square to the face that it stands on.

    Returns:
        Its way along the main over its way out of the face, positive toward the right end; square for one
        that stands square, lies flat, or closes an end.
    """
    return _lean(fitting, _ALONG)


def lean_across(fitting: Fitting) -> Slope:
    """The same across the face: positive toward the near side of a flange, toward the top edge of a web."""
    return _lean(fitting, _across(fitting))


def foot(fitting: Fitting, main: Stock) -> tuple[Length, Length]:
    """Between which lengths of the main part a fitting stands on its face; of one at an end those of its box.

    A plate that leans fills a box that is longer than where it touches.

    Args:
        fitting: the fitting.
        main: the section that it stands on.
    """
    return _foot(fitting, main, _ALONG)


def foot_across(fitting: Fitting, main: Stock) -> tuple[Length, Length]:
    """The same across the face: limits in z on a flange, in y on a web; at an end the y of its box."""
    return _foot(fitting, main, _across(fitting))


def _across(fitting: Fitting) -> int:
    """The axis of the main part that runs across the face that a fitting stands on."""
    return 2 if fitting.on is not None and normal(fitting.on)[1] else 1


def _lean(fitting: Fitting, axis: int) -> Slope:
    if fitting.on is None:
        return SQUARE
    stem, out = _stem(fitting, fitting.on)
    return Slope.from_degrees(degrees(atan(stem[axis] / out))) if abs(stem[axis]) > _STRAIGHT else SQUARE


def _foot(fitting: Fitting, main: Stock, axis: int) -> tuple[Length, Length]:
    if fitting.on is None or not _lean(fitting, axis):
        return bounds(fitting)[axis]
    stem, out = _stem(fitting, fitting.on)
    way = normal(fitting.on)
    level = _dot(face_point(main, fitting.on, ZERO, ZERO), way)
    feet = [
        corner[axis] - Length(round((_dot(corner, way) - level) / out * stem[axis]))
        for corner in corners(fitting)
    ]
    return min(feet), max(feet)


def _stem(fitting: Fitting, face: Face) -> tuple[Vector, float]:
    """The axis of a fitting that runs out of a face, and how much of it does."""
    way, placement = normal(face), fitting.placement
    axes: tuple[Vector, ...] = placement.ex, placement.ey, placement.ez
    out, axis = max(
        ((sum(a * b for a, b in zip(axis, way, strict=True)), axis) for axis in axes),
        key=lambda one: abs(one[0]),
    )
    return axis, out


def _dot(point: Point, way: tuple[int, int, int]) -> int:
    return sum(at.ticks * toward for at, toward in zip(point, way, strict=True))


def check_assembly(assembly: Assembly, system: System = System.FT_IN) -> tuple[Finding, ...]:
    """Everything that the rules have to say about a piece: its main part, its fittings, how they sit.

    Args:
        assembly: the piece.
        system: the units that messages are written in.

    Returns:
        Findings, those of the main part first; equal fittings are reported once.
    """
    found = list(check_part(assembly.main, system))
    for part in dict.fromkeys(fitting.part for fitting in assembly.fittings):
        found.extend(check_part(part, system))
    for fitting in assembly.fittings:
        found.extend(_in_fillet(assembly, fitting, system))
    return tuple(found)


def _in_fillet(assembly: Assembly, fitting: Fitting, system: System) -> Iterator[Finding]:
    """A fitting on the web whose edge rides up the fillet of a flange that is still there."""
    stock = assembly.main.stock
    if isinstance(stock, Plate) or stock.profile not in _ROLLED_FILLETS or fitting.kind not in _ON_WEB:
        return
    k = stock.kdes
    if fitting.on not in _WEBS or k is None:
        return
    (x_low, x_high), (y_low, y_high), _ = bounds(fitting)
    coped = {
        cope.edge
        for cope in assembly.main.copes
        if cope.end is fitting.end and cope.length >= min(x_high, assembly.main.length - x_low)
    }
    edges = ((Face.TOP, y_high - (stock.d - k)), (Face.BOTTOM, k - y_low))
    for edge, over in edges:
        tee_stem = stock.profile is Profile.TEE and edge is Face.BOTTOM
        if over > ZERO and edge not in coped and not tee_stem:
            yield Finding(
                "fitting-in-fillet", Severity.WARNING, f"{assembly.mark} {fitting.name}",
                f"runs {write_length(over, system, 64)} into the fillet of the {edge} flange",
                "shorten it, move it, or grind its corner to clear", "AISC Manual Table 1-1, kdes",
            )  # fmt: skip
