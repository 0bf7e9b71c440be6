"""The steps on one face: its centre line, openings and holes."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gageline.layout.cut_steps import diagonal
from gageline.layout.holes import MIDDLE, Column, Pattern
from gageline.layout.mark import Bench
from gageline.layout.reading import Datum, Reading
from gageline.layout.step import Step, source
from gageline.part import End, Face, Hole, Opening
from gageline.units import Length, counted

__all__ = ["centre_step", "opening_step", "pattern_steps"]

_SQUARE = "tape and square"
_NEAR_EDGES = frozenset({Datum.NEAR_EDGE, Datum.NEAR_LINE, Datum.PAST_NEAR_EDGE})


def centre_step(bench: Bench, face: Face) -> Step:
    """The part's middle, from which centred patterns are checked."""
    length = bench.part.length
    reading, back = bench.x(length.parts(2)[0]), bench.x(length.parts(2)[0], End.RIGHT)
    return Step(
        "Centre line",
        face,
        _SQUARE,
        "left end",
        (reading,),
        f"Strike the middle of the length at {reading.text}.",
        f"From the right end {back.text}.",
        MIDDLE,
    )


def opening_step(bench: Bench, opening: Opening, face: Face, name: str) -> Step:
    """Outline of an opening by its four edges, or its centre when it is round."""
    title, right = name.capitalize(), bench.x(opening.x, End.RIGHT)
    if opening.is_round:
        spot = bench.spot(face, opening.x, opening.y)
        return Step(
            title,
            face,
            f"{_SQUARE}, dividers",
            f"left end and {source(spot.y.from_)}",
            (spot.x, spot.y),
            f"Punch the centre at {spot.x.text} and {spot.y.text}; scribe a circle of "
            f"{bench.exact(opening.radius)} radius. Cut.",
            f"Centre to the right end {right.text}, to the {source(spot.y_back.from_)} {spot.y_back.text}.",
            name,
        )
    half_x, half_y = opening.length.parts(2), opening.depth.parts(2)
    first = bench.spot(face, opening.x - half_x[0], opening.y + half_y[1])
    last = bench.spot(face, opening.x + half_x[1], opening.y - half_y[0])
    radius = (
        f" Punch the corners for {bench.exact(opening.radius)} radius, {bench.exact(opening.radius)} in "
        "from both edges."
        if opening.radius
        else ""
    )
    return Step(
        title,
        face,
        _SQUARE,
        f"left end and {source(first.y.from_)}",
        (first.x, last.x, first.y, last.y),
        f"Strike its edges, {bench.say(opening.length)} along and {bench.say(opening.depth)} across."
        f"{radius} Cut.",
        f"Diagonals {bench.say(diagonal(last.x.tape - first.x.tape, opening.depth))}; centre to the right "
        f"end {right.text}.",
        name,
    )


def pattern_steps(bench: Bench, pattern: Pattern) -> Iterator[Step]:
    """Cross lines, rows on them, then punch and drill."""
    yield _cross_lines(bench, pattern)
    if pattern.is_grid:
        yield _rows(bench, pattern, pattern.columns[0], whole=True)
    else:
        for column in pattern.columns:
            yield _rows(bench, pattern, column, whole=False)
    yield _punch(bench, pattern)


def _spread(readings: tuple[Reading, ...]) -> Length:
    """From the first to the last reading as struck, through the datum where they lie on both sides."""
    first, last = readings[0], readings[-1]
    if first.from_ is last.from_:
        return abs(last.tape - first.tape)
    return last.tape + first.tape


def _first_to_last(bench: Bench, readings: tuple[Reading, ...]) -> str:
    return f"First to last {bench.exact(_spread(readings))}. " if len(readings) > 1 else ""


def _cross_lines(bench: Bench, pattern: Pattern) -> Step:
    readings = tuple(column.x for column in pattern.columns)
    rest = bench.part.length - readings[-1].tape
    which = "Last" if len(readings) > 1 else "From it"
    return Step(
        f"{pattern.name}: cross lines",
        pattern.face,
        _SQUARE,
        "left end",
        readings,
        f"Strike {counted(len(readings), 'cross line')}.",
        f"{_first_to_last(bench, readings)}{which} to the right end {bench.say(rest)}.",
        pattern.name,
    )


def _rows(bench: Bench, pattern: Pattern, column: Column, *, whole: bool) -> Step:
    """Rows on every cross line of a grid, or on one line of another pattern."""
    rows, line = column.rows, column.x.text
    datum = source(rows[0].from_)
    backs = {(spot.y.tape, spot.y.from_): spot.y_back for spot in pattern.spots}
    first, last = (backs[row.tape, row.from_] for row in (rows[0], rows[-1]))
    from_near = first.from_ in _NEAR_EDGES
    edge = first if from_near else last
    which = "From it" if len(rows) == 1 else "First" if from_near else "Last"
    return Step(
        f"{pattern.name}: rows" if whole else f"{pattern.name}: rows at {line}",
        pattern.face,
        "tape",
        datum,
        rows,
        f"Mark {counted(len(rows), 'row')} from the {datum}, on "
        f"{'every cross line' if whole else f'the line at {line}'}.",
        f"{_first_to_last(bench, rows)}{which} to the {source(edge.from_)} {edge.length_text}.",
        pattern.name,
    )


def _punch(bench: Bench, pattern: Pattern) -> Step:
    holes = pattern.group.holes
    slots = sum(hole.is_slot for hole in holes)
    points = len(holes) + 2 * slots
    ends = ", slots at both ends too" if slots else ""
    sizes = " and ".join(dict.fromkeys(_size(bench, hole) for hole in holes))
    return Step(
        f"{pattern.name}: punch and drill",
        pattern.face,
        "punch, drill",
        "",
        (),
        f"Punch {counted(points, 'point')}{ends}. {sizes}.",
        _punch_check(bench, pattern),
        pattern.name,
    )


def _size(bench: Bench, hole: Hole) -> str:
    if not hole.is_slot:
        return f"Drill {bench.exact(hole.width)}"
    way = {Fraction(0): "along", Fraction(90): "across"}.get(hole.angle % 180, f"at {float(hole.angle):g}°")
    return f"Slot {bench.exact(hole.width)} x {bench.exact(hole.length)}, long way {way}"


def _punch_check(bench: Bench, pattern: Pattern) -> str:
    """The diagonal of the pattern's corner holes where it has them, else what its lines must read."""
    columns, rows = pattern.columns, pattern.rows
    wide, high = _spread(tuple(column.x for column in columns)), _spread(rows)
    if len(columns) > 1 and len(rows) > 1 and pattern.is_grid:
        return f"Both diagonals, corner hole to corner hole, {bench.say(diagonal(wide, high))}."
    if len(pattern.spots) > 1:
        first, last = pattern.spots[0].struck, pattern.spots[-1].struck
        apart = diagonal(last[0] - first[0], last[1] - first[1])
        return f"First hole to last hole {bench.say(apart)}."
    back = bench.part.length - columns[0].x.tape
    return f"From it to the right end {bench.say(back)}."
