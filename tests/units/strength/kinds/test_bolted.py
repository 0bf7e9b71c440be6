from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.errors import ValueProblem
from gageline.strength.kinds.bolted import Ply, bolt_coefficient, eccentric_rows, net_modulus, row_strengths

FITTING = EXAMPLES["II.A-18"].fitting


def test_the_row_at_the_edge_tears_out_and_the_others_do_not() -> None:
    joint = bolts(3, 2.0, 1.5)
    ply = Ply(FITTING.steel, 0.25, joint.holes, edge=1.25)
    top, middle, bottom = row_strengths(joint, 2, [ply])
    assert top.nominal == middle.nominal == pytest.approx(2.4 * 0.75 * 0.25 * 65)
    assert bottom.nominal == pytest.approx(1.2 * (1.25 - 13 / 32) * 0.25 * 65)
    upside, *_ = row_strengths(joint, 2, [replace(ply, at_top=True)])
    assert upside.nominal == bottom.nominal


def test_the_modulus_without_holes_is_that_of_the_plate() -> None:
    joint = bolts(3, 2.0, 1.5)
    tiny = replace(joint, holes=replace(joint.holes, along=1e-9))
    fitting = replace(FITTING, length=8.5)
    exact = 0.25 * 8.5**2 / 4
    holes = (
        2 * 3.0 * 0.25 / 16 + 0.25 * (1 / 16) ** 2 / 4
    )  # two holes of a sixteenth 3 in out, one in the middle
    assert net_modulus(fitting, tiny) == pytest.approx(exact - holes, rel=1e-6)


def test_the_modulus_by_slices() -> None:
    """An even number of holes, none in the middle: each takes its area times its distance."""
    joint, fitting = bolts(4, 2.0, 1.5), replace(FITTING, length=11.5)
    expected = 0.25 * 11.5**2 / 4 - 0.25 * 0.875 * 2 * (1.5 + 4.5)
    assert net_modulus(fitting, joint) == pytest.approx(expected, rel=1e-9)


def test_the_coefficient_of_table_7_6() -> None:
    """Manual Table 7-6, four bolts at 3 in, 2 in away: 3.32 (from memory)."""
    assert bolt_coefficient(bolts(4, 2.0, 1.5), 2.0) == pytest.approx(3.32, abs=0.005)


def test_one_bolt_takes_no_eccentric_load() -> None:
    with pytest.raises(ValueProblem, match="one bolt cannot carry an eccentric load"):
        eccentric_rows(bolts(1, 2.0, 1.5), 1, [], 2.0)
