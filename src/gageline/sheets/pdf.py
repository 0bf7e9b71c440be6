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
from gageline.sheets.style import HEX, STROKES, Ink, Role, Stroke, Weight

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
    pens = "\n".join(f"#let p-{role} = {_pen(STROKES[role])}" for role in Role)
    inks = "\n".join(f"#let i-{ink} = rgb({literal(HEX[ink])})" for ink in Ink)
    return f"""#set document(title: {literal(sheet.title)}, date: none)
#set text(font: {literal(_FONT)}, stretch: 75%, fallback: false, size: 10pt)
{inks}
{pens}
#let m = curve.move
#let l = curve.line
#let c = curve.cubic
#let z = curve.close(mode: "straight")
#let d(stroke, fill, ..steps) = place(top + left,
  curve(stroke: stroke, fill: fill, fill-rule: "even-odd", ..steps))
#let s(size, weight, ink, body) = text(size: size, weight: weight, fill: ink,
  kerning: false, ligatures: false, top-edge: "baseline", bottom-edge: "baseline", body)
#let t(x, y, size, weight, ink, body) = place(top + left, dx: x, dy: y, s(size, weight, ink, body))
#let r(x, y, turn, size, weight, ink, body) = place(top + left, dx: x, dy: y,
  rotate(turn, origin: left + horizon, s(size, weight, ink, body)))"""


def _pen(stroke: Stroke) -> str:
    dashes = ", ".join(f"{number(d)}mm" for d in stroke.dash)
    # Round caps close the corners of lines that meet; on dashes they would eat the spaces.
    end = f'cap: "butt", dash: ({dashes})' if stroke.dash else 'cap: "round"'
    return f'(paint: i-{stroke.ink}, thickness: {number(stroke.width)}mm, join: "round", {end})'


def _page(page: Page | Typeset) -> str:
    width, height = page.paper.size(landscape=page.landscape)
    size = f"width: {number(width)}mm, height: {number(height)}mm"
    if isinstance(page, Typeset):
        margin = f"margin: {number(page.margin)}mm"
        return f"#page({size}, {margin}, footer: {_foot(page.foot)})[\n{page.source}\n]"
    body = "\n".join(_path(x) if isinstance(x, Path) else _text(*x) for x in drawn(page.items))
    return f"#page({size}, margin: 0mm, {{\n{body}\n}})"


def _foot(text: str) -> str:
    """The foot of a typeset page: what it belongs to, and its number of all pages of the file."""
    number_of_all = '"page " + counter(page).display() + " of " + str(counter(page).final().first())'
    return (
        f"context text(size: 8pt, grid(columns: (1fr, auto), column-gutter: 4mm, {literal(text)}, "
        f"{number_of_all}))"
    )


def _at(x: float, y: float) -> str:
    return f"({number(x)}mm,{number(y)}mm)"


def _path(path: Path) -> str:
    steps = []
    for code, v in path.steps:
        if code == "C":
            steps.append(f"c({_at(v[0], v[1])},{_at(v[2], v[3])},{_at(v[4], v[5])})")
        elif code == "Z":
            steps.append("z")
        else:
            steps.append(f"{code.lower()}({_at(v[0], v[1])})")
    pen = f"p-{path.role}" if path.role else "none"
    fill = f"i-{path.fill}" if path.fill else "none"
    return f"d({pen},{fill},{','.join(steps)})"


def _text(text: Text, dx: float, dy: float) -> str:
    x, y = text_start(text)
    weight = 700 if text.weight is Weight.BOLD else 400
    end = f"{number(text.size)}pt,{weight},i-{text.ink},{literal(text.text)})"
    at = f"{number(x + dx)}mm,{number(y + dy)}mm"
    if text.rotation:
        return f"r({at},{number(-text.rotation)}deg,{end}"
    return f"t({at},{end}"
