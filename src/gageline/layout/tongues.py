"""Tongues: where a plate that stands on another fitting sits on it, and the step that sets it there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from gageline.layout.mark import Bench
from gageline.layout.step import Step
from gageline.part import Assembly, End, Fitting, FittingKind, Point, Vector, corners, face_point
from gageline.units import Length

__all__ = ["Stand", "cap_of", "stand_of", "tongue_step"]

_NEAR: Vector = (0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Stand:
    """Where a tongue stands on its end cap.

    Args:
        cap: the end cap.
        aside: from the cap's near edge to the tongue's near face.
        drop: from the cap's top down to the tongue's.
        out: how far it stands out from the cap.
        first_row: from the cap's top down to its first row of holes.
        bolts: from the cap to its holes.
    """

    cap: Fitting
    aside: Length
    drop: Length
    out: Length
    first_row: Length
    bolts: Length


def cap_of(assembly: Assembly, fitting: Fitting) -> Fitting | None:
    """The end cap that a tongue stands on; None for any other fitting."""
    if fitting.kind is not FittingKind.TONGUE:
        return None
    ends = (one for one in assembly.fittings if one.kind is FittingKind.END_CAP)
    return next((one for one in ends if one.end is fitting.end), None)


def stand_of(cap: Fitting, tongue: Fitting) -> Stand:
    """Where a tongue stands on its cap, in the cap's own directions, which lean where the end is bevelled.

    Args:
        cap: the end cap.
        tongue: on the outside of it.
    """
    x, y, z = cap.placement.ex
    down = (x, y, z) if y < 0 else (-x, -y, -z)
    x, y, z = cap.placement.ez
    out = (x, y, z) if (x < 0) == (tongue.end is End.LEFT) else (-x, -y, -z)
    stock, holes = tongue.part.stock, [(g.face, h) for g in tongue.part.groups for h in g.holes]
    spots = [tongue.placement.point(face_point(stock, face, hole.x, hole.y)) for face, hole in holes]
    top, face, near = _low(corners(cap), down), _high(corners(cap), out), _high(corners(cap), _NEAR)
    return Stand(
        cap,
        near - _high(corners(tongue), _NEAR),
        _low(corners(tongue), down) - top,
        _high(corners(tongue), out) - face,
        _low(spots, down) - top,
        _low(spots, out) - face,
    )


def _high(points: Iterable[Point], way: Vector) -> Length:
    return max(_along(point, way) for point in points)


def _low(points: Iterable[Point], way: Vector) -> Length:
    return min(_along(point, way) for point in points)


def _along(point: Point, way: Vector) -> Length:
    return Length(round(sum(a.ticks * b for a, b in zip(point, way, strict=True))))


def tongue_step(bench: Bench, tongue: Fitting, stand: Stand) -> Step:
    """The tongue set on its cap, once the cap is on the piece.

    Args:
        bench: the part that lies on the bench.
        tongue: the fitting.
        stand: where it stands.
    """
    say, cap = bench.say, stand.cap.part.mark
    return Step(
        f"Set the {tongue.name}",
        None,
        "tape and square, clamp",
        f"top and near edge of {cap}",
        (),
        f"Set {tongue.part.mark} upright on the outside of {cap}: its near face {say(stand.aside)} from the "
        f"near edge of {cap}, its top {say(stand.drop)} below the top of {cap}, its holes {say(stand.bolts)} "
        "out.",
        f"First row of holes {say(stand.first_row)} below the top of {cap}; it stands square to {cap} and "
        f"{say(stand.out)} out.",
        tongue.name,
    )
