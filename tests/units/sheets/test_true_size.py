"""Drawing files one to one: read again, they measure what the steel does."""

from io import StringIO

import pytest
from ezdxf import bbox
from ezdxf.document import Drawing
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.filemanagement import read

from gageline.part import Face
from gageline.sheets import DxfUnit, dxf_unit, part_dxf, piece_dxf
from gageline.units import System
from jobs import job_of
from pieces import drilled, hole, piece

PLATE = piece(
    "PL3/8X4-1/2", "8 1/2", "p1", groups=(drilled(Face.FACE, hole("1 1/4", "1 1/2"), hole("7 1/4", "3")),)
)
BEAM = 'mark = "B1"\nstock = "W16x26"\nlength = "12\'-0"\n'
END_PLATE = '[[piece.end_plates]]\nend = "left"\nthickness = "1/2"\nwidth = "8"\nlength = "1\'-6"\n'


def opened(text: str) -> Drawing:
    document = read(StringIO(text))
    audit = document.audit()
    assert (audit.has_errors, audit.has_fixes) == (False, False)
    return document


def extents(document: Drawing, layer: str) -> list[float]:
    box = bbox.extents(document.modelspace().query(f'*[layer=="{layer}"]'), fast=True)
    return [box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y]


def polylines(document: Drawing, query: str) -> list[LWPolyline]:
    return [ring for ring in document.modelspace().query(query) if isinstance(ring, LWPolyline)]


@pytest.mark.parametrize(("system", "unit", "inch"), [(System.FT_IN, 1, 1.0), (System.MM, 4, 25.4)])
def test_a_plate_measures_its_true_size_in_the_units_of_the_job(
    system: System, unit: int, inch: float
) -> None:
    document = opened(part_dxf(PLATE, system))
    assert document.units == unit
    assert extents(document, "outline") == pytest.approx([0, 0, 8.5 * inch, 4.5 * inch])
    centres = sorted((c.dxf.center.x, c.dxf.center.y) for c in document.modelspace().query("CIRCLE"))
    assert centres == [pytest.approx((1.25 * inch, 1.5 * inch)), pytest.approx((7.25 * inch, 3 * inch))]
    radius = PLATE.groups[0].holes[0].width.inches / 2 * inch
    assert [c.dxf.radius for c in document.modelspace().query("CIRCLE")] == pytest.approx([radius] * 2)
    assert len(document.modelspace().query("TEXT")) == 0


def test_a_slot_is_a_closed_outline_as_long_as_it_is() -> None:
    slotted = piece("PL3/8X6", "8", "p1", groups=(drilled(Face.FACE, hole("4", "3", "13/16", "1 1/2")),))
    document = opened(part_dxf(slotted, System.FT_IN))
    rings = [ring for ring in polylines(document, "LWPOLYLINE") if len(ring) > 20]
    box = bbox.extents(rings)
    assert [box.size.x, box.size.y] == pytest.approx([1.5, 13 / 16])


def test_an_angle_is_opened_at_its_heel() -> None:
    angle = piece("L6X4X1/2", "1'-0", "a1", groups=(drilled(Face.LEG_B, hole("3", "2 1/2")),))
    document = opened(part_dxf(angle, System.FT_IN))
    assert extents(document, "outline") == pytest.approx([0, 0, 12, 10])
    (heel,) = document.modelspace().query('LINE[layer=="centre"]')
    (bored,) = document.modelspace().query("CIRCLE")
    assert abs(bored.dxf.center.y - heel.dxf.start.y) == pytest.approx(2.5)


def test_the_elevation_of_a_piece_stands_on_the_origin_and_is_as_long_as_the_steel() -> None:
    job = job_of(BEAM + END_PLATE)
    document = opened(piece_dxf(job, job.assemblies[0]))
    left, _, right, _ = extents(document, "outline")
    # half an inch of end plate stands out at the left
    assert [left, right] == pytest.approx([-0.5, 144.0])
    space = document.modelspace()
    points = [p for line in space.query('LINE[layer=="outline"]') for p in (line.dxf.start, line.dxf.end)]
    points += [
        p for ring in polylines(document, 'LWPOLYLINE[layer=="outline"]') for p in ring.vertices_in_wcs()
    ]
    on_floor = [p.x for p in points if abs(p.y) < 1e-6]
    assert [min(on_floor), max(on_floor)] == pytest.approx([0.0, 144.0], abs=1e-9)
    # AISC Manual Table 1-1: W16x26 is 15.7 in deep
    assert any(p.y == pytest.approx(15.7) for p in points)


def test_a_job_in_millimetres_has_files_in_millimetres() -> None:
    assert (dxf_unit(System.MM), dxf_unit(System.FT_IN)) == (DxfUnit.MM, DxfUnit.INCH)
    job = job_of('mark = "B1"\nstock = "IPE 300"\nlength = 6000\n', units="mm")
    document = opened(piece_dxf(job, job.assemblies[0]))
    assert document.units == 4
    assert extents(document, "outline")[2] == pytest.approx(6000)
