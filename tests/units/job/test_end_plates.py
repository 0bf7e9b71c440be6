from __future__ import annotations

import math

import pytest

from gageline.job import JobProblems
from gageline.part import Assembly, BoltSet, bounds
from gageline.units import Length
from jobs import inches, piece_of, section_of

PLATE = 'end = "{end}"\nthickness = "1/2"\nwidth = "8"\nlength = "{length}"\n'


def with_plate(
    more: str = "", *, stock: str = "W12x26", end: str = "both", kind: str = "end_plates", length: str = "14"
) -> Assembly:
    return piece_of(f"[[piece.{kind}]]\n" + PLATE.format(end=end, length=length) + more, stock=stock)


@pytest.mark.parametrize("stock", ["W12x26", "C12x20.7", "WT8x18", "HSS6x6x3/8", "Pipe6STD", "L6x4x1/2"])
def test_plates_close_both_ends_and_are_centred(stock: str) -> None:
    piece = with_plate(stock=stock)
    left, right = (bounds(fitting) for fitting in piece.fittings)
    assert left[0] == (inches("-1/2"), Length(0))
    assert right[0] == (inches("10'-0"), inches("10'-0 1/2"))
    section = section_of(piece)
    for limits in (left, right):
        (low, high), (far, near) = limits[1:]
        assert high - low == inches("14")
        assert near - far == inches("8")
        assert abs((low + high - section.d).ticks) <= 1
    assert left[2] == right[2]


def test_one_mark_for_the_plates_of_both_ends() -> None:
    more = 'rows = 3\ngage = "4"\ndrop = "-1"\nend_distance = "2"\n'
    piece = with_plate(more)
    assert len({fitting.part for fitting in piece.fittings}) == 1
    tops = [
        max(fitting.placement.point((hole.x, hole.y, Length(0)))[1] for hole in fitting.part.groups[0].holes)
        for fitting in piece.fittings
    ]
    assert tops == [section_of(piece).d + inches("1") - inches("2")] * 2


def test_the_drop_places_the_top_edge() -> None:
    piece = with_plate('drop = "1 1/2"\n', length="9")
    assert bounds(piece.fittings[0])[1][1] == section_of(piece).d - inches("1 1/2")


def test_rows_without_end_distance_are_centred() -> None:
    piece = with_plate('rows = 2\npitch = "10"\ngage = "5"\n', kind="base_plates", end="left")
    holes = piece.fittings[0].part.groups[0].holes
    assert {hole.x for hole in holes} == {inches("2"), inches("12")}
    assert {hole.y for hole in holes} == {inches("1 1/2"), inches("6 1/2")}
    assert piece.bolts == (BoltSet(("left base plate",), "3/4", 4, None, field=True),)
    assert piece.fittings[0].part.mark.startswith("b")


def test_anchor_holes_of_a_plain_diameter_bring_no_bolts() -> None:
    piece = with_plate('rows = 2\npitch = "10"\ngage = "5"\ndiameter = "1 1/16"\n', kind="base_plates")
    assert piece.bolts == ()


def test_the_weld_goes_all_around() -> None:
    """An I-shape is two depths and four flanges around less two webs, its fillets cut the corner a little."""
    beam = with_plate()
    section = section_of(beam)
    sharp = (section.d + section.bf * 2 - section.tw) * 2
    assert beam.welds[0].length.inches == pytest.approx(sharp.inches, rel=0.02)
    assert beam.welds[0].length < sharp
    pipe = with_plate(stock="Pipe6STD")
    assert pipe.welds[0].length.inches == pytest.approx(math.pi * section_of(pipe).d.inches, abs=1e-4)
    tube = with_plate(stock="HSS6x6x3/8", kind="cap_plates")
    assert tube.welds[0].length == inches("24")
    assert tube.welds[0].where == "all around the section"


def test_columns_without_gage_are_refused() -> None:
    with pytest.raises(JobProblems, match="gage is missing for 2 columns of holes: give it"):
        with_plate("rows = 2\n")
