"""Panels: drawn pieces of a page that know how much room they take, and their packing onto pages."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from gageline.sheets.boxes import extent
from gageline.sheets.scene import Box, Group, Item

__all__ = ["Panel", "pack", "panel", "under"]

_BESIDE = 7.0
_BELOW = 5.0


@dataclass(frozen=True, slots=True)
class Panel:
    """A drawn piece of a page.

    Attributes:
        items: what to draw, mm in its own space.
        box: the room it takes there.
        name: what it is.
    """

    items: tuple[Item, ...]
    box: Box
    name: str = ""

    def at(self, left: float, top: float) -> Group:
        """The panel with its upper left corner at a place of the page, mm."""
        return Group(self.items, left - self.box.left, top - self.box.top, self.name)


def panel(items: Iterable[Item], name: str = "", box: Box | None = None) -> Panel:
    """A panel around what is drawn, or of a box that is given."""
    kept = tuple(items)
    return Panel(kept, box or extent(kept), name)


def under(panels: Sequence[Panel], gap: float) -> Panel:
    """Panels one under the other, each kept at its own x."""
    items: list[Item] = []
    y = 0.0
    for one in panels:
        items.append(Group(one.items, 0.0, y - one.box.top, one.name))
        y += one.box.height + gap
    left, right = min(one.box.left for one in panels), max(one.box.right for one in panels)
    return Panel(tuple(items), Box(left, 0.0, right, y - gap))


def pack(panels: Sequence[Panel], rooms: Sequence[Box], further: Box) -> list[list[Item]]:
    """Set panels in rows from left to right, page after page, in their order.

    Args:
        panels: what to set.
        rooms: the room on the first pages, one each; a room too small for the next panel is left.
        further: the room on every page after those.

    Returns:
        What stands on each page, at least one list for each of `rooms`.
    """
    pages: list[list[Item]] = [[]]
    room = (rooms or (further,))[0]
    x, y, deep = room.left, room.top, 0.0
    for one in panels:
        fresh = 0
        while True:
            if x > room.left and x + one.box.width > room.right + 1e-6:
                x, y, deep = room.left, y + deep + _BELOW, 0.0
            fits = x + one.box.width <= room.right + 1e-6 and y + one.box.height <= room.bottom + 1e-6
            if fits or (fresh and len(pages) > len(rooms)):
                break
            pages.append([])
            fresh += 1
            room = rooms[len(pages) - 1] if len(pages) <= len(rooms) else further
            x, y, deep = room.left, room.top, 0.0
        pages[-1].append(one.at(x, y))
        x += one.box.width + _BESIDE
        deep = max(deep, one.box.height)
    return pages + [[] for _ in range(len(rooms) - len(pages))]
