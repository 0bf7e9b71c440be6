from gageline.quality.limits import Trust
from gageline.quality.mill import astm_a6, astm_tees
from jobs import inches, piece_of, section_of

TEE = section_of(piece_of(stock="WT6X20"))


def test_the_flange_of_a_tee_is_that_of_the_beam_it_was_split_from() -> None:
    beam = section_of(piece_of(stock="W12X40"))
    assert astm_tees.width(TEE) == astm_a6.flange_width(beam)
    assert astm_tees.width(section_of(piece_of(stock="MT5X4.5"))) is None


def test_depth_square_and_straightness_say_that_they_are_from_memory() -> None:
    limits = astm_tees.depth(TEE), astm_tees.out_of_square(TEE), astm_tees.straightness(inches("20'"))
    assert [limit.trust for limit in limits] == [Trust.MEMORY] * 3
    assert [limit.code for limit in limits] == ["a6-tee-depth", "a6-square", "a6-tee-straight"]
    assert limits[1].under is None
