import math
from collections import Counter
from dataclasses import replace

import numpy as np
import pytest

from gageline.errors import ValueProblem
from gageline.part import (
    Assembly,
    Clip,
    Cope,
    End,
    Face,
    FlangeTrim,
    Opening,
    Part,
    Placement,
    Side,
    extent_y,
    extent_z,
    faces_of,
)
from gageline.solid import Body, bodies_of, body_of
from gageline.units import ZERO
from pieces import ONE_OF_EACH, at, clip_angle, drilled, hole, piece

BORE = math.pi / 4 * (13 / 16) ** 2  # in2, a standard hole for a 3/4 in bolt
SPANDREL = 1 - math.pi / 4  # of the square of a radius


def lost(part: Part) -> float:
    """What the cuts of a part take out of its stick, in3."""
    bare = replace(part, copes=(), trims=(), clips=(), groups=(), openings=())
    return float(body_of(bare).solid.volume() - body_of(part).solid.volume())


def drill(stock: str, face: Face, y: str, *, through: bool = False) -> float:
    return lost(piece(stock, "5'-0", groups=(drilled(face, hole("2'-0", y), through=through),)))


def open_edges(body: Body) -> int:
    """Edges of the mesh that are not between two triangles that see them from opposite ends."""
    edges = Counter(
        (int(a), int(b)) for t in body.mesh().triangles for a, b in ((t[0], t[1]), (t[1], t[2]), (t[2], t[0]))
    )
    return sum(1 for (a, b), count in edges.items() if count != 1 or edges[b, a] != 1)


@pytest.mark.parametrize("stock", [*ONE_OF_EACH, "S12X35", "IPE 300", "UPN 200", "Pipe6STD"])
def test_every_profile_is_closed_and_fills_its_box(stock: str) -> None:
    part = piece(stock, "5'-0")
    body = body_of(part)
    assert body.name == "B1"
    assert open_edges(body) == 0
    box = ((ZERO, part.length), extent_y(part.stock), extent_z(part.stock))
    for (low, high), (low_box, high_box) in zip(body.box, box, strict=True):
        assert abs(low - low_box) < at("0.002in")
        assert abs(high - high_box) < at("0.002in")


# Volumes by hand: the hole's area times the thickness that it goes through.
@pytest.mark.parametrize(
    ("stock", "face", "y", "thick"),
    [
        ("W16X26", Face.NEAR, "8", 0.25),
        ("W16X26", Face.FAR, "8", 0.25),
        ("W16X26", Face.TOP, "1 3/8", 0.345),
        ("W16X26", Face.BOTTOM, "-1 3/8", 0.345),
        ("C8X11.5", Face.NEAR, "4", 0.22),
        ("C8X11.5", Face.FAR, "4", 0.22),
        ("WT8X18", Face.NEAR, "4", 0.295),
        ("WT8X18", Face.TOP, "2", 0.43),
        ("HSS6X6X3/8", Face.NEAR, "3", 0.349),
        ("HSS6X6X3/8", Face.FAR, "3", 0.349),
        ("HSS6X6X3/8", Face.TOP, "0", 0.349),
        ("HSS6X6X3/8", Face.BOTTOM, "1", 0.349),
        ("L6X4X1/2", Face.LEG_A, "3 1/2", 0.5),
        ("L6X4X1/2", Face.LEG_B, "2 1/2", 0.5),
        ("PL1/2X8", Face.FACE, "4", 0.5),
    ],
)
def test_a_hole_goes_through_its_own_wall(stock: str, face: Face, y: str, thick: float) -> None:
    assert drill(stock, face, y) == pytest.approx(BORE * thick, rel=1e-4)


def test_a_flange_hole_of_a_channel_follows_the_taper() -> None:
    # C8X11.5: 0.390 thick in the middle of the 2.04 overhang, 1 in 6; the hole is 1 1/4 from the back
    thick = 0.39 + (0.22 + 2.04 / 2 - 1.25) / 6
    assert drill("C8X11.5", Face.TOP, "-1 1/4") == pytest.approx(BORE * thick, rel=1e-3)


def test_a_hole_near_the_fillet_goes_through_the_fillet() -> None:
    # half of the hole is above the end of the fillet, kdes 0.747 from the flange's outside
    assert drill("W16X26", Face.NEAR, "14.953in") > BORE * 0.25 * 1.02
    assert drill("W16X26", Face.NEAR, "14.953in") == pytest.approx(drill("W16X26", Face.NEAR, "0.747in"))


def test_through_both_walls_of_a_hollow_section() -> None:
    assert drill("HSS6X6X3/8", Face.NEAR, "3", through=True) == pytest.approx(2 * BORE * 0.349, rel=1e-4)
    one = drill("HSS6.000X0.375", Face.NEAR, "3")
    assert one > BORE * 0.349  # the wall is curved
    assert drill("HSS6.000X0.375", Face.NEAR, "3", through=True) == pytest.approx(2 * one, rel=1e-6)


@pytest.mark.parametrize(
    ("face", "y", "axis", "inside"),
    [(Face.NEAR, "3", 2, 1), (Face.FAR, "3", 2, -1), (Face.TOP, "1", 1, 1), (Face.BOTTOM, "1", 1, -1)],
)
def test_the_right_wall_is_drilled(face: Face, y: str, axis: int, inside: int) -> None:
    plain = body_of(piece("HSS6X6X3/8", "5'-0")).solid
    holed = body_of(piece("HSS6X6X3/8", "5'-0", groups=(drilled(face, hole("2'-0", y)),))).solid
    low = (plain - holed).bounding_box()[axis]
    high = (plain - holed).bounding_box()[axis + 3]
    middle = 3.0 if axis == 1 else 0.0
    assert math.copysign(1, (low + high) / 2 - middle) == inside
    assert high - low == pytest.approx(0.349, abs=1e-5)


def test_the_place_of_a_hole_on_a_lying_leg() -> None:
    plain = body_of(piece("L6X4X1/2", "1'-0")).solid
    holed = body_of(piece("L6X4X1/2", "1'-0", groups=(drilled(Face.LEG_B, hole("3", "2 1/2")),))).solid
    low_x, low_y, low_z, high_x, high_y, high_z = (plain - holed).bounding_box()
    assert ((low_x + high_x) / 2, (low_z + high_z) / 2) == pytest.approx((3, -2.5), abs=1e-6)
    assert (low_y, high_y) == pytest.approx((0, 0.5), abs=1e-6)


def test_a_slot() -> None:
    slot = hole("2'-0", "8", "13/16", "1 7/8", 30)
    area = BORE + 13 / 16 * (15 / 8 - 13 / 16)
    assert lost(piece("W16X26", "5'-0", groups=(drilled(Face.NEAR, slot),))) == pytest.approx(
        area * 0.25, rel=1e-4
    )


@pytest.mark.parametrize("end", End)
@pytest.mark.parametrize("edge", [Face.TOP, Face.BOTTOM])
def test_a_cope_through_flange_fillet_and_web(end: End, edge: Face) -> None:
    cope = Cope(end, edge, at("4in"), at("1 1/2"), at("1/2"))
    # flange, web below it less the corner's radius, and two fillets of radius kdes - tf
    by_hand = 4 * 5.5 * 0.345 + 0.25 * (4 * (1.5 - 0.345) - SPANDREL * 0.25) + 4 * 2 * SPANDREL * 0.402**2
    assert lost(piece("W16X26", "5'-0", copes=(cope,))) == pytest.approx(by_hand, rel=1e-3)


def test_a_cope_of_a_box_takes_both_webs() -> None:
    cope = Cope(End.LEFT, Face.TOP, at("4in"), at("3in"), at("1/2"))
    half = body_of(piece("HSS6X6X3/8", "0'-4")).solid.volume() / 2
    assert lost(piece("HSS6X6X3/8", "5'-0", copes=(cope,))) == pytest.approx(
        half - 2 * 0.349 * SPANDREL * 0.25, rel=1e-3
    )


@pytest.mark.parametrize("side", Side)
@pytest.mark.parametrize("flange", [Face.TOP, Face.BOTTOM])
def test_a_flange_trimmed_flush_with_its_fillet(side: Side, flange: Face) -> None:
    trim = FlangeTrim(End.LEFT, flange, side, at("6in"))
    by_hand = 6 * ((5.5 - 0.25) / 2 * 0.345 + SPANDREL * 0.402**2)
    assert lost(piece("W16X26", "5'-0", trims=(trim,))) == pytest.approx(by_hand, rel=1e-3)


def test_a_flange_trimmed_to_a_stub() -> None:
    trim = FlangeTrim(End.RIGHT, Face.TOP, Side.FAR, at("6in"), keep=at("1in"))
    by_hand = 6 * ((5.5 - 0.25) / 2 - 1) * 0.345
    assert lost(piece("W16X26", "5'-0", trims=(trim,))) == pytest.approx(by_hand, rel=1e-4)


@pytest.mark.parametrize("end", End)
@pytest.mark.parametrize("edge", [Face.TOP, Face.BOTTOM])
def test_a_clip(end: End, edge: Face) -> None:
    clip = Clip(end, edge, at("1in"), at("2in"))
    assert lost(piece("PL1/2X8", "1'-0", clips=(clip,))) == pytest.approx(0.5, rel=1e-4)


def test_openings() -> None:
    disc = Opening(Face.NEAR, at("30in"), at("8in"), at("6in"), at("6in"), at("3in"))
    assert lost(piece(openings=(disc,))) == pytest.approx(math.pi * 9 * 0.25, rel=1e-4)
    rounded = Opening(Face.NEAR, at("30in"), at("8in"), at("9in"), at("6in"), at("1in"))
    assert lost(piece(openings=(rounded,))) == pytest.approx((54 - 4 * SPANDREL) * 0.25, rel=1e-3)
    both = replace(disc, y=at("3in"), length=at("2in"), depth=at("2in"), radius=at("1in"), through=True)
    assert lost(piece("HSS6X6X3/8", openings=(both,))) == pytest.approx(2 * math.pi * 0.349, rel=1e-4)
    one = replace(both, through=False)
    assert lost(piece("HSS6X6X3/8", openings=(one,))) == pytest.approx(math.pi * 0.349, rel=1e-4)


def test_every_face_of_every_profile_can_be_drilled_and_stays_closed() -> None:
    for stock in ONE_OF_EACH:
        part = piece(stock, "5'-0")
        for face in faces_of(part.stock):
            y = (
                "1 1/4"
                if stock not in {"C8X11.5", "HSS6.000X0.375"} or face in {Face.NEAR, Face.FAR}
                else "-1"
            )
            drilled_part = replace(part, groups=(drilled(face, hole("2'-0", y, "9/16")),))
            assert lost(drilled_part) > 0.05, (stock, face)
            assert open_edges(body_of(drilled_part)) == 0, (stock, face)


def test_a_mesh_is_seen_from_outside() -> None:
    mesh = body_of(piece("PL1/2X8", "1'-0")).mesh()
    assert mesh.vertices.shape == (8, 3)
    assert mesh.triangles.shape == (12, 3)
    a, b, c = np.moveaxis(mesh.vertices[mesh.triangles], 1, 0)
    assert np.einsum("ij,ij->", a, np.cross(b, c)) / 6 == pytest.approx(48)


def test_no_steel_left() -> None:
    copes = tuple(Cope(End.LEFT, edge, at("6'-0"), at("8in"), ZERO) for edge in (Face.TOP, Face.BOTTOM))
    with pytest.raises(ValueProblem, match="part B1 has no steel left of its W16X26: make its cuts smaller"):
        body_of(piece("W16X26", "5'-0", copes=copes))


def test_a_body_is_placed_as_its_fitting_is() -> None:
    up = Placement((at("10in"), ZERO, at("2in")), (0, 1, 0), (-1, 0, 0))
    body = body_of(piece("PL1/2X8", "1'-0")).placed(up, "stiffener")
    assert body.name == "stiffener"
    assert body.box == ((at("2in"), at("10in")), (ZERO, at("12in")), (at("1 1/2"), at("2in")))
    assert body.solid.volume() == pytest.approx(48)


def test_the_bodies_of_a_piece() -> None:
    beam = piece("W16X26", "5'-0")
    angle = clip_angle(beam)
    main, fitted = bodies_of(Assembly(beam, 1, (angle,)))
    assert (main.name, fitted.name) == ("B1", "left near angle")
    (x, y, z) = fitted.box
    assert x == (-at("1/2"), at("3 1/2"))
    assert y == (at("3in"), at("12in"))
    assert z == (at("1/8"), at("1/8") + at("3 1/2"))


def test_equal_parts_are_cut_once() -> None:
    assert body_of(piece("PL1/2X8", "1'-1")) is body_of(piece("PL1/2X8", "1'-1"))
