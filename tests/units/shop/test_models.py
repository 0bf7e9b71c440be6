from __future__ import annotations

import pytest
from django.core.management import call_command
from django.db import IntegrityError, transaction
from django.utils import timezone

from gageline.errors import GagelineError
from gageline.shop.models import Copy, Job, LogEntry, Tick


def test_the_log_is_only_added_to(job: Job) -> None:
    entry = LogEntry.objects.filter(job=job).first()
    assert entry is not None
    entry.what = "something else"
    with pytest.raises(GagelineError, match="never changed: add another one"):
        entry.save()


@pytest.mark.usefixtures("job")
def test_a_task_cannot_stand_twice() -> None:
    copy = Copy.objects.first()
    assert copy is not None
    values = {"copy": copy, "card": "c", "task": "bench-1", "by": "x", "at": timezone.now()}
    Tick.objects.create(**values)
    with pytest.raises(IntegrityError), transaction.atomic():
        Tick.objects.create(**values)


@pytest.mark.usefixtures("db")
def test_the_tables_are_those_of_the_models() -> None:
    call_command("makemigrations", check=True, dry_run=True, verbosity=0)
