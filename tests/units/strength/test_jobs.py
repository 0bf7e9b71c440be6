from __future__ import annotations

from pathlib import Path

import pytest

from gageline.detail import open_full
from gageline.errors import ValueProblem
from gageline.job import read_job
from gageline.strength import JobStrength, Method, SupportFace, check_strength, report_of, summary_of
from gageline.strength.demands import SUGGESTED
from gageline.units import System

DEMO = Path(__file__).parents[3] / "src/gageline/demo"
BEAM = """
[[piece]]
mark = "B1"
stock = "W18x50"
length = "20'-0"
copes = [{ end = "both", length = "4", depth = "2" }]
angles = [{ end = "both", stock = "L4x3-1/2x1/4", rows = 3, drop = "3 1/2" }]
"""


def strength_of(lines: str = "", head: str = "", method: Method | None = None) -> JobStrength:
    return check_strength(read_job(f'[job]\nname = "test"\n{head}{BEAM}{lines}'), method)


def test_without_a_reaction_half_of_the_largest_uniform_load_is_taken() -> None:
    """Manual Table 3-6, W18x50 at 20 ft: 152 kips by LRFD, so 76 at each end."""
    (left, _) = strength_of().connections
    assert pytest.approx(76, rel=0.005) == left.verdict.connection.V
    assert left.verdict.connection.load == SUGGESTED
    assert not strength_of().failed


def test_a_given_reaction_that_is_too_much_fails() -> None:
    found = strength_of('left = { reaction = "90 kip" }\nright = { reaction = "200 kN" }')
    assert found.failed == ("B1 left",)
    assert [one.verdict.connection.V for one in found.connections] == pytest.approx([90.0, 44.962], rel=1e-4)


def test_loads_give_reactions_and_the_check_of_the_beam() -> None:
    loads = """
loads = [{ uniform = "1.2 kip/ft" }, { case = "live", point = "20 kip", at = "5'-0" }]
span = { unbraced = "5'-0", live = 360 }
"""
    found = strength_of(loads)
    left, right = (one.verdict.connection for one in found.connections)
    assert pytest.approx(1.2 * 12 + 1.6 * 15) == left.V
    assert pytest.approx(1.2 * 12 + 1.6 * 5) == right.V
    assert left.load == "from the loads, 1.2D + 1.6L + 0.5Lr"
    assert [check.title.split(",")[0] for check in found.beams[0].checks] == [
        "bending of the beam",
        "shear of the beam",
        "deflection under live load",
        "shear at the holes of the web",
    ]


def test_a_support_that_is_known_is_checked() -> None:
    found = strength_of('left = { support = "W14x90", face = "column flange" }')
    left, right = (one.verdict.connection for one in found.connections)
    assert left.support is not None
    assert left.support.face is SupportFace.COLUMN_FLANGE
    assert left.support.t == pytest.approx(0.710, abs=1e-5)
    assert right.support is None


def test_the_opposite_hand_carries_what_its_piece_carries() -> None:
    lines = 'left = { reaction = "30 kip" }\n[[piece]]\nmark = "B2"\nas_hand_of = "B1"\n'
    names = {one.verdict.connection.name: one.verdict.connection.V for one in strength_of(lines).connections}
    assert names["B2 left"] == names["B1 left"] == 30.0


def test_reactions_by_one_method_are_not_checked_by_the_other() -> None:
    with pytest.raises(ValueProblem, match="the job gives its reactions by LRFD, not by ASD"):
        strength_of('left = { reaction = "30 kip" }', method=Method.ASD)


def test_reactions_of_a_frame_are_not_checked_by_the_other_method_either() -> None:
    full = open_full(DEMO / "mezzanine-frame.toml")
    with pytest.raises(ValueProblem, match="the job gives its reactions by LRFD, not by ASD"):
        check_strength(full.job, Method.ASD, full.detailed)


def test_a_frame_hands_its_loads_down_to_beams_and_bases() -> None:
    """G5 carries the ends of B3, B4 and B5 and hands it all to its posts; P8 carries its right end alone."""
    full = open_full(DEMO / "mezzanine-frame.toml")
    found = check_strength(full.job, detailed=full.detailed)
    ends = {one.verdict.connection.name: one.verdict.connection for one in found.connections}
    handed = sum(ends[f"{name} right"].V for name in ("B3", "B4", "B5"))
    assert pytest.approx(handed, rel=1e-6) == ends["G5 left"].V + ends["G5 right"].V
    base = next(one for one in found.columns if one.member == "P8")
    assert pytest.approx(ends["G5 right"].V, rel=1e-6) == base.P


def test_the_method_of_the_job_is_the_default() -> None:
    assert strength_of(head='[strength]\nmethod = "ASD"\n').method is Method.ASD


def test_bolts_of_no_table_are_not_checked_and_say_why() -> None:
    found = strength_of(head='[practice]\nbolt_grade = "5.6"\n')
    assert [item.what for item in found.refused] == ["B1, its connections"]


def test_the_ends_of_a_frame_know_what_carries_them() -> None:
    full = open_full(DEMO / "mezzanine-frame.toml")
    found = check_strength(full.job, detailed=full.detailed)
    ends = [one.verdict.connection for one in found.connections if one.verdict.connection.beam]
    assert ends
    assert all(connection.support is not None for connection in ends)
    given = {connection.name: connection.V for connection in ends if connection.load == "given"}
    assert given["G4 left"] == 44.0


def holed(turn: str) -> JobStrength:
    slots = BEAM.replace('drop = "3 1/2"', f'drop = "3 1/2", hole = "SSL"{turn}')
    return check_strength(read_job(f'[job]\nname = "test"\n{slots}right = {{ reaction = "20 kip" }}'))


def test_slots_along_the_reaction_fail_a_job_at_whatever_load() -> None:
    """AISC 360-22 J3.3: no slots along the load in a bearing joint; across it is how they lie untold."""
    found = holed(', turn = "along"')
    assert found.failed == ("B1 left", "B1 right")
    lines = list(report_of(found, System.FT_IN))
    assert (
        "    detail: slots along the load in the fitting, bolts to the beam: not allowed in a bearing joint; "
        "use STD, or slots across the load, or slip-critical bolts (A325-SC)"
    ) in lines
    assert summary_of(found) == "strength: 2 connections checked, 2 not allowed"
    assert holed("").failed == ()


def test_a_job_asks_for_slip_critical_bolts_by_their_grade() -> None:
    """Three rows of 3/4 A325 of class A in double shear: 3 19.0 = 57.0 kips (Example J.4A)."""
    wide = BEAM.replace('drop = "3 1/2"', 'drop = "3 1/2", hole = "OVS"')
    head = '[job]\nname = "test"\n[practice]\nbolt_grade = "A325-SC"\n'
    found = check_strength(read_job(f'{head}{wide}left = {{ reaction = "50 kip" }}\n'))
    assert found.failed == ("B1 left",)
    checks = {check.title: check for check in found.connections[0].verdict.checks}
    slipped = checks["slip of the bolts to the beam, surfaces A"]
    assert slipped.capacity == pytest.approx(0.85 * 3 * 18.984, rel=0.001)
    assert slipped.utilisation > 1
