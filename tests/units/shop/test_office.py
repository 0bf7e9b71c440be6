from __future__ import annotations

import re
from collections.abc import Callable

from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from gageline.job import parse
from gageline.shop import jobs
from gageline.shop.models import Job, Person

_HOSTILE = b"""
[job]
name = "<script>alert(1)</script>"
number = "=cmd|'/c calc'!A1"
notes = ["<img src=x onerror=alert(1)>", "../../etc/passwd"]

[[piece]]
mark = "B1"
stock = "W12x26"
length = "9'-6"
finish = "</svg><script>alert(2)</script>"
holes = [{ name = "<b>&\\"'", x = "2", rows = 2 }]
"""


def test_hostile_words_are_only_words(owner: Person, signed_in: Callable[[Person], Client]) -> None:
    job = jobs.import_job(owner, _HOSTILE)
    piece = job.pieces.get()
    client = signed_in(owner)
    copy = piece.copies.get()
    for address in (
        "/office/", f"/office/{job.pk}/", f"/office/{job.pk}/facts/", f"/office/{job.pk}/labels/", "/bench/",
        f"/office/{job.pk}/log/", f"/office/{job.pk}/piece/{piece.pk}/", f"/piece/{piece.pk}/",
        f"/bench/{copy.pk}/",
    ):  # fmt: skip
        page = client.get(address).content.decode()
        assert "<script>alert" not in page, address
        assert "<img src=x" not in page, address
        assert "<b>&" not in page, address
    download = client.get(f"/office/{job.pk}/parts.csv")
    assert download["Content-Disposition"] == 'attachment; filename="script-alert-1---script-parts.csv"'
    assert client.get(f"/office/{job.pk}/print/packet.pdf").content.startswith(b"%PDF")


def test_paths_in_marks_are_refused(owner: Person, signed_in: Callable[[Person], Client]) -> None:
    for mark in ("../../x", "a/b", "B1\\u0000", "<b>"):
        content = (
            f'[job]\nname = "x"\n[[piece]]\nmark = "{mark}"\nstock = "W12x26"\nlength = "9\'"\n'.encode()
        )
        file = SimpleUploadedFile("job.toml", content)
        answer = signed_in(owner).post("/office/import/", {"document": file})
        assert answer.status_code == 422
    assert Job.objects.count() == 0


def test_a_document_goes_out_and_comes_in_the_same(
    owner: Person, demo: Job, signed_in: Callable[[Person], Client]
) -> None:
    client = signed_in(owner)
    out = client.get(f"/office/{demo.pk}/document.toml").content
    answer = client.post("/office/import/", {"document": SimpleUploadedFile("../../job.toml", out)})
    again = Job.objects.order_by("-pk").first()
    assert again is not None
    assert answer["Location"] == f"/office/{again.pk}/"
    assert client.get(f"/office/{again.pk}/document.toml").content == out


def test_all_that_is_wrong_with_a_document_is_said(
    owner: Person, signed_in: Callable[[Person], Client]
) -> None:
    wrong = b'[job]\nname = "x"\n[[piece]]\nmark = "B1"\nstok = "W12x26"\nlength = "long"\n'
    page = signed_in(owner).post("/office/import/", {"document": SimpleUploadedFile("job.toml", wrong)})
    assert b"line 5" in page.content
    assert b"line 6" in page.content
    assert b"no file came" in signed_in(owner).post("/office/import/").content


def test_the_shop_s_own_limits_are_typed_line_by_line(
    owner: Person, job: Job, signed_in: Callable[[Person], Client]
) -> None:
    client = signed_in(owner)
    address = f"/office/{job.pk}/facts/"
    sent = {
        "job.name": "Invented porch",
        "on-revision": "1",
        "practice.tolerances": "a6-camber = wide\na6-sweep = 1/4",
    }
    page = client.post(address, sent)
    assert page.status_code == 422
    said = re.search(r'id="say-practice-tolerances">([^<]*)<', page.content.decode())
    assert said is not None
    assert "a6-camber" in said[1]
    assert "wide" in said[1]
    sent["practice.tolerances"] = "a6-camber = 1/2"
    assert client.post(address, sent).status_code == 302
    job.refresh_from_db()
    assert parse(jobs.current_text(job))["practice"]["tolerances"] == {"a6-camber": '1/2"'}
    assert "a6-camber = 1/2" in client.get(address).content.decode()


def test_facts_are_changed_and_wrong_ones_are_said_at_their_field(
    owner: Person, job: Job, signed_in: Callable[[Person], Client]
) -> None:
    client = signed_in(owner)
    sent = {"on-revision": "1", "job.name": "Porch, renamed", "practice.tape": "no tape"}
    page = client.post(f"/office/{job.pk}/facts/", sent)
    assert page.status_code == 422
    assert b'<p class="said error" id="say-practice-tape">' in page.content
    assert client.post(f"/office/{job.pk}/facts/", sent | {"practice.tape": "1/8"}).status_code == 302
    assert Job.objects.get(pk=job.pk).name == "Porch, renamed"
    late = client.post(f"/office/{job.pk}/facts/", sent | {"practice.tape": "1/4"})
    assert late.status_code == 409
    assert b"Facts and practice: two people changed it" in late.content
    assert b"practice, tape" in late.content
    said = client.post(f"/office/{job.pk}/facts/said/", sent)
    assert b'<p class="said error" id="say-practice-tape"' in said.content
    assert Job.objects.get(pk=job.pk).current == 2


def test_a_job_without_pieces_prints_a_sentence(owner: Person, signed_in: Callable[[Person], Client]) -> None:
    client = signed_in(owner)
    client.post("/office/new/", {"name": "Empty", "units": "mm"})
    number = Job.objects.get().pk
    page = client.get(f"/office/{number}/").content.decode()
    assert "No pieces yet: add a piece as it is drawn" in page
    assert "What the rules say" not in page  # of a frame that nobody has begun
    assert "Print and take out" not in page
    wrong = client.post("/office/new/", {"name": "a\u202eb", "units": "mm"}).content.decode()
    assert "job → name: &quot;a\\u202eb&quot; holds the control sign" in wrong
    assert "line 2" not in wrong
    assert b"add one and print then" in client.get(f"/office/{number}/print/packet.pdf").content


def test_the_job_is_brought_back(owner: Person, job: Job, signed_in: Callable[[Person], Client]) -> None:
    jobs.remove_piece(owner, job, "P1")
    signed_in(owner).post(f"/office/{job.pk}/back/1/")
    assert job.pieces.filter(active=True).count() == 2
    assert b"brought back revision 1" in signed_in(owner).get(f"/office/{job.pk}/log/").content
