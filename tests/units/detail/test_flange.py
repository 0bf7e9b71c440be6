"""Bolts in a flange."""

from __future__ import annotations

import pytest

from gageline.detail.flange import flange_gage
from gageline.detail.shop import Shop
from gageline.job import default_practice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.steel import Section, bolt, find
from gageline.units import System


def gage(stock: str, size: str, system: System) -> tuple[str, bool]:
    section = find(stock)
    assert isinstance(section, Section)
    shop = Shop(default_practice(system), frame_practice(FramePracticeEntry(), system), system)
    found, wider = flange_gage(section, bolt(size), shop)
    return shop.say(found), wider


@pytest.mark.parametrize(
    ("stock", "size", "system", "wanted"),
    [
        ("W18X50", "3/4", System.FT_IN, ('3 1/2"', False)),  # the workable gage of Table 1-1
        ("W10X12", "3/4", System.FT_IN, ('2 1/4"', False)),  # 3.96 in wide: no wider with 1 in at the edge
        ("W18X50", "1", System.FT_IN, ('3 3/4"', True)),  # fillet 13/16 and 1, twice, up to 1/4
        ("IPE 300", "M20", System.MM, ("85 mm", True)),  # fillet 18.55 and 22.225, twice, up to 5 mm
        ("IPE 270", "M20", System.MM, ("80 mm", True)),  # 135 mm wide less 26 at each edge, down to 5 mm
    ],
)
def test_bolts_are_as_far_apart_as_the_wrench_wants(
    stock: str, size: str, system: System, wanted: tuple[str, bool]
) -> None:
    assert gage(stock, size, system) == wanted
