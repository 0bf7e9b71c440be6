from __future__ import annotations

import pytest
from django.test import Client


@pytest.mark.usefixtures("db")
def test_the_worker_stands_at_the_root() -> None:
    answer = Client().get("/worker.js")
    assert answer["Content-Type"].startswith("text/javascript")
    assert b"gageline-pages" in answer.content
