from __future__ import annotations

from datetime import timedelta

import pytest
from django.utils import timezone

from gageline.shop import jobs
from gageline.shop.engine import card_of
from gageline.shop.models import Copy, Job, LogEntry, Person, Sent, Stage, Stick, Tick, Where
from gageline.shop.roles import Role
from gageline.shop.signing import add_person
from gageline.shop.sticks import assign, save_stick
from gageline.shop.ticking import Stroke, send_off, strike, take_in
from gageline.units import System


@pytest.fixture
def copy(job: Job) -> Copy:
    return Copy.objects.select_related("piece").get(piece__job=job, piece__mark="B1", number=1)


def _all(person: Person, copy: Copy, place: str) -> None:
    copy.refresh_from_db()
    for task in card_of(jobs.current_text(copy.piece.job), "B1").tasks(place):
        answer = strike(person, Stroke(f"key-{copy.pk}-{task.code}", copy.pk, copy.piece.card, task.code))
        assert (answer.state, answer.text) == ("done", "")


def test_a_piece_travels_from_bench_to_gate(owner: Person, copy: Copy) -> None:
    _all(owner, copy, "bench")
    copy.refresh_from_db()
    assert copy.stage == Stage.FIT
    _all(owner, copy, "fit")
    copy.refresh_from_db()
    assert copy.stage == Stage.CHECK
    _all(owner, copy, "check")
    copy.refresh_from_db()
    assert copy.stage == Stage.GATE
    assert send_off(owner, copy).state == "done"
    assert send_off(owner, copy).text == "it is not at the Gate but: gone"
    late = Stroke("late-key", copy.pk, copy.piece.card, "bench-1", done=False)
    assert "was sent off already" in strike(owner, late).text


def test_a_piece_that_did_not_leave_after_all_is_at_the_gate_with_its_stick(
    owner: Person, copy: Copy
) -> None:
    table = {"mark": "R1", "stock": copy.piece.stock, "length": "20'"}
    stick = save_stick(owner, None, table, 0, System.FT_IN)
    assert isinstance(stick, Stick)
    assign(owner, stick, copy)
    assert take_in(owner, copy).text == "it is not gone but at: Bench"
    Copy.objects.filter(pk=copy.pk).update(stage=Stage.GATE)
    send_off(owner, copy)
    stick.refresh_from_db()
    assert stick.where == Where.CUT
    assert take_in(owner, copy).state == "done"
    stick.refresh_from_db()
    copy.refresh_from_db()
    assert (copy.stage, stick.where) == (Stage.GATE, Where.YARD)
    assert LogEntry.objects.filter(what="B1 (1 of 2) is back at the Gate").exists()


def test_a_tick_sent_again_counts_once_and_is_answered_the_same(owner: Person, copy: Copy) -> None:
    stroke = Stroke("the same key", copy.pk, copy.piece.card, "bench-1")
    assert strike(owner, stroke) == strike(owner, stroke)
    assert (Tick.objects.count(), Sent.objects.count()) == (1, 1)
    assert LogEntry.objects.filter(what__startswith="ticked 1.").count() == 1


def test_an_old_card_is_a_conflict_that_is_kept(owner: Person, copy: Copy) -> None:
    old = Stroke("from before", copy.pk, "0" * 16, "bench-1")
    assert strike(owner, old).state == "conflict"
    assert "the drawing of B1 was changed" in strike(owner, old).text
    assert LogEntry.objects.filter(what__contains="old card").count() == 1


@pytest.mark.parametrize(
    ("task", "words"), [("bench-99", "no such step"), ("../../x", "no such step"), ("fit-14", "still waits")]
)
def test_what_the_card_has_not_is_refused(owner: Person, copy: Copy, task: str, words: str) -> None:
    card = card_of(jobs.current_text(copy.piece.job), "B1")
    code = card.fit[0].code if task == "fit-14" else task
    answer = strike(owner, Stroke("some key 1", copy.pk, copy.piece.card, code))
    assert answer.state == "conflict"
    assert words in answer.text
    assert Tick.objects.count() == 0


def test_a_piece_that_was_taken_out_is_said(owner: Person, copy: Copy) -> None:
    jobs.remove_piece(owner, copy.piece.job, "B1")
    assert "taken out" in strike(owner, Stroke("some key 2", copy.pk, copy.piece.card, "bench-1")).text
    assert "taken out" in strike(owner, Stroke("some key 3", 10**9, copy.piece.card, "bench-1")).text


def _stroke(copy: Copy, key: str, *, done: bool = True) -> Stroke:
    return Stroke(key, copy.pk, copy.piece.card, "bench-1", done=done)


def test_only_who_ticked_takes_it_back_or_the_office(people: dict[Role, Person], copy: Copy) -> None:
    other = add_person("Ada Example", "another fitter", Role.SHOP, "4712")
    strike(people[Role.SHOP], _stroke(copy, "tick-1-key"))
    refused = strike(other, _stroke(copy, "back-1-key", done=False))
    assert refused.text == "ticked by shop person, who takes it back or asks the office"
    assert strike(other, _stroke(copy, "tick-2-key")).text == "ticked already by shop person"
    assert strike(people[Role.SHOP], _stroke(copy, "back-2-key", done=False)).state == "done"
    strike(people[Role.SHOP], _stroke(copy, "tick-3-key"))
    assert strike(people[Role.OFFICE], _stroke(copy, "back-3-key", done=False)).state == "done"
    assert Tick.objects.count() == 0
    assert LogEntry.objects.filter(
        by="office person", what__contains=", ticked by shop person, on B1"
    ).exists()


def test_taking_a_tick_back_brings_the_piece_back(owner: Person, copy: Copy) -> None:
    _all(owner, copy, "bench")
    strike(owner, Stroke("undo-key-1", copy.pk, copy.piece.card, "bench-1", done=False))
    copy.refresh_from_db()
    assert copy.stage == Stage.BENCH


def test_a_tick_is_never_from_the_future(owner: Person, copy: Copy) -> None:
    ahead = timezone.now() + timedelta(days=2)
    strike(owner, Stroke("ahead-key", copy.pk, copy.piece.card, "bench-1", at=ahead))
    assert Tick.objects.get().at <= timezone.now()
