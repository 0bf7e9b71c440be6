from __future__ import annotations

from gageline.job.axes import hung, into, minus, standing
from gageline.part import End, Face, Placement
from gageline.units import ZERO, Length


def test_into_an_end_points_away_from_it() -> None:
    assert into(End.LEFT) == (1, 0, 0)
    assert into(End.RIGHT) == minus(into(End.LEFT))


def test_a_fitting_hung_the_right_way_runs_down() -> None:
    corner = (Length(1), Length(2), Length(3))
    placement, down = hung((0, 0, -1), (-1, 0, 0), corner, Length(10))
    assert down is False
    assert placement == Placement((Length(1), Length(-8), Length(3)), (0, 1, 0), (0, 0, -1))
    placement, down = hung((0, 0, 1), (-1, 0, 0), corner, Length(10))
    assert down is True
    assert placement == Placement(corner, (0, -1, 0), (0, 0, 1))


def test_a_standing_plate_has_its_thickness_about_its_foot() -> None:
    placement = standing(Face.NEAR, (0, -1, 0), (Length(100), Length(50), ZERO), Length(8))
    front = placement.point((ZERO, ZERO, ZERO))
    back = placement.point((ZERO, ZERO, Length(-8)))
    assert {front[0], back[0]} == {Length(96), Length(104)}
    assert placement.ey == (0.0, 0.0, 1.0)
