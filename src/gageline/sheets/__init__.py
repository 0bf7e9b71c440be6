"""Sheets: scenes drawn once in paper millimetres and written as SVG, PDF and DXF."""

from gageline.sheets.bench_card import bench_cards
from gageline.sheets.bolt_rows import FRAME_BOLTS, bolt_rows
from gageline.sheets.boxes import extent, line_height, text_box, text_start, texts
from gageline.sheets.breaks import BrokenScale, break_marks, broken_scale
from gageline.sheets.card_ends import findings_by_card, reasons_by_card
from gageline.sheets.check_sheet import check_sheet
from gageline.sheets.column_schedule import column_schedule
from gageline.sheets.cutting_sheet import cutting_sheet
from gageline.sheets.cutting_summary import drop_marks, money, proof
from gageline.sheets.dimensions import Dimensions, chain, linear, running
from gageline.sheets.dxf import DxfUnit, to_dxf
from gageline.sheets.field_bolts import field_bolt_list
from gageline.sheets.fonts import FAMILY, FONT_FILES, FONT_FOLDER, text_width
from gageline.sheets.framing_plan import framing_plans
from gageline.sheets.furniture import (
    CARE,
    Block,
    Draft,
    Heading,
    bind,
    fitted,
    paper_of,
    paragraph,
    practice_block,
    practice_rows,
    space,
    title_block,
)
from gageline.sheets.grid_elevation import grid_elevations
from gageline.sheets.inspection_sheet import inspection_sheets
from gageline.sheets.labels import Reading, Side, Writing
from gageline.sheets.notation import Scribe
from gageline.sheets.odds_table import odds_sheets
from gageline.sheets.packet import frame_packet, packet
from gageline.sheets.parts_list import parts_list
from gageline.sheets.pdf import literal, to_pdf, to_typst
from gageline.sheets.piece_drawing import piece_drawing, piece_drawings
from gageline.sheets.printable import check_texts
from gageline.sheets.reasons_table import reasons_table
from gageline.sheets.receiving_card import ReceivingCard, receiving_cards
from gageline.sheets.saw_card import SawCard, SawCut, saw_card
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
from gageline.sheets.sheet_picture import sheet_picture
from gageline.sheets.style import BODY, FINE, HEADING, TITLE, Hatch, Ink, Role, Weight
from gageline.sheets.svg import to_svg
from gageline.sheets.table import Column, Table, table_blocks
from gageline.sheets.template import fitting_templates
from gageline.sheets.true_size import dxf_unit, part_dxf, piece_dxf
from gageline.sheets.unfolded import face_name, unfolded_blocks, unfolded_stick
from gageline.sheets.wrap import wrap

__all__ = [
    "BODY",
    "CARE",
    "FAMILY",
    "FINE",
    "FONT_FILES",
    "FONT_FOLDER",
    "FRAME_BOLTS",
    "HEADING",
    "TITLE",
    "Anchor",
    "Arc",
    "Block",
    "Box",
    "BrokenScale",
    "Circle",
    "Column",
    "Dimensions",
    "Draft",
    "DxfUnit",
    "Group",
    "Hatch",
    "Heading",
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
    "ReceivingCard",
    "Role",
    "SawCard",
    "SawCut",
    "Scribe",
    "Sheet",
    "Side",
    "Table",
    "Text",
    "Typeset",
    "Weight",
    "Writing",
    "bench_cards",
    "bind",
    "bolt_rows",
    "break_marks",
    "broken_scale",
    "chain",
    "check_sheet",
    "check_texts",
    "column_schedule",
    "cutting_sheet",
    "drop_marks",
    "dxf_unit",
    "extent",
    "face_name",
    "field_bolt_list",
    "findings_by_card",
    "fitted",
    "fitting_templates",
    "frame_packet",
    "framing_plans",
    "grid_elevations",
    "inspection_sheets",
    "leaves",
    "line_height",
    "linear",
    "literal",
    "money",
    "odds_sheets",
    "packet",
    "paper_of",
    "paragraph",
    "part_dxf",
    "parts_list",
    "piece_drawing",
    "piece_drawings",
    "piece_dxf",
    "practice_block",
    "practice_rows",
    "proof",
    "reasons_by_card",
    "reasons_table",
    "receiving_cards",
    "running",
    "saw_card",
    "sheet_picture",
    "space",
    "table_blocks",
    "text_box",
    "text_start",
    "text_width",
    "texts",
    "title_block",
    "to_dxf",
    "to_pdf",
    "to_svg",
    "to_typst",
    "unfolded_blocks",
    "unfolded_stick",
    "wrap",
]
