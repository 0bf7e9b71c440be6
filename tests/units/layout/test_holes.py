from __future__ import annotations

from dataclasses import replace

import pytest

from gageline.layout.holes import MIDDLE, centre_marks, centred_faces, hole_marks, patterns
from gageline.layout.mark import Bench, MarkKind, bench_of
from gageline.part import Face, Hole, HoleGroup, Opening, Part
from gageline.steel import HoleKind, find
from gageline.units import Length, System
from pieces import at, drilled, hole, piece

GRID = drilled(Face.NEAR, *(hole(x, y) for x in ("4 1/64", "7 1/64") for y in ("12.69", "9.69")))


def on_bench(part: Part) -> Bench:
    return Bench(part, at("1/16"), System.FT_IN)


def test_a_mating_pattern_is_rounded_at_its_reference_hole_only() -> None:
    (pattern,) = patterns(on_bench(piece(groups=(GRID,))))
    assert [column.x.text for column in pattern.columns] == ['4"', '7"']
    assert [row.text for row in pattern.rows] == ['3"', '6"']
    assert pattern.is_grid
    assert len(set(pattern.shifts)) == 1


def test_odd_spacing_of_a_mating_pattern_is_written_finer_than_the_tape() -> None:
    group = drilled(Face.NEAR, hole("4", "12.7"), hole("7 3/64", "12.7"))
    (mating,) = patterns(on_bench(piece(groups=(group,))))
    (alone,) = patterns(on_bench(piece(groups=(replace(group, mates=False),))))
    assert [column.x.text for column in mating.columns] == ['4"', '7 3/64"']
    assert [column.x.text for column in alone.columns] == ['4"', '7 1/16"']


def test_rows_run_from_the_heel_out_on_a_leg_and_from_near_to_far_on_a_flange() -> None:
    leg = drilled(Face.LEG_A, hole("3", "4"), hole("3", "2"), name="leg")
    (pattern,) = patterns(on_bench(piece("L6X4X1/2", groups=(leg,))))
    assert [row.text for row in pattern.rows] == ['2"', '4"']
    top = drilled(Face.TOP, hole("3", "1 3/4"), hole("3", "-1 3/4"))
    (pattern,) = patterns(on_bench(piece(groups=(top,))))
    assert [row.text for row in pattern.rows] == ['1 3/4" near', '1 3/4" far']


def test_a_pattern_with_a_hole_left_out_is_no_grid() -> None:
    group = replace(GRID, holes=GRID.holes[:3])
    (pattern,) = patterns(on_bench(piece(groups=(group,))))
    assert not pattern.is_grid
    assert [len(column.rows) for column in pattern.columns] == [2, 1]


def test_a_group_through_a_box_is_a_pattern_on_both_walls() -> None:
    group = drilled(Face.NEAR, hole("4", "3"), name="bolt", through=True)
    near, far = patterns(on_bench(piece("HSS6X6X3/8", groups=(group,))))
    assert (near.face, near.name) == (Face.NEAR, "bolt")
    assert (far.face, far.name) == (Face.FAR, "bolt, other wall")
    assert near.rows == far.rows


def test_a_group_on_a_face_the_section_has_not_is_left_to_the_rules() -> None:
    assert patterns(on_bench(piece("PL1/2X8", groups=(GRID,)))) == ()


def test_lines_centres_and_slot_ends_are_marked() -> None:
    group = drilled(
        Face.NEAR, hole("4", "12.7", length="1 13/16"), hole("4", "9.7", length="1 13/16", angle=90)
    )
    bench = on_bench(piece(groups=(group,)))
    marks = list(hole_marks(bench, patterns(bench)[0]))
    kinds = [mark.kind for mark in marks]
    assert [kinds.count(kind) for kind in (MarkKind.CROSS_LINE, MarkKind.ROW_LINE, MarkKind.HOLE)] == [
        1,
        2,
        2,
    ]
    ends = [(mark.x.text, mark.y.text) for mark in marks if mark.kind is MarkKind.SLOT_END]
    assert ends == [('3 1/2"', '3"'), ('4 1/2"', '3"'), ('4"', '6 1/2"'), ('4"', '5 1/2"')]
    assert {mark.size for mark in marks if mark.kind is MarkKind.HOLE} == {at("13/16")}


def test_the_middle_is_struck_where_a_pattern_or_an_opening_lies_about_it() -> None:
    about = drilled(Face.TOP, hole("4'-10", "1 3/4"), hole("5'-2", "1 3/4"))
    opening = Opening(Face.NEAR, at("5'"), at("7.7"), at("6"), at("6"), at("3"))
    part = piece(groups=(about, GRID), openings=(opening,))
    assert centred_faces(part) == (Face.TOP, Face.NEAR)
    marks = list(centre_marks(on_bench(part)))
    assert [(mark.face, mark.x.text, mark.for_) for mark in marks] == [
        (Face.TOP, "5'-0\"", MIDDLE),
        (Face.NEAR, "5'-0\"", MIDDLE),
    ]
    assert list(centre_marks(on_bench(piece(groups=(GRID,))))) == []


def test_a_pattern_in_millimetres_is_read_on_the_millimetre_side_of_the_tape() -> None:
    mm = Length.from_mm
    holes = tuple(Hole(mm(50), mm(300 - 90 - 70 * row), mm(22), mm(22)) for row in range(3))
    group = HoleGroup("web", Face.NEAR, holes, "M20", HoleKind.STD)
    part = Part("M1", find("IPE 300"), "S275", mm(4200), groups=(group,))
    (found,) = patterns(Bench(part, Length.from_inches(0.0625), System.FT_IN))
    assert [row.text for row in found.rows] == ["90 mm", "160 mm", "230 mm"]
    assert found.columns[0].x.text == "50 mm"
    (finer,) = patterns(Bench(part, Length.from_inches(1 / 64), System.FT_IN))
    assert finer.rows[0].text == "90 mm"


def test_a_pattern_in_inches_keeps_its_spacing_on_a_piece_that_is_read_in_millimetres() -> None:
    group = drilled(Face.NEAR, hole("4", "12.7"), hole("6 1/16", "12.7"), name="web")
    part = replace(piece(groups=(group,)), length=Length.from_mm(3000))
    bench = bench_of(part, at("1/16"), System.FT_IN)
    assert bench.x(part.length).text == "3000 mm"
    (found,) = patterns(bench)
    assert [column.x.text for column in found.columns] == ['4"', '6 1/16"']


def test_a_spacing_a_tick_off_a_sixty_fourth_is_read_in_inches() -> None:
    first = hole("4", "12.7")
    group = drilled(
        Face.NEAR,
        first,
        replace(hole("9 3/8", "12.7"), x=first.x + at("5 3/8") - Length(1)),
        name="for a beam",
    )
    (found,) = patterns(on_bench(piece(groups=(group,))))
    assert [column.x.text for column in found.columns] == ['4"', '9 3/8"']


@pytest.mark.parametrize(
    ("system", "wanted"), [(System.FT_IN, ("3", "6")), (System.MM, ("76.2 mm", "152.4 mm"))]
)
def test_spacings_of_a_slope_are_put_on_the_finest_division(system: System, wanted: tuple[str, str]) -> None:
    first = hole("4", "12.69")
    ticks = (Length(0), Length(487_575), Length(975_150))  # 105 ticks short of 3 in, and twice that of 6 in
    holes = tuple(replace(first, x=first.x + step, y=first.y - step) for step in ticks)
    group = HoleGroup("web", Face.NEAR, holes, "3/4", HoleKind.STD)
    (found,) = patterns(
        Bench(piece(groups=(group,)), at("1/16" if system is System.FT_IN else "1 mm"), system)
    )
    for steps in (found.rows, [column.x for column in found.columns]):
        assert [step.tape - steps[0].tape for step in steps[1:]] == [at(text) for text in wanted]


def test_the_ends_of_a_slot_at_an_angle_are_on_the_tape() -> None:
    group = drilled(Face.NEAR, hole("4", "12.7", length="1 13/16", angle=30))
    bench = on_bench(piece(groups=(group,)))
    ends = [m for m in hole_marks(bench, patterns(bench)[0]) if m.kind is MarkKind.SLOT_END]
    assert [(mark.x.text, mark.y.text) for mark in ends] == [('3 9/16"', '3 1/4"'), ('4 7/16"', '2 3/4"')]
