"""The search for a cutting plan as a program of its own, so that the pages stay quick while it works."""

from __future__ import annotations

import os
import subprocess
import sys
import threading
from collections.abc import Callable
from dataclasses import dataclass, field

__all__ = ["Beat", "launch"]

_EVERY = 1.0  # seconds between two words of a search


def launch(pk: int) -> None:
    """Start the search of a plan beside the shop.

    Args:
        pk: of the plan.
    """
    command = [sys.executable, "-m", "django", "search_plan", str(pk), str(os.getpid())]
    quiet = subprocess.DEVNULL
    process = subprocess.Popen(  # noqa: S603 -- the program itself, with two numbers
        command, stdin=quiet, stdout=quiet, stderr=quiet, start_new_session=True
    )  # a session of its own: Ctrl+C ends the shop, and the search then ends with its best
    threading.Thread(target=process.wait, daemon=True).start()  # so that nothing of it is left behind


@dataclass(slots=True)
class Beat:
    """What a search says and hears once a second.

    Args:
        say: given the words, tells whether the search is to stop.
        alive: whether the shop is still there.
        words: the last thing the search said.
        stopped: set once it is to stop.
        ended: set once there is nothing more to say.
    """

    say: Callable[[str], bool]
    alive: Callable[[], bool]
    words: str = ""
    stopped: threading.Event = field(default_factory=threading.Event)
    ended: threading.Event = field(default_factory=threading.Event)

    def tell(self, words: str) -> None:
        """Take what the search says; it is passed on at the next beat."""
        self.words = words

    def run(self) -> None:
        """Beat until the search has ended."""
        while not self.ended.wait(_EVERY):
            if self.say(self.words) or not self.alive():
                self.stopped.set()
