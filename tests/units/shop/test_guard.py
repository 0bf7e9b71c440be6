from __future__ import annotations

import errno
from collections.abc import Callable

import pytest
from django.db import OperationalError, connection
from django.http import HttpResponse
from django.test import Client, RequestFactory
from django.utils.html import escape

from gageline.errors import ValueProblem
from gageline.shop.guard import Gatekeeper, Limits
from gageline.shop.models import Job, Person


def test_the_policy_is_strict_on_every_page(owner: Person, signed_in: Callable[[Person], Client]) -> None:
    for answer in (Client().get("/in/"), signed_in(owner).get("/office/"), Client().get("/nowhere/")):
        policy = answer["Content-Security-Policy"]
        assert "script-src 'self';" in policy
        assert "unsafe" not in policy
        assert "frame-ancestors 'none'" in policy
        assert answer["X-Content-Type-Options"] == "nosniff"


def test_no_page_has_script_or_style_of_its_own(owner: Person, signed_in: Callable[[Person], Client]) -> None:
    page = signed_in(owner).get("/office/new/").content.decode()
    assert " style=" not in page
    assert "<style" not in page
    assert page.count("<script") == page.count('<script src="/static/')


@pytest.mark.parametrize(
    ("kind", "size"), [("multipart/form-data; boundary=x", 10**9), ("text/plain", 3_000_000)]
)
def test_what_is_too_large_is_refused_before_it_is_read(kind: str, size: int) -> None:
    reached: list[object] = []

    def inside(request: object) -> HttpResponse:
        reached.append(request)
        return HttpResponse()

    request = RequestFactory().post("/office/import/", b"", content_type=kind)
    request.META["CONTENT_LENGTH"] = str(size)
    answer = Limits(inside)(request)
    assert answer.status_code == 413
    assert b"MB are the limit" in answer.content
    assert not reached


@pytest.mark.parametrize(
    ("wrong", "status", "words"),
    [
        (OperationalError("database or disk is full"), 507, b"disk of the shop"),
        (OSError(errno.ENOSPC, "No space left on device"), 507, b"disk of the shop"),
        (OperationalError("attempt to write a readonly database"), 507, b"read-only"),
        (OSError(errno.EROFS, "Read-only file system"), 507, b"read-only"),
        (OperationalError("unable to open database file"), 507, b"cannot be opened"),
        (ValueProblem("a <b> is wrong: mend it"), 422, b"a &lt;b&gt; is wrong"),
    ],
)
def test_trouble_is_said_in_plain_words(wrong: Exception, status: int, words: bytes) -> None:
    answer = Gatekeeper(lambda _: HttpResponse()).process_exception(RequestFactory().get("/"), wrong)
    assert answer is not None
    assert answer.status_code == status
    assert words in answer.content


def test_a_database_that_cannot_be_written_says_so(
    owner: Person, signed_in: Callable[[Person], Client]
) -> None:
    client = signed_in(owner)
    with connection.cursor() as cursor:
        cursor.execute("PRAGMA query_only = 1")  # as SQLite answers on a read-only disk
        try:
            answer = client.post("/office/new/", {"name": "Never saved", "units": "mm"})
        finally:
            cursor.execute("PRAGMA query_only = 0")
    assert answer.status_code == 507
    assert b"data folder is read-only. This was not saved" in answer.content
    assert not Job.objects.exists()


def test_what_is_typed_outlives_its_session(owner: Person, signed_in: Callable[[Person], Client]) -> None:
    signed_in(owner).post("/office/new/", {"name": "Porch", "units": "mm"})
    address = f"/office/{Job.objects.get().pk}/piece/"
    sent = {"mark": "B1", "stock": "W12x26", "length": "4000", "grade": '"><b>', "copes.0": "1"}
    page = Client().post(address, sent)
    assert page.status_code == 401
    for name, value in sent.items():
        assert f'name="{name}" value="{escape(value)}"' in page.content.decode()
    assert '<form method="post">' in page.content.decode()  # to the same address
    part = Client().post(address, sent, headers={"HX-Request": "true"})
    assert (part["HX-Retarget"], part.status_code) == ("#net", 200)
    assert b"What is typed here stays" in part.content
    assert Client().get("/counts/", headers={"HX-Request": "true"})["HX-Retarget"] == "#net"


def test_a_bug_stays_a_bug() -> None:
    request = RequestFactory().get("/")
    assert Gatekeeper(lambda _: HttpResponse()).process_exception(request, KeyError("x")) is None
