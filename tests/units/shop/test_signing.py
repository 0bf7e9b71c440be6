from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest
from django.test import Client
from django.utils import timezone

from gageline.errors import ValueProblem
from gageline.shop.models import Guess, Person, Tablet
from gageline.shop.roles import Role
from gageline.shop.signing import add_person, change_person, forget_tablet, make_owner

SECRET = "a long enough secret"  # noqa: S105 -- of nobody


def _try(client: Client, name: str, secret: str, where: str = "/in/") -> Any:
    return client.post(where, {"name": name, "secret": secret})


def _known(owner: Person) -> Client:
    client = Client()
    client.force_login(owner)
    client.post("/tablets/", {"name": "Bench"})
    client.post("/out/")
    return client


@pytest.mark.usefixtures("owner")
def test_the_right_password_opens_and_the_wrong_one_does_not() -> None:
    client = Client()
    assert _try(client, "Ada Example", "wrong").status_code == 422
    assert client.get("/office/").status_code == 302
    assert _try(client, "ada example", SECRET).status_code == 302
    assert client.get("/office/").status_code == 200


@pytest.mark.usefixtures("owner")
def test_guessing_is_slowed_down_and_told() -> None:
    client = Client()
    for _ in range(5):
        assert b"do not belong together" in _try(client, "Ada Example", "wrong").content
    assert b"too many wrong guesses: wait" in _try(client, "Ada Example", SECRET).content
    Guess.objects.update(closed_until=timezone.now() - timedelta(seconds=1))
    assert _try(client, "Ada Example", "wrong").status_code == 422
    pause = max(guess.closed_until for guess in Guess.objects.all()) - timezone.now()
    assert pause > timedelta(seconds=50)  # twice the first pause
    Guess.objects.update(closed_until=timezone.now() - timedelta(seconds=1))
    assert _try(client, "Ada Example", SECRET).status_code == 302
    assert Guess.objects.count() == 0


def test_a_pin_is_for_known_tablets_alone(people: dict[Role, Person]) -> None:
    assert b"not known to the shop" in _try(Client(), "shop person", "4711", "/in/shop/").content
    assert b"do not belong together" in _try(Client(), "shop person", "4711").content
    tablet = _known(people[Role.OWNER])
    assert b"shop person" in tablet.get("/in/shop/").content
    assert _try(tablet, "Ada Example", SECRET, "/in/shop/").status_code == 422
    assert _try(tablet, "shop person", "4711", "/in/shop/").status_code == 302
    assert tablet.get("/bench/").status_code == 200
    assert b"shop person" not in Client().get("/in/shop/").content


def test_a_forgotten_tablet_is_out_at_once(people: dict[Role, Person]) -> None:
    tablet = _known(people[Role.OWNER])
    _try(tablet, "shop person", "4711", "/in/shop/")
    forget_tablet(people[Role.OWNER], Tablet.objects.get())
    assert tablet.get("/bench/").status_code == 302


def test_who_is_switched_off_or_given_a_new_secret_is_out(people: dict[Role, Person]) -> None:
    owner, office = people[Role.OWNER], people[Role.OFFICE]
    client = Client()
    client.force_login(office)
    change_person(owner, office, Role.OFFICE, "quite another secret", active=True)
    assert client.get("/office/").status_code == 302
    client.force_login(office)
    change_person(owner, office, Role.OFFICE, "", active=False)
    assert client.get("/office/").status_code == 302


def test_the_shop_keeps_an_owner(people: dict[Role, Person]) -> None:
    owner = people[Role.OWNER]
    with pytest.raises(ValueProblem, match="only owner: make another owner first"):
        change_person(owner, owner, Role.LOOK, "", active=True)
    with pytest.raises(ValueProblem, match="has its owner already"):
        make_owner("Another", SECRET)


@pytest.mark.parametrize(
    ("role", "secret", "words"),
    [
        (Role.SHOP, "123", "4 to 8 digits"), (Role.SHOP, "١٢٣٤", "4 to 8 digits"),
        (Role.SHOP, "7777", "one digit"),
        (Role.OFFICE, "short", "has 5 characters: choose 10"), (Role.LOOK, "x" * 201, "longer than 200"),
    ],
)  # fmt: skip
def test_secrets_that_are_too_easy(owner: Person, role: Role, secret: str, words: str) -> None:
    with pytest.raises(ValueProblem, match=words):
        add_person(owner.name, "Somebody", role, secret)


def test_names_are_there_once_and_can_be_read(owner: Person) -> None:
    with pytest.raises(ValueProblem, match="is there already"):
        add_person("x", " ada  EXAMPLE ", Role.LOOK, SECRET)
    with pytest.raises(ValueProblem, match="the name is empty"):
        add_person("x", "\x07", Role.LOOK, SECRET)
    with pytest.raises(ValueProblem, match="not the same: give a new one"):
        change_person(owner, add_person("x", "Flo", Role.SHOP, "4711"), Role.OFFICE, "", active=True)
