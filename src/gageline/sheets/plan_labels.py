"""What is written on a plan: marks and sections along members, tops of steel, slopes, skews, columns."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import atan, degrees

from gageline.sheets.boxes import line_height
from gageline.sheets.card_ends import place_of
from gageline.sheets.fonts import text_width
from gageline.sheets.notation import Scribe
from gageline.sheets.placing import Label, Run, Spot, beside_line, round_about
from gageline.sheets.plan_members import PlanBeam, PlanColumn
from gageline.sheets.plan_signs import PlanView
from gageline.sheets.scene import Point
from gageline.sheets.style import FINE, Weight
from gageline.units import Length, Slope

__all__ = ["beam_labels", "column_label", "signed"]

_LEAST = 1.0 / 32  # inches
_SQUARE = 1e-4  # degrees
_HEIGHT = line_height(FINE)


def signed(inches: float, scribe: Scribe) -> str:
    """A height with its sign: `+12'-0"`, `−2 1/4"`."""
    length = Length.from_inches(abs(inches))
    text = scribe.tell(length)
    if not length:
        return f"±{text}"
    return f"{'+' if inches > 0 else '−'}{text}"


def beam_labels(
    beam: PlanBeam, line: tuple[Point, Point], scribe: Scribe, stations: tuple[str, str] = ("", "")
) -> Iterator[Label]:
    """The labels of a beam.

    Args:
        beam: the beam.
        line: where it is drawn on this sheet, paper mm from its start to its finish.
        scribe: writes in the units of the job.
        stations: where its ends lie, in words; empty where a chain of dimensions says so.
    """
    start, finish = line
    middle = ((start[0] + finish[0]) / 2, (start[1] + finish[1]) / 2)
    name: tuple[Run, ...] = ((beam.mark, Weight.BOLD), (f" {beam.stock.designation}", Weight.REGULAR))
    level = abs(beam.drops[0] - beam.drops[1]) < _LEAST
    dropped = level and abs(beam.drops[0]) >= _LEAST
    if dropped:
        name = (*name, (f" ({signed(beam.drops[0], scribe)})", Weight.REGULAR))
    notes = ", ".join(_notes(beam, scribe))
    whole = _along(name, start, finish)
    if notes and not whole.spots:  # it stands aside whatever it says: one leader for all of it
        yield _along((*name, (f", {notes}", Weight.REGULAR)), start, finish)
    else:
        yield replace(
            whole, halves=(_along(name[:1], start, finish), _along(_trimmed(name[1:]), start, finish))
        )
        if notes:
            yield _along(((notes, Weight.REGULAR),), start, finish)
    if not level:
        for at, drop in zip(line, beam.drops, strict=True):
            yield _near(f"({signed(drop, scribe)})", at, middle)
    for at, station in zip(line, stations, strict=True):
        if station:
            yield _near(station, at, middle)


def _trimmed(runs: tuple[Run, ...]) -> tuple[Run, ...]:
    return ((runs[0][0].lstrip(), runs[0][1]), *runs[1:])


def _notes(beam: PlanBeam, scribe: Scribe) -> list[str]:
    notes = list(filter(None, [place_of(beam.name, beam.mark)]))
    if abs(beam.slope) > 1e-9:
        notes.append(f"slope {Slope.from_degrees(degrees(atan(beam.slope))).text(scribe.system)}")
    skews = [Slope.from_degrees(a).text(scribe.system) for a in beam.skews if abs(a) > _SQUARE]
    if skews:
        notes.append(f"skew {' and '.join(dict.fromkeys(skews))}")
    if abs(beam.offset) >= _LEAST:
        notes.append(f"{scribe.tell(Length.from_inches(abs(beam.offset)))} off line")
    return notes


def _along(runs: tuple[Run, ...], start: Point, finish: Point) -> Label:
    width = sum(text_width(text, FINE, weight) for text, weight in runs)
    targets = tuple(
        (start[0] + (finish[0] - start[0]) * share, start[1] + (finish[1] - start[1]) * share)
        for share in (0.5, 0.35, 0.65, 0.25, 0.75)
    )
    return Label(runs, beside_line(start, finish, width, _HEIGHT), targets)


def _near(text: str, at: Point, middle: Point) -> Label:
    """A text at an end, moved a little into the member."""
    x, y = at[0] + (middle[0] - at[0]) * 0.12, at[1] + (middle[1] - at[1]) * 0.12
    width = text_width(text, FINE)
    return Label(((text, Weight.REGULAR),), round_about((x, y), width, _HEIGHT, 0.8), ((x, y),))


def column_label(column: PlanColumn, view: PlanView) -> Label:
    """The mark of a column beside it."""
    at = view.at(column.at)
    reach = max(column.stock.d, column.stock.bf).inches * view.scale / 2
    runs: tuple[Run, ...] = ((column.mark, Weight.BOLD),)
    place = place_of(column.name, column.mark)
    if place:
        runs = (*runs, (f", {place}", Weight.REGULAR))
    width = sum(text_width(text, FINE, weight) for text, weight in runs)
    spots: tuple[Spot, ...] = round_about(at, width, _HEIGHT, max(reach, 1.2) + 0.8, 4)
    return Label(runs, spots, (at,))
