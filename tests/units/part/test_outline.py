import math
from dataclasses import replace

import pytest

from gageline.part import (
    Clip,
    Cope,
    End,
    EndCut,
    Face,
    FlangeTrim,
    Opening,
    Side,
    clip_outline,
    cope_boundary,
    cope_outline,
    face_outline,
    opening_outline,
    trim_outline,
)
from gageline.units import ZERO, parse_slope
from pieces import at, drilled, hole, piece

SPANDREL = 1 - math.pi / 4  # of the square of a radius: what a corner radius leaves in the corner


def cope(
    end: End = End.LEFT, edge: Face = Face.TOP, length: str = "4", depth: str = "1 1/2", r: str = "1/2"
) -> Cope:
    return Cope(end, edge, at(length), at(depth), at(r))


def test_bare_faces_are_rectangles() -> None:
    beam = piece("W16X26", "10'-0")
    assert face_outline(beam, Face.NEAR).area == pytest.approx(120 * 15.7)
    assert face_outline(beam, Face.TOP).area == pytest.approx(120 * 5.5)
    angle = piece("L6X4X1/2", "1'-0")
    assert face_outline(angle, Face.LEG_A).area == pytest.approx(12 * 6)
    assert face_outline(angle, Face.LEG_B).bounds == pytest.approx((0, 0, 12, 4))


# Areas below are plane geometry: rectangles less notches plus what the radius leaves.
@pytest.mark.parametrize("end", End)
@pytest.mark.parametrize("edge", [Face.TOP, Face.BOTTOM])
def test_a_cope_takes_its_notch_from_web_and_flange(end: End, edge: Face) -> None:
    beam = piece("W16X26", "10'-0", copes=(cope(end, edge),))
    notch = 4 * 1.5 - SPANDREL * 0.25
    assert face_outline(beam, Face.NEAR).area == pytest.approx(120 * 15.7 - notch, abs=1e-3)
    assert face_outline(beam, edge).area == pytest.approx((120 - 4) * 5.5)
    other = Face.BOTTOM if edge is Face.TOP else Face.TOP
    assert face_outline(beam, other).area == pytest.approx(120 * 5.5)
    in_x = (0, 4) if end is End.LEFT else (116, 120)
    in_y = (14.2, 15.7) if edge is Face.TOP else (0, 1.5)
    gone = face_outline(piece("W16X26", "10'-0"), Face.NEAR).difference(face_outline(beam, Face.NEAR))
    assert gone.bounds == pytest.approx((in_x[0], in_y[0], in_x[1], in_y[1]))


def test_the_line_of_a_cope_runs_from_the_end_to_the_flange() -> None:
    line = cope_boundary(piece(copes=(cope(),)), cope())
    assert line[0] == pytest.approx((0, 14.2))
    assert line[-1] == pytest.approx((4, 15.7))
    assert max(math.dist(p, (3.5, 14.7)) for p in line[1:-1]) == pytest.approx(0.5)
    sharp = cope_boundary(piece(), cope(r="0"))
    assert len(sharp) == 3
    assert sharp[1] == pytest.approx((4, 14.2))


def test_what_a_cope_takes_off_runs_past_the_steel() -> None:
    low_x, low_y, high_x, high_y = cope_outline(piece(), cope(End.RIGHT)).bounds
    assert (low_x, low_y) == pytest.approx((116, 14.2))
    assert high_x > 120
    assert high_y > 15.7


def test_a_cope_at_an_angles_heel_takes_the_other_leg() -> None:
    angle = piece("L6X4X1/2", "1'-0", copes=(cope(edge=Face.BOTTOM, length="2"),))
    assert face_outline(angle, Face.LEG_B).area == pytest.approx((12 - 2) * 4)
    assert face_outline(angle, Face.LEG_A).area == pytest.approx(12 * 6 - 2 * 1.5 + SPANDREL * 0.25, abs=1e-3)


@pytest.mark.parametrize("side", Side)
def test_a_trim_takes_one_side_of_a_flange(side: Side) -> None:
    flush = FlangeTrim(End.LEFT, Face.TOP, side, at("6in"))
    beam = piece("W16X26", "10'-0", trims=(flush,))
    assert face_outline(beam, Face.TOP).area == pytest.approx(120 * 5.5 - 6 * (2.75 - 0.125))
    assert face_outline(beam, Face.NEAR).area == pytest.approx(120 * 15.7)
    assert face_outline(beam, Face.BOTTOM).area == pytest.approx(120 * 5.5)
    kept = FlangeTrim(End.RIGHT, Face.BOTTOM, side, at("6in"), keep=at("1in"))
    low_x, low, _, high = trim_outline(beam, kept).bounds
    assert low_x == pytest.approx(114)
    assert (low if side is Side.NEAR else -high) == pytest.approx(1.125)


@pytest.mark.parametrize("end", End)
@pytest.mark.parametrize("edge", [Face.TOP, Face.BOTTOM])
def test_a_clip_takes_a_triangle_off_a_plate(end: End, edge: Face) -> None:
    clip = Clip(end, edge, at("1in"), at("2in"))
    plate = piece("PL1/2X8", "1'-0", clips=(clip,))
    assert face_outline(plate, Face.FACE).area == pytest.approx(12 * 8 - 1)
    assert clip_outline(plate, clip).area == pytest.approx(1)
    corner = (0 if end is End.LEFT else 12, 8 if edge is Face.TOP else 0)
    assert corner in clip_outline(plate, clip).exterior.coords


def test_openings() -> None:
    four, six, one = at("4in"), at("6in"), at("1in")
    sharp = Opening(Face.NEAR, at("60in"), at("8in"), six, four, ZERO)
    assert opening_outline(sharp).area == pytest.approx(24)
    rounded = Opening(Face.NEAR, at("60in"), at("8in"), six, four, one)
    assert opening_outline(rounded).area == pytest.approx(24 - 4 * SPANDREL, rel=1e-3)
    disc = Opening(Face.NEAR, at("60in"), at("8in"), four, four, at("2in"))
    assert opening_outline(disc).area == pytest.approx(4 * math.pi, rel=1e-3)
    assert opening_outline(disc).bounds == pytest.approx((58, 6, 62, 10))
    beam = piece("W16X26", "10'-0", openings=(sharp,))
    assert face_outline(beam, Face.NEAR).area == pytest.approx(120 * 15.7 - 24)
    assert face_outline(beam, Face.TOP).area == pytest.approx(120 * 5.5)


def test_bevels_lean_the_ends_of_the_web_and_shorten_a_flange() -> None:
    bevel = EndCut(bevel=parse_slope("3 in 12"))
    beam = piece("W16X26", "10'-0", left=bevel)
    assert face_outline(beam, Face.NEAR).area == pytest.approx(120 * 15.7 - 15.7**2 / 4 / 2, abs=1e-3)
    assert face_outline(beam, Face.TOP).area == pytest.approx(120 * 5.5)
    assert face_outline(beam, Face.BOTTOM).area == pytest.approx((120 - 15.7 / 4) * 5.5, abs=1e-3)


def test_a_mitre_leans_the_ends_of_the_flanges() -> None:
    beam = piece("W16X26", "10'-0", right=EndCut(mitre=parse_slope("3 in 12")))
    assert face_outline(beam, Face.TOP).area == pytest.approx(120 * 5.5 - 5.5**2 / 4 / 2, abs=1e-3)
    assert face_outline(beam, Face.TOP).bounds == pytest.approx((0, -2.75, 120, 2.75))


def test_holes_are_not_taken_out() -> None:
    beam = piece(groups=(drilled(Face.NEAR, hole("3", "6")),))
    assert face_outline(beam, Face.NEAR).area == pytest.approx(120 * 15.7)


def test_a_face_cut_in_two_comes_back_in_two() -> None:
    slot = Opening(Face.FACE, at("6in"), at("4in"), at("1in"), at("9in"), ZERO)
    outline = face_outline(piece("PL1/2X8", "1'-0", openings=(slot,)), Face.FACE)
    assert outline.geom_type == "MultiPolygon"
    assert outline.area == pytest.approx(11 * 8)


def test_an_opening_of_a_web_is_seen_from_both_sides_and_that_of_a_wall_from_its_own() -> None:
    far = Opening(Face.FAR, at("5'"), at("8in"), at("6"), at("4"), ZERO)
    beam = piece("W16X26", "10'-0", openings=(far,))
    assert [face_outline(beam, face).area for face in (Face.NEAR, Face.FAR)] == pytest.approx(
        [120 * 15.7 - 24] * 2
    )
    box = piece("HSS6X6X3/8", "10'-0", openings=(replace(far, y=at("3")),))
    assert face_outline(box, Face.NEAR).area == pytest.approx(120 * 6)
    through = piece("HSS6X6X3/8", "10'-0", openings=(replace(far, y=at("3"), through=True),))
    assert face_outline(through, Face.NEAR).area == pytest.approx(120 * 6 - 24)
    assert face_outline(through, Face.TOP).area == pytest.approx(120 * 6)
