from __future__ import annotations

import pytest

from gageline.layout import Choice
from gageline.quality import Act, Outcome
from gageline.shop.engine import items_for, layout_of
from gageline.shop.jobs import current_text, save_piece
from gageline.shop.models import Copy, Job, LogEntry, Person, Reading, Stage
from gageline.shop.readings import (
    half_read,
    item_code,
    on_stick,
    readings_on,
    report_of,
    shop_records,
    stick_items,
    take,
    taken,
)
from gageline.shop.ticking import Answer, Stroke
from gageline.steel import Profile
from gageline.units import Length


@pytest.fixture
def copy(job: Job) -> Copy:
    found = Copy.objects.select_related("piece__job").get(piece__job=job, piece__mark="B1", number=1)
    Copy.objects.filter(pk=found.pk).update(stage=Stage.CHECK)
    found.refresh_from_db()
    return found


def _sent(copy: Copy, task: str, value: str, key: str = "") -> Stroke:
    return Stroke(key or f"key-{task}-{value}", copy.pk, copy.piece.card, task, note=value)


def _number(copy: Copy, name: str) -> str:
    items = items_for(current_text(copy.piece.job), copy.piece.mark)
    return item_code(next(n for n, item in enumerate(items, 1) if item.name == name))


def test_a_reading_is_judged_and_kept_once(owner: Person, copy: Copy) -> None:
    # AISC 303-22, 6.4.1: a beam up to 30 ft may be 1/16 in off its length
    sent = _sent(copy, _number(copy, "overall"), "9'-6 1/32", "once")
    assert take(owner, sent) == Answer("done", "good")
    assert take(owner, sent) == Answer("done", "good")
    assert Reading.objects.get().value == "9'-6 1/32\""
    assert LogEntry.objects.filter(what="read overall 9'-6 1/32\" on B1 (1 of 2)").count() == 1


def test_a_reading_that_cannot_be_is_refused_and_not_kept(owner: Person, copy: Copy) -> None:
    answer = take(owner, _sent(copy, _number(copy, "overall"), "1'"))
    assert answer.state == "conflict"
    assert answer.text == (
        '"overall" of piece B1 is 1\'-0", more than 2\'-4 1/2" off the 9\'-6" that is wanted: '
        "check the reading, and its unit"
    )
    assert not Reading.objects.exists()
    assert report_of(copy).outcome is Outcome.NOT_READ


def test_readings_that_no_longer_make_sense_tell_nothing_of_the_shop(owner: Person, copy: Copy) -> None:
    take(owner, _sent(copy, _number(copy, "overall"), "9'-6 1/32"))
    kept = Reading.objects.get()
    wrong = Reading(
        copy=copy, card=kept.card, place="check", name=kept.name, value="1in", by="Flo", at=kept.at
    )
    wrong.save()
    assert shop_records() == {}


def test_what_is_out_is_told_with_its_remedy(owner: Person, copy: Copy) -> None:
    long = take(owner, _sent(copy, _number(copy, "overall"), "9'-6 1/2"))
    assert long.text.startswith("rework: cut it back")
    assert report_of(copy).outcome is Outcome.REWORK
    short = take(owner, _sent(copy, _number(copy, "overall"), "9'-5 1/2"))
    assert short.text.startswith("ask the engineer: shim it")
    assert report_of(copy).outcome is Outcome.ASK
    take(owner, _sent(copy, _number(copy, "overall"), ""))
    assert report_of(copy).outcome is Outcome.NOT_READ
    assert Reading.objects.count() == 3


@pytest.mark.parametrize(
    ("task", "value", "words"),
    [
        ("read-1", "no length", "no length"),
        ("read-999", "1'", "has no such line"),
        ("read-x", "1'", "has no such line"),
        ("stick-width", "1'", "no such reading of a stick"),
        ("stick-left-long", "sideways", "none of top or bottom"),
    ],
)
def test_what_cannot_be_read_is_refused_with_the_reason(
    task: str, value: str, words: str, owner: Person, copy: Copy
) -> None:
    answer = take(owner, _sent(copy, task, value))
    assert answer.state == "conflict"
    assert words in answer.text
    assert not Reading.objects.exists()


def test_a_piece_that_is_not_there_or_not_ready_is_not_read(owner: Person, job: Job, copy: Copy) -> None:
    assert "taken out" in take(owner, Stroke("k-1", 10**9, "x", "read-1", note="1'")).text
    old = Stroke("k-2", copy.pk, "old", "read-1", note="1'")
    assert "drawing of B1 was changed" in take(owner, old).text
    Copy.objects.filter(pk=copy.pk).update(stage=Stage.FIT)
    assert "not fitted yet" in take(owner, _sent(copy, "read-1", "1'", "k-3")).text
    Copy.objects.filter(pk=copy.pk).update(stage=Stage.GONE)
    assert "sent off already" in take(owner, _sent(copy, "read-1", "1'", "k-4")).text
    assert job.pieces.exists()


def test_readings_of_an_old_drawing_count_no_more(owner: Person, job: Job, copy: Copy) -> None:
    take(owner, _sent(copy, "read-1", "9'-6"))
    assert set(taken(copy, "check")) == {"overall"}
    table = {"mark": "B1", "quantity": 2, "stock": "W12x26", "length": "9'-7"}
    save_piece(owner, job, table, "B1", 1)
    fresh = Copy.objects.select_related("piece__job").get(pk=copy.pk)
    assert taken(fresh, "check") == {}


def test_a_stick_that_is_long_is_trimmed_and_its_readings_say_so(owner: Person, copy: Copy) -> None:
    assert on_stick(copy) is None
    take(owner, _sent(copy, "stick-length", "9'-8"))
    found = on_stick(copy)
    assert found is not None
    assert found.decision.chosen.way.choice is Choice.TRIM
    assert found.layout.stick.length == Length.from_inches(116)


def test_a_short_stick_out_of_square_moves_the_readings(owner: Person, copy: Copy) -> None:
    take(owner, _sent(copy, "stick-length", "9'-5 15/16"))
    take(owner, _sent(copy, "stick-left-gap", "1/8"))
    take(owner, _sent(copy, "stick-left-long", "bottom"))
    found = on_stick(copy)
    assert found is not None
    gap = found.layout.stick.left.web_gap
    assert gap is not None
    assert (str(gap.long), gap.gap.inches) == ("bottom", 0.125)
    steps = layout_of(current_text(copy.piece.job), "B1").main.steps
    lines = [line for step in steps for line in readings_on(step, found)]
    assert len(lines) == sum(len(step.readings) for step in steps)
    changed = [line for line in lines if line.drawn]
    assert {line.drawn for line in changed} <= {reading.text for step in steps for reading in step.readings}
    assert all(line.why for line in changed)
    assert readings_on(None, found) == ()


def test_camber_depth_and_web_are_read_at_the_bench_too(owner: Person, copy: Copy) -> None:
    for task, value in (
        ("camber", "3/4"), ("left-depth", "12 3/8"), ("web-off", "1/8"), ("web-toward", "far"),
        ("right-gap", "0"),
    ):  # fmt: skip
        assert take(owner, _sent(copy, f"stick-{task}", value)).state == "done"
    assert half_read(copy) == ("Camber: a string along the edge stands off in the middle by",)
    found = on_stick(copy)
    assert found is not None
    assert found.layout.stick.camber is None  # nobody said whether it is up or down
    take(owner, _sent(copy, "stick-camber-way", "down"))
    assert half_read(copy) == ()
    found = on_stick(copy)
    assert found is not None
    stick = found.layout.stick
    # a beam is laid with its camber up: what was read of the stick is turned over with it
    assert stick.camber == Length.from_inches(0.75)
    assert stick.web_off is not None
    assert abs(stick.web_off) == Length.from_inches(0.125)
    ends = (stick.left, stick.right)
    assert [end.depth for end in ends if end.depth] == [Length.from_inches(12.375)]
    (gap,) = (end.web_gap for end in ends if end.web_gap)
    assert gap is not None
    assert gap.gap == Length.from_inches(0)  # square: it has no side
    names = [one.name for one in stick_items(Profile.BOX)]
    assert "camber" in names
    assert "web-off" not in names


def test_a_reading_of_steel_as_drawn_changes_nothing(copy: Copy) -> None:
    steps = layout_of(current_text(copy.piece.job), "B1").main.steps
    assert [line.text for step in steps for line in readings_on(step, None)] == [
        reading.text for step in steps for reading in step.readings
    ]


def test_the_shop_learns_its_own_spread(owner: Person, copy: Copy) -> None:
    assert shop_records() == {}
    take(owner, _sent(copy, _number(copy, "left end square"), "1/16"))
    records = shop_records()
    assert len(records[Act.SQUARE]) == 1
    # the gap over the depth that the square was held to: AISC Manual, table 1-1, W12x26 is 12.2 in deep
    assert records[Act.SQUARE][0] == pytest.approx(1 / 16 / 12.2, rel=0.01)
