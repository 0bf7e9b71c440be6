"""What a frame lets be changed at an end: only what its geometry can become is suggested."""

from __future__ import annotations

import re
from functools import cache

import pytest

from assembling import bay, detailed
from frames import one_bay
from gageline.detail import FullJob, read_full
from gageline.part import End
from gageline.strength import Verdict, check_strength, remedy, strong_rows
from gageline.strength.leeway import leeway_of
from gageline.units import System
from jobs import inches

LOWER = re.compile(
    r"the beam (?P<by>[\d /]+)(\"| mm) lower, with a cope (?P<depth>[\d /]+)(\"| mm) deep then"
)


@cache
def job(units: str, beam: str, reaction: str, drop: str = "0", more: str = "") -> FullJob:
    lines = f'drop = "{drop}"\nends = {{ reaction = "{reaction}"{more} }}'
    span = "6000" if units == "mm" else "20'-0"
    return strong_rows(read_full(one_bay(lines, beam=beam, units=units, span=span)))


def verdict(full: FullJob) -> Verdict:
    found = check_strength(full.job, None, full.detailed).connections
    return next(one.verdict for one in found if one.verdict.connection.name == "B1 left")


@pytest.mark.parametrize(
    ("units", "reaction"),
    [("ft-in", "44 kip"), ("ft-in", "46 kip"), ("ft-in", "48 kip"), ("mm", "180 kN"), ("mm", "184 kN")],
)
def test_a_beam_lowered_as_suggested_is_as_strong_as_was_said(units: str, reaction: str) -> None:
    system = System.MM if units == "mm" else System.FT_IN
    before = verdict(job(units, "W12x26", reaction))
    assert not before.passes
    found = remedy(before, system)
    assert found is not None
    assert found.verdict is not None
    said = LOWER.fullmatch(found.change)
    assert said is not None, found.change
    after = verdict(job(units, "W12x26", reaction, said["by"].strip()))
    assert after.passes
    assert after.utilisation <= found.verdict.utilisation + 1e-6
    beam = after.connection.beam
    assert beam is not None
    assert beam.top is not None
    asked = inches(said["depth"].strip()) if system is System.FT_IN else inches(f"{said['depth']} mm")
    assert beam.top.d_c == pytest.approx(asked.inches, abs=1e-4)


def test_no_shallower_cope_is_offered_where_a_lower_beam_would_meet_the_flange_below() -> None:
    """A W21x44 between W21x62: 19/64 in less deep, so it is coped below too, and deeper when lowered."""
    before = verdict(job("ft-in", "W21x44", "120 kip"))
    found = remedy(before)
    assert not before.passes
    assert found is not None
    assert found.change == "a doubler plate on the beam's web, which needs a design of its own"


@pytest.mark.parametrize("drop", ["", ", drop = 5"])
def test_no_more_rows_are_offered_than_detailing_has_room_for(drop: str) -> None:
    """As many as the reach takes are detailed 3 in apart when they are given, and one more is not."""

    def pitch(rows: int) -> float:
        joints = job("ft-in", "W18x50", "20 kip", "0", f", rows = {rows}{drop}").detailed
        assert joints is not None
        ladder = joints.joints["B1", End.LEFT].ladder
        assert ladder is not None
        return ladder.pitch.inches if ladder.rows == rows else 0.0

    full = job("ft-in", "W18x50", "20 kip", "0", f", rows = 2{drop}")
    assert full.detailed is not None
    leeway = leeway_of(full.detailed.joints["B1", End.LEFT], full.job.practice.drop, inches("1/2"))
    most = int((leeway.reach + 1e-6 - 2.5) // 3) + 1
    assert pitch(most) == 3.0
    assert pitch(most + 1) < 3.0


def test_a_sloped_beam_is_not_lowered() -> None:
    level = detailed(bay("W12X26")).joints["B1", End.LEFT]
    sloped = detailed(bay("W12X26", rise="1/4 in 12")).joints["B1", End.LEFT]
    step, drop = inches("1/2"), inches("3")
    assert leeway_of(sloped, drop, step).lower == 0.0
    assert leeway_of(level, drop, step).lower > 1.0
