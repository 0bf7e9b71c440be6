from __future__ import annotations

import pytest
from django.db import connection

from gageline.shop.models import Tick


@pytest.mark.usefixtures("db")
def test_it_makes_the_tables() -> None:
    names = connection.introspection.table_names()
    assert {"shop_person", "shop_job", "shop_revision", "shop_piece", "shop_copy", "shop_tick"} <= set(names)
    assert Tick.objects.count() == 0
