from gageline.quality.limits import Trust
from gageline.quality.mill import en_10279
from gageline.units import Length, System
from jobs import piece_of, section_of

CHANNEL = section_of(piece_of(stock="UPN 200"))


def test_a_upn_200() -> None:
    """h 200 and b 75, from memory."""
    long = Length.from_mm(10_000)
    limits = (
        en_10279.depth(CHANNEL), en_10279.width(CHANNEL), en_10279.tilt(CHANNEL), en_10279.length(),
        en_10279.straightness(CHANNEL, long, sideways=False),
        en_10279.straightness(CHANNEL, long, sideways=True),
    )  # fmt: skip
    assert [limit.text(System.MM) for limit in limits] == ["±2", "±2", "±2", "±50", "±20", "±30"]
    assert {limit.trust for limit in limits} == {Trust.MEMORY}
    assert limits[-1].rule == "0.30% of the length"
