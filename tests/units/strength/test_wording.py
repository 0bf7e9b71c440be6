from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from frames import one_bay
from gageline.detail import open_full, read_full
from gageline.job import open_job, read_job
from gageline.strength import (
    Check,
    Clause,
    amount_text,
    below_text,
    broken_text,
    check_strength,
    percent,
    ratio,
    report_of,
    summary_of,
)
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


def test_the_working_of_a_metric_job_says_its_units_once() -> None:
    strength = check_strength(open_job(DEMO))
    said = "the working is in kips and inches, as the standard is written; results are in the job's units"
    assert list(report_of(strength, System.MM, working=True)).count(said) == 1
    assert said not in report_of(strength, System.MM)
    assert said not in report_of(strength, System.FT_IN, working=True)


def test_millimetre_jobs_read_kilonewtons() -> None:
    lines = list(report_of(check_strength(open_job(DEMO)), System.MM))
    assert any("carries 217 kN" in line for line in lines)


def test_a_job_without_connections_says_that_nothing_was_checked() -> None:
    job = read_job('[job]\nname = "one"\n[[piece]]\nmark = "A"\nstock = "PL1/2x8"\nlength = "2\'-0"\n')
    strength = check_strength(job)
    assert summary_of(strength) == "strength: not checked"
    assert not list(report_of(strength, System.FT_IN))


BEAM = '[[piece]]\nmark = "B1"\nstock = "W16x26"\nlength = "20\'-0"\nloads = [{ uniform = "9 klf" }]\n'


def test_beams_count_in_the_summary_and_among_what_is_not_enough() -> None:
    strength = check_strength(read_job('[job]\nname = "one"\n' + BEAM))
    assert summary_of(strength) == "strength: 1 beam checked, 1 not strong enough"
    assert strength.failed == ("B1",)


def test_connections_beams_and_columns_are_all_counted() -> None:
    full = open_full(DEMO.parent / "mezzanine-frame.toml")
    strength = check_strength(full.job, detailed=full.detailed)
    assert summary_of(strength) == "strength: 30 connections, 16 beams and 8 columns checked"


def test_a_reaction_below_what_the_loads_ask_for_is_warned_of() -> None:
    """20 ft at 1.4 1.0 kip/ft dead: 14 kips at each end."""
    head = '[job]\nname = "one"\n' + BEAM.replace("9 klf", "1 klf")
    job = read_job(f'{head}left = {{ reaction = "10 kip" }}\nright = {{ reaction = "14 kip" }}\n')
    strength = check_strength(job)
    warned = "warning: B1 left: 10.0 kip is given as the reaction, its loads ask for 14.0 kip (1.4D)"
    assert [line for line in report_of(strength, System.FT_IN) if line.startswith("warning")] == [warned]
    assert "44 kN is given as the reaction, its loads ask for 62 kN" in below_text(
        strength.below[0], System.MM
    )


def warned(ends: str, system: System = System.FT_IN) -> tuple[list[str], str]:
    full = read_full(one_bay(ends, span="15'-0"))
    strength = check_strength(full.job, detailed=full.detailed)
    assert not strength.failed
    lines = [line for line in report_of(strength, system) if line.startswith("warning")]
    return lines, summary_of(strength)


@pytest.mark.parametrize(("system", "unit"), [(System.FT_IN, "kip"), (System.MM, "kN")])
def test_an_end_without_a_reaction_that_carries_too_little_is_warned_of(system: System, unit: str) -> None:
    """A W18x50 15 ft long carries 8 0.9 50 101 / 180 = 202 kip, half of it is 101; cut, it is shorter."""
    lines, summary = warned('start = { connection = "extended plate" }\nend = { reaction = 50 }', system)
    (line,) = lines
    said = re.fullmatch(
        rf"warning: B1 left: no reaction is given, and it carries ([\d.]+) {unit} where half of the largest "
        rf"uniform load that the beam itself can carry is ([\d.]+) {unit}: give the reaction, or the loads "
        "of the beam",
        line,
    )
    assert said is not None, line
    assert float(said[1]) < float(said[2]) / 2
    assert summary.endswith("checked, 1 without a reaction below what the Manual suggests")


def test_alike_ends_without_reactions_are_warned_of_together() -> None:
    lines, summary = warned("")
    (line,) = lines
    assert line.startswith("warning: B1 left, B1 right: no reaction is given, and each carries ")
    assert summary.endswith("checked, 2 without a reaction below what the Manual suggests")


def test_ends_with_their_reactions_are_not_warned_of() -> None:
    lines, summary = warned(
        'start = { connection = "extended plate", reaction = 5 }\nend = { reaction = 50 }'
    )
    assert not lines
    assert "suggests" not in summary


def test_a_rule_that_is_not_kept_is_told_in_the_units_of_the_job() -> None:
    rule = Check(Clause("J3.4", "edge", "test"), "edge distance", 1.0, 0.75, "in", ())
    assert broken_text(rule, System.FT_IN) == "edge distance: 1 against 0.75 in"
    assert broken_text(rule, System.MM) == "edge distance: 25.4 against 19.05 mm"
    assert broken_text(replace(rule, unit=""), System.MM) == "edge distance"


@pytest.mark.parametrize(
    ("capacity", "said"), [(20.0, ("50 %", "0.50")), (0.0, ("all used up", "all used up"))]
)
def test_what_shear_has_used_up_is_said_in_words(capacity: float, said: tuple[str, str]) -> None:
    check = Check(
        Clause("J3.7", "Tension with shear", "ANSI/AISC 360-22"), "tension", 10.0, capacity, "kip", ()
    )
    assert (percent(check), ratio(check)) == said


@pytest.mark.parametrize(
    ("value", "unit", "inches", "metric"),
    [
        (25.0, "kip", "25.0 kip", "111 kN"),
        (100.0, "kip-in", "100 kip-in", "11.3 kN m"),
        (2.0, "in", "2 in", "50.8 mm"),
        (3.0, "in²", "3 in²", "3 in²"),
    ],
)
def test_an_amount_is_said_in_the_units_of_the_job(value: float, unit: str, inches: str, metric: str) -> None:
    assert amount_text(value, unit, System.FT_IN) == inches
    assert amount_text(value, unit, System.MM) == metric
