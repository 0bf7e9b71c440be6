"""Joints as the geometry of record gives them."""

from dataclasses import replace
from fractions import Fraction
from math import sqrt

import pytest

from gageline.part import Assembly, FittingKind, HoleGroup
from gageline.quality.fit_up import joints_of, span_of
from gageline.quality.spread import ASSUMED
from jobs import piece_of
from sticks import ANGLES, example_piece

SINGLE = (
    '[[piece.angles]]\nend = "both"\nsides = "near"\nstock = "L4x3-1/2x5/16"\nrows = 2\nprojection = "1/2"\n'
)
PLATE = (
    '[[piece.end_plates]]\nend = "left"\nthickness = "3/8"\nwidth = "6 1/2"\nlength = "9"\nrows = 3\n'
    'gage = "3 1/2"\ndrop = "1 1/2"\nend_distance = "1 1/2"\n'
)


def test_bolted_angles_have_a_shop_joint_each_and_a_field_joint_for_both() -> None:
    joints = joints_of(example_piece(), ASSUMED)
    assert [joint.name for joint in joints] == [
        "left near angle to the web", "left far angle to the web", "right near angle to the web",
        "right far angle to the web", "left end to its support", "right end to its support",
    ]  # fmt: skip
    assert [len(joint.bolts) for joint in joints] == [3, 3, 3, 3, 6, 6]
    assert [len(joint.lots) for joint in joints] == [1, 1, 1, 1, 2, 2]
    assert [joint.field for joint in joints] == [False] * 4 + [True] * 2


def test_play_is_that_of_both_holes() -> None:
    """13/16 in both plies for a 3/4 bolt: 1/16."""
    joints = joints_of(example_piece(), ASSUMED)
    assert {bolt.clear for joint in joints for bolt in joint.bolts} == {1 / 16}
    slotted = joints_of(example_piece(), ASSUMED, slotted_support=True)
    # A short slot 13/16 x 1: 3/32 more each way.
    assert {bolt.slot for joint in slotted if joint.field for bolt in joint.bolts} == {3 / 32}
    assert {bolt.slot for joint in slotted if not joint.field for bolt in joint.bolts} == {0}


def test_bolts_lie_where_the_drawing_has_them() -> None:
    shop, *_, field = joints_of(example_piece(), ASSUMED)
    assert [(bolt.across, round(bolt.up, 6)) for bolt in shop.bolts] == [(1.5, 12.7), (1.5, 9.7), (1.5, 6.7)]
    # Gage 2 1/2 of the outstanding legs, either side of a 1/4 web.
    assert {abs(bolt.across) for bolt in field.bolts} == {2.625}


def test_two_plies_err_twice() -> None:
    shop, *_, field = joints_of(example_piece(), ASSUMED)
    assert shop.hole == field.hole == pytest.approx(sqrt(2) * ASSUMED.hole)
    assert shop.turn == pytest.approx(sqrt(2) * ASSUMED.square)
    # Bolted to the web, the angles stand off it by its thickness alone: nothing is set across.
    assert [(lot.across, lot.up) for lot in field.lots] == [(0.0, ASSUMED.setting)] * 2


def turned(angle: int) -> Assembly:
    """The example with short slots in the outstanding legs, along the angle (0) or across it (90)."""
    piece = example_piece(ANGLES + 'out_hole = "SSL"\n')

    def leg(group: HoleGroup) -> HoleGroup:
        return replace(group, holes=tuple(replace(hole, angle=Fraction(angle)) for hole in group.holes))

    return replace(
        piece,
        fittings=tuple(
            replace(one, part=replace(one.part, groups=tuple(map(leg, one.part.groups))))
            for one in piece.fittings
        ),
    )


def test_slots_across_the_outstanding_leg_count_and_those_up_it_are_taken_as_round() -> None:
    level, upright = (joints_of(turned(angle), ASSUMED)[-1] for angle in (90, 0))
    assert {bolt.slot for bolt in level.bolts} == {3 / 32}
    assert {bolt.slot for bolt in upright.bolts} == {0.0}
    assert {bolt.clear for bolt in (*level.bolts, *upright.bolts)} == {1 / 16}


def test_welded_angles_have_field_joints_only_and_feel_their_setting_both_ways() -> None:
    joints = joints_of(example_piece(ANGLES + 'to_web = "welded"\n'), ASSUMED)
    assert [joint.name for joint in joints] == ["left end to its support", "right end to its support"]
    assert {lot.across for joint in joints for lot in joint.lots} == {ASSUMED.setting}


def test_an_end_plate_is_one_lot() -> None:
    (joint,) = joints_of(piece_of(PLATE), ASSUMED)
    assert (len(joint.bolts), len(joint.lots), joint.field) == (6, 1, True)


def test_holes_that_mate_with_something_else_are_a_joint_of_their_own() -> None:
    web = '[[piece.holes]]\nname = "beam"\nx = "5\'"\nrows = 3\n'
    flange = '[[piece.holes]]\nname = "posts"\nface = "top"\nx = "2\'"\ngage = "3 1/2"\n'
    joints = joints_of(piece_of(web + flange), ASSUMED)
    assert [(joint.name, joint.field) for joint in joints] == [("beam", True), ("posts", True)]


def test_what_is_held_elsewhere_feels_the_web_off_centre() -> None:
    """W16X26: E of 3/16; read, it is known."""
    held = joints_of(example_piece(), ASSUMED, free=False)[-1]
    assert (held.free, held.mill, held.lots[0].off_across) == (False, 3 / 16, 0.0)
    known = joints_of(example_piece(), ASSUMED, free=False, web_off=0.125)[-1]
    assert (known.mill, known.lots[0].off_across) == (0.0, 0.125)
    assert joints_of(piece_of(SINGLE, stock="C12x20.7"), ASSUMED)[-1].mill == 0.0


def test_the_span_feels_tape_setting_and_supports() -> None:
    """By hand: 2 x (1/32² + 1/32²) + 1/16² = 8/1024."""
    span = span_of(example_piece(), ASSUMED)
    assert span is not None
    assert span.sigma == pytest.approx(sqrt(8 / 1024))
    welded = span_of(example_piece(ANGLES + 'to_web = "welded"\n'), ASSUMED)
    assert welded is not None
    assert welded.sigma == pytest.approx(sqrt(6 / 1024))
    assert span_of(piece_of(PLATE), ASSUMED) is None
    assert span_of(replace(example_piece(), fittings=()), ASSUMED) is None


def test_a_column_on_its_base_plate_goes_between_no_supports() -> None:
    plates = "".join(
        f'[[piece.end_plates]]\nend = "{end}"\nthickness = "3/4"\nwidth = "12"\nlength = "18"\nrows = 2\n'
        'gage = "5 1/2"\n'
        for end in ("left", "right")
    )
    column = piece_of(plates)
    kinds = (FittingKind.BASE_PLATE, FittingKind.CAP_PLATE)
    fittings = tuple(replace(one, kind=kind) for one, kind in zip(column.fittings, kinds, strict=True))
    assert span_of(column, ASSUMED) is not None
    assert span_of(replace(column, fittings=fittings), ASSUMED) is None
