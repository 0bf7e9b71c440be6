from __future__ import annotations

from itertools import pairwise

import pytest

from gageline.errors import ValueProblem
from gageline.steel import BoltGroup, Measure, all_bolts, bolt, pretension
from gageline.units import Length


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("3/4", "3/4"), ('3/4"', "3/4"), ("0.875", "7/8"), ("1 1/8", "1-1/8"), ("1-1/8", "1-1/8"),
        ("¾", "3/4"), ("M20", "M20"), ("m 20", "M20"), ("20 mm", "M20"),
    ],
)  # fmt: skip
def test_bolts_are_found_as_people_write_them(text: str, size: str) -> None:
    assert bolt(text).size == size


@pytest.mark.parametrize("text", ["13/16", "M21", "M", "2"])
def test_an_unknown_bolt_gets_the_list(text: str) -> None:
    with pytest.raises(ValueProblem, match=f'bolt "{text}" is not in the table: choose from 1/2, 5/8, 3/4'):
        bolt(text)


def test_a_text_that_is_no_size_is_refused() -> None:
    with pytest.raises(ValueProblem, match='bolt "big" is not in the table: choose from 1/2'):
        bolt("big")


def test_bolts_grow_in_every_dimension() -> None:
    for system in Measure:
        row = [entry for entry in all_bolts().values() if entry.system is system]
        for small, large in pairwise(row):
            for name in ("diameter", "head_width", "head_height", "nut_height", "washer_diameter"):
                assert getattr(small, name) < getattr(large, name), (large.size, name)


def test_metric_bolts_have_thread_and_no_american_clearances() -> None:
    assert bolt("M20").pitch == Length.from_mm(2.5)
    assert bolt("M20").stress_area_mm2 == 245
    assert (bolt("M20").grip_add, bolt("M20").clear_tighten, bolt("3/4").pitch) == (None, None, None)


def test_the_smallest_bolt_has_no_clearances_in_the_table() -> None:
    assert bolt("1/2").clear_tighten is None
    assert bolt("5/8").clear_tighten == Length.from_inches(1)


def test_stronger_bolts_are_pulled_harder() -> None:
    for entry in all_bolts().values():
        for year in (2005, 2022):
            assert pretension(entry, BoltGroup.GROUP_150, year) > pretension(entry, BoltGroup.GROUP_120, year)


def test_an_edition_that_is_not_kept_is_refused() -> None:
    with pytest.raises(
        ValueProblem, match="AISC 360 edition 1999 is not kept: choose one of 2005, 2010, 2016, 2022"
    ):
        pretension(bolt("3/4"), year=1999)
