from __future__ import annotations

from datetime import timedelta

import pytest
from django.utils import timezone

from gageline.shop import jobs
from gageline.shop.engine import card_of
from gageline.shop.models import Copy, Job, LogEntry, Person, Sent, Stage, Tick
from gageline.shop.roles import Role
from gageline.shop.ticking import Stroke, send_off, strike


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


def test_only_who_ticked_takes_it_back(people: dict[Role, Person], copy: Copy) -> None:
    stroke = Stroke("tick-1-key", copy.pk, copy.piece.card, "bench-1")
    strike(people[Role.SHOP], stroke)
    back = Stroke("back-1-key", copy.pk, copy.piece.card, "bench-1", done=False)
    assert strike(people[Role.OFFICE], back).text.startswith("ticked by shop person")
    again = Stroke("tick-2-key", copy.pk, copy.piece.card, "bench-1")
    assert strike(people[Role.OFFICE], again).text == "ticked already by shop person"
    mine = Stroke("back-2-key", copy.pk, copy.piece.card, "bench-1", done=False)
    assert strike(people[Role.SHOP], mine).state == "done"
    assert Tick.objects.count() == 0


def test_taking_a_tick_back_brings_the_piece_back(owner: Person, copy: Copy) -> None:
    _all(owner, copy, "bench")
    strike(owner, Stroke("undo-key-1", copy.pk, copy.piece.card, "bench-1", done=False))
    copy.refresh_from_db()
    assert copy.stage == Stage.BENCH


def test_a_tick_is_never_from_the_future(owner: Person, copy: Copy) -> None:
    ahead = timezone.now() + timedelta(days=2)
    strike(owner, Stroke("ahead-key", copy.pk, copy.piece.card, "bench-1", at=ahead))
    assert Tick.objects.get().at <= timezone.now()
