"""The bar that shows whether a printer has kept the size: 6 inches on one side, 150 mm on the other."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.sheets.scene import Anchor, Item, Level, Line, Text
from gageline.sheets.style import BODY, Role

__all__ = ["BAR_HEIGHT", "BAR_LENGTH", "scale_bar"]

BAR_LENGTH = 152.4
"""mm: 6 inches exactly."""
BAR_HEIGHT = 11.0
"""mm from the top of the upper figures to the bottom of the lower ones."""
_LINE = 5.6
_LONG = 1.6
_SHORT = 1.0


def scale_bar() -> Iterator[Item]:
    """The bar with its zero at x 0: inches above its line, centimetre ticks to 150 mm below."""
    yield Line(0.0, _LINE, BAR_LENGTH, _LINE, Role.FRAME)
    for tick in range(7):
        x = tick * 25.4
        yield Line(x, _LINE - _LONG, x, _LINE, Role.FRAME)
    for tick in range(16):
        x = tick * 10.0
        yield Line(x, _LINE, x, _LINE + (_LONG if tick in {0, 15} else _SHORT), Role.FRAME)
    yield Text(2.0, _LINE - _LONG / 2 - 0.6, "0 to 6 inches exactly", BODY, level=Level.BOTTOM)
    yield Text(BAR_LENGTH, _LINE - _LONG - 0.2, '6"', BODY, anchor=Anchor.RIGHT, level=Level.BOTTOM)
    yield Text(2.0, _LINE + _LONG + 0.2, "0 to 150 mm exactly", BODY, level=Level.TOP)
    yield Text(150.0, _LINE + _LONG + 0.2, "150 mm", BODY, anchor=Anchor.RIGHT, level=Level.TOP)
