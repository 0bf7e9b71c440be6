"""Every address and every role: who is let in, who is sent away, and that nobody was forgotten."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from django.test import Client
from django.urls import get_resolver, reverse

from gageline.shop.access import ACCESS, OPEN, roles_of
from gageline.shop.models import Copy, Cutting, Job, LogEntry, Person, Plan, Stick, Tablet
from gageline.shop.plans import start_plan
from gageline.shop.roles import Role
from gageline.shop.sticks import save_stick
from gageline.units import System

REFUSED = 403
_ARGUMENTS = {"name": "drawings", "number": 1, "part": "held", "kind": "member"}


def _stick() -> Stick:
    owner = Person.objects.get(role=Role.OWNER)
    stick = save_stick(owner, None, {"mark": "R1", "stock": "W12x26", "length": "20'"}, 0, System.FT_IN)
    assert isinstance(stick, Stick)
    return stick


def _plan(job: Job) -> dict[str, int]:
    """A cutting plan that is being searched, and a stick of it."""
    owner = Person.objects.get(role=Role.OWNER)
    plan = Plan.objects.first() or start_plan(owner, (job,), 1)
    cutting, _ = Cutting.objects.get_or_create(plan=plan, steel="W12X26 A992", number=1)
    return {"plan": plan.pk, "cutting": cutting.pk}


def _address(name: str) -> str:
    """The address of a page with numbers that exist."""
    job = Job.objects.first()
    assert job is not None
    piece = job.pieces.first()
    copy = Copy.objects.first()
    tablet, _ = Tablet.objects.get_or_create(name="known", token="0" * 64)
    assert piece is not None
    stick = Stick.objects.first() or _stick()
    assert copy is not None
    owner = {"person": Person.objects.order_by("pk").first(), "tablet-forget": tablet}.get(name, job)
    assert owner is not None
    known = {"pk": owner.pk, "piece": piece.pk, "copy": copy.pk, "stick": stick.pk, **_ARGUMENTS}
    if name.startswith("saw-"):
        known |= _plan(job)
    ((_, wanted),) = [(form, keys) for form, keys in get_resolver().reverse_dict.getlist(name)[0][0]]
    return reverse(name, kwargs={key: known[key] for key in wanted})


def test_every_address_is_on_the_list_and_nothing_else() -> None:
    assert {pattern.name for pattern in get_resolver().url_patterns} == set(ACCESS)  # type: ignore[union-attr] # all are single pages


def test_a_page_that_is_not_on_the_list_is_for_nobody() -> None:
    assert roles_of("nothing of the kind") is None
    assert roles_of(None) is None


@pytest.mark.usefixtures("job")
@pytest.mark.parametrize("method", ["get", "post"])
@pytest.mark.parametrize("role", list(Role))
@pytest.mark.parametrize("name", sorted(name for name in ACCESS if name != "sign-out"))
def test_each_page_lets_in_whom_it_is_for(
    name: str,
    role: Role,
    method: str,
    people: dict[Role, Person],
    signed_in: Callable[[Person], Client],
) -> None:
    answer = getattr(signed_in(people[role]), method)(_address(name))
    allowed = ACCESS[name] is OPEN or role in ACCESS[name]
    assert (answer.status_code != REFUSED) is allowed
    if allowed:
        assert answer.status_code < 500


@pytest.mark.parametrize("method", ["get", "post"])
@pytest.mark.parametrize("name", sorted(name for name, roles in ACCESS.items() if roles is not OPEN))
def test_nobody_gets_in_without_signing_in(name: str, method: str, job: Job) -> None:
    answer = getattr(Client(), method)(_address(name))
    if method == "get":
        assert answer.status_code == 302
        assert answer["Location"].startswith("/in/")
    else:
        assert answer.status_code == 401
        assert "You are signed out" in answer.content.decode()
    assert Job.objects.get(pk=job.pk).current == 1


def test_those_who_look_change_nothing_by_posting(
    job: Job, people: dict[Role, Person], signed_in: Callable[[Person], Client]
) -> None:
    looker = signed_in(people[Role.LOOK])
    before = list(Copy.objects.values_list("stage", "active"))
    for name in ACCESS:
        if name != "sign-out":
            looker.post(_address(name), {"name": "x", "mark": "X1", "stock": "W12x26", "length": "5'"})
    assert Job.objects.count() == 1
    assert Job.objects.get(pk=job.pk).current == 1
    assert list(Copy.objects.values_list("stage", "active")) == before


@pytest.mark.usefixtures("job")
@pytest.mark.parametrize("name", sorted(ACCESS))
def test_no_form_counts_that_this_session_was_not_given(name: str, people: dict[Role, Person]) -> None:
    """A direct post, and a form that was made for another session and is sent again."""
    other = Client(enforce_csrf_checks=True)
    other.force_login(people[Role.OFFICE])
    other.get("/office/new/")
    client = Client(enforce_csrf_checks=True)
    client.force_login(people[Role.OWNER])
    client.get("/office/new/")
    stolen = {"csrfmiddlewaretoken": other.cookies["csrftoken"].value}
    address, before = _address(name), LogEntry.objects.count()
    for sent in ({}, stolen):
        assert client.post(address, sent).status_code == REFUSED
    assert LogEntry.objects.count() == before
