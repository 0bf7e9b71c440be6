from __future__ import annotations

from pathlib import Path

import pytest
from django.db import IntegrityError, transaction

from gageline.shop.keeping import backup, restore
from gageline.shop.models import (
    Cut,
    Cutting,
    Job,
    Person,
    Plan,
    RackText,
    Search,
    Stick,
    StickRevision,
    Where,
)
from gageline.shop.plans import choose_plan, plan_of, search, start_plan
from gageline.shop.racks import save_rack
from gageline.shop.sawing import TAKE, card_name, strike_saw
from gageline.shop.sticks import held_tables, save_stick
from gageline.shop.ticking import Answer, Stroke
from gageline.units import System

RACK = b"""
[saw]
kerf = "1/8"
[[buy]]
stock = "HSS6x6x3/8"
lengths = "20'"
each = 200
[[buy]]
stock = "L4x3-1/2x5/16"
lengths = "20'"
each = 50
[[held]]
mark = "R1"
stock = "W12x26"
length = "24'"
heat = "7K2214"
"""


def test_a_mark_stands_once_among_the_sticks_that_are_there(owner: Person) -> None:
    stick = save_stick(owner, None, {"mark": "R1", "stock": "W12x26", "length": "20'"}, 0, System.FT_IN)
    assert isinstance(stick, Stick)
    twin = {"mark": "R1", "stock": "W12X26", "grade": "A992", "length": "20'", "ticks": 1}
    with pytest.raises(IntegrityError), transaction.atomic():
        Stick.objects.create(**twin)
    Stick.objects.create(where=Where.CUT, **twin)
    assert str(stick) == "R1"
    assert Where(stick.where).label == "in the yard"


def test_a_task_is_ticked_once_on_a_stick(owner: Person) -> None:
    plan = Plan.objects.create(asked="{}", seconds=1, by=owner.name)
    assert (plan.state, Search(plan.state).label) == (Search.RUNNING, "being planned")
    cutting = Cutting.objects.create(plan=plan, steel="W12X26 A992", number=1)
    Cut.objects.create(cutting=cutting, task="saw-1", by=owner.name, at=plan.at)
    with pytest.raises(IntegrityError), transaction.atomic():
        Cut.objects.create(cutting=cutting, task="saw-1", by=owner.name, at=plan.at)
    with pytest.raises(IntegrityError), transaction.atomic():
        Cutting.objects.create(plan=plan, steel="W12X26 A992", number=1)


def test_yard_and_saw_are_in_the_backup_and_go_on_where_they_were(
    owner: Person, job: Job, tmp_path: Path
) -> None:
    save_rack(owner, RACK, None)
    plan = start_plan(owner, (job,), 5)
    search(plan.pk, lambda: False, lambda _words: None)
    plan.refresh_from_db()
    choose_plan(owner, plan)
    cutting = Cutting.objects.get(stick__mark="R1")
    strike_saw(owner, Stroke("before the backup", cutting.pk, card_name(cutting), TAKE))
    backup(tmp_path / "shop.backup")
    found, revisions = plan_of(plan), StickRevision.objects.count()
    strike_saw(owner, Stroke("after the backup", cutting.pk, card_name(cutting), "saw-1"))
    restore(tmp_path / "shop.backup")
    assert (Cut.objects.count(), RackText.objects.count()) == (1, 1)
    assert StickRevision.objects.count() == revisions
    assert plan_of(Plan.objects.get()) == found
    assert held_tables() == []  # it is at the saw
    person = Person.objects.get()
    again = strike_saw(person, Stroke("once more", cutting.pk, card_name(cutting), "saw-1"))
    assert again == Answer("done", "")
