from __future__ import annotations

from dataclasses import replace

import pytest

from assembling import bay, detailed
from gageline.detail import Joint, Ladder, detail_frame
from gageline.job import FrameEntry, default_practice
from gageline.part import End
from gageline.units import System, parse_length


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
    assert "5 rows are not enough for the reaction, which asks for 10: 5 rows fit" in found.message


def test_more_rows_than_fit_are_never_left_out_silently() -> None:
    found = joint(ends={"rows": 9})
    assert found.ladder is not None
    assert found.ladder.rows == 5
    (said,) = [one for one in found.findings if one.code == "rows-as-given"]
    assert (said.severity, said.message) == ("error", "9 rows are given, 5 rows fit in the clear height")


def test_a_drop_that_the_cope_does_not_allow_is_a_finding() -> None:
    (said,) = [one for one in joint(ends={"drop": "1"}).findings if one.code == "drop-as-given"]
    assert 'the first row is 3 1/4" down' in said.message
    assert said.remedy == 'give a drop of 3 1/4" or more, or leave it out'
    assert not joint(ends={"drop": "4"}).findings


def test_one_row_is_less_than_half_of_the_depth_and_less_than_two_bolts() -> None:
    given = {"connection": "double angles"}
    found = {one.code: one for one in joint(beam="W14X22", girder="W8X18", drop="1", ends=given).findings}
    assert {"rows-for-depth", "two-bolts"} <= set(found)
    assert found["rows-for-depth"].message.startswith(
        "1 row is fewer than the 2 that half of the depth asks for"
    )
    assert found["two-bolts"].source == "29 CFR 1926.756(a)(1)"


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


@pytest.mark.parametrize(("bolt", "reaction", "said"), [("3/4", 90, "90 kip"), ("M20", 90, "400.34 kN")])
def test_the_reaction_is_in_the_units_of_the_bolts_value(bolt: str, reaction: float, said: str) -> None:
    # 90 kip are 400.34 kN (1 kip = 4.44822 kN)
    found = detailed(bay(ends={"bolt": bolt, "reaction": reaction}))
    (reason, _) = [one for one in found.reasons["B1"] if " rows at " in one.decision]
    assert f"the reaction of {said} asks for" in reason.because


def test_the_first_row_is_raised_where_only_then_two_rows_fit() -> None:
    # W8X10 under the cope of W12X26: 5.70 in are clear, and two rows want 5 1/2
    result = detailed(bay(beam="W8X10", girder="W12X26"))
    found = result.joints["B1", End.LEFT]
    assert found.ladder is not None
    assert found.ladder.rows == 2
    assert 144 - found.ladder.first == pytest.approx(2.75)
    assert any(one.because.endswith("the first one raised for that") for one in result.reasons["B1"])


def test_the_first_row_stays_where_the_document_puts_it() -> None:
    found = joint(beam="W8X10", girder="W12X26", ends={"drop": "3", "connection": "double angles"})
    assert found.ladder is not None
    assert (found.ladder.rows, found.ladder.pitch) == (2, parse_length("2 1/4"))
    assert 144 - found.ladder.first == pytest.approx(3.0)


def rows_of(grade: str, **ends: object) -> tuple[int, str]:
    """The rows at the start of B1 and their reason."""
    practice = replace(default_practice(System.FT_IN), bolt_grade=grade)
    entry = FrameEntry.model_validate(bay(ends=ends), context={"system": System.FT_IN})
    result, notes = detail_frame(entry, practice, System.FT_IN)
    assert not notes
    made = result.joints["B1", End.LEFT]
    assert made.ladder is not None
    (why,) = [one.because for one in made.reasons if " rows at " in one.decision]
    return made.ladder.rows, why


def test_the_reason_says_that_no_reaction_is_typed_and_what_a_row_carries() -> None:
    # a row of two 3/4 bolts in the 0.355 in web of W18X50: 87.8 x 0.355 = 31.2 kip
    said = "no reaction is typed at this end, a row carries"
    assert rows_of("A325-N")[1].startswith(f"{said} 31.2 kip; half of the coped depth")
    # AISC Design Examples v16, J.4A: 19.0 kip of a bolt in two planes
    slip = f"{said} 19.0 kip before A325-SC bolts slip; half of the coped depth"
    assert rows_of("A325-SC")[1].startswith(slip)


def test_slip_critical_bolts_get_the_rows_that_slip_asks_for() -> None:
    # 70 kip: three rows at 31.2, four at 19.0
    assert rows_of("A325-N", reaction=70)[0] == 3
    rows, why = rows_of("A325-SC", reaction=70)
    assert rows == 4
    assert "the reaction of 70 kip asks for 4 at 19.0 kip a row before A325-SC bolts slip" in why


def test_a_first_row_that_a_cope_lowers_says_so() -> None:
    said = ', the first one lowered from 3" to clear what is cut or curved over it'
    assert rows_of("A325-N")[1].endswith(said)
