from __future__ import annotations

from importlib.resources import files

import pytest

from gageline.detail import Placed
from gageline.errors import ValueProblem
from gageline.job import JobProblems, read_document
from gageline.shop import frames
from gageline.shop.engine import document_of, full_of
from gageline.shop.jobs import Conflict, current_text, import_job, make_job
from gageline.shop.models import Copy, Job, LogEntry, Person, Stage
from gageline.units import System


def _fresh(job: Job) -> Job:
    return Job.objects.get(pk=job.pk)


def _text(job: Job) -> str:
    return current_text(_fresh(job))


def test_a_frame_comes_in_and_goes_out_with_its_meaning(framed: Job) -> None:
    given = (files("gageline") / "demo" / "mezzanine-frame.toml").read_text("utf8")
    text = current_text(framed)
    assert read_document(text) == read_document(given)
    detailed = full_of(text).detailed
    assert detailed is not None
    rows = {row.mark: row.quantity for row in framed.pieces.filter(active=True)}
    assert rows == {one.mark: one.quantity for one in detailed.assemblies}
    assert Copy.objects.filter(piece__job=framed, active=True).count() == len(detailed.placed)


def test_a_member_is_changed_and_only_its_piece_goes_back(owner: Person, framed: Job) -> None:
    Copy.objects.update(stage=Stage.FIT)
    before = current_text(framed)
    table = frames.entry_table(document_of(current_text(framed)), "member", "G3")
    assert table is not None
    table = {**table, "stock": "W21x68"}
    assert frames.save_entry(owner, framed, "member", table, "G3", 1) == 2
    assert frames.entry_table(document_of(current_text(_fresh(framed))), "member", "G3") == table
    back = set(Copy.objects.filter(stage=Stage.BENCH, active=True).values_list("piece__mark", flat=True))
    old, new = ({one.mark: one for one in full_of(text).job.assemblies} for text in (before, _text(framed)))
    assert back == {mark for mark, one in new.items() if old.get(mark) != one}
    assert "G3" in back
    assert "P1" not in back
    assert LogEntry.objects.filter(what="changed member G3").exists()


def test_a_member_is_added_and_taken_out(owner: Person, framed: Job) -> None:
    document = document_of(current_text(framed))
    new = frames.new_entry(document, "member")
    assert new["name"] not in {table["name"] for table in frames.frame_tables(document)["member"]}
    table = {**new, "stock": "W12x26", "from": {"point": "2/B"}, "to": {"point": "3/B"}, "top": "Mezzanine"}
    other = {**table, "from": {"on": "G4", "at": "9'-0"}, "to": {"point": "3/C"}}
    with pytest.raises(JobProblems, match=str(new["name"])):
        frames.save_entry(owner, framed, "member", other, None, 1)
    good = {**new, "stock": "W12x26", "from": {"on": "G3", "at": "5'-0"}, "to": {"on": "G1", "at": "5'-0"}}
    frames.save_entry(owner, framed, "member", good, None, 1)
    assert str(new["name"]) in {one.member for one in _placed(framed)}
    frames.remove_entry(owner, _fresh(framed), "member", str(new["name"]))
    assert str(new["name"]) not in {one.member for one in _placed(framed)}
    with pytest.raises(ValueProblem, match='the frame has no member "X9"'):
        frames.remove_entry(owner, _fresh(framed), "member", "X9")


def _placed(job: Job) -> tuple[Placed, ...]:
    detailed = full_of(current_text(_fresh(job))).detailed
    assert detailed is not None
    return detailed.placed


def test_what_something_stands_on_cannot_be_taken_out(owner: Person, framed: Job) -> None:
    with pytest.raises(JobProblems, match="G3"):
        frames.remove_entry(owner, framed, "member", "G3")
    assert _fresh(framed).current == 1


def test_two_people_who_change_the_same_member_see_both(owner: Person, framed: Job) -> None:
    table = frames.entry_table(document_of(current_text(framed)), "member", "G4")
    assert table is not None
    frames.save_entry(owner, framed, "member", {**table, "stock": "W21x68"}, "G4", 1)
    found = frames.save_entry(owner, framed, "member", {**table, "stock": "W21x55"}, "G4", 1)
    assert isinstance(found, Conflict)
    assert found.theirs is not None
    assert (found.theirs["stock"], found.mine["stock"], found.number) == ("W21x68", "W21x55", 2)
    assert frames.save_entry(owner, framed, "member", found.mine, "G4", 2, force=True) == 3


def test_a_frame_begins_with_its_grid(owner: Person) -> None:
    job = make_job(owner, "Porch", "", System.FT_IN)
    x, y = ({"names": names, "spacing": ["12'-0"]} for names in (["1", "2"], ["A", "B"]))
    grid = {"grid": {"x": x, "y": y}, "level": [{"name": "Floor", "elevation": "10'-0"}]}
    frames.save_entry(owner, job, frames.GRID, grid, None, 1)
    for name, at in (("P1", "1/A"), ("P2", "2/A")):
        column = {"name": name, "stock": "W8x31", "at": {"point": at}, "base": "0", "top": "Floor"}
        frames.save_entry(owner, _fresh(job), "column", column, None, 1)
    beam = {"name": "B1", "stock": "W12x26", "from": {"point": "1/A"}, "to": {"point": "2/A"}, "top": "Floor"}
    frames.save_entry(owner, _fresh(job), "member", beam, None, 1)
    assert {row.stock for row in job.pieces.filter(active=True)} == {"W8X31", "W12X26"}


def test_the_form_of_the_grid_leaves_out_columns_and_members(framed: Job) -> None:
    document = document_of(current_text(framed))
    table = frames.entry_table(document, frames.GRID, None)
    assert table is not None
    form = frames.entry_form(frames.GRID, table)
    names = {rows.name for rows in form.rows}
    assert names >= {"point", "level"}
    assert not names & {"column", "member"}
    assert {section.name for section in form.sections} == {"practice", "grid"}


def test_the_document_as_text(owner: Person, framed: Job) -> None:
    text = current_text(framed)
    assert frames.save_text(owner, framed, text, 1) == 1
    wrong = text.replace('"W21x62"', '"W21x999"').replace('"1/A"', '"9/Z"')
    with pytest.raises(JobProblems, match="W21x999") as found:
        frames.save_text(owner, framed, wrong, 1)
    assert len(found.value.problems) > 1
    assert all(problem.line for problem in found.value.problems)
    assert frames.save_text(owner, framed, text.replace("reaction = 44", "reaction = 45"), 1) == 2
    late = frames.save_text(owner, _fresh(framed), text.replace("reaction = 44", "reaction = 46"), 1)
    assert isinstance(late, Conflict)
    assert late.number == 2


def test_a_drawn_piece_may_stand_beside_a_frame(owner: Person) -> None:
    given = (files("gageline") / "demo" / "mezzanine-frame.toml").read_bytes()
    both = given + b'\n[[piece]]\nmark = "X1"\nstock = "W12x26"\nlength = "9\'-6"\n'
    job = import_job(owner, both)
    assert job.pieces.filter(mark="X1", active=True).exists()
    assert job.pieces.filter(active=True).count() > 10
