from dataclasses import replace

import pytest

from gageline.part import Face, foot
from gageline.sheets.measured import measure, shows
from gageline.sheets.notation import Scribe
from gageline.sheets.sight import BOTTOM, ELEVATION, TOP
from gageline.units import System
from jobs import piece_of
from pieces import at, leaning_aside, leaning_plate, piece

FEET = Scribe(System.FT_IN, at("1/16"))
ANGLES = '[[piece.angles]]\nend = "both"\nstock = "L4x3-1/2x5/16"\nrows = 3\nprojection = "1/2"\n'


def test_a_centred_pattern_is_read_from_the_left_end() -> None:
    # common practice, no source: 1'-4 1/2" long, 4" gage about its centre, lines at 6 1/4" and 10 1/4"
    holes = '[[piece.holes]]\nname = "web"\nfrom = "centre"\ncolumns = 2\nspacing = "4"\nrows = 3\n'
    piece = piece_of(holes, stock="W16x26", length='"1\'-4 1/2"')
    found = measure(piece, ELEVATION, FEET)
    assert [text for _, text in found.stations] == ['0"', '6 1/4"', '10 1/4"', "1'-4 1/2\""]
    assert [row.text for row in found.left] == ['3"', '6"', '9"']
    assert found.right == ()


def test_rows_are_read_at_the_end_they_are_near() -> None:
    beam = piece_of(ANGLES)
    found = measure(beam, ELEVATION, FEET)
    assert [row.text for row in found.left] == [row.text for row in found.right] == ['3"', '6"', '9"']
    assert {note.text for note in found.notes} == {
        '3 Ø13/16"',
        f"{beam.fittings[0].part.mark} near and far side",
    }
    assert found.datum == 15.7


def test_a_group_between_the_ends_says_its_rows_itself() -> None:
    holes = '[[piece.holes]]\nname = "{0}"\nx = "{1}"\nrows = 2\ndown = "{2}"\n'
    lines = holes.format("end", "2", "3") + holes.format("hanger", "4'-0", "5")
    found = measure(piece_of(lines), ELEVATION, FEET)
    assert [note.text for note in found.notes] == ['2 Ø13/16"', '2 Ø13/16", 5", 8" down']


def test_a_flange_plan_is_drawn_where_it_has_something_to_say() -> None:
    holes = '[[piece.holes]]\nname = "top"\nface = "top"\nx = "12"\ngage = "3"\n'
    piece = piece_of(holes)
    assert (shows(piece, TOP), shows(piece, BOTTOM)) == (True, False)
    found = measure(piece, TOP, FEET)
    assert [text for _, text in found.stations] == ['0"', "1'-0\"", "10'-0\""]
    assert [note.text for note in found.notes] == ['2 Ø13/16", gage 3"']
    assert measure(piece, BOTTOM, FEET).stations == ()


def test_an_angle_unfolds_to_its_lying_leg() -> None:
    piece = piece_of(stock="L4x3x1/4")
    assert (shows(piece, TOP), shows(piece, BOTTOM)) == (False, True)


def test_copes_point_at_their_corner() -> None:
    found = measure(
        piece_of('copes = [{ end = "right", flange = "top", length = "4", depth = "2" }]'), ELEVATION, FEET
    )
    (note,) = found.notes
    assert note.text == 'top cope 4" x 2", R 1/2"'
    assert abs(note.at[0] - 116) < 0.2
    assert abs(note.at[1] - 13.7) < 0.2


def test_a_plate_between_the_ends_says_how_far_down_it_stands_and_a_fitted_stiffener_does_not() -> None:
    plate = (
        '[[piece.plates]]\non = "far"\nx = "4\'-0"\nthickness = "3/8"\nwidth = "4"\nrows = 3\ndrop = "5"\n'
    )
    stiffener = '[[piece.stiffeners]]\nx = "7\'-0"\nthickness = "3/8"\n'
    beam = piece_of(plate + stiffener)
    notes = [note.text for note in measure(beam, ELEVATION, FEET).notes]
    p1, s1 = dict.fromkeys(fitting.part.mark for fitting in beam.fittings)
    # first row 5 in down, end distance 1 1/4: the plate's top is 3 3/4 down
    assert f'{p1} far side, top 3 3/4" down' in notes
    assert f"{s1} near and far side" in notes


def test_a_plate_on_a_wall_says_how_far_off_its_middle_it_stands() -> None:
    plate = '[[piece.plates]]\non = "top"\nx = "4\'-0"\nthickness = "3/8"\nwidth = "4"\nrows = 3\n'
    middle = piece_of(plate, stock="HSS6x6x3/8")
    mark = middle.fittings[0].part.mark
    assert [note.text for note in measure(middle, TOP, FEET).notes] == [mark]
    aside = piece_of(f'{plate}offset = "-1/2"\n', stock="HSS6x6x3/8")
    assert [note.text for note in measure(aside, TOP, FEET).notes] == [f'{mark}, 1/2" far of middle']


def test_a_leaning_plate_is_measured_where_it_touches_and_says_how_it_leans() -> None:
    plate = leaning_plate(1)
    found = measure(replace(piece_of(), fittings=(plate,)), ELEVATION, FEET)
    low, high = foot(plate, piece().stock)
    (note,) = found.notes
    assert note.text == 'p1 near side, top 3 11/16" down, leans 9 in 12 to the right'
    assert note.at[0] == ((low + high) / 2).inches
    assert [text for _, text in found.stations][1] == "5'-0 1/4\""


def test_a_plate_that_leans_across_says_where_its_foot_is_and_which_way_it_leans() -> None:
    column = piece_of(stock="HSS6x6x3/8")
    above = measure(replace(column, fittings=(leaning_aside(Face.TOP, 1),)), TOP, FEET)
    (note,) = above.notes
    assert note.text == 'p1, 1/4" near of middle, leans 9 in 12 to the near side'
    assert abs(note.at[1]) == pytest.approx(0.375 / 0.8, abs=1e-3)
    (note,) = measure(replace(column, fittings=(leaning_aside(Face.FAR, -1),)), ELEVATION, FEET).notes
    assert note.text == 'p1 far side, top 2 9/16" down, leans 9 in 12 to the bottom'
