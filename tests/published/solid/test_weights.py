"""The solid against the section tables: weight per foot of every section of both systems.

Source of the values: AISC Shapes Database v15.0 and v16.0, EN 10365 and EN 10056, by way of the steel
room's tables. The weight is the printed area times 490 lb/ft3: the printed weight of a section is its nominal
one, of a hollow section that of the wall before the tube mill's allowance. Where a fillet radius follows from
the printed area (gageline.solid.fillets) the second moments below are the check that says something.
"""

from statistics import fmean

import pytest

from gageline.part import Part
from gageline.solid import Mass, body_of, mass_of, weigh
from gageline.steel import Family, Profile, Section, all_sections, find
from gageline.units import Length

_FIGURES = "dimensions and area are printed to three figures, which do not quite agree"
_ROUND = "the diameter is printed to three figures only, 12.8 for 12.750"
_WALL = "the printed area is not that of the printed design wall"
EXEMPT = {
    **dict.fromkeys(("W30X99", "W18X234", "W18X192", "WT20X99.5", "WT20X83.5", "WT16.5X100.5"), _FIGURES),
    **dict.fromkeys(("WT15X86.5", "WT12X47", "WT12X34", "WT9X117", "WT9X96", "WT6X36"), _FIGURES),
    "HSS13.375X0.313": _ROUND,
    **dict.fromkeys(("Pipe12STD", "Pipe10STD", "Pipe3STD", "Pipe2-1/2STD", "Pipe2STD", "Pipe1STD"), _WALL),
    **dict.fromkeys(("Pipe26XS", "Pipe24XS", "Pipe20XS", "Pipe18XS", "Pipe16XS", "Pipe14XS"), _WALL),
    **dict.fromkeys(("Pipe12XS", "Pipe6XS", "Pipe2-1/2XS", "Pipe2XS", "Pipe1-1/4XS", "Pipe12XXS"), _WALL),
}  # fmt: skip
EUROPEAN = {Family.IPE, Family.HEA, Family.HEB, Family.HEM, Family.UPN, Family.UPE, Family.L_EU}
FOOT = Length.from_inches(12)


Masses = dict[Section, Mass]


@pytest.fixture(scope="module")
def masses() -> Masses:
    """A foot of every section."""
    return {s: mass_of(body_of(Part(s.designation, s, "", FOOT))) for s in all_sections()}


@pytest.fixture(scope="module")
def off(masses: Masses) -> dict[str, float]:
    """How far the weight of every section is from the table's area times 490 lb/ft3."""
    return {s.designation: abs(mass.weight / (s.area / 144 * 490) - 1) for s, mass in masses.items()}


def test_every_section_weighs_what_its_table_says_to_half_a_percent(off: dict[str, float]) -> None:
    assert len(off) > 1900
    assert {name: value for name, value in off.items() if value > 0.005 and name not in EXEMPT} == {}


@pytest.mark.parametrize("name", EXEMPT)
def test_an_exempted_section_is_within_three_and_a_half_percent_and_still_needs_it(
    name: str, off: dict[str, float]
) -> None:
    assert 0.005 < off[name] < 0.035


def test_hollow_sections_weigh_what_is_bought_and_lifted() -> None:
    # AISC Manual Tables 1-12 to 1-14, weights by the nominal wall in lb/ft
    hollow = {"HSS6X6X3/8": 27.48, "HSS6.000X0.375": 22.55, "Pipe6STD": 19.0}
    for name, weight in hollow.items():
        assert weigh(Part(name, find(name), "", FOOT)).weight == pytest.approx(weight, rel=5e-3)


def second_moments(mass: Mass) -> tuple[float, float]:
    """Ix and Iy of a section from the moments of a foot of it, less the foot's own m L2 / 12."""
    per_area = mass.weight / mass.volume * FOOT.inches
    own = mass.weight * FOOT.inches**2 / 12
    (along, _, _), (_, weak, _), (_, _, strong) = mass.inertia
    ix, iy = (strong - own) / per_area, (weak - own) / per_area
    assert along / per_area == pytest.approx(ix + iy, rel=1e-6)
    return ix, iy


# On the average: European series 0.1 %; American ones 0.6 % about the strong axis, 1.2 % about the weak one.
# S, ST and C shapes have rounded toes, whose radius no table gives: 2.6 % about the weak axis, 1.2 % about a
# tee's strong one.
@pytest.mark.parametrize("family", Family)
def test_second_moments_of_the_table(family: Family, masses: Masses) -> None:
    round_toes = family in {Family.S, Family.ST, Family.C}
    off_ix, off_iy = [], []
    for section, mass in masses.items():
        if section.family is family and section.designation not in EXEMPT:
            ix, iy = second_moments(mass)
            off_ix.append(abs(ix / section.Ix - 1))
            off_iy.append(abs(iy / section.Iy - 1))
    if family in EUROPEAN:
        assert max(*off_ix, *off_iy) < 0.001
    assert fmean(off_ix) < (0.012 if family is Family.ST else 0.006)
    assert max(off_ix) < 0.04
    assert fmean(off_iy) < (0.026 if round_toes else 0.012)
    assert max(off_iy) < 0.045


def test_centroids_of_the_table(masses: Masses) -> None:
    off = []
    for section, mass in masses.items():
        _, y, z = mass.centre
        if section.x_bar is not None:
            off.append((abs(-z.inches - section.x_bar) / section.bf.inches, section.designation))
        if section.y_bar is not None:
            from_flange = section.d - y if section.profile is Profile.TEE else y
            off.append((abs(from_flange.inches - section.y_bar) / section.d.inches, section.designation))
    assert len(off) > 600
    assert max(off)[0] < 0.01
