"""Beams on opposite sides of one web: their holes are made to agree, and shared where they fall together."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from gageline.detail.bolting import size_named
from gageline.detail.joint import Joint
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.rows import Ladder
from gageline.detail.shop import Shop
from gageline.detail.site import FaceKind
from gageline.detail.space import dot, minus
from gageline.part import End, Face, Finding, Severity
from gageline.steel import minimum_edge_distance
from gageline.units import Length

__all__ = ["Disagreed", "Key", "Shared", "agreed"]

Key = tuple[str, End]
_SAME = 1e-4  # inches: webs this near are on one line
_WEBS = frozenset({Face.NEAR, Face.FAR})
_OSHA = "29 CFR 1926.756(c)"
_APART = "change one top of steel or depth, use a single plate on one side, or set the beams apart"
_ONE_ANGLE = "give both ends one angle, use a single plate on one side, or set the beams apart"
_ONE_SIZE = "give both ends one bolt, use a single plate on one side, or set the beams apart"
_REMEDY = (
    "shift one connection by a row so that one bolt stays in the first beam, add a seat or an equal "
    "device, or let one beam have a longer connection and erect it first"
)


@dataclass(frozen=True, slots=True)
class Disagreed:
    """Two ends at one web whose bolts are in each other's way.

    Args:
        one: an end.
        two: the end on the other side.
        finding: what is wrong.
    """

    one: Key
    two: Key
    finding: Finding


@dataclass(frozen=True, slots=True)
class Shared:
    """Two ends whose bolts go through one web together.

    Args:
        one: the end that keeps the holes.
        two: the end on the other side.
        rows: how many rows they have in common.
    """

    one: Key
    two: Key
    rows: int


def agreed(
    joints: Mapping[Key, Joint], over_columns: Mapping[str, tuple[float, ...]], shop: Shop
) -> tuple[dict[Key, Joint], tuple[Shared, ...], tuple[Disagreed, ...]]:
    """The joints with those on opposite sides of one web made to agree.

    Args:
        joints: of every end.
        over_columns: stations of girders that bear on columns, by name, inches.
        shop: the practice.

    Returns:
        The joints, which of them share bolts, and which cannot be made to agree.
    """
    made = dict(joints)
    shared: list[Shared] = []
    apart: list[Disagreed] = []
    by_support: dict[str, list[Key]] = defaultdict(list)
    for key, joint in joints.items():
        if joint.drills_support and joint.ladder and joint.site.face in _WEBS:
            by_support[joint.site.support.name].append(key)
    for name, keys in by_support.items():
        for one, two in _opposite(keys, joints):
            known = made[one].findings
            made[one], made[two], rows = _pair(made[one], made[two], shop)
            apart.extend(Disagreed(one, two, found) for found in made[one].findings[len(known) :])
            if rows:
                shared.append(Shared(one, two, rows))
                found = _over_column(made[one], made[two], rows, over_columns.get(name, ()))
                if found is not None:
                    made[one] = replace(made[one], findings=(*made[one].findings, found))
    return made, tuple(shared), tuple(apart)


def _opposite(keys: list[Key], joints: Mapping[Key, Joint]) -> Iterable[tuple[Key, Key]]:
    """Pairs of ends that meet one web at one place from both sides."""
    near = sorted((k for k in keys if joints[k].site.face is Face.NEAR), key=lambda k: joints[k].site.station)
    far = sorted((k for k in keys if joints[k].site.face is Face.FAR), key=lambda k: joints[k].site.station)
    start = 0
    for one in near:
        site = joints[one].site
        if site.support.is_column:
            yield from ((one, two) for two in far if _on_line(joints[one], joints[two]))
            continue
        while start < len(far) and joints[far[start]].site.station < site.station - 1.0:
            start += 1
        for two in far[start:]:
            if joints[two].site.station > site.station + 1.0:
                break
            if _on_line(joints[one], joints[two]):
                yield one, two


def _on_line(one: Joint, two: Joint) -> bool:
    return abs(dot(minus(one.site.point, two.site.point), one.site.aside)) < _SAME


def _pair(one: Joint, two: Joint, shop: Shop) -> tuple[Joint, Joint, int]:
    """Two joints with one spread, and rows that fall together or keep clear of each other."""
    a, b = one.ladder, two.ladder
    if a is None or b is None or _clear(a, b):
        return one, two, 0
    if one.choice.size != two.choice.size:
        sizes = f"its {size_named(one.choice.size)} bolts and the {size_named(two.choice.size)} bolts"
        return _disagree(one, two, sizes, "share no holes: one size goes through both", _ONE_SIZE), two, 0
    single = {"single angle"} & {one.kind, two.kind}
    if not single and one.spread is not None and two.spread is not None:
        spread = max(one.spread, two.spread)
        if any(_past_the_leg(joint, spread) for joint in (one, two)):
            wide = f"want a spread of {shop.say(spread)}, which goes past the shorter legs of the other side"
            return _disagree(one, two, "its bolts and those", wide, _ONE_ANGLE), two, 0
        one, two = _spread(one, spread, two, shop), _spread(two, spread, one, shop)
    moved = _aligned(a, b)
    if moved is None or a.pitch != b.pitch:
        rows = "cannot be made to fall together: neither has room to move"
        return _disagree(one, two, "its rows and those", rows, _APART), two, 0
    first, second = moved
    one, two = _lowered(one, a, first, two, shop), _lowered(two, b, second, one, shop)
    common = {round(z, 4) for z in replace(a, first=first).elevations}
    return one, two, len(common & {round(z, 4) for z in replace(b, first=second).elevations})


def _past_the_leg(joint: Joint, spread: Length) -> bool:
    """Whether bolts spread so far lie too near to the edge of an end's angles."""
    if joint.angle is None:
        return False
    off = (spread - joint.site.member.stock.tw) / 2
    return joint.angle.d - off < minimum_edge_distance(joint.choice.size)


def _clear(a: Ladder, b: Ladder) -> bool:
    """Whether one pattern ends a pitch or more over the other."""
    high, low = (a, b) if a.first >= b.first else (b, a)
    return high.elevations[-1] - low.first >= high.pitch.inches - 1e-6


def _aligned(a: Ladder, b: Ladder) -> tuple[float, float] | None:
    """First rows of both that are a whole number of pitches apart, moved as little as can be."""
    pitch = a.pitch.inches
    apart = (a.first - b.first) / pitch
    if abs(apart - round(apart)) * pitch < _SAME:
        return a.first, a.first - round(apart) * pitch
    tries: list[tuple[float, float, float]] = []
    for whole in (math.floor(apart), math.ceil(apart)):
        for move_a in (False, True):
            first = b.first + whole * pitch if move_a else a.first
            second = b.first if move_a else a.first - whole * pitch
            if a.fits(first) and b.fits(second):
                shift = abs(first - a.first) + abs(second - b.first)
                up = max(first - a.first, second - b.first) > 1e-6
                tries.append((shift + (0.5 if up else 0.0), first, second))
    return min(tries)[1:] if tries else None


def _spread(joint: Joint, spread: Length, other: Joint, shop: Shop) -> Joint:
    if joint.spread == spread:
        return joint
    reason = Reason(
        f"bolts spread {shop.say(spread)} in the support",
        f"{other.site.member.name} on the other side of the web spreads its bolts that far, "
        f"this end would by itself {shop.say(joint.spread or spread)}",
        PRACTICE,
        joint.site.word,
    )
    return replace(joint, spread=spread, reasons=(*joint.reasons, reason))


def _lowered(joint: Joint, ladder: Ladder, first: float, other: Joint, shop: Shop) -> Joint:
    if abs(first - ladder.first) < 1e-9:
        return joint
    down = joint.site.point[2] - first
    reason = Reason(
        f"first row {shop.say(down)} down",
        f"its rows are to fall on those of {other.site.member.name} on the other side; "
        f"by itself it would be {shop.say(joint.site.point[2] - ladder.first)} down",
        PRACTICE,
        joint.site.word,
    )
    return replace(joint, ladder=replace(ladder, first=first), reasons=(*joint.reasons, reason))


def _disagree(one: Joint, two: Joint, what: str, why: str, remedy: str) -> Joint:
    found = Finding(
        "patterns-disagree",
        Severity.ERROR,
        f"{one.site.member.name} {one.site.word}",
        f"{what} of {two.site.member.name} on the other side of {one.site.support.name} {why}",
        remedy,
    )
    return replace(one, findings=(*one.findings, found))


def _over_column(one: Joint, two: Joint, rows: int, columns: tuple[float, ...]) -> Finding | None:
    """The erection-safety finding where shared bolts are at a column."""
    site = one.site
    reach = site.support.stock.d.inches
    at_column = site.kind is FaceKind.COLUMN_WEB or any(abs(x - site.station) < reach for x in columns)
    if not at_column or one.ladder is None or two.ladder is None:
        return None
    longer = max(one, two, key=lambda joint: joint.ladder.rows if joint.ladder else 0)
    spare = (longer.ladder.rows if longer.ladder else 0) - rows
    severity = Severity.NOTE if spare else Severity.WARNING
    how = f"erect {longer.site.member.name} first, {spare} of its rows are not shared" if spare else _REMEDY
    return Finding(
        "double-connection",
        severity,
        f"{site.member.name} {site.word}",
        f"shares {rows} rows of bolts with {two.site.member.name} through the {site.kind} of "
        f"{site.support.name} at a column: one bolt with a wrench-tight nut has to stay in the first member",
        how,
        _OSHA,
    )
