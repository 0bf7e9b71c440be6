"""Areas through holes, by hand from Design Example II.A-4: 2L5x3-1/2x1/4, 8 1/2 in long, three 3/4 bolts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.errors import ValueProblem
from gageline.strength import Strength
from gageline.strength.kinds.areas import block_through_bolts, gross_shear, net_shear, pulled_areas

A4 = EXAMPLES["II.A-4"]
JOINT = bolts(3, 2.125, 1.375)


def values(strength: Strength) -> dict[str, float]:
    return {line.symbol: line.value for line in strength.steps}


def test_gross_area() -> None:
    """2 8.5 0.25 = 4.25 in², at 30 ksi 127.5 kips."""
    found = values(gross_shear(A4.fitting.steel, 8.5, 0.25, 2))
    assert (found["A_gv"], found["R_n"]) == pytest.approx((4.25, 127.5))


def test_net_area_with_and_without_holes() -> None:
    """2 (8.5 - 3 0.875) 0.25 = 2.94 in²."""
    assert values(net_shear(A4.fitting, JOINT, 2))["A_nv"] == pytest.approx(2.9375)
    assert values(net_shear(A4.fitting, None, 2))["A_nv"] == pytest.approx(4.25)


def test_holes_that_take_everything_are_refused() -> None:
    with pytest.raises(ValueProblem, match=r"10 holes take 8\.75 in of the 8\.5 in of 2L5X3-1/2X1/4"):
        net_shear(A4.fitting, replace(JOINT, rows=10), 2)


def test_the_block_of_the_beam_web() -> None:
    """The print: A_gv 2.57, A_nv 1.79, A_nt 0.333 in² (IIA-73)."""
    found = values(block_through_bolts(A4.fitting.steel, 0.355, JOINT, JOINT.other, (7.25, 1.375)))
    assert (found["A_gv"], found["A_nv"], found["A_nt"]) == pytest.approx((2.57, 1.79, 0.333), rel=0.005)
    assert found["R_n"] == pytest.approx(91.5, rel=0.005)


def test_a_block_pulled_along_two_lines() -> None:
    """2 1.5 0.25 = 0.75; 2 (1.5 - 0.4375) 0.25 = 0.531; (6 - 2 0.875) 0.25 = 1.0625 in²."""
    hole, gross, net, torn = pulled_areas(0.25, JOINT.holes, (1.5, 0.5), (6.0, 2.0), 2)
    assert hole.value == 0.875
    assert (gross.value, net.value, torn.value) == pytest.approx((0.75, 0.53125, 1.0625))


def test_slots_take_out_their_own_size_each_way() -> None:
    """13/16 by 1 in, long along the reaction: 1.0625 in of the shear, 0.875 in of the tension."""
    slot = replace(JOINT.holes, along=1.0)
    found = values(block_through_bolts(A4.fitting.steel, 0.25, JOINT, slot, (7.25, 1.375)))
    assert (found["d_n"], found["d_t"]) == (1.0625, 0.875)
    assert found["A_nv"] == pytest.approx((7.25 - 2.5 * 1.0625) * 0.25)
    assert found["A_nt"] == pytest.approx((1.375 - 0.4375) * 0.25)
