"""What a shop lives through: torn and oversized uploads, backup while it runs."""

from __future__ import annotations

import socket
from pathlib import Path

from shop_hand import Hand
from shop_server import Shop, start_shop


def test_a_huge_and_a_torn_upload_do_no_harm(seeded: Shop) -> None:
    hand = Hand(seeded)
    cookies = "; ".join(f"{cookie.name}={cookie.value}" for cookie in hand.jar)
    head = (
        f"POST /office/import/ HTTP/1.1\r\nHost: localhost\r\nCookie: {cookies}\r\n"
        "Content-Type: multipart/form-data; boundary=x\r\nContent-Length: {}\r\n\r\n"
    )
    with socket.create_connection(("127.0.0.1", seeded.port), timeout=60) as line:
        line.sendall(head.format(10**9).encode() + b"x" * 1000)
        assert b"413" in line.recv(4096).split(b"\r\n", maxsplit=1)[0]
    with socket.create_connection(("127.0.0.1", seeded.port), timeout=60) as line:
        line.sendall(head.format(5000).encode() + b'--x\r\nContent-Disposition: form-data; name="document"')
    assert "Print shop mezzanine" in hand.get("/office/")
    assert hand.get("/office/").count('<a href="/office/') >= 3


def _restored(shop: Shop, file: Path) -> Hand:
    """Put a backup back while the shop runs; everybody signs in again."""
    back = shop.run("restore", str(file))
    assert back.returncode == 0, back.stderr
    return Hand(shop)


def test_backup_and_restore_while_the_shop_runs(seeded: Shop, tmp_path: Path) -> None:
    file = tmp_path / "kept"
    made = seeded.run("backup", str(file))
    assert made.returncode == 0, made.stderr
    hand = Hand(seeded)
    hand.post("/office/new/", b"name=Made+after+the+backup&units=mm")
    assert "Made after the backup" in hand.get("/office/")
    again = _restored(seeded, file)
    assert "Sign in" in hand.get("/office/")  # the session is over
    assert "Print shop mezzanine" in again.get("/office/")
    assert "Made after the backup" not in again.get("/office/")


def test_a_backup_moves_the_shop_to_postgresql(seeded: Shop, postgres_url: str, tmp_path: Path) -> None:
    assert seeded.run("backup", str(tmp_path / "first")).returncode == 0
    other = start_shop(tmp_path / "other", postgres_url)
    try:
        hand = _restored(other, tmp_path / "first")
        assert "Print shop mezzanine" in hand.get("/office/")
        hand.post("/office/new/", b"name=Made+before+the+second&units=mm")  # numbers go on after the old ones
        assert other.run("backup", str(tmp_path / "second")).returncode == 0
        hand.post("/office/new/", b"name=Made+after+the+second&units=mm")
        page = _restored(other, tmp_path / "second").get("/office/")
        assert "Made before the second" in page
        assert "Made after the second" not in page
    finally:
        other.stop()
