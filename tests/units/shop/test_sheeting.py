from __future__ import annotations

from collections.abc import Callable
from uuid import uuid4

import pytest
from django.test import Client

from gageline.shop.cut_already import plates_done
from gageline.shop.engine import job_of
from gageline.shop.jobs import current_text, import_job
from gageline.shop.models import Copy, Cut, Cutting, Job, Person, Search
from gageline.shop.plans import choose_plan, plan_of, planned_of, search, start_plan
from gageline.shop.racks import rack_text, save_rack
from gageline.shop.sawing import DROP, TAKE, card_name, card_of_cutting, heats_of, saw_lines, strike_saw
from gageline.shop.ticking import Answer, Stroke
from gageline.stock import SheetPlan

DONE = Answer("done", "")
JOB = b"""
[job]
name = "Plates"

[[piece]]
mark = "GP1"
quantity = 3
stock = "PL3/8x12"
grade = "A36"
length = "16"
"""
RACK = b"""
[saw]
kerf = "1/8"

[burner]
kerf = "1/8"

[[sheet]] # the offcut of an invented job
thickness = "3/8"
grade = "A36"
length = "4'"
width = "2'"
each = 10
limit = 2
heat = "7P031"
"""


def _plan(person: Person, job: Job) -> None:
    plan = start_plan(person, (job,), 5)
    search(plan.pk, lambda: False, lambda _words: None)
    plan.refresh_from_db()
    assert plan.state == Search.READY, plan.trouble
    choose_plan(person, plan)


@pytest.fixture
def plates(owner: Person) -> Job:
    save_rack(owner, RACK, None)
    return import_job(owner, JOB)


@pytest.fixture
def sheet(owner: Person, plates: Job) -> Cutting:
    _plan(owner, plates)
    return Cutting.objects.get()


def tick(person: Person, cutting: Cutting, task: str, note: str = "", *, done: bool = True) -> Answer:
    return strike_saw(person, Stroke(uuid4().hex, cutting.pk, card_name(cutting), task, done, note=note))


def test_a_sheet_stands_at_the_saw_with_its_plates_where_they_lie(owner: Person, sheet: Cutting) -> None:
    planned = planned_of(sheet)
    assert isinstance(planned, SheetPlan)
    card = card_of_cutting(sheet)
    assert card.length == "2'-0\" x 4'-0\""
    assert [line.mark for line in saw_lines(sheet, card)] == ["GP1"] * 3
    assert card.cuts[0].tape == '0" along, 0" up'
    assert {card.cuts[0].length} <= {"1'-4\" x 1'-0\"", "1'-0\" x 1'-4\""}
    assert tick(owner, sheet, "saw-2").text == "taking the sheet comes first"


def test_plates_are_cut_in_any_order_and_what_is_left_is_a_sheet_of_the_rack(
    owner: Person, plates: Job, sheet: Cutting
) -> None:
    assert tick(owner, sheet, TAKE) == DONE
    assert "limit = 1" in rack_text()[1]
    for task in ("saw-3", "saw-1", "saw-2"):
        assert tick(owner, sheet, task) == DONE
    assert tick(owner, sheet, "saw-3", done=False) == DONE
    assert "something was done after it" in tick(owner, sheet, TAKE, done=False).text
    assert tick(owner, sheet, "saw-3") == DONE
    copies = list(Copy.objects.filter(piece__job=plates))
    assert set(heats_of(copies).values()) == {"7P031"}
    assert plates.log.filter(what__endswith="from a sheet of PL3/8 A36, heat 7P031").count() == 4
    for wrong, words in (
        ("2", "is no rectangle"), ("2 x x", "what is left"), ("9' x 1", "larger than the sheet"),
        ("0 x 3", "is no rectangle"),
    ):  # fmt: skip
        assert words in tick(owner, sheet, DROP, wrong).text
    assert tick(owner, sheet, DROP, "2'-0 x 7 1/2") == DONE
    text = rack_text()[1]
    assert "# the offcut of an invented job" in text
    assert text.count("[[sheet]]") == 2
    assert 'width = "7 1/2\\""' in text or "width = '7 1/2\"'" in text
    sheet.refresh_from_db()
    assert sheet.done
    assert tick(owner, sheet, DROP, done=False) == DONE
    sheet.refresh_from_db()
    assert not sheet.done
    assert "limit = 0" in rack_text()[1]  # the rest is part of its sheet again


def test_a_rest_that_was_used_since_stays(owner: Person, sheet: Cutting) -> None:
    tick(owner, sheet, TAKE)
    tick(owner, sheet, "saw-1")
    assert tick(owner, sheet, DROP, "2' x 1'") == DONE
    save_rack(owner, RACK, None)  # the document without it
    assert "was changed or used since: it stays" in tick(owner, sheet, DROP, done=False).text


def test_what_was_cut_is_not_planned_again(owner: Person, plates: Job, sheet: Cutting) -> None:
    tick(owner, sheet, TAKE)
    tick(owner, sheet, "saw-2")
    tick(owner, sheet, DROP, "-")
    assert Cut.objects.get(task=DROP).mark == ""  # scrap
    built = [(plates.pk, job_of(current_text(plates)))]
    _plan(owner, plates)
    again = Cutting.objects.exclude(pk=sheet.pk).get()
    assert plates_done(built, plan_of(sheet.plan).question) == {"GP1": 1}
    assert len(planned_of(again).pieces) == 2
    for task in (TAKE, "saw-1", "saw-2"):
        assert tick(owner, again, task) == DONE
    assert "limit = 0" in rack_text()[1]
    assert tick(owner, again, "saw-1", done=False) == DONE
    assert tick(owner, again, "saw-2", done=False) == DONE
    assert tick(owner, again, TAKE, done=False) == DONE
    assert "limit = 1" in rack_text()[1]


def test_a_sheet_that_is_gone_is_not_taken(owner: Person, sheet: Cutting) -> None:
    save_rack(owner, RACK.replace(b"limit = 2", b"limit = 0"), None)
    assert tick(owner, sheet, TAKE).text == "such a sheet is not on the rack any more: plan again"
    assert Cut.objects.count() == 0


def test_the_card_of_a_sheet(owner: Person, sheet: Cutting, signed_in: Callable[[Person], Client]) -> None:
    client = signed_in(owner)
    assert "sheet 1" in client.get("/saw/").content.decode()
    page = client.get(f"/saw/{sheet.pk}/").content.decode()
    for words in (
        "Take the sheet",
        "7P031",
        "lower left corner of the sheet",
        'data-cut="3"',
        "length x width",
    ):
        assert words in page
    plan = client.get(f"/saw/plan/{sheet.plan_id}/").content.decode()
    assert "PL3/8 A36, sheet 1" in plan
    assert "3 x GP1" in plan


def test_the_card_of_a_sheared_sheet_has_its_cuts_in_order(
    owner: Person, signed_in: Callable[[Person], Client]
) -> None:
    save_rack(owner, RACK.replace(b'[burner]\nkerf = "1/8"', b'[burner]\ncut = "shear"'), None)
    _plan(owner, import_job(owner, JOB))
    sheet = Cutting.objects.get()
    lines = saw_lines(sheet, card_of_cutting(sheet))
    numbers = [cut.number for line in lines for cut in line.sheared]
    assert numbers == list(range(1, len(numbers) + 1))
    page = signed_in(owner).get(f"/saw/{sheet.pk}/").content.decode()
    assert page.count("Set the stop to <b") + page.count("Shave the edge") == len(numbers) > 0
    assert f">{numbers[-1]}</text>" in page  # the last cut has its number in the picture
    for task in (TAKE, "saw-1", "saw-2", "saw-3"):
        assert tick(owner, sheet, task) == DONE
    assert tick(owner, sheet, "saw-1", done=False) == DONE
