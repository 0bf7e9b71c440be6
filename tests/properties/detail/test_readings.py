"""What a tape can read of the holes of random frames: spacings on its divisions, in the job's own units."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from hypothesis import HealthCheck, given, settings

from assembling import detailed
from frames import demo_frame
from gageline.detail import Detailed
from gageline.job import default_practice
from gageline.layout import lay_out
from gageline.part import Assembly, Part
from gageline.units import Length, System
from random_frames import RandomFrame, bays, knots

DIVISION = {System.FT_IN: Length.from_inches(Fraction(1, 64)), System.MM: Length.from_mm(Fraction(1, 10))}
OTHER = re.compile(r"\d mm\b")


def askew(result: Detailed) -> set[str]:
    """The names of members whose holes lie on a slope or a skew, and of those that carry them."""
    sites = [joint.site for joint in result.joints.values() if not joint.site.square or joint.site.slope]
    return {name for site in sites for name in (site.member.name, site.support.name)}


def parts(assembly: Assembly) -> Iterator[Part]:
    yield assembly.main
    yield from (fitting.part for fitting in assembly.fittings)


def spacings_are_even(result: Detailed, system: System) -> None:
    """Every spacing of every pattern that is level and square is a whole number of the tape's divisions."""
    turned = askew(result)
    for placed in result.placed:
        if placed.member in turned:
            continue
        for part in parts(placed.assembly):
            for group in part.groups:
                first = group.holes[0]
                for hole in group.holes:
                    for step in (hole.x - first.x, hole.y - first.y):
                        assert step.ticks % DIVISION[system].ticks == 0, (placed.member, group.name, step)


def cards_are_in_inches(assemblies: tuple[Assembly, ...]) -> None:
    """No step of any card of an inch job says millimetres."""
    practice = default_practice(System.FT_IN)
    for assembly in assemblies:
        layout = lay_out(assembly, practice, System.FT_IN)
        for one in (layout.main, *layout.fittings):
            for step in one.steps:
                texts = (step.title, step.text, step.check, *(reading.text for reading in step.readings))
                assert not any(OTHER.search(text) for text in texts), (assembly.mark, texts)


def reads_well(frame: RandomFrame) -> None:
    result = detailed(frame.tables, frame.system)
    spacings_are_even(result, frame.system)
    if frame.system is System.FT_IN:
        cards_are_in_inches(result.assemblies)


@given(bays())
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_bay_is_read_in_its_own_units(frame: RandomFrame) -> None:
    reads_well(frame)


@given(knots())
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_beams_around_a_girder_and_a_column_are_read_in_their_own_units(frame: RandomFrame) -> None:
    reads_well(frame)


def test_the_demo_is_read_in_inches() -> None:
    full = demo_frame()
    assert full.detailed is not None
    spacings_are_even(full.detailed, System.FT_IN)
    cards_are_in_inches(full.job.assemblies)
