"""How long a plan may take, and who is told how far it is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from gageline.stock.records import Steel
from gageline.stock.watch import Progress


@dataclass(frozen=True, slots=True)
class Effort:
    """How long to search, and whom to tell.

    Args:
        seconds: the most a steel may take.
        stop: asked between steps; True ends the search with the best plan kept.
        tell: given the steel and each `Progress` in its planning.
    """

    seconds: float = 60.0
    stop: Callable[[], bool] = lambda: False
    tell: Callable[[Steel, Progress], None] = lambda _steel, _progress: None
