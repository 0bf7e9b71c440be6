"""The server killed in the middle of writes, and a disk that runs full: what was acknowledged stays.

GAGELINE_KILLS sets how often the server is killed; 200 were run by hand.
"""

from __future__ import annotations

import http.client
import json
import logging
import os
import re
import shutil
import sqlite3
import subprocess
import threading
import time
import tomllib
import urllib.error
from contextlib import closing, suppress
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from gageline.units import Length, exact_text
from shop_hand import Hand
from shop_server import start_shop

_KILLS = int(os.environ.get("GAGELINE_KILLS", "3"))


@dataclass
class _Said:
    """What the server has acknowledged."""

    ticks: set[str] = field(default_factory=set)
    edits: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)


def _work(hand: Hand, stroke: dict[str, Any], piece: str, said: _Said) -> None:
    """Tick, take back and edit until the server is gone, and remember what it acknowledged."""
    while not said.wrong:
        number = len(said.ticks)
        sent = stroke | {"key": f"{stroke['key']}-{number}", "done": number % 2 == 0}
        try:
            body = json.dumps({"ticks": [sent]}).encode()
            answers = json.loads(hand.post("/ticks/", body, "application/json"))["answers"]
            said.ticks.add(sent["key"])
            said.wrong += [answer["text"] for answer in answers if answer["state"] != "done"]
            if number % 3 == 2:
                inches = 100 + len(said.edits) % 400 / 4
                sent = {"mark": "B4", "stock": "W12x26", "length": f"{inches}in"}
                hand.form(piece, **sent, **{"on-revision": "1", "over-theirs": "1"})
                said.edits.append(exact_text(Length.from_inches(Fraction(inches))))
        except urllib.error.HTTPError as refused:
            said.wrong.append(f"{refused.code} {refused.read()[:200]!r}")
        except (urllib.error.URLError, http.client.HTTPException, OSError):
            return


def _until(ticks: int, edits: int, said: _Said) -> None:
    """Wait until so much was acknowledged, however slow the machine is."""
    end = time.monotonic() + 120
    while len(said.ticks) < ticks or len(said.edits) < edits:
        if said.wrong or time.monotonic() > end:
            return
        time.sleep(0.01)


def _kept(home: Path) -> tuple[list[str], list[str], int, int]:
    """Keys of ticks, lengths of B4 in its revisions, ticks less those taken back by the log, ticks."""
    log = "SELECT what FROM shop_logentry WHERE what LIKE '% 5. %B1 (1 of 4)'"
    with closing(sqlite3.connect(home / "shop.sqlite3")) as database:
        keys = [key for (key,) in database.execute("SELECT key FROM shop_sent WHERE key LIKE 'run-%'")]
        texts = database.execute("SELECT text FROM shop_revision WHERE what = 'changed B4' ORDER BY number")
        pieces = [tomllib.loads(text)["piece"] for (text,) in texts]
        lengths = [piece["length"] for each in pieces for piece in each if piece["mark"] == "B4"]
        by_log = sum(1 if what.startswith("ticked") else -1 for (what,) in database.execute(log))
        ticks = "SELECT count(*) FROM shop_tick WHERE task = 'bench-5' AND copy_id = 1"
        return keys, lengths, by_log, int(database.execute(ticks).fetchone()[0])


def _in_order(some: list[str], every: list[str]) -> bool:
    """Whether all of a list are in another one in the same order."""
    rest = iter(every)
    return all(one in rest for one in some)


def test_every_acknowledged_tick_and_edit_outlives_the_power_cut(tmp_path: Path, seeded_home: Path) -> None:
    home = Path(shutil.copytree(seeded_home, tmp_path / "home"))
    shop = start_shop(home)
    hand, said = Hand(shop), _Said()
    card = re.search(r'data-card="(\w+)"', hand.get("/bench/1/"))
    form = re.search(r'href="(/office/1/piece/\d+/)">Change<span class="unseen"> B4<', hand.get("/office/1/"))
    assert card is not None
    assert form is not None
    stroke = {"who": 1, "copy": 1, "card": card[1], "task": "bench-5", "at": "2026-11-25T10:00:00+00:00"}
    for run in range(_KILLS):
        sent = stroke | {"key": f"run-{run:05}"}
        worker = threading.Thread(target=_work, args=(hand, sent, form[1], said))
        ticks, edits = len(said.ticks) + 1 + run % 3, len(said.edits) + run % 2
        worker.start()
        _until(ticks, edits, said)
        time.sleep(0.011 * (run % 23))  # so that the kill falls at another moment each time
        shop.kill()
        worker.join(60)
        assert not said.wrong
        keys, lengths, by_log, ticks = _kept(home)
        assert said.ticks <= set(keys), f"kill {run}: an acknowledged tick is lost"
        assert len(keys) == len(set(keys)) <= len(said.ticks) + run + 1, f"kill {run}: a tick is there twice"
        assert _in_order(said.edits, lengths), f"kill {run}: an acknowledged edit is lost"
        assert by_log == ticks, f"kill {run}: the log and the ticks do not agree"
        shop = start_shop(home, port=shop.port)
    shop.stop()
    assert len(said.ticks) > _KILLS
    assert len(said.edits) >= _KILLS // 2
    counts = _KILLS, len(said.ticks), len(said.edits)
    logging.getLogger(__name__).info("%d kills: %d ticks and %d edits acknowledged, all there", *counts)


def _many_jobs(hand: Hand) -> None:
    for number in range(300):
        hand.form("/office/new/", name=f"Job {number}", units="mm")


def test_a_full_disk_is_said_and_what_was_saved_stays(tmp_path: Path, seeded_home: Path) -> None:
    disk = tmp_path / "disk"
    disk.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=24m", "tmpfs", str(disk)]
    try:
        if subprocess.run(mount, check=False, capture_output=True).returncode:
            pytest.skip("no small disk can be mounted here: a full disk is not checked")
    except FileNotFoundError:
        pytest.skip("no small disk can be mounted here: a full disk is not checked")
    shop = start_shop(Path(shutil.copytree(seeded_home, disk / "home")))
    try:
        hand = Hand(shop)
        with (disk / "filler").open("wb", buffering=0) as out, suppress(OSError):
            while out.write(b"x" * 4096):
                pass
        with pytest.raises(urllib.error.HTTPError) as refused:
            _many_jobs(hand)
        assert refused.value.code == 507
        assert "disk of the shop's machine is full" in refused.value.read().decode()
        (disk / "filler").unlink()
        hand.form("/office/new/", name="After it", units="mm")
        page = hand.get("/office/")
        assert "After it" in page
        assert "Print shop mezzanine" in page
    finally:
        shop.stop()
        subprocess.run(["umount", "-l", str(disk)], check=True)  # noqa: S607 -- a program of the machine
