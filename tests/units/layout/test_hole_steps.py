from dataclasses import replace

from gageline.layout.hole_steps import centre_step, opening_step, pattern_steps
from gageline.layout.holes import patterns
from gageline.layout.mark import Bench
from gageline.layout.step import Step
from gageline.part import Face, HoleGroup, Opening
from gageline.units import System
from pieces import at, drilled, hole, piece

GRID = drilled(Face.NEAR, *(hole(x, y) for x in ("4", "8") for y in ("12.7", "9.7")), name="left web")


def steps(group: HoleGroup, stock: str = "W16X26") -> list[Step]:
    bench = Bench(piece(stock, groups=(group,)), at("1/16"), System.FT_IN)
    return [step for pattern in patterns(bench) for step in pattern_steps(bench, pattern)]


def test_a_grid_is_cross_lines_rows_and_punch() -> None:
    lines, rows, punch = steps(GRID)
    assert [step.title for step in (lines, rows, punch)] == [
        "left web: cross lines", "left web: rows", "left web: punch and drill",
    ]  # fmt: skip
    assert [reading.text for reading in lines.readings] == ['4"', '8"']
    assert lines.text == "Strike 2 cross lines."
    assert lines.check == 'First to last 4". Last to the right end 9\'-4".'
    assert [reading.text for reading in rows.readings] == ['3"', '6"']
    assert rows.text == "Mark 2 rows from the top edge, on every cross line."
    assert rows.check == 'First to last 3". Last to the bottom edge 9 11/16".'
    assert punch.text == 'Punch 4 points. Drill 13/16".'
    assert punch.check == 'Both diagonals, corner hole to corner hole, 5".'


def test_a_pattern_that_is_no_grid_has_its_rows_line_by_line() -> None:
    found = steps(replace(GRID, holes=GRID.holes[:3]))
    assert [step.title for step in found[1:3]] == ['left web: rows at 4"', 'left web: rows at 8"']
    assert found[1].text == 'Mark 2 rows from the top edge, on the line at 4".'
    assert found[2].text == 'Mark 1 row from the top edge, on the line at 8".'
    assert found[2].check == "From it to the bottom edge 1'-0 11/16\"."
    assert found[3].check == 'First hole to last hole 4".'


def test_rows_on_a_flange_are_checked_from_the_near_edge_through_the_middle() -> None:
    group = drilled(Face.TOP, hole("4", "1 3/4"), hole("4", "-1 3/4"), name="top")
    _, rows, punch = steps(group)
    assert rows.from_ == "centre line"
    assert [reading.text for reading in rows.readings] == ['1 3/4" near', '1 3/4" far']
    assert rows.check == 'First to last 3 1/2". First to the near edge 1".'
    assert punch.check == 'First hole to last hole 3 1/2".'


def test_one_hole_is_checked_from_the_right_end() -> None:
    lines, rows, punch = steps(drilled(Face.LEG_A, hole("4", "2"), name="leg"), "L6X4X1/2")
    assert lines.text == "Strike 1 cross line."
    assert lines.check == punch.check == "From it to the right end 9'-8\"."
    assert (rows.from_, rows.check) == ("heel", 'From it to the toe 4".')


def test_slots_are_punched_at_both_ends_and_say_which_way_they_lie() -> None:
    group = drilled(
        Face.NEAR,
        hole("4", "12.7", length="1"),
        hole("8", "12.7", length="1", angle=90),
        hole("12", "12.7", length="1", angle=30),
    )
    assert steps(group)[-1].text == (
        'Punch 9 points, slots at both ends too. Slot 13/16" x 1", long way along and Slot 13/16" x 1", '
        'long way across and Slot 13/16" x 1", long way at 30°.'
    )


def test_the_middle_is_checked_from_the_other_end() -> None:
    step = centre_step(Bench(piece(length="10'-0 1/8"), at("1/16"), System.FT_IN), Face.TOP)
    assert step.text == "Strike the middle of the length at 5'-0 1/16\"."
    assert step.check == "From the right end 5'-0 1/16\"."


def test_a_rectangular_opening_is_struck_by_its_four_edges() -> None:
    bench = Bench(piece(), at("1/16"), System.FT_IN)
    opening = Opening(Face.NEAR, at("5'"), at("7.7"), at("8"), at("6"), at("1/2"))
    step = opening_step(bench, opening, Face.NEAR, "opening 1")
    assert [reading.text for reading in step.readings] == ["4'-8\"", "5'-4\"", '5"', '11"']
    assert step.text == (
        'Strike its edges, 8" along and 6" across. Punch the corners for 1/2" radius, 1/2" in from both '
        "edges. Cut."
    )
    assert step.check == 'Diagonals 10"; centre to the right end 5\'-0".'
    sharp = opening_step(bench, replace(opening, radius=at("0")), Face.NEAR, "opening 1")
    assert sharp.text == 'Strike its edges, 8" along and 6" across. Cut.'


def test_a_round_opening_is_struck_from_its_centre() -> None:
    bench = Bench(piece(), at("1/16"), System.FT_IN)
    step = opening_step(
        bench, Opening(Face.NEAR, at("5'"), at("7.7"), at("6"), at("6"), at("3")), Face.NEAR, "opening 1"
    )
    assert step.text == 'Punch the centre at 5\'-0" and 8"; scribe a circle of 3" radius. Cut.'
    assert step.check == 'Centre to the right end 5\'-0", to the bottom edge 7 11/16".'
