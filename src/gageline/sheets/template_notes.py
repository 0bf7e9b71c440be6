"""Notes on a full-size template that stand clear of its lines, holes and one another."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from shapely import LineString, box
from shapely import Polygon as Shape
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from gageline.sheets.boxes import line_height, text_box
from gageline.sheets.scene import Point, Text
from gageline.sheets.style import BODY

__all__ = ["ARM", "beside_holes", "clear_texts", "obstacles"]

ARM = 4.0
"""mm that the cross of a hole runs past its rim."""
_CLEAR = 0.8
_LEAD = 1.15


def obstacles(lines: Iterable[Sequence[Point]], holes: Iterable[tuple[Point, float]]) -> list[BaseGeometry]:
    """What a note must not touch.

    Args:
        lines: edges and folds, mm.
        holes: centre and half of the overall size of each, mm.
    """
    discs = [box(x - r - ARM, y - r - ARM, x + r + ARM, y + r + ARM) for (x, y), r in holes]
    return [*(LineString(line) for line in lines), *discs]


def beside_holes(
    holes: Sequence[tuple[Point, float]],
    notes: Sequence[tuple[str, ...]],
    steel: BaseGeometry,
    lines: Sequence[BaseGeometry] = (),
) -> list[tuple[Text, ...]] | None:
    """A note of a few lines beside each hole, on the steel.

    Args:
        holes: centre and half of the overall size of each, mm.
        notes: the lines of each hole's note.
        steel: the shape that the notes must lie on, mm.
        lines: what else they must not touch, mm.

    Returns:
        The texts hole by hole, or None where one of them has no room.
    """
    taken: list[BaseGeometry] = [box(x - r, y - r, x + r, y + r) for (x, y), r in holes]
    taken += [_arms(centre, radius) for centre, radius in holes]
    taken += lines
    found: list[tuple[Text, ...]] = []
    for (centre, radius), words in zip(holes, notes, strict=True):
        for block in _around(centre, radius, words):
            area = _area(block).buffer(_CLEAR)
            if steel.contains(area) and not any(area.intersects(one) for one in taken):
                found.append(tuple(block))
                taken.append(area)
                break
        else:
            return None
    return found


def _arms(centre: Point, radius: float) -> BaseGeometry:
    (x, y), reach = centre, radius + ARM
    return unary_union(
        [LineString([(x - reach, y), (x + reach, y)]), LineString([(x, y - reach), (x, y + reach)])]
    )


def _around(centre: Point, radius: float, lines: tuple[str, ...]) -> Iterator[list[Text]]:
    """The note in each of the four corners outside a hole, right before left and below before above."""
    size = _area([Text(0.0, n * line_height(BODY) * _LEAD, line) for n, line in enumerate(lines)]).bounds
    wide, high, off = size[2] - size[0], size[3] - size[1], radius + 1.2
    for dx in (off, -off - wide):
        for dy in (off, -off - high):
            left, top = centre[0] + dx - size[0], centre[1] + dy - size[1]
            yield [Text(left, top + n * line_height(BODY) * _LEAD, line) for n, line in enumerate(lines)]


def _area(texts: Sequence[Text]) -> Shape:
    shape: Shape = box(*unary_union([Shape(text_box(text)) for text in texts]).bounds)
    return shape


def clear_texts(wanted: Iterable[Sequence[Text]], taken: Iterable[BaseGeometry]) -> list[Text]:
    """Of each text the first place that stands clear, those without one left out.

    Args:
        wanted: the places of each text, the best first.
        taken: what they must not touch.
    """
    standing = list(taken)
    found = []
    for places in wanted:
        for text in places:
            area = Shape(text_box(text)).buffer(_CLEAR / 2)
            if not any(area.intersects(one) for one in standing):
                found.append(text)
                standing.append(area)
                break
    return found
