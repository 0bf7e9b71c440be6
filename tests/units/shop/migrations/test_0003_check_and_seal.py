from __future__ import annotations

import pytest
from django.db import DatabaseError, connection, transaction
from django.utils import timezone

from gageline.shop.models import Copy, Job, Reading, Stage


def test_it_makes_the_readings_and_seals_them(job: Job) -> None:
    copy = Copy.objects.filter(piece__job=job).first()
    assert copy is not None
    now = timezone.now()
    Reading.objects.create(copy=copy, place="check", card="x", name="overall", value="1'", by="A", at=now)
    with pytest.raises(DatabaseError, match="never changed"), transaction.atomic():
        Reading.objects.update(value="2'")
    assert Reading.objects.get().value == "1'"


@pytest.mark.usefixtures("db")
def test_it_adds_the_place() -> None:
    assert "shop_reading" in connection.introspection.table_names()
    assert Stage.CHECK.label == "Check"
