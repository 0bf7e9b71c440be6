from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength import Method
from gageline.strength.aisc360 import j10_forces


def test_a_stocky_web_does_not_sway() -> None:
    with pytest.raises(ValueProblem, match=r"is more than 1.7: web sidesway buckling does not apply here"):
        j10_forces.web_sidesway_buckling(
            0.25, 0.5, 7, 20, 100, M_r=1, M_y=2, method=Method.LRFD, restrained=False
        )


def test_a_restrained_flange_reaches_further() -> None:
    found = j10_forces.web_sidesway_buckling(
        0.25, 0.5, 7, 20, 270, M_r=1, M_y=2, method=Method.LRFD, restrained=True
    )
    assert found.nominal == pytest.approx(960_000 * 0.25**3 * 0.5 / 400 * (1 + 0.4 * (80 * 7 / 270) ** 3))


def test_the_two_crippling_equations_meet() -> None:
    # Equations J10-5a and J10-5b at a bearing of a fifth of the depth
    below, above = (
        j10_forces.web_local_crippling(50, 0.3, 0.5, 20, 4.0 * f, 0).nominal for f in (1 - 1e-9, 1 + 1e-9)
    )
    assert below == pytest.approx(above, rel=1e-6)


def test_an_end_is_weaker_than_the_middle() -> None:
    ends = j10_forces.web_local_yielding(50, 0.3, 1, 3, 18, 18.0)
    assert ends.nominal == pytest.approx(50 * 0.3 * 5.5)
    assert j10_forces.web_local_yielding(50, 0.3, 1, 3, 18, 18.1).nominal == pytest.approx(50 * 0.3 * 8)
    half = j10_forces.web_compression_buckling(50, 0.3, 16, 18, 8.9).nominal
    assert j10_forces.web_compression_buckling(50, 0.3, 16, 18, 9.0).nominal == pytest.approx(2 * half)
    assert j10_forces.flange_local_bending(50, 0.5, 5.0).nominal == pytest.approx(6.25 * 50 * 0.25)
    assert j10_forces.flange_local_bending(50, 0.5, 4.9).nominal == pytest.approx(3.125 * 50 * 0.25)
