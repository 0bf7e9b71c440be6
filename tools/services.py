"""See to it that Chromium and PostgreSQL are there for a test run, and run a PostgreSQL of its own.

    python tools/services.py

installs what is missing with apt-get, where this is Debian and the user is root, and says what is there.
Nothing else on the machine is touched: the server that a test run gets lives in a temporary folder, on a
port of its own, and ends with the run.
"""

from __future__ import annotations

import os
import pwd
import shutil
import socket
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

__all__ = ["chromium", "free_port", "postgres"]

_PACKAGES = {"chromium": "chromium", "postgres": "postgresql"}
_FOLDERS = "/usr/lib/postgresql"


def free_port() -> int:
    """A port of this machine that nobody uses now."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
    return port


def _installed(name: str) -> Path | None:
    if name == "postgres":
        found = sorted(Path(_FOLDERS).glob("*/bin/postgres"))
        return found[-1].parent if found else None
    at = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    return Path(at) if at else None


@cache
def _got(name: str) -> Path | None:
    """Where a program is, installed from Debian's packages where that can be done."""
    at = _installed(name)
    if at or not shutil.which("apt-get") or not hasattr(os, "geteuid") or os.geteuid() != 0:
        return at
    quiet = {"env": {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}, "stdout": subprocess.DEVNULL}
    for command in (["apt-get", "update"], ["apt-get", "install", "-y", _PACKAGES[name]]):
        if subprocess.run(command, check=False, **quiet).returncode:  # type: ignore[call-overload] # a table of options
            return None
    return _installed(name)


def chromium() -> Path | None:
    """The browser, None where there is none and none can be installed."""
    return _got("chromium")


@contextmanager
def postgres() -> Iterator[str | None]:
    """A PostgreSQL server of this run alone.

    Yields:
        The URL of an empty database; None where there is no PostgreSQL and none can be installed.
    """
    programs = _got("postgres")
    if programs is None:
        yield None
        return
    user = "postgres" if os.geteuid() == 0 else pwd.getpwuid(os.geteuid()).pw_name
    folder = Path(tempfile.mkdtemp(prefix="gageline-pg-"))
    if os.geteuid() == 0:  # the server refuses to run as root
        shutil.chown(folder, user)
    port = free_port()
    run = ["runuser", "-u", user, "--"] if os.geteuid() == 0 else []
    make = [*run, str(programs / "initdb"), "-D", str(folder / "data"), "-U", "shop", "-A", "trust", "-N"]
    subprocess.run(make, check=True, stdout=subprocess.DEVNULL, cwd=folder)
    options = ["-p", str(port), "-k", str(folder), "-c", "listen_addresses=127.0.0.1"]
    serve = [*run, str(programs / "postgres"), "-D", str(folder / "data"), *options]
    with (folder / "log").open("wb") as log:
        server = subprocess.Popen(serve, stdout=log, stderr=log, cwd=folder)
        try:
            _wait(programs, port)
            make_database = [
                str(programs / "createdb"),
                "-h",
                "127.0.0.1",
                "-p",
                str(port),
                "-U",
                "shop",
                "shop",
            ]
            subprocess.run(make_database, check=True)
            yield f"postgresql://shop@127.0.0.1:{port}/shop"
        finally:
            stop = [*run, str(programs / "pg_ctl"), "-D", str(folder / "data"), "-m", "immediate", "stop"]
            subprocess.run(stop, check=False, stdout=subprocess.DEVNULL, cwd=folder)
            server.wait(60)
            shutil.rmtree(folder, ignore_errors=True)


def _wait(programs: Path, port: int) -> None:
    ready = [str(programs / "pg_isready"), "-q", "-h", "127.0.0.1", "-p", str(port)]
    for _ in range(600):
        if subprocess.run(ready, check=False).returncode == 0:
            return
        time.sleep(0.1)
    raise RuntimeError("PostgreSQL did not start within 60 seconds")


if __name__ == "__main__":
    print(f"Chromium: {chromium() or 'none'}")
    with postgres() as url:
        print(f"PostgreSQL: {url or 'none'}")
