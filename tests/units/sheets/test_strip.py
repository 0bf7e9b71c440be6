import pytest

from gageline.job import default_practice
from gageline.layout import lay_out
from gageline.part import Assembly, Cope, End, EndCut, Face, Part
from gageline.sheets import Circle, Item, Polygon, Polyline, Role
from gageline.sheets.strip import is_square_end, strip_items
from gageline.sheets.view import view_of
from gageline.units import System, parse_slope
from pieces import at, drilled, hole, piece

HEIGHT = 40.0


def drawn(part: Part, face: Face, *, slim: bool = False) -> list[Item]:
    laid = lay_out(Assembly(part, 1), default_practice(System.FT_IN), System.FT_IN).main
    view = view_of(laid, (face,), (20.0, 180.0), 90.0)
    return strip_items(view, face, HEIGHT, slim=slim)


def of_role(items: list[Item], role: Role) -> list[Polyline]:
    return [item for item in items if isinstance(item, Polyline) and item.role is role]


def test_a_cope_is_hatched_and_struck() -> None:
    cope = Cope(End.LEFT, Face.TOP, at('4"'), at('1 1/2"'), at('1/2"'))
    items = drawn(piece(copes=(cope,)), Face.NEAR)
    (waste,) = [item for item in items if isinstance(item, Polygon)]
    assert waste.hatch is not None
    assert min(y for _, y in waste.points) == pytest.approx(0.0)
    assert max(y for _, y in waste.points) == pytest.approx(1.5 / 15.7 * HEIGHT)
    struck = of_role(items, Role.MARK)
    assert len(struck) == 2  # its length and its depth
    assert len([item for item in drawn(piece(copes=(cope,)), Face.TOP) if isinstance(item, Polygon)]) == 1


def test_square_ends_are_outline_and_others_are_struck() -> None:
    assert of_role(drawn(piece(), Face.NEAR), Role.MARK) == []
    bevelled = piece(right=EndCut(parse_slope("2 in 12")))
    assert len(of_role(drawn(bevelled, Face.NEAR), Role.MARK)) == 1


def test_holes_and_slots_are_drawn_on_both_walls_they_go_through() -> None:
    group = drilled(Face.NEAR, hole('6"', '3"'), hole('9"', '3"', length='1 1/2"', angle=90), through=True)
    part = piece("HSS6X6X3/8", groups=(group,))
    for face in (Face.NEAR, Face.FAR):
        items = drawn(part, face)
        assert len([item for item in items if isinstance(item, Circle)]) == 1
        (slot,) = [item for item in items if isinstance(item, Polygon)]
        wide, high = (max(p[i] for p in slot.points) - min(p[i] for p in slot.points) for i in (0, 1))
        assert high / wide == pytest.approx(1.5 / (13 / 16))
    assert not [item for item in drawn(part, Face.TOP) if isinstance(item, Circle)]


@pytest.mark.parametrize(
    ("stock", "face", "hidden", "seen"),
    [
        ("W16X26", Face.NEAR, 0, 2),  # the edges of both flanges stand in front of the web
        ("W16X26", Face.TOP, 2, 0),  # the web is under the flange
        ("C8X11.5", Face.NEAR, 2, 0),  # seen from the back, the flanges are behind
        ("C8X11.5", Face.FAR, 0, 2),
        ("WT8X18", Face.NEAR, 0, 1),
        ("L6X4X1/2", Face.LEG_A, 1, 0),
        ("HSS6X6X3/8", Face.NEAR, 2, 0),
        ("HSS6.000X0.375", Face.NEAR, 0, 0),
        ("PL1/2X8", Face.FACE, 0, 0),
    ],
)
def test_what_meets_the_face_is_dashed_where_it_is_hidden(
    stock: str, face: Face, hidden: int, seen: int
) -> None:
    items = drawn(piece(stock, "1'-0"), face)
    assert len(of_role(items, Role.HIDDEN)) == hidden
    assert len(of_role(items, Role.THIN)) == seen
    assert of_role(drawn(piece(stock, "1'-0"), face, slim=True), Role.HIDDEN) == []


def test_a_pattern_named_like_an_end_is_still_a_pattern() -> None:
    part = piece(groups=(drilled(Face.NEAR, hole('6"', '3"'), name="left end"),))
    laid = lay_out(Assembly(part, 1), default_practice(System.FT_IN), System.FT_IN).main
    ours = [mark for mark in laid.on(Face.NEAR) if not is_square_end(part, mark)]
    assert {mark.for_ for mark in ours} == {"left end"}
