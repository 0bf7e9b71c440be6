"""Backup and restore while the shop runs: one file, the same for both kinds of database."""

from __future__ import annotations

import json
import os
import zipfile
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

from django.apps import apps
from django.core import serializers
from django.core.management.color import no_style
from django.db import connection, models, transaction

from gageline.errors import GagelineError
from gageline.shop.sealing import seal, unseal
from gageline.shop.starting import start_up

__all__ = ["backup", "restore"]

_FORMAT = 1
_NAMES = (
    "person", "tablet", "job", "revision", "piece", "copy", "tick", "reading", "sent", "logentry", "stick",
    "stickrevision", "racktext", "plan", "cutting", "cut",
)  # fmt: skip
_LARGEST = 4_000_000_000  # bytes of one table, unpacked


def _models() -> Iterator[type[models.Model]]:
    return (apps.get_model("shop", name) for name in _NAMES)


def backup(file: Path) -> int:
    """Write everything the shop keeps into a file, as it stands at one moment, while the shop runs.

    Args:
        file: to write; one that is there is replaced only when the new one is whole.

    Returns:
        How many records are in it.

    Raises:
        GagelineError: when it cannot be written.
    """
    start_up()
    part = file.with_name(f"{file.name}.part")
    count = 0
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        descriptor = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
        with (
            os.fdopen(descriptor, "wb") as out,
            zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive,
            transaction.atomic(),
        ):
            if connection.vendor == "postgresql":
                with connection.cursor() as cursor:
                    cursor.execute("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ")
            archive.writestr("about.json", json.dumps({"gageline shop": _FORMAT}))
            for model in _models():
                with archive.open(f"{model._meta.model_name}.jsonl", "w", force_zip64=True) as table:  # noqa: SLF001 -- Django's own way to a model's name
                    for record in model._default_manager.order_by("pk").iterator(1000):  # noqa: SLF001 -- the same
                        line = json.dumps(serializers.serialize("python", [record])[0], default=_plain)
                        table.write(line.encode() + b"\n")
                        count += 1
        part.replace(file)
    except OSError as refused:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        reason = (refused.strerror or "it cannot be written").lower()
        raise GagelineError(f"{file} cannot be written ({reason}): choose another place") from refused
    return count


def _plain(value: Any) -> str:
    return str(value.isoformat())


def restore(file: Path) -> int:
    """Put everything back as it stands in a backup, all or nothing; all sessions end.

    Args:
        file: that `backup` wrote.

    Returns:
        How many records were put back.

    Raises:
        GagelineError: when it is no backup, or is damaged.
    """
    start_up()
    try:
        with zipfile.ZipFile(file) as archive, transaction.atomic():
            about = json.loads(archive.read("about.json"))
            if about != {"gageline shop": _FORMAT}:
                raise GagelineError(f"{file} was written by another version of the shop: use that version")
            return _put_back(archive)
    except FileNotFoundError as missing:
        raise GagelineError(f"there is no file {file}: check the name") from missing
    except (zipfile.BadZipFile, KeyError, ValueError, serializers.base.DeserializationError) as damaged:
        raise GagelineError(
            f"{file} is no backup of the shop, or is damaged: nothing was changed"
        ) from damaged


def _put_back(archive: zipfile.ZipFile) -> int:
    every = list(_models())
    if connection.vendor == "postgresql":
        names = ", ".join(connection.ops.quote_name(model._meta.db_table) for model in every)  # noqa: SLF001 -- the same
        with connection.cursor() as cursor:
            cursor.execute(f"LOCK TABLE {names} IN ACCESS EXCLUSIVE MODE")
    unseal(connection)  # for this transaction alone; other connections wait for its end
    apps.get_model("sessions", "session").objects.all().delete()
    for model in [apps.get_model("shop", "guess"), *reversed(every)]:
        model._default_manager.all().delete()  # noqa: SLF001 -- Django's own way to all records of a model
    count = 0
    for model in every:
        info = archive.getinfo(f"{model._meta.model_name}.jsonl")  # noqa: SLF001 -- the same
        if info.file_size > _LARGEST:
            raise GagelineError(
                f"{info.filename} in the backup is larger than {_LARGEST / 1e9:.0f} GB: not read"
            )
        with archive.open(info) as table:
            for line in table:
                for record in serializers.deserialize("python", [json.loads(line)]):
                    record.save(force_insert=True)
                    count += 1
    seal(connection)
    with connection.cursor() as cursor:
        for statement in connection.ops.sequence_reset_sql(no_style(), every):
            cursor.execute(statement)
    return count
