from gageline.job import Corner, EndReadings
from gageline.layout import fit_end
from gageline.part import End
from gageline.sheets import Circle, Text
from gageline.sheets.end_picture import end_pictures
from jobs import inches
from sticks import corners

WORDS = ("tn", "tf", "bn", "bf")


def test_from_outside_the_near_side_changes_hands() -> None:
    """Facing the left end of a beam its near side is at the right hand; facing the right end, at the left."""
    plane = fit_end(EndReadings(), inches("16"), inches("6"))
    block = end_pictures(dict.fromkeys(End, plane), dict.fromkeys(End, WORDS), 180)
    at = {(item.text, item.x > 90): item for item in block.items if isinstance(item, Text)}
    assert at["tn", False].x > at["tf", False].x
    assert at["tn", True].x < at["tf", True].x
    assert at["tn", False].y < at["bn", False].y
    assert not [item for item in block.items if isinstance(item, Circle)]


def test_the_corner_that_reaches_furthest_is_marked() -> None:
    plane = fit_end(corners("0", "-1/8", "-1/8", "-1/4"), inches("16"), inches("6"))
    assert plane.high is Corner.TOP_NEAR
    block = end_pictures(dict.fromkeys(End, plane), dict.fromkeys(End, WORDS), 180)
    left, right = (item for item in block.items if isinstance(item, Circle))
    named = [item for item in block.items if isinstance(item, Text) and item.text == "tn"]
    for dot, name in zip((left, right), named, strict=True):
        assert abs(dot.x - name.x) < 4
        assert dot.y == name.y
