"""The holes are found again from what is printed on the card, and from nothing else."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import groupby

from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.job import Practice
from gageline.layout import Datum, Layout, MarkKind, PartLayout, Step, lay_out
from gageline.part import Assembly, Face, HoleGroup, Part, face_range, opposite_hand
from gageline.steel import Profile
from gageline.units import Length, System, Unit, parse_length
from strategies import parts

_INCH = Length.from_inches(1)
_TAPES = {
    System.FT_IN: (_INCH / 16, _INCH / 8, _INCH / 32),
    System.MM: (Length.from_mm(1), Length.from_mm(5), Length(3200)),
}
_FINEST = {System.FT_IN: _INCH / 64, System.MM: Length.from_mm(1) / 10}  # of a spacing as it is read
_WRITTEN = {System.FT_IN: _INCH / 256, System.MM: Length.from_mm(1) / 100}  # what is read without a rest
_UNITS = {System.FT_IN: Unit.INCH, System.MM: Unit.MM}
_LONGEST = 180  # characters: two lines of the card
Place = tuple[Length, Length]


def read(text: str, system: System) -> tuple[Length, str]:
    """The length and the side word of a printed reading."""
    found = re.fullmatch(r"(?P<length>.*?)(?: (?P<side>near|far|up|down|above|below|past))?", text)
    assert found
    return parse_length(found["length"], _UNITS[system]), found["side"] or ""


def source(datum: Datum) -> str:
    return datum.split(",")[0]


def across(part: Part, face: Face, from_: str, text: str, system: System) -> Length:
    """Where a printed row lies, by what the trade understands under its datum."""
    length, side = read(text, system)
    low, high = face_range(part.stock, face)
    line = low + (high - low).parts(2)[0] if face in {Face.NEAR, Face.FAR} else Length(0)
    match from_, side:
        case "top edge", "":
            return high - length
        case "bottom edge" | "bottom line", "":
            return low + length
        case "heel", "":
            return length
        case ("toe", "") if face in {Face.LEG_A, Face.LEG_B}:
            return high - length
        case "toe", "":
            return low + length
        case "back of the web", "":
            return -length
        case "near edge" | "near line", "":
            return high - length
        case "centre line", "near" | "up":
            return line + length
        case "centre line", "far" | "down":
            return line - length
    raise AssertionError((from_, side))


def holes_of_marks(layout: PartLayout, group: HoleGroup, system: System, *, back: bool) -> list[Place]:
    found = []
    for mark in layout.marks:
        if mark.kind is MarkKind.HOLE and mark.for_ == group.name:
            y = mark.spot.y_back if back else mark.y
            x = read(mark.x.text, system)
            assert x[1] == ""
            found.append((x[0], across(layout.part, mark.face, source(y.from_), y.text, system)))
    return found


def holes_of_steps(layout: PartLayout, name: str, face: Face, system: System) -> Iterator[Place]:
    """Every crossing of the card's cross lines and rows."""
    steps = [step for step in layout.steps if step.for_ == name]
    lines = next(step for step in steps if step.title == f"{name}: cross lines")
    rows = [step for step in steps if step.title.startswith(f"{name}: rows")]

    def heights(step: Step) -> list[Length]:
        return [across(layout.part, face, step.from_, row.text, system) for row in step.readings]

    if rows[0].title == f"{name}: rows":
        (step,) = rows
        for line in lines.readings:
            yield from ((read(line.text, system)[0], y) for y in heights(step))
        return
    for line, step in zip(lines.readings, rows, strict=True):
        assert step.title == f"{name}: rows at {line.text}"
        yield from ((read(line.text, system)[0], y) for y in heights(step))


def assert_near(group: HoleGroup, found: list[Place], most: Length) -> None:
    """Each hole of record has one place found within so much, along and across."""
    assert len(found) == len(group.holes)
    left = set(found)
    for hole in group.holes:
        near = {p for p in left if abs(p[0] - hole.x) <= most and abs(p[1] - hole.y) <= most}
        assert len(near) == 1
        left -= near


def assert_spacing_kept(group: HoleGroup, found: list[Place], system: System) -> None:
    """The whole pattern is moved as one: a distance that can be written is exact, others nearly."""
    true = sorted((hole.x, hole.y) for hole in group.holes)
    at = true.index((group.holes[0].x, group.holes[0].y))
    for have, want in zip(sorted(found), true, strict=True):
        for axis in (0, 1):
            wanted = want[axis] - true[at][axis]
            off = abs(have[axis] - sorted(found)[at][axis] - wanted)
            assert 2 * off <= (_FINEST[system] if wanted.ticks % _WRITTEN[system].ticks else Length(0))


def assert_card_reads_well(layout: PartLayout) -> None:
    assert [step.number for step in layout.steps] == list(range(1, len(layout.steps) + 1))
    for step in layout.steps:
        assert step.title
        assert step.tool
        assert step.text
        assert step.check
        assert len(step.text) <= _LONGEST
        assert len(step.check) <= _LONGEST
        assert "  " not in step.text
        assert all(reading.tape.ticks >= 0 for reading in step.readings)


@st.composite
def laid_out(draw: st.DrawFn) -> Layout:
    system = draw(st.sampled_from(System))
    part = draw(parts(system=system))
    tape = draw(st.sampled_from(_TAPES[system]))
    return lay_out(Assembly(part, 1), Practice(tape=tape), system)


def assert_rebuilt(layout: Layout) -> None:
    main, system, tape = layout.main, layout.system, layout.tape
    for group in main.part.groups:
        from_marks = holes_of_marks(main, group, system, back=False)
        from_back = holes_of_marks(main, group, system, back=True)
        from_steps = list(holes_of_steps(main, group.name, group.face, system))
        assert set(from_steps) == set(from_marks)
        for found in (from_marks, from_back, from_steps):
            assert_near(group, found, (tape + _FINEST[system] if group.mates else tape).parts(2)[1])
            if group.mates:
                assert_spacing_kept(group, found, system)
    holes = [hole for group in main.part.groups for hole in group.holes]
    slants = any(hole.angle % 90 for hole in holes)  # then a slot's ends are read from its centre once more
    assert 2 * layout.accuracy.mark <= tape + _FINEST[system] * (2 if slants else 1)
    assert layout.accuracy.in_pattern.ticks <= 1 + 2**0.5 * _FINEST[system].ticks
    assert layout.accuracy.hole_to_hole.ticks <= 1 + 2**0.5 * (tape + _FINEST[system]).ticks
    assert_card_reads_well(main)


@settings(max_examples=1000, deadline=None)
@given(laid_out())
def test_holes_are_rebuilt_from_the_printed_readings(layout: Layout) -> None:
    assert_rebuilt(layout)


@settings(max_examples=100, deadline=None)
@given(parts(system=System.FT_IN), st.sampled_from(_TAPES[System.FT_IN]))
def test_patterns_in_inches_are_rebuilt_where_the_length_is_in_millimetres(part: Part, tape: Length) -> None:
    whole = Length.from_mm(part.length.ticks // Length.from_mm(1).ticks)
    piece = replace(part, length=whole, openings=())
    assert_rebuilt(lay_out(Assembly(piece, 1), Practice(tape=tape), System.FT_IN))


@settings(max_examples=100, deadline=None)
@given(laid_out())
def test_a_piece_is_turned_only_between_faces_and_every_face_is_named(layout: Layout) -> None:
    worked = [face for face, _ in groupby(step.face for step in layout.main.steps if step.face)]
    rolls = sum(step.title == "Roll" for step in layout.main.steps)
    assert rolls == max(len(worked) - 1, 0)
    assert set(worked) <= set(layout.main.faces)
    assert {mark.face for mark in layout.main.marks} <= set(layout.main.faces)


@settings(max_examples=200, deadline=None)
@given(laid_out())
def test_the_template_strikes_every_hole_and_never_needs_more_placings_than_holes(layout: Layout) -> None:
    for plan in layout.main.setups:
        wanted = {
            (
                read(mark.x.text, layout.system)[0],
                across(layout.main.part, plan.face, source(mark.y.from_), mark.y.text, layout.system),
            )
            for mark in layout.main.on(plan.face)
            if mark.kind is MarkKind.HOLE
        }
        struck = [set(placing.holes) for placing in plan.placings]
        assert set().union(*struck) == wanted
        assert plan.with_template <= len(wanted)
        assert plan.saving == plan.by_hand - plan.with_template


@settings(max_examples=150, deadline=None)
@given(parts(Profile.I_SHAPE) | parts(Profile.BOX) | parts(Profile.TEE))
def test_the_opposite_hand_has_the_same_readings_on_the_other_side_of_the_web(part: Part) -> None:
    hand = opposite_hand(Assembly(part, 1), "X2", 1)
    one, two = (lay_out(piece, Practice(), System.FT_IN).main for piece in (Assembly(part, 1), hand))
    for face, other in ((Face.NEAR, Face.FAR), (Face.FAR, Face.NEAR)):
        holes = [
            {
                (mark.kind, mark.x.text, mark.y.text, mark.spot.y_back.text)
                for mark in layout.on(side)
                if mark.kind in {MarkKind.HOLE, MarkKind.SLOT_END}
            }
            for layout, side in ((one, face), (two, other))
        ]
        assert holes[0] == holes[1]
    assert one.by_hand == two.by_hand
    assert one.with_template == two.with_template
