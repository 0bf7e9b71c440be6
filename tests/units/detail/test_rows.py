from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import Joint, Ladder
from gageline.part import End
from gageline.units import parse_length


def joint(**keys: object) -> Joint:
    return detailed(bay(**keys)).joints["B1", End.LEFT]  # type: ignore[arg-type] # keys of the beam


def ladder(**keys: object) -> Ladder:
    found = joint(**keys).ladder
    assert found is not None
    return found


@pytest.mark.parametrize(("reaction", "rows"), [(0, 3), (60, 3), (100, 4), (140, 5)])
def test_rows_follow_from_the_reaction_and_half_of_the_depth(reaction: float, rows: int) -> None:
    # a row of two 3/4 bolts in the 0.355 in web of W18X50: 87.8 x 0.355 = 31.2 kip; coped depth 16, half 8
    assert ladder(ends={"reaction": reaction}).rows == rows


def test_a_reaction_that_no_rows_carry_is_a_finding() -> None:
    (found,) = [one for one in joint(ends={"reaction": 300}).findings if one.code == "rows-for-reaction"]
    assert "5 rows do not carry the reaction, which asks for 10" in found.message


def test_the_first_row_is_three_inches_down_unless_a_cope_forbids() -> None:
    # a cope 2 in deep and 1 1/4 in to the first hole
    assert 144 - ladder().first == pytest.approx(3.25)
    assert 144 + 0 - ladder(drop="2").first - 2 == pytest.approx(3.0)


def test_the_material_is_as_long_as_its_rows() -> None:
    assert ladder().length == parse_length("8 1/2")


def test_two_shallow_beams_leave_no_room() -> None:
    found = joint(beam="W8X18", girder="W8X18", drop="4", ends={"connection": "double angles"})
    assert found.kind == "free"
    assert [one.code for one in found.findings if one.severity == "error"][-1] == "no-room-for-bolts"
