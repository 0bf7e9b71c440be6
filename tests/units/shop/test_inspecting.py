from __future__ import annotations

import json
from collections.abc import Callable

import pytest
from django.test import Client

from gageline.shop.engine import INSPECTION
from gageline.shop.inspecting import let_go
from gageline.shop.models import Copy, Job, LogEntry, Person, Stage
from gageline.shop.readings import take
from gageline.shop.roles import Role
from gageline.shop.ticking import Stroke

SignIn = Callable[[Person], Client]


@pytest.fixture
def copy(job: Job) -> Copy:
    found = Copy.objects.select_related("piece__job").get(piece__job=job, piece__mark="B1", number=1)
    Copy.objects.filter(pk=found.pk).update(stage=Stage.CHECK)
    found.refresh_from_db()
    return found


def _go(copy: Copy, key: str, words: str = "", *, done: bool = True) -> Stroke:
    return Stroke(key, copy.pk, copy.piece.card, INSPECTION, done=done, note=words)


def _stage(copy: Copy) -> str:
    return Copy.objects.get(pk=copy.pk).stage


def test_a_piece_goes_when_it_was_read_and_nothing_is_out(owner: Person, copy: Copy) -> None:
    refused = let_go(owner, _go(copy, "a"))
    assert refused.state == "conflict"
    assert "nothing was read on B1 (1 of 2)" in refused.text
    take(owner, Stroke("r", copy.pk, copy.piece.card, "read-1", note="9'-6"))
    assert let_go(owner, _go(copy, "b")).state == "done"
    assert _stage(copy) == Stage.GATE
    assert LogEntry.objects.filter(what__startswith="inspected B1 (1 of 2): good, 1 of ").exists()
    assert let_go(owner, _go(copy, "c", done=False)).state == "done"
    assert _stage(copy) == Stage.CHECK


def test_a_piece_that_is_out_goes_only_with_words(owner: Person, copy: Copy) -> None:
    take(owner, Stroke("r", copy.pk, copy.piece.card, "read-1", note="9'-5"))
    refused = let_go(owner, _go(copy, "a"))
    assert "ask the engineer for overall" in refused.text
    assert let_go(owner, _go(copy, "a")) == refused
    assert _stage(copy) == Stage.CHECK
    assert let_go(owner, _go(copy, "b", "engineer of record accepts, letter of today")).state == "done"
    assert LogEntry.objects.filter(what__contains="in spite of that: engineer of record accepts").exists()


def test_a_piece_elsewhere_is_not_let_go(owner: Person, copy: Copy) -> None:
    Copy.objects.filter(pk=copy.pk).update(stage=Stage.FIT)
    assert "still waits at: Fit" in let_go(owner, _go(copy, "a", "words")).text
    assert "taken out" in let_go(owner, Stroke("b", 10**9, "x", INSPECTION)).text


def test_the_sheet_is_in_the_order_one_walks(owner: Person, copy: Copy, signed_in: SignIn) -> None:
    client = signed_in(owner)
    assert f"/check/{copy.pk}/" in client.get("/check/").content.decode()
    page = client.get(f"/check/{copy.pk}/").content.decode()
    places = [page.index(words) for words in ("<h2>Along it", "<h2>Left end", "<h2>Right end")]
    assert places == sorted(places)
    assert "nothing read yet" in page
    assert "never as good" in page


def test_readings_come_from_a_tablet_and_are_shown(owner: Person, copy: Copy, signed_in: SignIn) -> None:
    client = signed_in(owner)
    one = {"who": owner.pk, "copy": copy.pk, "card": copy.piece.card, "done": True}
    sent = [
        {**one, "key": "tablet-1", "task": "read-1", "note": "9'-6", "at": "2026-11-25T10:00:00+00:00"},
        {**one, "key": "tablet-2", "task": INSPECTION, "note": "", "at": "2026-11-25T10:01:00+00:00"},
    ]
    answer = client.post("/ticks/", json.dumps({"ticks": sent}), "application/json")
    assert [(item["state"], item["text"]) for item in answer.json()["answers"]] == [
        ("done", "good"),
        ("done", ""),
    ]
    assert _stage(copy) == Stage.GATE
    page = client.get(f"/check/{copy.pk}/").content.decode()
    assert 'value="9&#x27;-6&quot;"' in page
    assert "let go by Ada Example" in page
    assert b"good" in client.get(f"/check/{copy.pk}/outcome/").content


def test_without_script_a_reading_is_a_plain_form(owner: Person, copy: Copy, signed_in: SignIn) -> None:
    sent = {"copy": str(copy.pk), "card": copy.piece.card, "task": "read-1", "note": "9'-6 1/2"}
    answer = signed_in(owner).post("/tick/", sent)
    assert answer["Location"] == f"/check/{copy.pk}/#read-1"
    assert b"rework: cut it back" in signed_in(owner).get(f"/check/{copy.pk}/").content


def test_the_sheet_is_printed_blank_and_filled(owner: Person, copy: Copy, signed_in: SignIn) -> None:
    client = signed_in(owner)
    blank = client.get(f"/check/{copy.pk}/sheet.pdf")
    assert blank.content.startswith(b"%PDF")
    assert blank["Content-Disposition"] == 'attachment; filename="B1-1-inspection.pdf"'
    take(owner, Stroke("r", copy.pk, copy.piece.card, "read-1", note="9'-6"))
    assert client.get(f"/check/{copy.pk}/sheet.pdf").content != blank.content


def test_the_odds_are_told_with_their_spread(owner: Person, job: Job, signed_in: SignIn) -> None:
    client = signed_in(owner)
    page = client.get(f"/piece/{job.pieces.get(mark='B1').pk}/odds/").content.decode()
    assert "It bolts up without reaming" in page
    assert "an assumption of Gageline, not measured in any shop" in page
    post = client.get(f"/piece/{job.pieces.get(mark='P1').pk}/odds/").content.decode()
    assert "no odds to tell" in post


def test_holes_without_odds_are_named_with_the_reason(owner: Person, framed: Job, signed_in: SignIn) -> None:
    page = signed_in(owner).get(f"/piece/{framed.pieces.get(mark='P1').pk}/odds/").content.decode()
    assert "Not reckoned: left base plate, bolt holes: over anchor rods." in page


def test_those_who_look_read_the_sheet_and_fill_nothing(
    people: dict[Role, Person], copy: Copy, signed_in: SignIn
) -> None:
    looker = signed_in(people[Role.LOOK])
    page = looker.get(f"/check/{copy.pk}/").content.decode()
    assert "not read" in page
    assert "<form" not in page.split('id="work"')[1]
    sent = {"copy": str(copy.pk), "card": copy.piece.card, "task": "read-1", "note": "9'-6"}
    assert looker.post("/tick/", sent).status_code == 403
