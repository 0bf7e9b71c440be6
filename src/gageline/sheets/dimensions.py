"""Dimensions: running readings from a datum, chains, single dimensions and callouts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot, inf

from gageline.errors import ValueProblem
from gageline.sheets.boxes import line_height
from gageline.sheets.fonts import text_width
from gageline.sheets.labels import Reading, Side, Writing, arrange, draw_rows, once, rows_depth, to_paper
from gageline.sheets.scene import Anchor, Circle, Item, Level, Line, Point, Polygon, Text
from gageline.sheets.style import BODY, Ink, Role

__all__ = ["Dimensions", "arrow_head", "chain", "linear", "running"]

_FREE = 0.8
_STUB = 2.2
_TICK = 1.1
_PAST = 1.2


@dataclass(frozen=True, slots=True)
class Dimensions:
    """Drawn dimensions.

    Attributes:
        items: what to draw, paper mm.
        depth: how far they reach out from the line they stand on, mm.
    """

    items: tuple[Item, ...]
    depth: float


def running(
    readings: Sequence[Reading],
    side: Side,
    base: float,
    limits: tuple[float, float],
    *,
    depth: float = inf,
    size: float = BODY,
    writing: Writing = Writing.AUTO,
    datum: float | None = None,
) -> Dimensions:
    """Running dimensions: every reading is the tape's from one datum, none added up from others.

    Args:
        readings: place and text of each, any order; equal texts at the same place are shown once.
        side: on which side of the drawing they stand.
        base: y of the drawing's edge (above, below) or its x (left, right), paper mm.
        limits: between which x (or y) everything must stay, paper mm.
        depth: how far out they may reach, mm.
        size: points.
        writing: level, upright or whichever is better.
        datum: the place of the datum, marked by a dot; None for no dot.

    Returns:
        The items; texts keep their order, never touch one another, and stay inside limits and depth.

    Raises:
        ValueProblem: a place outside the limits, more readings than fit, a character that the font lacks.
    """
    if not readings:
        return Dimensions((), 0.0)
    rows = arrange(once(readings), side, limits, depth - _STUB, size, writing)
    items = draw_rows(rows, base, _STUB, _FREE)
    if datum is not None:
        items.append(Circle(*to_paper(side, base, datum, _FREE + 0.7), 0.7, None, Ink.BLACK))
    return Dimensions(tuple(items), _STUB + rows_depth(rows))


def chain(
    points: Sequence[float],
    texts: Sequence[str],
    side: Side,
    base: float,
    limits: tuple[float, float],
    *,
    offset: float = 4.0,
    depth: float = inf,
    size: float = BODY,
) -> Dimensions:
    """A chain of dimensions: one text for each stretch, set over its line or, if too wide, further out.

    Args:
        points: the ends of the stretches in rising order, paper mm along the line.
        texts: one for each stretch, so one fewer than the points; "" for none.
        side: on which side of the drawing it stands.
        base: y of the drawing's edge (above, below) or its x (left, right), paper mm.
        limits: between which x (or y) everything must stay, paper mm.
        offset: from the base to the dimension line, mm.
        depth: how far out the texts may reach, mm.
        size: points.

    Returns:
        The items.

    Raises:
        ValueProblem: points that fall, a wrong count of texts, or more texts than fit.
    """
    if len(texts) != len(points) - 1 or any(b < a for a, b in pairwise(points)):
        raise ValueProblem(
            f"a chain of {len(points)} points has {len(texts)} texts: "
            f"give the points in rising order and one text for each stretch between two of them"
        )
    items = _ladder(points, side, base, offset)
    far = offset + 0.5 + line_height(size)
    outside = []
    for (a, b), text in zip(pairwise(points), texts, strict=True):
        if not text:
            continue
        if text_width(text, size) + 2 * _TICK <= b - a:
            items.append(_over_line(text, side, to_paper(side, base, (a + b) / 2, offset + 0.5), size))
        else:
            outside.append(Reading((a + b) / 2, text))
    if outside:
        rows = arrange(outside, side, limits, depth - far, size)
        items += draw_rows(rows, base, far, offset)
        far += rows_depth(rows)
    return Dimensions(tuple(items), far)


def _ladder(points: Sequence[float], side: Side, base: float, offset: float) -> list[Item]:
    """Dimension line, extension lines and ticks."""
    rail = (*to_paper(side, base, points[0], offset), *to_paper(side, base, points[-1], offset))
    items: list[Item] = [Line(*rail, Role.DIMENSION)]
    for u in points:
        foot, head = to_paper(side, base, u, _FREE), to_paper(side, base, u, offset + _PAST)
        items.append(Line(*foot, *head, Role.DIMENSION))
    for u in points:
        x, y = to_paper(side, base, u, offset)
        items.append(Line(x - _TICK, y + _TICK, x + _TICK, y - _TICK, Role.FRAME))
    return items


def _over_line(text: str, side: Side, at: Point, size: float) -> Text:
    level, rotation = {
        Side.ABOVE: (Level.BOTTOM, 0.0),
        Side.BELOW: (Level.TOP, 0.0),
        Side.LEFT: (Level.BOTTOM, 90.0),
        Side.RIGHT: (Level.TOP, 90.0),
    }[side]
    return Text(*at, text, size, anchor=Anchor.CENTRE, level=level, rotation=rotation)


def linear(
    start: float,
    end: float,
    text: str,
    side: Side,
    base: float,
    limits: tuple[float, float],
    *,
    offset: float = 4.0,
    size: float = BODY,
) -> Dimensions:
    """One dimension between two places, its text outside when it does not fit between them.

    Args:
        start: one end, paper mm along the line.
        end: the other end.
        text: what it says.
        side: on which side of the drawing it stands.
        base: y of the drawing's edge (above, below) or its x (left, right), paper mm.
        limits: between which x (or y) everything must stay, paper mm.
        offset: from the base to the dimension line, mm.
        size: points.

    Returns:
        The items.

    Raises:
        ValueProblem: a text wider than the limits, or with a character that the font lacks.
    """
    points = (min(start, end), max(start, end))
    return chain(points, (text,), side, base, limits, offset=offset, size=size)


def arrow_head(tip: Point, tail: Point) -> Polygon:
    """The head of an arrow that points at `tip` from `tail`, paper mm."""
    dx, dy = tail[0] - tip[0], tail[1] - tip[1]
    length = hypot(dx, dy) or 1.0
    ux, uy = dx / length * 2.4, dy / length * 2.4
    left = (tip[0] + ux - uy * 0.2, tip[1] + uy + ux * 0.2)
    right = (tip[0] + ux + uy * 0.2, tip[1] + uy - ux * 0.2)
    return Polygon((tip, left, right), None, Ink.BLACK)
