from gageline.quality.limits import Trust
from gageline.quality.mill import flats
from gageline.steel import Measure, Plate
from gageline.units import Length, System
from jobs import inches

BAR, EUROPEAN = Plate(inches("1/2"), inches("6")), Plate(Length.from_mm(10), Length.from_mm(100), Measure.EU)


def test_bars_of_both_worlds_from_memory() -> None:
    width, metric = flats.width(BAR), flats.width(EUROPEAN)
    assert width is not None
    assert metric is not None
    assert (width.text(System.FT_IN), metric.text(System.MM)) == ('+3/32", -1/16"', "±1.5")
    assert width.trust is metric.trust is Trust.MEMORY
    assert (width.code, metric.code) == ("a6-flat-width", "en10058-width")


def test_what_is_wider_than_a_bar_has_no_limits() -> None:
    for plate in (
        Plate(inches("1/2"), inches("9")),
        Plate(Length.from_mm(10), Length.from_mm(160), Measure.EU),
    ):
        assert flats.width(plate) is None
        assert flats.straightness(plate, inches("20'")) is None


def test_bow_tells_its_rule() -> None:
    bow = flats.straightness(EUROPEAN, Length.from_mm(6000))
    assert bow is not None
    assert (bow.text(System.MM), bow.rule) == ("±15", "0.25% of the length, from 1000 mm²")
