from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail.line import Frame


def frame(**member: object) -> Frame:
    return detailed(bay(**member)).frame  # type: ignore[arg-type] # keys of the beam


def test_a_beam_lies_along_its_line_with_its_near_side_to_the_right() -> None:
    line = frame().lines["B1"]
    assert line.ex == (0.0, 1.0, 0.0)
    assert line.ey == (0.0, 0.0, 1.0)
    assert line.ez == (1.0, 0.0, 0.0)
    assert line.run == 180


def test_the_space_of_a_beam_starts_at_its_underside() -> None:
    line = frame().lines["B1"]
    assert line.local((120.0, 0.0, 144.0)) == pytest.approx((0.0, 18.0, 0.0))


def test_a_sloped_beam_rises_and_is_deeper_plumb() -> None:
    line = frame(rise="1/2 in 12").lines["B1"]
    assert line.slope == pytest.approx(1 / 24)
    assert line.top_at((120.0, 60.0, 0.0)) == pytest.approx(144 + 2.5)
    assert line.upright_depth() == pytest.approx(18 * (1 + (1 / 24) ** 2) ** 0.5)


def test_columns_and_beams_are_told_apart() -> None:
    column = {
        "name": "P",
        "at": {"point": "1/A", "x": 20, "y": 60},
        "stock": "W8X31",
        "base": "0",
        "top": "Floor",
    }
    both = detailed(bay(column=column)).frame
    assert [line.name for line in both.columns] == ["P"]
    assert {line.name for line in both.beams} == {"G1", "G2", "B1"}
