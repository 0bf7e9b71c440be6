import pytest

from gageline.errors import ValueProblem
from gageline.layout.cover import fewest


def sets(*texts: str) -> tuple[frozenset[int], ...]:
    return tuple(frozenset(int(digit) for digit in text) for text in texts)


def test_one_set_that_holds_all_is_enough() -> None:
    assert fewest(sets("01", "0123", "23"), 4) == (1,)


def test_the_largest_first_is_not_trusted_where_it_is_longer() -> None:
    # taking 2345 first leaves 01 and 67 apart: three sets; two are enough
    assert fewest(sets("2345", "0123", "4567"), 8) == (1, 2)


def test_nothing_to_cover_takes_nothing() -> None:
    assert fewest((), 0) == ()


def test_a_hole_that_nothing_reaches_is_named() -> None:
    with pytest.raises(ValueProblem, match="hole 2 is reached by no placement: give one that reaches it"):
        fewest(sets("01"), 3)
