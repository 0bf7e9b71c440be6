from __future__ import annotations

import json
import re
from collections.abc import Callable
from datetime import timedelta
from html import unescape
from importlib.resources import files

import pytest
from django.test import Client
from django.utils import timezone

from gageline.shop import saw
from gageline.shop.models import Copy, Cut, Cutting, Job, Person, Plan, Search, Stick
from gageline.shop.plans import plan_of, search
from gageline.shop.racks import save_rack
from gageline.shop.roles import Role
from gageline.units import feet_inches

HOSTILE = "<script>alert(1)</script>"
RACK = f"""
[saw]
kerf = "1/8"
start_trim = "1/2"
keep = "3'-0"

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
heat = "{HOSTILE}"
""".encode()


@pytest.fixture
def sawyer(
    people: dict[Role, Person], signed_in: Callable[[Person], Client], monkeypatch: pytest.MonkeyPatch
) -> Client:
    """The man at the saw; what he asks for is searched at once."""
    monkeypatch.setattr(saw, "launch", lambda pk: search(pk, lambda: False, lambda _words: None))
    save_rack(people[Role.OWNER], RACK, None)
    return signed_in(people[Role.SHOP])


@pytest.fixture
def cutting(sawyer: Client, job: Job) -> Cutting:
    sawyer.post("/saw/plan/", {"job": job.pk, "seconds": "10"})
    sawyer.post(f"/saw/plan/{Plan.objects.get().pk}/choose/")
    return Cutting.objects.select_related("plan").get(steel__startswith="W12X26")


def test_a_plan_is_asked_for_shown_printed_and_chosen(sawyer: Client, job: Job) -> None:
    assert "Nothing waits here: plan the cuts first" in sawyer.get("/saw/").content.decode()
    answer = sawyer.post("/saw/plan/", {"job": job.pk, "seconds": "10"})
    plan = Plan.objects.get()
    assert answer["Location"] == f"/saw/plan/{plan.pk}/"
    page = sawyer.get(f"/saw/plan/{plan.pk}/").content.decode()
    assert "proven: none costs less" in page
    assert "R1 of the yard" in page
    assert "2 x B1" in page
    assert page.count("<svg ") >= 3  # the beams, the post, the angles
    assert 'aria-label="W12X26 A992, stick 1"' in page
    came = re.search(r'href="(/yard/new/[^"]+)"', page)  # the post is to be bought
    assert came is not None
    form = sawyer.get(unescape(came[1])).content.decode()
    assert 'value="HSS6X6X3/8"' in form
    assert "20&#x27;-0&quot;" in form
    assert sawyer.get(f"/saw/plan/{plan.pk}/sheets.pdf").content.startswith(b"%PDF")
    assert sawyer.post(f"/saw/plan/{plan.pk}/choose/")["Location"] == "/saw/"
    page = sawyer.get("/saw/").content.decode()
    assert "2 to cut" in page
    assert "<html" not in sawyer.get("/saw/", headers={"HX-Request": "true"}).content.decode()
    assert sawyer.post(f"/saw/plan/{plan.pk}/choose/").status_code == 422


def test_sheets_are_ordered_beside_the_sticks(sawyer: Client, people: dict[Role, Person], demo: Job) -> None:
    save_rack(people[Role.OWNER], (files("gageline") / "demo" / "rack.toml").read_bytes(), None)
    sawyer.post("/saw/plan/", {"job": demo.pk, "seconds": "10"})
    row = Plan.objects.get()
    page = unescape(sawyer.get(f"/saw/plan/{row.pk}/").content.decode())
    ordered = [pair for plates in plan_of(row).plates for pair in plates.order()]
    assert ordered
    for sheet, count in ordered:
        size = f"{feet_inches(sheet.width)} x {feet_inches(sheet.length)}"
        line = f'<b class="num">{count}</b> {sheet.steel}, <span class="num">{size}</span></span></li>'
        assert line in page  # and no way into the yard, which has no sheets


def test_bound_and_best_are_shown_while_it_is_searched(
    sawyer: Client, job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(saw, "launch", lambda _pk: None)
    sawyer.post("/saw/plan/", {"job": job.pk, "seconds": "10"})
    plan = Plan.objects.get()
    Plan.objects.update(said="W12X26: best 12.00, none below 11.00, 3 s")
    page = sawyer.get(f"/saw/plan/{plan.pk}/", headers={"HX-Request": "true"}).content.decode()
    assert "none below 11.00" in page
    assert "<form" not in page  # the button stays where it is, and keeps the focus
    assert 'hx-trigger="every 1s"' in sawyer.get(f"/saw/plan/{plan.pk}/").content.decode()
    sawyer.post(f"/saw/plan/{plan.pk}/stop/")
    assert Plan.objects.get().stop
    assert "Stopping" in sawyer.get(f"/saw/plan/{plan.pk}/").content.decode()
    Plan.objects.update(seen=timezone.now() - timedelta(seconds=90))
    assert "the search broke off: plan again" in sawyer.get(f"/saw/plan/{plan.pk}/").content.decode()
    Plan.objects.update(state=Search.FAILED, trouble=f"two faults\n{HOSTILE}")
    page = sawyer.get(f"/saw/plan/{plan.pk}/").content.decode()
    assert page.count("<li>") >= 2
    ended = sawyer.get(f"/saw/plan/{plan.pk}/", headers={"HX-Request": "true"})
    assert ended["HX-Refresh"] == "true"
    assert HOSTILE not in page
    assert "every 1s" not in page


@pytest.mark.parametrize("seconds", ["", "0", "99999", "x", "-1", "²", "601"])
def test_what_is_no_number_of_seconds_is_refused(sawyer: Client, job: Job, seconds: str) -> None:
    assert sawyer.post("/saw/plan/", {"job": job.pk, "seconds": seconds}).status_code == 422
    assert sawyer.post("/saw/plan/", {"job": ["x", "²", "9" * 40], "seconds": "10"}).status_code == 422
    assert Plan.objects.count() == 0


def test_the_card_has_its_picture_its_stops_and_its_table(sawyer: Client, cutting: Cutting) -> None:
    page = sawyer.get(f"/saw/{cutting.pk}/").content.decode()
    assert page.count('class="step ') == 4
    assert re.findall(r'data-cut="(\d+)"', page) == ["1", "2"]  # its two beams
    assert '<svg xmlns="http://www.w3.org/2000/svg"' in page
    assert "9&#x27;-6" in page or "9'-6" in page
    assert HOSTILE not in page
    assert "&lt;script&gt;" in page
    assert 'name="note"' not in page  # its heat number is known
    posts = Cutting.objects.get(steel__startswith="HSS6X6")
    assert 'name="note"' in sawyer.get(f"/saw/{posts.pk}/").content.decode()


def test_ticks_of_the_saw_go_the_way_of_all_ticks(
    sawyer: Client, cutting: Cutting, people: dict[Role, Person]
) -> None:
    who, at = people[Role.SHOP].pk, timezone.now().isoformat()
    strokes = [
        {"key": f"{task}-{'k' * 10}", "who": who, "copy": cutting.pk, "card": f"saw-{cutting.plan_id}",
         "task": task, "done": True, "at": at, "note": ""}
        for task in ("saw-take", "saw-1", "saw-2", "saw-rest", "saw-2")
    ]  # fmt: skip
    for _ in range(2):
        answer = sawyer.post("/ticks/", json.dumps({"ticks": strokes}), "application/json")
        assert [one["state"] for one in answer.json()["answers"]] == ["done"] * 5
    assert Cut.objects.count() == 4
    assert Stick.objects.filter(heat=HOSTILE).count() == 2
    page = sawyer.get(f"/saw/{cutting.pk}/").content.decode()
    assert "It is in the yard as" in page
    assert HOSTILE not in page
    copy = Copy.objects.filter(piece__mark="B1")[0]
    assert "heat &lt;script&gt;" in sawyer.get(f"/piece/{copy.piece.pk}/").content.decode()


def test_a_browser_without_script_ticks_at_the_saw_too(sawyer: Client, cutting: Cutting) -> None:
    posts = Cutting.objects.get(steel__startswith="HSS6X6")
    sent = {"copy": posts.pk, "card": f"saw-{cutting.plan_id}", "task": "saw-take", "done": "1"}
    assert sawyer.post("/tick/", sent).status_code == 422
    answer = sawyer.post("/tick/", sent | {"note": "5521"})
    assert answer["Location"] == f"/saw/{posts.pk}/#saw-take"
    assert "5521" in sawyer.get(f"/saw/{posts.pk}/").content.decode()


def test_a_stick_of_a_plan_that_was_put_aside_is_not_cut(sawyer: Client, cutting: Cutting) -> None:
    Plan.objects.update(state=Search.PAST)
    assert sawyer.get(f"/saw/{cutting.pk}/").status_code == 422
    assert sawyer.get("/saw/").status_code == 200


def test_who_looks_has_nothing_to_press(
    people: dict[Role, Person], cutting: Cutting, signed_in: Callable[[Person], Client]
) -> None:
    looker = signed_in(people[Role.LOOK])
    for address in ("/saw/", f"/saw/{cutting.pk}/", f"/saw/plan/{cutting.plan_id}/"):
        page = looker.get(address).content.decode()
        assert page.count("<form") == 1  # signing out
