from __future__ import annotations

from typing import Any

import pytest

from gageline.errors import GagelineError, ValueProblem
from gageline.job import JobProblems
from gageline.shop.jobs import Conflict
from gageline.shop.models import Copy, Job, LogEntry, Person, Stage, Stick, Where
from gageline.shop.sticks import (
    HELD,
    MEASURED,
    WAY,
    assign,
    free_mark,
    held_tables,
    part_of,
    read_held,
    remove_stick,
    save_part,
    save_stick,
    take_back_stick,
)
from gageline.units import Length, System

TABLE = {"mark": "R1", "stock": "W12x26", "length": "20'", "heat": "7K2214"}


def made(person: Person, changes: dict[str, Any] | None = None, system: System = System.FT_IN) -> Stick:
    stick = save_stick(person, None, TABLE | (changes or {}), 0, system)
    assert isinstance(stick, Stick)
    return stick


def test_a_stick_is_kept_with_its_steel_and_its_exact_length(owner: Person) -> None:
    stick = made(owner)
    assert (stick.stock, stick.grade, stick.length, stick.heat) == ("W12X26", "A992", "20'-0\"", "7K2214")
    assert stick.ticks == Length.from_inches(240).ticks
    assert LogEntry.objects.first() is not None
    assert LogEntry.objects.filter(what="added stick R1", by=owner.name).exists()


def test_bare_numbers_are_in_the_units_of_the_yard_and_are_kept_with_their_unit() -> None:
    held, kept = read_held({"mark": "R4", "stock": "IPE 300", "length": 6000}, System.MM)
    assert held.length == Length.from_mm(6000)
    assert kept["length"] == "6000 mm"
    again, _ = read_held(kept, System.FT_IN)
    assert again.length == held.length


def test_everything_that_is_wrong_is_said_at_once(owner: Person) -> None:
    with pytest.raises(JobProblems) as wrong:
        save_stick(owner, None, {"mark": "<b>", "stock": "W99x1", "length": "no"}, 0, System.FT_IN)
    assert {problem.path.split(" → ")[-1] for problem in wrong.value.problems} == {"mark", "stock", "length"}
    assert Stick.objects.count() == 0


def test_a_mark_stands_on_one_stick(owner: Person) -> None:
    first = made(owner)
    with pytest.raises(JobProblems, match='"R1" is on another stick'):
        made(owner)
    remove_stick(owner, first)
    made(owner)
    with pytest.raises(ValueProblem, match="R1 is on another stick by now"):
        take_back_stick(owner, first, 1, System.FT_IN)


def test_two_people_who_change_a_stick_are_both_shown(owner: Person) -> None:
    stick = made(owner)
    save_stick(owner, stick, TABLE | {"heat": "theirs"}, 1, System.FT_IN)
    found = save_stick(owner, stick, TABLE | {"heat": "mine"}, 1, System.FT_IN)
    assert isinstance(found, Conflict)
    assert (found.base, found.number) == ({**TABLE, "length": "20'-0\""}, 2)
    assert (found.theirs or {})["heat"] == "theirs"
    assert found.mine["heat"] == "mine"
    assert part_of(stick, HELD, 2)["heat"] == "theirs"
    saved = save_stick(owner, stick, TABLE | {"heat": "mine"}, found.number, System.FT_IN)
    assert isinstance(saved, Stick)
    assert saved.heat == "mine"


def test_measuring_and_changing_a_stick_do_not_get_into_each_others_way(owner: Person) -> None:
    stick = made(owner)
    save_stick(owner, stick, TABLE | {"heat": "another"}, 1, System.FT_IN)
    saved = save_part(owner, stick, MEASURED, {"length": "19'-11"}, 1)
    assert isinstance(saved, Stick)
    assert part_of(saved, HELD)["heat"] == "another"
    assert part_of(saved, MEASURED) == {"length": "19'-11"}


def test_new_readings_undo_the_way_that_was_chosen_for_the_old(owner: Person) -> None:
    stick = made(owner)
    save_part(owner, stick, WAY, {"way": "as it is"}, 1)
    stick.refresh_from_db()
    assert part_of(stick, WAY) == {"way": "as it is"}
    save_part(owner, stick, MEASURED, {"length": "19'-11"}, 2)
    stick.refresh_from_db()
    assert part_of(stick, WAY) == {}


def test_what_was_taken_out_comes_back_with_what_was_known_of_it(owner: Person) -> None:
    stick = made(owner)
    save_part(owner, stick, MEASURED, {"length": "19'-11"}, 1)
    remove_stick(owner, stick)
    assert held_tables() == []
    with pytest.raises(ValueProblem, match="R1 is taken out: only a stick in the yard"):
        remove_stick(owner, stick)
    take_back_stick(owner, stick, 2, System.FT_IN)
    stick.refresh_from_db()
    assert (stick.where, stick.current) == (Where.YARD, 4)
    assert part_of(stick, MEASURED) == {"length": "19'-11"}


def test_a_stick_is_for_one_piece_of_its_section(owner: Person, job: Job) -> None:
    copies = {f"{copy.piece.mark} {copy.number}": copy for copy in Copy.objects.select_related("piece__job")}
    first, second = made(owner), made(owner, {"mark": "R2"})
    assign(owner, first, copies["B1 1"])
    with pytest.raises(ValueProblem, match=r"B1 \(1 of 2\) has stick R1 already"):
        assign(owner, second, copies["B1 1"])
    with pytest.raises(ValueProblem, match=r"R2 is W12X26 and P1 \(1 of 1\) is HSS6X6X3/8"):
        assign(owner, second, copies["P1 1"])
    Copy.objects.filter(pk=copies["B1 2"].pk).update(stage=Stage.GONE)
    with pytest.raises(ValueProblem, match=r"B1 \(2 of 2\) is done or out of the job"):
        assign(owner, second, Copy.objects.get(pk=copies["B1 2"].pk))
    assign(owner, first, None)
    assert Stick.objects.get(pk=first.pk).copy is None
    assert job.log.filter(what="stick R1 is for no piece").exists()


def test_the_next_mark_is_on_no_stick(owner: Person) -> None:
    assert free_mark("D1") == "D1"
    made(owner, {"mark": "D1"})
    assert free_mark("D1", ["D2"]) == "D3"
    assert free_mark("R") == "R1"


def test_revisions_of_a_stick_cannot_be_lost_by_hand(owner: Person) -> None:
    stick = made(owner)
    entry = LogEntry.objects.get(what="added stick R1")
    entry.what = "nothing"
    with pytest.raises(GagelineError, match="never changed"):
        entry.save()
    assert stick.revisions.count() == 1
