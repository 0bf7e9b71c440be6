from __future__ import annotations

from collections import Counter
from importlib.resources import files
from uuid import uuid4

import pytest

from gageline.errors import ValueProblem
from gageline.sheets import drop_marks
from gageline.shop.jobs import import_job
from gageline.shop.models import Copy, Cut, Cutting, Job, Person, Search, Stick, Where
from gageline.shop.plans import choose_plan, plan_of, search, start_plan, trouble_of
from gageline.shop.racks import save_rack
from gageline.shop.roles import Role
from gageline.shop.sawing import DROP, TAKE, card_name, card_of_cutting, heats_of, saw_lines, strike_saw
from gageline.shop.sticks import save_stick
from gageline.shop.ticking import Answer, Stroke
from gageline.units import Length, System

RACK = b"""
[saw]
kerf = "1/8"
start_trim = "1/2"
grip = "4"
keep = "3'-0"
drop_percent = 50

[[buy]]
stock = "W12x26"
lengths = "40'"
per_pound = 0.9

[[buy]]
stock = "HSS6x6x3/8"
lengths = "20'"
per_pound = 1.1

[[buy]]
stock = "L4x3-1/2x5/16"
lengths = "20'"
per_pound = 0.95

[[held]]
mark = "R1"
stock = "W12x26"
length = "24'"
value = 100
heat = "7K2214"
certificate = true
"""


def _plan(person: Person, job: Job) -> None:
    plan = start_plan(person, (job,), 5)
    search(plan.pk, lambda: False, lambda _words: None)
    plan.refresh_from_db()
    choose_plan(person, plan)


@pytest.fixture
def beams(owner: Person, job: Job) -> Cutting:
    save_rack(owner, RACK, None)
    _plan(owner, job)
    return Cutting.objects.get(steel__startswith="W12X26")


def tick(person: Person, cutting: Cutting, task: str, note: str = "", *, done: bool = True) -> Answer:
    return strike_saw(person, Stroke(uuid4().hex, cutting.pk, card_name(cutting), task, done, note=note))


def test_a_stick_is_cut_to_the_end_and_its_drop_is_in_the_yard(
    owner: Person, job: Job, beams: Cutting
) -> None:
    assert [line.mark for line in saw_lines(beams, card_of_cutting(beams))] == ["B1", "B1"]
    for task in (TAKE, "saw-1", "saw-2", DROP):
        assert tick(owner, beams, task) == Answer("done", "")
    beams.refresh_from_db()
    assert beams.done
    assert Stick.objects.get(mark="R1").where == Where.CUT
    drop = beams.drop
    assert drop is not None
    # 24' less 1/2" of trim, 2 x 9'-6" and 2 x 1/8" of kerf is 4'-11 1/4"
    assert (drop.mark, drop.length, drop.heat, drop.where) == (
        drop_marks(plan_of(beams.plan))[beams.steel, beams.number], "4'-11 1/4\"", "7K2214", Where.YARD,
    )  # fmt: skip
    copies = list(Copy.objects.filter(piece__job=job, piece__mark="B1"))
    assert heats_of(copies) == {copy.pk: "7K2214" for copy in copies}
    assert job.log.filter(what="cut B1 (2 of 2) from R1, heat 7K2214", piece__mark="B1").exists()


def test_cuts_are_made_in_their_order_and_taken_back_from_the_last(owner: Person, beams: Cutting) -> None:
    assert tick(owner, beams, "saw-1").text == "taking the stick comes first"
    assert "nothing was cut from it yet" in tick(owner, beams, DROP).text
    tick(owner, beams, TAKE)
    assert tick(owner, beams, "saw-2").text == "cut 1, B1, comes first"
    tick(owner, beams, "saw-1")
    assert tick(owner, beams, "saw-1") == Answer("done", "ticked already")
    tick(owner, beams, "saw-2")
    assert "something was done after it" in tick(owner, beams, "saw-1", done=False).text
    for task in ("saw-2", "saw-1", TAKE):
        assert tick(owner, beams, task, done=False) == Answer("done", "")
    assert Cut.objects.count() == 0
    assert Stick.objects.get(mark="R1").where == Where.YARD
    assert tick(owner, beams, "saw-9").text == "this stick has no such cut: open its card again"


def test_the_same_tick_sent_again_does_nothing(owner: Person, beams: Cutting) -> None:
    stroke = Stroke("the same key", beams.pk, card_name(beams), TAKE)
    assert strike_saw(owner, stroke) == strike_saw(owner, stroke) == Answer("done", "")
    assert Cut.objects.count() == 1


def test_only_who_ticked_takes_it_back_or_the_office(people: dict[Role, Person], beams: Cutting) -> None:
    tick(people[Role.OFFICE], beams, TAKE)
    fitter = people[Role.SHOP]
    refused = tick(fitter, beams, TAKE, done=False).text
    assert refused == "ticked by office person, who takes it back or asks the office"
    assert tick(fitter, beams, TAKE).text == "ticked already by office person"
    assert tick(people[Role.OWNER], beams, TAKE, done=False) == Answer("done", "")


def test_a_bought_stick_is_taken_by_its_heat_number(owner: Person, job: Job, beams: Cutting) -> None:
    posts = Cutting.objects.get(steel__startswith="HSS6X6X3/8")
    assert "no heat number was given" in tick(owner, posts, TAKE).text
    assert "at most 80 plain signs" in tick(owner, posts, TAKE, "x" * 81).text
    assert tick(owner, posts, TAKE, " 5521 ") == Answer("done", "")
    posts.refresh_from_db()
    assert (posts.heat, posts.stick) == ("5521", None)
    tick(owner, posts, "saw-1")
    tick(owner, posts, DROP)
    posts.refresh_from_db()
    assert posts.drop is not None
    assert posts.drop.heat == "5521"
    copy = Copy.objects.get(piece__job=job, piece__mark="P1")
    assert heats_of([copy]) == {copy.pk: "5521"}
    assert not beams.done


def test_a_bought_stick_that_is_in_the_yard_is_taken_by_its_mark(owner: Person, beams: Cutting) -> None:
    posts = Cutting.objects.get(steel__startswith="HSS6X6X3/8")
    table = {"mark": "N7", "stock": "HSS6x6x3/8", "length": "20'", "heat": "=1+1"}
    save_stick(owner, None, table, 0, System.FT_IN)
    tick(owner, posts, TAKE, "N7")
    posts.refresh_from_db()
    assert (posts.heat, Stick.objects.get(mark="N7").where) == ("=1+1", Where.SAW)
    tick(owner, posts, TAKE, done=False)
    posts.refresh_from_db()
    assert (posts.heat, posts.stick, Stick.objects.get(mark="N7").where) == ("", None, Where.YARD)
    assert not beams.done


def test_a_stick_ended_early_gives_its_rest_and_the_others_are_planned_anew(
    owner: Person, job: Job, beams: Cutting
) -> None:
    tick(owner, beams, TAKE)
    tick(owner, beams, "saw-1")
    with pytest.raises(ValueProblem, match="half cut: W12X26 A992 stick 1"):
        start_plan(owner, (job,), 5)
    assert tick(owner, beams, DROP) == Answer("done", "")
    beams.refresh_from_db()
    assert beams.drop is not None
    # 24' less 1/2" of trim, 9'-6" and one kerf is 14'-5 3/8"
    assert beams.drop.length == "14'-5 3/8\""
    assert "the rest of this stick was put back already" in tick(owner, beams, "saw-2").text
    _plan(owner, job)
    again = Cutting.objects.get(steel__startswith="W12X26", plan__state=Search.CHOSEN)
    assert again.stick == beams.drop
    (section,) = [s for s in plan_of(again.plan).cuts.sections if str(s.steel) == again.steel]
    assert [[p.mark for p in stick.pieces] for stick in section.sticks] == [["B1"], ["B1"]]
    assert [stick.done for stick in section.sticks] == [True, False]
    assert tick(owner, beams, "saw-2").text == "this cutting plan was put aside: open the saw again"


def test_the_rest_comes_back_to_its_stick_while_nobody_used_it(owner: Person, beams: Cutting) -> None:
    for task in (TAKE, "saw-1", "saw-2", DROP):
        tick(owner, beams, task)
    assert tick(owner, beams, DROP, done=False) == Answer("done", "")
    beams.refresh_from_db()
    assert (beams.done, beams.drop) == (False, None)
    assert Stick.objects.get(mark="R1").where == Where.SAW
    tick(owner, beams, DROP)
    beams.refresh_from_db()
    drop = beams.drop
    assert drop is not None
    save_stick(owner, drop, {"mark": drop.mark, "stock": "W12x26", "length": "4'"}, 1, System.FT_IN)
    assert (
        f"{drop.mark}, the rest of it, was changed or used since" in tick(owner, beams, DROP, done=False).text
    )


def test_a_piece_whose_drawing_changed_is_cut_again(owner: Person, job: Job, beams: Cutting) -> None:
    for task in (TAKE, "saw-1", "saw-2", DROP):
        tick(owner, beams, task)
    _plan(owner, job)
    assert not Cutting.objects.filter(steel__startswith="W12X26", plan__state=Search.CHOSEN).exists()
    Cut.objects.filter(mark="B1").update(blank="another")
    _plan(owner, job)
    assert Cutting.objects.filter(steel__startswith="W12X26", plan__state=Search.CHOSEN).count() == 1


def test_a_plan_made_before_a_cut_is_not_cut_by_after_it(owner: Person, job: Job, beams: Cutting) -> None:
    plan = start_plan(owner, (job,), 5)
    search(plan.pk, lambda: False, lambda _words: None)
    plan.refresh_from_db()
    tick(owner, beams, TAKE)
    assert trouble_of(plan) == "something was cut since it was planned: plan again"


def test_every_stick_of_the_demo_can_be_cut_to_its_end(owner: Person, demo: Job) -> None:
    save_rack(owner, (files("gageline") / "demo" / "rack.toml").read_bytes(), None)
    _plan(owner, demo)
    cuttings = list(Cutting.objects.all())
    assert len(cuttings) > 5
    for cutting in cuttings:
        tasks = [TAKE, *(line.task for line in saw_lines(cutting, card_of_cutting(cutting)))]
        for task in tasks:
            assert tick(owner, cutting, task, "H1") == Answer("done", "")
        assert tick(owner, cutting, DROP, "-") == Answer("done", "")
    assert not Cutting.objects.filter(done=False).exists()
    assert card_of_cutting(cuttings[0]).cuts
    copies = list(Copy.objects.filter(piece__job=demo))
    sawn = {cut.copy_id for cut in Cut.objects.exclude(copy=None)}
    assert sawn == {copy.pk for copy in copies}
    assert set(heats_of(copies)) == sawn


def test_a_metric_yard_cuts_and_keeps_millimetres(owner: Person) -> None:
    job = import_job(
        owner,
        b'[job]\nname="Canopy"\nunits="mm"\n[[piece]]\nmark="M1"\nquantity=2\nstock="IPE 300"\nlength=2500\n'
        b'[[piece]]\nmark="F1"\nstock="PL 10x100"\nlength=400\n',
    )
    save_rack(
        owner,
        b'[rack]\nunits="mm"\n[saw]\nkerf=3\nstart_trim=10\nkeep=500\n[[held]]\nmark="R1"\nstock="IPE 300"\n'
        b'length=6000\nheat="30418"\n[[held]]\nmark="R2"\nstock="PL 10x100"\nlength=3000\nheat="F"\n',
        None,
    )
    _plan(owner, job)
    for cutting in Cutting.objects.all():
        for task in (TAKE, *(line.task for line in saw_lines(cutting, card_of_cutting(cutting))), DROP):
            assert tick(owner, cutting, task) == Answer("done", "")
    drops = {drop.stock: drop.length for drop in Stick.objects.filter(where=Where.YARD)}
    # 6000 - 10 - 2 x 2500 - 2 x 3 = 984; 3000 - 10 - 400 - 3 = 2587
    assert {stock.split(" ")[0]: length for stock, length in drops.items()} == {
        "IPE": "984 mm", "PL": "2587 mm",
    }  # fmt: skip
    _plan(owner, job)
    assert not Cutting.objects.filter(plan__state=Search.CHOSEN).exists()


def test_planned_anew_after_every_cut_all_is_cut_once_and_no_steel_comes_from_nowhere(owner: Person) -> None:
    job = import_job(
        owner,
        b'[job]\nname="Braces"\n[[piece]]\nmark="D1"\nquantity=4\nstock="HSS6x6x3/8"\nlength="5\'-3"\n'
        b'left={bevel="12 in 12"}\nright={bevel="12 in 12", long="bottom"}\n'
        b'[[piece]]\nmark="D2"\nquantity=3\nstock="HSS6x6x3/8"\nlength="3\'-1 5/16"\n'
        b'left={bevel="5 in 12"}\n',
    )
    save_rack(owner, RACK.replace(b"3'-0", b"1'-0"), None)
    for _ in range(8):
        _plan(owner, job)
        waiting = Cutting.objects.filter(plan__state=Search.CHOSEN)
        if not waiting:
            break
        for cutting in waiting:
            for task in (TAKE, "saw-1", DROP):  # one cut, and the rest goes back at once
                assert tick(owner, cutting, task, "5521") == Answer("done", "")
    cut = Counter(Cut.objects.exclude(mark="").values_list("mark", flat=True))
    assert cut == {"D1": 4, "D2": 3}
    assert Cut.objects.exclude(mark="").values("copy").distinct().count() == 7
    # what was bought, less what is in pieces and in the yard, is kerfs, trims and grip: 20' for each stick
    bought = Cutting.objects.filter(stick=None).count() * Length.from_inches(240).ticks
    there = sum(Stick.objects.filter(where=Where.YARD).exclude(mark="R1").values_list("ticks", flat=True))
    pieces = Length.from_inches(4 * 63 + 3 * 37.3125).ticks
    assert 0 <= bought - there - pieces <= Length.from_inches(7 * (0.5 + 2 * 0.125 + 6)).ticks
