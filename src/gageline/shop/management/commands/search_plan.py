"""The search of one cutting plan, started beside the shop by `gageline.shop.planner`."""

from __future__ import annotations

import os
import threading
from argparse import ArgumentParser
from typing import Any

from django.core.management import BaseCommand
from django.db import connection
from django.utils import timezone

from gageline.shop.models import Plan
from gageline.shop.planner import Beat
from gageline.shop.plans import search

__all__ = ["Command"]


class Command(BaseCommand):
    """Searches a cutting plan until it is proven, its time is over, it is stopped, or the shop is gone."""

    help = "search one cutting plan of the shop; the shop starts this by itself"
    requires_system_checks: list[str] = []  # noqa: RUF012 -- Django's own way to say none

    def add_arguments(self, parser: ArgumentParser) -> None:
        """The plan's number, and the process that asked for it."""
        parser.add_argument("plan", type=int)
        parser.add_argument("parent", type=int)

    def handle(self, *_args: Any, plan: int, parent: int, **_options: Any) -> None:
        """Search, saying once a second how far it is."""

        def say(words: str) -> bool:
            Plan.objects.filter(pk=plan).update(said=words[:300], seen=timezone.now())
            return Plan.objects.filter(pk=plan, stop=True).exists()

        beat = Beat(say, lambda: os.getppid() == parent)
        thread = threading.Thread(target=_run, args=(beat,))
        thread.start()
        try:
            search(plan, beat.stopped.is_set, beat.tell)
        finally:
            beat.ended.set()
            thread.join()


def _run(beat: Beat) -> None:
    """Beat, and give back the connection that this thread has for itself."""
    try:
        beat.run()
    finally:
        connection.close()
