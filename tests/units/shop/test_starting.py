from __future__ import annotations

from pathlib import Path

import pytest

from gageline.errors import GagelineError
from gageline.shop.starting import start_up
from shop_server import start_shop


def test_a_folder_that_cannot_be_used_stops_the_start(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "file").write_text("no folder")
    monkeypatch.setenv("GAGELINE_HOME", str(tmp_path / "file"))
    with pytest.raises(GagelineError, match="cannot be written"):
        start_up()


def test_a_database_that_is_not_there_is_said_in_one_sentence(tmp_path: Path) -> None:
    with pytest.raises(
        RuntimeError, match=r"(?s)the database shop cannot be used .* check DATABASE_URL"
    ) as found:
        start_shop(tmp_path / "home", "postgresql://nobody@127.0.0.1:9/shop")
    assert "Traceback" not in str(found.value)


def test_a_spoiled_database_is_said_in_one_sentence(tmp_path: Path) -> None:
    (tmp_path / "home").mkdir()
    (tmp_path / "home" / "shop.sqlite3").write_bytes(b"this is no database" * 1000)
    with pytest.raises(RuntimeError, match="cannot be used") as found:
        start_shop(tmp_path / "home")
    assert "Traceback" not in str(found.value)
