from __future__ import annotations

import pytest

from gageline.strength import Fillet, Material, wrench
from gageline.strength.aisc360.j2_welds import fillet_weld
from gageline.strength.kinds.welded import beside_weld, c_shape, counted, eccentric_lines, upright_line


def test_a_line_loaded_along_itself_carries_almost_all_of_its_strength() -> None:
    weld = Fillet(0.25)
    found = eccentric_lines(weld, upright_line(10.0), wrench(0.0, 0.0).tolist(), 0.0, 2)
    whole = fillet_weld(0.25, 20.0).nominal
    assert found.nominal == pytest.approx(whole, rel=0.005)


def test_returns_toward_the_load_help() -> None:
    weld, load = Fillet(0.25), wrench(0.0, 3.5).tolist()
    bare = eccentric_lines(weld, upright_line(10.0), load, 3.5, 1)
    returned = eccentric_lines(weld, c_shape(10.0, 2.0), load, 3.5, 1)
    assert returned.nominal > bare.nominal


def test_steel_of_the_least_thickness_matches_the_weld() -> None:
    """Manual Equation 9-6: 3.09 times the sixteenths over F_u."""
    weld = fillet_weld(5 / 16, 10.0)
    beside = beside_weld(weld, Fillet(5 / 16), Material("A992", 50.0, 65.0), 3.0936 * 5 / 65, 1)
    assert beside.nominal == pytest.approx(weld.nominal, rel=1e-3)


def test_of_a_line_shorter_than_four_legs_a_quarter_of_its_length_counts() -> None:
    """J2.2b(c): a return of 1 in with a leg of 3/8 counts as 1/4 in, in the whole group."""
    load = wrench(0.0, 3.5).tolist()
    short = eccentric_lines(Fillet(3 / 8), c_shape(10.0, 1.0), load, 3.5, 1)
    assert short.nominal == eccentric_lines(Fillet(1 / 4), c_shape(10.0, 1.0), load, 3.5, 1).nominal
    assert short.steps[0].symbol == "w_e"
    assert counted(Fillet(1 / 4), 1.0) == (Fillet(1 / 4), ())
