"""Panels: drawn pieces of a page that know how much room they take, and their packing onto pages."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from gageline.errors import GagelineError
from gageline.sheets.boxes import extent
from gageline.sheets.scene import Box, Group, Item

__all__ = ["Panel", "pack", "panel", "under"]

_BESIDE = 7.0
_BELOW = 5.0
_SLACK = 1e-6


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


@dataclass(slots=True)
class _Shelf:
    """A room that is filled in rows from left to right; the one thing here that changes."""

    page: int
    room: Box
    x: float
    y: float
    deep: float = 0.0

    @staticmethod
    def of(page: int, room: Box) -> _Shelf:
        return _Shelf(page, room, room.left, room.top)

    def place(self, width: float, height: float) -> tuple[float, float] | None:
        """A place for a panel; None where it does not fit any more."""
        x, y, deep = self.x, self.y, self.deep
        if x > self.room.left and x + width > self.room.right + _SLACK:
            x, y, deep = self.room.left, y + deep + _BELOW, 0.0
        if x + width > self.room.right + _SLACK or y + height > self.room.bottom + _SLACK:
            return None
        self.x, self.y, self.deep = x + width + _BESIDE, y, max(deep, height)
        return x, y


def pack(panels: Sequence[Panel], rooms: Sequence[tuple[int, Box]], further: Box) -> list[list[Item]]:
    """Set each panel in the first room that still has a place for it.

    Args:
        panels: what to set.
        rooms: free rooms with the number of their page, from 0.
        further: the room on every page after those.

    Returns:
        What stands on each page, at least on all that have rooms.

    Raises:
        GagelineError: a panel larger than a page.
    """
    shelves = [_Shelf.of(page, room) for page, room in rooms]
    pages: list[list[Item]] = [[] for _ in range(1 + max((page for page, _ in rooms), default=0))]
    for one in panels:
        size = one.box.width, one.box.height
        if size[0] > further.width + _SLACK or size[1] > further.height + _SLACK:
            raise GagelineError(
                f'drawing "{one.name}" needs {size[0]:.0f} x {size[1]:.0f} mm and a page has '
                f"{further.width:.0f} x {further.height:.0f} mm: use larger paper"
            )
        found = next(((shelf, at) for shelf in shelves if (at := shelf.place(*size))), None)
        if found is None:
            shelves.append(_Shelf.of(len(pages), further))
            pages.append([])
            found = shelves[-1], shelves[-1].place(*size) or (further.left, further.top)
        shelf, (x, y) = found
        pages[shelf.page].append(one.at(x, y))
    return pages
