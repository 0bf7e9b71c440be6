from __future__ import annotations

import os
import threading
from collections.abc import Callable

import pytest
from django.core.management import call_command

from gageline.shop.management.commands import search_plan
from gageline.shop.models import Job, Person, Plan, Search
from gageline.shop.planner import Beat
from gageline.shop.plans import start_plan


def test_the_command_searches_and_says_how_far_it_is(
    owner: Person, job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[bool] = []
    monkeypatch.setattr(search_plan, "_run", lambda beat: seen.append(beat.say("best so far")))
    plan = start_plan(owner, (job,), 2)

    class Thread:  # the test's tables are in a transaction of this thread alone
        def __init__(self, target: Callable[[Beat], None], args: tuple[Beat]) -> None:
            self.work: Callable[[], None] = lambda: target(*args)

        def start(self) -> None:
            self.work()

        def join(self) -> None:
            seen.append(True)

    monkeypatch.setattr(threading, "Thread", Thread)
    call_command("search_plan", str(plan.pk), str(os.getppid()))
    assert seen == [False, True]
    plan.refresh_from_db()
    assert plan.state == Search.FAILED  # nothing can be bought yet
    assert plan.seen >= plan.at
    assert Plan.objects.count() == 1
