"""What every page must keep to, for tests of sheets."""

from shapely import Polygon as Flat
from shapely import STRtree

from gageline.sheets import Page, Sheet, extent, text_box, texts

__all__ = ["all_texts", "crowded", "in_title_block", "outside", "page_texts"]

_SLACK = 0.02
_GROUPS = ("drawing", "title block")


def page_texts(sheet: Sheet) -> list[list[str]]:
    """The texts of each page."""
    return [[text.text for text in texts(page.items)] for page in sheet.pages if isinstance(page, Page)]


def all_texts(sheet: Sheet) -> list[str]:
    """The texts of all pages, one after the other."""
    return [text for page in page_texts(sheet) for text in page]


def crowded(page: Page) -> list[tuple[str, str]]:
    """Pairs of texts whose boxes run into each other by more than a hair."""
    written = list(texts(page.items))
    boxes = [Flat(text_box(text)).buffer(-_SLACK) for text in written]
    pairs = zip(*STRtree(boxes).query(boxes, predicate="intersects"), strict=True)
    return [(written[a].text, written[b].text) for a, b in pairs if a < b]


def outside(page: Page) -> list[str]:
    """Texts outside the frame, and a word where something else that is drawn is."""
    frame = page.frame
    found = []
    for text in texts(page.items):
        xs, ys = zip(*text_box(text), strict=True)
        beside = min(xs) < frame.left - _SLACK or max(xs) > frame.right + _SLACK
        if beside or min(ys) < frame.top - _SLACK or max(ys) > frame.bottom + _SLACK:
            found.append(text.text)
    box = extent(page.items)
    if box.left < frame.left - _SLACK or box.right > frame.right + _SLACK or box.top < frame.top - _SLACK:
        found.append("a drawn line")
    return found


def in_title_block(page: Page) -> bool:
    """Whether the drawing runs into the title block under it."""
    drawing, block = (next(i for i in page.items if getattr(i, "name", "") == name) for name in _GROUPS)
    return bool(extent((drawing,)).bottom > extent((block,)).top + _SLACK)
