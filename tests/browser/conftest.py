"""Real Chromium and real servers for the tests of the shop."""

from __future__ import annotations

import shutil
import uuid
from collections.abc import Iterator
from pathlib import Path

import psycopg
import pytest
from playwright.sync_api import Browser, expect, sync_playwright

from shop_server import Shop, seed, services, start_shop

expect.set_options(timeout=60_000)  # ms; a busy machine is slow, and nothing else
_FLAGS = [
    "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--use-gl=angle", "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
]  # fmt: skip


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium, started once."""
    program = services.chromium()
    if program is None:
        pytest.skip("there is no Chromium here: the pages are not checked in a browser")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(program), args=_FLAGS)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def postgres_server() -> Iterator[str]:
    """A server of PostgreSQL with one database that nothing is kept in."""
    with services.postgres() as url:
        if url is None:
            pytest.skip("there is no PostgreSQL here: the shop is not checked on it")
        yield url


@pytest.fixture
def postgres_url(postgres_server: str) -> str:
    """An empty database of PostgreSQL for one test alone."""
    name = f"shop_{uuid.uuid4().hex[:12]}"
    with psycopg.connect(postgres_server, autocommit=True) as server:
        server.execute(f"CREATE DATABASE {name}")
    return f"{postgres_server.rpartition('/')[0]}/{name}"


@pytest.fixture(scope="session")
def seeded_home(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The data folder of a shop with people, jobs and some work done, to be copied."""
    home = tmp_path_factory.mktemp("seeded") / "home"
    seed(home)
    return home


@pytest.fixture
def seeded(tmp_path: Path, seeded_home: Path) -> Iterator[Shop]:
    """A shop with people, jobs and some work done."""
    running = start_shop(Path(shutil.copytree(seeded_home, tmp_path / "seeded")))
    yield running
    running.stop()


@pytest.fixture(params=["sqlite", "postgresql"])
def shop(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Shop]:
    """A shop without people, on each kind of database."""
    url = request.getfixturevalue("postgres_url") if request.param == "postgresql" else ""
    home = tmp_path / "home"
    running = start_shop(home, url)
    yield running
    running.stop()
