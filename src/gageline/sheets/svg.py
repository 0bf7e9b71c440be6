"""Pages as SVG, in millimetres, with text as text.

Source: W3C, Scalable Vector Graphics (SVG) 1.1, second edition.
"""

from __future__ import annotations

from html import escape

from gageline.sheets.boxes import text_start
from gageline.sheets.fonts import FAMILY, text_width
from gageline.sheets.paths import Path, drawn, number
from gageline.sheets.scene import Page, Text
from gageline.sheets.style import HEX, MM_PER_PT, STROKES, Ink, Weight

__all__ = ["to_svg"]

_FAMILIES = f"'{FAMILY}', sans-serif"
_ROUND = ' stroke-linecap="round"'
_PLAIN = "font-kerning:none;font-variant-ligatures:none"


def to_svg(page: Page, *, texts: bool = True) -> str:
    """A page as one SVG file, its size in mm and its user unit 1 mm.

    Every text carries its length, so that a machine without the font squeezes another one into the same
    place instead of letting readings run into each other.

    Args:
        page: what is drawn.
        texts: with its texts, or only its lines and fills.

    Returns:
        The text of the file.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    w, h = number(page.width), number(page.height)
    out = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm" viewBox="0 0 {w} {h}">',
        f"<title>{escape(page.title)}</title>",
        f'<rect width="{w}" height="{h}" fill="{HEX[Ink.WHITE]}"/>',
        f'<g font-family="{escape(_FAMILIES)}" style="{_PLAIN}" xml:space="preserve">',
    ]
    for thing in drawn(page.items):
        if isinstance(thing, Path):
            out.append(_path(thing))
        elif texts:
            out.append(_text(*thing))
    out.append("</g>\n</svg>\n")
    return "\n".join(out)


def _path(path: Path) -> str:
    d = "".join(code + " ".join(map(number, values)) for code, values in path.steps)
    fill = f'fill="{HEX[path.fill]}" fill-rule="evenodd"' if path.fill else 'fill="none"'
    if path.role is None:
        return f'<path d="{d}" {fill}/>'
    stroke = STROKES[path.role]
    # Round caps close the corners of lines that meet; on dashes they would eat the spaces.
    dash = f' stroke-dasharray="{" ".join(map(number, stroke.dash))}"' if stroke.dash else _ROUND
    pen = f'stroke="{HEX[stroke.ink]}" stroke-width="{number(stroke.width)}" stroke-linejoin="round"'
    return f'<path d="{d}" {fill} {pen}{dash}/>'


def _text(text: Text, dx: float, dy: float) -> str:
    x, y = text_start(text)
    at = f"{number(x + dx)} {number(y + dy)}"
    place = 'x="{}" y="{}"'.format(*at.split())
    bold = ' font-weight="700"' if text.weight is Weight.BOLD else ""
    ink = f' fill="{HEX[text.ink]}"' if text.ink is not Ink.BLACK else ""
    turn = f' transform="rotate({number(-text.rotation)} {at})"' if text.rotation else ""
    length = number(text_width(text.text, text.size, text.weight))
    return (
        f'<text {place} font-size="{number(text.size * MM_PER_PT)}"{bold}{ink}{turn} textLength="{length}" '
        f'lengthAdjust="spacingAndGlyphs">{escape(text.text, quote=False)}</text>'
    )
