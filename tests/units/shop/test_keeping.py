from __future__ import annotations

import json
import zipfile
from pathlib import Path

import pytest
from django.contrib.sessions.models import Session
from django.test import Client

from gageline.errors import GagelineError
from gageline.shop import jobs
from gageline.shop.keeping import backup, restore
from gageline.shop.models import Copy, Guess, Job, LogEntry, Person
from gageline.shop.ticking import Stroke, strike


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "shop.backup"


def test_everything_comes_back_as_it_was(owner: Person, job: Job, file: Path) -> None:
    copy = Copy.objects.select_related("piece").first()
    assert copy is not None
    strike(owner, Stroke("kept-key-1", copy.pk, copy.piece.card, "bench-1"))
    text, log = jobs.current_text(job), list(LogEntry.objects.values_list("what", flat=True))
    count = backup(file)
    Client().force_login(owner)
    jobs.remove_piece(owner, job, "P1")
    jobs.import_job(owner, text.encode())
    assert restore(file) == count
    assert Job.objects.count() == 1
    assert jobs.current_text(Job.objects.get()) == text
    assert list(LogEntry.objects.values_list("what", flat=True)) == log
    assert (Session.objects.count(), Guess.objects.count()) == (0, 0)
    assert Person.objects.get().check_password("a long enough secret")
    jobs.import_job(owner, text.encode())  # numbers go on after those that came back


@pytest.mark.usefixtures("job")
def test_a_backup_is_nobody_elses_to_read(file: Path) -> None:
    backup(file)
    assert file.stat().st_mode & 0o077 == 0
    assert [one.name for one in file.parent.iterdir()] == [file.name]


@pytest.mark.usefixtures("job")
def test_what_is_no_backup_changes_nothing(file: Path) -> None:
    with pytest.raises(GagelineError, match="there is no file"):
        restore(file)
    file.write_bytes(b"nothing of the kind")
    with pytest.raises(GagelineError, match="no backup of the shop, or is damaged: nothing was changed"):
        restore(file)
    with zipfile.ZipFile(file, "w") as archive:
        archive.writestr("about.json", json.dumps({"gageline shop": 99}))
    with pytest.raises(GagelineError, match="another version"):
        restore(file)
    assert Job.objects.count() == 1


@pytest.mark.usefixtures("job")
def test_a_torn_backup_changes_nothing(file: Path) -> None:
    backup(file)
    whole = zipfile.ZipFile(file)
    torn = file.with_name("torn")
    with whole, zipfile.ZipFile(torn, "w") as out:
        for name in whole.namelist():
            content = whole.read(name)
            out.writestr(name, content[: len(content) // 2] if name == "revision.jsonl" else content)
    with pytest.raises(GagelineError, match="damaged"):
        restore(torn)
    assert Job.objects.count() == 1


@pytest.mark.usefixtures("job")
def test_a_place_that_cannot_be_written_is_said(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(GagelineError, match="cannot be written"):
        backup(tmp_path / "file" / "backup")
