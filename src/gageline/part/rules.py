"""The rules of the trade for one part: what cannot be made, and what asks for a second look."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from itertools import combinations

from shapely import LineString, shortest_line
from shapely import Point as FlatPoint
from shapely.geometry.base import BaseGeometry

from gageline.part.faces import End, Face, extent_y, extent_z, face_range, faces_of
from gageline.part.features import SQUARE_CUT, Clip, Cope, Hole, HoleGroup
from gageline.part.finding import Finding, Severity
from gageline.part.outline import clip_outline, face_outline, opening_outline, trim_outline
from gageline.part.part import Part
from gageline.steel import (
    HoleKind,
    Plate,
    Profile,
    Section,
    bolt,
    minimum_edge_distance,
    minimum_spacing,
)
from gageline.units import ZERO, Length, System, write_length

__all__ = ["check_part"]

_FLANGES = frozenset({Face.TOP, Face.BOTTOM})
_WEBS = frozenset({Face.NEAR, Face.FAR})
_ROLLED_FILLETS = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.TEE})
_TOLERANCE = Length(2)  # distances come from floats: 2 ticks are 0.00001 in
Say = Callable[[Length], str]  # writes a length in the job's units
Name = Callable[[HoleGroup, Hole], str]  # names a hole

_SPEC = "ANSI/AISC 360-22"


def check_part(part: Part, system: System = System.FT_IN) -> tuple[Finding, ...]:
    """Everything that the rules of the trade have to say about one part.

    Args:
        part: the part.
        system: the units that messages are written in.

    Returns:
        Findings, errors first, in the order of the part's features.
    """
    say = partial(write_length, system=system, denominator=64)
    found = [
        *_on_ends(part, say),
        *_on_copes(part, say),
        *_on_trims(part),
        *_on_clips(part, say),
        *_on_openings(part, say),
        *_on_holes(part, say),
    ]
    rank = list(Severity)
    return tuple(sorted(found, key=lambda finding: rank.index(finding.severity)))


def _on_ends(part: Part, say: Say) -> Iterator[Finding]:
    """Ends that would cross: the steel must be left at every edge."""
    corners = [(y, z) for y in extent_y(part.stock) for z in extent_z(part.stock)]
    shortest = min(part.end_x(End.RIGHT, y, z) - part.end_x(End.LEFT, y, z) for y, z in corners)
    if shortest <= ZERO:
        yield Finding(
            "ends-cross",
            Severity.ERROR,
            part.mark,
            f"the end cuts leave {say(max(shortest, ZERO))} of the {say(part.length)} on one edge",
            "give a longer part or smaller bevels",
        )


def _on_copes(part: Part, say: Say) -> Iterator[Finding]:
    low, high = extent_y(part.stock)
    depth = high - low
    for cope in part.copes:
        subject = f"{part.mark} {cope.end} end, {cope.edge} cope"
        if cope.depth >= depth:
            yield Finding(
                "cope-through", Severity.ERROR, subject,
                f"depth {say(cope.depth)} is not less than the section's {say(depth)}",
                "give a depth within the section",
            )  # fmt: skip
        elif cope.depth * 2 > depth:
            yield Finding(
                "cope-deep", Severity.WARNING, subject,
                f"depth {say(cope.depth)} is more than half of {say(depth)}",
                "lower the connection or reinforce the web, and have its strength checked",
            )  # fmt: skip
        if cope.length >= part.length:
            yield Finding(
                "cope-long", Severity.ERROR, subject,
                f"length {say(cope.length)} is not less than the part's {say(part.length)}",
                "give a length within the part",
            )  # fmt: skip
        if cope.radius > min(cope.length, cope.depth):
            yield Finding(
                "cope-radius", Severity.ERROR, subject,
                f"radius {say(cope.radius)} is more than its length {say(cope.length)} "
                f"or depth {say(cope.depth)}",
                "give a smaller radius",
            )  # fmt: skip
        elif not cope.radius:
            yield Finding(
                "cope-sharp", Severity.WARNING, subject, "the re-entrant corner has no radius",
                'give a radius, commonly 1/2", or drill the corner',
            )  # fmt: skip
    for one, two in combinations(part.copes, 2):
        yield from _copes_that_meet(part, say, one, two)


def _copes_that_meet(part: Part, say: Say, one: Cope, two: Cope) -> Iterator[Finding]:
    low, high = extent_y(part.stock)
    if one.end is two.end and one.edge is two.edge:
        message, remedy = "is given twice", "keep one of them"
    elif one.end is two.end and one.depth + two.depth >= high - low:
        message = f"meets the {two.edge} cope: together {say(one.depth + two.depth)} of {say(high - low)}"
        remedy = "leave web between them"
    elif one.edge is two.edge and one.length + two.length >= part.length:
        message, remedy = f"meets the cope of the {two.end} end", "leave flange between them"
    else:
        return
    subject = f"{part.mark} {one.end} end, {one.edge} cope"
    yield Finding("copes-meet", Severity.ERROR, subject, message, remedy)


def _on_trims(part: Part) -> Iterator[Finding]:
    """Trims that would take nothing off this section."""
    bare = replace(part, left=SQUARE_CUT, right=SQUARE_CUT, copes=(), trims=(), openings=())
    for trim in part.trims:
        flanged = trim.flange in faces_of(part.stock)
        if not flanged or not face_outline(bare, trim.flange).intersection(trim_outline(part, trim)).area:
            yield Finding(
                "no-flange", Severity.ERROR, f"{part.mark} {trim.end} end, {trim.flange} trim",
                f"{part.stock.designation} has no {trim.flange} flange to cut on the {trim.side} side",
                "leave the trim out or give the other flange or side",
            )  # fmt: skip


def _on_clips(part: Part, say: Say) -> Iterator[Finding]:
    """Clips that this stock cannot have, that are larger than it, or that run into one another."""
    if not isinstance(part.stock, Plate):
        if part.clips:
            yield Finding(
                "clip-no-plate", Severity.ERROR, part.mark,
                f"{part.stock.designation} has no corners to clip, only a plate has",
                "leave the clips out or cope the end",
            )  # fmt: skip
        return
    for clip in part.clips:
        if clip.along > part.length or clip.across > part.stock.width:
            yield Finding(
                "clip-large", Severity.ERROR, _clip_name(part, clip),
                f"{say(clip.along)} along and {say(clip.across)} across is more than the plate, "
                f"{say(part.length)} by {say(part.stock.width)}",
                "give a clip within the plate",
            )  # fmt: skip
    for one, two in combinations(part.clips, 2):
        if clip_outline(part, one).intersection(clip_outline(part, two)).area:
            yield Finding(
                "clips-meet", Severity.ERROR, _clip_name(part, one),
                f"runs into the clip at the {two.end} end, {two.edge} edge", "make one of them smaller",
            )  # fmt: skip


def _clip_name(part: Part, clip: Clip) -> str:
    return f"{part.mark} {clip.end} end, {clip.edge} clip"


def _on_openings(part: Part, say: Say) -> Iterator[Finding]:
    for number, opening in enumerate(part.openings, 1):
        subject = f"{part.mark} opening {number}"
        bare = face_outline(replace(part, openings=()), opening.face)
        shape = opening_outline(opening)
        if opening.radius * 2 > min(opening.length, opening.depth):
            yield Finding(
                "opening-radius", Severity.ERROR, subject,
                f"corner radius {say(opening.radius)} is more than half of its size",
                "give a smaller radius",
            )  # fmt: skip
        elif not opening.radius:
            yield Finding(
                "opening-sharp", Severity.WARNING, subject, "its corners have no radius",
                'give a corner radius, commonly 1/2" or more',
            )  # fmt: skip
        if not bare.contains(shape):
            yield Finding(
                "opening-outside", Severity.ERROR, subject, "runs past the edge of the steel",
                "move it or make it smaller",
            )  # fmt: skip
        others = part.openings[number:]
        if any(o.face is opening.face and opening_outline(o).intersects(shape) for o in others):
            yield Finding(
                "openings-meet", Severity.ERROR, subject, "runs into another opening", "move one of them"
            )


def _on_holes(part: Part, say: Say) -> Iterator[Finding]:
    name = _names_of(part, say)
    for face in faces_of(part.stock):
        groups = [group for group in part.groups if group.face is face]
        if groups:
            outline = face_outline(part, face)
            for group in groups:
                for hole in group.holes:
                    yield from _on_hole(part, say, name(group, hole), group, hole, outline)
            yield from _holes_too_near(say, name, groups)
    for group in part.groups:
        if group.face not in faces_of(part.stock):
            names = ", ".join(faces_of(part.stock))
            yield Finding(
                "no-such-face", Severity.ERROR, f"{part.mark} {group.name}",
                f"{part.stock.designation} has no face {group.face}", f"use one of {names}",
            )  # fmt: skip


def _names_of(part: Part, say: Say) -> Name:
    """How a part's holes are named: by their group, their row where it has more, and how far along."""
    rows = {(group.name, group.face): _row_names(part, group) for group in part.groups}

    def name(group: HoleGroup, hole: Hole) -> str:
        row = rows[group.name, group.face].get(hole.y, "")
        return f"{part.mark} {group.name}, {row}hole at {say(hole.x)}"

    return name


def _row_names(part: Part, group: HoleGroup) -> dict[Length, str]:
    """The rows of a group as they are counted: down from the top, out from the heel, from the near side."""
    down = group.face not in {Face.LEG_A, Face.LEG_B}
    ys = sorted({hole.y for hole in group.holes}, reverse=down)
    if len(ys) == 2 and group.face in _FLANGES and part.profile is not Profile.CHANNEL:
        return {ys[0]: "near row, ", ys[1]: "far row, "}
    return {y: f"row {n}, " for n, y in enumerate(ys, 1)} if len(ys) > 1 else {}


def _on_hole(
    part: Part, say: Say, subject: str, group: HoleGroup, hole: Hole, outline: BaseGeometry
) -> Iterator[Finding]:
    centre = FlatPoint(hole.x.inches, hole.y.inches)
    if not outline.contains(centre):
        where = _where_outside(part, say, group.face, hole)
        yield Finding("hole-outside", Severity.ERROR, subject, f"lies {where}", "move the hole or the cut")
        return
    nearest = shortest_line(centre, outline.boundary)
    clear, radius = Length.from_inches(nearest.length), hole.width / 2
    if Length.from_inches(_axis(hole).distance(outline.boundary)) < radius - _TOLERANCE:
        yield Finding(
            "hole-breaks-edge", Severity.ERROR, subject,
            f"breaks through the edge, which is {say(clear)} from its middle", "move it into the steel",
        )  # fmt: skip
        return
    if (limit := _edge_limit(group, hole, nearest)) and clear < limit - _TOLERANCE:
        yield Finding(
            "edge-distance", Severity.WARNING, subject,
            f"its edge distance {say(clear)} is less than {say(limit)} for a {group.bolt} bolt",
            "move it away from the edge, or have the strength at the edge checked",
            f"{_SPEC} Table J3.4",
        )  # fmt: skip
    yield from _in_fillet(part, say, group, hole, subject)


def _where_outside(part: Part, say: Say, face: Face, hole: Hole) -> str:
    low, high = face_range(part.stock, face)
    if not low <= hole.y <= high:
        return f"outside the {face} face, which runs from {say(low)} to {say(high)}"
    if not ZERO <= hole.x <= part.length:
        return f"outside the part, which is {say(part.length)} long"
    return "in what is cut away by a cope, an end cut or an opening"


def _axis(hole: Hole) -> BaseGeometry:
    """The line that the tool's centre runs along: a point for a round hole."""
    half = (hole.length - hole.width).inches / 2
    dx, dy = half * math.cos(math.radians(hole.angle)), half * math.sin(math.radians(hole.angle))
    x, y = hole.x.inches, hole.y.inches
    return LineString([(x - dx, y - dy), (x + dx, y + dy)]) if half > 0 else FlatPoint(x, y)


def _reach_across(hole: Hole) -> Length:
    """How far a hole reaches up and down from its middle."""
    tilt = abs(math.sin(math.radians(hole.angle)))
    return hole.width / 2 + Length.from_inches((hole.length - hole.width).inches / 2 * tilt)


def _edge_limit(group: HoleGroup, hole: Hole, nearest: LineString) -> Length | None:
    """The least edge distance of a hole for a bolt, with what a slot adds that runs toward the edge."""
    if not group.bolt:
        return None
    (x0, y0), (x1, y1) = nearest.coords
    off = math.atan2(y1 - y0, x1 - x0) - math.radians(hole.angle)
    runs_out = hole.is_slot and abs(math.cos(off)) > math.sqrt(0.5)
    return minimum_edge_distance(bolt(group.bolt), group.kind or HoleKind.STD, slot_to_edge=runs_out)


def _in_fillet(part: Part, say: Say, group: HoleGroup, hole: Hole, subject: str) -> Iterator[Finding]:
    """Holes whose edge runs into the fillet between web and flange."""
    stock = part.stock
    if isinstance(stock, Plate) or stock.profile not in _ROLLED_FILLETS:
        return
    reach = _reach_across(hole)
    if group.face in _WEBS:
        k = stock.kdet or stock.kdes
        flanges = [hole.y + reach - (stock.d - k)] if k else []
        if k and stock.profile is not Profile.TEE:
            flanges.append(k - (hole.y - reach))
        if any(over > ZERO for over in flanges):
            yield Finding(
                "in-fillet", Severity.WARNING, subject,
                f"runs into the fillet, which reaches {say(k or ZERO)} from the flange's outside",
                "move it into the flat of the web",
                "AISC Manual Table 1-1, kdet",
            )  # fmt: skip
    elif group.face in _FLANGES:
        fillet = _web_fillet(stock)
        if fillet and _offset_from_web(stock, hole.y) - reach < fillet:
            yield Finding(
                "in-fillet", Severity.WARNING, subject,
                f"runs into the web or its fillet, which reaches {say(fillet)} out from the web",
                "use a wider gage",
                "AISC Manual Table 1-1, k1",
            )  # fmt: skip


def _web_fillet(stock: Section) -> Length | None:
    if stock.profile is Profile.CHANNEL:
        return stock.tw
    return stock.k1


def _offset_from_web(stock: Section, y: Length) -> Length:
    return -y if stock.profile is Profile.CHANNEL else abs(y)


def _holes_too_near(say: Say, name: Name, groups: list[HoleGroup]) -> Iterator[Finding]:
    """Neighbours along x that are nearer than the least spacing; far ones are never compared."""
    holes = sorted(
        ((hole, group) for group in groups for hole in group.holes), key=lambda pair: (pair[0].x, pair[0].y)
    )
    reach = max((max(hole.length, hole.width) for hole, _ in holes), default=ZERO) * 3
    for index, (hole, group) in enumerate(holes):
        for other, other_group in holes[index + 1 :]:
            if other.x - hole.x > reach:
                break
            yield from _two_holes(say, name, (hole, group), (other, other_group))


def _two_holes(
    say: Say, name: Name, one: tuple[Hole, HoleGroup], two: tuple[Hole, HoleGroup]
) -> Iterator[Finding]:
    (a, group), (b, other_group) = one, two
    apart = Length.from_inches(math.hypot((a.x - b.x).inches, (a.y - b.y).inches))
    between = Length.from_inches(_axis(a).distance(_axis(b)))
    subject = name(group, a)
    where = f"hole at {say(b.x)} of {other_group.name}"
    if between < (a.width + b.width) / 2 - _TOLERANCE:
        yield Finding(
            "holes-overlap",
            Severity.ERROR,
            subject,
            f"runs into the {where}, {say(apart)} away",
            "move one",
        )
        return
    sizes = [minimum_spacing(bolt(g.bolt)) for g in (group, other_group) if g.bolt]
    if sizes and apart < max(sizes) - _TOLERANCE:
        yield Finding(
            "spacing", Severity.WARNING, subject,
            f"is {say(apart)} from the {where}, less than 2 2/3 bolt diameters, {say(max(sizes))}",
            "space them 3 diameters apart", f"{_SPEC} J3.3",
        )  # fmt: skip
