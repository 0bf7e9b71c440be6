from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from gageline.part import SAME, EndCut, Face, Part, content_of, same_steel
from gageline.units import Length, Slope
from pieces import drilled, hole, piece

PLATE = piece(
    "PL3/8X6", "9", "", groups=(drilled(Face.FACE, hole("2", "1"), hole("2", "4"), hole("5", "1")),)
)


def off(part: Part, *ticks: int) -> Part:
    """The plate with its holes moved along it by so many ticks, and put in order again."""
    (group,) = part.groups
    holes = [one.moved(Length(by)) for one, by in zip(group.holes, ticks, strict=True)]
    holes.sort(key=lambda one: (one.x, -one.y))
    return replace(part, groups=(replace(group, holes=tuple(holes)),))


def test_a_part_is_the_same_steel_as_itself() -> None:
    assert same_steel(PLATE, PLATE)


@pytest.mark.parametrize(("ticks", "same"), [((SAME, 0, -SAME), True), ((0, SAME + 1, 0), False)])
def test_a_few_ticks_make_no_other_steel(ticks: tuple[int, ...], same: bool) -> None:
    assert same_steel(PLATE, off(PLATE, *ticks)) is same


def test_holes_that_a_tick_puts_in_another_order_are_the_same_holes() -> None:
    upper_first, lower_first = off(PLATE, 1, 0, 0), off(PLATE, 0, 1, 0)
    orders = [[one.y for one in part.groups[0].holes] for part in (upper_first, lower_first)]
    assert orders[0] != orders[1]
    assert same_steel(upper_first, lower_first)


def test_two_holes_have_no_single_counterpart() -> None:
    (group,) = PLATE.groups
    first, second, _ = group.holes
    twice = replace(PLATE, groups=(replace(group, holes=(first, first, second)),))
    once = replace(PLATE, groups=(replace(group, holes=(first, second, second)),))
    assert not same_steel(twice, once)


@pytest.mark.parametrize(
    "changed",
    [
        replace(PLATE, grade="A572-50"),
        replace(PLATE, stock=piece("PL1/2X6", "9", "").stock),
        replace(PLATE, groups=()),
        replace(PLATE, left=EndCut(Slope(Fraction(1, 1000)))),
    ],
)
def test_other_steel_is_told_apart(changed: Part) -> None:
    assert not same_steel(PLATE, changed)


def test_a_lean_of_less_than_ticks_makes_no_other_steel() -> None:
    assert same_steel(
        replace(PLATE, left=EndCut(Slope(Fraction(1, 10)))),
        replace(PLATE, left=EndCut(Slope(Fraction(1, 10) + Fraction(1, 10**6)))),
    )


def test_the_text_of_a_part_stays_for_a_few_ticks_and_whatever_it_is_called() -> None:
    (group,) = PLATE.groups
    called = replace(PLATE, mark="p1", groups=(replace(group, name="for the plate"),))
    for part in (called, off(PLATE, SAME, 0, -SAME), off(PLATE, 0, 1, 0)):
        assert content_of(part) == content_of(PLATE)


def test_what_a_part_does_not_have_is_not_in_its_text() -> None:
    assert "groups" in content_of(PLATE)
    assert "copes" not in content_of(PLATE)
    assert "groups" not in content_of(replace(PLATE, groups=()))


def test_the_text_of_other_steel_is_another() -> None:
    others = (
        replace(PLATE, grade="A572-50"),
        piece("PL1/2X6", "9", "", groups=PLATE.groups),
        off(PLATE, 0, 0, 2540),
        replace(PLATE, left=EndCut(Slope(Fraction(1, 100)))),
    )
    assert len({content_of(part) for part in (PLATE, *others)}) == 5
