"""The example of docs/received-steel.md, worked out there by hand, through the shop."""

from __future__ import annotations

import json
import sys
from importlib.resources import files
from typing import Any

import pytest

from gageline.cli import main
from gageline.errors import ValueProblem
from gageline.shop.jobs import current_text, import_job
from gageline.shop.models import Copy, Job, Person, Stick
from gageline.shop.readings import on_stick
from gageline.shop.receiving import (
    card_pdf,
    judge,
    judgement_rows,
    read_table,
    stick_odds,
    told_odds,
    way_rows,
    wrong_readings,
)
from gageline.shop.sticks import MEASURED, WAY, assign, save_part, save_stick
from gageline.units import Length, System

JOB = b"""
[job]
name = "A stick that came short"

[[piece]]
mark = "B1"
stock = "W12x26"
length = "18'-7 1/4"

[[piece.angles]]
end = "both"
sides = "near"
stock = "L4x3-1/2x5/16"
rows = 2
projection = "1/2"
"""
READ: dict[str, Any] = {
    "units": "ft-in",
    "length": "18'-6 7/8",
    "left": {
        "top_near": "-1/4",
        "top_far": "-1/4",
        "bottom_near": "0",
        "bottom_far": "0",
        "depth": "12.325in",
    },
    "right": {"top_near": "0", "top_far": "0", "bottom_near": "0", "bottom_far": "0", "depth": "12.325in"},
    "camber": "1/2",
    "camber_way": "up",
}


@pytest.fixture
def stick(owner: Person) -> Stick:
    table = {"mark": "R1", "stock": "W12x26", "length": "18'-7 1/4", "heat": "7K2214"}
    made = save_stick(owner, None, table, 0, System.FT_IN)
    assert isinstance(made, Stick)
    return made


@pytest.fixture
def copy(owner: Person) -> Copy:
    import_job(owner, JOB)
    return Copy.objects.select_related("piece__job").get()


def _measured(owner: Person, stick: Stick) -> Stick:
    stick.refresh_from_db()
    saved = save_part(owner, stick, MEASURED, READ, stick.current)
    assert isinstance(saved, Stick)
    return saved


def test_the_verdicts_are_those_of_the_worked_example(owner: Person, stick: Stick) -> None:
    rows = {row[0]: row for row in judgement_rows(judge(_measured(owner, stick)))}
    assert rows["length"][4] == "within"
    assert rows["left end out of square"][4] == 'out by 0.059"'  # 1/4 - 12.2/64, docs/received-steel.md
    assert rows["left end depth"][4] == "within"
    assert rows["camber"][4] == 'out by 0.267"'  # 1/2 - 223.25/960, the same page
    assert "ASTM A6" in rows["camber"][5]


def test_the_ways_are_those_of_the_worked_example(owner: Person, stick: Stick, copy: Copy) -> None:
    assign(owner, stick, copy)
    judged = judge(_measured(owner, stick))
    rows = {row[0]: row for row in way_rows(judged)}
    assert rows["trim square"][2] == "no"
    assert rows["as it is"][1:3] == ("as it is (taken) (advised)", "ask first")
    assert rows["as it is"][3:] == ('0" to 1/4"', '3/8"')
    assert rows["hold the right end"][2:4] == ("no", '3/8" to 5/8"')
    assert rows["split the difference"][3] == '3/16" to 7/16"'
    assert judged.usable is not None
    assert "can be made: as it is" in judged.usable.message


def test_the_way_that_was_chosen_is_the_one_laid_out(owner: Person, stick: Stick, copy: Copy) -> None:
    assign(owner, stick, copy)
    row = _measured(owner, stick)
    on = on_stick(copy)
    assert on is not None
    assert not [one for one in on.layout.changed if one.why.startswith("length split")]
    save_part(owner, row, WAY, {"way": "split the difference"}, row.current)
    on = on_stick(copy)  # what the bench card shows
    assert on is not None
    split = [one for one in on.layout.changed if one.why.startswith("length split")]
    assert split
    assert card_pdf(Stick.objects.select_related("copy__piece__job").get(), {}).startswith(b"%PDF")


def test_a_bench_card_stays_as_drawn_until_the_stick_is_measured(
    owner: Person, stick: Stick, copy: Copy
) -> None:
    assert on_stick(copy) is None
    assign(owner, stick, copy)
    assert on_stick(copy) is None
    stick.refresh_from_db()
    judged = judge(stick)
    assert not judged.measured
    assert judged.on is not None


def test_a_card_wants_a_piece_and_the_piece_its_job(owner: Person, stick: Stick, copy: Copy) -> None:
    with pytest.raises(ValueProblem, match="stick R1 is for no piece yet"):
        card_pdf(stick, {})
    assign(owner, stick, copy)
    copy.piece.active = False
    copy.piece.save()
    with pytest.raises(ValueProblem, match="B1 was taken out of its job"):
        judge(Stick.objects.select_related("copy__piece__job").get())


def test_a_misread_stick_is_refused_in_words_all_at_once(owner: Person, stick: Stick, copy: Copy) -> None:
    table = {"left": {"depth": "4"}, "right": {"top_width": "12 1/4"}, "length": "18'-6 7/8"}
    wrong = wrong_readings(table, System.FT_IN, stick)
    assert [one.path for one in wrong] == ["stick → left → depth", "stick → right → top_width"]
    assert wrong[0].message.startswith('R1 left end depth 4" is more than')
    assert wrong[1].message.startswith("R1 right end top width 1'-0 1/4\" is more than")
    bent = wrong_readings({"web_off": "5", "camber": "20'"}, System.FT_IN, stick)
    assert [one.path for one in bent] == ["stick → web_off", "stick → camber"]
    assert wrong_readings(table, System.FT_IN) == ()  # of no known section
    # kept before readings were looked at
    save_part(owner, stick, MEASURED, {**table, "units": "ft-in"}, stick.current)
    with pytest.raises(ValueProblem, match=r"R1 left end depth(.|\n)*R1 right end top width"):
        judge(Stick.objects.get())
    assign(owner, stick, copy)
    with pytest.raises(ValueProblem, match=r"B1 left end depth(.|\n)*B1 right end top width"):
        judge(Stick.objects.select_related("copy__piece__job").get())
    with pytest.raises(ValueProblem, match="B1 left end depth"):
        on_stick(copy)


def test_readings_that_need_one_another_are_asked_for() -> None:
    wrong = wrong_readings({"left": {"web_gap": "1/8"}, "steel_temperature": 60}, System.FT_IN)
    assert len(wrong) == 2
    assert wrong_readings({"length": "20'"}, System.FT_IN) == ()
    assert (
        read_table({"camber": 10}, System.MM).camber == read_table({"camber": "10 mm"}, System.FT_IN).camber
    )


def test_the_odds_are_those_that_the_command_tells(
    owner: Person, framed: Job, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A column's cap plate and a girder: without the frame, what their holes meet would not be known."""
    file = files("gageline") / "demo" / "mezzanine-frame.toml"
    for mark in ("P1", "G1"):
        monkeypatch.setattr(sys, "argv", ["gageline", "odds", str(file), "--piece", mark, "--json"])
        with pytest.raises(SystemExit):
            main()
        known = json.loads(capsys.readouterr().out)[mark]
        told = told_odds(current_text(framed), mark, {})
        assert told.whole.value == known["whole"]["value"]
        assert [one.name for one in told.joints] == [one["name"] for one in known["joints"]]
        assert list(told.left_out) == known["left_out"]
    copy = Copy.objects.select_related("piece__job").get(piece__job=framed, piece__mark="P1", number=1)
    piece = copy.piece
    made = save_stick(owner, None, {"mark": "R9", "stock": piece.stock, "length": "20'"}, 0, System.FT_IN)
    assert isinstance(made, Stick)
    assign(owner, made, copy)
    made = Stick.objects.select_related("copy__piece__job").get(pk=made.pk)
    assert stick_odds(made, {}).whole == told_odds(current_text(framed), "P1", {}).whole


def test_a_stick_for_a_piece_is_judged_with_the_tape_of_its_job(owner: Person, stick: Stick) -> None:
    import_job(owner, JOB + b'[practice]\ntape = "1/8"\n')
    assign(owner, stick, Copy.objects.select_related("piece__job").get())
    assert judge(_measured(owner, stick)).receipt.tape == Length.from_inches(1) / 8
