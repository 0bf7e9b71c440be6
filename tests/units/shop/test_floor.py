from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any

import pytest
from django.test import Client
from django.utils import timezone

from gageline.shop.models import Copy, Job, Person, Stage, Tick
from gageline.shop.roles import Role


@pytest.fixture
def fitter(people: dict[Role, Person]) -> Person:
    return people[Role.SHOP]


@pytest.fixture
def tablet(fitter: Person, signed_in: Callable[[Person], Client]) -> Client:
    return signed_in(fitter)


@pytest.fixture
def copy(job: Job) -> Copy:
    return Copy.objects.select_related("piece").get(piece__job=job, piece__mark="B1", number=1)


def _stroke(copy: Copy, who: Person, changes: dict[str, object] | None = None) -> dict[str, object]:
    at = timezone.now().isoformat()
    known = {"key": "k" * 16, "who": who.pk, "copy": copy.pk, "card": copy.piece.card, "task": "bench-1"}
    return known | {"done": True, "at": at} | (changes or {})


def _send(client: Client, *strokes: object) -> Any:
    return client.post(
        "/ticks/", json.dumps({"ticks": strokes}), "application/json", headers={"accept": "application/json"}
    )


def test_ticks_are_answered_by_their_keys_and_count_once(tablet: Client, fitter: Person, copy: Copy) -> None:
    first = _stroke(copy, fitter)
    second = _stroke(copy, fitter, {"key": "l" * 16, "task": "bench-99"})
    for _ in range(2):
        answers = _send(tablet, first, second).json()["answers"]
        assert [(one["key"], one["state"]) for one in answers] == [("k" * 16, "done"), ("l" * 16, "conflict")]
    assert Tick.objects.count() == 1


@pytest.mark.parametrize(
    "change",
    [
        {"key": "short"}, {"key": 7}, {"copy": "1"}, {"copy": -1}, {"copy": 2**60}, {"at": "yesterday"},
        {"at": "2026-01-01T00:00:00"}, {"who": 10**6},
    ],
)  # fmt: skip
def test_what_is_no_tick_is_refused(
    tablet: Client, fitter: Person, copy: Copy, change: dict[str, object]
) -> None:
    answer = _send(tablet, _stroke(copy, fitter, change))
    assert answer.status_code == 400
    assert answer.json()["refused"].startswith("these are no ticks")
    assert Tick.objects.count() == 0


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b'{"ticks": 7}', b'{"ticks": [[]]}', b"\xff"])
def test_torn_bodies_are_refused(tablet: Client, body: bytes) -> None:
    assert tablet.post("/ticks/", body, "application/json").status_code == 400


def test_a_tablet_that_is_signed_out_is_told_so(copy: Copy, fitter: Person) -> None:
    answer = _send(Client(), _stroke(copy, fitter))
    assert (answer.status_code, answer.json()) == (401, {"refused": "signed out: sign in again"})


def test_ticks_of_somebody_else_are_not_taken(
    people: dict[Role, Person], copy: Copy, signed_in: Callable[[Person], Client]
) -> None:
    answer = _send(signed_in(people[Role.OFFICE]), _stroke(copy, people[Role.SHOP]))
    assert answer.status_code == 400
    assert "somebody else's" in answer.json()["refused"]


def test_a_browser_without_script_ticks_too(tablet: Client, copy: Copy) -> None:
    sent = {"copy": copy.pk, "card": copy.piece.card, "task": "bench-2", "done": "1"}
    assert tablet.post("/tick/", sent)["Location"] == f"/bench/{copy.pk}/#bench-2"
    assert Tick.objects.count() == 1
    assert tablet.post("/tick/", sent | {"card": "old", "key": "another key"}).status_code == 422


def test_the_card_has_readings_picture_and_table(tablet: Client, copy: Copy) -> None:
    page = tablet.get(f"/bench/{copy.pk}/").content.decode()
    assert f'data-card="{copy.piece.card}"' in page
    assert page.count('class="step ') > 1
    assert "Hook the tape at" in page
    assert "Marks, as they are struck" in page
    fit = tablet.get(f"/fit/{copy.pk}/").content.decode()
    assert "Set the left near angle" in fit
    assert "fillet" in fit


def test_a_card_that_is_done_shows_the_way_on(tablet: Client, fitter: Person, copy: Copy) -> None:
    page = tablet.get(f"/bench/{copy.pk}/").content.decode()
    assert re.search(r'<nav id="onward"[^>]* hidden>', page)
    codes = re.findall(r'data-task="(bench-\d+)"', page)
    for number, code in enumerate(codes):
        _send(tablet, _stroke(copy, fitter, {"key": f"{number:016}", "task": code}))
    page = tablet.get(f"/bench/{copy.pk}/").content.decode()
    assert re.search(r'<nav id="onward"[^>]*tabindex="-1">', page)
    assert f'href="/bench/{copy.pk + 1}/">Next: B1 (2 of 2), W12X26' in page
    assert 'href="/bench/">All that waits here' in page


def test_who_looks_has_nothing_to_press(
    people: dict[Role, Person], copy: Copy, signed_in: Callable[[Person], Client]
) -> None:
    page = signed_in(people[Role.LOOK]).get(f"/bench/{copy.pk}/").content.decode()
    assert 'action="/tick/"' not in page


def test_what_is_ready_leaves_through_the_gate(tablet: Client, copy: Copy) -> None:
    assert tablet.post(f"/gate/{copy.pk}/send/").status_code == 422
    empty = tablet.get("/gate/").content.decode()
    assert "Nothing is ready yet" in empty
    assert "0 ready" not in empty
    Copy.objects.filter(pk=copy.pk).update(stage=Stage.GATE)
    assert b"1 ready" in tablet.get("/gate/").content
    assert tablet.post(f"/gate/{copy.pk}/send/").status_code == 302
    assert Copy.objects.get(pk=copy.pk).stage == Stage.GONE
    back = f"/gate/{copy.pk}/back/"
    assert f'action="{back}"' in tablet.get("/gate/").content.decode()
    assert tablet.post(back).status_code == 302
    assert Copy.objects.get(pk=copy.pk).stage == Stage.GATE
    assert tablet.post(back).status_code == 422


@pytest.mark.parametrize("number", ["²", "9" * 5000, "-1", "", "x", "٣"])
def test_what_is_no_number_of_a_piece_is_a_refusal(tablet: Client, number: str) -> None:
    sent = {"copy": number, "card": "x", "task": "bench-1", "note": number}
    assert tablet.post("/tick/", sent).status_code == 422
    assert tablet.post("/tick/", sent | {"task": f"saw-{number[:20]}"}).status_code == 422
