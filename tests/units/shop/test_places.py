from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from django.test import Client
from django.urls import reverse

from gageline.shop.models import Copy, Cutting, Person, Plan, Search, Stage
from gageline.shop.places import places
from gageline.shop.sticks import save_stick
from gageline.units import System


@pytest.mark.usefixtures("job")
def test_each_place_counts_what_waits_there() -> None:
    Copy.objects.filter(piece__mark="P1").update(stage=Stage.GATE)
    assert [(place.name, place.count) for place in places()] == [
        ("Office", 1), ("Yard", 0), ("Saw", 0), ("Bench", 2), ("Fit", 0), ("Check", 0), ("Gate", 1),
    ]  # fmt: skip


@pytest.mark.usefixtures("job")
@pytest.mark.parametrize(
    ("address", "does"),
    [
        ("/office/", "New job"), ("/yard/", "Add a stick"), ("/saw/", "Plan the cuts</button>"),
        ("/bench/", 'href="/bench/'), ("/fit/", 'href="/fit/'), ("/check/", 'href="/check/'),
        ("/gate/", "Sent off"),
    ],
)  # fmt: skip
def test_every_place_of_the_strip_does_something(
    owner: Person, signed_in: Callable[[Person], Client], address: str, does: str
) -> None:
    """A place is shown only when it does something; one where nothing waits stays where hands find it."""
    client = signed_in(owner)
    for number, stage in enumerate((Stage.FIT, Stage.CHECK, Stage.GATE)):
        Copy.objects.filter(pk=Copy.objects.order_by("pk")[number].pk).update(stage=stage)
    if address == "/bench/":
        Copy.objects.filter(stage=Stage.FIT).update(stage=Stage.BENCH)
    assert reverse(next(place.url for place in places() if reverse(place.url) == address)) == address
    assert does in client.get(address).content.decode().split("<main", 1)[1]
    assert len(places()) == 7


def test_the_yard_counts_its_sticks_and_the_saw_what_is_not_cut_yet(owner: Person) -> None:
    save_stick(owner, None, {"mark": "R1", "stock": "W12x26", "length": "20'"}, 0, System.FT_IN)
    plan = Plan.objects.create(asked="{}", seconds=1, by=owner.name, state=Search.CHOSEN)
    past = Plan.objects.create(asked="{}", seconds=1, by=owner.name, state=Search.PAST)
    for number, (of, done) in enumerate(((plan, False), (plan, True), (past, False))):
        Cutting.objects.create(plan=of, steel="W12X26 A992", number=number, done=done)
    counts = {place.name: place.count for place in places()}
    assert (counts["Yard"], counts["Saw"]) == (1, 1)


@pytest.mark.usefixtures("job")
def test_the_strip_says_where_one_is(owner: Person, signed_in: Callable[[Person], Client]) -> None:
    page = signed_in(owner).get("/bench/").content.decode()
    assert '<a href="/bench/" aria-current="page">Bench' in page
    assert "waiting for layout" in signed_in(owner).get("/counts/").content.decode()


@pytest.mark.usefixtures("job")
@pytest.mark.parametrize(
    ("on", "place"),
    [
        ("http://testserver/bench/1/?x=1#bench-3", "Bench"), ("http://testserver/piece/1/", "Office"),
        ("https://shop.example/saw/", "Saw"), ("http://testserver/nowhere/", ""), ("http://[/bench/", ""),
    ],
)  # fmt: skip
def test_the_strip_that_comes_anew_keeps_the_mark_of_the_page_it_stands_on(
    owner: Person, signed_in: Callable[[Person], Client], on: str, place: str
) -> None:
    headers = {"HX-Request": "true", "HX-Current-URL": on}
    page = signed_in(owner).get("/counts/", headers=headers).content.decode()
    assert re.findall(r'aria-current="page">(\w+)', page) == ([place] if place else [])
