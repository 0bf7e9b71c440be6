"""A girder that bears on a column, its web over it."""

from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from gageline.strength import Method, NotChecked, hand_down
from gageline.strength.bearings import Found, bearings_of
from gageline.units import System


def found(live: str | None, girder: str = "W21X62") -> list[Found | NotChecked]:
    loads = [{"case": "live", "uniform": live}] if live else []
    frame: dict[str, Any] = bay(girder=girder, loads=loads)
    under = {"stock": "W10X49", "base": "0", "under": "G1"}
    frame["column"] = [{"name": "P1", "at": "1/A", **under}, {"name": "P2", "at": "2/A", **under}]
    frame["member"][0].pop("ends")
    frame["member"][0] |= {"start": {"connection": "bearing"}, "end": {"connection": "bearing"}}
    result = detailed(frame)
    return list(bearings_of(result, hand_down(result, System.FT_IN), Method.LRFD))


def test_the_web_over_the_column_at_the_end() -> None:
    """15 ft at 2 kip/ft live: 15 kips on G1, 7.5 on P1, 1.6 7.5 = 12.0 kips.

    W21x62, t_w 0.400, k 1.12, l_b 10.0 (W10x49): 50 0.400 (2.5 1.12 + 10.0) = 256 kips.
    """
    first = found("2 kip/ft")[0]
    assert not isinstance(first, NotChecked)
    where, section, (yielding, crippling) = first
    assert (where, section) == ("G1 over P1", "W21X62")
    assert yielding.demand == pytest.approx(12.0)
    assert yielding.capacity == pytest.approx(256, rel=0.005)
    assert crippling.title == "local crippling of the web"


def test_a_reaction_that_is_not_known_is_said() -> None:
    assert found(None)[0] == NotChecked("G1 over P1", "its reaction is not known")


def test_a_web_that_needs_its_stiffeners_is_said() -> None:
    first = found("400 kip/ft", girder="W12X26")[0]
    assert first == NotChecked("G1 over P1", "its web needs its stiffeners, which are not covered")


@pytest.mark.parametrize(
    ("overhang", "inside"), [(30, (True, True)), (18, (False, True)), (9, (False, False))]
)
def test_a_web_under_an_overhang_by_how_far_its_end_is(overhang: int, inside: tuple[bool, bool]) -> None:
    """J10.2 and J10.3: W21x62 is 21.0 in deep; farther than that, and half of it, the web goes on.

    50 0.400 (5 1.12 + 10.0) = 312 and (2.5 1.12 + 10.0) 20 = 256 kips; crippling halves at the end.
    """
    frame: dict[str, Any] = bay(girder="W21X62", loads=[{"case": "live", "uniform": "2 kip/ft"}])
    under = {"stock": "W10X49", "base": "0", "under": "G1"}
    at = {"point": "1/A", "x": 240 - overhang}
    frame["column"] = [{"name": "P1", "at": "1/A", **under}, {"name": "P2", "at": at, **under}]
    frame["member"][0] |= {"start": {"connection": "bearing"}, "end": {"connection": "free"}}
    frame["member"][0].pop("ends")
    result = detailed(frame)
    yielding, crippling = next(
        one[2]
        for one in bearings_of(result, hand_down(result, System.FT_IN), Method.LRFD)
        if not isinstance(one, NotChecked) and one[0] == "G1 over P2"
    )
    assert yielding.capacity == pytest.approx(312 if inside[0] else 256, rel=0.005)
    assert ("0.80" in crippling.steps[-2].formula) is inside[1]
