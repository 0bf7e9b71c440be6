from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.errors import ValueProblem
from gageline.layout.holes import patterns
from gageline.layout.mark import Bench
from gageline.layout.setups import FaceSetups, Template, plan_setups
from gageline.part import Face, Hole, HoleGroup, in_order
from gageline.units import Length, System
from pieces import at, drilled, hole, piece

INCH = Length.from_inches(1)
THREES = Template(tuple(INCH * 3 * n for n in range(5)), 2)


def plan(places: list[tuple[int, int]], template: Template = THREES) -> tuple[FaceSetups, ...]:
    """The plan of one group of holes on a plate, by whole inches along and across."""
    holes = in_order(tuple(Hole(INCH * x, INCH * y, INCH, INCH) for x, y in places))
    part = piece("PL1/2X60", "40'", groups=(HoleGroup("plate", Face.FACE, holes),))
    return plan_setups(patterns(Bench(part, at("1/16"), System.FT_IN)), template)


def grid(columns: int, rows: int, pitch: int = 3, gage: int = 4) -> list[tuple[int, int]]:
    return [(6 + gage * i, 6 + pitch * j) for i in range(columns) for j in range(rows)]


@pytest.mark.parametrize(
    ("places", "by_hand", "with_template"),
    [
        (grid(1, 3), 4, 1),  # one line of three holes: a cross line and three rows, or one placing
        (grid(2, 4), 6, 1),  # both lines are carried across at once
        (grid(3, 4), 7, 2),  # two gage lines can be set, the third takes another placing
        (grid(2, 7), 9, 2),  # seven rows are more than the template's five
        (grid(1, 1), 2, 1),
        # 5 in pitch is none of the template's, but laid along it strikes the lines 12 in apart at once
        (grid(4, 2, pitch=5), 6, 3),
        ([(6, 6), (206, 6)], 3, 2),  # too far apart to set both lines
    ],
)
def test_both_plans_are_counted(places: list[tuple[int, int]], by_hand: int, with_template: int) -> None:
    (found,) = plan(places)
    assert (found.by_hand, found.with_template) == (by_hand, with_template)
    assert found.saving == by_hand - with_template


def test_rows_along_the_part_are_struck_with_the_template_laid_along() -> None:
    # ten holes at 3 in along a beam at two gage lines: five stations of the template at a placing
    (found,) = plan([(6 + 3 * i, y) for i in range(10) for y in (6, 9)])
    assert found.with_template == 2


def test_three_lines_are_shared_out_where_two_at_a_time_would_waste_one() -> None:
    # each line needs two placings of its own; two gage lines at a time make three placings of four
    three = Template((INCH * 0, INCH * 1), 2)
    rows = {6: (0, 3), 7: (0, 3), 8: (0, 3)}
    (found,) = plan([(x, 20 + y) for x, ys in rows.items() for y in ys], three)
    assert found.with_template == 4


def test_each_face_has_its_own_plan_and_the_same_holes() -> None:
    part = piece(
        groups=(
            drilled(Face.NEAR, hole("3", "12"), hole("3", "9"), name="left web"),
            drilled(Face.TOP, hole("4'", "1 3/4"), hole("4'", "-1 3/4"), name="top"),
        )
    )
    found = plan_setups(patterns(Bench(part, at("1/16"), System.FT_IN)), THREES)
    assert [(one.face, one.by_hand, one.with_template) for one in found] == [
        (Face.NEAR, 3, 1),
        (Face.TOP, 3, 1),
    ]


def test_a_part_without_holes_has_no_plan() -> None:
    assert plan_setups(patterns(Bench(piece(), at("1/16"), System.FT_IN)), THREES) == ()


def test_a_template_without_rows_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match="template rows are none: give at least one distance from the stop"
    ):
        Template((), 2)


def test_a_template_without_gage_lines_is_refused() -> None:
    with pytest.raises(ValueProblem, match="template gages 0 is less than 1: give how many lines can be set"):
        Template((INCH,), 0)


def test_sixty_scattered_holes_are_planned_exactly_and_soon() -> None:
    places = [(6 + (37 * n) % 97, 6 + (53 * n) % 41) for n in range(60)]
    (found,) = plan(places)
    assert 60 // 10 <= found.with_template <= 60


def brute(places: list[tuple[int, int]], rows: tuple[int, ...], gages: int) -> int:
    """The fewest placings by trying every choice of every placing, none left out beforehand."""
    reach = max(rows) - min(rows)
    possible = set()
    for turned in (1, -1):
        for along in (0, 1):
            for stop in range(-30, 60):
                struck = {stop + turned * row for row in rows}
                hit = [place for place in places if place[1 - along] in struck]
                lines = sorted({place[along] for place in hit})
                for size in range(1, gages + 1):
                    for chosen in combinations(lines, size):
                        if chosen[-1] - chosen[0] <= reach:
                            possible.add(frozenset(p for p in hit if p[along] in chosen))
    wanted = set(places)
    for count in range(1, len(places) + 1):
        if any(set().union(*choice) >= wanted for choice in combinations(possible, count)):
            return count
    raise AssertionError


@settings(max_examples=80, deadline=None)
@given(
    st.lists(st.tuples(st.integers(1, 9), st.integers(1, 9)), min_size=1, max_size=6, unique=True),
    st.sampled_from([(0, 1), (0, 1, 2), (0, 2), (0, 1, 3), (0, 3, 6)]),
    st.integers(1, 3),
)
def test_the_plan_is_as_short_as_brute_force_finds(
    places: list[tuple[int, int]], rows: tuple[int, ...], gages: int
) -> None:
    (found,) = plan(places, Template(tuple(INCH * row for row in rows), gages))
    assert found.with_template == brute(places, rows, gages)
