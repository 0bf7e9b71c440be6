import pytest

from gageline.sheets import Line, extent
from gageline.sheets.scale_bar import BAR_HEIGHT, BAR_LENGTH, scale_bar


def test_the_bar_is_six_inches_and_its_lower_ticks_end_at_150_millimetres() -> None:
    lines = [item for item in scale_bar() if isinstance(item, Line)]
    assert lines[0].x2 - lines[0].x1 == BAR_LENGTH == pytest.approx(6 * 25.4)
    above = sorted({line.x1 for line in lines[1:] if line.y1 < lines[0].y1})
    below = sorted({line.x1 for line in lines[1:] if line.y2 > lines[0].y1})
    assert above == [n * 25.4 for n in range(7)]
    assert below == [n * 10.0 for n in range(16)]


def test_it_stays_within_its_height() -> None:
    box = extent(tuple(scale_bar()))
    assert box.top >= 0
    assert box.bottom <= BAR_HEIGHT
    assert (box.left, box.right) == (0.0, BAR_LENGTH)
