"""Fittings pulled off their support, by hand from Design Example II.A-2B."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES
from gageline.strength import Bolted, Check, Method
from gageline.strength.kinds.pulled import PulledEnd, pulled, tributary

A2B = replace(EXAMPLES["II.A-2B"], V=75.0, N=60.0)


def both(end: PulledEnd) -> tuple[Check, ...]:
    return pulled(A2B, end, Method.LRFD).checks


def end(**changes: object) -> PulledEnd:
    joint = A2B.to_support
    assert isinstance(joint, Bolted)
    changed = replace(joint, **changes)  # type: ignore[arg-type] # any field
    return PulledEnd(changed, A2B.fitting, b=joint.gage - 0.25, a=joint.edge_side)


def test_each_bolt_has_a_tenth_of_both_forces() -> None:
    """V 75/10 = 7.5 over 0.6013 in²: 12.5 ksi; F'_nt 89.2 ksi: 0.75 89.2 0.6013 = 40.2 kips against 6."""
    tension, _ = both(end())
    assert tension.demand == pytest.approx(6.0)
    assert tension.capacity == pytest.approx(40.2, rel=2e-3)


def test_prying_leaves_what_the_print_says() -> None:
    _, pry = both(end())
    assert pry.capacity == pytest.approx(93.7, rel=0.01)


def test_an_uneven_pitch_counts_its_least() -> None:
    """2 in instead of the average of 2.9 in: less leg to bend for that bolt."""
    _, even = both(end())
    _, uneven = both(end(uneven=(2.0, 4.0, 3.0, 3.0), pitch=2.0))
    assert uneven.capacity < even.capacity
    assert {dict(line.values).get("p") for line in uneven.steps} == {None, 2.0}


@pytest.mark.parametrize(
    ("b", "changes", "p"),
    [
        (2.32, {}, 2.9),
        (1.0, {}, 2.0),
        (1.3, {}, (3 * 2.6 + 2 * (1.25 + 1.3)) / 5),
        (1.4, {"rows": 2, "pitch": 8.0}, 1.25 + 1.4),
        (1.4, {"rows": 1}, 2 * 1.25),
    ],
)
def test_a_bolt_has_no_more_of_the_fitting_than_b_on_either_side(
    b: float, changes: dict[str, object], p: float
) -> None:
    """Manual Part 9 (from memory): p at most 2 b; II.A-2B prints p = 2.90 of 14.5 in with 5 rows."""
    assert tributary(end(**changes).joint, b) == pytest.approx(p)


def test_bolts_far_apart_do_not_bend_the_whole_length() -> None:
    """Two rows 8 in apart: the average of 5.5 in would give a pair what no leg carries to it."""
    near, far = (both(end(rows=2, pitch=pitch))[1].capacity for pitch in (5.0, 8.0))
    assert far == pytest.approx(near)


def test_bolts_that_their_shear_uses_up_fail_in_tension() -> None:
    """300 kips on ten bolts of 0.75 54 0.6013 = 24.4 kips each: nothing is left for any tension."""
    (bolts,) = pulled(replace(A2B, V=300.0), end(), Method.LRFD).checks
    assert bolts.capacity == 0
    assert not bolts.passes
