"""Who reaches the shop over the network, and what it says in a folder that cannot be written."""

from __future__ import annotations

import os
import shutil
import socket
import subprocess
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from gageline.shop.serving import network_address
from shop_hand import Hand
from shop_server import start_shop


def _asked(url: str, host: str = "") -> tuple[int, str]:
    """The status and the text of a page, asked for under a name."""
    request = urllib.request.Request(url, headers={"Host": host} if host else {})  # noqa: S310 -- our own
    try:
        with urllib.request.urlopen(request, timeout=60) as answer:  # noqa: S310 -- a server of our own
            return answer.status, answer.read().decode()
    except urllib.error.HTTPError as refused:
        return refused.code, refused.read().decode()


def test_the_network_reaches_the_shop_only_where_that_is_asked_for(tmp_path: Path) -> None:
    address = network_address()
    if address == "127.0.0.1":
        pytest.skip("this machine is in no network: nothing can be reached from there")
    shop = start_shop(tmp_path / "alone")
    with pytest.raises(ConnectionRefusedError):
        socket.create_connection((address, shop.port), timeout=20)
    shop.stop()
    shop = start_shop(tmp_path / "lan", words=("--lan",))
    try:
        said = (tmp_path / "lan.log").read_text("utf8")
        url = f"http://{address}:{shop.port}/"
        assert f"The shop is open at {url}" in said
        assert sum(set(line) <= set("█▀▄ ") and len(line) > 20 for line in said.splitlines()) > 10  # its code
        assert _asked(f"{url}in/", "evil.example")[0] == 400
        status, page = _asked(f"{url}first/")
        assert (status, "make the first visit on the machine that serves it" in page) == (422, True)
        here = f"http://127.0.0.1:{shop.port}/first/"
        assert "Open the shop" in _asked(here)[1]
    finally:
        shop.stop()


@contextmanager
def _disk(folder: Path) -> Iterator[None]:
    """A disk of its own, that can be made read-only."""
    folder.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64m", "tmpfs", str(folder)]
    try:
        if subprocess.run(mount, check=False, capture_output=True).returncode:
            pytest.skip("no disk can be mounted here: a read-only one is not checked")
    except FileNotFoundError:
        pytest.skip("no disk can be mounted here: a read-only one is not checked")
    try:
        yield
    finally:
        subprocess.run(["umount", "-l", str(folder)], check=True)  # noqa: S607 -- a program of the machine


def _remount(folder: Path, how: str) -> None:
    """Make a disk read-only or not; while something of it is open for writing it waits."""
    command = ["mount", "-o", f"remount,{how}", str(folder)]
    end = time.monotonic() + 60
    while (done := subprocess.run(command, check=False, capture_output=True)).returncode:
        assert time.monotonic() < end, done.stderr
        time.sleep(0.1)


def test_a_read_only_disk_is_said_at_the_start_and_harms_nothing(tmp_path: Path, seeded_home: Path) -> None:
    disk = tmp_path / "disk"
    with _disk(disk):
        shutil.copytree(seeded_home, disk, dirs_exist_ok=True)
        _remount(disk, "ro")
        with pytest.raises(RuntimeError, match=r"cannot be written \(read-only file system\)") as start:
            start_shop(disk)
        assert "Traceback" not in str(start.value)
        _remount(disk, "rw")
        shop = start_shop(disk)
        assert "Print shop mezzanine" in Hand(shop).get("/office/")
        shop.stop()


@pytest.mark.skipif(os.geteuid() == 0, reason="root writes wherever it likes")
def test_a_folder_without_the_right_to_write_is_said(tmp_path: Path) -> None:
    home = tmp_path / "home"
    home.mkdir(mode=0o500)
    with pytest.raises(RuntimeError, match=r"cannot be written \(permission denied\)"):
        start_shop(home)
