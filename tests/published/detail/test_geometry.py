"""Geometry that published examples print.

AISC, Companion to the Manual, Volume 1: Design Examples, Version 16.0 (2023): II.A-1A, -4, -6, -7, -9, -18,
-28A for copes, angle lengths, gages and the spread. The copes are inputs of the examples, the rule that
leads to them is shop practice. Bolt length: CISC, bolt length selection aid. Erection: 29 CFR 1926.756.
"""

from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import Joint, bolt_length
from gageline.detail.joint import gage_of
from gageline.detail.shop import Shop, up_to
from gageline.job import default_practice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.part import End, Face
from gageline.steel import Section, bolt, find
from gageline.units import Length, System, parse_length

SHOP = Shop(default_practice(System.FT_IN), frame_practice(FramePracticeEntry(), System.FT_IN), System.FT_IN)


def joint(**keys: object) -> Joint:
    return detailed(bay(**keys)).joints["B1", End.LEFT]  # type: ignore[arg-type] # keys of the beam


@pytest.mark.parametrize(
    ("beam", "girder", "length", "depth"),
    [
        ("W18X50", "W21X62", "4", "2"),  # II.A-4
        ("W18X35", "W21X62", "4", "2"),  # II.A-18 and II.A-28A
        ("W12X40", "W30X99", "5", "2"),  # II.A-9
        ("W21X50", "W30X99", "5", "2"),  # II.A-9
    ],
)
def test_copes(beam: str, girder: str, length: str, depth: str) -> None:
    (cope,) = joint(beam=beam, girder=girder).notches.copes
    assert (cope.edge, cope.length, cope.depth) == (Face.TOP, parse_length(length), parse_length(depth))


@pytest.mark.parametrize(
    ("rows", "length"), [(2, "5 1/2"), (3, "8 1/2"), (4, "11 1/2"), (5, "14 1/2"), (8, "23 1/2")]
)
def test_angle_lengths(rows: int, length: str) -> None:
    found = joint(beam="W36X231", girder="W40X297", ends={"rows": rows}).ladder
    assert found is not None
    assert (found.rows, found.length) == (rows, parse_length(length))


@pytest.mark.parametrize(("leg", "gage"), [("3", "1 3/4"), ("4", "2 1/2")])
def test_gages_of_legs(leg: str, gage: str) -> None:
    assert gage_of(parse_length(leg), SHOP) == parse_length(gage)


def test_half_of_a_web_is_rounded_up_for_the_spread() -> None:
    # II.A-1A: web 0.760 in of W36X231, 7/16
    section = find("W36X231")
    assert isinstance(section, Section)
    assert up_to(section.tw.inches / 2, SHOP.frame.spread_step) == parse_length("7/16")
    assert joint(beam="W36X231", girder="W40X297").spread == parse_length("2 1/2") * 2 + parse_length("7/8")


def test_the_setback_of_the_examples() -> None:
    assert joint().choice.setback == parse_length("1/2")


def test_rows_of_the_coped_beam() -> None:
    # II.A-4: W18X50 to W21X62 with 60.0 kip takes 3 rows, angles 8 1/2 long
    found = joint(ends={"reaction": 60}).ladder
    assert found is not None
    assert (found.rows, found.length) == (3, parse_length("8 1/2"))


def test_the_bolt_length_of_the_selection_aid() -> None:
    # 7/8 in, plies 10 and 9.7 mm, no washer
    assert bolt_length(bolt("7/8"), Length.from_mm(19.7), washers=0) == parse_length("2")
