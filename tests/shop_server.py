"""The shop as a program of its own, for tests that need a real server."""

from __future__ import annotations

import importlib.util
import os
import signal
import subprocess
import sys
import time
import urllib.error
import urllib.request
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType

__all__ = ["ROOT", "Shop", "seed", "services", "start_shop"]

ROOT = Path(__file__).resolve().parent.parent


def _tool(name: str) -> ModuleType:
    spec = importlib.util.spec_from_file_location(name, ROOT / "tools" / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


services = _tool("services")


@dataclass
class Shop:
    """A running shop."""

    url: str
    process: subprocess.Popen[bytes]
    environment: dict[str, str]
    port: int

    def kill(self) -> None:
        self.process.send_signal(signal.SIGKILL)
        self.process.wait(10)

    def stop(self) -> None:
        self.process.terminate()
        try:
            self.process.wait(30)
        except subprocess.TimeoutExpired:
            self.kill()

    def run(self, *words: str) -> subprocess.CompletedProcess[bytes]:
        """Another command of the program on the same data."""
        command = [sys.executable, "-m", "gageline", *words]
        return subprocess.run(command, env=self.environment, capture_output=True, check=False, timeout=300)

    def seed(self) -> None:
        """Invented people, the demo jobs and a few ticks."""
        _seed(self.environment)


def _seed(environment: dict[str, str]) -> None:
    command = [sys.executable, str(ROOT / "tests" / "shop_seed.py")]
    subprocess.run(command, env=environment, check=True, timeout=300)


def _environment(home: Path, database: str) -> dict[str, str]:
    environment = {**os.environ, "GAGELINE_HOME": str(home), "DATABASE_URL": database}
    environment.pop("DJANGO_SETTINGS_MODULE", None)
    return environment


def seed(home: Path) -> None:
    """The same in a data folder that no shop runs on."""
    _seed(_environment(home, ""))


def start_shop(home: Path, database: str = "", port: int = 0, words: tuple[str, ...] = ()) -> Shop:
    """Start the shop on data of its own, with more words on its command, and wait until it answers."""
    port = port or services.free_port()
    environment = _environment(home, database)
    command = [sys.executable, "-m", "gageline", "serve", "--port", str(port), *words]
    with (home.parent / f"{home.name}.log").open("ab") as log:
        process = subprocess.Popen(command, env=environment, stdout=log, stderr=log)
    url = f"http://localhost:{port}"
    for _ in range(1200):
        if process.poll() is not None:
            break
        try:
            with urllib.request.urlopen(f"{url}/in/", timeout=5):  # noqa: S310 -- a server of our own
                return Shop(url, process, environment, port)
        except (urllib.error.URLError, OSError):
            time.sleep(0.1)
    raise RuntimeError((home.parent / f"{home.name}.log").read_text())
