"""What a shop lives through: the power cut in the middle of writes, a full disk, torn and oversized uploads."""

from __future__ import annotations

import http.client
import http.cookiejar
import json
import os
import re
import socket
import threading
import time
import urllib.error
import urllib.parse
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
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


def _card(hand: _Hand, copy: int) -> tuple[str, list[str]]:
    page = hand.get(f"/bench/{copy}/")
    card = re.search(r'data-card="(\w+)"', page)
    assert card is not None
    return card[1], re.findall(r'data-task="([\w-]+)"', page)


def _strokes(who: int, copy: int, card: str, tasks: list[str], run: int) -> list[dict[str, Any]]:
    at = "2026-11-25T10:00:00+00:00"
    return [
        {"key": f"run-{run}-{number}-{task}", "who": who, "copy": copy, "card": card, "task": task,
         "done": (run + number) % 2 == 0, "at": at}
        for number, task in enumerate(tasks)
    ]  # fmt: skip


def _work(hand: _Hand, strokes: list[dict[str, Any]], said: dict[str, bool], run: int, edits: list[str]) -> None:
    """Tick and edit until the server is gone, and remember what it acknowledged."""
    for number, stroke in enumerate(strokes * 50):
        sent = {**stroke, "key": f"{stroke['key']}-{number}", "done": number % 2 == 0}
        try:
            answer = json.loads(hand.post("/ticks/", json.dumps({"ticks": [sent]}).encode(), "application/json"))
            assert answer["answers"][0]["state"] == "done", answer
            said[sent["task"]] = bool(sent["done"])
            if number % 4 == 3:
                length = f"{9 + run % 5}'-{number % 12}"
                hand.save(5, "B4", length)
                edits.append(length)
        except (urllib.error.URLError, http.client.HTTPException, OSError):
            return


def test_every_acknowledged_tick_and_edit_outlives_the_power_cut(seeded: Shop, tmp_path: Path) -> None:
    hand = _Hand(seeded)
    copy = 6
    card, tasks = _card(hand, copy)
    shop = seeded
    said: dict[str, bool] = {}
    edits: list[str] = []
    for run in range(_KILLS):
        strokes = _strokes(1, copy, card, tasks[:3], run)
        worker = threading.Thread(target=_work, args=(hand, strokes, said, run, edits))
        worker.start()
        time.sleep(0.15 + 0.037 * (run % 11))
        shop.kill()
        worker.join(30)
        shop = start_shop(tmp_path / "home", port=shop.port)
        page = hand.get(f"/bench/{copy}/")
        for task, done in said.items():
            # the one that was on its way when the power went may be there or not; it is sent again
            stands = f'class="step sheet-box done" id="{task}"' in page
            if stands is not done:
                assert task == _last(said, tasks), f"{task} was acknowledged and is not there"
        log = hand.get("/office/1/log/")
        assert log.count("changed B4") >= len(set(edits)) - 1
    shop.stop()
    assert len(said) == 3
    assert edits


def _last(said: dict[str, bool], tasks: list[str]) -> str:
    return next(task for task in reversed(tasks) if task in said)


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
    hand.save(5, "B4", "9'-11")
    assert "changed B4" in hand.get("/office/1/log/")
    back = seeded.run("restore", str(file))
    assert back.returncode == 0, back.stderr
    with pytest.raises(AttributeError):
        _Hand.get(hand, "/office/").index  # noqa: B018 -- the session is over: see below
