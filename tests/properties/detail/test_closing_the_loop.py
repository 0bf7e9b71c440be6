"""Random bays, detailed and assembled in space: no clash, holes concentric, gaps and work points right."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings

from assembling import detailed, gaps, off_line, overlaps, plays, worst_mate
from gageline.detail import Detailed
from gageline.part import Severity
from random_frames import RandomFrame, bays, knots, tongues

EXACT = 1e-6  # inches, for members that meet at right angles
TICK = 1 / 162560  # inches: the step of `Length`
STEP = 4 * TICK  # for the others: placings and holes are each rounded to whole steps


def goes_together(result: Detailed) -> None:
    """Nothing clashes unsaid, every field hole meets its mate, gaps and work points are the frame's."""
    said = [one for one in result.findings if one.code == "in-the-way"]
    for one, two, _ in overlaps(result):
        assert any(
            one.split(" ")[0] in found.message and two.split(" ")[0] in found.message for found in said
        )
    assert not said or overlaps(result, 0)
    wrong = {one.subject for one in result.findings if one.severity is Severity.ERROR}
    for (member, _), joint in result.joints.items():
        assert joint.kind != "free" or f"{member} {joint.site.word}" in wrong
    for line in result.frame.beams:
        sites = [joint.site for (member, _), joint in result.joints.items() if member == line.name]
        exact = all(site.square and not site.slope for site in sites)
        shared = any(line.name in {one.one[0], one.two[0]} for one in result.shared)
        least = EXACT + (2 * TICK if shared else 0.0) if exact else STEP
        assert worst_mate(result, line.name) <= least
        assert off_line(result, line.name) <= least
        ends = [*gaps(result, line.name), *plays(result, line.name)]
        assert all(abs(gap - wanted) <= least for gap, wanted in ends)


@given(bays())
@settings(max_examples=120, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_bay_goes_together(frame: RandomFrame) -> None:
    goes_together(detailed(frame.tables, frame.system))


@given(knots())
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
def test_beams_around_a_girder_and_a_column_go_together(frame: RandomFrame) -> None:
    goes_together(detailed(frame.tables, frame.system))


@given(tongues())
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
def test_hollow_beams_on_tongues_go_together(frame: RandomFrame) -> None:
    goes_together(detailed(frame.tables, frame.system))
