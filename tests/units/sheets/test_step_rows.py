from gageline.layout import Datum, Reading, Step
from gageline.part import Face
from gageline.sheets import BODY, Polygon, Weight, extent, texts
from gageline.sheets.step_rows import READING, step_block, steps_head
from gageline.steel import Profile
from gageline.units import System
from pieces import at

WIDTH = 190.0


def reading(text: str, datum: Datum = Datum.LEFT_END) -> Reading:
    return Reading(at(text), at(text), datum, System.FT_IN)


STEP = Step(
    "left top cope",
    Face.NEAR,
    "tape and square, drill",
    "left end and top edge",
    (reading('4 1/4"'), reading('1 3/4"', Datum.TOP_EDGE)),
    "Strike 4 1/4 long. Cut.",
    "Corner to corner 4 5/8.",
    "left top cope",
    7,
)


def test_a_row_says_everything_that_the_step_says() -> None:
    block = step_block(STEP, Profile.I_SHAPE, WIDTH)
    said = [text.text for text in texts(block.items)]
    for words in (" 7 ", "Left top cope", "Near web", "left end", "top edge", '4 1/4"', '1 3/4"'):
        assert words in said
    assert "from left end and top edge" in " ".join(said)
    assert "Corner to corner 4 5/8." in " ".join(said)
    assert "tape and square, drill" in said


def test_readings_are_large_and_nothing_is_smaller_than_ten_points() -> None:
    found = list(texts(step_block(STEP, Profile.I_SHAPE, WIDTH).items))
    sizes = {text.text: text.size for text in found}
    assert sizes['4 1/4"'] == READING > BODY
    assert min(sizes.values()) >= BODY
    assert all(text.weight is Weight.BOLD for text in found if text.text.endswith('"'))


def test_there_is_a_box_to_tick_and_the_row_holds_it_all() -> None:
    block = step_block(STEP, Profile.I_SHAPE, WIDTH)
    assert len([item for item in block.items if isinstance(item, Polygon)]) == 1
    box = extent(block.items)
    assert (box.left, box.top) >= (0.0, 0.0)
    assert box.right <= WIDTH
    assert box.bottom <= block.height


def test_many_readings_run_over_lines_inside_the_column() -> None:
    many = tuple(reading(f"{n}'-7 15/16\"") for n in range(10, 30))
    step = Step("rail posts", None, "tape", "left end", many, "", "", "rail posts", 3)
    block = step_block(step, Profile.I_SHAPE, WIDTH)
    large = [text for text in texts(block.items) if text.size == READING and text.text != " 3 "]
    assert [text.text for text in large] == [one.text for one in many]
    assert len({text.y for text in large}) > 4
    assert extent(tuple(large)).right < WIDTH * 0.6
    assert block.height > step_block(STEP, Profile.I_SHAPE, WIDTH).height


def test_the_heads_stand_over_the_columns() -> None:
    assert [text.text for text in texts(steps_head(WIDTH).items)] == [
        "Done",
        "Step",
        "Do, and what the tape reads",
        "Where, with what",
        "Check",
    ]
