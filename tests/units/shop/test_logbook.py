from __future__ import annotations

import pytest

from gageline.shop.logbook import note
from gageline.shop.models import LogEntry


@pytest.mark.usefixtures("db")
def test_a_long_entry_is_cut_and_kept() -> None:
    note("x" * 200, "y" * 1000)
    entry = LogEntry.objects.get()
    assert (len(entry.by), len(entry.what)) == (80, 300)
