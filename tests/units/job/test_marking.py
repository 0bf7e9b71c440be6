from __future__ import annotations

import re
from dataclasses import replace

import pytest

from gageline.job import FittingMarks, JobProblems
from gageline.part import Face, Part, bounds, reflect_x
from gageline.units import Length
from jobs import fitting_of, job_of
from pieces import drilled, hole, piece

BEAM = 'mark = "{mark}"\nstock = "W16x26"\nlength = 120\n'
ANGLES = '[[piece.angles]]\nend = "{end}"\nstock = "L4x3-1/2x5/16"\nrows = 3\n'
LONG = ANGLES + 'length = "10"\n'


def test_equal_fittings_of_all_pieces_share_a_mark() -> None:
    job = job_of(
        BEAM.format(mark="B1") + ANGLES.format(end="both"), BEAM.format(mark="B2") + ANGLES.format(end="left")
    )
    (mark,) = {fitting.part.mark for piece in job.assemblies for fitting in piece.fittings}
    assert re.fullmatch(r"a\d{4}", mark)


def test_a_mark_that_a_piece_or_the_document_has_is_passed_over() -> None:
    beam = BEAM.format(mark="B1") + ANGLES.format(end="left")
    (first,) = {fitting.part.mark for fitting in job_of(beam).assemblies[0].fittings}
    other = BEAM.format(mark=first.upper())
    (second,) = {fitting.part.mark for fitting in job_of(beam, other).assemblies[0].fittings}
    given = other + ANGLES.format(end="left").replace("rows = 3", f'rows = 2\nmark = "{second}"')
    (third,) = {fitting.part.mark for fitting in job_of(beam, given).assemblies[0].fittings}
    assert len({first, second, third}) == 3


def test_a_pair_is_its_own_mirror_and_a_single_angle_is_not() -> None:
    hand = 'mark = "B2"\nas_hand_of = "B1"\n'
    pair = job_of(BEAM.format(mark="B1") + LONG.format(end="left"), hand)
    one, two = ({f.name: f.part.mark for f in piece.fittings} for piece in pair.assemblies)
    assert one == two
    near, far = one["left near angle"], one["left far angle"]
    assert near != far
    single = job_of(BEAM.format(mark="B1") + LONG.format(end="left") + 'sides = "near"\n', hand)
    marks = [(f.name, f.part.mark) for piece in single.assemblies for f in piece.fittings]
    assert marks == [("left near angle", near), ("left far angle", far)]


def test_a_given_mark_goes_to_one_hand_and_its_opposite_is_named() -> None:
    job = job_of(BEAM.format(mark="B1") + LONG.format(end="left") + 'mark = "k7"\n')
    assert [fitting.part.mark for fitting in job.assemblies[0].fittings] == ["k7", "k7-OH"]


def test_a_plate_turned_over_stays_where_it_was() -> None:
    plate = (
        '[[piece.plates]]\nx = {x}\non = "{on}"\nthickness = "3/8"\nwidth = 4\nrows = 2\nlength = 8\n'
        'end_distance = "1 1/2"\n'
    )
    beam = job_of(
        BEAM.format(mark="B1") + plate.format(x=40, on="near") + plate.format(x=40, on="far")
    ).assemblies[0]
    near, far = beam.fittings
    assert near.part == far.part
    (x0, x1), (y0, y1), (z0, z1) = bounds(near)
    assert bounds(far) == ((x0, x1), (y0, y1), (-z1, -z0))


def test_one_mark_for_two_different_fittings_is_refused() -> None:
    two = ANGLES.format(end="left") + 'mark = "k1"\n' + ANGLES.format(end="right").replace("3\n", "2\n")
    with pytest.raises(
        JobProblems, match='mark "k1" is given to two fittings that differ: give each a mark of'
    ):
        job_of(BEAM.format(mark="B1") + two + 'mark = "k1"\n')


def test_the_opposite_hand_of_a_channel_names_what_is_where() -> None:
    lines = 'mark = "C1"\nstock = "C12x20.7"\nlength = 120\nholes = [{ name = "left web", x = 3 }]\n'
    plate = '[[piece.plates]]\nx = 24\nthickness = "3/8"\nwidth = 4\nrows = 2\n'
    job = job_of(lines + ANGLES.format(end="left") + plate, 'mark = "C2"\nas_hand_of = "C1"\n')
    hand = job.piece("C2")
    assert [group.name for group in hand.main.groups] == ["right web", "right end, for the angles"]
    assert [fitting.name for fitting in hand.fittings] == [
        "right near angle",
        "right far angle",
        "near plate, 2'-0\" from right",
    ]
    assert {weld.fitting for weld in hand.welds} == {"near plate, 2'-0\" from right"}
    low, high = bounds(fitting_of(hand, "near plate, 2'-0\" from right"))[0]
    assert (low + high).ticks == (hand.main.length.ticks - 24 * 162560) * 2


def _moved(part: Part, ticks: int) -> Part:
    """A part whose holes are a few ticks to the right, and as much longer."""
    off = Length(ticks)
    groups = tuple(
        replace(group, holes=tuple(hole.moved(off) for hole in group.holes)) for group in part.groups
    )
    return replace(part, length=part.length + off, groups=groups)


def _made(*parts: Part) -> list[Part]:
    """The parts as fittings of one kind on one piece after another, marked."""
    beam = job_of(BEAM.format(mark="B1") + ANGLES.format(end="left") + 'sides = "near"\n').assemblies[0]
    marks = FittingMarks(set(), set())
    pieces = (replace(beam, fittings=(replace(beam.fittings[0], part=part),)) for part in parts)
    return [marks.of(one).fittings[0].part for one in pieces]


@pytest.mark.parametrize(("stock", "mark"), [("L4x3-1/2x5/16", ""), ("PL3/8X4", ""), ("PL3/8X4", "k7")])
def test_fittings_that_differ_by_a_few_ticks_are_made_as_one(stock: str, mark: str) -> None:
    face = Face.FACE if stock.startswith("PL") else Face.LEG_B
    part = piece(stock, "8 1/2", mark, groups=(drilled(face, hole("2", "1"), hole("4", "1 1/2")),))
    one, other = _made(part, _moved(part, 5))
    assert one == other


def test_a_plate_turned_over_is_made_as_one_within_a_few_ticks_too() -> None:
    plate = piece("PL3/8X4", "8 1/2", "", groups=(drilled(Face.FACE, hole("2", "1"), hole("4", "1 1/2")),))
    one, other = _made(plate, _moved(reflect_x(plate), -5))
    assert one == other


def test_fittings_that_differ_by_more_than_ticks_are_made_apart() -> None:
    angle = piece("L4x3-1/2x5/16", "8 1/2", "", groups=(drilled(Face.LEG_B, hole("2", "1")),))
    one, other, again = _made(angle, _moved(angle, 5000), angle)
    assert one == again
    assert one.mark != other.mark
