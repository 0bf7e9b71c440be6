"""Pages as DXF: real lines, arcs and texts, on one layer for each role.

Source: the published DXF reference, release R2010 (AC1024), through the library ezdxf.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from io import StringIO

from ezdxf import colors
from ezdxf.document import Drawing
from ezdxf.filemanagement import new
from ezdxf.layouts.layout import Modelspace
from ezdxf.lldxf.const import VALID_DXF_LINEWEIGHTS
from ezdxf.units import IN, MM

from gageline.sheets.boxes import text_start
from gageline.sheets.fonts import FONT_FILES, font_metrics
from gageline.sheets.hatching import hatch_lines
from gageline.sheets.scene import Arc, Circle, Item, Leaf, Line, Page, Point, Polygon, Polyline, Text, leaves
from gageline.sheets.style import HEX, MM_PER_PT, STROKES, Ink, Role, Weight

__all__ = ["DxfUnit", "items_to_dxf", "to_dxf"]

_PAPER = {Ink.WHITE, Ink.PALE}
"""Fills that only cover or shade paper; a drawing file does without them."""


class DxfUnit(StrEnum):
    """The unit of a DXF file."""

    MM = "mm"
    INCH = "inch"


class _Pen:
    """Turns paper mm, y down, into the file's unit, y up, and adds what is drawn to a model space."""

    def __init__(self, space: Modelspace, height: float, unit: DxfUnit) -> None:
        self.space = space
        self.height = height
        self.factor = 1.0 if unit is DxfUnit.MM else 1 / 25.4

    def point(self, x: float, y: float) -> Point:
        return x * self.factor, (self.height - y) * self.factor

    def add(self, item: Leaf, dx: float, dy: float) -> None:
        if isinstance(item, Text):
            self.text(item, dx, dy)
        elif isinstance(item, Line):
            self.line((item.x1 + dx, item.y1 + dy), (item.x2 + dx, item.y2 + dy), item.role)
        elif isinstance(item, Polyline):
            self.ring(item.points, dx, dy, item.role, close=False)
        elif isinstance(item, Polygon):
            self.polygon(item, dx, dy)
        elif isinstance(item, Circle):
            self.circle(item, dx, dy)
        else:
            self.arc(item, dx, dy)

    def line(self, start: Point, end: Point, role: Role) -> None:
        self.space.add_line(self.point(*start), self.point(*end), {"layer": role.value})

    def ring(self, points: tuple[Point, ...], dx: float, dy: float, role: Role, *, close: bool) -> None:
        where = [self.point(x + dx, y + dy) for x, y in points]
        self.space.add_lwpolyline(where, close=close, dxfattribs={"layer": role.value})

    def polygon(self, item: Polygon, dx: float, dy: float) -> None:
        rings = (item.points, *item.openings)
        if item.fill and item.fill not in _PAPER:
            hatch = self.space.add_hatch(dxfattribs={"layer": _text_layer(item.fill)})
            for ring in rings:
                hatch.paths.add_polyline_path([self.point(x + dx, y + dy) for x, y in ring])
        if item.hatch:
            for (x1, y1), (x2, y2) in hatch_lines(item, item.hatch):
                self.line((x1 + dx, y1 + dy), (x2 + dx, y2 + dy), item.hatch.role)
        if item.role:
            for ring in rings:
                self.ring(ring, dx, dy, item.role, close=True)

    def circle(self, item: Circle, dx: float, dy: float) -> None:
        centre, radius = self.point(item.x + dx, item.y + dy), item.radius * self.factor
        if item.fill and item.fill not in _PAPER:
            hatch = self.space.add_hatch(dxfattribs={"layer": _text_layer(item.fill)})
            hatch.paths.add_edge_path().add_arc(centre, radius, 0, 360)
        if item.role:
            self.space.add_circle(centre, radius, {"layer": item.role.value})

    def arc(self, item: Arc, dx: float, dy: float) -> None:
        centre = self.point(item.x + dx, item.y + dy)
        attributes = {"layer": item.role.value}
        self.space.add_arc(centre, item.radius * self.factor, item.start, item.end, dxfattribs=attributes)

    def text(self, item: Text, dx: float, dy: float) -> None:
        x, y = text_start(item)
        attributes = {
            "layer": _text_layer(item.ink),
            "style": _text_style(item.weight),
            "height": item.size * MM_PER_PT * font_metrics(item.weight).cap_height * self.factor,
            "rotation": item.rotation,
            "insert": self.point(x + dx, y + dy),
        }
        self.space.add_text(item.text, dxfattribs=attributes)


def to_dxf(page: Page, unit: DxfUnit = DxfUnit.MM) -> str:
    """A page as a DXF file, the lower left corner of the paper at the origin.

    Args:
        page: what is drawn.
        unit: mm or inch; lengths are those of the paper.

    Returns:
        The text of the file.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    return items_to_dxf(page.items, page.height, unit)


def items_to_dxf(items: Sequence[Item], height: float, unit: DxfUnit) -> str:
    """What is drawn as a DXF file.

    Args:
        items: mm, y down.
        height: the y that becomes the file's zero, mm; what lies above it has y above zero.
        unit: mm or inch.

    Returns:
        The text of the file.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    document = new("R2010", units=MM if unit is DxfUnit.MM else IN)
    document.header["$MEASUREMENT"] = 1 if unit is DxfUnit.MM else 0
    pen = _Pen(document.modelspace(), height, unit)
    _add_layers(document, pen.factor)
    for item, dx, dy in leaves(tuple(items)):
        pen.add(item, dx, dy)
    out = StringIO()
    document.write(out)
    return out.getvalue()


def _add_layers(document: Drawing, factor: float) -> None:
    for role, stroke in STROKES.items():
        linetype = "Continuous"
        if stroke.dash:
            linetype = role.value
            dashes = [d * factor * (-1 if i % 2 else 1) for i, d in enumerate(stroke.dash)]
            document.linetypes.add(linetype, [sum(map(abs, dashes)), *dashes], description=linetype)
        layer = document.layers.add(role.value, linetype=linetype, lineweight=_lineweight(stroke.width))
        if stroke.ink is not Ink.BLACK:
            layer.rgb = colors.RGB.from_hex(HEX[stroke.ink])
    for ink in Ink:
        layer = document.layers.add(_text_layer(ink))
        if ink is not Ink.BLACK:
            layer.rgb = colors.RGB.from_hex(HEX[ink])
    for weight in Weight:
        document.styles.add(_text_style(weight), font=FONT_FILES[weight])


def _lineweight(width: float) -> int:
    """The nearest line weight that the format knows, hundredths of a mm."""
    return min(VALID_DXF_LINEWEIGHTS, key=lambda known: abs(known - width * 100))


def _text_layer(ink: Ink) -> str:
    return f"text {ink}"


def _text_style(weight: Weight) -> str:
    return f"sheet {weight}"
