from __future__ import annotations

from pathlib import Path

from gageline.job import open_job, read_job
from gageline.strength import check_strength, report_of, summary_of
from gageline.units import System

DEMO = Path(__file__).parents[3] / "src/gageline/demo/mezzanine.toml"


def test_the_report_says_capacity_governing_and_share() -> None:
    lines = list(report_of(check_strength(open_job(DEMO)), System.FT_IN))
    first = "B1 left: double angles 2L4X3-1/2X5/16, carries 48.8 kip; "
    assert f"{first}governed by block shear of the beam web (J4.3)" in lines
    assert any(line.endswith("Manual Table 3-6): 73 %") for line in lines)
    assert any(line.startswith("not checked: seismic detailing") for line in lines)


def test_the_working_is_written_out() -> None:
    lines = list(report_of(check_strength(open_job(DEMO)), System.FT_IN, working=True))
    assert "      R_v = 0.60 F_u A_nv = 0.60 × 65 × 1.328 = 51.8 kip" in lines


def test_millimetre_jobs_read_kilonewtons() -> None:
    lines = list(report_of(check_strength(open_job(DEMO)), System.MM))
    assert any("carries 217 kN" in line for line in lines)


def test_a_job_without_connections_says_that_nothing_was_checked() -> None:
    job = read_job('[job]\nname = "one"\n[[piece]]\nmark = "A"\nstock = "PL1/2x8"\nlength = "2\'-0"\n')
    strength = check_strength(job)
    assert summary_of(strength) == "strength: not checked"
    assert not list(report_of(strength, System.FT_IN))
