from __future__ import annotations

from collections.abc import Callable

import pytest
from django.test import Client

from gageline.shop.models import Person
from gageline.shop.roles import Role

_NEW = {"name": "Ada", "secret": "a long enough secret", "again": "a long enough secret"}


@pytest.mark.usefixtures("db")
def test_the_first_visit_makes_the_owner_on_this_machine_alone() -> None:
    assert Client().get("/")["Location"] == "/first/"
    away = Client(REMOTE_ADDR="192.168.1.9").post("/first/", _NEW)
    assert away.status_code == 422
    assert not Person.objects.exists()
    assert b"not the same" in Client().post("/first/", _NEW | {"again": "x"}).content
    assert Client().post("/first/", _NEW).status_code == 302
    assert Person.objects.get().role == Role.OWNER
    assert Client().post("/first/", _NEW)["Location"] == "/in/"
    assert Person.objects.count() == 1


@pytest.mark.usefixtures("owner")
@pytest.mark.parametrize(
    "target", ["https://elsewhere.example/", "//elsewhere.example", "javascript:alert(1)"]
)
def test_signing_in_leads_nowhere_else(target: str) -> None:
    sent = {"name": "Ada Example", "secret": "a long enough secret", "next": target}
    assert Client().post("/in/", sent)["Location"] == "/"


def test_a_form_of_another_session_is_refused(people: dict[Role, Person]) -> None:
    client = Client(enforce_csrf_checks=True)
    client.force_login(people[Role.OWNER])
    client.get("/office/new/")
    token = client.cookies["csrftoken"].value
    assert client.post("/office/new/", {"name": "x", "csrfmiddlewaretoken": "0" * 64}).status_code == 403
    other = Client(enforce_csrf_checks=True)
    other.force_login(people[Role.OFFICE])
    replayed = other.post("/office/new/", {"name": "x", "csrfmiddlewaretoken": token})
    assert replayed.status_code == 403
    assert b"another session" in replayed.content
    assert client.post("/office/new/", {"name": "x", "csrfmiddlewaretoken": token}).status_code == 302


def test_signing_out_ends_the_session_for_good(owner: Person) -> None:
    client = Client()
    client.force_login(owner)
    stolen = client.cookies["gageline"].value
    client.post("/out/")
    thief = Client()
    thief.cookies["gageline"] = stolen
    assert thief.get("/office/").status_code == 302


def test_the_owner_adds_and_changes_people(
    people: dict[Role, Person], signed_in: Callable[[Person], Client]
) -> None:
    client = signed_in(people[Role.OWNER])
    sent = {"name": "<b>Bo</b>", "role": "shop", "secret": "4712"}
    assert client.post("/people/", sent).status_code == 302
    assert b"&lt;b&gt;Bo" in client.get("/people/").content
    assert client.post("/people/", {**sent, "role": "king"}).status_code == 422
    bo = Person.objects.get(name="<b>Bo</b>")
    client.post(f"/people/{bo.pk}/", {"role": "shop"})
    bo.refresh_from_db()
    assert not bo.is_active
