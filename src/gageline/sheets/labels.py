"""Rows of labels beside a line of the drawing, each tied to its place by a leader, none touching another.

Inside this module u runs along the line (paper mm) and v away from it (mm from the line, outwards).
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import isfinite

from gageline.errors import ValueProblem
from gageline.sheets.boxes import line_height
from gageline.sheets.fonts import font_metrics, text_width
from gageline.sheets.scene import Anchor, Item, Level, Point, Polyline, Text
from gageline.sheets.spacing import spread
from gageline.sheets.style import Ink, Role, Weight

__all__ = ["Reading", "Rows", "Side", "Writing", "arrange", "draw_rows", "once", "rows_depth", "to_paper"]

NEAR = 12.0
"""mm: a label further from its place than this calls for another arrangement."""
MOST_ROWS = 30
"""More rows of labels than this are no picture any more."""
_GAP_LEVEL = 2.6
_GAP_UPRIGHT = 0.5
_TAIL = 0.8
_CLEAR = 0.6
_NO_JOG = 0.05


class Side(StrEnum):
    """On which side of the drawing the labels stand."""

    ABOVE = "above"
    BELOW = "below"
    LEFT = "left"
    RIGHT = "right"


class Writing(StrEnum):
    """How labels above or below a drawing are written; those at its left and right are always level."""

    AUTO = "auto"
    LEVEL = "level"
    UPRIGHT = "upright"


@dataclass(frozen=True, slots=True)
class Reading:
    """A text that belongs to one place along a line.

    Attributes:
        at: the place, paper mm along the line (x above and below a drawing, y beside it).
        text: what it says.
        weight: regular or bold.
        ink: what the text is printed in.
    """

    at: float
    text: str
    weight: Weight = Weight.REGULAR
    ink: Ink = Ink.BLACK


@dataclass(frozen=True, slots=True)
class Rows:
    """Labels laid out in rows.

    Attributes:
        readings: the labels in order along the line.
        side: on which side of the drawing they stand.
        upright: the labels point away from the line instead of along it.
        size: points.
        places: for each row, label number -> u of its leader (and of the label, in its own row), mm.
        own: for each label, the number of its row.
    """

    readings: tuple[Reading, ...]
    side: Side
    upright: bool
    size: float
    places: tuple[dict[int, float], ...]
    own: tuple[int, ...]

    @property
    def shift(self) -> float:
        """How far the furthest label is from its place, mm."""
        return max(
            (abs(self.places[row][i] - self.readings[i].at) for i, row in enumerate(self.own)), default=0.0
        )


def to_paper(side: Side, base: float, u: float, v: float) -> Point:
    """The paper point at u along a line that lies at `base`, v outwards from it, all mm."""
    return {
        Side.ABOVE: (u, base - v),
        Side.BELOW: (u, base + v),
        Side.LEFT: (base - v, u),
        Side.RIGHT: (base + v, u),
    }[side]


def arrange(
    readings: Sequence[Reading],
    side: Side,
    limits: tuple[float, float],
    depth: float,
    size: float,
    writing: Writing = Writing.AUTO,
) -> Rows:
    """Lay labels out beside a line: level if they go, else upright, in as few rows as keep them near.

    Args:
        readings: the labels in any order.
        side: on which side of the drawing they stand.
        limits: between which u everything must stay, mm.
        depth: how far out the labels may reach, mm.
        size: points.
        writing: level, upright or whichever is better.

    Returns:
        The layout.

    Raises:
        ValueProblem: a place outside the limits, or more labels than fit.
    """
    ordered = _ordered(readings, limits)
    found: list[tuple[float, Rows]] = []
    for upright in _ways(side, writing):
        for rows in _by_rows(ordered, limits, side, size, upright=upright):
            deep = rows_depth(rows)
            if deep > depth:
                break
            if rows.shift <= NEAR and not upright:
                return rows
            found.append((deep + 2 * rows.shift, rows))
            if rows.shift <= NEAR:
                break
    if not found:
        beside = f" with {depth:.1f} mm beside it" if isfinite(depth) else ""
        raise ValueProblem(
            f"{len(ordered)} dimension texts of {size:g} pt do not fit on {limits[1] - limits[0]:.1f} mm"
            f"{beside}: give the view more room or split it"
        )
    return min(found, key=lambda cost_rows: cost_rows[0])[1]


def _ways(side: Side, writing: Writing) -> tuple[bool, ...]:
    if side in {Side.LEFT, Side.RIGHT} or writing is Writing.UPRIGHT:
        return (True,)
    return (False,) if writing is Writing.LEVEL else (False, True)


def once(readings: Sequence[Reading]) -> list[Reading]:
    """The readings in their order, equal texts at the same place only once."""
    kept: list[Reading] = []
    for reading in sorted(readings, key=_at):
        near = kept[bisect_left(kept, reading.at - _NO_JOG, key=_at) :]
        if all(r.text != reading.text for r in near):
            kept.append(reading)
    return kept


def _at(reading: Reading) -> float:
    return reading.at


def _ordered(readings: Sequence[Reading], limits: tuple[float, float]) -> tuple[Reading, ...]:
    ordered = tuple(sorted(readings, key=_at))
    for reading in ordered:
        if not limits[0] - 1e-6 <= reading.at <= limits[1] + 1e-6:
            raise ValueProblem(
                f'dimension text "{reading.text}" belongs to {reading.at:.2f} mm, outside the view '
                f"from {limits[0]:.2f} to {limits[1]:.2f} mm: widen the view or leave the text out"
            )
    return ordered


def _by_rows(
    readings: tuple[Reading, ...], limits: tuple[float, float], side: Side, size: float, *, upright: bool
) -> Iterator[Rows]:
    """The layouts that fit between the limits, by rising number of rows."""
    # Level labels in more than two rows hide which leader is whose.
    most = MOST_ROWS if upright else 2
    for many in range(1, min(most, max(1, len(readings))) + 1):
        in_turn = tuple(i % many for i in range(len(readings)))
        for own in (_own_rows(readings, many, size, upright=upright), in_turn):
            places = _places(readings, own, many, limits, size, upright=upright)
            if places is not None:
                yield Rows(readings, side, upright, size, places, own)
                break


def _own_rows(readings: tuple[Reading, ...], many: int, size: float, *, upright: bool) -> tuple[int, ...]:
    """The row of each label: the nearest one that is free at its place, else the one that is free first."""
    gap = _GAP_UPRIGHT if upright else _GAP_LEVEL
    taken = [float("-inf")] * many
    own = []
    for reading in readings:
        width = _along(reading, size, upright=upright)
        start = reading.at - width / 2
        row = next((r for r in range(many) if taken[r] <= start), None)
        if row is None:
            row = min(range(many), key=taken.__getitem__)
        taken[row] = max(start, taken[row]) + width + gap
        own.append(row)
    return tuple(own)


def _places(
    readings: tuple[Reading, ...],
    own: tuple[int, ...],
    many: int,
    limits: tuple[float, float],
    size: float,
    *,
    upright: bool,
) -> tuple[dict[int, float], ...] | None:
    gap = _GAP_UPRIGHT if upright else _GAP_LEVEL
    lean = _lean(size) if upright else 0.0
    at = {i: reading.at for i, reading in enumerate(readings)}
    places = []
    for row in range(many):
        members = [i for i in at if own[i] >= row]
        # A label of a further row passes through this one as a bare leader.
        widths = [_along(readings[i], size, upright=upright) if own[i] == row else 0.0 for i in members]
        leans = [lean if own[i] == row else 0.0 for i in members]
        centres = spread([at[i] + e for i, e in zip(members, leans, strict=True)], widths, gap, limits)
        if centres is None:
            return None
        at = {i: c - e for i, c, e in zip(members, centres, leans, strict=True)}
        places.append(at)
    return tuple(places)


def _lean(size: float) -> float:
    """From the middle of the capitals to the middle of the em box, towards the foot of the text, mm."""
    font = font_metrics(Weight.REGULAR)
    return (font.descent + font.cap_height - font.ascent) / 2 * line_height(size)


def _along(reading: Reading, size: float, *, upright: bool) -> float:
    return line_height(size) if upright else text_width(reading.text, size, reading.weight)


def _outward(reading: Reading, size: float, *, upright: bool) -> float:
    return _along(reading, size, upright=not upright)


def _levels(rows: Rows) -> list[tuple[float, float, float, float]]:
    """For each row: v where its leaders start, stop bending, where its labels start and end."""
    levels = []
    v = 0.0
    before = {i: reading.at for i, reading in enumerate(rows.readings)}
    for row, places in enumerate(rows.places):
        bend = max((abs(u - before[i]) for i, u in places.items()), default=0.0)
        rise = min(8.0, max(1.2, 0.35 * bend)) if bend > _NO_JOG else 0.0
        high = max(
            (
                _outward(reading, rows.size, upright=rows.upright)
                for i, reading in enumerate(rows.readings)
                if rows.own[i] == row
            ),
            default=0.0,
        )
        start = v + rise + _TAIL + _CLEAR
        levels.append((v, v + rise, start, start + high))
        v = start + high + _CLEAR
        before = places
    return levels


def rows_depth(rows: Rows) -> float:
    """How far out the labels reach from where their leaders start, mm."""
    return _levels(rows)[-1][3]


def draw_rows(rows: Rows, base: float, start: float, foot: float) -> list[Item]:
    """The labels and their leaders.

    Args:
        rows: the layout.
        base: where the line lies, paper mm.
        start: v where the rows begin, mm.
        foot: v where each leader begins, mm, not above `start`.

    Returns:
        The items in paper mm.
    """
    levels = [tuple(start + v for v in level) for level in _levels(rows)]
    items: list[Item] = []
    for i, reading in enumerate(rows.readings):
        own = rows.own[i]
        track: list[Point] = [(reading.at, foot)]
        u = reading.at
        for row in range(own + 1):
            bend_from, bend_to, _, _ = levels[row]
            track.append((u, bend_from))
            u = rows.places[row][i]
            track.append((u, bend_to))
        label = levels[own][2]
        track.append((u, label - _CLEAR))
        items.append(Polyline(tuple(to_paper(rows.side, base, *p) for p in _straight(track)), Role.DIMENSION))
        items.append(_label(rows, reading, to_paper(rows.side, base, u, label)))
    return items


def _straight(track: list[Point]) -> Iterator[Point]:
    """The track without points that repeat or lie on a straight run along v."""
    for i, (u, v) in enumerate(track):
        inner = 0 < i < len(track) - 1
        if inner and track[i - 1][0] == u == track[i + 1][0]:
            continue
        yield u, v


def _label(rows: Rows, reading: Reading, at: Point) -> Text:
    anchor, level, rotation = {
        (Side.ABOVE, False): (Anchor.CENTRE, Level.BOTTOM, 0.0),
        (Side.BELOW, False): (Anchor.CENTRE, Level.TOP, 0.0),
        (Side.ABOVE, True): (Anchor.LEFT, Level.MIDDLE, 90.0),
        (Side.BELOW, True): (Anchor.RIGHT, Level.MIDDLE, 90.0),
        (Side.LEFT, True): (Anchor.RIGHT, Level.MIDDLE, 0.0),
        (Side.RIGHT, True): (Anchor.LEFT, Level.MIDDLE, 0.0),
    }[rows.side, rows.upright]
    return Text(*at, reading.text, rows.size, reading.weight, anchor, level, rotation, reading.ink)
