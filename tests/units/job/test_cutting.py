from __future__ import annotations

from fractions import Fraction

import pytest

from gageline.job import JobProblems
from gageline.part import Clip, Cope, End, EndCut, Face, FlangeTrim, Hole, Opening, Side
from gageline.steel import HoleKind
from gageline.units import SQUARE, ZERO, Slope
from jobs import inches, mm, piece_of, section_of


def test_ends_lean_to_the_longer_edge() -> None:
    main = piece_of('left = { bevel = "3 in 12", long = "bottom" }\nright = { mitre = "45°" }\n').main
    assert main.left == EndCut(-Slope(Fraction(1, 4)), SQUARE)
    assert main.right.bevel == SQUARE
    assert main.right.mitre.degrees == pytest.approx(45)
    far = piece_of('right = { mitre = "1 in 12", long_side = "far" }\n').main
    assert far.right.mitre == -Slope(Fraction(1, 12))


def test_a_cope_at_both_ends_and_flanges_is_four_copes() -> None:
    main = piece_of('copes = [{ end = "both", flange = "both", length = 4, depth = 2 }]\n').main
    assert {(cope.end, cope.edge) for cope in main.copes} == {
        (end, edge) for end in End for edge in (Face.TOP, Face.BOTTOM)
    }
    assert main.copes[0] == Cope(End.LEFT, Face.TOP, inches("4"), inches("2"), inches("1/2"))


def test_the_shop_has_its_own_radius() -> None:
    cope = 'copes = [{ end = "left", length = 4, depth = 2 }]\n'
    assert piece_of(cope, practice="cope_radius = 1").main.copes[0].radius == inches("1")
    assert piece_of(cope.replace("2 }", "2, radius = 0 }")).main.copes[0].radius == ZERO
    assert piece_of(cope.replace("4", "90").replace("2 ", "40 "), units="mm").main.copes[0].radius == mm(12)


def test_trims_and_clips() -> None:
    main = piece_of('trims = [{ end = "left", flange = "top", length = 6, keep = "1/4" }]\n').main
    assert main.trims == tuple(
        FlangeTrim(End.LEFT, Face.TOP, side, inches("6"), inches("1/4")) for side in Side
    )
    channel = piece_of('trims = [{ end = "left", flange = "top", length = 6 }]\n', stock="C12x20.7").main
    assert [trim.side for trim in channel.trims] == [Side.FAR]
    plate = piece_of(
        'clips = [{ end = "right", edge = "top", along = 4, across = 3 }]\n', stock="PL3/8x10"
    ).main
    assert plate.clips == (Clip(End.RIGHT, Face.TOP, inches("4"), inches("3")),)


@pytest.mark.parametrize(
    ("stock", "lines", "message"),
    [
        (
            "Pipe6STD",
            'copes = [{ end = "left", length = 4, depth = 2 }]',
            "is round and has no flange to cope",
        ),
        (
            "WT8x18",
            'trims = [{ end = "left", flange = "both", length = 4 }]',
            "has no bottom flange: give flange",
        ),
        (
            "C12x20.7",
            'trims = [{ end = "left", flange = "top", side = "near", length = 4 }]',
            "has its flanges on the far side: give far",
        ),
        (
            "W16x26",
            "openings = [{ diameter = 4, down = 5, up = 5 }]",
            "down and up both place its middle: give one",
        ),
        (
            "W16x26",
            "openings = [{ x = 20 }]",
            "an opening is round by diameter alone, or has length and depth",
        ),
    ],
)
def test_what_a_section_has_not_cannot_be_cut(stock: str, lines: str, message: str) -> None:
    with pytest.raises(JobProblems, match=message):
        piece_of(lines, stock=stock)


def test_openings_are_round_or_rectangular() -> None:
    lines = 'openings = [{ diameter = 4, x = 20, up = 7 }, { length = 10, depth = 4, from = "centre" }]\n'
    piece = piece_of(lines)
    round_one, other = piece.main.openings
    assert round_one == Opening(Face.NEAR, inches("20"), inches("7"), inches("4"), inches("4"), inches("2"))
    assert round_one.is_round
    assert (other.x, other.radius) == (inches("60"), inches("1/2"))
    assert abs((other.y * 2 - section_of(piece).d).ticks) <= 1


def test_holes_by_bolt_by_diameter_and_slotted() -> None:
    """AISC 360-22 Table J3.3: 13/16 for a 3/4 bolt, a short slot 13/16 x 1."""
    lines = "[[piece.holes]]\nx = 6\ndown = 3\n"
    std, ssl, plain = (
        piece_of(lines + more).main.groups[0]
        for more in ("", 'hole = "SSL"\nturn = "across"\n', 'diameter = 1\nslot = "1 1/2"\nturn = -45\n')
    )
    assert std.holes[0].width == std.holes[0].length == inches("13/16")
    assert (std.bolt, std.kind, std.name, std.mates) == ("3/4", HoleKind.STD, "holes 1", True)
    assert (ssl.holes[0].width, ssl.holes[0].length, ssl.holes[0].angle) == (
        inches("13/16"),
        inches("1"),
        Fraction(90),
    )
    assert plain.kind is None
    y = section_of(piece_of()).d - inches("3")
    assert plain.holes == (Hole(inches("6"), y, inches("1"), inches("1 1/2"), Fraction(-45)),)


def test_a_tube_is_drilled_through_both_walls() -> None:
    main = piece_of("holes = [{ x = 12, offset = 0, through = true }]\n", stock="HSS6x6x3/8").main
    assert main.groups[0].through


def test_a_group_measured_from_a_refused_one_is_not_blamed() -> None:
    lines = 'holes = [{ name = "a", heel = 2 }, { name = "b", from = "a" }, { name = "c", from = "b" }]\n'
    with pytest.raises(JobProblems) as refused:
        piece_of(lines)
    assert len(refused.value.problems) == 1
