"""Holes and openings of beams under their loads, by hand."""

from __future__ import annotations

import pytest

from gageline.strength import Check, JobStrength, Method, check_strength, report_of
from gageline.units import System
from jobs import job_of

BEAM = 'mark = "B1"\nstock = "W18x50"\nlength = "20\'-0"\n'
LOADS = 'loads = [{ case = "live", uniform = "3 kip/ft" }]\nspan = { unbraced = 0 }\n'
HOLES = '[[piece.holes]]\nface = "FACE"\nx = "AT"\ncolumns = 1\nrows = 2\ngage = "4"\nbolt = "7/8"\n'
OPENING = '[[piece.openings]]\nface = "near"\nx = "5\'-0"\nlength = "8"\ndepth = "6"\nradius = "1"\n'


def strength(lines: str) -> JobStrength:
    return check_strength(job_of(BEAM + LOADS + lines), Method.LRFD)


def named(found: JobStrength, start: str) -> list[Check]:
    (beam,) = found.beams
    return [check for check in beam.checks if check.title.startswith(start)]


def holes(face: str, *places: str) -> JobStrength:
    return strength("".join(HOLES.replace("FACE", face).replace("AT", at) for at in places))


def test_holes_of_the_tension_flange_take_bending_away() -> None:
    """F13.1 by hand: A_fg 7.5 0.57 = 4.275, less two of 1 in: 3.135 in2; F_u A_fn = 203.8 kips is less than
    F_y A_fg = 213.8; M_n = 203.8/4.275 88.9 = 4238 kip-in. 1.6 3 20^2/8 = 240 kip-ft in the middle."""
    (check,) = named(holes("bottom", "10'-0"), "bending at the holes of the bottom flange")
    assert check.clause.number == "F13.1"
    assert check.capacity == pytest.approx(0.9 * 4238, rel=1e-3)
    assert check.demand == pytest.approx(240 * 12, rel=1e-3)


def test_the_worst_section_is_the_one_with_the_most_moment() -> None:
    (check,) = named(holes("bottom", "2'-0", "8'-0"), "bending at the holes")
    assert "96 in from the left end" in check.title


def test_holes_of_the_flange_in_compression_are_filled_by_their_bolts() -> None:
    assert not named(holes("top", "10'-0"), "bending at the holes")


def test_holes_of_the_web_take_shear_away() -> None:
    """J4.2(b) by hand: (18 - 2) 0.355 = 5.68 in2, 0.75 0.6 65 5.68 = 166 kips, with 4.8 8 = 38.4 at 2 ft."""
    (check,) = named(holes("near", "2'-0"), "shear at the holes of the web")
    assert check.capacity == pytest.approx(166.1, rel=1e-3)
    assert check.demand == pytest.approx(38.4, rel=0.01)


def test_an_opening_is_warned_of_with_its_place() -> None:
    found = strength(OPENING)
    words = "B1, shear and bending at the opening in its web, 5'-0\" from its left end: not checked"
    lines = list(report_of(found, System.FT_IN))
    assert [line for line in lines if line.startswith(f"warning: {words}")]
    assert not [line for line in lines if line.startswith("not checked: B1, shear")]
    assert [item for item in found.not_checked if "opening" in item.what]


def test_a_whole_beam_has_no_such_checks() -> None:
    found = strength("")
    assert not named(found, "bending at the holes")
    assert not named(found, "shear at the holes")
    assert not found.openings
