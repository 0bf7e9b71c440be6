"""A detailed frame assembled in space: what clashes, which holes meet, how far ends are off their faces."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations
from typing import Any

from gageline.detail import Detailed, Joint, Placed, detail_frame
from gageline.job import FrameEntry, default_practice
from gageline.part import (
    Fitting,
    FittingKind,
    HoleGroup,
    Join,
    Part,
    Placement,
    Point,
    Vector,
    extent_y,
    extent_z,
    face_point,
    normal,
)
from gageline.solid import Body, bodies_of
from gageline.units import ZERO, Length, System, parse_length

__all__ = ["bay", "detailed", "gaps", "lengths", "near", "off_line", "overlaps", "plays", "worst_mate"]

FIELD = frozenset({"outstanding leg", "bolt holes"})
ON_SUPPORT = {"single plate": "for the plate", "extended plate": "for the plate", "seat": "for the seat"}
LENGTH = re.compile(
    r"(?<![\w/.-])(-?\d+'-\d+(?: \d+/\d+)?\"|-?\d+(?: \d+/\d+)?\"|\d+/\d+\"|-?\d+(?:\.\d+)? mm\b)"
)
NOT_MADE = frozenset({"tongue-too-short", "plate-off-the-face"})  # ends that are cut for what is refused
OVERLAP = 0.01  # in3: what the chords of rounded corners stand out


@dataclass
class Axis:
    """The middle line of a hole in space, inches."""

    point: tuple[float, float, float]
    way: tuple[float, float, float]


def axes(part: Part, group: HoleGroup, placement: Placement) -> list[Axis]:
    out = placement.turn(tuple(float(v) for v in normal(group.face)))  # type: ignore[arg-type] # three of them
    found = []
    for hole in group.holes:
        place = face_point(part.stock, group.face, hole.x, hole.y)
        local = tuple(value.inches for value in place)
        turned = placement.turn(local)  # type: ignore[arg-type] # three of them
        point = tuple(a + b.inches for a, b in zip(turned, placement.origin, strict=True))
        found.append(Axis(point, out))  # type: ignore[arg-type] # three of them
    return found


def apart(one: Axis, two: Axis) -> float:
    """How far two parallel axes are apart; far for those that are not parallel."""
    lean = sum(a * b for a, b in zip(one.way, two.way, strict=True))
    if abs(abs(lean) - 1) > 1e-9:
        return math.inf
    away = [b - a for a, b in zip(one.point, two.point, strict=True)]
    along = sum(a * b for a, b in zip(away, one.way, strict=True))
    return math.sqrt(max(0.0, sum(a * a for a in away) - along * along))


def field_axes(placed: Placed, fitting: Fitting, names: frozenset[str] = FIELD) -> list[Axis]:
    """The holes of a fitting that are bolted at the site."""
    stands = fitting.placement.then(placed.placement)
    groups = [group for group in fitting.part.groups if group.name in names]
    return [axis for group in groups for axis in axes(fitting.part, group, stands)]


def main_axes(placed: Placed) -> list[Axis]:
    main = placed.assembly.main
    return [axis for group in main.groups for axis in axes(main, group, placed.placement)]


def bodies(placed: Placed) -> list[Body]:
    made = bodies_of(placed.assembly)
    return [body.placed(placed.placement, f"{placed.member} {body.name}") for body in made]


def overlaps(result: Detailed, least: float = OVERLAP) -> list[tuple[str, str, float]]:
    """Every two bodies of the frame that have more than so much in common, with how much, in3."""
    all_bodies = [body for placed in result.placed for body in bodies(placed)]
    boxes = [body.solid.bounding_box() for body in all_bodies]
    found = []
    for (one, a), (two, b) in combinations(zip(all_bodies, boxes, strict=True), 2):
        if all(a[n] < b[n + 3] and b[n] < a[n + 3] for n in range(3)):
            volume = (one.solid ^ two.solid).volume()
            if volume > least:
                found.append((one.name, two.name, volume))
    return found


def worst_mate(result: Detailed, name: str) -> float:
    """The farthest that a field hole of a beam is from its mate, inches."""
    beam = result.member(name)
    worst = 0.0
    for joint in (joint for (member, _), joint in result.joints.items() if member == name):
        if joint.kind == "free":
            continue
        support = result.member(joint.site.support.name)
        if joint.choice.to_support is Join.WELDED and joint.choice.to_beam is Join.WELDED:
            assert not joint.drills_support
            continue
        if joint.kind in ON_SUPPORT or joint.choice.to_support is Join.WELDED:
            ones, twos = _on_support(result, joint)
        else:
            ones = [
                axis
                for fitting in beam.assembly.fittings
                if fitting.end is joint.site.end
                for axis in field_axes(beam, fitting)
            ]
            twos = main_axes(support)
            assert ones
        worst = max(worst, *(min(apart(one, two) for two in twos) for one in ones))
    return worst


def _on_support(result: Detailed, joint: Joint) -> tuple[list[Axis], list[Axis]]:
    """Holes of a beam for what its support carries, and the holes in that."""
    beam, support = result.member(joint.site.member.name), result.member(joint.site.support.name)
    word = ON_SUPPORT.get(joint.kind, "for the angles")
    tongues = [fit for fit in beam.assembly.fittings if fit.kind is FittingKind.TONGUE]
    own = [axis for fit in tongues if fit.end is joint.site.end for axis in field_axes(beam, fit)] or [
        axis
        for group in beam.assembly.main.groups
        if group.name.startswith(f"{joint.site.end} end, {word}")
        for axis in axes(beam.assembly.main, group, beam.placement)
    ]
    assert len(own) == (joint.ladder.rows if joint.ladder else 2)
    names = {one.fitting for one in result.served if (one.member, one.end) == (beam.member, joint.site.end)}
    carried = [fitting for fitting in support.assembly.fittings if fitting.name in names]
    groups = FIELD if joint.kind in ON_SUPPORT else frozenset({"web leg"})
    there = [axis for fitting in carried for axis in field_axes(support, fitting, groups)]
    plies = 2 if joint.kind == "double angles" else 1
    assert len(there) == len(own) * plies
    return own, there


def detailed(frame: dict[str, object], system: System = System.FT_IN) -> Detailed:
    """A frame of tables, detailed without a problem."""
    entry = FrameEntry.model_validate(frame, context={"system": system})
    result, notes = detail_frame(entry, default_practice(system), system)
    assert not notes, notes
    return result


def lengths(text: str) -> list[float]:
    """The lengths that a text gives in feet and inches or in mm, in inches; bare numbers are none."""
    return [
        parse_length(found.lstrip("-")).inches * (-1 if found[0] == "-" else 1)
        for found in LENGTH.findall(text)
    ]


def near(system: System) -> float:
    """What a length in a text is rounded to, inches."""
    return (0.1 / 25.4 if system is System.MM else 1 / 64) + 1e-6


def gaps(result: Detailed, name: str) -> list[tuple[float, float]]:
    """At each end of a beam the distance from its steel to the face, and what practice asks for, inches.

    The distance is taken at every corner of the section as it is cut, square to the face. At a closed end
    it is that of the tongue's nearest corner, and along the beam that of the section's corners.
    """
    beam = result.member(name)
    part = beam.assembly.main
    found: list[tuple[float, float]] = []
    for (member, end), joint in result.joints.items():
        if member != name or any(one.code in NOT_MADE for one in joint.findings):
            continue
        site, corners = joint.site, [(part.end_x(end, y, z), y, z) for y, z in _corners(part)]
        if joint.tongue is None:
            offs = [_off(beam.placement, corner, site.point, site.normal) for corner in corners]
            found.extend((off, joint.choice.setback.inches) for off in offs)
            continue
        offs = [_off(beam.placement, corner, site.point, site.inward) for corner in corners]
        found.extend((off, joint.tongue.steel.inches) for off in offs)
        (tongue,) = [
            fit for fit in beam.assembly.fittings if fit.kind is FittingKind.TONGUE and fit.end is end
        ]
        stands = tongue.placement.then(beam.placement)
        ends = [(x, y, z) for x in (ZERO, tongue.part.length) for y, z in _corners(tongue.part)]
        nearest = min(_off(stands, corner, site.point, site.normal) for corner in ends)
        found.append((nearest, joint.choice.setback.inches))
    return found


def plays(result: Detailed, name: str) -> list[tuple[float, float]]:
    """What each angle and end plate on a beam keeps off its face, and what practice asks for, inches."""
    beam, found = result.member(name), []
    for (member, end), joint in result.joints.items():
        for fitting in beam.assembly.fittings if member == name else ():
            if fitting.end is not end or not joint.choice.on_beam:
                continue
            stands = fitting.placement.then(beam.placement)
            part = fitting.part
            corners = [(x, y, z) for x in (ZERO, part.length) for y, z in _corners(part)]
            offs = [_off(stands, corner, joint.site.point, joint.site.normal) for corner in corners]
            found.append((min(offs), joint.choice.play.inches))
    return found


def _corners(part: Part) -> list[tuple[Length, Length]]:
    return [(y, z) for y in extent_y(part.stock) for z in extent_z(part.stock)]


def _off(stands: Placement, corner: Point, point: Vector, way: Vector) -> float:
    """How far a corner of a part lies off a point along a direction, inches."""
    spot = stands.point(corner)
    return sum((a.inches - b) * c for a, b, c in zip(spot, point, way, strict=True))


def off_line(result: Detailed, name: str) -> float:
    """How far the finished beam's top of steel is from the line between its work points, inches."""
    beam, line = result.member(name), result.frame.lines[name]
    worst = 0.0
    for point in (line.start, line.finish):
        away = [a - b.inches for a, b in zip(point, beam.placement.origin, strict=True)]
        up = sum(a * b for a, b in zip(away, beam.placement.ey, strict=True))
        aside = sum(a * b for a, b in zip(away, beam.placement.ez, strict=True))
        worst = max(worst, abs(up - line.stock.d.inches), abs(aside))
    return worst


def bay(
    beam: str = "W18X50", girder: str = "W21X62", column: Mapping[str, object] | None = None, **member: Any
) -> dict[str, object]:
    """Two girders 15 ft apart that run along x, and the beam B1 between them, 10 ft from their start.

    Args:
        beam: its section.
        girder: the section of both girders.
        column: a column to stand there too.
        member: further keys of the beam's table.
    """
    free = {"connection": "free"}
    girders = [
        {"name": f"G{n}", "stock": girder, "from": f"1/{row}", "to": f"2/{row}", "top": "Floor", "ends": free}
        for n, row in enumerate("AB", 1)
    ]
    between = {
        "name": "B1",
        "stock": beam,
        "from": {"on": "G1", "at": "120 in"},
        "to": {"on": "G2", "at": "120 in"},
        "top": "Floor",
    }
    return {
        "grid": {
            "x": {"names": ["1", "2"], "spacing": ["240 in"]},
            "y": {"names": ["A", "B"], "spacing": ["180 in"]},
        },
        "level": [{"name": "Floor", "elevation": "144 in"}],
        "column": [column] if column else [],
        "member": [*girders, between | member],
    }
