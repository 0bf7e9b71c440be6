"""Double angles with each of their four attachments."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.strength import Check, Connection, Fillet, Method
from gageline.strength.kinds import double_angles

A1, A4 = EXAMPLES["II.A-1A"], EXAMPLES["II.A-4"]


def checks(connection: Connection, method: Method = Method.LRFD) -> dict[str, Check]:
    return {check.title: check for check in double_angles(connection, method).checks}


ANGLES = {"shear yielding of the angles", "shear rupture of the angles"}
ON_WEB = {"bolts through the beam web", "block shear of the angles, legs on the beam"}
ON_SUPPORT = {"bolts to the support, in pairs", "block shear of the angles, outstanding legs"}
WELDED_WEB = {"weld to the beam web", "beam web beside the weld"}
WELDED_SUPPORT = {"weld to the support", "support beside the weld"}


@pytest.mark.parametrize(
    ("example", "parts"),
    [
        ("II.A-1A", ON_WEB | ON_SUPPORT),
        ("II.A-2A", ON_WEB | WELDED_SUPPORT),
        ("II.A-5", WELDED_WEB | ON_SUPPORT),
        ("II.A-3", WELDED_WEB | WELDED_SUPPORT),
    ],
)
def test_each_attachment_has_its_limit_states(example: str, parts: set[str]) -> None:
    assert set(checks(EXAMPLES[example])) == ANGLES | parts


def test_the_angles_of_example_4_by_hand() -> None:
    """2 0.25 8.5 = 4.25 in² yield at 30: 127.5; less 3 0.875 each, 2.94 in² tear at 39, 0.75: 85.9 kips."""
    found = checks(A4)
    assert found["shear yielding of the angles"].capacity == pytest.approx(127.5)
    assert found["shear rupture of the angles"].capacity == pytest.approx(0.75 * 39 * 2 * 0.25 * 5.875)
    rupture = 39 * 2 * 0.25 * (7.25 - 2.5 * 0.875) + 65 * 2 * 0.25 * (1.375 - 0.4375)
    assert found["block shear of the angles, legs on the beam"].capacity == pytest.approx(0.75 * rupture)


def test_uneven_pitches_tear_by_their_own_distance() -> None:
    """Rows 2 and 4 in apart in a 0.10 in web: the second tears 2 - 13/16 in up to the first, the third shears
    its bearing, 2.4 0.75 = 1.8 in; the first is 4 1/4 in below the cope."""
    assert A4.beam is not None
    joint = replace(bolts(3, 2.125, 1.375), pitch=2.0, uneven=(2.0, 4.0))
    thin = replace(A4, beam=replace(A4.beam, t_w=0.10), to_beam=joint, drop=3.0)
    per_inch = 0.10 * 65
    expected = 0.75 * per_inch * (1.8 + 1.2 * (2 - 13 / 16) + 1.8)
    assert checks(thin)["bolts through the beam web"].capacity == pytest.approx(expected)


def test_a_weld_on_both_faces_of_the_support_needs_twice_its_thickness() -> None:
    example = EXAMPLES["II.A-3"]
    assert example.support is not None
    one = checks(example)["support beside the weld"].capacity
    both = replace(example, support=replace(example.support, both_faces=True))
    assert checks(both)["support beside the weld"].capacity == pytest.approx(one / 2)


def test_a_welded_support_says_what_it_leaves_out_under_an_axial_force() -> None:
    found = double_angles(replace(EXAMPLES["II.A-2A"], N=10.0), Method.ASD)
    assert [item.what for item in found.not_checked] == ["the axial force on the weld to the support"]
    assert "bolts through the beam web, both forces" in {check.title for check in found.checks}


def test_welds_carry_both_forces_at_their_angle() -> None:
    """A larger axial force asks for more, never less, of the weld than the reaction alone."""
    example = replace(EXAMPLES["II.A-3"], N=60.0, to_beam=Fillet(3 / 16))
    found = checks(example)
    alone, both = found["weld to the beam web"], found["weld to the beam web, both forces"]
    assert both.demand == pytest.approx((226.0**2 + 60.0**2) ** 0.5)
    assert both.utilisation > alone.utilisation * 0.9
