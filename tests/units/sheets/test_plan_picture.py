"""Lines of a plan: grid, members, columns, openings."""

import pytest

from gageline.sheets import Box, Circle, Ink, Line, Polygon, Role
from gageline.sheets.plan_members import FREE, PlanBeam, PlanColumn, PlanLevel
from gageline.sheets.plan_picture import Picture, picture_of
from gageline.sheets.plan_regions import Region
from gageline.sheets.plan_signs import PlanView
from gageline.steel import Section, find

GRID = ({"1": 0.0, "2": 200.0, "9": 900.0}, {"A": 0.0})
VIEW = PlanView(Region(-10, -10, 210, 110), 0.5, 20.0, 80.0)
FRAME = Box(10.0, 10.0, 140.0, 90.0)


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


def beam(
    start: tuple[float, float],
    finish: tuple[float, float],
    kinds: tuple[str, str] = ("single plate", "single plate"),
    slope: float = 0.0,
    *,
    turned: bool = False,
) -> PlanBeam:
    ends = (start, finish)
    return PlanBeam(
        "B", "B", section("W16x26"), start, finish, ends, kinds, (0.0, 0.0), slope, (0.0, 0.0), 0.0, turned
    )


def drawn(
    beams: tuple[PlanBeam, ...] = (),
    columns: tuple[PlanColumn, ...] = (),
    openings: tuple[tuple[tuple[tuple[float, float], ...], str], ...] = (),
    bearings: tuple[tuple[float, float], ...] = (),
) -> Picture:
    return picture_of(PlanLevel("L", 0.0, beams, columns, bearings), VIEW, FRAME, GRID, openings)


def lines(picture: Picture, role: Role) -> list[Line]:
    return [item for item in picture.items if isinstance(item, Line) and item.role is role]


def rings(picture: Picture) -> list[Circle]:
    return [item for item in picture.items if isinstance(item, Circle) and item.fill is Ink.WHITE]


def dots(picture: Picture) -> list[Circle]:
    return [item for item in picture.items if isinstance(item, Circle) and item.fill is Ink.BLACK]


@pytest.mark.parametrize("turned", [False, True])
def test_a_dot_stands_by_the_left_end_of_the_piece(*, turned: bool) -> None:
    (dot,) = dots(drawn((beam((0, 50), (200, 50), turned=turned),)))
    assert (dot.x, dot.y) == pytest.approx((125 - 5.2 if turned else 25 + 5.2, 50))


def test_no_dot_where_the_line_is_too_short_or_its_left_end_is_on_another_part() -> None:
    assert not dots(drawn((beam((0, 50), (20, 50)),)))
    assert not dots(drawn((beam((0, 50), (600, 50), turned=True),)))


def test_grid_lines_of_this_part_only() -> None:
    grid = lines(drawn(), Role.CENTRE)
    assert sorted((g.x1, g.x2) for g in grid) == [(10.0, 140.0), (25.0, 25.0), (125.0, 125.0)]


def test_a_member_is_drawn_off_its_supports_with_a_sign_at_each_end() -> None:
    picture = drawn((beam((0, 50), (200, 50)),))
    ((_, (one, two)),) = picture.lines
    # a ring of 0.8 mm radius stands before the line, which begins 1.7 mm from the support
    assert one == pytest.approx((25 + 1.7, 50))
    assert two == pytest.approx((125 - 1.7, 50))
    assert len(rings(picture)) == 2
    assert len(picture.solids) == 2


def test_a_member_that_goes_on_past_the_match_line_is_cut_there_without_a_sign() -> None:
    picture = drawn((beam((0, 50), (600, 50)),))
    ((_, (_, two)),) = picture.lines
    assert two[0] == pytest.approx(VIEW.x(210))
    assert len(rings(picture)) == 1


def test_a_member_elsewhere_is_not_drawn() -> None:
    assert drawn((beam((400, 50), (600, 50)),)).lines == []


@pytest.mark.parametrize(("slope", "way"), [(0.02, -1.0), (-0.02, 1.0)])
def test_the_arrow_of_a_sloping_member_points_down(slope: float, way: float) -> None:
    picture = drawn((beam((0, 50), (200, 50), slope=slope),))
    (head,) = (item for item in picture.items if isinstance(item, Polygon))
    tip, *back = head.points
    assert (tip[0] - back[0][0]) * way > 0


def test_a_free_end_has_a_stroke_across() -> None:
    picture = drawn((beam((0, 50), (200, 50), ("single plate", FREE)),))
    strokes = [line for line in lines(picture, Role.FRAME) if line.x1 == pytest.approx(line.x2)]
    assert [line.x1 for line in strokes] == [pytest.approx(125.0)]


def test_columns_and_bearings_keep_labels_off() -> None:
    column = PlanColumn("P", "P", section("W10x49"), (0.0, 0.0), (1.0, 0.0), below=False)
    picture = drawn(columns=(column,), bearings=((200.0, 0.0),))
    assert len(picture.solids) == 1
    assert picture.solids[0].centroid.coords[0] == pytest.approx(VIEW.at((0.0, 0.0)))
    assert sum(isinstance(item, Polygon) for item in picture.items) == 2


def test_an_opening_is_crossed_and_named_in_its_middle() -> None:
    corners = ((50.0, 20.0), (100.0, 20.0), (100.0, 60.0), (50.0, 60.0))
    picture = drawn(openings=((corners, "Stair"),))
    crossing = lines(picture, Role.THIN)
    ends = {((line.x1, line.y1), (line.x2, line.y2)) for line in crossing}
    at = VIEW.at
    assert ends == {(at(corners[0]), at(corners[2])), (at(corners[1]), at(corners[3]))}
    (label,) = picture.labels
    assert label.runs[0][0] == "Stair"
    assert label.targets == (at((75.0, 40.0)),)


def test_an_opening_on_another_part_is_not_drawn() -> None:
    corners = ((500.0, 20.0), (600.0, 20.0), (600.0, 60.0), (500.0, 60.0))
    assert drawn(openings=((corners, "Stair"),)).labels == []


def test_labels_keep_off_the_edges_of_an_opening() -> None:
    picture = drawn(openings=((((0.0, 0.0), (40.0, 0.0), (40.0, 60.0), (0.0, 60.0)), "Stair"),))
    edges = [stroke for stroke in picture.strokes if stroke.is_ring]
    assert [edge.bounds for edge in edges] == [
        (VIEW.x(0.0), VIEW.y(60.0), VIEW.x(40.0), VIEW.y(0.0)),
    ]
