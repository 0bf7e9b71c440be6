from dataclasses import replace

import pytest

from gageline.layout.mark import Bench, Mark, MarkKind, bench_of
from gageline.part import End, Face
from gageline.units import Length, System
from pieces import at, piece

BENCH = Bench(piece(length="10'-0 1/32"), at("1/16"), System.FT_IN)


def test_a_spot_is_rounded_once_along_and_once_from_either_edge() -> None:
    spot = BENCH.spot(Face.NEAR, at("4 5/64"), at("12 11/16"))  # depth of a W16X26 is 15.7 in
    assert (spot.x.text, spot.y.text, spot.y_back.text) == ('4 1/16"', '3"', "1'-0 11/16\"")
    assert spot.at == (at("4 5/64"), at("12 11/16"))
    assert spot.struck == (at("4 1/16"), at("12.7"))


def test_a_pattern_moves_as_one() -> None:
    shift = BENCH.shift(Face.NEAR, at("4 1/64"), at("12.69"))
    one = BENCH.spot(Face.NEAR, at("4 1/64"), at("12.69"), shift)
    two = BENCH.spot(Face.NEAR, at("7 3/64"), at("9.69"), shift)
    assert (one.x.text, two.x.text) == ('4"', '7 1/32"')
    assert (one.y.text, two.y.text) == ('3"', '6"')


def test_readings_from_the_right_end_are_rounded_by_themselves() -> None:
    assert BENCH.x(at("4")).text == '4"'
    assert BENCH.x(at("4"), End.RIGHT).text == "9'-8 1/16\""
    assert BENCH.y(Face.TOP, at("-1 3/4")).text == '1 3/4" far'


def test_sizes_are_printed_exact_and_checks_rounded() -> None:
    assert BENCH.exact(at("13/16")) == '13/16"'
    assert BENCH.say(at("3 1/64")) == '3"'
    assert BENCH.say(-at("1/2")) == '-1/2"'


@pytest.mark.parametrize(
    ("tenths", "metric"), [(30000, True), (30005, True), (30001, False), (30003, False), (25400, False)]
)
def test_a_length_in_whole_or_half_millimetres_is_one_that_was_drawn_in_them(
    tenths: int, metric: bool
) -> None:
    part = replace(piece(), length=Length.from_mm(1) / 10 * tenths)
    bench = bench_of(part, at("1/16"), System.FT_IN)
    assert bench.is_metric is metric
    assert bench.metric().own() == bench.own() == Bench(part, at("1/16"), System.FT_IN)


def test_a_line_knows_whether_it_runs_across() -> None:
    across = BENCH.line(Face.NEAR, MarkKind.CUT_LINE, (at("4"), at("15.7")), (at("4"), at("0")), "cut")
    along = BENCH.line(Face.NEAR, MarkKind.EDGE_LINE, (at("4"), at("3")), (at("9"), at("3")), "edge")
    point = Mark(Face.NEAR, MarkKind.HOLE, across.spot, "hole")
    assert [mark.runs_across for mark in (across, along, point)] == [True, False, False]
    assert [len(mark.spots) for mark in (across, along, point)] == [2, 2, 1]
    assert (point.x.text, point.y.text) == ('4"', '0"')


def test_a_length_that_was_worked_out_says_nothing_of_its_units() -> None:
    """5000.5 mm is no whole 64th: drawn so it was given in millimetres, worked out it came about."""
    drawn = replace(piece(), length=Length.from_mm(10001) / 2)
    tape = at("1/16")
    assert bench_of(drawn, tape, System.FT_IN).read_in is System.MM
    bench = bench_of(replace(drawn, derived=True), tape, System.FT_IN)
    assert (bench.read_in, bench.x(drawn.length).text) == (System.FT_IN, "16'-4 7/8\"")
