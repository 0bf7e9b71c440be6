from __future__ import annotations

from collections.abc import Callable

import pytest
from django.test import Client

from gageline.shop.engine import document_of
from gageline.shop.frames import entry_table
from gageline.shop.jobs import current_text
from gageline.shop.models import Job, Person
from gageline.shop.roles import Role
from gageline.units import Length
from shop_forms import as_sent

SignIn = Callable[[Person], Client]


@pytest.fixture
def client(owner: Person, signed_in: SignIn) -> Client:
    return signed_in(owner)


def _flat(table: dict[str, object], path: str = "") -> dict[str, str]:
    """A table as the fields of its form."""
    found: dict[str, str] = {}
    for key, value in table.items():
        if isinstance(value, dict):
            found |= _flat(value, f"{path}{key}.")
        else:
            found[f"{path}{key}"] = str(value)
    return found


def _typed(job: Job, name: str, **changes: str) -> dict[str, str]:
    table = entry_table(document_of(current_text(job)), "member", name)
    assert table is not None
    return {**_flat(table), "on-revision": str(job.current), "was-named": name, **changes}


def test_the_plan_and_everything_in_it(framed: Job, client: Client) -> None:
    page = client.get(f"/office/{framed.pk}/frame/").content.decode()
    assert '<svg xmlns="http://www.w3.org/2000/svg" viewBox=' in page.replace("  ", " ") or "<svg" in page
    for words in ("G3", "P1", "double angles", "Framing plan", "Field bolts"):
        assert words in page
    assert "start: bears on P1; end: bears on P2, free beyond it" in page  # G1, and its columns:
    assert page.count("top: under G1") == 2
    job = client.get(f"/office/{framed.pk}/").content.decode()
    assert "in the frame" in job
    assert "piece-edit" not in job


def test_a_job_without_a_frame_says_how_to_begin_one(job: Job, client: Client) -> None:
    page = client.get(f"/office/{job.pk}/frame/").content
    assert b"Give the grid and the levels first" in page
    assert b"What detailing says" not in page


def test_what_is_wrong_in_a_folded_part_unfolds_it(framed: Job, client: Client) -> None:
    address = f"/office/{framed.pk}/frame/member/"
    sent = as_sent(client.get(address).content.decode(), stock="W12x26", top="Mezzanine", from__point="1/A")
    page = client.post(address, {**sent, "to.point": "nowhere"}).content.decode()
    part = page.split('id="say-to"')[0].rpartition("<details")[2]
    assert " open>" in part


def test_a_member_is_changed_by_its_form(framed: Job, client: Client) -> None:
    address = f"/office/{framed.pk}/frame/member/of/G4/"
    page = client.get(address).content.decode()
    assert "Because" in page
    assert 'name="ends.reaction"' in page
    sent = _typed(framed, "G4", **{"ends.reaction": "50", "ends.connection": "single plate"})
    assert client.post(address, sent)["Location"] == f"/office/{framed.pk}/frame/"
    kept = entry_table(document_of(current_text(Job.objects.get(pk=framed.pk))), "member", "G4")
    assert kept is not None
    assert kept["ends"] == {"connection": "single plate", "reaction": 50}


def test_what_is_wrong_with_a_member_is_said_at_its_field(framed: Job, client: Client) -> None:
    sent = _typed(framed, "G4", stock="W21x999", **{"ends.drop": "no length"})
    page = client.post(f"/office/{framed.pk}/frame/member/of/G4/", sent)
    assert page.status_code == 422
    for place in ("stock", "ends-drop"):
        assert f'class="said error" id="say-{place}"'.encode() in page.content
    assert Job.objects.get(pk=framed.pk).current == 1


def test_what_a_member_comes_to_is_shown_while_it_is_typed(framed: Job, client: Client) -> None:
    address = f"/office/{framed.pk}/frame/member/look/"
    page = client.post(address, _typed(framed, "G4", stock="W21x68")).content.decode()
    assert "<svg" in page
    assert "Because" in page
    wrong = client.post(address, _typed(framed, "G4", stock="W21x999")).content.decode()
    assert "No picture yet" in wrong
    assert 'class="said error" id="say-stock"' in wrong
    assert Job.objects.get(pk=framed.pk).current == 1


def test_a_level_is_added_by_the_form_of_the_grid(framed: Job, client: Client) -> None:
    address = f"/office/{framed.pk}/frame/grid/"
    assert b"Slab" in client.get(address).content
    grown = client.post(
        address, {"on-revision": "1", "add-row": "level", "level.0": "1", "level.0.name": "Slab"}
    )
    assert b'name="level.1.name"' in grown.content
    level = {"on-revision": "1", "level.0": "1", "level.0.name": "Slab", "level.0.elevation": "0"}
    loaded = client.post(address, {**level, "add-row": "level.0.loads"})
    assert b'name="level.0.loads.0.case"' in loaded.content
    emptied = client.post(address, {**level, "level.0.loads.0": "1", "drop-row": "level.0.loads.0"})
    assert b'name="level.0.loads.0.case"' not in emptied.content
    assert Job.objects.get(pk=framed.pk).current == 1


def test_new_members_start_with_a_free_name(framed: Job, client: Client) -> None:
    page = client.get(f"/office/{framed.pk}/frame/column/").content.decode()
    assert 'value="P9"' in page
    assert client.get(f"/office/{framed.pk}/frame/roof/").status_code == 422
    assert b"taken out or renamed" in client.get(f"/office/{framed.pk}/frame/member/of/X9/").content


def test_a_frame_is_begun_by_its_forms_alone(job: Job, client: Client) -> None:
    """Each form sent as a browser sends it, with every field that it has."""
    frame = f"/office/{job.pk}/frame/"
    grid = f"{frame}grid/"
    page = client.post(grid, {**as_sent(client.get(grid).content.decode()), "add-row": "level"})
    names = {"grid__x__names": "1\n2", "grid__x__spacing": "24'", "grid__y__names": "A\nB"}
    level = {"grid__y__spacing": "20'", "level__0__name": "Floor", "level__0__elevation": "12'"}
    sent = as_sent(page.content.decode(), **names, **level)
    assert client.post(grid, sent).status_code == 302  # one spacing is a list of one
    made = {
        "column": ("W8x31", {"base": "0", "top": "Floor", "at__point": "1/A"}),
        "member": (
            "W12x26",
            {
                "top": "Floor",
                "drop": "2",
                "from__point": "1/A",
                "to__point": "1/B",
                "end__connection": "free",
            },
        ),
    }
    for kind, (stock, typed) in made.items():
        address = f"{frame}{kind}/"
        sent = as_sent(client.get(address).content.decode(), stock=stock, **typed)
        assert client.post(address, sent).status_code == 302
    job.refresh_from_db()
    document = document_of(current_text(job))
    assert document.frame is not None
    (column,), (member,) = document.frame.columns, document.frame.members
    assert str(column.base) == "0"
    assert member.drop == Length.from_inches(2)
    for kind, name, key in (("column", column.name, "base"), ("member", member.name, "drop")):
        address = f"{frame}{kind}/of/{name}/"
        first = as_sent(client.get(address).content.decode(), **{key: "3"})
        late = as_sent(client.get(address).content.decode(), stock="W10x49")
        assert client.post(address, first).status_code == 302
        answer = client.post(address, late)
        assert answer.status_code == 409  # who saves later sees both
        over = as_sent(answer.content.decode().replace('<form method="post"', '<form id="piece-form"'))
        assert over[key] == late[key]
        assert client.post(address, {**over, "over-theirs": "1"}).status_code == 302


def test_two_who_change_a_member_choose(framed: Job, client: Client) -> None:
    address = f"/office/{framed.pk}/frame/member/of/G4/"
    client.post(address, _typed(framed, "G4", stock="W21x68"))
    late = client.post(address, _typed(framed, "G4", stock="W21x55"))
    assert late.status_code == 409
    assert b"Member G4: two people changed it" in late.content
    again = _typed(framed, "G4", stock="W21x55", **{"on-revision": "2", "over-theirs": "1"})
    assert client.post(address, again).status_code == 302


def test_the_document_as_text_shows_every_problem(framed: Job, client: Client) -> None:
    address = f"/office/{framed.pk}/text/"
    text = current_text(framed)
    assert b"mezzanine" in client.get(address).content.lower()
    wrong = text.replace('"W21x62"', '"W21x999"').replace('"1/A"', '"9/Z"')
    page = client.post(address, {"on-revision": "1", "document": wrong})
    assert page.status_code == 422
    assert page.content.count(b'<li class="said error">line ') > 1
    assert client.post(address, {"on-revision": "1", "document": text}).status_code == 302
    assert b"not TOML" in client.post(address, {"on-revision": "1", "document": "[job"}).content


def test_a_piece_of_the_frame_shows_its_reasons_and_has_no_form(framed: Job, client: Client) -> None:
    row = framed.pieces.get(mark="G4")
    page = client.get(f"/piece/{row.pk}/").content.decode()
    assert "It comes from the frame" in page
    assert f'href="/office/{framed.pk}/frame/member/of/G4/"' in page
    assert "because" in page.lower()
    assert "start (left end): " in page
    for address in (f"/office/{framed.pk}/piece/{row.pk}/", f"/office/{framed.pk}/piece/{row.pk}/remove/"):
        refused = client.post(address, {"mark": "G4"})
        assert refused.status_code == 422
        assert b"comes from the frame" in refused.content


def test_a_member_is_taken_out(framed: Job, client: Client) -> None:
    document = document_of(current_text(framed))
    last = str((document.frame.members if document.frame else ())[-1].name)
    answer = client.post(f"/office/{framed.pk}/frame/member/of/{last}/remove/")
    assert answer.status_code == 302
    assert entry_table(document_of(current_text(Job.objects.get(pk=framed.pk))), "member", last) is None


def test_those_who_look_see_the_plan_and_no_forms(
    people: dict[Role, Person], framed: Job, signed_in: SignIn
) -> None:
    looker = signed_in(people[Role.LOOK])
    page = looker.get(f"/office/{framed.pk}/frame/").content.decode()
    assert "G3" in page
    assert "Add a member" not in page
    assert looker.get(f"/office/{framed.pk}/frame/member/of/G4/").status_code == 403
