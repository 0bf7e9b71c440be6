"""Where texts and drawings really lie on the paper."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import cos, radians, sin

from gageline.sheets.fonts import font_metrics, text_width
from gageline.sheets.scene import Anchor, Arc, Box, Circle, Item, Leaf, Level, Line, Point, Text, leaves
from gageline.sheets.style import MM_PER_PT

__all__ = ["extent", "line_height", "text_box", "text_start", "texts"]

_ALONG = {Anchor.LEFT: 0.0, Anchor.CENTRE: 0.5, Anchor.RIGHT: 1.0}


def line_height(size: float) -> float:
    """Height of the box of one line of text of `size` points, mm."""
    return size * MM_PER_PT


def _drop(text: Text) -> float:
    """From the anchor point down to the baseline of the unrotated text, mm."""
    font = font_metrics(text.weight)
    drop = {
        Level.BASELINE: 0.0,
        Level.MIDDLE: font.cap_height / 2,
        Level.TOP: font.ascent,
        Level.BOTTOM: -font.descent,
    }[text.level]
    return drop * text.size * MM_PER_PT


def text_start(text: Text) -> Point:
    """The left end of a text's baseline, after its rotation, in paper mm.

    Raises:
        ValueProblem: a character that the font lacks.
    """
    across = _ALONG[text.anchor] * text_width(text.text, text.size, text.weight)
    drop = _drop(text)
    if not text.rotation:
        return text.x - across, text.y + drop
    c, s = cos(radians(text.rotation)), sin(radians(text.rotation))
    return text.x - across * c + drop * s, text.y + across * s + drop * c


def text_box(text: Text) -> tuple[Point, Point, Point, Point]:
    """The corners of a text's em box: start low, end low, end high, start high, in paper mm.

    Raises:
        ValueProblem: a character that the font lacks.
    """
    font = font_metrics(text.weight)
    unit = text.size * MM_PER_PT
    width, up, down = text_width(text.text, text.size, text.weight), font.ascent * unit, font.descent * unit
    x, y = text_start(text)
    c, s = cos(radians(text.rotation)), sin(radians(text.rotation))

    def corner(along: float, above: float) -> Point:
        return x + along * c - above * s, y - along * s - above * c

    return corner(0, -down), corner(width, -down), corner(width, up), corner(0, up)


def texts(items: tuple[Item, ...]) -> Iterator[Text]:
    """Every text among the items, moved to where it lies on the page."""
    for item, dx, dy in leaves(items):
        if isinstance(item, Text):
            yield Text(
                item.x + dx,
                item.y + dy,
                item.text,
                item.size,
                item.weight,
                item.anchor,
                item.level,
                item.rotation,
                item.ink,
            )


def _points(item: Leaf) -> Iterable[Point]:
    if isinstance(item, Line):
        return (item.x1, item.y1), (item.x2, item.y2)
    if isinstance(item, Circle | Arc):
        x, y, r = item.x, item.y, item.radius
        return (x - r, y - r), (x + r, y + r)
    if isinstance(item, Text):
        return text_box(item)
    return item.points


def extent(items: tuple[Item, ...]) -> Box:
    """The upright box around everything drawn, pens not counted, an arc as its whole circle.

    Args:
        items: at least one item.

    Returns:
        The box in paper mm.
    """
    points = [(x + dx, y + dy) for item, dx, dy in leaves(items) for x, y in _points(item)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))
