from gageline.part import End
from gageline.sheets import Polygon, leaves, texts
from gageline.sheets.end_panels import end_panel, section_panel
from gageline.sheets.notation import Scribe
from gageline.sheets.scales import scales
from gageline.units import System
from jobs import piece_of
from pieces import at

FEET = Scribe(System.FT_IN, at("1/16"))
CHOICE = scales(System.FT_IN, 4)
ANGLES = '[[piece.angles]]\nend = "left"\nstock = "L4x3-1/2x5/16"\nrows = 3\nweb_leg = "short"\n'


def test_an_end_with_angles_shows_gage_rows_and_width() -> None:
    piece = piece_of(ANGLES)
    made = end_panel(piece, End.LEFT, FEET, CHOICE, 60)
    assert made is not None
    said = [text.text for text in texts(made.items)]
    # 4 in legs, gage 2 1/2 in (Manual Table 1-7A), web 1/4: 5 1/4 between lines, 8 1/4 over the legs
    assert {'5 1/4"', '8 1/4"', '3"', '6"', '9"', "Left end"} <= set(said)


def test_an_end_without_fittings_has_no_view() -> None:
    assert end_panel(piece_of(ANGLES), End.RIGHT, FEET, CHOICE, 60) is None


def test_the_section_is_hatched_and_names_its_sizes() -> None:
    made = section_panel(piece_of(stock="HSS6x6x3/8"), FEET, CHOICE)
    assert made is not None
    shapes = [item for item, _, _ in leaves(made.items) if isinstance(item, Polygon) and item.hatch]
    assert len(shapes[0].openings) == 1
    said = [text.text for text in texts(made.items)]
    assert said.count('6"') == 2
    assert "Section HSS6X6X3/8" in said
    assert any(text.startswith('wall 3/8"') for text in said)


def test_a_plate_has_no_section() -> None:
    assert section_panel(piece_of(stock="PL1/2x8"), FEET, CHOICE) is None
