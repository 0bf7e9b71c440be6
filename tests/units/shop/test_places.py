from __future__ import annotations

from collections.abc import Callable

import pytest
from django.test import Client

from gageline.shop.models import Copy, Person, Stage
from gageline.shop.places import places


@pytest.mark.usefixtures("job")
def test_each_place_counts_what_waits_there() -> None:
    Copy.objects.filter(piece__mark="P1").update(stage=Stage.GATE)
    assert [(place.name, place.count) for place in places()] == [
        ("Office", 1), ("Yard", 0), ("Saw", 0), ("Bench", 2), ("Fit", 0), ("Check", 0), ("Gate", 1),
    ]  # fmt: skip


@pytest.mark.usefixtures("job")
def test_the_strip_says_where_one_is(owner: Person, signed_in: Callable[[Person], Client]) -> None:
    page = signed_in(owner).get("/bench/").content.decode()
    assert '<a href="/bench/" aria-current="page">Bench' in page
    assert "waiting for layout" in signed_in(owner).get("/counts/").content.decode()
