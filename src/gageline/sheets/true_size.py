"""Parts and pieces as DXF files one to one: one drawing unit is one inch or one millimetre of the steel."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.job import Job
from gageline.part import Assembly, Part
from gageline.sheets.dxf import DxfUnit, items_to_dxf
from gageline.sheets.lining import Lining, plain_scale
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Circle, Group, Item, Line, Polygon
from gageline.sheets.sight import ELEVATION
from gageline.sheets.spread import Drilled, spread_out
from gageline.sheets.stick_views import sightings
from gageline.sheets.style import Role
from gageline.units import System

__all__ = ["dxf_unit", "part_dxf", "piece_dxf"]

_MM = 25.4
_ARM = 3.0  # mm that the cross of a hole stands out past its rim
_BETWEEN = 150.0  # mm of steel between the views of a piece


def dxf_unit(system: System) -> DxfUnit:
    """The unit of drawing files in a job: inches where it writes feet and inches, else millimetres."""
    return DxfUnit.INCH if system is System.FT_IN else DxfUnit.MM


def part_dxf(part: Part, system: System) -> str:
    """A part folded open flat: outlines, holes with their crosses, the heel of an angle; no words.

    Args:
        part: the part.
        system: the units of the job.

    Returns:
        The text of the file; the lower left corner of the flat part is the origin, x runs along the part.
    """
    spread = spread_out(part)
    items: list[Item] = [Polygon(ring[:-1], Role.OUTLINE) for ring in spread.outlines]
    items += [Line(*start, *end, Role.CENTRE) for start, end in spread.folds]
    for drilled in spread.holes:
        items += _hole(drilled)
    return items_to_dxf(items, spread.size[1], dxf_unit(system))


def _hole(drilled: Drilled) -> Iterator[Item]:
    x, y = drilled.at
    if drilled.hole.is_slot:
        yield Polygon(tuple(drilled.rim()[:-1]), Role.OUTLINE)
    else:
        yield Circle(x, y, drilled.hole.width.mm / 2, Role.OUTLINE)
    arm = drilled.reach + _ARM
    yield Line(x - arm, y, x + arm, y, Role.MARK)
    yield Line(x, y - arm, x, y + arm, Role.MARK)


def piece_dxf(job: Job, assembly: Assembly) -> str:
    """The views of a piece as its drawing has them, unbroken and without words.

    Args:
        job: that the piece belongs to.
        assembly: the piece.

    Returns:
        The text of the file; the origin is where the left end of the steel meets the lower edge of the
        elevation.
    """
    items: list[Item] = []
    top = floor = 0.0
    for one in sightings(assembly, Scribe.of(job, assembly.main)):
        left, _, right, _ = one.picture.bounds
        lining = Lining(one.picture, plain_scale(left, right, left * _MM, _MM))
        items.append(Group(tuple(lining.items()), 0.0, top, one.name))
        if one.view is ELEVATION:
            floor = top + lining.y(0.0)
        top += lining.height + _BETWEEN
    return items_to_dxf(items, floor, dxf_unit(job.system))
