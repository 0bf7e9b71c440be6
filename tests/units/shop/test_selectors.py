from __future__ import annotations

from collections.abc import Callable

import pytest
from django.test import Client

from gageline.shop.engine import card_of, layout_of
from gageline.shop.jobs import current_text
from gageline.shop.models import Copy, Job, Person, Stage
from gageline.shop.selectors import (
    beyond,
    jobs_with_counts,
    marks_table,
    onward,
    piece_lines,
    task_lines,
    waiting,
)
from gageline.shop.ticking import Stroke, strike


def test_the_list_of_a_job_says_where_its_pieces_are(job: Job) -> None:
    Copy.objects.filter(piece__mark="B1", number=2).update(stage=Stage.GATE)
    states = {line.piece.mark: line.states for line in piece_lines(job)}
    assert states == {"B1": "1 of 2 Bench, 1 of 2 Gate", "P1": "Bench"}
    (listed,) = jobs_with_counts()
    assert (listed.all, listed.ready) == (3, 1)  # type: ignore[attr-defined] # added by the query


def test_what_waits_says_how_far_it_is(owner: Person, job: Job) -> None:
    copy = Copy.objects.select_related("piece").get(piece__mark="B1", number=1)
    strike(owner, Stroke("waiting-key", copy.pk, copy.piece.card, "bench-1"))
    card = card_of(current_text(job), "B1")
    first, second, post = waiting(Stage.BENCH)
    assert [one.copy.number for one in (first, second, post)] == [1, 2, 1]
    assert (first.copy.pk, first.done, first.of) == (copy.pk, 1, len(card.bench))
    assert [line.tick is not None for line in task_lines(copy, card, "bench")][:2] == [True, False]


def test_alike_pieces_that_are_not_begun_have_one_line(owner: Person, job: Job) -> None:
    copies = list(Copy.objects.select_related("piece").filter(piece__mark="B1"))
    beams, post = waiting(Stage.BENCH)
    assert (beams.copy.pk, beams.more, post.more) == (copies[0].pk, 1, 0)
    strike(owner, Stroke("begun-key", copies[1].pk, copies[1].piece.card, "bench-1"))
    assert [(one.copy.number, one.more) for one in waiting(Stage.BENCH)] == [(1, 0), (2, 0), (1, 0)]
    assert job.pieces.count() == 2


def test_what_a_page_does_not_show_is_counted(
    owner: Person, job: Job, monkeypatch: pytest.MonkeyPatch, signed_in: Callable[[Person], Client]
) -> None:
    assert beyond(Stage.BENCH) == 0
    monkeypatch.setattr("gageline.shop.selectors.SHOWN", 2)
    assert beyond(Stage.BENCH) == Copy.objects.filter(piece__job=job).count() - 2 == 1
    assert "1 more wait behind these." in signed_in(owner).get("/bench/").content.decode()


def test_from_a_card_one_goes_on_to_the_next_piece_that_waits(job: Job) -> None:
    first, second, post = Copy.objects.filter(piece__job=job).select_related("piece")
    assert onward(first, "bench") == {
        "onward": f"/bench/{second.pk}/", "onward_words": "B1 (2 of 2), W12X26, 9'-6\"", "back_to": "/bench/",
    }  # fmt: skip
    assert onward(post, "bench")["onward"] == f"/bench/{first.pk}/"  # the last one goes round to the first
    Copy.objects.filter(pk=second.pk).update(stage=Stage.FIT)
    assert onward(first, "bench")["onward"] == f"/bench/{post.pk}/"
    assert onward(second, "fit") == {"onward": "", "onward_words": "", "back_to": "/fit/"}


def test_the_table_of_marks_has_every_reading(job: Job) -> None:
    steps = layout_of(current_text(job), "B1").main.steps
    rows = marks_table(steps)
    assert [row[0] for row in rows] == [str(step.number) for step in steps if step.readings]
    assert all(row[4] for row in rows)
