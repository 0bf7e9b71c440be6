from __future__ import annotations

from gageline.detail.shop import Shop, up_to
from gageline.job import default_practice, frame_practice
from gageline.job.frame_practice import FramePracticeEntry
from gageline.units import System, parse_length

SHOP = Shop(default_practice(System.FT_IN), frame_practice(FramePracticeEntry(), System.FT_IN), System.FT_IN)


def test_copes_are_rounded_up_to_the_shops_step() -> None:
    assert SHOP.cope(3.92) == parse_length("4")
    assert SHOP.cope(4.0) == parse_length("4")
    assert SHOP.cope(4.01) == parse_length("4 1/2")


def test_a_millionth_over_a_step_is_on_it() -> None:
    assert up_to(1.0000005, parse_length("1/16")) == parse_length("1")
    assert up_to(0.38, parse_length("1/16")) == parse_length("7/16")


def test_lengths_are_said_in_the_jobs_units() -> None:
    assert SHOP.say(13.5) == "1'-1 1/2\""
    assert SHOP.bolt(None).size == "3/4"
    assert SHOP.bolt("7/8").size == "7/8"


def test_the_finest_division_is_of_the_jobs_tape() -> None:
    metric = Shop(default_practice(System.MM), frame_practice(FramePracticeEntry(), System.MM), System.MM)
    assert SHOP.division == parse_length("1/64")
    assert metric.division == parse_length("0.1 mm")


def test_two_lengths_that_read_alike_are_said_in_decimals() -> None:
    assert SHOP.apart(0.5, 0.75) == ('1/2"', '3/4"')
    assert SHOP.apart(0.748, 0.75) == ('0.748"', '0.750"')
    metric = Shop(default_practice(System.MM), frame_practice(FramePracticeEntry(), System.MM), System.MM)
    assert metric.apart(parse_length("19.01 mm"), parse_length("19.04 mm")) == ("19.01 mm", "19.04 mm")
