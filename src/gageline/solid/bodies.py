"""Bodies of parts and of assemblies: the steel itself, as closed solids."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from manifold3d import Error, Manifold, OpType
from numpy.typing import NDArray

from gageline.errors import ValueProblem
from gageline.part import Assembly, Part, Placement
from gageline.solid.cutters import cutters
from gageline.solid.stick import stick
from gageline.units import Length

__all__ = ["Body", "Box", "Mesh", "bodies_of", "body_of"]

Box = tuple[tuple[Length, Length], tuple[Length, Length], tuple[Length, Length]]
"""Limits in x, y and z."""


@dataclass(frozen=True, slots=True, eq=False)
class Mesh:
    """The surface of a body as triangles, seen from outside counter-clockwise.

    Args:
        vertices: points, shape (n, 3), inches.
        triangles: three numbers of vertices each, shape (m, 3).
    """

    vertices: NDArray[np.float64]
    triangles: NDArray[np.int64]


@dataclass(frozen=True, slots=True, eq=False)
class Body:
    """A closed piece of steel in space.

    Args:
        name: the piece mark of a part, the name of a fitting.
        solid: the body itself, in inches.
    """

    name: str
    solid: Manifold

    @property
    def box(self) -> Box:
        """The smallest box around it: limits in x, y and z."""
        low_x, low_y, low_z, high_x, high_y, high_z = map(Length.from_inches, self.solid.bounding_box())
        return (low_x, high_x), (low_y, high_y), (low_z, high_z)

    def mesh(self) -> Mesh:
        """Its surface as triangles, for weighing, views and files."""
        mesh = self.solid.to_mesh64()
        return Mesh(mesh.vert_properties[:, :3], mesh.tri_verts.astype(np.int64))

    def placed(self, placement: Placement, name: str) -> Body:
        """The same body, turned and moved into the space of another part."""
        columns = (placement.ex, placement.ey, placement.ez, [side.inches for side in placement.origin])
        return Body(name, self.solid.transform(np.column_stack(columns)))


@lru_cache(maxsize=1024)
def body_of(part: Part) -> Body:
    """The body of one part with its fillets, end cuts, copes, trims, clips, holes and openings.

    It is in inches in the part's own space. Arcs are chords: round holes and tubes of exactly the
    true area, fillets and corners within 0.3 % of the sliver between arc and corner. A hole goes
    through its own wall only, and through both of a hollow section where its group says so.

    Args:
        part: the part.

    Returns:
        A closed body that is not empty.

    Raises:
        ValueProblem: when the end cuts cross, a face does not exist, or nothing is left.
    """
    cuts = cutters(part)
    blank = stick(part)
    solid = Manifold.batch_boolean([blank, *cuts], OpType.Subtract) if cuts else blank
    if solid.status() is not Error.NoError or solid.is_empty():
        raise ValueProblem(
            f"part {part.mark} has no steel left of its {part.stock.designation}: make its cuts smaller"
        )
    return Body(part.mark, solid)


def bodies_of(assembly: Assembly) -> tuple[Body, ...]:
    """The bodies of a piece: its main part, then its fittings where they stand.

    Args:
        assembly: the piece; welds and bolts have no body.

    Returns:
        Bodies in the main part's space, fittings under their own names.

    Raises:
        ValueProblem: as `body_of`.
    """
    fittings = (body_of(fit.part).placed(fit.placement, fit.name) for fit in assembly.fittings)
    return body_of(assembly.main), *fittings
