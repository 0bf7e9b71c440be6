from __future__ import annotations

from collections.abc import Callable
from html import unescape

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from gageline.shop.models import Copy, Job, Person, RackText, Stick, Where
from gageline.shop.roles import Role
from gageline.shop.sticks import MEASURED, part_of

STICK = {"mark": "R1", "stock": "W12x26", "length": "9'-6 1/2", "heat": "7K2214", "on-revision": "0"}
HOSTILE = "<script>alert(1)</script>"


@pytest.fixture
def fitter(people: dict[Role, Person], signed_in: Callable[[Person], Client]) -> Client:
    return signed_in(people[Role.SHOP])


@pytest.fixture
def office(people: dict[Role, Person], signed_in: Callable[[Person], Client]) -> Client:
    return signed_in(people[Role.OFFICE])


@pytest.fixture
def stick(fitter: Client) -> Stick:
    fitter.post("/yard/new/", STICK)
    return Stick.objects.get()


def test_a_stick_is_typed_and_stands_in_the_list_by_its_steel(fitter: Client) -> None:
    page = fitter.get("/yard/new/").content.decode()
    assert 'value="R1"' in page
    assert 'data-length="length"' in page
    assert fitter.post("/yard/new/", STICK)["Location"] == f"/yard/{Stick.objects.get().pk}/"
    page = fitter.get("/yard/").content.decode()
    assert "W12X26 A992" in page
    assert "7K2214" in page
    assert "<html" not in fitter.get("/yard/", headers={"HX-Request": "true"}).content.decode()


def test_a_length_is_echoed_and_trouble_stands_at_its_field(fitter: Client) -> None:
    said = fitter.post(
        "/yard/said/held/", {"length": "9-6 1/2", "stock": "W99x1", "mark": "R1"}
    ).content.decode()
    assert 'id="say-length" hx-swap-oob="true">9&#x27;-6 1/2&quot; = 2908.3 mm' in said
    assert 'class="said error" id="say-stock"' in said
    assert fitter.post("/yard/said/other/").status_code == 422
    answer = fitter.post("/yard/new/", STICK | {"length": "long"})
    assert answer.status_code == 422
    assert 'aria-invalid="true"' in answer.content.decode()
    assert Stick.objects.count() == 0


def test_markup_in_a_heat_number_is_text(fitter: Client, job: Job) -> None:
    fitter.post("/yard/new/", STICK | {"heat": HOSTILE})
    assert HOSTILE.encode() in fitter.get("/yard/rack.toml").content
    stick = Stick.objects.get()
    copy = Copy.objects.filter(piece__mark="B1", piece__job=job)[0]
    fitter.post(f"/yard/{stick.pk}/piece/", {"copy": copy.pk})
    fitter.post(f"/yard/{stick.pk}/measure/", {"length": "9'-6", "on-revision": "2"})
    assert part_of(Stick.objects.get(), MEASURED) == {"length": "9'-6", "units": "ft-in"}
    for address in ("/yard/", f"/yard/{stick.pk}/", f"/yard/{stick.pk}/edit/", f"/yard/{stick.pk}/measure/"):
        page = fitter.get(address).content.decode()
        assert HOSTILE not in page
        assert "&lt;script&gt;" in page or address.endswith("measure/")
    assert HOSTILE.encode() not in fitter.get("/yard/rack.toml").content  # it is not free
    assert fitter.get(f"/yard/{stick.pk}/card.pdf").content.startswith(b"%PDF")


def test_the_second_who_saves_sees_both_and_chooses(fitter: Client, office: Client, stick: Stick) -> None:
    address = f"/yard/{stick.pk}/edit/"
    office.post(address, STICK | {"on-revision": "1", "heat": "of the office"})
    answer = fitter.post(address, STICK | {"on-revision": "1", "heat": "of the shop"})
    page = answer.content.decode()
    assert answer.status_code == 409
    assert "of the office" in page
    assert "of the shop" in page
    assert (
        fitter.post(
            address, STICK | {"on-revision": "2", "heat": "of the shop", "over-theirs": "1"}
        ).status_code
        == 302
    )
    assert Stick.objects.get().heat == "of the shop"
    fitter.post(f"/yard/{stick.pk}/back/2/")
    assert Stick.objects.get().heat == "of the office"


def test_measured_judged_laid_and_printed(fitter: Client, stick: Stick, job: Job) -> None:
    address = f"/yard/{stick.pk}/"
    assert "Nothing was read on it yet" in fitter.get(address).content.decode()
    read = {"length": "9'-5 1/4", "camber": "3/4", "left.depth": "12.3in", "on-revision": "1"}
    assert fitter.post(f"{address}measure/", read).status_code == 302
    page = fitter.get(address).content.decode()
    assert "out by" in page
    assert "ASTM A6" in page
    copy = Copy.objects.filter(piece__mark="B1", piece__job=job)[0]
    assert f'<option value="{copy.pk}">' in page
    fitter.post(f"{address}piece/", {"copy": copy.pk})
    page = fitter.get(address).content.decode()
    assert "Which way to lay it out" in page
    assert fitter.post(f"{address}way/", {"way": "sideways"}).status_code == 422
    assert fitter.post(f"{address}way/", {"way": "split the difference"}).status_code == 302
    assert "split the difference (taken)" in fitter.get(address).content.decode()
    assert fitter.post(f"{address}way/", {"way": ""}).status_code == 302
    assert "(taken) (advised)" in fitter.get(address).content.decode()
    assert f'hx-get="{address}odds/" hx-trigger="load"' in fitter.get(address).content.decode()
    assert "It bolts up without reaming" in fitter.get(f"{address}odds/").content.decode()
    assert fitter.get(f"{address}card.pdf")["Content-Type"] == "application/pdf"
    assert fitter.post(f"{address}piece/", {"copy": ""}).status_code == 302
    assert fitter.get(f"{address}card.pdf").status_code == 422
    assert fitter.get(f"{address}odds/").status_code == 422
    assert "Odds of fit-up" not in fitter.get(address).content.decode()
    assert fitter.post(f"{address}piece/", {"copy": "99999"}).status_code == 404


def test_readings_that_cannot_be_are_refused_at_their_field(fitter: Client, stick: Stick) -> None:
    sent = {"left.web_gap": "1/8", "camber": "bent", "on-revision": "1"}
    answer = fitter.post(f"/yard/{stick.pk}/measure/", sent)
    page = answer.content.decode()
    assert answer.status_code == 422
    assert 'class="said error" id="say-camber"' in page
    assert Stick.objects.get().current == 1


def test_a_slip_of_the_pen_is_refused_while_it_is_typed_and_when_it_is_saved(
    fitter: Client, stick: Stick
) -> None:
    sent = {"left.depth": "4", "right.top_width": "12 1/4", "on-revision": "1"}
    said = unescape(fitter.post(f"/yard/said/measured/?stick={stick.pk}", sent).content.decode())
    answer = fitter.post(f"/yard/{stick.pk}/measure/", sent)
    assert answer.status_code == 422
    for page in (said, unescape(answer.content.decode())):
        assert 'class="said error" id="say-left-depth"' in page
        assert f'{stick.mark} left end depth 4" is more than' in page
        assert f"{stick.mark} right end top width 1'-0 1/4\" is more than" in page
    assert Stick.objects.get().current == 1


def test_a_stick_that_is_not_in_the_yard_is_not_changed(fitter: Client, stick: Stick) -> None:
    fitter.post(f"/yard/{stick.pk}/remove/")
    assert Stick.objects.get().where == Where.GONE
    for name in ("edit", "measure"):
        assert fitter.get(f"/yard/{stick.pk}/{name}/").status_code == 422
    assert "Bring back" in fitter.get(f"/yard/{stick.pk}/").content.decode()


def test_the_rack_is_typed_or_brought_in_with_everything_that_is_wrong(office: Client) -> None:
    page = office.get("/yard/rack/").content.decode()
    assert "[saw]" in page
    answer = office.post("/yard/rack/", {"on-revision": "0", "text": '[saw]\nkerf = "wide"\nteeth = 4\n'})
    assert answer.status_code == 422
    assert answer.content.decode().count("<li>line ") == 2
    typed = '[saw]\nkerf = "1/8"\n'
    assert office.post("/yard/rack/", {"on-revision": "0", "text": typed}).status_code == 200
    assert office.post("/yard/rack/", {"on-revision": "0", "text": "[saw]\nkerf = 1\n"}).status_code == 409
    held = b'[saw]\nkerf = 0\n[[held]]\nmark = "A1"\nstock = "W12x26"\nlength = 240\n'
    file = SimpleUploadedFile("rack.toml", held)
    assert "New in the yard: A1" in office.post("/yard/rack/", {"document": file}).content.decode()
    assert RackText.objects.count() == 2


@pytest.mark.parametrize("content", [b"x" * 600_000, b"\xff\xfe\x00", b"PK\x03\x04", b""])
def test_files_that_are_no_rack_do_no_harm(office: Client, content: bytes) -> None:
    answer = office.post("/yard/rack/", {"document": SimpleUploadedFile("../../rack.toml", content)})
    assert answer.status_code == 422
    assert RackText.objects.count() == 0
    assert office.post("/yard/rack/", {}).status_code == 422


def test_a_huge_upload_is_refused_before_it_is_read(office: Client) -> None:
    answer = office.post("/yard/rack/", {"document": SimpleUploadedFile("rack.toml", b"#" * 22_000_000)})
    assert answer.status_code == 413


@pytest.mark.usefixtures("stick")
def test_what_is_in_the_yard_goes_out_for_a_spreadsheet(fitter: Client) -> None:
    answer = fitter.get("/yard/sticks.csv")
    assert answer["Content-Disposition"] == 'attachment; filename="sticks.csv"'
    assert b"R1,W12X26,A992" in answer.content
