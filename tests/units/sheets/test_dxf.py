"""Pages as DXF, read back and audited with ezdxf."""

from __future__ import annotations

from io import StringIO

import pytest
from ezdxf.filemanagement import read

from gageline.sheets import (
    Arc,
    Circle,
    DxfUnit,
    Hatch,
    Ink,
    Line,
    Page,
    Polygon,
    Polyline,
    Role,
    Text,
    Weight,
    to_dxf,
)

SQUARE = ((10.0, 10.0), (20.0, 10.0), (20.0, 20.0))
PAGE = Page(
    (
        Line(25.4, 279.4, 50.8, 254, Role.HIDDEN),
        Polyline(SQUARE, Role.MARK),
        Polygon(SQUARE, fill=Ink.BLACK, hatch=Hatch(), openings=(((15, 12), (16, 12), (16, 13)),)),
        Circle(30, 30, 5, fill=Ink.ACCENT),
        Circle(30, 30, 5, None, Ink.PALE),
        Arc(30, 30, 5, 10, 80, Role.CENTRE),
        Text(25.4, 254, "18'-7 1/4\"", 72, Weight.BOLD, rotation=90),
    )
)


@pytest.mark.parametrize(("unit", "code", "size"), [(DxfUnit.MM, 4, 25.4), (DxfUnit.INCH, 1, 1.0)])
def test_the_file_opens_again_clean_and_to_scale(unit: DxfUnit, code: int, size: float) -> None:
    document = read(StringIO(to_dxf(PAGE, unit)))
    audit = document.audit()
    assert (audit.has_errors, audit.has_fixes) == (False, False)
    assert document.units == code
    space = document.modelspace()
    line = space.query('LINE[layer=="hidden"]').first
    assert tuple(line.dxf.start) == pytest.approx((size, 0, 0))
    assert tuple(line.dxf.end) == pytest.approx((2 * size, size, 0))
    text = space.query("TEXT").first
    assert text.dxf.text == "18'-7 1/4\""
    assert tuple(text.dxf.insert) == pytest.approx((size, size, 0))
    assert text.dxf.rotation == 90
    assert text.dxf.height == pytest.approx(0.698 * size)  # 72 pt, capitals 698/1000 high


def test_everything_lies_on_the_layer_of_its_role() -> None:
    space = read(StringIO(to_dxf(PAGE))).modelspace()
    kinds = {(entity.dxftype(), entity.dxf.layer) for entity in space}
    assert kinds == {
        ("LINE", "hidden"),
        ("LINE", "thin"),
        ("LWPOLYLINE", "mark"),
        ("LWPOLYLINE", "outline"),
        ("HATCH", "text black"),
        ("HATCH", "text accent"),
        ("CIRCLE", "outline"),
        ("ARC", "centre"),
        ("TEXT", "text black"),
    }


def test_each_role_has_its_layer_with_its_line_weight_and_dashes() -> None:
    document = read(StringIO(to_dxf(Page(()))))
    layers = {layer.dxf.name: layer for layer in document.layers}
    assert set(Role) <= set(layers)
    assert layers["mark"].dxf.lineweight == 70
    assert layers["hidden"].dxf.linetype == "hidden"
    assert layers["outline"].dxf.linetype == "Continuous"
