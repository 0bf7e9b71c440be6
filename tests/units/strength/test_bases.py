"""What comes down the columns of a small frame, and their base plates."""

from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from gageline.strength import Case, CheckedColumn, Method, NotChecked, hand_down
from gageline.strength.bases import columns_of
from gageline.units import System

LOADS = [{"case": "dead", "uniform": "1 kip/ft"}, {"case": "live", "uniform": "4 kip/ft"}]


def found(
    stock: str = "W10X49", method: Method = Method.LRFD, **beam: Any
) -> list[CheckedColumn | NotChecked]:
    frame: dict[str, Any] = bay(**beam)
    plate = {"thickness": "3/4", "length": 16, "width": 16}
    frame["column"] = [
        {"name": name, "at": at, "stock": stock, "base": "0", "top": "Floor", "base_plate": plate}
        for name, at in (("P1", "1/A"), ("P2", "2/A"), ("P3", "1/B"), ("P4", "2/B"))
    ]
    for girder in frame["member"][:2]:
        girder.pop("ends")
    result = detailed(frame)
    return list(columns_of(result, hand_down(result, System.FT_IN), method))


def test_a_quarter_of_the_beam_comes_down_each_column() -> None:
    """15 ft: dead 3.75 and live 15 kips; 1.2 3.75 + 1.6 15 = 28.5 by LRFD, 18.75 by ASD."""
    for method, P in ((Method.LRFD, 28.5), (Method.ASD, 18.75)):
        (first, *_) = found(method=method, loads=LOADS)
        assert isinstance(first, CheckedColumn)
        assert dict(first.total) == pytest.approx({Case.DEAD: 3.75, Case.LIVE: 15.0})
        assert pytest.approx(P) == first.P


def test_the_thickness_of_a_base_plate() -> None:
    """W10x49, d 10.0, b_f 10.0: m (16 - 9.5)/2 = 3.25, n (16 - 8)/2 = 4, n' 2.5; l = 4.

    4 sqrt(2 28.5/(0.9 50 256)) = 0.281 in (A572-50 plate).
    """
    (first, *_) = found(loads=LOADS)
    assert isinstance(first, CheckedColumn)
    (check,) = first.checks
    assert check.title == "thickness of the base plate of P1, PL3/4X16"
    F_y = dict(check.steps[-1].values)["F_y"]
    assert check.demand == pytest.approx(4 * (2 * 28.5 / (0.9 * F_y * 256)) ** 0.5, rel=2e-3)
    assert check.capacity == 0.75


def test_a_hollow_column_has_its_own_overhang() -> None:
    """HSS6x6: (16 - 0.95 6)/2 = 5.15 in."""
    (first, *_) = found("HSS6X6X3/8", loads=LOADS)
    assert isinstance(first, CheckedColumn)
    assert first.checks[0].steps[2].value == pytest.approx(5.15)
    assert "the concrete under base plates, and anchor rods" in {one.what for one in first.not_checked}


def test_columns_of_loads_that_are_not_known_say_so() -> None:
    (first, *_) = found()
    assert first == NotChecked("what comes down P1", "reactions are not known of G1")
