from gageline.quality.limits import Trust
from gageline.quality.mill import astm_a500
from gageline.units import System
from jobs import inches, piece_of, section_of

BOX, TUBE = (section_of(piece_of(stock=stock)) for stock in ("HSS6X4X1/4", "HSS6.000X0.375"))


def test_the_larger_side_decides_the_rule_for_both_sides() -> None:
    long, short = astm_a500.side(BOX, BOX.d), astm_a500.side(BOX, BOX.bf)
    assert long.rule == short.rule == "1 % of the side where the larger side is over 5 1/2 in"
    assert (long.text(System.FT_IN), short.text(System.FT_IN)) == ('±0.060"', '±0.040"')
    assert long.trust is Trust.SECOND


def test_a_tube_is_held_by_its_diameter_from_memory() -> None:
    limit = astm_a500.side(TUBE, TUBE.d)
    assert limit.rule == "0.75% of the diameter"
    assert limit.cited == "ASTM A500 (from memory)"


def test_length_and_straightness_have_their_own_codes() -> None:
    assert astm_a500.length(inches("22'")).code == "a500-length"
    assert astm_a500.length(inches("22'")).trust is Trust.MEMORY
    assert astm_a500.straightness(inches("20'")).over == inches("1/2")
    assert astm_a500.straightness(inches("20'")).trust is Trust.SECOND
