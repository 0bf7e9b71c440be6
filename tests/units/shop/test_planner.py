from __future__ import annotations

import os
import subprocess
import sys
from typing import Any

import pytest

from gageline.shop import planner
from gageline.shop.planner import Beat, launch


def test_the_search_is_a_program_of_its_own_that_knows_who_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    started: list[list[str]] = []

    class Process:
        def __init__(self, command: list[str], *, start_new_session: bool, **streams: Any) -> None:
            started.append(command)
            assert start_new_session
            assert set(streams.values()) == {subprocess.DEVNULL}

        def wait(self) -> int:
            return 0

    monkeypatch.setattr(subprocess, "Popen", Process)
    launch(7)
    assert started == [[sys.executable, "-m", "django", "search_plan", "7", str(os.getpid())]]


@pytest.mark.parametrize(("asked", "alive"), [(True, True), (False, False)])
def test_a_search_stops_when_asked_and_when_the_shop_is_gone(
    monkeypatch: pytest.MonkeyPatch, asked: bool, alive: bool
) -> None:
    monkeypatch.setattr(planner, "_EVERY", 0.001)
    heard: list[str] = []

    def say(words: str) -> bool:
        heard.append(words)
        if len(heard) == 3:
            beat.ended.set()
        return asked

    beat = Beat(say, lambda: alive)
    beat.tell("best 12, none below 11")
    beat.run()
    assert beat.stopped.is_set()
    assert heard == ["best 12, none below 11"] * 3


def test_a_search_that_nobody_stops_goes_on(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(planner, "_EVERY", 0.001)
    heard: list[str] = []

    def say(words: str) -> bool:
        heard.append(words)
        beat.ended.set()
        return False

    beat = Beat(say, lambda: True)
    beat.run()
    assert not beat.stopped.is_set()
    assert heard == [""]
