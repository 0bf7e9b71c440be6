from __future__ import annotations

from dataclasses import FrozenInstanceError

import pytest
from shapely import Polygon

from gageline.steel import Measure, Profile, Section, find
from gageline.units import Length


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


def test_a_section_cannot_be_changed() -> None:
    line = section("W16X26")
    with pytest.raises(FrozenInstanceError):
        line.d = Length(0)  # type: ignore[misc]  # what the test is about


def test_a_box_has_corners_of_twice_its_wall() -> None:
    box = section("HSS6X6X3/8")
    assert box.corner == box.tw * 2
    assert section("W16X26").corner is None


@pytest.mark.parametrize(
    ("name", "bounds"),
    [
        ("W16X26", (-2.75, -7.85, 2.75, 7.85)),
        ("C15X33.9", (0, -7.5, 3.4, 7.5)),
        ("L4X3X1/4", (0, 0, 3, 4)),
        ("WT8X13", (-2.75, -7.85, 2.75, 0)),
        ("HSS6X4X1/4", (-2, -3, 2, 3)),
        ("HSS6.000X0.375", (-3, -3, 3, 3)),
        ("IPE 300", (-75 / 25.4, -150 / 25.4, 75 / 25.4, 150 / 25.4)),
    ],
)
def test_outlines_stand_where_they_are_said_to(name: str, bounds: tuple[float, ...]) -> None:
    loops = section(name).outline(steps=32)
    assert Polygon(loops[0]).bounds == pytest.approx(bounds, abs=2e-3)


def test_hollow_sections_have_two_lines() -> None:
    assert [len(section(name).outline()) for name in ("HSS6X6X3/8", "Pipe6STD", "W16X26")] == [2, 2, 1]


def test_what_the_table_leaves_empty_is_none() -> None:
    line = section("HSS6X6X3/8")
    assert (line.kdes, line.T, line.Cw, line.PA, line.flange_slope, line.fillet) == (None,) * 6
    assert section("L 100x100x10").Cw is None


def test_a_tapered_flange_has_slope_and_run() -> None:
    channel, beam, european = section("C15X33.9"), section("S12X50"), section("UPN 400")
    assert channel.flange_slope == beam.flange_slope == pytest.approx(1 / 6)
    assert channel.taper_run == (channel.bf - channel.tw) / 2
    assert beam.taper_run == (beam.bf - beam.tw) / 4
    assert european.flange_slope == 0.05
    assert european.taper_run == Length.from_mm(48)


def test_the_fillet_of_a_parallel_flange_is_what_kdes_has_beyond_the_flange() -> None:
    line = section("W18X50")
    assert line.kdes is not None
    assert line.fillet == line.kdes - line.tf


def test_a_line_names_its_tables() -> None:
    assert section("W16X26").edition == "AISC Shapes Database v15+v16"
    assert section("W44X408").edition == "AISC Shapes Database v16"
    assert section("M4X3.2").edition == "AISC Shapes Database v15"
    european = section("L 100x100x10")
    assert (european.edition, european.system) == ("EN 10056-1:2017", Measure.EU)
    assert european.profile is Profile.ANGLE
