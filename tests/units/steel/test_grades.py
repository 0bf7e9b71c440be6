from __future__ import annotations

from itertools import pairwise

import pytest

from gageline.errors import ValueProblem
from gageline.steel import Measure, all_grades, grade
from gageline.units import Length


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("A992", "A992"), ("a36", "A36"), ("ASTM A572 Gr. 50", "A572-50"), ("A572 grade 50", "A572-50"),
        ("A500 Gr C", "A500-C"), ("a53b", "A53-B"), ("S275JR", "S275"), ("s355 J2", "S355"), ("S235", "S235"),
    ],
)  # fmt: skip
def test_grades_are_found_as_people_write_them(text: str, name: str) -> None:
    assert grade(text).name == name


def test_the_grades_asked_for_are_there() -> None:
    assert set(all_grades()) == {
        "A36", "A992", "A572-50", "A500-B", "A500-C", "A53-B", "S235", "S275", "S355",
    }  # fmt: skip
    assert {entry.system for entry in all_grades().values()} == set(Measure)


def test_ranges_follow_each_other_without_gap() -> None:
    for entry in all_grades().values():
        assert entry.ranges[0].over == Length(0)
        for before, after in pairwise(entry.ranges):
            assert before.to == after.over
            assert before.Fy >= after.Fy
        assert all(part.Fu > part.Fy for part in entry.ranges)


def test_an_unknown_grade_suggests_the_nearest() -> None:
    with pytest.raises(ValueProblem, match='grade "A991" is not in the table: did you mean A992'):
        grade("A991")


def test_a_grade_near_nothing_gets_the_list() -> None:
    with pytest.raises(ValueProblem, match='grade "mild" is not in the table: choose from A36, A992'):
        grade("mild")


def test_a_grade_is_not_made_thicker_than_it_is() -> None:
    with pytest.raises(ValueProblem, match='thickness 5" of A572-50 is more than the 4" it is made to'):
        grade("A572-50").strength(Length.from_inches(5))


def test_a_european_grade_speaks_in_millimetres() -> None:
    with pytest.raises(ValueProblem, match="thickness 300 mm of S275 is more than the 250 mm it is made to"):
        grade("S275").strength(Length.from_mm(300))


def test_a_thickness_of_nothing_is_refused() -> None:
    with pytest.raises(ValueProblem, match='thickness 0" of A36 is not above zero'):
        grade("A36").strength(Length(0))


def test_the_border_of_a_range_belongs_to_the_thinner_one() -> None:
    assert grade("A36").strength(Length.from_inches(8)) == (36, 58)
    assert grade("A36").strength(Length.from_inches(8) + Length(1)) == (32, 58)


def test_the_ordinary_strength_of_a_european_grade_is_that_of_three_to_sixteen_millimetres() -> None:
    assert grade("S275").Fu == grade("S275").strength(Length.from_mm(10))[1]
    assert grade("S275").Fy == pytest.approx(275 / 6.894757, rel=1e-6)
