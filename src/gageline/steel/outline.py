"""Outlines of rolled shapes with their fillets, as closed lists of points."""

from __future__ import annotations

import math

__all__ = [
    "STEPS",
    "Loop",
    "angle_outline",
    "box_outline",
    "channel_outline",
    "circle_outline",
    "fillet_radius",
    "i_outline",
    "rounded",
    "tee_outline",
]

Loop = tuple[tuple[float, float], ...]
"""A closed line in the plane of the section: points (z, y) in turn, the last one joined to the first."""

STEPS = 12  # chords to a fillet: a quarter circle of 12 chords is short of its area by 0.3 % of the spandrel


def rounded(corners: list[tuple[float, float, float]], steps: int = STEPS) -> Loop:
    """Round the corners of a polygon.

    Args:
        corners: (z, y, radius) in turn, any unit of length; radius 0 leaves the corner sharp.
        steps: chords that stand for one arc.

    Returns:
        The closed line with every arc replaced by chords.
    """
    points: list[tuple[float, float]] = []
    count = len(corners)
    for here in range(count):
        z, y, radius = corners[here]
        if radius <= 0:
            points.append((z, y))
            continue
        before, after = corners[here - 1], corners[(here + 1) % count]
        points.extend(_arc((before[0], before[1]), (z, y), (after[0], after[1]), radius, steps))
    return tuple(points)


def _arc(
    before: tuple[float, float],
    corner: tuple[float, float],
    after: tuple[float, float],
    radius: float,
    steps: int,
) -> list[tuple[float, float]]:
    """Points of the arc that is tangent to both sides of a corner."""
    back = math.atan2(before[1] - corner[1], before[0] - corner[0])
    ahead = math.atan2(after[1] - corner[1], after[0] - corner[0])
    opening = (ahead - back + math.pi) % (2 * math.pi) - math.pi
    middle = back + opening / 2
    reach = radius / abs(math.sin(opening / 2))
    centre = (corner[0] + reach * math.cos(middle), corner[1] + reach * math.sin(middle))
    swing = math.copysign(math.pi - abs(opening), -opening)
    start = middle + math.pi - swing / 2
    turns = [start + swing * step / steps for step in range(steps + 1)]
    return [(centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)) for turn in turns]


def i_outline(
    d: float, bf: float, tw: float, tf: float, root: float, slope: float = 0.0, steps: int = STEPS
) -> Loop:
    """Outline of an I-shape, centred on the origin.

    Args:
        d: depth.
        bf: flange width.
        tw: web thickness.
        tf: flange thickness; of a tapered flange the thickness at the middle of the overhang.
        root: fillet radius between web and flange.
        slope: rise over run of the flange's inner face.
        steps: chords to a fillet.

    Returns:
        Points (z, y), in the unit of the arguments.
    """
    quarter = (bf - tw) / 4 * slope
    at_toe, at_web = d / 2 - tf + quarter, d / 2 - tf - quarter
    right = [
        (bf / 2, -d / 2, 0.0),
        (bf / 2, -at_toe, 0.0),
        (tw / 2, -at_web, root),
        (tw / 2, at_web, root),
        (bf / 2, at_toe, 0.0),
        (bf / 2, d / 2, 0.0),
    ]
    return rounded(right + [(-z, y, r) for z, y, r in reversed(right)], steps)


def tee_outline(
    d: float, bf: float, tw: float, tf: float, root: float, slope: float = 0.0, steps: int = STEPS
) -> Loop:
    """Outline of a tee, flange up, the flange's outer face at y = 0.

    Args:
        d: depth.
        bf: flange width.
        tw: stem thickness.
        tf: flange thickness; of a tapered flange the thickness at the middle of the overhang.
        root: fillet radius between stem and flange.
        slope: rise over run of the flange's inner face.
        steps: chords to a fillet.

    Returns:
        Points (z, y), in the unit of the arguments.
    """
    quarter = (bf - tw) / 4 * slope
    right = [
        (tw / 2, -d, 0.0),
        (tw / 2, -tf - quarter, root),
        (bf / 2, -tf + quarter, 0.0),
        (bf / 2, 0.0, 0.0),
    ]
    return rounded(right + [(-z, y, r) for z, y, r in reversed(right)], steps)


def channel_outline(
    d: float,
    bf: float,
    tw: float,
    taper: tuple[float, float, float],
    radii: tuple[float, float],
    steps: int = STEPS,
) -> Loop:
    """Outline of a channel, back of web at z = 0, centred in height.

    Args:
        d: depth.
        bf: flange width from the back of the web.
        tw: web thickness.
        taper: flange thickness, the distance from the flange's edge at which it is measured, and the
            slope (rise over run) of the flange's inner face.
        radii: of the fillet between web and flange, and of the flange's inner edge.
        steps: chords to a fillet.

    Returns:
        Points (z, y), in the unit of the arguments.
    """
    tf, run, slope = taper
    root, toe = radii
    at_toe = d / 2 - tf + slope * run
    at_web = d / 2 - tf - slope * (bf - tw - run)
    upper = [(tw, at_web, root), (bf, at_toe, toe), (bf, d / 2, 0.0), (0.0, d / 2, 0.0)]
    return rounded([(z, -y, r) for z, y, r in reversed(upper)] + upper, steps)


def angle_outline(d: float, bf: float, t: float, radii: tuple[float, float], steps: int = STEPS) -> Loop:
    """Outline of an angle, heel at the origin, leg d up and leg bf to the right.

    Args:
        d: upright leg.
        bf: lying leg.
        t: leg thickness.
        radii: of the fillet between the legs, and of the inner edge of both toes.
        steps: chords to a fillet.

    Returns:
        Points (z, y), in the unit of the arguments.
    """
    root, toe = radii
    return rounded([(0, 0, 0), (bf, 0, 0), (bf, t, toe), (t, t, root), (t, d, toe), (0, d, 0)], steps)


def box_outline(d: float, bf: float, radius: float, steps: int = STEPS) -> Loop:
    """Outline of a rectangle with rounded corners, centred on the origin.

    Args:
        d: height.
        bf: width.
        radius: corner radius.
        steps: chords to a corner.

    Returns:
        Points (z, y), in the unit of the arguments.
    """
    z, y = bf / 2, d / 2
    return rounded([(z, -y, radius), (z, y, radius), (-z, y, radius), (-z, -y, radius)], steps)


def circle_outline(diameter: float, steps: int = 4 * STEPS) -> Loop:
    """Outline of a circle about the origin, of the circle's own area.

    Args:
        diameter: diameter, any unit of length.
        steps: chords of the circle.

    Returns:
        Points (z, y), in the unit of the argument.
    """
    # the polygon is drawn outside the circle just enough to hold the same area
    turn = 2 * math.pi / steps
    radius = diameter / 2 * math.sqrt(turn / math.sin(turn))
    return tuple((radius * math.cos(turn * k), radius * math.sin(turn * k)) for k in range(steps))


def fillet_radius(k: float, tf_at_web: float, slope: float) -> float:
    """Fillet radius from the distance k at which it ends on the web.

    Args:
        k: flange face to end of fillet on the web.
        tf_at_web: flange thickness, a tapered one run on to the web's face.
        slope: rise over run of the flange's inner face.

    Returns:
        The radius, in the unit of the arguments.
    """
    return (k - tf_at_web) / math.tan((math.pi / 2 - math.atan(slope)) / 2)
