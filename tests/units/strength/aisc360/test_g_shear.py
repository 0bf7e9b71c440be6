from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.strength.aisc360 import g_shear


def test_a_slender_web_is_sent_to_the_other_clause() -> None:
    with pytest.raises(ValueProblem, match=r"h/t_w = 60 is more than 53.95 of G2.1\(a\): use G2.1\(b\)"):
        g_shear.stocky_web_shear(50, 18, 0.3, 60)


def test_a_channel_never_has_phi_of_one() -> None:
    assert g_shear.web_shear(50, 10, 0.3, 30, rolled_i=False).factors.phi == 0.90
    assert g_shear.web_shear(50, 10, 0.3, 30, rolled_i=True).factors.phi == 1.00


def test_a_very_slender_web_buckles() -> None:
    limit = 1.10 * (5.34 * 29000 / 50) ** 0.5
    full, less = (g_shear.other_web_shear(50, 30, 0.3, limit * f).nominal for f in (1.0, 2.0))
    assert less == pytest.approx(full / 2)


def test_the_ranges_of_a_leg_meet() -> None:
    for limit in (1.10, 1.37):
        slender = limit * (1.2 * 29000 / 50) ** 0.5
        below, above = (g_shear.leg_or_stem_shear(50, slender * f, 1.0).nominal for f in (0.9999, 1.0001))
        assert below == pytest.approx(above, rel=0.01)
