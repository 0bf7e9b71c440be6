from __future__ import annotations

import pytest
from django.db import DatabaseError, connection, transaction

from gageline.shop.logbook import note
from gageline.shop.models import Job, LogEntry, Revision
from gageline.shop.sealing import SEALED, seal, unseal


@pytest.mark.parametrize("statement", ["UPDATE shop_logentry SET by = 'x'", "DELETE FROM shop_logentry"])
def test_the_database_refuses_to_change_the_log(statement: str, job: Job) -> None:
    note("Ada Example", "looked", job=job)
    with (
        pytest.raises(DatabaseError, match="never changed or taken out"),
        transaction.atomic(),
        connection.cursor() as cursor,
    ):
        cursor.execute(statement)
    assert LogEntry.objects.filter(by="Ada Example", what="looked").exists()


def test_a_revision_stays_as_it_was_saved(job: Job) -> None:
    text = job.revisions.get(number=1).text
    with pytest.raises(DatabaseError, match="add to it"), transaction.atomic():
        Revision.objects.update(text="")
    with pytest.raises(DatabaseError, match="add to it"), transaction.atomic():
        Revision.objects.filter(number=1).delete()
    assert job.revisions.get(number=1).text == text


def test_the_seal_is_lifted_and_put_back(job: Job) -> None:
    note("Ada Example", "looked", job=job)
    unseal(connection)
    assert LogEntry.objects.update(by="Bo") > 0
    seal(connection)
    seal(connection)
    with pytest.raises(DatabaseError, match="add to it"), transaction.atomic():
        LogEntry.objects.update(by="Cy")


@pytest.mark.usefixtures("db")
def test_every_sealed_table_is_there() -> None:
    assert {f"shop_{name}" for name in SEALED} <= set(connection.introspection.table_names())
