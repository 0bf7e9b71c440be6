import pytest

from gageline.layout.reading import Datum, Reading, across, along, printed_length
from gageline.part import End, Face, Part
from gageline.steel import find
from gageline.units import Length, System, Unit, parse_length

L = parse_length
ZERO = Length(0)


@pytest.mark.parametrize(
    ("stock", "face", "y", "first", "back"),
    [
        ("W16X26", Face.NEAR, L("12.7"), ("top edge", '3"'), ("bottom edge", "1'-0 45/64\"")),
        ("W16X26", Face.FAR, L("1.7"), ("top edge", "1'-2\""), ("bottom edge", '1 45/64"')),
        ("W16X26", Face.TOP, L("1 3/4"), ("centre line, near side", '1 3/4"'), ("near edge", '1"')),
        ("W16X26", Face.BOTTOM, L("-1 3/4"), ("centre line, far side", '1 3/4"'), ("near edge", '4 1/2"')),
        ("C10X15.3", Face.TOP, L("-1 1/2"), ("back of the web", '1 1/2"'), ("toe", '1 3/32"')),
        ("C10X15.3", Face.NEAR, L("7"), ("top edge", '3"'), ("bottom edge", '7"')),
        ("L4X3X5/16", Face.LEG_A, L("2 1/2"), ("heel", '2 1/2"'), ("toe", '1 1/2"')),
        ("L4X3X5/16", Face.LEG_B, L("1 3/4"), ("heel", '1 3/4"'), ("toe", '1 1/4"')),
        ("WT6X20", Face.NEAR, L("2.97"), ("top edge", '3"'), ("bottom edge", '2 31/32"')),
        ("HSS6X4X1/4", Face.TOP, L("-1"), ("centre line, far side", '1"'), ("near edge", '3"')),
        ("HSS6X4X1/4", Face.FAR, L("5"), ("top edge", '1"'), ("bottom edge", '5"')),
        ("HSS6.000X0.250", Face.NEAR, L("4"), ("centre line, upper side", '1"'), ("bottom line", '4"')),
        ("HSS6.000X0.250", Face.TOP, L("1"), ("centre line, near side", '1"'), ("near line", '2"')),
        (
            "HSS6.000X0.250",
            Face.FAR,
            L("2 1/2"),
            ("centre line, lower side", '1/2"'),
            ("bottom line", '2 1/2"'),
        ),
        ("PL1/2X8", Face.FACE, L("6"), ("top edge", '2"'), ("bottom edge", '6"')),
    ],
)
def test_each_face_is_read_from_its_own_datum(
    stock: str, face: Face, y: Length, first: tuple[str, str], back: tuple[str, str]
) -> None:
    tapes = across(find(stock), face)
    sixty_fourth = L("1/64")
    readings = [tape.reading(y, tape.shift(y, sixty_fourth), System.FT_IN) for tape in tapes]
    assert [(reading.from_, L(reading.length_text)) for reading in readings] == [
        (datum, L(text)) for datum, text in (first, back)
    ]


def test_a_reading_past_its_datum_is_printed_with_the_side() -> None:
    top, bottom = across(find("W16X26"), Face.NEAR)
    assert top.reading(L("16.7"), ZERO, System.FT_IN).text == '1" above'
    assert bottom.reading(L("-1"), ZERO, System.FT_IN).text == '1" below'
    heel, toe = across(find("L4X3X5/16"), Face.LEG_A)
    assert heel.reading(L("-1/4"), ZERO, System.FT_IN).text == '1/4" past'
    assert toe.reading(L("4 1/4"), ZERO, System.FT_IN).from_ is Datum.PAST_TOE


def test_along_reads_from_the_left_end_and_checks_from_the_right() -> None:
    part = Part("B1", find("W16X26"), "A992", L("10'"))
    assert along(part).reading(L("4"), ZERO, System.FT_IN).text == '4"'
    assert along(part).reading(L("-1/2"), ZERO, System.FT_IN).from_ is Datum.PAST_LEFT
    right = along(part, End.RIGHT)
    assert right.reading(L("4"), ZERO, System.FT_IN).text == "9'-8\""
    assert right.reading(L("10'-1"), ZERO, System.FT_IN).from_ is Datum.PAST_RIGHT


def test_rounding_goes_to_the_nearest_division_and_ties_away_from_zero() -> None:
    part = Part("B1", find("W16X26"), "A992", L("10'"))
    scale, tape = along(part), L("1/16")
    for true, struck in (("4 1/32", "4 1/16"), ("4 1/64", "4"), ("4 3/64", "4 1/16"), ("-1/32", "1/16")):
        reading = scale.reading(L(true), scale.shift(L(true), tape), System.FT_IN)
        assert reading.tape == L(struck)
        assert abs(reading.error) <= L("1/32")


def test_rounding_across_the_datum_keeps_the_true_length_signed() -> None:
    scale = across(find("W16X26"), Face.TOP)[0]
    reading = scale.reading(L("-1/64"), scale.shift(L("-1/64"), L("1/16")), System.FT_IN)
    assert (reading.tape, reading.true, reading.error) == (ZERO, L("-1/64"), L("1/64"))


def test_readings_are_printed_without_rounding() -> None:
    assert printed_length(L("6 1/64"), System.FT_IN) == '6 1/64"'
    assert printed_length(L("152.5 mm"), System.MM) == "152.5"
    third = L("1") / 3
    assert parse_length(printed_length(third, System.FT_IN)) == third
    assert parse_length(printed_length(third, System.MM), Unit.MM) == third
    assert Reading(third, third, Datum.NEAR_OF_LINE, System.FT_IN).text.endswith(" mm near")


@pytest.mark.parametrize(
    ("datum", "hook", "plain"),
    [
        (Datum.PAST_LEFT, "left end", '1/2" outside'),
        (Datum.BELOW_BOTTOM, "bottom edge", '1/2" outside'),
        (Datum.ABOVE_TOP, "top edge", '1/2" outside'),
        (Datum.PAST_BACK, "back of the web", '1/2" outside'),
        (Datum.LEFT_END, "left end", '1/2"'),
        (Datum.NEAR_OF_LINE, "centre line", '1/2" near'),
    ],
)
def test_a_reading_off_the_steel_is_outside_its_end_or_edge(datum: Datum, hook: str, plain: str) -> None:
    half = Length.from_inches(1) / 2
    assert datum.hook == hook
    assert Reading(half, half, datum, System.FT_IN).plain == plain
