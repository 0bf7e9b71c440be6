"""Rows, columns and places of holes as they are read off fittings."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.part import Fitting, HoleGroup
from gageline.steel import HoleKind
from gageline.strength import bolt_steel
from gageline.strength.aisc360.j3_bolts import Hole
from gageline.strength.reading import bolted, dot, grid_of, holes_of, places_of, reach
from jobs import fitting_of, inches, piece_of

STEEL = bolt_steel("A325-N")
ANGLES = 'angles = [{ end = "left", stock = "L4x3-1/2x5/16", rows = 3, drop = "3 1/2" }]'


def angle() -> tuple[Fitting, HoleGroup]:
    fitting = fitting_of(piece_of(ANGLES), "left near angle")
    return fitting, next(group for group in fitting.part.groups if group.name == "outstanding leg")


def moved(group: HoleGroup, number: int, x: str, y: str) -> HoleGroup:
    hole = group.holes[number].moved(inches(x), inches(y))
    holes = tuple(hole if n == number else old for n, old in enumerate(group.holes))
    return replace(group, holes=holes)


def test_a_grid_from_its_upper_end() -> None:
    fitting, group = angle()
    part = replace(fitting.part, length=inches("9"))
    for down, first, beyond in ((True, 1.25, 1.75), (False, 1.75, 1.25)):
        grid = grid_of(part, group, upright=True, down=down)
        assert [row.inches for row in grid.rows] == [first, first + 3, first + 6]
        assert grid.beyond.inches == beyond
    assert [column.inches for column in grid.columns] == [2.5]


def test_uneven_pitches_are_kept_one_by_one() -> None:
    fitting, group = angle()
    shifted = moved(group, 1, "1/2", "0")
    joint = bolted(shifted, grid_of(fitting.part, shifted, upright=True, down=True), STEEL, 2.5, 1.5, None)
    assert joint.uneven == (3.5, 2.5)
    assert (joint.pitch, joint.span) == (2.5, 6.0)
    assert joint.places == (0.0, 3.5, 6.0)


def test_staggered_bolts_are_refused() -> None:
    fitting, group = angle()
    with pytest.raises(ValueProblem, match="staggered bolts are not covered"):
        grid_of(fitting.part, moved(group, 1, "0", "1/2"), upright=True, down=True)


def test_holes_for_no_bolt_are_refused() -> None:
    fitting, group = angle()
    grid = grid_of(fitting.part, group, upright=True, down=True)
    with pytest.raises(ValueProblem, match="are for no bolt of a table"):
        bolted(replace(group, bolt=""), grid, STEEL, 2.5, 1.5, None)


def test_slots_lie_along_or_across_the_reaction() -> None:
    _, group = angle()
    slot = replace(group.holes[0], width=inches("13/16"), length=inches("1"))
    along = holes_of(slot, HoleKind.SSL, upright=True)
    assert (along.kind, along.along, along.across) == (Hole.SHORT_PARALLEL, 1.0, 0.8125)
    across = holes_of(slot, HoleKind.SSL, upright=False)
    assert (across.kind, across.along, across.across) == (Hole.SHORT_PERPENDICULAR, 0.8125, 1.0)
    with pytest.raises(ValueProblem, match="a slot at 30 degrees"):
        holes_of(replace(slot, angle=Fraction(30)), HoleKind.SSL, upright=True)


def test_where_a_fitting_reaches_and_its_holes_are() -> None:
    """Projection 1/2 in: the 3 1/2-in leg runs from -1/2 to 3 in; its holes are 2 - 1/2 in along."""
    fitting, _ = angle()
    assert reach(fitting, (1.0, 0.0, 0.0)) == (-0.5, 3.0)
    web = next(group for group in fitting.part.groups if group.name == "web leg")
    assert {place[0].inches for place in places_of(fitting, web)} == {1.5}
    assert dot((1.0, 2.0, 3.0), (4.0, 5.0, 6.0)) == 32.0
