from __future__ import annotations

from dataclasses import replace

import pytest

from gageline.detail.wrench import bolt_end, wrench_of
from gageline.steel import bolt
from gageline.units import parse_length


@pytest.mark.parametrize(
    ("size", "enter", "tighten", "fillet"),
    [("5/8", "11/16", "1", "11/16"), ("3/4", "3/4", "1 1/4", "3/4"), ("1", "15/16", "1 7/16", "1")],
)
def test_a_size_of_the_table_has_its_own_line(size: str, enter: str, tighten: str, fillet: str) -> None:
    # AISC Manual, LRFD 2nd ed., Table 8-4: C2, C1 and C3
    found = wrench_of(bolt(size))
    assert found is not None
    assert found.size == bolt(size)
    assert (found.enter, found.tighten) == (parse_length(enter), parse_length(tighten))
    assert found.fillet == parse_length(fillet)


@pytest.mark.parametrize(
    ("size", "larger"),
    [
        ("1/2", "5/8"),
        ("M16", "3/4"),
        ("M20", "7/8"),
        ("M22", "7/8"),
        ("M24", "1"),
        ("M27", "1-1/8"),
        ("M30", "1-1/4"),
        ("M36", "1-1/2"),
    ],
)
def test_another_size_has_the_line_of_the_next_that_is_larger_all_round(size: str, larger: str) -> None:
    found, small = wrench_of(bolt(size)), bolt(size)
    assert found is not None
    large = found.size
    assert large == bolt(larger)
    assert large.diameter >= small.diameter
    assert large.head_width >= small.head_width
    assert large.nut_height >= small.nut_height
    assert large.washer_diameter >= small.washer_diameter


def test_a_bolt_stands_out_by_its_nut_and_a_quarter_inch() -> None:
    assert (
        bolt_end(bolt("3/4")) == 47 / 64 + 0.25
    )  # ASME B18.2.6: the heavy hex nut of a 3/4 bolt is 47/64 (from memory)


def test_no_line_is_guessed_for_a_bolt_larger_than_all() -> None:
    huge = replace(bolt("M36"), size="M48", diameter=parse_length("48 mm"))
    assert wrench_of(huge) is None
