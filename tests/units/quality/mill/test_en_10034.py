from dataclasses import replace

from gageline.quality.limits import Trust
from gageline.quality.mill import en_10034
from gageline.units import Length, System
from jobs import piece_of, section_of

BEAM = section_of(piece_of(stock="IPE 300"))


def test_an_ipe_300() -> None:
    """h 300: +4 -2; b 150: +4 -2; 2 % of 150; web 3.5; 0.15 % of 10 m (EN 10034 as a maker prints it)."""
    limits = (
        en_10034.depth(BEAM), en_10034.width(BEAM), en_10034.tilt(BEAM), en_10034.web_off(BEAM),
        en_10034.straightness(BEAM, Length.from_mm(10_000)),
    )  # fmt: skip
    texts = [limit.text(System.MM) for limit in limits]
    assert texts == ["+4, -2", "+4, -2", "±3", "±3.5", "±15"]
    assert {limit.cited for limit in limits} == {"EN 10034"}


def test_the_one_value_from_memory_says_so() -> None:
    wide = replace(BEAM, bf=Length.from_mm(326))
    assert en_10034.web_off(wide).trust is Trust.MEMORY
    assert en_10034.web_off(replace(wide, tf=Length.from_mm(40))).trust is Trust.READ


def test_a_least_length_may_not_be_short() -> None:
    assert en_10034.length().text(System.MM) == "±50"
    assert en_10034.length(at_least=True).text(System.MM) == "+100, -0"
