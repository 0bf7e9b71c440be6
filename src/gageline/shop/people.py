"""Signing in and out, and who may: people and tablets."""

from __future__ import annotations

import ipaddress

from django.contrib.auth import logout
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from gageline.errors import ValueProblem
from gageline.shop import signing
from gageline.shop.models import Person, Tablet
from gageline.shop.office import person_of
from gageline.shop.roles import Role

__all__ = [
    "change",
    "first",
    "forget",
    "home",
    "list_people",
    "list_tablets",
    "sign_in",
    "sign_in_shop",
    "sign_out",
]

_HOMES = {Role.OWNER: "jobs", Role.OFFICE: "jobs", Role.SHOP: "bench", Role.LOOK: "jobs"}


@require_GET
def home(request: HttpRequest) -> HttpResponse:
    """The place where a person works."""
    return redirect(_HOMES[Role(person_of(request).role)])


def _from_here(request: HttpRequest) -> bool:
    try:
        return ipaddress.ip_address(request.META.get("REMOTE_ADDR", "")).is_loopback
    except ValueError:
        return False


@never_cache
@require_http_methods(["GET", "POST"])
def first(request: HttpRequest) -> HttpResponse:
    """The first visit, on the shop's own machine: it makes the owner."""
    if Person.objects.exists():
        return redirect("sign-in")
    if not _from_here(request):
        raise ValueProblem("the shop has no owner yet: make the first visit on the machine that serves it")
    problem = ""
    name = request.POST.get("name", "")
    if request.method == "POST":
        secret = request.POST.get("secret", "")
        try:
            signing.make_owner(name, _twice(secret, request.POST.get("again", "")))
            signing.sign_in(request, name, secret, shop=False)
            return redirect("home")
        except ValueProblem as refused:
            problem = str(refused)
    context = {"problem": problem, "name": name}
    return render(request, "shop/first.html", context, status=422 if problem else 200)


def _twice(secret: str, again: str) -> str:
    if secret != again:
        raise ValueProblem("the two passwords are not the same: type them again")
    return secret


def _next(request: HttpRequest) -> str:
    target = request.POST.get("next") or request.GET.get("next") or "/"
    safe = url_has_allowed_host_and_scheme(target, allowed_hosts={request.get_host()})
    return target if safe else "/"


@never_cache
@require_http_methods(["GET", "POST"])
def sign_in(request: HttpRequest) -> HttpResponse:
    """Signing in by name and password."""
    if request.method == "GET" and not Person.objects.exists():
        return redirect("first")
    return _sign_in(request, shop=False)


@never_cache
@require_http_methods(["GET", "POST"])
def sign_in_shop(request: HttpRequest) -> HttpResponse:
    """Signing in by name and PIN, on a known tablet."""
    return _sign_in(request, shop=True)


def _sign_in(request: HttpRequest, *, shop: bool) -> HttpResponse:
    problem = ""
    tablet = signing.tablet_of(request)
    if request.method == "POST":
        name, secret = request.POST.get("name", "")[:80], request.POST.get("secret", "")[:200]
        try:
            signing.sign_in(request, name, secret, shop=shop)
            return HttpResponseRedirect(_next(request))
        except ValueProblem as refused:
            problem = str(refused)
    names: tuple[str, ...] = ()
    if shop and tablet is not None:
        people = Person.objects.filter(role=Role.SHOP, is_active=True).order_by("name")
        names = tuple(person.name for person in people)
    context = {"problem": problem, "shop": shop, "tablet": tablet, "names": names, "next": _next(request)}
    return render(request, "shop/sign_in.html", context, status=422 if problem else 200)


@require_POST
def sign_out(request: HttpRequest) -> HttpResponse:
    """The session ends."""
    tablet = signing.tablet_of(request)
    logout(request)
    return redirect("sign-in-shop" if tablet else "sign-in")


@require_http_methods(["GET", "POST"])
def list_people(request: HttpRequest) -> HttpResponse:
    """Everybody who may sign in, and somebody new."""
    problem = ""
    if request.method == "POST":
        try:
            role = _role(request.POST.get("role", ""))
            secret = request.POST.get("secret", "")
            signing.add_person(person_of(request).name, request.POST.get("name", ""), role, secret)
            return redirect("people")
        except ValueProblem as refused:
            problem = str(refused)
    context = {"people": Person.objects.order_by("name"), "roles": list(Role), "problem": problem}
    return render(request, "shop/people.html", context, status=422 if problem else 200)


def _role(text: str) -> Role:
    if text not in set(Role):
        raise ValueProblem(f'"{text[:40]}" is no role: choose one of {", ".join(Role)}')
    return Role(text)


@require_http_methods(["GET", "POST"])
def change(request: HttpRequest, pk: int) -> HttpResponse:
    """Another role or secret for a person, or none."""
    person = get_object_or_404(Person, pk=pk)
    problem = ""
    if request.method == "POST":
        given = request.POST
        try:
            role, active = _role(given.get("role", "")), given.get("active") == "1"
            signing.change_person(person_of(request), person, role, given.get("secret", ""), active=active)
            return redirect("people")
        except ValueProblem as refused:
            problem = str(refused)
            person.refresh_from_db()
    context = {"one": person, "roles": list(Role), "problem": problem}
    return render(request, "shop/person.html", context, status=422 if problem else 200)


@require_http_methods(["GET", "POST"])
def list_tablets(request: HttpRequest) -> HttpResponse:
    """The known tablets; the machine in hand is made one here."""
    problem = ""
    if request.method == "POST":
        response = HttpResponseRedirect(reverse("tablets"))
        try:
            signing.remember_tablet(person_of(request), request.POST.get("name", ""), response)
        except ValueProblem as refused:
            problem = str(refused)
        else:
            return response
    context = {
        "tablets": Tablet.objects.order_by("name"),
        "here": signing.tablet_of(request),
        "problem": problem,
    }
    return render(request, "shop/tablets.html", context, status=422 if problem else 200)


@require_POST
def forget(request: HttpRequest, pk: int) -> HttpResponse:
    """A tablet is known no more."""
    signing.forget_tablet(person_of(request), get_object_or_404(Tablet, pk=pk))
    return redirect("tablets")
