"""Sheets as PDF, set by typst with the one font family and nothing from the machine it runs on."""

from __future__ import annotations

from functools import cache
from typing import cast

import typst

from gageline.errors import GagelineError
from gageline.sheets.boxes import text_start
from gageline.sheets.fonts import FAMILY, FONT_FOLDER
from gageline.sheets.paths import Path, drawn, number
from gageline.sheets.scene import Page, Sheet, Text, Typeset
from gageline.sheets.style import HEX, Ink, Weight
from gageline.sheets.svg import to_svg

__all__ = ["literal", "to_pdf", "to_typst"]

# typst files a condensed family under its plain name and asks for the width apart.
_FONT = FAMILY.removesuffix(" Condensed")


def literal(text: str) -> str:
    """A text as a string of typst's own language, quotes included."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n")
    return f'"{escaped}"'


def to_pdf(sheet: Sheet) -> bytes:
    """All pages of a sheet as one PDF; the same sheet gives the same bytes.

    Args:
        sheet: the pages.

    Returns:
        The file.

    Raises:
        ValueProblem: a text with a character that the font lacks.
        GagelineError: typst refuses the source of a typeset page.
    """
    compiler = typst.Compiler(input=to_typst(sheet).encode(), font_paths=_fonts(), ignore_system_fonts=True)
    try:
        # One PDF comes as bytes; a list comes only for formats of one file a page.
        return cast("bytes", compiler.compile(format="pdf", pdf_tags=False, timestamp=0))
    except typst.TypstError as problem:
        raise GagelineError(f'sheet "{sheet.title}" cannot be set: {problem.message}') from problem


@cache
def _fonts() -> typst.Fonts:
    # The embedded fonts of typst are part of its wheel; formulas need their mathematical one.
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=True, font_paths=[str(FONT_FOLDER)])


def to_typst(sheet: Sheet) -> str:
    """The typst source of a sheet.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    return "\n".join([_preamble(sheet), *map(_page, sheet.pages)])


def _preamble(sheet: Sheet) -> str:
    inks = "\n".join(f"#let i-{ink} = rgb({literal(HEX[ink])})" for ink in Ink)
    return f"""#set document(title: {literal(sheet.title)}, date: none)
#set text(font: {literal(_FONT)}, stretch: 75%, fallback: false, size: 10pt)
{inks}
#let s(size, weight, ink, body) = text(size: size, weight: weight, fill: ink,
  kerning: false, ligatures: false, top-edge: "baseline", bottom-edge: "baseline", body)
#let t(x, y, size, weight, ink, body) = place(top + left, dx: x, dy: y, s(size, weight, ink, body))
#let r(x, y, turn, size, weight, ink, body) = place(top + left, dx: x, dy: y,
  rotate(turn, origin: left + horizon, s(size, weight, ink, body)))"""


def _page(page: Page | Typeset) -> str:
    width, height = page.paper.size(landscape=page.landscape)
    size = f"width: {number(width)}mm, height: {number(height)}mm"
    if isinstance(page, Typeset):
        margin = f"margin: {number(page.margin)}mm"
        return f"#page({size}, {margin}, footer: {_foot(page.foot)})[\n{page.source}\n]"
    # All lines of a page as one picture: as elements of typst they take twice its time and memory.
    picture = literal(to_svg(page, texts=False))
    lines = f'place(top + left, image(bytes({picture}), format: "svg", width: {number(width)}mm))'
    texts = (_text(*thing) for thing in drawn(page.items) if not isinstance(thing, Path))
    body = "\n".join([lines, *texts])
    return f"#page({size}, margin: 0mm, {{\n{body}\n}})"


def _foot(text: str) -> str:
    """The foot of a typeset page: what it belongs to, and its number of all pages of the file."""
    number_of_all = '"page " + counter(page).display() + " of " + str(counter(page).final().first())'
    return (
        f"context text(size: 8pt, grid(columns: (1fr, auto), column-gutter: 4mm, {literal(text)}, "
        f"{number_of_all}))"
    )


def _text(text: Text, dx: float, dy: float) -> str:
    x, y = text_start(text)
    weight = 700 if text.weight is Weight.BOLD else 400
    end = f"{number(text.size)}pt,{weight},i-{text.ink},{literal(text.text)})"
    at = f"{number(x + dx)}mm,{number(y + dy)}mm"
    if text.rotation:
        return f"r({at},{number(-text.rotation)}deg,{end}"
    return f"t({at},{end}"
