"""Filling one sheet with rectangles: the free room is kept as a list of rectangles."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle to place, kerf added; with grain it may not be turned."""

    along: int
    across: int
    grain: bool

    def ways(self) -> tuple[tuple[int, int], ...]:
        """Sizes along and across, as it lies and, where that differs, turned."""
        straight, turned = (self.along, self.across), (self.across, self.along)
        return (straight,) if self.grain or straight == turned else (straight, turned)


@dataclass(frozen=True, slots=True)
class Room:
    """A rectangle of the sheet: lower left corner and sizes."""

    x: int
    y: int
    along: int
    across: int

    def holds(self, other: Room) -> bool:
        """Whether the other rectangle lies inside."""
        return (
            self.x <= other.x
            and self.y <= other.y
            and other.x + other.along <= self.x + self.along
            and other.y + other.across <= self.y + self.across
        )

    def meets(self, other: Room) -> bool:
        """Whether the two have area in common."""
        return (
            self.x < other.x + other.along
            and other.x < self.x + self.along
            and self.y < other.y + other.across
            and other.y < self.y + self.across
        )


def fill_sheet(
    free: Sequence[Room], boxes: Sequence[Box], order: Sequence[int], *, shear: bool, rule: int
) -> list[tuple[int, Room]]:
    """Place boxes one after another where they leave the least beside them.

    Args:
        free: the sheet, or what is free of it.
        boxes: the kinds of boxes.
        order: kinds in the order they are tried, one entry each.
        shear: whether every cut must go from edge to edge.
        rule: which way the shear cuts first: 0 leaves the larger rest whole, 1 the smaller.

    Returns:
        The kinds placed, and where.
    """
    free = list(free)
    placed: list[tuple[int, Room]] = []
    hopeless: set[int] = set()
    for i in order:
        if i in hopeless:
            continue
        found = _place(boxes[i], free)
        if found is None:
            hopeless.add(i)
            continue
        at, taken = found
        placed.append((i, taken))
        free = _split(free, at, taken, rule) if shear else _carve(free, taken)
    return placed


def _place(box: Box, free: list[Room]) -> tuple[int, Room] | None:
    """The free rectangle, and the place in its corner, that leave the narrowest strip."""
    best: tuple[tuple[int, int], int, Room] | None = None
    for at, room in enumerate(free):
        for along, across in box.ways():
            over, beyond = room.along - along, room.across - across
            if over < 0 or beyond < 0:
                continue
            leaves = (min(over, beyond), max(over, beyond))
            if best is None or leaves < best[0]:
                best = (leaves, at, Room(room.x, room.y, along, across))
    return None if best is None else (best[1], best[2])


def split_room(room: Room, taken: Room, *, upright: bool) -> list[Room]:
    """What two cuts from edge to edge leave of a room, what is taken lying in its corner.

    Args:
        room: the rectangle.
        taken: what is taken of it.
        upright: whether the first cut goes across, so that what is beside stays whole.
    """
    over, beyond = room.along - taken.along, room.across - taken.across
    right = Room(room.x + taken.along, room.y, over, room.across if upright else taken.across)
    above = Room(room.x, room.y + taken.across, taken.along if upright else room.along, beyond)
    return [r for r in (right, above) if r.along > 0 and r.across > 0]


def _split(free: list[Room], at: int, taken: Room, rule: int) -> list[Room]:
    """The free rectangles after one is cut from edge to edge."""
    room = free[at]
    over, beyond = room.along - taken.along, room.across - taken.across
    upright = (over * room.across >= beyond * room.along) == (rule == 0)
    return [*free[:at], *free[at + 1 :], *split_room(room, taken, upright=upright)]


def _carve(free: list[Room], taken: Room) -> list[Room]:
    """All largest free rectangles after a place is taken; they may overlap."""
    whole = [room for room in free if not room.meets(taken)]
    parts = dict.fromkeys(p for room in free if room.meets(taken) for p in _around(room, taken))
    # only a part can lie in another free rectangle: the whole ones did not before
    return whole + [
        p for p in parts if not any(o is not p and o.holds(p) for others in (whole, parts) for o in others)
    ]


def _around(room: Room, taken: Room) -> list[Room]:
    """The rectangles of a room left, right, below and above of what is taken."""
    right, top = room.x + room.along, room.y + room.across
    parts = (
        Room(room.x, room.y, taken.x - room.x, room.across),
        Room(taken.x + taken.along, room.y, right - taken.x - taken.along, room.across),
        Room(room.x, room.y, room.along, taken.y - room.y),
        Room(room.x, taken.y + taken.across, room.along, top - taken.y - taken.across),
    )
    return [p for p in parts if p.along > 0 and p.across > 0]
