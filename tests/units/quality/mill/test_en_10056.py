from gageline.quality.limits import Trust
from gageline.quality.mill import en_10056
from gageline.units import Length, System
from jobs import piece_of, section_of

ANGLE = section_of(piece_of(stock="L 100x65x9"))


def test_each_leg_by_itself_and_the_rest_by_the_longer_leg() -> None:
    """From memory."""
    assert en_10056.leg(ANGLE.d).text(System.MM) == "±2"
    assert en_10056.leg(ANGLE.bf).text(System.MM) == "±2"
    assert en_10056.tilt(ANGLE).text(System.MM) == "±1"
    bow = en_10056.straightness(ANGLE, Length.from_mm(6000))
    assert (bow.text(System.MM), bow.rule) == ("±24", "0.4% of the length")


def test_all_are_from_memory() -> None:
    limits = en_10056.leg(ANGLE.d), en_10056.tilt(ANGLE), en_10056.length()
    assert {limit.trust for limit in limits} == {Trust.MEMORY}
    assert {limit.cited for limit in limits} == {"EN 10056-2 (from memory)"}
