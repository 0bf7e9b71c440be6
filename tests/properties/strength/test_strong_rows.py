"""Rows by strength in random bays: what detailing takes is not refused, and asking again changes nothing."""

from __future__ import annotations

import tomlkit
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gageline.detail import FullJob, read_full
from gageline.job import JobProblems
from gageline.strength import strong_rows
from random_frames import RandomFrame, bays, knots


def opened(frame: RandomFrame) -> FullJob | None:
    """The frame as a job; None where the document is refused."""
    document = {"job": {"name": "random", "units": str(frame.system)}, "frame": frame.tables}
    try:
        return read_full(tomlkit.dumps(document))
    except JobProblems:
        return None


@given(st.one_of(bays(), knots()))
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
def test_strength_refuses_nothing_that_detailing_takes(frame: RandomFrame) -> None:
    full = opened(frame)
    if full is None or full.detailed is None:
        return
    strong = strong_rows(full)
    assert strong.detailed is not None
    for key, joint in strong.detailed.joints.items():
        ladder, before = joint.ladder, full.detailed.joints[key].ladder
        if (
            joint.choice.asked
            and ladder
            and before
            and joint.choice.named == full.detailed.joints[key].choice.named
        ):
            assert ladder.rows >= before.rows
    assert strong_rows(strong).job.assemblies == strong.job.assemblies
