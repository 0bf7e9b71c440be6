"""The steps of fitting: set each piece to its lines, tack or bolt it, measure over everything."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from gageline.layout.mark import Bench, Mark, MarkKind
from gageline.layout.reading import Datum, Reading
from gageline.layout.seats import Seat
from gageline.layout.step import Step, source
from gageline.layout.tongues import tongue_step
from gageline.part import End, Face, Fitting, Join, extent_y, lean, lean_across
from gageline.steel import Profile
from gageline.units import ZERO, Length, round_to

__all__ = ["fit_steps", "join_steps"]

_SQUARE = "tape and square"
_FLAT = frozenset({Face.TOP, Face.BOTTOM})
_WEB = {
    Profile.I_SHAPE: "the middle of its web",
    Profile.TEE: "the middle of its web",
    Profile.CHANNEL: "the back of its web",
}


def fit_steps(bench: Bench, seat: Seat) -> Iterator[Step]:
    """A fitting set to its place, an end plate after the main's outline is struck on it."""
    if seat.stand is not None:
        yield tongue_step(bench, seat.fitting, seat.stand)
        return
    if seat.on_fitting:
        yield _outline_step(bench, seat)
    yield _set_step(bench, seat)


def _lines(marks: Iterable[Mark], kind: MarkKind) -> tuple[tuple[Reading, ...], tuple[Reading, ...]]:
    """Distinct readings along, and distinct readings across, of the lines of a kind."""
    lines = [mark for mark in marks if mark.kind is kind]
    xs = dict.fromkeys(mark.x for mark in lines if mark.runs_across)
    ys = dict.fromkeys(mark.y for mark in lines if not mark.runs_across)
    return tuple(xs), tuple(ys)


def _outline_step(bench: Bench, seat: Seat) -> Step:
    """The main's edges struck on a plate, checked between two of them or else against the plate's middle."""
    mark = seat.fitting.part.mark
    if bench.part.profile is Profile.TUBE:
        return _circle_step(bench, seat)
    along, down = _lines(seat.on_fitting, MarkKind.EDGE_LINE)
    if not along and not down:
        return _web_step(bench, seat)
    pair = next((lines for lines in (along, down) if len(lines) > 1), None)
    check = (
        f"Between the two lines from the {source(pair[0].from_)} {bench.exact(pair[1].tape - pair[0].tape)}."
        if pair
        else f"The web line square to the {source(Datum.LEFT_END)} of {mark}."
    )
    return _on_plate_step(
        seat,
        (*along, *down),
        f"Strike the outline of the piece on {mark}, on the side that meets it{_web(bench, seat)}.",
        check,
    )


def _on_plate_step(seat: Seat, readings: tuple[Reading, ...], text: str, check: str) -> Step:
    """What is struck of the main on a plate across its end."""
    mark, which = seat.fitting.part.mark, _which_way(seat.fitting)
    edges = f"left end and top edge of {mark}"
    name = f"Outline on {mark}"
    return Step(name, None, _SQUARE, edges, readings, f"{text} {which}", check, seat.fitting.name)


def _web(bench: Bench, seat: Seat) -> str:
    """Where the web stands on the plate: its middle, of a channel its back."""
    across, down = _lines(seat.on_fitting, MarkKind.CENTRE_LINE)
    places = [f"{one.text} from the {source(one.from_)}" for one in (*across, *down)]
    return f", {_WEB[bench.part.profile]} {places[0]}" if places else ""


def _web_step(bench: Bench, seat: Seat) -> Step:
    """The line of the web alone, where no edge of the main falls inside the plate."""
    mark = seat.fitting.part.mark
    across, down = _lines(seat.on_fitting, MarkKind.CENTRE_LINE)
    line = _WEB[bench.part.profile]
    text = f"No edge of the piece falls on {mark}. Strike {line} on the side that meets it."
    check = f"The line square to the {source(Datum.LEFT_END)} of {mark}."
    return _on_plate_step(seat, (*across, *down), text, check)


def _circle_step(bench: Bench, seat: Seat) -> Step:
    """A round pipe on a plate: its two middle lines and the circle about their crossing."""
    mark = seat.fitting.part.mark
    along, down = _lines(seat.on_fitting, MarkKind.CENTRE_LINE)
    low, high = extent_y(bench.part.stock)
    size = bench.exact(high - low)
    text = (
        f"Strike both middle lines of the pipe on {mark}, on the side that meets it, and a circle of {size} "
        "about their crossing."
    )
    return _on_plate_step(seat, (*along, *down), text, f"Across the circle {size}, both ways.")


def _which_way(fitting: Fitting) -> str:
    """Which edge of a plate across an end goes up, and which to the near side."""
    along, across = fitting.placement.ex, fitting.placement.ey
    end = "right end" if along[1] + along[2] > 0 else "left end"
    edge = "top edge" if across[1] + across[2] > 0 else "bottom edge"
    up, near = (end, edge) if abs(along[1]) > abs(along[2]) else (edge, end)
    return f"Its {up} goes up, its {near} to the near side."


def _off(bench: Bench, length: Length, words: tuple[str, str, str]) -> str:
    """A distance with its direction in words: ahead, behind, or level where it rounds to nothing."""
    ahead, behind, level = words
    rounded = round_to(length, bench.tape).ticks
    if not rounded:
        return level
    return f"{bench.say(abs(length))} {ahead if rounded > 0 else behind}"


def _edge(bench: Bench, which: str) -> str:
    """The upper or lower edge of the main part; a round pipe has a line there."""
    return f"{which} {'line' if bench.part.profile is Profile.TUBE else 'edge'}"


def _place(bench: Bench, seat: Seat) -> str:
    fitting = seat.fitting
    words: list[str] = []
    if fitting.on is None and fitting.end is not None:
        words.append(f"across the {fitting.end} end")
    elif seat.projection is not None:
        end = fitting.end
        past = (f"past the {end} end", f"short of the {end} end", f"flush with the {end} end")
        words.append(_off(bench, seat.projection, past))
    else:
        words.append("to its lines")
    along, across = lean(fitting), lean_across(fitting)
    if along:
        toward = End.RIGHT if along.ratio > 0 else End.LEFT
        words.append(f"leaning {along.text(bench.system)} to the {toward} end")
    if across:
        words.append(f"leaning {across.text(bench.system)} to the {_aside(bench, seat)}")
    if seat.drop is not None:
        top = _edge(bench, "top")
        level = (f"below the {top}", f"above the {top}", f"level with the {top}")
        words.append(f"its top {_off(bench, seat.drop, level)}{_along(seat)}")
    return ", ".join(words)


def _aside(bench: Bench, seat: Seat) -> str:
    """Which way a fitting leans across the piece."""
    ahead = seat.overhang > ZERO
    if seat.fitting.on in _FLAT:
        return "near side" if ahead else "far side"
    return _edge(bench, "top" if ahead else "bottom")


def _set_check(bench: Bench, seat: Seat) -> str:
    """What to measure when it is set; of one that leans across, its outer edge from its foot too."""
    check = _number(bench, seat)
    if not seat.overhang:
        return check
    past = f"past its foot toward the {_aside(bench, seat)}"
    return f"{check} By a square on the face its outer edge {bench.say(abs(seat.overhang))} {past}."


def _number(bench: Bench, seat: Seat) -> str:
    """A number to measure when it is set: its first row, its line from the other end, or its lower edge."""
    main = bench.part
    if seat.first_row is not None:
        top = _edge(bench, "top")
        below = (f"below the {top}", f"above the {top}", f"at the {top}")
        return f"First row of holes {_off(bench, seat.first_row, below)}{_along(seat)}."
    lines = [mark.x for mark in seat.lines if mark.runs_across]
    if lines:
        return f"From its last line to the right end {bench.say(main.length - lines[-1].true)}."
    bottom = _edge(bench, "bottom")
    edge = (f"above the {bottom}", f"below the {bottom}", f"level with the {bottom}")
    return f"Its bottom {_off(bench, seat.rise, edge)}{_along(seat)}."


def _along(seat: Seat) -> str:
    """How the levels of a plate on a bevelled end are measured."""
    return ", along the cut" if seat.along_cut else ""


def _set_step(bench: Bench, seat: Seat) -> Step:
    fitting = seat.fitting
    xs, ys = _lines(seat.lines, MarkKind.EDGE_LINE)
    hooked = [source(lines[0].from_) for lines in (xs, ys) if lines]
    if not ys and seat.drop is not None:
        hooked.append(_edge(bench, "top"))
    return Step(
        f"Set the {fitting.name}",
        fitting.on,
        f"{_SQUARE}, clamp",
        " and ".join(hooked),
        (*xs, *ys),
        f"Set {fitting.part.mark}: {_place(bench, seat)}.",
        _set_check(bench, seat),
        fitting.name,
    )


def join_steps(bench: Bench, seats: tuple[Seat, ...], span: tuple[Length, Length]) -> Iterator[Step]:
    """Bolts snug, tacks in their order, and the measure over everything.

    Args:
        bench: the main part.
        seats: of its fittings.
        span: from the leftmost to the rightmost point of the piece.
    """
    over = span[1] - span[0]
    joins = {seat.fitting.join for seat in seats}
    if Join.BOLTED in joins:
        yield Step(
            "Bolt", None, "drift pin, wrench", "", (),
            "Pin one hole of each bolted fitting, bolt the rest snug, then the pinned one.",
            f"{bench.say(over)} out-to-out.", "",
        )  # fmt: skip
    if Join.WELDED in joins:
        yield Step(
            "Tack", None, "square, clamp", "", (),
            "Tack each fitting at both edges, then in the middle; near side first, then far side.",
            f"Still square, and {bench.say(over)} out-to-out, before any weld is run.", "",
        )  # fmt: skip
    reading = Reading(over, round_to(over, bench.tape), Datum.OUT_TO_OUT, bench.system, bench.is_metric)
    halves = [-span[0], span[1] - bench.part.length]
    ends = " and ".join(
        _off(bench, past, (f"past the {end} end", f"short of the {end} end", f"flush at the {end} end"))
        for end, past in zip(End, halves, strict=True)
    )
    yield Step(
        "Out to out", None, "tape", "leftmost point", (reading,),
        f"Measure over everything: {reading.text} out-to-out.",
        f"{ends[0].upper()}{ends[1:]}.", "out-to-out",
    )  # fmt: skip
