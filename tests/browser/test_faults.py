"""What a shop lives through: torn and oversized uploads, backup while it runs."""

from __future__ import annotations

import http.cookiejar
import re
import socket
import urllib.parse
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest

from shop_server import Shop, start_shop


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
