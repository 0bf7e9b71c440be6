import pytest

from gageline.errors import ValueProblem
from gageline.units import Length, round_down, round_to, round_up

SIXTEENTH = Length.from_inches(0.0625)


def test_a_tie_goes_away_from_zero() -> None:
    tie = Length.from_inches(0.03125)
    assert round_to(tie, SIXTEENTH) == SIXTEENTH
    assert round_to(-tie, SIXTEENTH) == -SIXTEENTH


def test_up_and_down() -> None:
    length = Length.from_inches(1.04)
    assert round_up(length, SIXTEENTH) == Length.from_inches(1.0625)
    assert round_down(length, SIXTEENTH) == Length.from_inches(1)
    assert round_up(-length, SIXTEENTH) == Length.from_inches(-1)
    assert round_down(-length, SIXTEENTH) == Length.from_inches(-1.0625)


@pytest.mark.parametrize("work", [round_to, round_up, round_down])
def test_a_step_of_nothing_is_refused(work: object) -> None:
    with pytest.raises(ValueProblem, match="tape step 0 ticks is not above zero"):
        work(SIXTEENTH, Length(0))  # type: ignore[operator]  # one of the three functions
