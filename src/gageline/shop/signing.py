"""Signing in: passwords for the office, names and PINs on known tablets, and what guessing costs."""

from __future__ import annotations

import hashlib
import secrets
from datetime import timedelta

from django.conf import settings
from django.contrib.auth import login
from django.contrib.auth.backends import BaseBackend
from django.contrib.auth.hashers import check_password, make_password
from django.db import transaction
from django.db.models import F
from django.http import HttpRequest, HttpResponse
from django.utils import timezone

from gageline.errors import ValueProblem
from gageline.shop.logbook import note
from gageline.shop.models import Guess, Person, Tablet
from gageline.shop.roles import Role

__all__ = [
    "TABLET_COOKIE",
    "People",
    "add_person",
    "change_person",
    "forget_tablet",
    "make_owner",
    "remember_tablet",
    "sign_in",
    "tablet_of",
]

TABLET_COOKIE = "gageline_tablet"
_FREE_GUESSES = 5
_FIRST_PAUSE = 30  # seconds; doubled with every further wrong guess
_LONGEST_PAUSE = 3600  # seconds
_YEAR = 365 * 24 * 3600  # seconds
_SHORTEST_PASSWORD = 10
_PIN_LENGTHS = range(4, 9)


class People(BaseBackend):
    """Who is signed in, looked up again at every page: those switched off are out at once."""

    def get_user(self, user_id: int) -> Person | None:
        """The person of a session, None when there is none any more."""
        return Person.objects.filter(pk=user_id, is_active=True).first()


def _checked_secret(role: Role, secret: str) -> str:
    """A password or a PIN that is long enough."""
    if role is Role.SHOP:
        if not (secret.isascii() and secret.isdigit() and len(secret) in _PIN_LENGTHS):
            raise ValueProblem("the PIN is not 4 to 8 digits: choose 4 to 8 digits")
        if len(set(secret)) == 1:
            raise ValueProblem("the PIN is one digit over and over: choose different digits")
    elif len(secret) < _SHORTEST_PASSWORD:
        raise ValueProblem(f"the password has {len(secret)} characters: choose {_SHORTEST_PASSWORD} or more")
    elif len(secret) > 200:
        raise ValueProblem("the password is longer than 200 characters: shorten it")
    return secret


def _checked_name(name: str) -> str:
    name = " ".join(name.split())
    if not name or not name.isprintable() or len(name) > 80:
        raise ValueProblem("the name is empty or longer than 80 characters: write a name")
    return name


def make_owner(name: str, password: str) -> Person:
    """The first person of a shop.

    Raises:
        ValueProblem: when the shop has people already, or name or password cannot be used.
    """
    with transaction.atomic():
        if Person.objects.exists():
            raise ValueProblem("the shop has its owner already: sign in")
        return add_person(_checked_name(name), name, Role.OWNER, password)


def add_person(by: str, name: str, role: Role, secret: str) -> Person:
    """Somebody new who may sign in.

    Raises:
        ValueProblem: when the name is taken, or name or secret cannot be used.
    """
    name = _checked_name(name)
    with transaction.atomic():
        if Person.objects.filter(name__iexact=name).exists():
            raise ValueProblem(f'"{name}" is there already: write another name')
        person = Person(name=name, role=role, password=make_password(_checked_secret(role, secret)))
        person.save()
        note(by, f"added {name} ({role})")
    return person


def change_person(by: Person, person: Person, role: Role, secret: str, *, active: bool) -> None:
    """Give a person another role or secret, or switch them off; an empty secret leaves it as it is.

    Raises:
        ValueProblem: when the shop would be left without an owner, or the secret cannot be used.
    """
    with transaction.atomic():
        owners = Person.objects.select_for_update().filter(role=Role.OWNER, is_active=True)
        loses = person.role == Role.OWNER and (role is not Role.OWNER or not active)
        if loses and not owners.exclude(pk=person.pk).exists():
            raise ValueProblem(f'"{person.name}" is the only owner: make another owner first')
        if not secret and active and role is not person.role and Role.SHOP in {role, person.role}:
            raise ValueProblem("a PIN and a password are not the same: give a new one with the new role")
        person.role, person.is_active = role, active
        if secret:
            person.password = make_password(_checked_secret(role, secret))
        person.save()
        note(by.name, f"changed {person.name}: {role}, {'may sign in' if active else 'switched off'}")


def _closed_for(keys: tuple[str, ...]) -> int:
    """Seconds until another guess is heard."""
    now = timezone.now()
    until = [guess.closed_until for guess in Guess.objects.filter(key__in=keys, closed_until__gt=now)]
    return max((int((end - now).total_seconds()) + 1 for end in until), default=0)


def _count_guess(key: str) -> None:
    """Count a guess before it is looked at, so that many at once count too."""
    with transaction.atomic():
        guess, _ = Guess.objects.select_for_update().get_or_create(
            key=key, defaults={"closed_until": timezone.now()}
        )
        Guess.objects.filter(pk=guess.pk).update(failures=F("failures") + 1)
        over = guess.failures + 1 - _FREE_GUESSES
        if over >= 0:
            pause = min(_LONGEST_PAUSE, _FIRST_PAUSE * 2 ** min(over, 10))
            guess.closed_until = timezone.now() + timedelta(seconds=pause)
            Guess.objects.filter(pk=guess.pk).update(closed_until=guess.closed_until)


def sign_in(request: HttpRequest, name: str, secret: str, *, shop: bool) -> Person:
    """Open a session for a person.

    Args:
        request: where the session is opened.
        name: of the person.
        secret: password or PIN.
        shop: by PIN, which only a known tablet takes.

    Raises:
        ValueProblem: when name and secret do not belong together, or too many guesses were made.
    """
    tablet = tablet_of(request)
    if shop and tablet is None:
        raise ValueProblem(
            "this tablet is not known to the shop: the owner signs in on it once and makes it known"
        )
    keys = (f"name:{name.strip().casefold()[:80]}", f"from:{request.META.get('REMOTE_ADDR', '')}")
    if wait := _closed_for(keys):
        raise ValueProblem(f"too many wrong guesses: wait {wait} seconds and try again")
    for key in keys:
        _count_guess(key)
    person = Person.objects.filter(name__iexact=name.strip(), is_active=True).first()
    if person is not None and (person.role == Role.SHOP) is not shop:
        person = None
    stored = person.password if person else make_password("nobody")  # as long a wait as for somebody
    if not check_password(secret, stored) or person is None:
        raise ValueProblem("name and secret do not belong together: try again")
    Guess.objects.filter(key__in=keys).delete()
    login(request, person, backend=settings.AUTHENTICATION_BACKENDS[0])
    if shop and tablet is not None:
        request.session["tablet"] = tablet.pk
        request.session.set_expiry(10 * 3600)
    return person


def _digest(token: str) -> str:
    return hashlib.sha256(token.encode()).hexdigest()


def tablet_of(request: HttpRequest) -> Tablet | None:
    """The known tablet that a request comes from, None from any other machine."""
    token = request.COOKIES.get(TABLET_COOKIE, "")
    return Tablet.objects.filter(token=_digest(token)).first() if token else None


def remember_tablet(by: Person, name: str, response: HttpResponse) -> None:
    """Make the machine that gets this answer a known tablet.

    Raises:
        ValueProblem: when the name cannot be used.
    """
    name, token = _checked_name(name), secrets.token_urlsafe(32)
    with transaction.atomic():
        if Tablet.objects.filter(name__iexact=name).exists():
            raise ValueProblem(f'there is a tablet "{name}" already: write another name')
        Tablet.objects.create(name=name, token=_digest(token))
        note(by.name, f"made tablet {name} known")
    response.set_cookie(TABLET_COOKIE, token, max_age=_YEAR, httponly=True, samesite="Lax")


def forget_tablet(by: Person, tablet: Tablet) -> None:
    """Forget a tablet; whoever is signed in on it is out."""
    with transaction.atomic():
        note(by.name, f"forgot tablet {tablet.name}")
        tablet.delete()
