"""What is written along members and beside columns."""

import pytest

from gageline.sheets.notation import Scribe
from gageline.sheets.placing import Label
from gageline.sheets.plan_labels import beam_labels, column_label, signed
from gageline.sheets.plan_members import PlanBeam, PlanColumn
from gageline.sheets.plan_regions import Region
from gageline.sheets.plan_signs import PlanView
from gageline.steel import Section, find
from gageline.units import Length, System

FEET = Scribe(System.FT_IN, Length.from_inches(1 / 16))
METRIC = Scribe(System.MM, Length.from_mm(1))

ALONG = ((10.0, 50.0), (90.0, 50.0))


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


def beam(
    name: str = "B1",
    mark: str = "B1",
    *,
    drops: tuple[float, float] = (0.0, 0.0),
    slope: float = 0.0,
    skews: tuple[float, float] = (0.0, 0.0),
    offset: float = 0.0,
) -> PlanBeam:
    ends = ((0.0, 0.0), (240.0, 0.0))
    kinds = ("double angles", "double angles")
    return PlanBeam(name, mark, section("W16x26"), *ends, ends, kinds, drops, slope, skews, offset)


def said(label: Label) -> str:
    return "".join(text for text, _ in label.runs)


def words(one: PlanBeam, scribe: Scribe = FEET) -> list[str]:
    return [said(label) for label in beam_labels(one, ALONG, scribe)]


def test_a_plain_beam_has_one_label_with_its_mark_and_section() -> None:
    assert words(beam()) == ["B1 W16X26"]


def test_the_place_of_a_shared_mark_the_slope_the_skew_and_the_offset_are_notes() -> None:
    # 3 in 12 is 14.036 degrees
    one = beam("B8", slope=-1 / 48, skews=(14.0362, 14.0362), offset=-6.0, drops=(-1.0, -6.0))
    assert words(one)[1] == 'place B8, slope 1/4 in 12, skew 3 in 12, 6" off line'


def test_a_level_drop_stands_with_the_mark_and_a_sloping_one_at_each_end() -> None:
    assert words(beam(drops=(-2.25, -2.25))) == ['B1 W16X26 (−2 1/4")']
    assert words(beam(drops=(-1.0, -2.625), slope=-1 / 48))[2:] == ['(−1")', '(−2 5/8")']


def test_a_drop_that_no_tape_shows_is_none() -> None:
    assert words(beam(drops=(-0.01, -0.01))) == ["B1 W16X26"]


def test_what_the_ends_of_a_skewed_beam_say_stands_at_them() -> None:
    labels = list(beam_labels(beam(), ALONG, FEET, ("8'-0\" from 2", "")))
    assert [said(label) for label in labels] == ["B1 W16X26", "8'-0\" from 2"]
    ((x, y),) = labels[1].targets
    assert x < 30
    assert y == 50


def test_a_member_shorter_than_its_name_has_one_label_with_all_of_it() -> None:
    (label,) = beam_labels(beam("B8"), ((10.0, 50.0), (22.0, 50.0)), FEET)
    assert said(label) == "B1 W16X26, place B8"


def test_a_long_label_may_be_broken_into_mark_and_section() -> None:
    label = next(beam_labels(beam(drops=(3.0, 3.0)), ALONG, FEET))
    assert [said(half) for half in label.halves or ()] == ["B1", 'W16X26 (+3")']


@pytest.mark.parametrize(
    ("inches", "scribe", "text"),
    [
        (144.0, FEET, "+12'-0\""),
        (-2.25, FEET, '−2 1/4"'),
        (0.0, FEET, '±0"'),
        (100.0, METRIC, "+2540"),
        (0.0, METRIC, "±0"),
    ],
)
def test_heights_have_their_sign(inches: float, scribe: Scribe, text: str) -> None:
    assert signed(inches, scribe) == text


@pytest.mark.parametrize(
    ("name", "mark", "text"),
    [("P1", "P1", "P1"), ("P2", "P1", "P1, place P2"), ("P3", "P3.1", "P3.1"), ("p4", "P4", "P4")],
)
def test_a_column_says_its_mark_and_its_place_where_that_is_another(name: str, mark: str, text: str) -> None:
    view = PlanView(Region(0, 0, 240, 240), 0.25, 20.0, 100.0)
    column = PlanColumn(name, mark, section("W10x49"), (120.0, 120.0), (1.0, 0.0), below=False)
    label = column_label(column, view)
    assert said(label) == text
    assert label.targets == ((50.0, 70.0),)
