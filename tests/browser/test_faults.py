"""What a shop lives through: the power cut in mid-write, a full disk, torn and oversized uploads."""

from __future__ import annotations

import http.client
import http.cookiejar
import json
import os
import re
import shutil
import socket
import sqlite3
import subprocess
import threading
import time
import tomllib
import urllib.error
import urllib.parse
import urllib.request
from collections.abc import Iterator
from contextlib import closing, suppress
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from gageline.units import Length, exact_text
from shop_server import Shop, start_shop

_KILLS = int(os.environ.get("GAGELINE_KILLS", "12"))


class _Hand:
    """Somebody who is signed in, without a browser."""

    def __init__(self, shop: Shop) -> None:
        self.url = shop.url
        self.jar = http.cookiejar.CookieJar()
        self.opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(self.jar))
        page = self.get("/in/")
        sent = {"name": "Ada Example", "secret": "a long enough secret", "csrfmiddlewaretoken": _token(page)}
        self.post("/in/", urllib.parse.urlencode(sent).encode())

    def get(self, path: str) -> str:
        with self.opener.open(self.url + path, timeout=20) as answer:
            return str(answer.read().decode())

    def post(self, path: str, body: bytes, kind: str = "application/x-www-form-urlencoded") -> str:
        token = next((cookie.value for cookie in self.jar if cookie.name == "csrftoken"), "") or ""
        headers = {"Content-Type": kind, "X-CSRFToken": token, "Accept": "application/json"}
        request = urllib.request.Request(self.url + path, body, headers)  # noqa: S310 -- a server of our own
        with self.opener.open(request, timeout=20) as answer:
            return str(answer.read().decode())

    def save(self, piece: int, mark: str, length: str) -> None:
        sent = {"mark": mark, "stock": "W12x26", "length": length, "base": "1", "force": "1"}
        self.post(f"/office/1/piece/{piece}/", urllib.parse.urlencode(sent).encode())


def _token(page: str) -> str:
    found = re.search(r'name="csrfmiddlewaretoken" value="(\w+)"', page)
    assert found is not None
    return found[1]


@pytest.fixture
def seeded(tmp_path: Path) -> Iterator[Shop]:
    shop = start_shop(tmp_path / "home")
    shop.seed()
    yield shop
    shop.stop()


@dataclass
class _Said:
    """What the server has acknowledged."""

    ticks: set[str] = field(default_factory=set)
    edits: list[str] = field(default_factory=list)


def _work(hand: _Hand, stroke: dict[str, Any], piece: int, said: _Said) -> None:
    """Tick, take back and edit until the server is gone, and remember what it acknowledged."""
    while True:
        number = len(said.ticks)
        sent = stroke | {"key": f"{stroke['key']}-{number}", "done": number % 2 == 0}
        try:
            body = json.dumps({"ticks": [sent]}).encode()
            answers = json.loads(hand.post("/ticks/", body, "application/json"))["answers"]
            assert [answer["state"] for answer in answers] == ["done"]
            said.ticks.add(sent["key"])
            if number % 3 == 2:
                inches = 100 + len(said.edits) % 400 / 4
                hand.save(piece, "B4", f"{inches}in")
                said.edits.append(exact_text(Length.from_inches(Fraction(inches))))
        except (urllib.error.URLError, http.client.HTTPException, OSError):
            return


def _kept(home: Path) -> tuple[list[str], list[str], int, bool]:
    """What the database holds: keys of ticks, lengths of B4 in its revisions, ticks by the log, the tick."""
    with closing(sqlite3.connect(home / "shop.sqlite3")) as database:
        keys = [key for (key,) in database.execute("SELECT key FROM shop_sent WHERE key LIKE 'run-%'")]
        texts = database.execute("SELECT text FROM shop_revision WHERE what = 'changed B4' ORDER BY number")
        pieces = [tomllib.loads(text)["piece"] for (text,) in texts]
        lengths = [piece["length"] for each in pieces for piece in each if piece["mark"] == "B4"]
        log = [
            what
            for (what,) in database.execute("SELECT what FROM shop_logentry WHERE what LIKE '% 2. %B1 1/4'")
        ]
        ticked = database.execute(
            "SELECT count(*) FROM shop_tick WHERE task = 'bench-2' AND copy_id = 1"
        ).fetchone()[0]
    return keys, lengths, sum(1 if what.startswith("ticked") else -1 for what in log), bool(ticked)


def test_every_acknowledged_tick_and_edit_outlives_the_power_cut(seeded: Shop, tmp_path: Path) -> None:
    hand, shop, said = _Hand(seeded), seeded, _Said()
    page = hand.get("/bench/1/")
    card = re.search(r'data-card="(\w+)"', page)
    address = re.search(
        r'href="/office/1/piece/(\d+)/">Change<span class="unseen"> B4<', hand.get("/office/1/")
    )
    assert card is not None
    assert address is not None
    stroke = {"who": 1, "copy": 1, "card": card[1], "task": "bench-2", "at": "2026-11-25T10:00:00+00:00"}
    for run in range(_KILLS):
        worker = threading.Thread(
            target=_work, args=(hand, stroke | {"key": f"run-{run:05}"}, int(address[1]), said)
        )
        worker.start()
        time.sleep(0.2 + 0.037 * (run % 13))
        shop.kill()
        worker.join(30)
        keys, lengths, by_log, ticked = _kept(tmp_path / "home")
        assert said.ticks <= set(keys), run
        assert len(keys) == len(set(keys)) <= len(said.ticks) + run + 1
        assert _in_order(said.edits, lengths), run
        assert by_log == int(ticked), run
        shop = start_shop(tmp_path / "home", port=shop.port)
    shop.stop()
    assert len(said.ticks) > _KILLS
    assert said.edits


def _in_order(some: list[str], every: list[str]) -> bool:
    """Whether all of a list are in another one in the same order."""
    rest = iter(every)
    return all(one in rest for one in some)


def test_a_huge_and_a_torn_upload_do_no_harm(seeded: Shop) -> None:
    hand = _Hand(seeded)
    cookies = "; ".join(f"{cookie.name}={cookie.value}" for cookie in hand.jar)
    head = (
        f"POST /office/import/ HTTP/1.1\r\nHost: localhost\r\nCookie: {cookies}\r\n"
        "Content-Type: multipart/form-data; boundary=x\r\nContent-Length: {}\r\n\r\n"
    )
    with socket.create_connection(("127.0.0.1", seeded.port), timeout=20) as line:
        line.sendall(head.format(10**9).encode() + b"x" * 1000)
        assert b"413" in line.recv(4096).split(b"\r\n", maxsplit=1)[0]
    with socket.create_connection(("127.0.0.1", seeded.port), timeout=20) as line:
        line.sendall(head.format(5000).encode() + b'--x\r\nContent-Disposition: form-data; name="document"')
    assert "Print shop mezzanine" in hand.get("/office/")
    assert hand.get("/office/").count('<a href="/office/') >= 3


def test_backup_and_restore_while_the_shop_runs(seeded: Shop, tmp_path: Path) -> None:
    file = tmp_path / "kept"
    made = seeded.run("backup", str(file))
    assert made.returncode == 0, made.stderr
    hand = _Hand(seeded)
    hand.post("/office/new/", b"name=Made+after+the+backup&units=mm")
    assert "Made after the backup" in hand.get("/office/")
    back = seeded.run("restore", str(file))
    assert back.returncode == 0, back.stderr
    assert "Sign in" in hand.get("/office/")  # the session is over
    again = _Hand(seeded)
    assert "Print shop mezzanine" in again.get("/office/")
    assert "Made after the backup" not in again.get("/office/")


def test_a_full_disk_is_said_and_what_was_saved_stays(tmp_path: Path) -> None:
    if not hasattr(os, "geteuid") or os.geteuid() != 0 or not Path("/proc/mounts").exists():
        pytest.skip("only root can mount a small disk here: a full disk is not checked")
    disk = tmp_path / "disk"
    disk.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=3m", "tmpfs", str(disk)]
    if subprocess.run(mount, check=False, capture_output=True).returncode:
        pytest.skip("no small disk can be mounted here: a full disk is not checked")
    shop = start_shop(disk / "home")
    try:
        shop.seed()
        hand = _Hand(shop)
        filler = disk / "filler"
        with filler.open("wb") as out, suppress(OSError):
            while True:
                out.write(b"x" * 4096)
                out.flush()
        with pytest.raises(urllib.error.HTTPError) as refused:
            _fill(hand)
        assert refused.value.code == 507
        assert "disk of the shop's machine is full" in refused.value.read().decode()
        filler.unlink()
        hand.post("/office/new/", b"name=After+it&units=mm")
        assert "After it" in hand.get("/office/")
    finally:
        shop.stop()
        subprocess.run([shutil.which("umount") or "umount", str(disk)], check=True)


def _fill(hand: _Hand) -> None:
    """New jobs until one is refused."""
    for number in range(200):
        hand.post("/office/new/", f"name=Job+{number}&units=mm".encode())
