"""The clock a long search looks at, and how it says how far it is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from time import monotonic


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a search is: best cost so far (None while there is no plan), proven bound, seconds gone."""

    stage: str
    best: int | None
    bound: int
    seconds: float


def _never() -> bool:
    return False


def _silent(progress: Progress) -> None:
    del progress


@dataclass(frozen=True, slots=True)
class Watch:
    """When to stop, and whom to tell.

    Args:
        start: reading of `time.monotonic` at the start.
        limit: seconds that may be used in all.
        stop: asked between steps; True ends the search with the best plan kept.
        tell: given each `Progress`.
    """

    start: float
    limit: float
    stop: Callable[[], bool] = _never
    tell: Callable[[Progress], None] = _silent

    def seconds(self) -> float:
        """Seconds gone since the start."""
        return monotonic() - self.start

    def left(self, most: float = float("inf")) -> float:
        """Seconds that may still be used, at most `most`, never below zero; zero once a stop is asked."""
        if self.stop():
            return 0.0
        return max(0.0, min(most, self.limit - self.seconds()))

    def over(self) -> bool:
        """Whether the search must end now."""
        return self.left() <= 0.0

    def within(self, seconds: float) -> Watch:
        """The same watch with at most so many more seconds."""
        return Watch(self.start, min(self.limit, self.seconds() + seconds), self.stop, self.tell)


def start_watch(
    limit: float,
    stop: Callable[[], bool] = _never,
    tell: Callable[[Progress], None] = _silent,
) -> Watch:
    """Start the clock now.

    Args:
        limit: seconds that may be used.
        stop: asked between steps; True ends the search.
        tell: given each `Progress`.

    Returns:
        The watch.
    """
    return Watch(monotonic(), limit, stop, tell)
