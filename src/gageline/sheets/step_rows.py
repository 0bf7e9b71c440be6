"""The numbered steps of a card: tick box, number, what to do with its readings, where, and the check."""

from __future__ import annotations

from itertools import groupby

from gageline.layout import Reading, Step
from gageline.sheets.boxes import line_height
from gageline.sheets.fonts import text_width
from gageline.sheets.furniture import Block
from gageline.sheets.scene import Anchor, Item, Level, Line, Polygon, Text
from gageline.sheets.style import BODY, Role, Weight
from gageline.sheets.unfolded import balloon, face_name
from gageline.sheets.wrap import wrap
from gageline.steel import Profile

__all__ = ["READING", "step_block", "steps_head"]

READING = 13.0
"""Points: a tape reading, to be read at arm's length."""
_TITLE = 11.0
_LEAD = 1.16
_ABOVE = 1.4
_BOX = 6.0
_NUMBER = 16.5
_DO = 24.0
_GAP = 4.0
_BETWEEN = 5.0
_SHARES = (0.47, 0.24, 0.29)


def _columns(width: float) -> tuple[tuple[float, float], ...]:
    """Left edge and width of the three columns of text, mm."""
    free = width - _DO - 2 * _GAP - 1.0
    columns, left = [], _DO
    for share in _SHARES:
        columns.append((left, share * free))
        left += share * free + _GAP
    return tuple(columns)


def steps_head(width: float) -> Block:
    """The heads of the columns."""
    heads = [(1.0, "Done"), (_NUMBER, "Step")]
    names = ("Do, and what the tape reads", "Where, with what", "Check")
    heads += [(left, name) for (left, _), name in zip(_columns(width), names, strict=True)]
    heads[1] = (_NUMBER - text_width("Step", BODY, Weight.BOLD) / 2, "Step")
    high = line_height(BODY) + 1.6
    items: list[Item] = [Text(x, 0.6, name, BODY, Weight.BOLD, level=Level.TOP) for x, name in heads]
    items.append(Line(0, high, width, high, Role.FRAME))
    return Block(tuple(items), high)


def step_block(step: Step, profile: Profile, width: float) -> Block:
    """One step, with a box to tick.

    Args:
        step: what to do.
        profile: of the part, for the name of the face.
        width: of the row, mm.
    """
    columns = _columns(width)
    items: list[Item] = []
    depth = 0.0
    for lines, (left, wide) in zip(_texts(step, profile), columns, strict=True):
        y = _ABOVE
        for text, size, weight in lines:
            for line in wrap(text, wide, size, weight):
                items.append(Text(left, y, line, size, weight, level=Level.TOP))
                y += line_height(size) * _LEAD
        if left == columns[0][0]:
            y, found = _readings(step.readings, left, wide, y)
            items += found
            for line in wrap(step.text, wide, BODY) if step.text else []:
                items.append(Text(left, y, line, BODY, level=Level.TOP))
                y += line_height(BODY) * _LEAD
        depth = max(depth, y)
    depth = max(depth + _ABOVE / 2, _BOX + 2 * _ABOVE)
    box = ((1.0, _ABOVE), (1.0 + _BOX, _ABOVE), (1.0 + _BOX, _ABOVE + _BOX), (1.0, _ABOVE + _BOX))
    items.append(Polygon(box, Role.FRAME))
    number = Text(
        _NUMBER, _ABOVE + _BOX / 2, f" {step.number} ", READING, Weight.BOLD, Anchor.CENTRE, Level.MIDDLE
    )
    items += balloon(number)
    items.append(Line(0, depth, width, depth, Role.RULE))
    return Block(tuple(items), depth)


Lines = list[tuple[str, float, Weight]]


def _texts(step: Step, profile: Profile) -> tuple[Lines, Lines, Lines]:
    """The texts of the three columns; the readings and the text of the step follow under the first."""
    face = face_name(profile, step.face) if step.face else ""
    where: Lines = [(face, BODY, Weight.BOLD)] if face else []
    if step.from_:
        where.append((f"from {step.from_}", BODY, Weight.REGULAR))
    where.append((step.tool, BODY, Weight.REGULAR))
    title = step.title[:1].upper() + step.title[1:]
    return [(title, _TITLE, Weight.BOLD)], where, [(step.check, BODY, Weight.REGULAR)]


def _readings(
    readings: tuple[Reading, ...], left: float, wide: float, top: float
) -> tuple[float, list[Item]]:
    """The readings in large figures, those from one datum behind its name; and how far down they reach."""
    items: list[Item] = []
    high = line_height(READING) * 1.15
    x, y = left, top + high / 2
    for datum, same in groupby(readings, key=lambda reading: reading.from_.split(",")[0]):
        texts = [reading.text for reading in same]
        widths = [text_width(text, READING, Weight.BOLD) for text in texts]
        name = text_width(datum, BODY) + 2.5
        if x > left and x + name + sum(widths) + _BETWEEN * len(widths) > left + wide:
            x, y = left, y + high
        items.append(Text(x, y, datum, BODY, level=Level.MIDDLE))
        start = x = x + name
        for text, need in zip(texts, widths, strict=True):
            if x + need > left + wide and x > start:
                x, y = start, y + high
            items.append(Text(x, y, text, READING, Weight.BOLD, level=Level.MIDDLE))
            x += need + _BETWEEN
    return (y + high / 2 if readings else top), items
