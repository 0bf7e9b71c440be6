from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength import Method
from gageline.strength.aisc360 import j3_bolts
from gageline.strength.aisc360.j3_bolts import Hole


def test_an_unknown_bolt_group_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match=r"bolt group 'A325' is not one of A307, 120, 144, 150, 8.8, 10.9: give the"
    ):
        j3_bolts.bolt_shear("A325", "N", 0.75)


def test_threads_are_n_or_x() -> None:
    with pytest.raises(ValueProblem, match=r"threads 'SC' must be N .* or X"):
        j3_bolts.nominal_shear_stress("120", "SC")


def test_no_bolts_are_refused() -> None:
    with pytest.raises(ValueProblem, match=r"the group has 0 bolts, at least 1 is needed: give the strength"):
        j3_bolts.bolt_group([])


def test_a_bolt_without_limit_states_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"a bolt has 0 limit states, at least 1 is needed"):
        j3_bolts.effective_bolt([])


def test_no_shear_planes_are_refused() -> None:
    with pytest.raises(ValueProblem, match=r"n_s = 0 must be more than 0"):
        j3_bolts.bolt_shear("120", "N", 0.75, 0)


def test_a_hole_over_the_edge_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"l_c = -0.1 must be more than 0"):
        j3_bolts.tear_out(65, -0.1, 0.25)


def test_an_unknown_surface_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"faying surface class 'C' must be A or B"):
        j3_bolts.slip(28, surface="C")


def test_a_long_joint_counts_five_sixths() -> None:
    short = j3_bolts.bolt_shear("120", "N", 0.75, end_loaded_length=38.0).nominal
    assert j3_bolts.bolt_shear("120", "N", 0.75, end_loaded_length=38.1).nominal == pytest.approx(
        0.833 * short
    )


def test_long_slots_across_the_load_bear_less() -> None:
    assert j3_bolts.bearing(65, 1, 1, Hole.LONG_PERPENDICULAR).nominal == pytest.approx(2.0 * 65)
    assert j3_bolts.tear_out(65, 1, 1, Hole.LONG_PERPENDICULAR).nominal == pytest.approx(65)


def test_deformation_that_does_not_matter_lets_the_hole_stretch() -> None:
    assert j3_bolts.bearing(65, 1, 1, deformation=False).nominal == pytest.approx(3.0 * 65)
    assert j3_bolts.tear_out(65, 1, 1, deformation=False).nominal == pytest.approx(1.5 * 65)


def test_shear_beyond_the_bolt_leaves_no_tension() -> None:
    assert j3_bolts.bolt_tension_with_shear("120", "N", 0.75, 30, Method.LRFD).nominal == 0.0


def test_tension_beyond_the_pretension_leaves_no_slip() -> None:
    assert j3_bolts.slip_with_tension(28, 1, 40, Method.LRFD).value == 0.0


def test_two_fillers_slip_sooner() -> None:
    assert j3_bolts.slip(28, fillers=2).nominal == pytest.approx(0.85 * j3_bolts.slip(28, fillers=1).nominal)


@pytest.mark.parametrize("method", list(Method))
def test_a_bolt_that_its_shear_breaks_has_no_tension_left(method: Method) -> None:
    """3/4 in 120-N: 0.75 54 0.4418 = 17.9 kips by LRFD, 11.9 by ASD; J3.8 holds only up to there."""
    most = j3_bolts.bolt_shear("120", "N", 0.75).available(method)
    assert j3_bolts.bolt_tension_with_shear("120", "N", 0.75, most, method).nominal > 0
    assert j3_bolts.bolt_tension_with_shear("120", "N", 0.75, 1.01 * most, method).nominal == 0
