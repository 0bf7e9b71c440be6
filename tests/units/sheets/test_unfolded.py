import pytest
from shapely import Point

from gageline.errors import ValueProblem
from gageline.job import default_practice
from gageline.layout import PartLayout, lay_out
from gageline.part import Assembly, Cope, End, Face, Part
from gageline.sheets import Arc, Box, Item, Level, Polyline, Role, Text, extent, leaves, text_box, texts
from gageline.sheets.unfolded import balloon, face_name, unfolded_blocks, unfolded_stick
from gageline.steel import Profile
from gageline.units import System
from pieces import at, drilled, hole, piece

BOX = Box(15.0, 20.0, 205.0, 250.0)


def laid(part: Part, system: System = System.FT_IN) -> PartLayout:
    return lay_out(Assembly(part, 1), default_practice(system), system).main


WEB = drilled(Face.NEAR, hole('1 1/2"', '12 11/16"'), hole('1 1/2"', '9 11/16"'), name="left end web")
BEAM = laid(
    piece(
        length="18'-7 1/4",
        groups=(WEB,),
        copes=(
            Cope(End.LEFT, Face.TOP, at('4"'), at('1 1/2"'), at('1/2"')),
            Cope(End.RIGHT, Face.BOTTOM, at('5"'), at('2"'), at('1/2"')),
        ),
    )
)


def words(items: tuple[Item, ...]) -> list[str]:
    return [text.text for text in texts(items)]


def test_every_face_is_named_and_every_reading_stands_beside_its_mark() -> None:
    said = words(unfolded_stick(BEAM, BOX))
    assert [name for name in said if name in {"Top flange", "Near web", "Bottom flange"}] == [
        "Top flange",
        "Near web",
        "Bottom flange",
    ]
    assert "Far web: nothing to mark" in said
    for reading in ('4"', '1 1/2"', '3"', '6"', "18'-2 1/4\"", "18'-7 1/4\"", '2" up'):
        assert reading in said


@pytest.mark.parametrize(
    ("stock", "shown", "slim"),
    [
        ("W16X26", "Near web", "Top flange"),
        ("HSS6X6X3/8", "Near wall", "Top wall"),
        ("L6X4X1/2", "Leg A", "Leg B"),
        ("PL1/2X8", "Marked face", ""),
    ],
)
def test_a_piece_with_nothing_to_mark_is_shown_whole_as_it_is_laid_to_be_checked(
    stock: str, shown: str, slim: str
) -> None:
    plain = laid(piece(stock, "24'"))
    found = unfolded_blocks(plain, 190.0, 240.0)
    said = [text.text for block in found for text in texts(block.items)]
    assert shown in said
    assert not slim or f"{slim}: nothing to mark" in said
    assert f"Lay it {shown[0].lower()}{shown[1:]} up." in plain.steps[0].text
    assert sum(block.height for block in found) < 90  # it is 24 ft long on 190 mm: its depth asks for little
    lines = [item for block in found for item, _, _ in leaves(block.items) if isinstance(item, Polyline)]
    assert not any(line.role is Role.BREAK for line in lines)


def test_it_stays_inside_its_box_wherever_that_is() -> None:
    found = extent(unfolded_stick(BEAM, BOX))
    assert BOX.left - 1e-6 <= found.left
    assert found.right <= BOX.right + 1e-6
    assert BOX.top - 1e-6 <= found.top
    assert found.bottom <= BOX.bottom + 1e-6
    moved = extent(unfolded_stick(BEAM, Box(115.0, 20.0, 305.0, 250.0)))
    assert moved.left - found.left == pytest.approx(100.0)


def test_a_box_too_low_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"the unfolded B1 needs \d+ mm and has 60 mm"):
        unfolded_stick(BEAM, Box(15.0, 20.0, 205.0, 80.0))


def test_the_numbers_of_the_steps_stand_at_the_marks_they_make() -> None:
    steps = {step.title: step.number for step in BEAM.steps}
    said = [text.strip() for text in words(unfolded_stick(BEAM, BOX))]
    first = steps["left end web: cross lines"]
    assert f"{first}-{first + 2}" in said
    assert said.count(str(steps["Left top cope"])) == 2  # on the web and on the flange


def test_faces_without_marks_are_slim() -> None:
    heights = [block.height for block in unfolded_blocks(BEAM, 190.0, 230.0)]
    assert heights[3] < min(heights[:3])


def test_a_bare_part_still_shows_its_length() -> None:
    assert "10'-0\"" in words(unfolded_stick(laid(piece()), BOX))
    assert "3048" in words(unfolded_stick(laid(piece(), System.MM), BOX))


def test_marks_are_the_widest_lines_and_break_marks_are_there() -> None:
    roles = [item.role for item, _, _ in leaves(unfolded_stick(BEAM, BOX)) if isinstance(item, Polyline)]
    assert Role.MARK in roles
    assert Role.BREAK in roles


def test_walls_of_hollow_sections_are_called_walls() -> None:
    assert face_name(Profile.BOX, Face.NEAR) == "Near wall"
    assert face_name(Profile.I_SHAPE, Face.NEAR) == "Near web"
    assert face_name(Profile.ANGLE, Face.LEG_B) == "Leg B"


@pytest.mark.parametrize("number", [" 4 ", " 12 ", " 10-12 "])
@pytest.mark.parametrize("rotation", [0.0, 90.0])
def test_a_ring_goes_round_its_number(number: str, rotation: float) -> None:
    text, *ring = balloon(Text(50, 50, number, level=Level.MIDDLE, rotation=rotation))
    assert isinstance(text, Text)
    one, two = (item for item in ring if isinstance(item, Arc))
    hull = Point(one.x, one.y).buffer(one.radius).union(Point(two.x, two.y).buffer(two.radius)).convex_hull
    inner = Text(text.x, text.y, text.text.strip(), level=Level.MIDDLE, rotation=rotation)
    x, y = (sum(corner[i] for corner in text_box(text)) / 4 for i in (0, 1))
    assert hull.contains(Point(x, y))
    assert hull.area > 0.8 * len(inner.text)
