from fractions import Fraction

import pytest

from gageline.part import (
    Assembly,
    BoltSet,
    Clip,
    Cope,
    End,
    EndCut,
    Face,
    FlangeTrim,
    Opening,
    Side,
    Weld,
    bounds,
    in_order,
    opposite_hand,
    reflect_x,
    reflect_z,
)
from gageline.units import parse_slope
from pieces import at, clip_angle, drilled, hole, piece

LEAN = parse_slope("3 in 12")


def test_holes_in_order_run_along_then_down() -> None:
    one, two, three = hole("3", "9"), hole("3", "6"), hole("6", "9")
    assert in_order((three, two, one)) == (one, two, three)


def test_end_for_end() -> None:
    beam = piece(
        length="10'-0",
        left=EndCut(bevel=LEAN),
        copes=(Cope(End.LEFT, Face.TOP, at("4"), at("1"), at("1/2")),),
        trims=(FlangeTrim(End.RIGHT, Face.BOTTOM, Side.NEAR, at("6in")),),
        groups=(drilled(Face.NEAR, hole("3", "9", "13/16", "1", 30), hole("6", "6")),),
        openings=(Opening(Face.NEAR, at("40in"), at("8in"), at("4in"), at("4in"), at("2in")),),
    )
    turned = reflect_x(beam)
    assert (turned.left, turned.right) == (beam.right, beam.left)
    assert turned.copes[0].end is End.RIGHT
    assert turned.trims[0].end is End.LEFT
    assert turned.trims[0].side is Side.NEAR
    assert turned.groups[0].holes == (hole("9'-6", "6"), hole("9'-9", "9", "13/16", "1", -30))
    assert turned.openings[0].x == at("80in")
    assert turned.groups[0].face is Face.NEAR


def test_clips_go_to_the_other_end() -> None:
    plate = piece("PL1/2X8", clips=(Clip(End.LEFT, Face.TOP, at("1in"), at("1in")),))
    assert reflect_x(plate).clips == (Clip(End.RIGHT, Face.TOP, at("1in"), at("1in")),)


def test_near_for_far() -> None:
    beam = piece(
        left=EndCut(bevel=LEAN, mitre=LEAN),
        trims=(FlangeTrim(End.LEFT, Face.TOP, Side.NEAR, at("6in")),),
        groups=(
            drilled(Face.NEAR, hole("3", "9", "13/16", "1", 30)),
            drilled(Face.TOP, hole("3", "1 3/8", "13/16", "1", 30), name="flange"),
        ),
        openings=(
            Opening(Face.FAR, at("40in"), at("8in"), at("4in"), at("4in"), at("2in")),
            Opening(Face.TOP, at("40in"), at("1 1/2"), at("1in"), at("1in"), at("1/2")),
        ),
    )
    across = reflect_z(beam)
    assert across.left == EndCut(bevel=LEAN, mitre=-LEAN)
    assert across.trims[0].side is Side.FAR
    assert across.groups[0].face is Face.FAR
    assert across.groups[0].holes == beam.groups[0].holes
    assert across.groups[1].face is Face.TOP
    assert across.groups[1].holes == (hole("3", "-1 3/8", "13/16", "1", -30),)
    assert across.openings[0].face is Face.NEAR
    assert across.openings[1].y == -at("1 1/2")


def test_the_opposite_hand_of_a_beam_changes_near_and_far() -> None:
    beam = piece(mark="B4", groups=(drilled(Face.NEAR, hole("3", "9")),))
    angle = clip_angle(beam)
    weld = Weld("left near angle", at("1/4"), at("9in"), 2, "both ends")
    bolts = BoltSet(("left near angle",), "3/4", 3, None, field=True)
    hand = opposite_hand(Assembly(beam, 1, (angle,), (weld,), (bolts,)), "B5", 3)
    assert (hand.mark, hand.hand_of, hand.quantity) == ("B5", "B4", 3)
    assert hand.main.groups[0].face is Face.FAR
    assert hand.main.groups[0].holes[0].x == at("3in")
    assert hand.fittings[0].name == hand.welds[0].fitting == hand.bolts[0].fittings[0] == "left far angle"
    assert (hand.fittings[0].on, hand.fittings[0].end) == (Face.FAR, End.LEFT)
    (x, y, (far, near)) = bounds(angle)
    assert bounds(hand.fittings[0]) == (x, y, (-near, -far))


@pytest.mark.parametrize("stock", ["C8X11.5", "L6X4X1/2", "PL1/2X8"])
def test_the_opposite_hand_of_a_one_sided_section_is_turned_end_for_end(stock: str) -> None:
    main = piece(stock, "10'-0", mark="B4", left=EndCut(bevel=LEAN))
    angle = clip_angle(piece(stock))
    hand = opposite_hand(Assembly(main, 1, (angle,)), "B5", 1)
    assert hand.main.right == EndCut(bevel=LEAN)
    assert hand.fittings[0].name == "right near angle"
    assert (hand.fittings[0].on, hand.fittings[0].end) == (Face.NEAR, End.RIGHT)
    ((low, high), y, z) = bounds(angle)
    assert bounds(hand.fittings[0]) == ((main.length - high, main.length - low), y, z)


def test_a_slots_angle_is_kept_as_a_fraction() -> None:
    beam = piece(groups=(drilled(Face.NEAR, hole("3", "9", "13/16", "1", 30)),))
    assert reflect_x(beam).groups[0].holes[0].angle == Fraction(-30)
