from __future__ import annotations

from collections import Counter

import pytest
from django.utils import timezone

from gageline.shop.cut_already import CUT, MADE, blank_key, rack_of_now, sources_among
from gageline.shop.engine import job_of
from gageline.shop.jobs import current_text
from gageline.shop.models import Copy, Cut, Cutting, Job, Person, Plan, Stage, Stick, Where
from gageline.shop.racks import save_rack
from gageline.shop.sticks import assign, save_stick
from gageline.shop.ticking import send_off
from gageline.stock import Question, Rack, ask, read_rack
from gageline.units import Length, System


@pytest.fixture
def rack(owner: Person) -> None:
    save_rack(owner, b'[saw]\nkerf = "1/8"\nstart_trim = "1/2"\ngrip = "4"\n', None)


def now(job: Job) -> Rack:
    """The rack that the job would be planned with now."""
    built = job_of(current_text(job))

    def question(text: str) -> Question:
        return ask((built,), read_rack(text))

    rack = read_rack(rack_of_now([(job.pk, built)], question))
    ask((built,), rack)  # and the planner takes it
    return rack


def counted(rack: Rack) -> Counter[str]:
    return Counter(mark for done in rack.done for mark in done.pieces)


@pytest.mark.usefixtures("rack")
def test_nothing_is_cut_at_the_start(job: Job) -> None:
    assert now(job).done == ()
    sources = sources_among([(job.pk, job_of(current_text(job)))])
    assert {(source.job, source.mark) for source in sources.values()} >= {(job.pk, "B1"), (job.pk, "P1")}


@pytest.mark.usefixtures("rack")
def test_what_the_saw_ticked_is_cut_and_takes_its_length_with_kerfs_and_trims(
    owner: Person, job: Job
) -> None:
    blank = sources_among([(job.pk, job_of(current_text(job)))])["B1"].blank
    plan = Plan.objects.create(asked="{}", seconds=1, by=owner.name)
    cutting = Cutting.objects.create(plan=plan, steel="W12X26 A992", number=1, heat="H1")
    for number in (1, 2, 3):  # one more than are wanted
        Cut.objects.create(
            cutting=cutting, task=f"saw-{number}", job=job, mark="B1", blank=blank_key(blank), by=owner.name,
            at=timezone.now(),
        )  # fmt: skip
    rack = now(job)
    assert [(done.stick, done.pieces) for done in rack.done] == [(f"{CUT}{cutting.pk}", ("B1", "B1"))]
    # 1/2 of trim, 4 of grip, and twice 9'-6" with a kerf at each end
    assert rack.sticks[0].length == Length.from_inches(4.5 + 2 * (114 + 0.25))
    assert rack.sticks[0].heat == "H1"
    Cut.objects.update(blank="of another drawing")
    assert now(job).done == ()


@pytest.mark.usefixtures("rack")
def test_pieces_that_went_on_are_made_and_their_fittings_once_they_are_fitted(job: Job) -> None:
    Copy.objects.filter(piece__mark="B1", number=1).update(stage=Stage.FIT)
    assert counted(now(job)) == {"B1": 1}
    Copy.objects.filter(piece__mark="B1", number=1).update(stage=Stage.GATE)
    Copy.objects.filter(piece__mark="P1").update(stage=Stage.GONE)
    found = counted(now(job))
    assert (found["B1"], found["P1"]) == (1, 1)
    angles = sum(count for mark, count in found.items() if mark not in {"B1", "P1"})
    assert angles == 2  # both angles of the one beam that is done
    assert all(done.stick.startswith(MADE) for done in now(job).done)


@pytest.mark.usefixtures("rack")
def test_a_stick_that_was_given_to_a_piece_stays_counted_when_it_has_left(owner: Person, job: Job) -> None:
    copy = Copy.objects.select_related("piece__job").get(piece__mark="B1", number=1)
    table = {"mark": "Y1", "stock": "W12x26", "length": "9'-6", "heat": "H1"}
    stick = save_stick(owner, None, table, 0, System.FT_IN)
    assert isinstance(stick, Stick)
    assign(owner, stick, copy)
    assert [(done.stick, done.pieces) for done in now(job).done] == [("Y1", ("B1",))]
    Copy.objects.filter(pk=copy.pk).update(stage=Stage.GATE)
    assert send_off(owner, copy).state == "done"
    stick.refresh_from_db()
    assert stick.where == Where.CUT
    assert counted(now(job))["B1"] == 1
