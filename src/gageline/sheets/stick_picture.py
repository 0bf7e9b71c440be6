"""The picture of one stick with its cuts: piece marks, running dimensions, angled cuts and the drop."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import groupby

from gageline.sheets.boxes import line_height
from gageline.sheets.dimensions import running
from gageline.sheets.fonts import text_width
from gageline.sheets.furniture import Block
from gageline.sheets.labels import Reading, Side
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Anchor, Group, Item, Level, Polygon, Text
from gageline.sheets.style import BODY, FINE, Hatch, Ink, Role, Weight
from gageline.steel import Profile, all_sections
from gageline.stock import End, Piece, Placed, StickPlan
from gageline.units import Length

__all__ = ["Lying", "Run", "lying", "runs_of", "scale_of", "stick_picture"]

_BAND = 11.0
"""mm: height of the stick on paper; only its length is to scale."""
_MOST = 48
"""More readings than this are left to the table, but for the last of each run of equal pieces."""
_WASTE = Hatch(spacing=1.8)


@dataclass(frozen=True, slots=True)
class Lying:
    """A piece as it lies in the stick.

    Attributes:
        placed: where.
        first: the end that is cut first.
        last: the end that is cut last.
        first_up: the long point of the first end is at the top of the picture.
        last_up: the long point of the last end is at the top of the picture.
        is_angle: its ends are told by heel and toe.
    """

    placed: Placed
    first: End
    last: End
    first_up: bool
    last_up: bool
    is_angle: bool = False


@dataclass(frozen=True, slots=True)
class Run:
    """Equal pieces that are cut one after another, with the place of the first in the order of cuts."""

    number: int
    pieces: tuple[Lying, ...]

    @property
    def mark(self) -> str:
        """Their mark."""
        return self.pieces[0].placed.mark


def lying(stick: StickPlan, of_mark: Mapping[str, Piece]) -> tuple[Lying, ...]:
    """The pieces of a stick, each turned and rolled over as its shared cuts ask.

    Args:
        stick: its plan.
        of_mark: the pieces by mark.
    """
    row: list[Lying] = []
    for placed in stick.pieces:
        piece = of_mark[placed.mark]
        first, last = (piece.right, piece.left) if placed.turned else (piece.left, piece.right)
        up = first.long_side == "high"
        # the two sides of a shared cut have their long points at opposite edges
        rolled = placed.shares and up == row[-1].last_up
        is_angle = piece.steel.section in _angles()
        row.append(Lying(placed, first, last, up != rolled, (last.long_side == "high") != rolled, is_angle))
    return tuple(row)


@cache
def _angles() -> frozenset[str]:
    return frozenset(one.designation for one in all_sections() if one.profile is Profile.ANGLE)


def runs_of(row: Sequence[Lying]) -> tuple[Run, ...]:
    """Equal pieces next to one another taken together."""
    runs: list[Run] = []
    number = 1
    for _, same in groupby(
        row, key=lambda one: (one.placed.mark, one.first, one.last, one.first_up, one.last_up)
    ):
        pieces = tuple(same)
        runs.append(Run(number, pieces))
        number += len(pieces)
    return tuple(runs)


def stick_picture(
    stick: StickPlan, row: Sequence[Lying], scribe: Scribe, width: float, scale: float, drop: str = ""
) -> Block:
    """One stick to scale along its length.

    Args:
        stick: its plan.
        row: its pieces as they lie.
        scribe: writes the readings.
        width: that it may take, mm.
        scale: mm of paper for a mm of steel.
        drop: the mark of the drop, if it has one.

    Returns:
        Marks above or inside, readings below, everything from the stick's first end at the left.
    """
    end = stick.stock.length.mm * scale
    shapes: list[Item] = [_rect(0.0, end, _WASTE)]
    above: list[Reading] = []
    for run in runs_of(row):
        shapes += [_shape(one, scale) for one in run.pieces]
        inside = [_inside(one, scale) for one in run.pieces]
        if None in inside:
            middle = (run.pieces[0].placed.start.mm + run.pieces[-1].placed.stop.mm) / 2 * scale
            count = f" x {len(run.pieces)}" if len(run.pieces) > 1 else ""
            above.append(Reading(middle, f"{run.mark}{count}", Weight.BOLD))
        else:
            shapes += [text for text in inside if text is not None]
    if stick.kept:
        shapes.append(_kept(stick, row[-1], scale))
        name = _drop_name(stick, f"drop {drop}," if drop else "drop", scribe, scale)
        shapes += [name] if isinstance(name, Text) else []
        above += [name] if isinstance(name, Reading) else []
    top = running(above[:_MOST], Side.ABOVE, 0.0, (0.0, width), size=FINE)
    below = running(_readings(row, scribe, scale), Side.BELOW, _BAND, (0.0, width), size=FINE, datum=0.0)
    items = Group((*shapes, *top.items, *below.items), 0.0, top.depth)
    return Block((items,), top.depth + _BAND + below.depth)


def _rect(left: float, right: float, hatch: Hatch | None) -> Polygon:
    corners = ((left, 0.0), (right, 0.0), (right, _BAND), (left, _BAND))
    return Polygon(corners, Role.OUTLINE, None, hatch)


def _shape(one: Lying, scale: float) -> Polygon:
    """A piece with its angled ends; white over the hatching of the stick."""
    start, stop = one.placed.start.mm * scale, one.placed.stop.mm * scale
    first, last = one.first.run.mm * scale, one.last.run.mm * scale
    corners = (
        (start + (0.0 if one.first_up else first), 0.0),
        (stop - (0.0 if one.last_up else last), 0.0),
        (stop - (last if one.last_up else 0.0), _BAND),
        (start + (first if one.first_up else 0.0), _BAND),
    )
    return Polygon(corners, Role.OUTLINE, Ink.WHITE)


def _inside(one: Lying, scale: float) -> Text | None:
    """The mark inside the piece, level or upright; None where there is no room."""
    start = one.placed.start.mm + (one.first.run.mm if one.first.angled else 0.0)
    stop = one.placed.stop.mm - (one.last.run.mm if one.last.angled else 0.0)
    middle, room = (start + stop) / 2 * scale, (stop - start) * scale - 1.0
    mark = one.placed.mark
    if text_width(mark, BODY, Weight.BOLD) <= room:
        return Text(middle, _BAND / 2, mark, BODY, Weight.BOLD, Anchor.CENTRE, Level.MIDDLE)
    if line_height(FINE) <= room and text_width(mark, FINE, Weight.BOLD) <= _BAND - 1.0:
        return Text(middle, _BAND / 2, mark, FINE, Weight.BOLD, Anchor.CENTRE, Level.MIDDLE, 90.0)
    return None


def _readings(row: Sequence[Lying], scribe: Scribe, scale: float) -> list[Reading]:
    """The tape at the first cut and at the end of every piece, or of every run where there are many."""
    first = row[0].placed.start
    stops = [one.placed.stop for one in row]
    if len(stops) > _MOST:
        stops = [run.pieces[-1].placed.stop for run in runs_of(row)]
    places = [first, *stops] if len(stops) <= _MOST else [first, stops[-1]]
    return [Reading(place.mm * scale, scribe.tell(place)) for place in places]


def _drop_name(stick: StickPlan, what: str, scribe: Scribe, scale: float) -> Text | Reading:
    """What the drop is and its length, in it or, where it is too short on paper, above."""
    left, right = (stick.stock.length - stick.drop).mm * scale, stick.stock.length.mm * scale
    name = f"{what} {scribe.tell(stick.drop)}"
    middle = (left + right) / 2
    for size in (BODY, FINE):
        if text_width(name, size) <= right - left - 1.0:
            return Text(middle, _BAND / 2, name, size, anchor=Anchor.CENTRE, level=Level.MIDDLE)
    return Reading(middle, name)


def _kept(stick: StickPlan, last: Lying, scale: float) -> Polygon:
    """The drop, white, its first end as the last cut left it."""
    left, right = (stick.stock.length - stick.drop).mm * scale, stick.stock.length.mm * scale
    run = last.last.run.mm * scale
    high, low = (left, left - run) if last.last_up else (left - run, left)
    return Polygon(((high, 0.0), (right, 0.0), (right, _BAND), (low, _BAND)), Role.OUTLINE, Ink.WHITE)


def scale_of(sticks: Sequence[StickPlan], width: float) -> float:
    """Paper mm for a mm of steel, so that the longest stick is as wide as the page."""
    longest = max((stick.stock.length for stick in sticks), default=Length(1))
    return width / longest.mm
