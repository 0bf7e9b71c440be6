"""Volume, centre, inertia and tightness against trimesh, a general-purpose library for meshes."""

import numpy as np
import pytest
import trimesh

from gageline.part import Cope, End, EndCut, Face, Part, faces_of
from gageline.solid import body_of, mass_of
from gageline.steel import DENSITY
from gageline.units import parse_slope
from pieces import ONE_OF_EACH, at, drilled, hole, piece


def busy(stock: str) -> Part:
    """A part with a bevel, a mitre, a cope and holes on every face."""
    bare = piece(stock, "5'-0")
    y = "-1" if stock == "C8X11.5" else "1"
    groups = tuple(
        drilled(face, hole("2'-0", y if face in {Face.TOP, Face.BOTTOM} else "1 1/2"), name=face)
        for face in faces_of(bare.stock)
    )
    cope = Cope(End.RIGHT, Face.TOP, at("3in"), at("1 1/4"), at("1/2"))
    left = EndCut(bevel=parse_slope("3 in 12"), mitre=parse_slope("1 in 12"))
    return piece(stock, "5'-0", left=left, copes=(cope,), groups=groups)


@pytest.mark.parametrize("stock", ONE_OF_EACH)
def test_mass_properties(stock: str) -> None:
    part = busy(stock)
    mesh = body_of(part).mesh()
    other = trimesh.Trimesh(mesh.vertices, mesh.triangles, process=False)
    other.density = DENSITY
    mass = mass_of(body_of(part))
    assert other.is_watertight
    assert other.is_winding_consistent
    assert mass.volume == pytest.approx(other.volume, rel=1e-9)
    assert mass.surface == pytest.approx(other.area, rel=1e-9)
    assert [side.inches for side in mass.centre] == pytest.approx(list(other.center_mass), abs=1e-5)
    assert np.array(mass.inertia) == pytest.approx(other.moment_inertia, rel=1e-6, abs=1e-3)
