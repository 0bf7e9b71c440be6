from __future__ import annotations

from collections.abc import Callable
from io import StringIO

import pytest
from django.test import Client
from ezdxf.filemanagement import read

from gageline.shop.engine import document_of
from gageline.shop.jobs import current_text, piece_table
from gageline.shop.models import Job, Person

_BEAM = {"mark": "B9", "quantity": "2", "stock": "W12x26", "length": "10'-0"}


@pytest.fixture
def desk(owner: Person, signed_in: Callable[[Person], Client]) -> Client:
    return signed_in(owner)


def test_a_piece_is_typed_and_saved(desk: Client, job: Job) -> None:
    sent = _BEAM | {"on-revision": "1", "copes.0": "1", "copes.0.end": "both", "copes.0.flange": "top"}
    sent |= {"copes.0.length": "4", "copes.0.depth": "1 1/2", "left.bevel": ""}
    sent_to = desk.post(f"/office/{job.pk}/piece/", sent)["Location"]
    table = piece_table(document_of(current_text(Job.objects.get(pk=job.pk))), "B9")
    assert table is not None
    assert f'id="{sent_to.partition("#")[2]}"' in desk.get(sent_to).content.decode()
    assert table["copes"] == [{"end": "both", "flange": "top", "length": '4"', "depth": '1 1/2"'}]


def test_what_is_wrong_stands_at_its_field_and_nothing_is_saved(desk: Client, job: Job) -> None:
    sent = _BEAM | {"on-revision": "1", "copes.0": "1", "copes.0.end": "left", "copes.0.length": "four"}
    page = desk.post(f"/office/{job.pk}/piece/", sent)
    assert page.status_code == 422
    text = page.content.decode()
    assert 'id="say-copes-0-length">&quot;four&quot;' in text
    assert 'id="say-copes-0-depth">is missing' in text
    assert 'value="four"' in text
    assert Job.objects.get(pk=job.pk).current == 1
    taken = desk.post(f"/office/{job.pk}/piece/", _BEAM | {"on-revision": "1", "mark": "B1"})
    assert taken.status_code == 422
    assert b"B1" in taken.content


def test_the_picture_follows_what_is_typed(desk: Client, job: Job) -> None:
    first = desk.post(f"/office/{job.pk}/picture/", _BEAM).content.decode()
    second = desk.post(f"/office/{job.pk}/picture/", _BEAM | {"length": "10'-0 1/2"}).content.decode()
    assert "10'-0&quot;" in first or "10'-0\"" in first
    assert "10'-0 1/2" in second
    assert 'hx-swap-oob="true">10&#x27;-0 1/2&quot; = 3060.7 mm' in second
    assert (
        "No picture yet" in desk.post(f"/office/{job.pk}/picture/", _BEAM | {"stock": "?"}).content.decode()
    )


def test_rows_come_and_go_without_saving(desk: Client, job: Job) -> None:
    page = desk.post(
        f"/office/{job.pk}/piece/", _BEAM | {"on-revision": "1", "add-row": "holes"}
    ).content.decode()
    assert 'name="holes.0.rows"' in page
    sent = _BEAM | {"on-revision": "1", "holes.0": "1", "drop-row": "holes.0"}
    assert 'name="holes.0.rows"' not in desk.post(f"/office/{job.pk}/piece/", sent).content.decode()
    assert Job.objects.get(pk=job.pk).current == 1


def test_the_second_who_saves_sees_both_and_chooses(desk: Client, job: Job) -> None:
    piece = job.pieces.get(mark="P1")
    address = f"/office/{job.pk}/piece/{piece.pk}/"
    sent = {"mark": "P1", "stock": "HSS6x6x3/8", "on-revision": "1"}
    assert desk.post(address, sent | {"length": "8'-1"}).status_code == 302
    page = desk.post(address, sent | {"length": "8'-2"})
    assert page.status_code == 409
    text = page.content.decode()
    assert all(words in text for words in ("8&#x27;-0", "8&#x27;-1", "8&#x27;-2", "Save mine over it"))
    chosen = desk.post(address, sent | {"length": "8'-2", "on-revision": "2", "over-theirs": "1"})
    assert chosen.status_code == 302
    assert job.pieces.get(mark="P1").length == "8'-2\""
    assert job.revisions.count() == 3


def test_a_form_sent_twice_changes_nothing_more(desk: Client, job: Job) -> None:
    address = f"/office/{job.pk}/piece/{job.pieces.get(mark='P1').pk}/"
    sent = {"mark": "P1", "stock": "HSS6x6x3/8", "on-revision": "1", "length": "8'-1"}
    desk.post(address, sent)
    desk.post(address, sent)
    assert job.revisions.count() == 2
    new = f"/office/{job.pk}/piece/"
    desk.post(new, _BEAM | {"on-revision": "2"})
    assert desk.post(new, _BEAM | {"on-revision": "2"}).status_code == 422
    assert job.pieces.count() == 3


def test_the_page_of_a_piece_ties_everything_together(desk: Client, job: Job) -> None:
    piece = job.pieces.get(mark="B1")
    page = desk.get(f"/piece/{piece.pk}/").content.decode()
    for words in ("Marks, as they are struck", 'id="drawing"', 'id="fittings"', "not checked", 'id="solid"'):
        assert words in page
    drawn = desk.get(f"/piece/{piece.pk}/true-size.dxf")
    assert f'href="/piece/{piece.pk}/true-size.dxf"' in page
    assert drawn["Content-Disposition"] == 'attachment; filename="b1.dxf"'
    audit = read(StringIO(drawn.content.decode())).audit()
    assert (audit.has_errors, audit.has_fixes) == (False, False)
    solid = desk.get(f"/piece/{piece.pk}/solid/")
    assert solid["Content-Security-Policy"].startswith("sandbox allow-scripts; default-src 'none'")


def test_a_piece_goes_and_comes_back_by_its_history(desk: Client, job: Job) -> None:
    piece = job.pieces.get(mark="P1")
    desk.post(f"/office/{job.pk}/piece/{piece.pk}/remove/")
    assert b"was taken out of the job" in desk.get(f"/piece/{piece.pk}/").content
    desk.post(f"/office/{job.pk}/piece/{piece.pk}/back/1/")
    assert job.pieces.get(mark="P1").active


def test_a_length_is_said_back(desk: Client) -> None:
    assert b"= 5670.6 mm" in desk.get("/length/", {"text": "18-7 1/4"}).content
    assert b"error" in desk.get("/length/", {"text": "<script>"}).content
