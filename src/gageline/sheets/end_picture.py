"""The two ends of a stick as they came: corner by corner how far each stands back."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.job import Corner
from gageline.layout import EndPlane
from gageline.part import End
from gageline.sheets.boxes import line_height
from gageline.sheets.furniture import Block
from gageline.sheets.scene import Anchor, Circle, Item, Level, Polygon, Text
from gageline.sheets.style import BODY, FINE, HEADING, Ink, Role, Weight
from gageline.units import Length

__all__ = ["end_pictures"]

_WIDE, _HIGH = 26.0, 32.0
_DOT = 1.7


def end_pictures(
    planes: dict[End, EndPlane], say: dict[End, tuple[str, str, str, str]], width: float
) -> Block:
    """Both ends side by side, seen from outside, the corner that reaches furthest marked with a dot.

    Args:
        planes: of both ends.
        say: at each end how far each corner stands back, in words, in the order of `Corner`.
        width: of the block, mm.
    """
    items: list[Item] = []
    half = width / 2
    for number, end in enumerate(End):
        items += _end(planes[end], say[end], end, number * half + half / 2)
    return Block(tuple(items), line_height(BODY) * 1.3 + _HIGH + 2 * line_height(HEADING) + 3.0)


def _end(plane: EndPlane, say: tuple[str, str, str, str], end: End, middle: float) -> Iterator[Item]:
    """One end; from outside the near side is at the right hand of the left end."""
    state = ", taken as square: not read" if plane.assumed else ""
    yield Text(
        middle,
        0.0,
        f"{end.capitalize()} end from outside{state}",
        BODY,
        Weight.BOLD,
        Anchor.CENTRE,
        Level.TOP,
    )
    top = line_height(BODY) * 1.3 + line_height(HEADING)
    left, right, bottom = middle - _WIDE / 2, middle + _WIDE / 2, top + _HIGH
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    yield Polygon(corners, Role.OUTLINE, Ink.PALE)
    near_is_right = end is End.LEFT
    for corner, text in zip(Corner, say, strict=True):
        at_right = corner.is_near == near_is_right
        x, y = (right if at_right else left), (top if corner.is_top else bottom)
        away = 1 if at_right else -1
        touching = plane.back(corner) == Length(0) and plane.out_of_square.ticks > 0
        if touching:
            yield Circle(x, y, _DOT, None, Ink.ACCENT)
        anchor = Anchor.LEFT if at_right else Anchor.RIGHT
        weight = Weight.BOLD if touching else Weight.REGULAR
        yield Text(x + 3.0 * away, y, text, HEADING, weight, anchor, Level.MIDDLE)
    for word, x in (("near", right if near_is_right else left), ("far", left if near_is_right else right)):
        anchor = Anchor.RIGHT if x == right else Anchor.LEFT
        inside = -1.0 if x == right else 1.0
        yield Text(x + inside, (top + bottom) / 2, word, FINE, anchor=anchor, level=Level.MIDDLE)
    yield Text(middle, top + 1.0, "top", FINE, anchor=Anchor.CENTRE, level=Level.TOP)
    yield Text(middle, bottom - 1.0, "bottom", FINE, anchor=Anchor.CENTRE, level=Level.BOTTOM)
