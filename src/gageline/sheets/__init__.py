"""Sheets: scenes drawn once in paper millimetres and written as SVG, PDF and DXF."""

from gageline.sheets.boxes import extent, line_height, text_box, text_start, texts
from gageline.sheets.breaks import BrokenScale, break_marks, broken_scale
from gageline.sheets.dimensions import Dimensions, callout, chain, linear, running
from gageline.sheets.dxf import DxfUnit, to_dxf
from gageline.sheets.fonts import FAMILY, FONT_FILES, FONT_FOLDER, text_width
from gageline.sheets.labels import Reading, Side, Writing
from gageline.sheets.pdf import literal, to_pdf, to_typst
from gageline.sheets.scene import (
    Anchor,
    Arc,
    Box,
    Circle,
    Group,
    Item,
    Leaf,
    Level,
    Line,
    Page,
    Paper,
    Point,
    Polygon,
    Polyline,
    Sheet,
    Text,
    Typeset,
    leaves,
)
from gageline.sheets.style import BODY, FINE, HEADING, TITLE, Hatch, Ink, Role, Weight
from gageline.sheets.svg import to_svg
from gageline.sheets.table import Column, Table, table_blocks
from gageline.sheets.wrap import wrap

__all__ = [
    "BODY",
    "FAMILY",
    "FINE",
    "FONT_FILES",
    "FONT_FOLDER",
    "HEADING",
    "TITLE",
    "Anchor",
    "Arc",
    "Box",
    "BrokenScale",
    "Circle",
    "Column",
    "Dimensions",
    "DxfUnit",
    "Group",
    "Hatch",
    "Ink",
    "Item",
    "Leaf",
    "Level",
    "Line",
    "Page",
    "Paper",
    "Point",
    "Polygon",
    "Polyline",
    "Reading",
    "Role",
    "Sheet",
    "Side",
    "Table",
    "Text",
    "Typeset",
    "Weight",
    "Writing",
    "break_marks",
    "broken_scale",
    "callout",
    "chain",
    "extent",
    "leaves",
    "line_height",
    "linear",
    "literal",
    "running",
    "table_blocks",
    "text_box",
    "text_start",
    "text_width",
    "texts",
    "to_dxf",
    "to_pdf",
    "to_svg",
    "to_typst",
    "wrap",
]
