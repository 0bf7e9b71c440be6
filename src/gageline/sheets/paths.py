"""What a page draws, as paths and texts in drawing order: the common ground of the SVG and PDF writers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, cos, radians, sin, tan

from gageline.sheets.hatching import hatch_lines
from gageline.sheets.scene import Arc, Circle, Item, Line, Point, Polygon, Polyline, Text, leaves
from gageline.sheets.style import Ink, Role

__all__ = ["Path", "Step", "drawn", "number"]

Step = tuple[str, tuple[float, ...]]
"""A pen movement: M(x, y), L(x, y), C(x1, y1, x2, y2, x, y) or Z(), in paper mm."""


@dataclass(frozen=True, slots=True)
class Path:
    """Pen movements with one pen and one fill.

    Attributes:
        steps: the movements in paper mm.
        role: the pen; None for none.
        fill: the fill, even-odd; None for none.
    """

    steps: list[Step]
    role: Role | None
    fill: Ink | None = None


def number(value: float) -> str:
    """A length of the page to a thousandth of a millimetre, as short as it can be."""
    return f"{round(value, 3):g}"


def drawn(items: tuple[Item, ...]) -> Iterator[Path | tuple[Text, float, float]]:
    """What is drawn, in order; strokes of one role that follow each other become one path.

    Args:
        items: the items of a page.

    Yields:
        A path, or a text with its shift (dx, dy) in mm.
    """
    run: Path | None = None
    for item, dx, dy in leaves(items):
        if isinstance(item, Text):
            if run:
                yield run
                run = None
            yield item, dx, dy
            continue
        for path in _paths(item, dx, dy):
            if run and run.role == path.role and run.fill is None and path.fill is None:
                run.steps.extend(path.steps)
                continue
            if run:
                yield run
            run = path
    if run:
        yield run


def _paths(item: Line | Polyline | Polygon | Circle | Arc, dx: float, dy: float) -> Iterable[Path]:
    if isinstance(item, Line):
        steps: list[Step] = [("M", (item.x1 + dx, item.y1 + dy)), ("L", (item.x2 + dx, item.y2 + dy))]
        return [Path(steps, item.role)]
    if isinstance(item, Polyline):
        return [Path(_through(item.points, dx, dy), item.role)]
    if isinstance(item, Circle):
        ring = _round(item.x + dx, item.y + dy, item.radius, 0.0, 360.0)
        return [Path([*ring, ("Z", ())], item.role, item.fill)]
    if isinstance(item, Arc):
        end = item.end if item.end > item.start else item.end + 360
        return [Path(_round(item.x + dx, item.y + dy, item.radius, item.start, end), item.role)]
    return _polygon(item, dx, dy)


def _polygon(item: Polygon, dx: float, dy: float) -> Iterator[Path]:
    outline: list[Step] = []
    for ring in (item.points, *item.openings):
        outline += _through(ring, dx, dy)
        outline.append(("Z", ()))
    if item.fill:
        yield Path(outline, None, item.fill)
    if item.hatch:
        lines = hatch_lines(item, item.hatch)
        yield Path([step for line in lines for step in _through(line, dx, dy)], item.hatch.role)
    if item.role:
        yield Path(list(outline), item.role)


def _through(points: tuple[Point, ...], dx: float, dy: float) -> list[Step]:
    return [("L" if i else "M", (x + dx, y + dy)) for i, (x, y) in enumerate(points)]


def _round(x: float, y: float, r: float, start: float, end: float) -> list[Step]:
    """A circular arc as cubic curves of at most 90 degrees (off by less than r/3600)."""
    count = max(1, ceil((end - start) / 90 - 1e-9))
    sweep = radians((end - start) / count)
    pull = r * 4 / 3 * tan(sweep / 4)
    angles = [radians(start) + sweep * i for i in range(count + 1)]
    ends = [(x + r * cos(a), y - r * sin(a), pull * sin(a), pull * cos(a)) for a in angles]
    steps: list[Step] = [("M", ends[0][:2])]
    for (x1, y1, s1, c1), (x2, y2, s2, c2) in pairwise(ends):
        steps.append(("C", (x1 - s1, y1 - c1, x2 + s2, y2 + c2, x2, y2)))
    return steps
