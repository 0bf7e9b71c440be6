"""Real Chromium and real servers for the tests of the shop."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from shop_server import Shop, services, start_shop

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
def postgres_url() -> Iterator[str]:
    """An empty database of PostgreSQL."""
    with services.postgres() as url:
        if url is None:
            pytest.skip("there is no PostgreSQL here: the shop is not checked on it")
        yield url


@pytest.fixture(params=["sqlite", "postgresql"])
def shop(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Shop]:
    """A shop without people, on each kind of database."""
    url = request.getfixturevalue("postgres_url") if request.param == "postgresql" else ""
    home = tmp_path / "home"
    running = start_shop(home, url)
    yield running
    running.stop()
