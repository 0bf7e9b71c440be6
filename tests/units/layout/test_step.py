from gageline.layout.reading import Datum
from gageline.layout.step import Step, numbered, source


def test_steps_are_numbered_from_one() -> None:
    step = Step("Tack", None, "clamp", "", (), "Tack it.", "Square.")
    assert [one.number for one in numbered([step, step, step])] == [1, 2, 3]
    assert numbered([]) == ()


def test_the_side_is_left_off_where_the_tape_is_hooked() -> None:
    assert source(Datum.NEAR_OF_LINE) == source(Datum.FAR_OF_LINE) == "centre line"
    assert source(Datum.TOP_EDGE) == "top edge"
