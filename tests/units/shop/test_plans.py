from __future__ import annotations

import json
from datetime import timedelta

import pytest
from django.utils import timezone

from gageline.errors import GagelineError, ValueProblem
from gageline.shop.cut_already import blank_key
from gageline.shop.jobs import import_job, save_piece
from gageline.shop.models import Copy, Cutting, Job, Person, Plan, Search, Stick
from gageline.shop.plans import (
    choose_plan,
    jobs_of,
    plan_of,
    planned_of,
    search,
    sources_of,
    start_plan,
    stop_plan,
    trouble_of,
)
from gageline.shop.racks import save_rack
from gageline.shop.sticks import assign, remove_stick, save_stick
from gageline.stock import Held, StickPlan
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
length = "22'"
value = 100
heat = "7K2214"
certificate = true

[[wish]]
pieces = "G9"
certificate = true
"""


def never() -> bool:
    return False


def quiet(_words: str) -> None:
    return None


@pytest.fixture
def rack(owner: Person) -> None:
    save_rack(owner, RACK, None)


def planned(person: Person, *jobs: Job) -> Plan:
    plan = start_plan(person, jobs, 5)
    search(plan.pk, never, quiet)
    plan.refresh_from_db()
    return plan


@pytest.mark.usefixtures("rack")
def test_a_plan_is_found_kept_and_read_again_as_it_was(owner: Person, job: Job) -> None:
    plan = planned(owner, job)
    assert (plan.state, plan.trouble, trouble_of(plan)) == (Search.READY, "", "")
    found = plan_of(plan)
    assert (found.cents, found.bound) == (plan.cents, plan.bound)
    cut = [p.mark for section in found.cuts.sections for stick in section.sticks for p in stick.pieces]
    assert cut.count("B1") == 2
    # two of 9'-6" with two kerfs and the trim fit the 22' of the rack, which is worth less than 40' bought
    (beams,) = [one for one in found.cuts.sections if one.steel.section == "W12X26"]
    assert [stick.stock.mark for stick in beams.sticks if isinstance(stick.stock, Held)] == ["R1"]
    # 22' - 1/2" trim - 2 x 9'-6" - 2 x 1/8" is 35 1/4", and less than 3' is not kept
    assert beams.sticks[0].drop == Length.from_inches(264 - 0.5 - 228 - 0.25)
    assert not beams.sticks[0].kept


@pytest.mark.usefixtures("rack")
def test_a_wish_for_a_piece_of_another_job_stands_in_nobodys_way(owner: Person, job: Job) -> None:
    assert planned(owner, job).state == Search.READY


@pytest.mark.usefixtures("rack")
def test_what_stands_against_any_plan_is_said_at_once(owner: Person, job: Job, demo: Job) -> None:
    with pytest.raises(ValueProblem, match="0 jobs are chosen"):
        start_plan(owner, (), 5)
    empty = import_job(owner, b'[job]\nname = "Empty"\n[frame]\n')
    with pytest.raises(ValueProblem, match="Empty has no pieces yet"):
        start_plan(owner, (job, empty), 5)
    plan = planned(owner, demo)  # the small rack has none of what the demo is made of
    assert plan.state == Search.FAILED
    assert "W16X26" in plan.trouble
    assert trouble_of(plan) == "it is no plan"
    with pytest.raises(ValueProblem, match="has no sticks yet"):
        plan_of(plan)


@pytest.mark.usefixtures("rack")
def test_a_chosen_plan_has_a_cutting_for_every_stick_and_takes_the_place_of_the_last(
    owner: Person, job: Job
) -> None:
    first, second = planned(owner, job), planned(owner, job)
    choose_plan(owner, first)
    sticks = [stick for section in plan_of(first).cuts.sections for stick in section.sticks]
    assert Cutting.objects.count() == len(sticks)
    row = Cutting.objects.get(stick__mark="R1")
    stick = planned_of(row)
    assert isinstance(stick, StickPlan)
    assert (row.heat, stick.stock.heat) == ("7K2214", "7K2214")
    choose_plan(owner, second)
    first.refresh_from_db()
    assert first.state == Search.PAST
    assert set(Cutting.objects.values_list("plan_id", flat=True)) == {second.pk}
    with pytest.raises(ValueProblem, match="it is being cut"):
        choose_plan(owner, second)


@pytest.mark.usefixtures("rack")
def test_a_plan_that_was_overtaken_is_not_cut_by(owner: Person, job: Job) -> None:
    plan = planned(owner, job)
    stick = Stick.objects.get()
    remove_stick(owner, stick)
    with pytest.raises(ValueProblem, match="no longer in the yard: R1: plan again"):
        choose_plan(owner, plan)
    again = planned(owner, job)
    table = {"mark": "P1", "stock": "HSS6x6x3/8", "length": "8'-1"}
    save_piece(owner, job, table, "P1", job.current)
    assert trouble_of(again) == "a job was changed since it was planned: plan again"


@pytest.mark.usefixtures("rack")
def test_a_stick_that_is_given_to_a_piece_is_nobody_elses(owner: Person, job: Job) -> None:
    copy = Copy.objects.select_related("piece__job").filter(piece__mark="B1")[0]
    assign(owner, Stick.objects.get(), copy)
    plan = planned(owner, job)
    (beams,) = [one for one in plan_of(plan).cuts.sections if one.steel.section == "W12X26"]
    done, bought = beams.sticks
    assert done.done
    assert [placed.mark for placed in done.pieces] == ["B1"]
    assert [placed.mark for placed in bought.pieces] == ["B1"]
    assert not isinstance(bought.stock, Held)


@pytest.mark.usefixtures("rack")
def test_marks_of_a_plan_lead_back_to_their_jobs(owner: Person, job: Job) -> None:
    other = import_job(owner, b'[job]\nname="Other"\n[[piece]]\nmark="B1"\nstock="W12x26"\nlength="5\'"\n')
    plan = planned(owner, job, other)
    assert [one.facts.name for one in jobs_of(plan.asked)] == ["Invented porch", "Other"]
    sources = sources_of(plan)
    mine, theirs = (sources[mark] for mark in sorted(m for m in sources if m.endswith("B1")))
    assert ((mine.job, mine.mark), (theirs.job, theirs.mark)) == ((job.pk, "B1"), (other.pk, "B1"))
    assert blank_key(mine.blank) != blank_key(theirs.blank)


@pytest.mark.usefixtures("rack")
def test_a_search_that_is_stopped_keeps_its_best(owner: Person, job: Job) -> None:
    plan = start_plan(owner, (job,), 5)
    stop_plan(owner, plan)
    assert Plan.objects.get().stop
    words: list[str] = []
    search(plan.pk, lambda: bool(words), words.append)
    plan.refresh_from_db()
    assert plan.state in {Search.READY, Search.FAILED}
    assert words
    assert "none below" in words[0]


@pytest.mark.usefixtures("rack")
def test_a_search_without_a_word_for_a_minute_is_broken_off(owner: Person, job: Job) -> None:
    plan = start_plan(owner, (job,), 5)
    assert trouble_of(plan) == "it is being planned"
    plan.seen = timezone.now() - timedelta(seconds=90)
    assert trouble_of(plan) == "the search broke off: plan again"


@pytest.mark.usefixtures("rack")
def test_the_question_is_kept_whole(owner: Person, job: Job) -> None:
    plan = start_plan(owner, (job,), 5)
    asked = json.loads(plan.asked)
    assert asked["jobs"] == [[job.pk, 1]]
    assert '"R1"' in asked["rack"]
    save_stick(owner, None, {"mark": "R2", "stock": "W12x26", "length": "30'"}, 0, System.FT_IN)
    assert "R2" not in Plan.objects.get().asked


def test_without_a_rack_the_plan_says_what_to_list(owner: Person, job: Job) -> None:
    plan = planned(owner, job)
    assert plan.state == Search.FAILED
    assert plan.trouble
    assert issubclass(ValueProblem, GagelineError)


@pytest.mark.usefixtures("rack")
def test_one_search_at_a_time(owner: Person, job: Job) -> None:
    first = start_plan(owner, (job,), 5)
    with pytest.raises(
        ValueProblem, match=f"cutting plan {first.pk} is being planned: wait for it, or stop it"
    ):
        start_plan(owner, (job,), 5)
    Plan.objects.update(seen=timezone.now() - timedelta(seconds=90))
    start_plan(owner, (job,), 5)
    assert Plan.objects.count() == 2
