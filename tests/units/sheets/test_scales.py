from itertools import pairwise

import pytest

from gageline.sheets.scales import plan_scales, scales
from gageline.units import System


@pytest.mark.parametrize("system", list(System))
def test_scales_fall_and_start_where_they_are_asked_to(system: System) -> None:
    found = scales(system, 4)
    assert all(a.paper > b.paper for a, b in pairwise(found))
    assert found[0].one_to >= 4
    assert scales(system)[0].one_to == 1


def test_an_inch_and_a_half_to_the_foot_is_one_to_eight() -> None:
    scale = next(one for one in scales(System.FT_IN) if one.one_to == 8)
    assert scale.name == '1 1/2" = 1\'-0" (1:8)'
    assert scale.paper * 12 == pytest.approx(1.5 * 25.4)


def test_scales_of_plans_fall() -> None:
    for system in System:
        steps = [scale.one_to for scale in plan_scales(system)]
        assert steps == sorted(set(steps))
        assert steps[0] >= 20
