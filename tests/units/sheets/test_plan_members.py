"""What stands on each framing plan."""

from importlib.resources import files

import pytest

from frames import bays
from gageline.detail import Detailed, read_full
from gageline.sheets.plan_members import PlanBeam, PlanLevel, plan_levels

DEMO = read_full(files("gageline.demo").joinpath("mezzanine-frame.toml").read_text("utf-8"))


def detailed() -> Detailed:
    assert DEMO.detailed is not None
    return DEMO.detailed


def demo_level() -> PlanLevel:
    (level,) = plan_levels(detailed())
    return level


def beam(name: str) -> PlanBeam:
    return next(one for one in demo_level().beams if one.name == name)


def test_level_of_the_demo_has_all_beams_and_columns() -> None:
    level = demo_level()
    assert (level.name, level.elevation) == ("Mezzanine", 144.0)
    assert len(level.beams) == 16
    assert {column.name: column.below for column in level.columns} == {
        **dict.fromkeys(["P1", "P2"], True),
        **dict.fromkeys(["P3", "P4", "P5", "P6", "P7", "P8"], False),
    }


def test_equal_piece_keeps_the_mark_of_the_first() -> None:
    assert (beam("B8").mark, beam("B1").mark) == ("B1", "B1")


def test_drop_slope_and_skew_as_the_frame_gives_them() -> None:
    assert beam("B4").drops == pytest.approx((-2.25, -2.25))
    # 1 in under the level, then 1/4 in 12 over 6'-6": 78 / 48 = 1.625.
    assert beam("S1").drops == pytest.approx((-1.0, -2.625))
    assert beam("S1").slope == pytest.approx(-1 / 48)
    # 5'-0" aside over 14'-0": atan(60 / 168) = 19.654 degrees.
    assert [abs(skew) for skew in beam("B5").skews] == pytest.approx([19.654, 19.654], abs=1e-3)


def test_cantilever_reaches_past_its_column() -> None:
    assert beam("G1").finish == pytest.approx((288 + 30, 0))
    assert beam("G1").kinds == ("bearing", "free")
    assert demo_level().bearings == ((288.0, 0.0),)


def test_beams_of_two_floors_stand_on_two_plans() -> None:
    full = read_full(bays([240], [240], 1, levels=2))
    assert full.detailed is not None
    levels = plan_levels(full.detailed)
    assert [(level.name, len(level.beams), len(level.columns)) for level in levels] == [
        ("L1", 5, 4),
        ("L2", 5, 4),
    ]


def test_a_beam_made_as_one_the_other_way_round_has_its_left_end_at_its_finish() -> None:
    placed = {one.member: one for one in detailed().placed}
    for one in demo_level().beams:
        stands = placed[one.name]
        foot = [value.inches for value in stands.left[:2]]
        near, far = (sum((a - b) ** 2 for a, b in zip(foot, end, strict=True)) for end in one.work)
        assert one.turned is (far < near)
        assert one.turned is stands.lie.end_for_end
