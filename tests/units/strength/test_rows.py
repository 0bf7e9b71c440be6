from __future__ import annotations

import pytest

from frames import demo_frame
from gageline.detail import FullJob, read_full
from gageline.part import End
from gageline.strength import check_strength, strong_rows

SKEWED = """
[job]
name = "One bay"
units = "{units}"

[frame.grid]
x = {{ names = ["1", "2"], spacing = ["{bay}"] }}
y = {{ names = ["A", "B"], spacing = ["{bay}"] }}

[[frame.level]]
name = "Floor"
elevation = "{floor}"

[[frame.column]]
name = "P1"
at = "1/A"
stock = "W10x49"
base = 0
top = "Floor"

[[frame.column]]
name = "P2"
at = "2/A"
stock = "W10x49"
base = 0
top = "Floor"

[[frame.column]]
name = "P3"
at = "1/B"
stock = "W10x49"
base = 0
top = "Floor"

[[frame.column]]
name = "P4"
at = "2/B"
stock = "W10x49"
base = 0
top = "Floor"

[[frame.member]]
name = "G1"
stock = "W21x62"
from = "1/A"
to = "2/A"
top = "Floor"

[[frame.member]]
name = "G2"
stock = "W21x62"
from = "1/B"
to = "2/B"
top = "Floor"

[[frame.member]]
name = "B1"
stock = "W12x26"
from = {{ on = "G1", at = "{one}" }}
to = {{ on = "G2", at = "{two}" }}
top = "Floor"
ends = {{ reaction = "{reaction}"{more} }}
"""
INCHES = {"units": "ft-in", "bay": "18'-0", "floor": "14'-0", "one": "8'-0", "two": "10'-0"}
METRIC = {"units": "mm", "bay": "5400", "floor": "4200", "one": "2400", "two": "3000"}


def skewed(units: dict[str, str], reaction: str, more: str = "") -> FullJob:
    return read_full(SKEWED.format(**units, reaction=reaction, more=more))


def rows(full: FullJob, end: End = End.LEFT) -> int:
    assert full.detailed is not None
    ladder = full.detailed.joints["B1", end].ladder
    assert ladder is not None
    return ladder.rows


def failed(full: FullJob) -> tuple[str, ...]:
    return check_strength(full.job, None, full.detailed).failed


@pytest.mark.parametrize("units", [INCHES, METRIC])
def test_an_eccentric_plate_gets_the_rows_that_its_strength_asks_for(units: dict[str, str]) -> None:
    before = skewed(units, "25 kip")
    assert rows(before) == 2
    assert "B1 left" in failed(before)
    after = strong_rows(before)
    assert [rows(after, end) for end in End] == [3, 3]
    assert not failed(after)


@pytest.mark.parametrize(("units", "needed"), [(INCHES, "kip where 25.0 kip"), (METRIC, "kN where 111 kN")])
def test_the_reason_says_what_fell_short_in_the_units_of_the_job(units: dict[str, str], needed: str) -> None:
    full = strong_rows(skewed(units, "25 kip"))
    assert full.detailed is not None
    said = [one.because for one in full.detailed.reasons["B1"] if "strength asks" in one.because]
    assert len(said) == 2
    assert "strength asks for 3, since 2 have " in said[0]
    assert f"{needed} is needed (bolts through the beam web, eccentric)" in said[0]


def test_what_is_strong_enough_stays_as_it_was() -> None:
    light = skewed(INCHES, "5 kip")
    assert strong_rows(light) is light
    demo = demo_frame()
    again = strong_rows(strong_rows(demo))
    assert again.job.assemblies == strong_rows(demo).job.assemblies


def test_rows_of_the_document_stay() -> None:
    given = skewed(INCHES, "25 kip", ", rows = 2")
    assert strong_rows(given) is given


def test_a_reaction_that_is_only_suggested_asks_for_nothing() -> None:
    text = SKEWED.format(**INCHES, reaction="25 kip", more="").replace('ends = { reaction = "25 kip" }', "")
    full = read_full(text)
    assert strong_rows(full) is full


def test_slip_asks_for_more_rows_than_bearing() -> None:
    practice = '[practice]\nbolt_grade = "A325-SC"\n\n[frame.grid]'
    text = SKEWED.format(**INCHES, reaction="22 kip", more=', connection = "double angles"')
    square = text.replace('at = "10\'-0"', 'at = "8\'-0"')
    bearing, slip = read_full(square), read_full(square.replace("[frame.grid]", practice))
    assert rows(strong_rows(bearing)) <= rows(strong_rows(slip))
    assert not failed(strong_rows(slip))


def test_where_no_rows_are_enough_the_strongest_are_taken_and_the_check_says_so() -> None:
    before = skewed(INCHES, "60 kip", ', connection = "single plate"')
    heavy = strong_rows(before)
    assert rows(heavy) >= rows(before)
    assert "B1 left" in failed(heavy)


def test_a_job_without_a_frame_has_nothing_to_ask() -> None:
    full = read_full('[job]\nname = "x"\n[[piece]]\nmark = "X1"\nstock = "W16x26"\nlength = "10\'-0"\n')
    assert strong_rows(full) is full


@pytest.mark.parametrize(("units", "reaction"), [("ft-in", "24 kip"), ("mm", "95 kN")])
def test_a_tongue_gets_the_rows_that_it_needs(units: str, reaction: str) -> None:
    inch = 25 if units == "mm" else 1
    full = read_full(f"""
[job]
name = "Canopy"
units = "{units}"

[frame.grid]
x = {{ names = ["1", "2"], spacing = [{144 * inch}] }}
y = {{ names = ["A"] }}

[[frame.level]]
name = "Roof"
elevation = {120 * inch}

[[frame.column]]
name = "P1"
at = "1/A"
stock = "HSS6x6x3/8"
base = 0
top = {168 * inch}

[[frame.column]]
name = "P2"
at = "2/A"
stock = "HSS6x6x3/8"
base = 0
top = {168 * inch}

[[frame.member]]
name = "B1"
stock = "HSS10x4x1/4"
from = "1/A"
to = "2/A"
top = "Roof"
ends = {{ reaction = "{reaction}" }}
""")
    assert full.detailed is not None
    ladder = full.detailed.joints["B1", End.LEFT].ladder
    assert ladder is not None
    strong = strong_rows(full)
    assert strong.detailed is not None
    longer = strong.detailed.joints["B1", End.LEFT].ladder
    assert longer is not None
    assert (ladder.rows, longer.rows) == (2, 3)
    found = check_strength(strong.job, None, strong.detailed).connections
    assert all(one.verdict.governing.passes for one in found)
