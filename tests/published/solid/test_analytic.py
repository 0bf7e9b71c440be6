"""The solid of plain pieces against weights worked out by hand, to 0.1 %.

Density: 490 lb/ft3 (AISC Manual Table 17-12). Formulas: areas and volumes of plane and solid geometry.
"""

import math

import pytest

from gageline.part import Cope, End, EndCut, Face, Part
from gageline.solid import body_of, mass_of, weigh
from gageline.units import parse_slope
from pieces import at, drilled, hole, piece

POUND = 490 / 1728
SPANDREL = 1 - math.pi / 4
BORE = math.pi / 4 * (13 / 16) ** 2
LENGTH = 120.0


def i_area(d: float, bf: float, tw: float, tf: float, r: float) -> float:
    return 2 * bf * tf + (d - 2 * tf) * tw + 4 * SPANDREL * r**2


W16X26 = i_area(15.7, 5.5, 0.25, 0.345, 0.747 - 0.345)  # AISC Manual Table 1-1: d, bf, tw, tf, kdes
IPE300 = i_area(300, 150, 7.1, 10.7, 15) / 25.4**2  # EN 10365: h, b, tw, tf, r
HSS6 = 4 * 6 * 0.349 - 4 * 0.349**2 - 4 * SPANDREL * ((2 * 0.349) ** 2 - 0.349**2)  # corners 2 t and t
TUBE = math.pi * (6 - 0.349) * 0.349
WT8X18 = 6.99 * 0.43 + (7.93 - 0.43) * 0.295 + 2 * SPANDREL * 0.402**2

ROWS = tuple(hole("3", y) for y in ("12", "9", "6"))
CORNERS = (hole("3", "2"), hole("9", "6"))
COPE = Cope(End.LEFT, Face.TOP, at("4in"), at("1 1/2"), at("1/2"))
COPED = 4 * (5.5 * 0.345 + 0.25 * 1.155 + 2 * SPANDREL * 0.402**2) - 0.25 * SPANDREL * 0.25
BEVEL = EndCut(bevel=parse_slope("3 in 12"))


@pytest.mark.parametrize(
    ("part", "volume"),
    [
        (piece("W16X26", "10'-0"), W16X26 * LENGTH),
        (piece("IPE 300", "3048mm"), IPE300 * LENGTH),
        (piece("HSS6X6X3/8", "10'-0"), HSS6 * LENGTH),
        (piece("HSS6.000X0.375", "10'-0"), TUBE * LENGTH),
        (piece("WT8X18", "10'-0"), WT8X18 * LENGTH),
        (piece("PL1/2X8", "1'-0"), 48.0),
        (piece("PL1/2X8", "1'-0", groups=(drilled(Face.FACE, *CORNERS),)), 48 - 2 * BORE / 2),
        (piece("W16X26", "10'-0", groups=(drilled(Face.NEAR, *ROWS),)), W16X26 * LENGTH - 3 * BORE * 0.25),
        (piece("W16X26", "10'-0", copes=(COPE,)), W16X26 * LENGTH - COPED),
        # a bevel through a section that is alike above and below the middle takes half of its run off
        (piece("W16X26", "10'-0", left=BEVEL), W16X26 * (LENGTH - 15.7 / 4 / 2)),
        (piece("HSS6X6X3/8", "10'-0", right=BEVEL), HSS6 * (LENGTH - 6 / 4 / 2)),
    ],
    ids=[
        "W16X26", "IPE 300", "HSS6X6X3/8", "HSS6.000X0.375", "WT8X18", "plate", "drilled plate",
        "drilled beam", "coped beam", "bevelled beam", "bevelled box",
    ],
)  # fmt: skip
def test_weight_by_hand(part: Part, volume: float) -> None:
    assert mass_of(body_of(part)).weight == pytest.approx(volume * POUND, rel=1e-3)


def test_a_foot_of_half_inch_by_eight_plate() -> None:
    # AISC Manual, weights of rectangular sections: 13.6 lb/ft; from memory
    assert weigh(piece("PL1/2X8", "1'-0")).weight == pytest.approx(13.6, abs=0.05)


def test_ten_feet_of_beam() -> None:
    # W16X26 weighs 26 lb/ft (AISC Manual Table 1-1)
    assert weigh(piece("W16X26", "10'-0")).weight == pytest.approx(260, rel=0.01)


def test_three_metres_of_ipe_300() -> None:
    # 42.2 kg/m (EN 10365), there with 7850 kg/m3
    assert weigh(piece("IPE 300", "3000mm")).weight * 0.45359237 == pytest.approx(3 * 42.2, rel=0.003)
