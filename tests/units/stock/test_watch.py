"""The clock of a long search, with time held still."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from gageline.stock import watch
from gageline.stock.watch import Progress, Watch, start_watch


@contextmanager
def clock(at: float) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(watch, "monotonic", lambda: at)
        yield


def test_seconds_run_from_the_start() -> None:
    with clock(100.0):
        started = start_watch(10.0)
        assert (started.seconds(), started.left()) == (0.0, 10.0)
    with clock(107.0):
        assert (started.seconds(), started.left(), started.left(most=2.0)) == (7.0, 3.0, 2.0)
        assert not started.over()


def test_at_the_limit_nothing_is_left_and_later_no_less() -> None:
    started = Watch(100.0, 10.0)
    with clock(110.0):
        assert started.over()
    with clock(500.0):
        assert started.left() == 0.0
        assert started.over()


def test_a_stop_ends_it_before_the_time() -> None:
    with clock(100.0):
        assert start_watch(10.0, stop=lambda: True).left() == 0.0
        assert start_watch(10.0, stop=lambda: True).over()


def test_a_shorter_watch_ends_first_and_a_longer_one_gains_nothing() -> None:
    started = Watch(100.0, 10.0)
    with clock(104.0):
        soon, late = started.within(2.0), started.within(50.0)
        assert (soon.left(), late.left()) == (2.0, 6.0)
    with clock(106.0):
        assert soon.over()
        assert not late.over()


def test_a_shorter_watch_keeps_the_stop_and_whom_to_tell() -> None:
    told: list[Progress] = []
    asked = False
    soon = start_watch(10.0, stop=lambda: asked, tell=told.append).within(5.0)
    assert not soon.over()
    asked = True
    assert soon.over()
    soon.tell(Progress("mix", None, 7, 0.5))
    assert told == [Progress("mix", None, 7, 0.5)]
