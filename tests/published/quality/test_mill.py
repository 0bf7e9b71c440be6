"""Published permissible variations, row by row, with both sides of every step of size.

Sources: ASTM A6 as printed in the AISC Manual, 14th ed., Table 1-22 (read); ASTM A6-16 for angles and
ASTM A500 as quoted at second hand; EN 10034 and EN 10219-2 as printed by makers of sections (read). The
values of S, M, C and MC shapes, split tees, pipe, flat bars, EN 10056-2 and EN 10279 are from memory, and
their limits say so.
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.quality import Limit, Trust
from gageline.quality.mill import (
    astm_a6,
    astm_a53,
    astm_a500,
    astm_tees,
    en_10034,
    en_10056,
    en_10219,
    en_10279,
    flats,
)  # fmt: skip
from gageline.steel import Measure, Plate, Section, find
from gageline.units import Length
from jobs import inches


def shape(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


def both(limit: Limit | None) -> tuple[float | None, float | None]:
    """Over and under in inches."""
    assert limit is not None
    return tuple(None if way is None else way.inches for way in (limit.over, limit.under))  # type: ignore[return-value] # two of two


def both_mm(limit: Limit | None) -> tuple[float | None, float | None]:
    assert limit is not None
    return tuple(None if way is None else way.mm for way in (limit.over, limit.under))  # type: ignore[return-value] # two of two


def about(*values: float) -> object:
    return pytest.approx(values, abs=1e-5)


# --- ASTM A6, W and HP ---------------------------------------------------------------------------


@pytest.mark.parametrize("name", ["W4X13", "W12X26", "W14X22", "W36X150", "HP12X53"])
def test_w_depth_and_width_are_the_same_for_all(name: str) -> None:
    assert both(astm_a6.depth(shape(name))) == (1 / 8, 1 / 8)
    assert both(astm_a6.flange_width(shape(name))) == (1 / 4, 3 / 16)
    assert both(astm_a6.depth_anywhere(shape(name))) == (1 / 4, None)


@pytest.mark.parametrize(
    ("name", "most"),
    [("W12X26", 1 / 4), ("W12X336", 1 / 4), ("W14X22", 5 / 16), ("HP12X53", 1 / 4), ("HP14X73", 5 / 16)],
)
def test_w_flange_tilt_steps_at_12_in_nominal_depth(name: str, most: float) -> None:
    """W12X336 is 16.8 deep and still 12 in nominal."""
    assert both(astm_a6.flange_tilt(shape(name))) == (most, most)


@pytest.mark.parametrize(("name", "most"), [("W14X426", 3 / 16), ("W14X455", 5 / 16), ("W16X26", 3 / 16)])
def test_w_web_off_centre_steps_over_426_lb(name: str, most: float) -> None:
    assert both(astm_a6.web_off(shape(name))) == (most, most)


@pytest.mark.parametrize(
    ("name", "feet", "column", "over", "under"),
    [
        ("W24X55", "20'", False, 3 / 8, 3 / 8),
        ("W24X55", "30'", False, 3 / 8, 3 / 8),
        ("W24X55", "30'-0 1/16", False, 3 / 8 + 1 / 16, 3 / 8),
        ("W24X55", "35'", False, 3 / 8 + 1 / 16, 3 / 8),
        ("W24X55", "35'-0 1/16", False, 3 / 8 + 2 / 16, 3 / 8),
        ("W24X55", "60'", False, 3 / 8 + 6 / 16, 3 / 8),
        ("W27X84", "30'", False, 1 / 2, 1 / 2),
        ("W27X84", "31'", False, 1 / 2 + 1 / 16, 1 / 2),
        ("W12X53", "30'", True, 1 / 2, 1 / 2),
        ("W12X53", "30'", False, 3 / 8, 3 / 8),
    ],
)
def test_w_length(name: str, feet: str, column: bool, over: float, under: float) -> None:
    assert both(astm_a6.length(shape(name), inches(feet), as_column=column)) == (over, under)


def test_bearing_piles_may_be_5_in_long_and_no_shorter() -> None:
    limit = astm_a6.length(shape("HP12X53"), inches("40'"), bearing_pile=True)
    assert both(limit) == (5, 0)


def test_worked_numbers_of_camber_sweep_and_square() -> None:
    """W18X35 (bf 6.00) 40 ft: 0.500 both; W16X26 (bf 5.5) 30 ft: 0.375 and 0.750; W18X35 ends 17.7/64."""
    assert both(astm_a6.camber(shape("W18X35"), inches("40'"))) == (0.5, 0.5)
    assert both(astm_a6.sweep(shape("W18X35"), inches("40'"))) == (0.5, 0.5)
    assert both(astm_a6.camber(shape("W16X26"), inches("30'"))) == (0.375, 0.375)
    assert both(astm_a6.sweep(shape("W16X26"), inches("30'"))) == (0.75, 0.75)
    square = astm_a6.out_of_square(shape("W18X35"))
    assert square is not None
    assert square.over is not None
    assert square.over.inches == pytest.approx(0.277, abs=0.0005)


def test_sweep_steps_at_a_flange_of_6_in() -> None:
    wide = shape("W18X35")
    narrow = replace(wide, bf=wide.bf - Length(1))
    assert both(astm_a6.sweep(wide, inches("10'"))) == (0.125, 0.125)
    assert both(astm_a6.sweep(narrow, inches("10'"))) == (0.25, 0.25)


@pytest.mark.parametrize(
    ("feet", "most"), [("20'", 0.25), ("30'", 0.375), ("45'", 0.375), ("55'", 0.5), ("65'", 0.625)]
)
def test_columns_are_straight_to_3_8_up_to_45_ft(feet: str, most: float) -> None:
    limit = astm_a6.camber(shape("W12X53"), inches(feet), as_column=True)
    assert both(limit) == about(most, most)
    assert both(astm_a6.sweep(shape("W12X53"), inches(feet), as_column=True)) == about(most, most)


def test_ends_are_square_over_the_width_where_that_is_greater() -> None:
    wide = shape("W8X31")
    fatter = replace(wide, bf=wide.d + inches("1"))
    assert both(astm_a6.out_of_square(fatter))[0] == pytest.approx((wide.d.inches + 1) / 64, abs=1e-5)


def test_w_limits_are_read_and_others_say_how_they_are_known() -> None:
    def trust(limit: Limit | None) -> Trust:
        assert limit is not None
        return limit.trust

    assert trust(astm_a6.depth(shape("W16X26"))) is Trust.READ
    assert trust(astm_a6.depth(shape("C8X11.5"))) is Trust.MEMORY
    assert trust(astm_a6.depth(shape("L4X4X1/4"))) is Trust.SECOND
    assert "from memory" in (astm_a6.length(shape("S8X18.4"), inches("20'")) or pytest.fail("no limit")).cited


# --- ASTM A6, S, M, C, MC (from memory) ------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "over", "under"),
    [
        ("C3X4.1", 3 / 32, 1 / 16), ("C7X9.8", 3 / 32, 1 / 16), ("C8X11.5", 1 / 8, 3 / 32),
        ("MC13X31.8", 1 / 8, 3 / 32), ("C15X33.9", 3 / 16, 1 / 8), ("S24X80", 3 / 16, 1 / 8),
    ],
)  # fmt: skip
def test_depth_of_standard_shapes(name: str, over: float, under: float) -> None:
    assert both(astm_a6.depth(shape(name))) == (over, under)


@pytest.mark.parametrize(
    ("name", "over", "under"),
    [
        ("S6X12.5", 1 / 8, 1 / 8), ("S8X18.4", 5 / 32, 5 / 32), ("S15X42.9", 3 / 16, 3 / 16),
        ("C7X9.8", 1 / 8, 1 / 8), ("C8X11.5", 1 / 8, 5 / 32), ("C15X33.9", 1 / 8, 3 / 16),
    ],
)  # fmt: skip
def test_width_of_standard_shapes(name: str, over: float, under: float) -> None:
    assert both(astm_a6.flange_width(shape(name))) == (over, under)


@pytest.mark.parametrize(
    ("feet", "large", "small"),
    [
        ("9'-11", 1, 5 / 8), ("10'", 3 / 2, 1), ("19'-11", 3 / 2, 1), ("20'", 7 / 4, 3 / 2),
        ("30'", 7 / 4, 3 / 2),
        ("30'-0 1/16", 9 / 4, 2), ("40'", 9 / 4, 2), ("40'-0 1/16", 11 / 4, 5 / 2), ("65'", 11 / 4, 5 / 2),
    ],
)  # fmt: skip
def test_length_of_standard_shapes_and_angles(feet: str, large: float, small: float) -> None:
    for name in ("C8X11.5", "S8X18.4", "L4X4X1/4", "L3X3X1/4"):
        assert both(astm_a6.length(shape(name), inches(feet))) == (large, 0)
    assert both(astm_a6.length(shape("L2X2X1/4"), inches(feet))) == (small, 0)
    assert astm_a6.length(shape("C8X11.5"), inches("65'-0 1/16")) is None


def test_other_rules_of_standard_shapes() -> None:
    channel, angle = shape("C8X11.5"), shape("L6X4X1/2")
    assert both(astm_a6.camber(channel, inches("20'"))) == (0.5, 0.5)
    assert astm_a6.sweep(channel, inches("20'")) is None
    assert astm_a6.web_off(channel) is None
    assert both(astm_a6.web_off(shape("S8X18.4"))) == (3 / 16, 3 / 16)
    assert both(astm_a6.flange_tilt(channel))[0] == pytest.approx(2.26 / 32, abs=1e-5)
    assert both(astm_a6.out_of_square(channel)) == (8 / 64, None)
    assert both(astm_a6.sweep(angle, inches("20'"))) == (0.5, 0.5)
    assert both(astm_a6.flange_tilt(angle))[0] == pytest.approx(6 * 3 / 128, abs=1e-5)


# --- ASTM A6, angles ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("leg", "over", "under"),
    [
        ("1", 1 / 32, 1 / 32), ("1 1/64", 3 / 64, 3 / 64), ("2", 3 / 64, 3 / 64), ("2 1/64", 1 / 16, 1 / 16),
        ("2 1/2", 1 / 16, 1 / 16), ("2 33/64", 1 / 8, 3 / 32), ("4", 1 / 8, 3 / 32), ("4 1/64", 1 / 8, 1 / 8),
        ("6", 1 / 8, 1 / 8), ("6 1/64", 3 / 16, 1 / 8), ("8", 3 / 16, 1 / 8), ("8 1/64", 1 / 4, 1 / 4),
        ("10", 1 / 4, 1 / 4), ("10 1/64", 1 / 4, 3 / 8),
    ],
)  # fmt: skip
def test_legs_of_angles_on_both_sides_of_each_step(leg: str, over: float, under: float) -> None:
    angle = replace(shape("L4X4X1/4"), d=inches(leg), bf=inches(leg))
    assert both(astm_a6.depth(angle)) == (over, under)
    assert both(astm_a6.flange_width(angle)) == (over, under)


def test_shapes_that_a6_does_not_hold_have_no_limits() -> None:
    tee = shape("HSS6X6X3/8")
    checks = (
        astm_a6.depth,
        astm_a6.flange_width,
        astm_a6.flange_tilt,
        astm_a6.web_off,
        astm_a6.out_of_square,
    )
    assert [check(tee) for check in checks] == [None] * 5
    bows = (astm_a6.length, astm_a6.camber, astm_a6.sweep)
    assert [check(tee, inches("20'")) for check in bows] == [None] * 3
    assert astm_a6.depth_anywhere(tee) is None
    with pytest.raises(ValueProblem, match="IPE 300 has no nominal depth in its name"):
        astm_a6.nominal_depth(shape("IPE 300"))


# --- ASTM A500 -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("side", "most"),
    [
        ("2 1/2", 0.020), ("2 33/64", 0.025), ("3 1/2", 0.025), ("3 33/64", 0.030), ("5 1/2", 0.030),
        ("6", 0.060), ("10", 0.100),
    ],
)  # fmt: skip
def test_sides_of_boxes_on_both_sides_of_each_step(side: str, most: float) -> None:
    box = replace(shape("HSS6X6X3/8"), d=inches(side), bf=inches(side))
    assert both(astm_a500.side(box, box.d)) == about(most, most)


def test_the_larger_side_decides_for_both() -> None:
    box = shape("HSS6X4X1/4")
    assert both(astm_a500.side(box, box.bf)) == about(0.04, 0.04)


def test_tubes_length_and_straightness() -> None:
    tube = shape("HSS6.000X0.375")
    assert both(astm_a500.side(tube, tube.d)) == about(0.045, 0.045)
    small = inches("1 29/32")
    assert both(astm_a500.side(tube, small)) == about(small.inches * 0.005, small.inches * 0.005)
    assert both(astm_a500.straightness(inches("40'"))) == (1, 1)
    assert both(astm_a500.length(inches("22'"))) == (1 / 2, 1 / 4)
    assert both(astm_a500.length(inches("22'-1"))) == (3 / 4, 1 / 4)


# --- EN 10034 --------------------------------------------------------------------------------------


def i_shape(h: str | int = 300, b: str | int = 150, tf: str = "10.7") -> Section:
    deep, wide, thick = (Length.from_mm(Fraction(value)) for value in (h, b, tf))
    return replace(shape("IPE 300"), d=deep, bf=wide, tf=thick)


@pytest.mark.parametrize(
    ("h", "over", "under"),
    [
        ("180", 3, 2), ("180.1", 4, 2), ("400", 4, 2), ("400.1", 5, 3), ("700", 5, 3), ("700.1", 5, 5),
    ],
)  # fmt: skip
def test_height_of_european_shapes(h: str, over: float, under: float) -> None:
    assert both_mm(en_10034.depth(i_shape(h))) == (over, under)


@pytest.mark.parametrize(
    ("b", "over", "under"),
    [("110", 4, 1), ("110.1", 4, 2), ("210", 4, 2), ("210.1", 4, 4), ("325", 4, 4), ("325.1", 6, 5)],
)
def test_width_of_european_shapes(b: str, over: float, under: float) -> None:
    assert both_mm(en_10034.width(i_shape(b=b))) == (over, under)


@pytest.mark.parametrize(
    ("b", "most"), [("110", 1.5), ("110.1", 2.202), ("300", 6), ("325", 6.5), ("400", 6.5)]
)
def test_tilt_of_european_flanges(b: str, most: float) -> None:
    assert both_mm(en_10034.tilt(i_shape(b=b))) == pytest.approx((most, most), abs=1e-3)


@pytest.mark.parametrize(
    ("b", "tf", "most", "trust"),
    [
        ("110", "10", 2.5, Trust.READ), ("110.1", "10", 3.5, Trust.READ), ("325", "39.9", 3.5, Trust.READ),
        ("325.1", "10", 5, Trust.MEMORY), ("300", "40", 5, Trust.READ), ("400", "40", 8, Trust.READ),
    ],
)  # fmt: skip
def test_web_off_centre_of_european_shapes(b: str, tf: str, most: float, trust: Trust) -> None:
    limit = en_10034.web_off(i_shape(b=b, tf=tf))
    assert both_mm(limit) == (most, most)
    assert limit.trust is trust


@pytest.mark.parametrize(("h", "most"), [("180", 30), ("180.1", 15), ("360", 15), ("360.1", 10)])
def test_straightness_of_european_shapes(h: str, most: float) -> None:
    assert both_mm(en_10034.straightness(i_shape(h), Length.from_mm(10_000))) == (most, most)


def test_length_of_european_shapes() -> None:
    assert both_mm(en_10034.length()) == (50, 50)
    assert both_mm(en_10034.length(at_least=True)) == (100, 0)


# --- EN 10056-2 (from memory) and EN 10219-2 -------------------------------------------------------


@pytest.mark.parametrize(
    ("leg", "over", "under", "tilt", "bow"),
    [
        ("50", 1, 1, 1, 40), ("50.1", 2, 2, 1, 40), ("100", 2, 2, 1, 40), ("100.1", 3, 3, 1.5, 40),
        ("150", 3, 3, 1.5, 40), ("150.1", 4, 4, 2, 20), ("200", 4, 4, 2, 20), ("200.1", 6, 4, 3, 10),
    ],
)  # fmt: skip
def test_european_angles(leg: str, over: float, under: float, tilt: float, bow: float) -> None:
    long = Length.from_mm(Fraction(leg))
    angle = replace(shape("L4X4X1/4"), d=long)
    assert both_mm(en_10056.leg(long)) == (over, under)
    assert both_mm(en_10056.tilt(angle)) == (tilt, tilt)
    assert both_mm(en_10056.straightness(angle, Length.from_mm(10_000))) == (bow, bow)
    assert en_10056.length().trust is Trust.MEMORY


@pytest.mark.parametrize(
    ("side", "most"), [("40", 0.5), ("99", 0.99), ("100", 0.8), ("200", 1.6), ("201", 1.206)]
)
def test_european_boxes(side: str, most: float) -> None:
    limit = en_10219.side(shape("HSS6X6X3/8"), Length.from_mm(Fraction(side)))
    assert both_mm(limit) == pytest.approx((most, most), abs=1e-3)


@pytest.mark.parametrize(("across", "most"), [("40", 0.5), ("168", 1.68), ("1200", 10)])
def test_european_tubes(across: str, most: float) -> None:
    tube = shape("HSS6.000X0.375")
    assert both_mm(en_10219.side(tube, Length.from_mm(Fraction(across)))) == pytest.approx(
        (most, most), abs=1e-3
    )
    assert both_mm(en_10219.straightness(tube, Length.from_mm(1000))) == (2, 2)
    assert both_mm(en_10219.straightness(shape("HSS6X6X3/8"), Length.from_mm(1000))) == (1.5, 1.5)
    assert both_mm(en_10219.length()) == (50, 0)


# --- EN 10279, split tees, pipe and flat bars (all from memory) ------------------------------------


def channel(h: str = "200", b: str = "75") -> Section:
    deep, wide = (Length.from_mm(Fraction(value)) for value in (h, b))
    return replace(shape("UPN 200"), d=deep, bf=wide)


@pytest.mark.parametrize(
    ("h", "most"),
    [("65", 1.5), ("65.1", 2), ("200", 2), ("200.1", 3), ("400", 3), ("400.1", 4)],
)
def test_height_of_european_channels(h: str, most: float) -> None:
    limit = en_10279.depth(channel(h))
    assert both_mm(limit) == (most, most)
    assert limit.trust is Trust.MEMORY


@pytest.mark.parametrize(
    ("b", "most", "tilt"),
    [
        ("50", 1.5, 2), ("50.1", 2, 2), ("100", 2, 2), ("100.1", 2.5, 2.5025), ("125", 2.5, 3.125),
        ("125.1", 3, 3.1275),
    ],
)  # fmt: skip
def test_flanges_of_european_channels(b: str, most: float, tilt: float) -> None:
    assert both_mm(en_10279.width(channel(b=b))) == (most, most)
    assert both_mm(en_10279.tilt(channel(b=b))) == pytest.approx((tilt, tilt), abs=1e-3)


@pytest.mark.parametrize(
    ("h", "in_web", "in_flanges"),
    [("150", 30, 50), ("150.1", 20, 30), ("300", 20, 30), ("300.1", 15, 20)],
)
def test_straightness_of_european_channels(h: str, in_web: float, in_flanges: float) -> None:
    long = Length.from_mm(10_000)
    assert both_mm(en_10279.straightness(channel(h), long, sideways=False)) == (in_web, in_web)
    assert both_mm(en_10279.straightness(channel(h), long, sideways=True)) == (in_flanges, in_flanges)
    assert both_mm(en_10279.length()) == (50, 50)


@pytest.mark.parametrize(
    ("name", "most"),
    [
        ("WT5X15", 1 / 8), ("WT6X20", 3 / 16), ("WT15X45", 3 / 16), ("WT16.5X65", 1 / 4),
        ("WT18X67.5", 1 / 4), ("WT20X74.5", 5 / 16), ("WT22X115", 5 / 16), ("MT5X4.5", 1 / 8),
    ],
)  # fmt: skip
def test_depth_of_split_tees(name: str, most: float) -> None:
    limit = astm_tees.depth(shape(name))
    assert both(limit) == (most, most)
    assert limit.trust is Trust.MEMORY


def test_other_rules_of_split_tees() -> None:
    tee = shape("WT6X20")
    assert both(astm_tees.straightness(inches("20'"))) == (0.5, 0.5)
    assert both(astm_tees.width(tee)) == (1 / 4, 3 / 16)
    assert astm_tees.width(shape("ST6X25")) is None
    assert both(astm_tees.out_of_square(tee))[0] == pytest.approx(tee.bf.inches / 64, abs=1e-5)


@pytest.mark.parametrize(
    ("name", "most"), [("Pipe1-1/2STD", 1 / 64), ("Pipe2STD", 0.02375), ("Pipe6STD", 0.06625)]
)
def test_diameter_of_pipe(name: str, most: float) -> None:
    assert both(astm_a53.diameter(shape(name))) == about(most, most)


@pytest.mark.parametrize(
    ("wide", "over", "under"),
    [
        ("1", 1 / 64, 1 / 64), ("1 1/64", 1 / 32, 1 / 32), ("2", 1 / 32, 1 / 32), ("2 1/64", 1 / 16, 1 / 32),
        ("4", 1 / 16, 1 / 32), ("4 1/64", 3 / 32, 1 / 16), ("6", 3 / 32, 1 / 16), ("6 1/64", 1 / 8, 3 / 32),
        ("8", 1 / 8, 3 / 32),
    ],
)  # fmt: skip
def test_flat_bars_in_inches(wide: str, over: float, under: float) -> None:
    assert both(flats.width(Plate(inches("1/2"), inches(wide)))) == (over, under)


def test_plates_over_8_in_have_no_limit_and_bars_may_bow_a_quarter_in_5_ft() -> None:
    bar, plate = Plate(inches("1/2"), inches("8")), Plate(inches("1/2"), inches("8 1/64"))
    assert flats.width(plate) is None
    assert flats.straightness(plate, inches("20'")) is None
    assert both(flats.straightness(bar, inches("20'"))) == (1, 1)


@pytest.mark.parametrize(
    ("wide", "most"),
    [
        (40, 0.75), (41, 1), (80, 1), (81, 1.5), (100, 1.5), (101, 2), (120, 2), (121, 2.5), (150, 2.5),
    ],
)  # fmt: skip
def test_flat_bars_in_millimetres(wide: int, most: float) -> None:
    assert both_mm(flats.width(metric_bar(10, wide))) == (most, most)


def metric_bar(thick: int, wide: int) -> Plate:
    return Plate(Length.from_mm(thick), Length.from_mm(wide), Measure.EU)


def test_european_bars_bow_less_from_1000_square_millimetres() -> None:
    long = Length.from_mm(10_000)
    assert both_mm(flats.straightness(metric_bar(10, 99), long)) == (40, 40)
    assert both_mm(flats.straightness(metric_bar(10, 100), long)) == (25, 25)
    assert flats.width(metric_bar(10, 151)) is None
