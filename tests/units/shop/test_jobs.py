from __future__ import annotations

import pytest

from gageline.errors import GagelineError, ValueProblem
from gageline.job import JobProblems, read_document
from gageline.shop import jobs
from gageline.shop.engine import document_of
from gageline.shop.jobs import Conflict
from gageline.shop.models import Copy, Job, LogEntry, Person, Stage
from gageline.units import System


def _table(job: Job, mark: str = "B1", **changes: object) -> dict[str, object]:
    table = jobs.piece_table(document_of(jobs.current_text(job)), mark)
    assert table is not None
    return {**table, **changes}


def _fresh(job: Job) -> Job:
    return Job.objects.get(pk=job.pk)


def test_a_new_job_is_empty_and_takes_a_piece(owner: Person) -> None:
    job = jobs.make_job(owner, "Porch", "7", System.MM)
    assert jobs.save_piece(owner, job, {"mark": "B1", "stock": "IPE 300", "length": "6000"}, None, 1) == 2
    document = document_of(jobs.current_text(_fresh(job)))
    assert [piece.mark for piece in document.pieces] == ["B1"]
    assert document.frame is None
    with pytest.raises(JobProblems, match="name"):
        jobs.make_job(owner, "", "", System.MM)


def test_import_and_export_keep_the_meaning(demo: Job) -> None:
    from_file = jobs.current_text(demo)
    assert read_document(from_file) == document_of(from_file)
    assert demo.pieces.count() == len(document_of(from_file).pieces)


def test_what_is_no_job_is_refused_and_leaves_nothing(owner: Person) -> None:
    for content, words in (
        (b"\xff\xfe", "not UTF-8"),
        (b"[job", "not TOML"),
        (b'[job]\nname = "x"', "piece"),
    ):
        with pytest.raises(GagelineError, match=words):
            jobs.import_job(owner, content)
    assert Job.objects.count() == 0


@pytest.mark.usefixtures("people")
def test_two_people_who_save_the_same_piece_see_both(owner: Person, job: Job) -> None:
    other = Person.objects.get(role="office")
    assert jobs.save_piece(owner, job, _table(job, length="9'-7"), "B1", 1) == 2
    found = jobs.save_piece(other, job, _table(_fresh(job), length="9'-8"), "B1", 1)
    assert isinstance(found, Conflict)
    lengths = [(table or {})["length"] for table in (found.base, found.theirs, found.mine)]
    assert lengths == ["9'-6\"", "9'-7\"", "9'-8"]
    assert (found.by, found.number, _fresh(job).current) == ("Ada Example", 2, 2)
    assert jobs.save_piece(other, job, found.mine, "B1", found.number, force=True) == 3
    assert job.revisions.count() == 3


def test_pieces_that_another_did_not_touch_are_no_conflict(owner: Person, job: Job) -> None:
    jobs.save_piece(owner, job, _table(job, length="9'-7"), "B1", 1)
    assert jobs.save_piece(owner, job, _table(_fresh(job), "P1", length="8'-1"), "P1", 1) == 3
    assert {row.length for row in job.pieces.all()} == {"9'-7\"", "8'-1\""}


def test_a_changed_drawing_brings_the_piece_back_to_the_bench(owner: Person, job: Job) -> None:
    Copy.objects.filter(piece__mark="B1", number=1).update(stage=Stage.FIT)
    Copy.objects.filter(piece__mark="B1", number=2).update(stage=Stage.GONE)
    jobs.save_piece(owner, job, _table(job, finish="paint"), "B1", 1)
    assert Copy.objects.get(piece__mark="B1", number=1).stage == Stage.FIT
    jobs.save_piece(owner, _fresh(job), _table(_fresh(job), length="9'-7"), "B1", 2)
    assert Copy.objects.get(piece__mark="B1", number=1).stage == Stage.BENCH
    assert Copy.objects.get(piece__mark="B1", number=2).stage == Stage.GONE
    assert LogEntry.objects.filter(what__contains="changed after 1 were sent off").exists()


def test_fewer_and_more_of_a_piece(owner: Person, job: Job) -> None:
    jobs.save_piece(owner, job, _table(job, quantity=1), "B1", 1)
    assert Copy.objects.filter(piece__mark="B1", active=True).count() == 1
    jobs.save_piece(owner, _fresh(job), _table(_fresh(job), quantity=3), "B1", 2)
    assert Copy.objects.filter(piece__mark="B1", active=True).count() == 3


def test_taking_out_and_bringing_back(owner: Person, job: Job) -> None:
    row = job.pieces.get(mark="P1")
    jobs.remove_piece(owner, job, "P1")
    assert not job.pieces.get(mark="P1").active
    jobs.take_back_piece(owner, _fresh(job), "P1", 1)
    again = job.pieces.get(mark="P1")
    assert (again.pk, again.active) == (row.pk, True)
    jobs.remove_piece(owner, _fresh(job), "P1")
    jobs.remove_piece(owner, _fresh(job), "B1")
    assert not job.pieces.filter(active=True).exists()
    jobs.take_back(owner, _fresh(job), 1)
    assert jobs.current_text(_fresh(job)) == job.revisions.get(number=1).text
    with pytest.raises(ValueProblem, match="revision 4 has no piece P1"):
        jobs.take_back_piece(owner, _fresh(job), "P1", 4)


def test_a_piece_keeps_its_history_under_a_new_mark(owner: Person, job: Job) -> None:
    row = job.pieces.get(mark="B1")
    jobs.save_piece(owner, job, {**_table(job), "mark": "B7"}, "B1", 1)
    assert job.pieces.get(mark="B7").pk == row.pk
    assert (
        LogEntry.objects.filter(what="added B7, before B1").count()
        + LogEntry.objects.filter(what="changed B7, before B1").count()
        == 1
    )


def test_facts_are_saved_and_two_people_see_both(owner: Person, job: Job) -> None:
    assert jobs.save_facts(owner, job, {"job": {"name": "Renamed"}, "practice": {"tape": "1/8"}}, 1) == 2
    assert _fresh(job).name == "Renamed"
    found = jobs.save_facts(owner, _fresh(job), {"job": {"name": "Other"}, "practice": {}}, 1)
    assert isinstance(found, Conflict)
    with pytest.raises(JobProblems, match="tape"):
        jobs.save_facts(owner, _fresh(job), {"job": {"name": "x"}, "practice": {"tape": "-1"}}, 2)


def test_pieces_are_weighed(job: Job) -> None:
    # AISC Manual, table 1-12: HSS6x6x3/8 weighs 27.48 lb/ft; by its area and 490 lb/ft3 a little less
    weight = job.pieces.get(mark="P1").weight
    assert weight is not None
    assert weight == pytest.approx(8 * 27.48, rel=0.07)


def test_a_length_reads_as_on_the_sheets(owner: Person) -> None:
    text = (
        b'[job]\nname = "Mixed"\n[[piece]]\nmark = "B1"\nstock = "W12x26"\nlength = "9\'-6 5/64"\n'
        b'[[piece]]\nmark = "M1"\nstock = "IPE 300"\nlength = "2500 mm"\n'
    )
    made = jobs.import_job(owner, text)
    lengths = dict(made.pieces.values_list("mark", "length"))
    assert lengths == {
        "B1": "9'-6 1/16\"",
        "M1": "2500 mm",
    }  # to the tape; what was drawn in mm is read in mm
