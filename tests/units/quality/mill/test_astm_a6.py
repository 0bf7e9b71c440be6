"""What the limits say of themselves; their values row by row are in tests/published/quality/test_mill.py."""

from dataclasses import replace
from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.quality.limits import Limit, Trust
from gageline.quality.mill import astm_a6
from gageline.units import Length, System
from jobs import inches, piece_of, section_of


def limit_of(limit: Limit | None) -> Limit:
    assert limit is not None
    return limit


def test_the_nominal_depth_is_the_number_in_the_name() -> None:
    """W12X336 is 16.8 in deep."""
    assert astm_a6.nominal_depth(section_of(piece_of(stock="W12X336"))) == 12
    assert astm_a6.nominal_depth(section_of(piece_of(stock="M12.5X12.4"))) == Fraction(25, 2)
    with pytest.raises(ValueProblem, match="IPE 300 has no nominal depth in its name: use an ASTM A6 shape"):
        astm_a6.nominal_depth(section_of(piece_of(stock="IPE 300")))


def test_limits_tell_their_rule_and_where_it_stands() -> None:
    beam = section_of(piece_of(stock="W16X26"))
    length = limit_of(astm_a6.length(beam, inches("36'")))
    assert length.rule == "beams to 24 in nominal depth: 3/8, and 1/16 over for each further 5 ft past 30 ft"
    assert length.text(System.FT_IN) == '+1/2", -3/8"'
    assert length.cited == "ASTM A6, AISC Manual 14th ed. Table 1-22"
    column = limit_of(astm_a6.length(beam, inches("36'"), as_column=True))
    assert column.rule.startswith("deeper beams and all columns: 1/2")
    bow = limit_of(astm_a6.camber(beam, inches("50'"), as_column=True))
    assert bow.rule == "columns over 45 ft: 3/8, and 1/8 in each 10 ft past 45 ft"


@pytest.mark.parametrize(
    ("stock", "trust"),
    [("W16X26", Trust.READ), ("C8X11.5", Trust.MEMORY), ("L4X4X1/4", Trust.SECOND)],
)
def test_each_series_says_how_its_limits_are_known(stock: str, trust: Trust) -> None:
    section = section_of(piece_of(stock=stock))
    assert limit_of(astm_a6.depth(section)).trust is trust
    assert limit_of(astm_a6.flange_width(section)).trust is trust


def test_an_angle_is_held_at_each_leg_and_at_its_heel() -> None:
    angle = section_of(piece_of(stock="L6X4X1/2"))
    assert limit_of(astm_a6.depth(angle)).code == limit_of(astm_a6.flange_width(angle)).code == "a6-leg"
    assert limit_of(astm_a6.flange_tilt(angle)).rule == "3/128 in each inch of leg"
    assert limit_of(astm_a6.camber(angle, inches("20'"))) == astm_a6.sweep(angle, inches("20'"))
    assert astm_a6.web_off(angle) is None


def test_a_length_between_the_lines_falls_in_the_next() -> None:
    channel = section_of(piece_of(stock="C8X11.5"))
    over = [limit_of(astm_a6.length(channel, inches(feet))).over for feet in ("10'", "25'", "35'")]
    assert over == [inches("1 1/2"), inches("1 3/4"), inches("2 1/4")]


def test_a_beam_just_over_426_pounds_is_heavy() -> None:
    beam = section_of(piece_of(stock="W14X426"))
    heavier = replace(beam, weight=beam.weight + 1)
    assert limit_of(astm_a6.web_off(beam)).rule == "3/16 up to 426 lb/ft"
    assert limit_of(astm_a6.web_off(heavier)).over == Length.from_inches(Fraction(5, 16))
