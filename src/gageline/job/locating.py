"""Where on a face a hole pattern, an opening or a fitting stands, from what the drawing gives."""

from __future__ import annotations

from gageline.errors import ValueProblem
from gageline.part import Face, face_range, faces_of
from gageline.steel import Profile, Stock
from gageline.units import ZERO, Length, System, is_metric, millimetres, round_to, write_length

__all__ = ["START_WORDS", "columns", "face_named", "middle", "places", "rows", "where_along"]

_MAIN_FACE = {Profile.ANGLE: Face.LEG_A, Profile.PLATE: Face.FACE}
START_WORDS = ("left", "right", "centre", "center")
"""What a distance along the part may be measured from, besides a group of holes."""

_LYING = frozenset({Face.TOP, Face.BOTTOM})


def face_named(stock: Stock, name: str | None) -> Face:
    """The face that a table names, or the one the section is laid out on first.

    Raises:
        ValueProblem: when the section has no such face.
    """
    if name is None:
        return _MAIN_FACE.get(stock.profile, Face.NEAR)
    face = Face(name)
    if face not in faces_of(stock):
        raise ValueProblem(f"{stock.designation} has no face {name}: use one of {', '.join(faces_of(stock))}")
    return face


def middle(stock: Stock, face: Face) -> Length:
    """The y of the line about which patterns are centred: the web's middle on a flange, else mid-height.

    Raises:
        ValueProblem: on a channel's flange or an angle's leg, which have no such line.
    """
    if stock.profile is Profile.CHANNEL and face in _LYING:
        raise ValueProblem("a channel's flange has no middle line: measure from the back of the web")
    if stock.profile is Profile.ANGLE:
        raise ValueProblem("an angle's leg has no middle line: measure from the heel")
    low, high = face_range(stock, face)
    return ZERO if face in _LYING else low + (high - low) / 2


def places(first: tuple[Length, ...], count: int, step: Length | None, what: str) -> tuple[Length, ...]:
    """Running dimensions as given, or counted on from the first by an equal step.

    Raises:
        ValueProblem: when both are given, or a step is missing or not used.
    """
    count_word, step_word = what.split()
    if len(first) > 1:
        if count not in {1, len(first)}:
            raise ValueProblem(
                f"{count} {count_word} but {len(first)} running dimensions: leave out {count_word}"
            )
        if step is not None:
            raise ValueProblem(f"{step_word} and running dimensions are both given: leave out one")
        return first
    if step is not None and count == 1:
        raise ValueProblem(f"{step_word} is given but not {count_word}: give {count_word} too")
    if count > 1 and step is None:
        raise ValueProblem(f"{step_word} is missing for {count} {count_word}: give it")
    return tuple(first[0] + (step or ZERO) * number for number in range(count))


def columns(
    from_: str, given: tuple[Length, ...], length: Length, groups: dict[str, Length]
) -> tuple[Length, ...]:
    """The x of each column, in rising order, from the end, centre or group they are measured from.

    Args:
        from_: left, right, centre, or the name of a group that comes before.
        given: distances from there, rising; from the right end they run to the left.
        length: of the part.
        groups: first column of every group so far, by name.

    Raises:
        ValueProblem: when the name is none of these.
    """
    match from_:
        case "left":
            return given
        case "right":
            return tuple(length - distance for distance in reversed(given))
        case "centre" | "center":
            span = (given[-1] - given[0]) / 2 if len(given) > 1 else ZERO
            start = length / 2 + given[0] - span
            return tuple(start + (distance - given[0]) for distance in given)
        case name if name in groups:
            return tuple(groups[name] + distance for distance in given)
        case name:
            known = ", ".join(["left", "right", "centre", *groups])
            raise ValueProblem(f'"{name}" is no end and no group before this one: use one of {known}')


def where_along(from_: str, x: Length, tape: Length, system: System) -> str:
    """Where along a part something stands, in words that an opposite hand can turn about.

    Args:
        from_: the end that it is given from, or the centre.
        x: as given.
        tape: that the card is read with; it shows no finer place.
        system: the units of the job.
    """
    if from_ in {"left", "right"}:
        return f"{_on_tape(x, tape, system)} from {from_}"
    if not x:
        return "at the centre"
    return f"{_on_tape(abs(x), tape, system)} {'right' if x > ZERO else 'left'} of the centre"


def _on_tape(x: Length, tape: Length, system: System) -> str:
    if system is System.FT_IN and is_metric(x):
        return f"{millimetres(x)} mm"
    return write_length(round_to(x, tape), system, 64)


def rows(
    places_given: dict[str, tuple[Length, ...] | None],
    stock: Stock,
    face: Face,
    count: int,
    pitch: tuple[Length | None, Length],
) -> tuple[Length, ...]:
    """The y of each row on its face, from the top down.

    Args:
        places_given: what the table says of down, up, heel, back and offset; exactly one of them.
        stock: the section.
        face: of it.
        count: of rows.
        pitch: between rows, as the table gives it and as the shop does it.

    Raises:
        ValueProblem: when not exactly one of the places is given, or it is for another section.
    """
    given = {name: value for name, value in places_given.items() if value is not None}
    if len(given) != 1:
        say = " and ".join(given) if given else "none"
        raise ValueProblem(
            f"rows are placed by one of down, up, offset, heel and back, {say} given: give one"
        )
    ((name, value),) = given.items()
    own, usual = pitch
    step = usual if own is None and count > 1 and len(value) == 1 else own
    steps = places(value, count, step, "rows pitch")
    low, high = face_range(stock, face)
    if name == "offset":
        start = middle(stock, face) + steps[0] + (steps[-1] - steps[0]) / 2
        return tuple(start - (place - steps[0]) for place in steps)
    match name:
        case "down":
            ys = [high - step for step in steps]
        case "up":
            ys = [low + step for step in steps]
        case "back" if stock.profile is Profile.CHANNEL and face in _LYING:
            ys = [-step for step in steps]
        case "heel" if stock.profile is Profile.ANGLE:
            ys = list(steps)
        case _:
            owner = "an angle's leg" if name == "heel" else "a channel's flange"
            raise ValueProblem(f"{name} is for {owner}: give down, up or offset")
    return tuple(sorted(ys, reverse=True))
