"""What a body weighs and where it balances."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache

import numpy as np
from numpy.typing import NDArray

from gageline.part import Assembly, Part, Point
from gageline.solid.bodies import Body, bodies_of, body_of
from gageline.steel import DENSITY, Plate, Profile, Section, Stock
from gageline.units import Length

__all__ = ["Mass", "mass_of", "total", "weigh"]

_FOOT = Length.from_inches(12)
_HOLLOW = frozenset({Profile.BOX, Profile.TUBE})
Matrix = tuple[tuple[float, float, float], tuple[float, float, float], tuple[float, float, float]]


@dataclass(frozen=True, slots=True)
class Mass:
    """What steel weighs, by its volume at 490 lb/ft3, and where it balances.

    Args:
        volume: in3.
        weight: lb.
        surface: the whole surface with the walls of holes, in2.
        centre: centre of gravity in the space of the part or of the main part: x, y, z.
        inertia: about axes through the centre of gravity along x, y and z, lb in2.
    """

    volume: float
    weight: float
    surface: float
    centre: Point
    inertia: Matrix


def weigh(piece: Part | Assembly) -> Mass:
    """The weight of a part, or of a piece with its fittings, without welds and bolts.

    Hollow sections weigh what their tables say, by the nominal wall.

    Args:
        piece: a part or an assembly.

    Returns:
        Its mass in its own space, or in that of the main part.

    Raises:
        ValueProblem: when there is no body, see `body_of`.
    """
    if isinstance(piece, Part):
        return _as_listed(mass_of(body_of(piece)), piece.stock)
    parts = (piece.main, *(fitting.part for fitting in piece.fittings))
    bodies = bodies_of(piece)
    return total([_as_listed(mass_of(body), part.stock) for body, part in zip(bodies, parts, strict=True)])


@cache
def _listed_over_body(stock: Section) -> float:
    """The table's weight of a foot over that of its body."""
    return stock.weight / mass_of(body_of(Part("", stock, "", _FOOT))).weight


def _as_listed(mass: Mass, stock: Stock) -> Mass:
    """The mass with the weight that the tables give a hollow section.

    Its body has the design wall, which is thinner than the nominal wall that is bought and lifted.
    """
    if isinstance(stock, Plate) or stock.profile not in _HOLLOW:
        return mass
    more = _listed_over_body(stock)
    inertia = _matrix(np.array(mass.inertia) * more)
    return replace(mass, weight=mass.weight * more, inertia=inertia)


def mass_of(body: Body) -> Mass:
    """The mass of a body."""
    mesh = body.mesh()
    middle = (mesh.vertices.min(axis=0) + mesh.vertices.max(axis=0)) / 2  # near it little is lost to rounding
    a, b, c = np.moveaxis((mesh.vertices - middle)[mesh.triangles], 1, 0)
    # each triangle makes a tetrahedron with the middle; their signed sum is the body
    crossed = np.cross(b, c)
    six_volumes = np.einsum("ij,ij->i", a, crossed)
    volume = float(six_volumes.sum() / 6)
    sums = a + b + c
    centre = six_volumes @ sums / 24 / volume
    products = sum(np.einsum("i,ij,ik->jk", six_volumes, p, p) for p in (sums, a, b, c)) / 120
    about_centre = products - volume * np.outer(centre, centre)
    return Mass(
        volume=volume,
        weight=volume * DENSITY,
        surface=float(np.linalg.norm(np.cross(b - a, c - a), axis=1).sum() / 2),
        centre=_point(centre + middle),
        inertia=_matrix(DENSITY * _inertia(about_centre)),
    )


def total(masses: Sequence[Mass]) -> Mass:
    """Several masses in one space taken together; surfaces that touch are counted on both.

    Args:
        masses: at least one.
    """
    weight = sum(mass.weight for mass in masses)
    centres = [np.array([side.inches for side in mass.centre]) for mass in masses]
    middle = sum((mass.weight * at for mass, at in zip(masses, centres, strict=True)), np.zeros(3)) / weight
    inertia = np.zeros((3, 3))
    for mass, at in zip(masses, centres, strict=True):
        inertia += np.array(mass.inertia) + mass.weight * _inertia(np.outer(at - middle, at - middle))
    return Mass(
        volume=sum(mass.volume for mass in masses),
        weight=weight,
        surface=sum(mass.surface for mass in masses),
        centre=_point(middle),
        inertia=_matrix(inertia),
    )


def _inertia(products: NDArray[np.float64]) -> NDArray[np.float64]:
    """The inertia tensor from the sums of the products of coordinates."""
    tensor: NDArray[np.float64] = np.trace(products) * np.eye(3) - products
    return tensor


def _point(at: NDArray[np.float64]) -> Point:
    x, y, z = (Length.from_inches(float(value)) for value in at)
    return x, y, z


def _matrix(values: NDArray[np.float64]) -> Matrix:
    rows = values.tolist()
    return tuple(rows[0]), tuple(rows[1]), tuple(rows[2])
