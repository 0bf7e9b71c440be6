"""Django for the tests of the shop: its own settings, a data folder that ends with the run, quick hashes."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable
from importlib.resources import files

import django
import pytest
from django.test import Client
from pytest_django.fixtures import Settings

os.environ.setdefault("GAGELINE_HOME", tempfile.mkdtemp(prefix="gageline-test-"))
os.environ.setdefault("DJANGO_SETTINGS_MODULE", "gageline.shop.settings")
django.setup()

from gageline.shop.jobs import import_job  # noqa: E402 -- Django is ready only now
from gageline.shop.models import Job, Person  # noqa: E402 -- the same
from gageline.shop.roles import Role  # noqa: E402 -- the same
from gageline.shop.signing import add_person, make_owner  # noqa: E402 -- the same

SECRET = "a long enough secret"  # noqa: S105 -- of nobody
SMALL = b"""
[job]
name = "Invented porch"

[[piece]]
mark = "B1"
quantity = 2
stock = "W12x26"
length = "9'-6"
copes = [{ end = "left", flange = "top", length = "4", depth = "1 1/2" }]
angles = [{ end = "left", stock = "L4x3-1/2x5/16", rows = 2, to_web = "welded" }]

[[piece]]
mark = "P1"
stock = "HSS6x6x3/8"
length = "8'-0"
"""


@pytest.fixture(autouse=True)
def _quick_hashes(settings: Settings) -> None:
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
    settings.ALLOWED_HOSTS = ["testserver"]


@pytest.fixture
def owner(db: None) -> Person:  # noqa: ARG001 -- the tables are wanted, not a value
    return make_owner("Ada Example", SECRET)


@pytest.fixture
def people(owner: Person) -> dict[Role, Person]:
    found = {Role.OWNER: owner}
    for role in (Role.OFFICE, Role.SHOP, Role.LOOK):
        secret = "4711" if role is Role.SHOP else SECRET
        found[role] = add_person(owner.name, f"{role} person", role, secret)
    return found


@pytest.fixture
def job(owner: Person) -> Job:
    return import_job(owner, SMALL)


@pytest.fixture
def demo(owner: Person) -> Job:
    return import_job(owner, (files("gageline") / "demo" / "mezzanine.toml").read_bytes())


@pytest.fixture
def framed(owner: Person) -> Job:
    return import_job(owner, (files("gageline") / "demo" / "mezzanine-frame.toml").read_bytes())


@pytest.fixture
def signed_in() -> Callable[[Person], Client]:
    def sign_in(person: Person) -> Client:
        client = Client()
        client.force_login(person)
        return client

    return sign_in
