"""Values of the tables as printed elsewhere."""

from __future__ import annotations

from fractions import Fraction

import pytest

from gageline.steel import (
    BoltGroup,
    HoleKind,
    Section,
    bolt,
    find,
    grade,
    hole_size,
    leg_gage,
    minimum_edge_distance,
    minimum_spacing,
    pretension,
    usual_grade,
)
from gageline.units import Length, parse_length


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


@pytest.mark.parametrize(
    ("name", "values"),
    [
        # AISC Design Examples v16: F.1-1, F.1-2B, Table 3-2 rows, G.1 to G.3
        ("W18X50", {"d": 18.0, "bf": 7.50, "tw": 0.355, "tf": 0.570, "kdes": 0.972, "Zx": 101, "Ix": 800}),
        ("W18X50", {"ry": 1.65, "Sx": 88.9, "J": 1.24, "rts": 1.98, "ho": 17.4}),
        ("W18X35", {"d": 17.7, "tw": 0.300, "Zx": 66.5, "Sx": 57.6, "Ix": 510, "Iy": 15.3, "ry": 1.22}),
        ("W18X35", {"J": 0.506, "Cw": 1140}),  # the same line, teaching example 8.1
        ("W24X62", {"d": 23.7, "tw": 0.430, "Zx": 153}),
        ("W24X55", {"d": 23.6, "tw": 0.395, "kdes": 1.01, "Zx": 134}),
        ("W21X62", {"d": 21.0, "tw": 0.400, "kdes": 1.12, "bf": 8.24, "Zx": 144}),
        ("W14X38", {"kdes": 0.915}),
        ("W14X90", {"kdes": 1.31, "gage": 5.5}),
        ("W16X50", {"d": 16.3, "tw": 0.380, "Zx": 92.0}),
        ("W12X40", {"d": 11.9, "tw": 0.295, "Zx": 57.0}),
        ("W30X99", {"bf": 10.5, "tw": 0.520}),
        ("C15X33.9", {"d": 15.0, "tw": 0.400}),
        # reference of the section data
        ("W16X26", {"d": 15.7, "bf": 5.50, "tw": 0.250, "tf": 0.345, "area": 7.68, "Ix": 301, "Zx": 44.2}),
        ("HSS6X6X3/8", {"tw": 0.349, "t_nominal": 0.375}),
        ("L5X3X1/4", {"d": 5.0, "bf": 3.0, "tw": 0.25}),
        # from memory of the Manual, Table 1-1: gage, T, kdet
        ("W18X35", {"gage": 3.5, "T": 15.5, "kdet": 1.125}),
        ("W21X44", {"gage": 3.5, "T": 18.375, "kdet": 1.125}),
        ("W24X55", {"gage": 3.5, "T": 20.75, "kdet": 1.4375}),
        ("W16X26", {"T": 13.625, "kdet": 1.0625}),
    ],
)
def test_american_sections_are_as_printed(name: str, values: dict[str, float]) -> None:
    line = section(name)
    found = {key: getattr(line, key) for key in values}
    plain = {key: value.inches if isinstance(value, Length) else value for key, value in found.items()}
    assert plain == pytest.approx(values, abs=4e-6)  # a length is kept to 1/162560 in


@pytest.mark.parametrize(
    ("name", "values"),
    [
        # EN 10365 and EN 10056-1 properties as mills print them, from memory: kg/m, cm2, cm4, cm3, cm4, cm4
        ("IPE 300", (42.2, 53.8, 8356, 628.4, 603.8, 20.12)),
        ("HEA 200", (42.3, 53.8, 3692, 429.5, 1336, 20.98)),
        ("HEB 300", (117, 149.1, 25170, 1869, 8563, 185.0)),
        ("HEM 300", (238, 303.1, 59200, 4078, 19400, 1408)),
        ("UPN 200", (25.3, 32.2, 1910, 228, 148, None)),
        ("UPE 200", (22.8, 29.0, 1909, 220.1, 187.3, None)),
        ("L 100x100x10", (15.0, 19.2, 177, None, 177, None)),
    ],
)
def test_european_sections_are_as_printed(name: str, values: tuple[float | None, ...]) -> None:
    line = section(name)
    cm = 2.54
    found = (
        line.weight * 0.45359237 / 0.3048,
        line.area * cm**2,
        line.Ix * cm**4,
        line.Zx * cm**3,
        line.Iy * cm**4,
        (line.J or 0.0) * cm**4,
    )
    for value, printed in zip(found, values, strict=True):
        if printed is not None:
            assert value == pytest.approx(printed, rel=0.005)


@pytest.mark.parametrize(
    ("name", "j", "cw"),
    # torsion constant, cm4, and warping constant, 1000 cm6, as mills print them, from memory
    [("UPN 200", 11.9, 9.07), ("UPN 400", 81.6, 221), ("UPE 200", 8.89, None)],
)
def test_torsion_of_european_channels_is_as_printed(name: str, j: float, cw: float | None) -> None:
    line = section(name)
    assert line.J is not None
    assert pytest.approx(j, rel=0.03) == line.J * 2.54**4
    if cw is not None:
        assert line.Cw is not None
        assert line.Cw * 2.54**6 / 1000 == pytest.approx(cw, rel=0.03)


def test_dimensions_of_european_sections_are_exact() -> None:
    line = section("IPE 300")
    # EN 10365: 300 x 150 x 7.1 x 10.7, r 15
    assert [line.d, line.bf, line.tw, line.tf, line.fillet] == [
        Length.from_mm(value) for value in (300, 150, Fraction("7.1"), Fraction("10.7"), 15)
    ]


@pytest.mark.parametrize(
    ("size", "kind", "year", "width", "length"),
    [
        # AISC 360-16/-22 Table J3.3 = RCSC 2020 Table 3.1
        ("3/4", HoleKind.STD, 2022, "13/16", "13/16"),  # read in Design Examples v16, II.A-4
        ("3/4", HoleKind.SSL, 2022, "13/16", "1"),  # read in AISC FAQ 5.1.1
        ("7/8", HoleKind.STD, 2022, "15/16", "15/16"),  # read in II.A-1C
        ("1", HoleKind.STD, 2022, "1-1/8", "1-1/8"),  # read in II.A-19B
        ("1", HoleKind.STD, 2016, "1-1/8", "1-1/8"),
        ("1", HoleKind.STD, 2010, "1-1/16", "1-1/16"),  # the editions before 2016
        ("1", HoleKind.LSL, 2022, "1-1/8", "2-1/2"),
        ("5/8", HoleKind.OVS, 2022, "13/16", "13/16"),
        ("1-1/4", HoleKind.STD, 2022, "1-3/8", "1-3/8"),
        ("1-1/4", HoleKind.STD, 2005, "1-5/16", "1-5/16"),
        ("1-1/4", HoleKind.SSL, 2022, "1-3/8", "1-5/8"),
        ("1-1/4", HoleKind.LSL, 2022, "1-3/8", "3-1/8"),
        # Table J3.3M, read in Structural Steel Designer's Handbook, 4th ed., Table 5.11
        ("M20", HoleKind.STD, 2022, "22mm", "22mm"),
        ("M24", HoleKind.SSL, 2022, "27mm", "32mm"),
        ("M30", HoleKind.LSL, 2005, "33mm", "75mm"),
        ("M36", HoleKind.OVS, 2022, "44mm", "44mm"),
    ],
)
def test_holes_are_those_of_the_specification(
    size: str, kind: HoleKind, year: int, width: str, length: str
) -> None:
    hole = hole_size(bolt(size), kind, year)
    assert (hole.width, hole.length) == (parse_length(width), parse_length(length))


@pytest.mark.parametrize(
    ("size", "least"),
    [
        # AISC 360-16 Table J3.4 and J3.4M, read in a reprint of p 16.1-131; 3/4 also in II.A-17A
        ("1/2", "3/4"), ("5/8", "7/8"), ("3/4", "1"), ("7/8", "1-1/8"), ("1", "1-1/4"), ("1-1/8", "1-1/2"),
        ("1-1/4", "1-5/8"), ("1-1/2", "1-7/8"), ("M16", "22mm"), ("M20", "26mm"), ("M24", "30mm"),
        ("M36", "46mm"),
    ],
)  # fmt: skip
def test_edge_distances_are_those_of_the_specification(size: str, least: str) -> None:
    assert minimum_edge_distance(bolt(size)) == parse_length(least)


@pytest.mark.parametrize(
    ("size", "group", "year", "kip"),
    [
        # AISC 360-05 Table J3.1, read in a reprint of p 16.1-103; 28 kip also in Design Examples v16, J.4A
        ("3/4", BoltGroup.GROUP_120, 2022, 28), ("1", BoltGroup.GROUP_120, 2022, 51),
        ("7/8", BoltGroup.GROUP_150, 2022, 49), ("1-1/8", BoltGroup.GROUP_120, 2010, 56),
        ("1-1/2", BoltGroup.GROUP_150, 2005, 148),
        ("1-1/8", BoltGroup.GROUP_120, 2016, 64),  # from memory
    ],
)  # fmt: skip
def test_pretensions_are_those_of_the_specification(
    size: str, group: BoltGroup, year: int, kip: float
) -> None:
    assert pretension(bolt(size), group, year) == kip


def test_pretensions_are_seventy_percent_of_the_tensile_strength() -> None:
    # the rule of Table J3.1: 0.70 of the tensile strength, to the nearest kip; stress areas of ASME B1.1
    areas = {"1/2": 0.142, "5/8": 0.226, "3/4": 0.334, "7/8": 0.462, "1": 0.606}
    for size, area in areas.items():
        assert pretension(bolt(size)) == pytest.approx(0.70 * 120 * area, abs=0.51)


def test_metric_pretension_is_in_kips() -> None:
    # AISC 360-05 Table J3.1M: M20 A325M 142 kN
    assert pretension(bolt("M20")) * 4.4482216 == pytest.approx(142)


def test_a_bolt_through_two_plies_takes_a_two_inch_bolt() -> None:
    # CISC, bolt length selection: 7/8 bolt, plies of 10 and 9.7 mm, no washer: 2 in; with a washer 2 1/4
    chosen = bolt("7/8")
    grip = Length.from_mm(Fraction("19.7"))
    assert chosen.grip_add is not None
    assert 1.75 < (grip + chosen.grip_add).inches <= 2.0
    assert 2.0 < (grip + chosen.grip_add + chosen.washer).inches <= 2.25


@pytest.mark.parametrize(
    ("size", "tighten", "enter"),
    # AISC Manual LRFD 2nd ed., vol. II, Table 8-4
    [("5/8", "1", "11/16"), ("3/4", "1-1/4", "3/4"), ("7/8", "1-3/8", "7/8"), ("1", "1-7/16", "15/16")],
)
def test_clearances_are_those_of_the_manual(size: str, tighten: str, enter: str) -> None:
    chosen = bolt(size)
    assert (chosen.clear_tighten, chosen.clear_enter) == (parse_length(tighten), parse_length(enter))


def test_spacing_is_two_and_two_thirds_diameters() -> None:
    # AISC 360, J3.3: 3/4 in bolts no closer than 2 in
    assert minimum_spacing(bolt("3/4")) == Length.from_inches(2)


@pytest.mark.parametrize(
    ("leg", "gage"),
    # Design Examples v16, II.A-28A: 3 and 4 in legs; 6 in from memory of Table 1-7A
    [("3", "1-3/4"), ("4", "2-1/2"), ("6", "3-1/2")],
)
def test_gages_of_angle_legs_are_those_of_the_manual(leg: str, gage: str) -> None:
    assert leg_gage(parse_length(leg)).gage == parse_length(gage)


@pytest.mark.parametrize(
    ("name", "mm", "fy", "fu"),
    [
        # EN 10025-2 Table 7, read in a public reprint
        ("S235", 16, 235, 360), ("S235", 50, 215, 360), ("S235", 120, 195, 350),
        ("S275", 16, 275, 410), ("S275", 17, 265, 410), ("S275", 80, 245, 410), ("S275", 2, 275, 430),
        ("S355", 40, 345, 470), ("S355", 100, 315, 470), ("S355", 250, 275, 450),
    ],
)  # fmt: skip
def test_european_grades_lose_strength_with_thickness(name: str, mm: int, fy: float, fu: float) -> None:
    found = grade(name).strength(Length.from_mm(mm))
    assert found == pytest.approx((fy / 6.894757, fu / 6.894757), rel=1e-6)


@pytest.mark.parametrize(
    ("name", "fy", "fu"),
    # AISC Manual 16th ed., Table 2-4; A992 50/65 and A36 36/58 read in Design Examples v16
    [("A992", 50, 65), ("A36", 36, 58), ("A572-50", 50, 65), ("A500-C", 50, 62), ("A53-B", 35, 60)],
)
def test_american_grades_are_as_printed(name: str, fy: float, fu: float) -> None:
    assert (grade(name).Fy, grade(name).Fu) == (fy, fu)


@pytest.mark.parametrize(
    ("stock", "name"),
    # AISC Manual 16th ed., Tables 2-4 and 2-5, from memory
    [("W16X26", "A992"), ("WT8X13", "A992"), ("HSS6X6X3/8", "A500-C"), ("Pipe6STD", "A53-B"),
     ("C15X33.9", "A572-50"), ("L4X3X1/4", "A572-50"), ("PL1/2X8", "A572-50"), ("IPE 300", "S275")],
)  # fmt: skip
def test_shapes_come_in_their_usual_grades(stock: str, name: str) -> None:
    assert usual_grade(find(stock)).name == name
