from gageline.quality.mill import en_10219
from gageline.units import Length, System
from jobs import piece_of, section_of

BOX, TUBE = (section_of(piece_of(stock=stock)) for stock in ("HSS6X6X3/8", "HSS6.000X0.375"))


def test_a_box_steps_by_its_side() -> None:
    rules = [en_10219.side(BOX, Length.from_mm(side)).rule for side in (99, 100, 200, 201)]
    assert rules == [
        "under 100: 1 %, 0.5 mm at the least",
        "100 to 200: 0.8 %",
        "100 to 200: 0.8 %",
        "over 200: 0.6 %",
    ]


def test_a_tube_is_held_between_half_a_millimetre_and_ten() -> None:
    sides = [en_10219.side(TUBE, Length.from_mm(d)).text(System.MM) for d in (40, 100, 1100)]
    assert sides == ["±0.5", "±1", "±10"]


def test_a_tube_may_bow_more_than_a_box() -> None:
    box, tube = (en_10219.straightness(section, Length.from_mm(6000)) for section in (BOX, TUBE))
    assert (box.text(System.MM), tube.text(System.MM)) == ("±9", "±12")
    assert en_10219.length().text(System.MM) == "+50, -0"
    assert en_10219.length().cited == "EN 10219-2"
