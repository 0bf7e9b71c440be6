"""The four sides of a plan or an elevation: chains of spacings, grid bubbles, and the room that they take."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import shapely
from shapely.geometry.base import BaseGeometry

from gageline.errors import ValueProblem
from gageline.sheets.dimensions import chain
from gageline.sheets.fonts import text_width
from gageline.sheets.labels import Side, to_paper
from gageline.sheets.notation import Scribe
from gageline.sheets.placing import Label, Spot
from gageline.sheets.scene import Anchor, Box, Circle, Item, Level, Line, Polygon, Polyline, Text
from gageline.sheets.spacing import spread
from gageline.sheets.style import BODY, FINE, Ink, Role, Weight
from gageline.units import Length

__all__ = ["Edge", "Edging", "edging", "grid_line", "match_line"]

_BUBBLE = 3.9
_BETWEEN = 1.0
_TAIL = 3.0
_SAME = 1.0 / 32  # inches: places nearer than this are one


@dataclass(frozen=True, slots=True)
class Edge:
    """What is dimensioned along one side of a view, in inches along it.

    Attributes:
        side: of the view.
        grid: names and places of grid lines; bubbles and a chain of their spacings are drawn.
        stations: places between them; a chain nearer to the view holds them and the grid lines.
        bubbles: whether the grid lines' names stand here.
    """

    side: Side
    grid: tuple[tuple[str, float], ...]
    stations: tuple[float, ...]
    bubbles: bool


@dataclass(frozen=True, slots=True)
class Edging:
    """A side as drawn.

    Attributes:
        items: paper mm.
        depth: how far it reaches out, mm.
    """

    items: tuple[Item, ...]
    depth: float


def edging(
    edge: Edge,
    base: float,
    start: float,
    scale: float,
    limits: tuple[float, float],
    scribe: Scribe,
) -> Edging:
    """Draw a side: stations innermost, then the grid's spacings, then its bubbles.

    Args:
        edge: what is dimensioned.
        base: y of the view's edge (above, below) or its x (left, right), paper mm.
        start: paper place of zero along the side, mm.
        scale: paper mm for one inch; negative where the paper runs the other way.
        limits: between which everything must stay along the side, paper mm.
        scribe: writes in the units of the job.

    Raises:
        ValueProblem: more than fits along the side.
    """
    items: list[Item] = []
    depth = 0.0
    grid = [at for _, at in edge.grid]
    inner = _once([*grid, *edge.stations])
    for places in (inner if edge.stations else [], grid if edge.bubbles else []):
        if len(places) > 1:
            drawn = _chain(places, edge.side, base, depth, start, scale, limits, scribe)
            items += drawn.items
            depth = drawn.depth
    if edge.bubbles and edge.grid:
        drawn = _bubbles(edge, base, depth, start, scale, limits)
        items += drawn.items
        depth = drawn.depth
    return Edging(tuple(items), depth)


def _once(places: Sequence[float]) -> list[float]:
    """The places in order; of those that are one on any tape only the first."""
    kept: list[float] = []
    for place in sorted(places):
        if not kept or place - kept[-1] > _SAME:
            kept.append(place)
    return kept


def _chain(
    places: Sequence[float],
    side: Side,
    base: float,
    depth: float,
    start: float,
    scale: float,
    limits: tuple[float, float],
    scribe: Scribe,
) -> Edging:
    points = [start + place * scale for place in places]
    texts = [scribe.tell(Length.from_inches(b - a)) for a, b in pairwise(places)]
    if scale < 0:
        points.reverse()
        texts.reverse()
    out = -1.0 if side in {Side.ABOVE, Side.LEFT} else 1.0
    drawn = chain(points, texts, side, base + out * depth, limits, size=FINE)
    return Edging(drawn.items, depth + drawn.depth + _BETWEEN)


def _bubbles(
    edge: Edge, base: float, depth: float, start: float, scale: float, limits: tuple[float, float]
) -> Edging:
    """The names of grid lines in rings, moved apart where lines are near each other."""
    named = sorted((start + at * scale, name) for name, at in edge.grid)
    upright = edge.side in {Side.LEFT, Side.RIGHT}
    wide = [max(2 * _BUBBLE, text_width(name, BODY, Weight.BOLD) + 2.4) for _, name in named]
    along = [2 * _BUBBLE] * len(named) if upright else wide
    room = (limits[0] - _BUBBLE, limits[1] + _BUBBLE)
    centres = spread([at for at, _ in named], along, 0.6, room)
    if centres is None:
        raise ValueProblem(
            f"{len(named)} grid bubbles do not fit along {limits[1] - limits[0]:.0f} mm: split the plan"
        )
    reach = max(wide) / 2 if upright else _BUBBLE
    middle = depth + _TAIL + reach
    items: list[Item] = []
    for (at, name), centre, width in zip(named, centres, wide, strict=True):
        x, y = to_paper(edge.side, base, centre, middle)
        half = width / 2
        foot = depth + _TAIL + reach - (half if upright else _BUBBLE)
        track = (
            to_paper(edge.side, base, at, depth),
            to_paper(edge.side, base, centre, depth + _TAIL),
            to_paper(edge.side, base, centre, foot),
        )
        items.append(Polyline(track, Role.THIN))
        items += _ring(x, y, half)
        items.append(Text(x, y, name, BODY, Weight.BOLD, Anchor.CENTRE, Level.MIDDLE))
    return Edging(tuple(items), middle + reach)


def _ring(x: float, y: float, half: float) -> list[Item]:
    """A ring, or a box with cut corners where the name is long."""
    if half <= _BUBBLE + 1e-9:
        return [Circle(x, y, _BUBBLE, Role.FRAME)]
    cut = 2.0
    corners = (
        (-half + cut, -_BUBBLE), (half - cut, -_BUBBLE), (half, -_BUBBLE + cut), (half, _BUBBLE - cut),
        (half - cut, _BUBBLE), (-half + cut, _BUBBLE), (-half, _BUBBLE - cut), (-half, -_BUBBLE + cut),
    )  # fmt: skip
    return [Polygon(tuple((x + u, y + v) for u, v in corners), Role.FRAME)]


def grid_line(a: float, b: float, at: float, *, upright: bool) -> Line:
    """A grid line across a view from a to b, paper mm."""
    return Line(at, a, at, b, Role.CENTRE) if upright else Line(a, at, b, at, Role.CENTRE)


def match_line(
    side: Side, at: float, parts: Sequence[int], frame: Box, line: str | None = None
) -> tuple[Line, tuple[Item, ...], BaseGeometry]:
    """Where a view goes on on another sheet: a heavy line across it, and outside it which part that is.

    Args:
        side: of the view.
        at: place of the line, paper mm across that side.
        parts: that lie beyond it.
        frame: of the view, with the margin that the words stand in.
        line: the grid line that the view was cut at, which is on both sheets; None for none.

    Returns:
        The line, the words on white, and the room that they take.
    """
    where = f" at grid line {line}" if line else ""
    words = f"Match line{where}, see {'parts' if len(parts) > 1 else 'part'} {' and '.join(map(str, parts))}"
    label = Label(((words, Weight.BOLD),), (), ())
    x, y, off = (frame.left + frame.right) / 2, (frame.top + frame.bottom) / 2, label.height / 2 + 0.6
    spot = {
        Side.LEFT: Spot(frame.left + off, y, 90.0),
        Side.RIGHT: Spot(frame.right - off, y, 90.0),
        Side.ABOVE: Spot(x, frame.top + off),
        Side.BELOW: Spot(x, frame.bottom - off),
    }[side]
    corners = tuple((float(a), float(b)) for a, b in label.box(spot, 0.3))
    upright = side in {Side.LEFT, Side.RIGHT}
    ends = (at, frame.top, at, frame.bottom) if upright else (frame.left, at, frame.right, at)
    written: tuple[Item, ...] = (Polygon(corners, None, Ink.WHITE), *label.texts(spot))
    return Line(*ends, Role.NEIGHBOUR), written, shapely.Polygon(corners)
