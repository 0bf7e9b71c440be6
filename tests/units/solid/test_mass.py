import math

import numpy as np
import pytest

from gageline.part import Assembly, Face, Fitting, FittingKind, Join, Placement
from gageline.solid import Mass, body_of, mass_of, total, weigh
from gageline.units import ZERO
from pieces import at, clip_angle, drilled, hole, piece

POUND = 490 / 1728  # lb in a cubic inch of steel, 490 lb/ft3


def centre(mass: Mass) -> tuple[float, ...]:
    return tuple(side.inches for side in mass.centre)


# A plate 1/2 x 8 x 12: everything by the formulas of a box.
def test_a_plate() -> None:
    mass = weigh(piece("PL1/2X8", "1'-0"))
    assert mass.volume == pytest.approx(48)
    assert mass.weight == pytest.approx(48 * POUND)
    assert mass.surface == pytest.approx(2 * (12 * 8 + 12 * 0.5 + 8 * 0.5))
    assert centre(mass) == pytest.approx((6, 4, -0.25), abs=1e-5)
    sides = np.array([12, 8, 0.5]) ** 2
    about = mass.weight / 12 * (sides.sum() - sides)
    assert np.array(mass.inertia) == pytest.approx(np.diag(about), abs=1e-6)


def test_the_surface_has_the_walls_of_holes() -> None:
    plain = weigh(piece("PL1/2X8", "1'-0"))
    holed = weigh(piece("PL1/2X8", "1'-0", groups=(drilled(Face.FACE, hole("3", "2")),)))
    wall, faces = math.pi * 13 / 16 * 0.5, 2 * math.pi / 4 * (13 / 16) ** 2
    # the chords of a hole have its area, so they are 1.4 % longer than the circle
    assert holed.surface - plain.surface == pytest.approx(wall - faces, abs=wall * 0.015)


def test_a_hole_moves_the_centre_away() -> None:
    mass = weigh(piece("PL1/2X8", "1'-0", groups=(drilled(Face.FACE, hole("3", "2")),)))
    bore = math.pi / 4 * (13 / 16) ** 2 * 0.5
    assert centre(mass)[0] == pytest.approx((48 * 6 - bore * 3) / (48 - bore), abs=1e-4)
    assert centre(mass)[1] == pytest.approx((48 * 4 - bore * 2) / (48 - bore), abs=1e-4)


def test_a_piece_is_the_sum_of_its_parts() -> None:
    beam = piece("W16X26", "10'-0")
    angle = clip_angle(beam)
    whole = weigh(Assembly(beam, 1, (angle,)))
    main, fitting = weigh(beam), weigh(angle.part)
    assert whole.weight == pytest.approx(main.weight + fitting.weight)
    assert whole.volume == pytest.approx(main.volume + fitting.volume)
    assert whole.surface == pytest.approx(main.surface + fitting.surface)
    assert whole.centre[0] < main.centre[0]
    assert whole.centre[2] > ZERO


def test_two_halves_weigh_as_the_whole() -> None:
    half = piece("PL1/2X8", "1'-0")
    beside = Fitting(
        "other half", FittingKind.PLATE, half, Placement((at("12in"), ZERO, ZERO)), None, None, Join.WELDED
    )
    two, one = weigh(Assembly(half, 1, (beside,))), weigh(piece("PL1/2X8", "2'-0"))
    assert two.weight == pytest.approx(one.weight)
    assert centre(two) == pytest.approx(centre(one), abs=1e-5)
    assert np.array(two.inertia) == pytest.approx(np.array(one.inertia), rel=1e-6, abs=1e-6)


def test_a_mass_alone_is_its_own_total() -> None:
    mass = mass_of(body_of(piece("L6X4X1/2", "1'-0")))
    alone = total([mass])
    assert alone.weight == mass.weight
    assert alone.centre == mass.centre
    assert np.array(alone.inertia) == pytest.approx(np.array(mass.inertia))
