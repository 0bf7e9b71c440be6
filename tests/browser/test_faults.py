"""What a shop lives through: torn and oversized uploads, backup while it runs."""

from __future__ import annotations

import socket
from collections.abc import Iterator
from pathlib import Path

import pytest

from shop_hand import Hand
from shop_server import Shop, start_shop


@pytest.fixture
def seeded(tmp_path: Path) -> Iterator[Shop]:
    shop = start_shop(tmp_path / "home")
    shop.seed()
    yield shop
    shop.stop()


def test_a_huge_and_a_torn_upload_do_no_harm(seeded: Shop) -> None:
    hand = Hand(seeded)
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
    hand = Hand(seeded)
    hand.post("/office/new/", b"name=Made+after+the+backup&units=mm")
    assert "Made after the backup" in hand.get("/office/")
    back = seeded.run("restore", str(file))
    assert back.returncode == 0, back.stderr
    assert "Sign in" in hand.get("/office/")  # the session is over
    again = Hand(seeded)
    assert "Print shop mezzanine" in again.get("/office/")
    assert "Made after the backup" not in again.get("/office/")
