from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import f_flexure
from gageline.strength.aisc360.f_flexure import Slenderness

W18X50 = {"Z_x": 101.0, "S_x": 88.9, "r_y": 1.65, "r_ts": 1.98, "J": 1.24, "h_o": 17.4}


def test_a_web_that_is_not_compact_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"h/t_w = 100 is more than 90.55: webs that are not compact"):
        f_flexure.strong_axis_flexure(50, 60, lam_f=7, h_tw=100, **W18X50)


def test_a_slender_flange_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"b_f/2t_f = 30 is more than 24.08: a slender flange"):
        f_flexure.flange_local_buckling(50, 101, 88.9, 30)


def test_compact_flanges_have_two_limit_states_and_others_three() -> None:
    compact = f_flexure.strong_axis_flexure(50, 60, lam_f=6.57, h_tw=45.2, **W18X50)
    assert [strength.clause.number for strength in compact] == ["F2.1", "F2.2"]
    other = f_flexure.strong_axis_flexure(50, 60, lam_f=9.47, h_tw=45.2, **W18X50)
    assert [strength.clause.number for strength in other] == ["F2.1", "F2.2", "F3.2"]


def test_w21x48_has_a_noncompact_flange() -> None:
    # Design Examples F.3A: W21x48, Zx 107, Sx 93.0, bf/2tf 9.47: 398 kip-ft LRFD
    found = f_flexure.flange_local_buckling(50, 107, 93.0, 9.47)
    assert 0.9 * found.nominal / 12 == pytest.approx(398, rel=0.01)


@pytest.mark.parametrize(
    ("ratio", "kind"),
    [(9.1, Slenderness.COMPACT), (9.2, Slenderness.NONCOMPACT), (24.1, Slenderness.SLENDER)],
)
def test_flange_classes_at_50_ksi(ratio: float, kind: Slenderness) -> None:
    assert f_flexure.flange_slenderness(50, ratio) is kind


def test_the_three_ranges_of_buckling_meet() -> None:
    # the rounded constants of Equations F2-4 and F2-6 leave a step of 0.12 % at L_r
    found = f_flexure.lateral_torsional_buckling(50, 300, **W18X50)
    limits = {line.symbol: line.value for line in found.steps}
    for limit in (limits["L_p"], limits["L_r"]):
        below, above = (
            f_flexure.lateral_torsional_buckling(50, limit * f, **W18X50).nominal
            for f in (1 - 1e-9, 1 + 1e-9)
        )
        assert below == pytest.approx(above, rel=2e-3)


def test_weak_axis_has_no_more_than_1_6_yield_moments() -> None:
    assert f_flexure.weak_axis_yielding(50, 20, 10).nominal == pytest.approx(800)


def test_a_negative_unbraced_length_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"L_b = -1 must be 0 or more"):
        f_flexure.lateral_torsional_buckling(50, -1, **W18X50)
