from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.job import stock_named
from gageline.steel import Section
from gageline.strength import SupportFace, bolt_steel, material_of, support_of
from gageline.strength.aisc360.j3_bolts import bolt_shear, bolt_tension
from gageline.units import System
from jobs import piece_of

MM = 25.4


def test_the_steel_of_a_part() -> None:
    steel = material_of(piece_of().main)
    assert (steel.grade, steel.F_y, steel.F_u) == ("A992", 50.0, 65.0)


@pytest.mark.parametrize(("face", "t"), [(SupportFace.COLUMN_FLANGE, 0.710), (SupportFace.COLUMN_WEB, 0.440)])
def test_a_support_has_its_thickness_where_the_connection_stands(face: SupportFace, t: float) -> None:
    """W14x90, tf 0.710 and tw 0.440 in (Manual Table 1-1)."""
    section = stock_named("W14x90", System.FT_IN)
    assert isinstance(section, Section)
    assert support_of(section, face).t == pytest.approx(t, abs=1e-5)
    assert support_of(section, face, "A36").steel.F_y == 36.0


@pytest.mark.parametrize(
    ("name", "face", "lacks"),
    [
        ("L4x4x1/4", SupportFace.COLUMN_FLANGE, "L4X4X1/4 is no I-shape, it has no column flange"),
        ("W14x90", SupportFace.WALL, "W14X90 is no box or tube, it has no wall"),
        ("HSS6x6x3/8", SupportFace.GIRDER_WEB, "HSS6X6X3/8 is no I-shape or channel, it has no girder web"),
    ],
)
def test_a_section_without_the_face_supports_nothing(name: str, face: SupportFace, lacks: str) -> None:
    section = stock_named(name, System.FT_IN)
    assert isinstance(section, Section)
    with pytest.raises(ValueProblem, match=f"{lacks}: name another section or face"):
        support_of(section, face)


def test_bolts_of_class_8_8_stay_under_the_european_shear_values() -> None:
    """EN 1993-1-8 Table 3.4, M20 8.8: 94.1 kN in shear through the threads, 141.1 kN in tension.

    Ours by LRFD: 0.75 0.450 800 314.2 = 84.8 kN, and 0.75 0.75 800 314.2 = 141.4 kN.
    """
    steel = bolt_steel("8.8")
    shear = bolt_shear(steel.group, steel.threads, 20 / MM).nominal * 0.75 * 4.448222
    tension = bolt_tension(steel.group, 20 / MM).nominal * 0.75 * 4.448222
    assert shear == pytest.approx(84.8, rel=1e-3)
    assert tension == pytest.approx(141.4, rel=1e-3)


def test_a_grade_that_is_not_known_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r'bolt grade "SAE 5" is not in Table J3\.2: give A325-N'):
        bolt_steel("SAE 5")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("A325-SC", ("120", "N", "A")),
        ("A490-SC-B", ("150", "N", "B")),
        ("A325-X-SC-A", ("120", "X", "A")),
        ("astm a325m-sc", ("120", "N", "A")),
        ("F2280-N", ("150", "N", "")),
    ],
)
def test_slip_critical_bolts_are_asked_for_by_their_grade(text: str, expected: tuple[str, str, str]) -> None:
    found = bolt_steel(text)
    assert (found.group, found.threads, found.surface) == expected


@pytest.mark.parametrize("text", ["8.8-SC", "A307-SC-B"])
def test_bolts_without_a_pretension_are_not_slip_critical(text: str) -> None:
    with pytest.raises(ValueProblem, match=r"Table J3\.1 has no pretension .* give A325-SC or A490-SC"):
        bolt_steel(text)


@pytest.mark.parametrize("text", ["A325-SC-C", "A325-SC-N", "A325-Y", ""])
def test_a_grade_that_is_written_otherwise_is_refused(text: str) -> None:
    with pytest.raises(ValueProblem, match="A325-SC or A325-SC-B for slip-critical bolts"):
        bolt_steel(text)
