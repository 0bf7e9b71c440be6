from __future__ import annotations

import time

import pytest

from gageline.errors import ValueProblem
from gageline.steel import Measure, Plate, all_sections, find
from gageline.units import Length, Unit


@pytest.mark.parametrize(
    ("text", "designation"),
    [
        ("w16x26", "W16X26"), ("W16 x 26", "W16X26"), (" W 16×26 ", "W16X26"), ("W16*26", "W16X26"),
        ("m12.5x12.4", "M12.5X12.4"), ("HSS6x6x.375", "HSS6X6X3/8"), ("HSS6X6X3/8", "HSS6X6X3/8"),
        ("HSS 6 x 6 x .313", "HSS6X6X5/16"), ("HSS6x6x.312", "HSS6X6X5/16"), ("hss6x.375", "HSS6.000X0.375"),
        ("HSS16x5/16", "HSS16.000X0.312"), ("HSS 5 1/2 x 5-1/2 x 1/4", "HSS5-1/2X5-1/2X1/4"),
        ("L4x3 1/2x5/16", "L4X3-1/2X5/16"), ("L4x3½x5⁄16", "L4X3-1/2X5/16"),
        ('L4"x3.5"x5/16"', "L4X3-1/2X5/16"),
        ("pipe 6 std", "Pipe6STD"), ("Pipe 3 1/2 XS", "Pipe3-1/2XS"), ("PIPE6SCH40", "Pipe6STD"),
        ("IPE 300", "IPE 300"), ("ipe300", "IPE 300"), ("HE 200 A", "HEA 200"), ("he200b", "HEB 200"),
        ("UNP 200", "UPN 200"), ("L100x100x10", "L 100x100x10"), ("L 100x10", "L 100x100x10"),
    ],
)  # fmt: skip
def test_sections_are_found_as_people_type_them(text: str, designation: str) -> None:
    assert find(text).designation == designation


@pytest.mark.parametrize(
    ("text", "nearest"),
    [
        ("W16x27", "W16X26 or W16X31 or"),
        ("X16x26", "W16X26 or"),
        ("2L4x4x1/4", "L4X4X1/4 or"),
        ("HSS4x6x1/4", "HSS6X4X1/4 or"),
        ("IPE 310", "IPE 300 or IPE 330 or"),
        ("pipe 7 std", "Pipe8STD or Pipe6STD or"),
        ("W99x1", "W44X230 or"),  # the family, then the depth, then the weight
        ("W10X9999", "W10X112 or W10X100 or"),
        ("W61x26", "W16X26 or"),  # digits swapped
        ("HE 205 A", "HEA 200 or HEA 220 or"),
        ("HSS6x6x5/17", "HSS6X6X5/16 or HSS6X6X1/4 or"),
        ("L4x4x3/9", "L4X4X5/16 or L4X4X3/8 or"),
        ("C12x21", r"C12X20\.7 or C12X25 or"),
    ],
)
def test_an_unknown_section_suggests_the_nearest(text: str, nearest: str) -> None:
    with pytest.raises(ValueProblem, match=f'section "{text}" is not in the tables: did you mean {nearest}'):
        find(text)


@pytest.mark.parametrize("text", ["", "wide flange", "W", "12", "½", "L4x3x1/0"])
def test_a_text_that_is_near_nothing_gets_the_forms(text: str) -> None:
    with pytest.raises(ValueProblem, match=f'section "{text}" is not in the tables: .*(W16X26|L4X3)'):
        find(text)


def test_an_endless_text_is_cut_short() -> None:
    with pytest.raises(ValueProblem, match=r'section "W1{39}\.\.\." is not in the tables'):
        find("W" + "1" * 400)


def test_a_section_of_the_other_system_is_not_found() -> None:
    with pytest.raises(ValueProblem, match='section "IPE 300" is not in the tables'):
        find("IPE 300", Measure.US)


@pytest.mark.parametrize(
    ("text", "designation"),
    [
        ("PL1/2x8", "PL1/2X8"), ("FL 3/8 x 4", "PL3/8X4"), ("bar 1 1/4x6", "PL1-1/4X6"),
        ("plate .5 x 8", "PL1/2X8"), ('PL3/8"x6"', "PL3/8X6"), ("PL1/2 x 1'-0", "PL1/2X12"),
        ("PL0.3x5", "PL0.3X5"), ("pl 12mm x 200mm", "PL 12x200"),
    ],
)  # fmt: skip
def test_plates_are_found_by_thickness_and_width(text: str, designation: str) -> None:
    assert find(text).designation == designation


def test_a_bare_plate_is_in_the_units_of_the_job() -> None:
    assert find("PL12x200", units=Unit.MM) == Plate(Length.from_mm(12), Length.from_mm(200), Measure.EU)
    assert find("PL1x8") == Plate(Length.from_inches(1), Length.from_inches(8))


def test_a_plate_with_one_size_is_refused() -> None:
    with pytest.raises(ValueProblem, match='"PL8" is not a plate: write thickness by width like PL1/2X8'):
        find("PL8")


def test_a_fraction_without_unit_is_no_metric_plate() -> None:
    with pytest.raises(ValueProblem, match='"1/2" is not a length'):
        find("PL1/2x200", units=Unit.MM)


def test_all_sections_come_by_system() -> None:
    us, eu = all_sections(Measure.US), all_sections(Measure.EU)
    assert all_sections() == us + eu
    assert {section.system for section in us} == {Measure.US}
    assert {section.system for section in eu} == {Measure.EU}
    assert len({section.designation for section in all_sections()}) == len(us) + len(eu)


def test_thousands_of_pieces_are_found_quickly() -> None:
    find("W16X26")
    start = time.perf_counter()
    for _ in range(2000):
        find("hss 6x6x3/8")
    assert time.perf_counter() - start < 2.0  # 0.02 s where it was written; room for a busy machine
