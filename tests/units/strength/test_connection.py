from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from connections import EXAMPLES, bolts
from gageline.errors import ValueProblem
from gageline.strength import Beam, Fillet, Fitting, Material, Notch, Tongue

BEAM = Beam("W18X50", Material("A992", 50.0, 65.0), 18.0, 0.355, 7.5, 0.57, 0.972)


def test_copes_come_off_the_depth() -> None:
    coped = replace(BEAM, top=Notch(4.0, 2.0), bottom=Notch(3.0, 1.5))
    assert coped.h_o == 14.5
    assert BEAM.h_o == 18.0
    assert BEAM.h_tw == pytest.approx(45.2, rel=0.002)  # Manual Table 1-1, from memory


def test_copes_that_leave_no_web_are_refused() -> None:
    with pytest.raises(ValueProblem, match=r"the copes of W18X50 leave h_o = -2 in of a depth of 18 in"):
        replace(BEAM, top=Notch(4.0, 20.0))


@pytest.mark.parametrize(("name", "value"), [("d", 0.0), ("rows", 0), ("pitch", -3.0), ("edge_top", 0.0)])
def test_bolts_without_size_or_number_are_refused(name: str, value: Any) -> None:
    with pytest.raises(ValueProblem, match=rf"{name} = .* must be more than 0"):
        replace(bolts(3, 2.0, 1.5), **{name: value})


def test_columns_need_a_distance() -> None:
    with pytest.raises(ValueProblem, match="2 columns of bolts are 0 in apart"):
        replace(bolts(3, 2.0, 1.5), columns=2)


def test_a_weld_without_a_leg_is_refused() -> None:
    with pytest.raises(ValueProblem, match="leg = 0 must be more than 0"):
        Fillet(0.0)


def test_a_negative_reaction_is_refused() -> None:
    with pytest.raises(ValueProblem, match="V = -5 must be more than 0"):
        replace(EXAMPLES["II.A-4"], V=-5.0)


def test_the_beam_is_asked_for_where_it_is_not_known() -> None:
    unknown = replace(EXAMPLES["II.A-18"], beam=None)
    with pytest.raises(ValueProblem, match=r"II.A-18 has no beam, its checks need one"):
        _ = unknown.end


def test_what_the_fitting_lies_against_at_the_beam() -> None:
    plate = Fitting("PL3/8X4-3/8", Material("A36", 36.0, 58.0), 0.375, 5.5, 4.375)
    tongue = Tongue("HSS6X4X1/4", plate, plate, Fillet(0.25), 1.25, 1.875)
    example = EXAMPLES["II.A-18"]
    assert example.web_thickness == 0.300
    assert replace(example, beam=None).web_thickness is None
    assert replace(example, beam=None, tongue=tongue).web_thickness == 0.375
    with pytest.raises(ValueProblem, match=r"to_cap = 0 must be more than 0"):
        replace(tongue, to_cap=0.0)
