"""What stands at the door: sizes, headers, who may, and plain words when the machine is full."""

from __future__ import annotations

import errno
from collections.abc import Callable
from typing import Any

from django.contrib.auth import logout
from django.db import DatabaseError
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect, JsonResponse
from django.shortcuts import render
from django.urls import reverse

from gageline.errors import GagelineError
from gageline.shop.access import OPEN, roles_of
from gageline.shop.models import Person, Tablet

__all__ = ["LARGEST_BODY", "Gatekeeper", "Headers", "Limits", "stale_form"]

LARGEST_BODY = 21_000_000  # bytes; the largest job document and its form
_LARGEST_FORM = 2_500_000  # bytes where no file is expected
_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
    "connect-src 'self'; manifest-src 'self'; worker-src 'self'; frame-src 'self'; form-action 'self'; "
    "frame-ancestors 'none'; base-uri 'none'"
)
Next = Callable[[HttpRequest], HttpResponse]


def refusal(request: HttpRequest, status: int, title: str, message: str) -> HttpResponse:
    """A page that says no in plain words."""
    if request.headers.get("accept", "").startswith("application/json"):
        return JsonResponse({"refused": message}, status=status)
    return render(request, "shop/refused.html", {"title": title, "message": message}, status=status)


def stale_form(request: HttpRequest, reason: str = "") -> HttpResponse:
    """The answer to a form that this session did not hand out."""
    return refusal(
        request, 403, "This form is from another session",
        "It was opened before you signed in, or sent from elsewhere. Nothing was changed. Open the page "
        f"again and fill it in there. ({reason})",
    )  # fmt: skip


class Limits:
    """Refuses what is too large before a byte of it is read."""

    def __init__(self, get_response: Next) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Pass a request on, or refuse it for its size."""
        text = request.headers.get("content-length") or "0"
        size = int(text) if text.isdigit() else 0
        is_file = request.content_type == "multipart/form-data"
        limit = LARGEST_BODY if is_file else _LARGEST_FORM
        if size > limit:
            request.session = {}  # type: ignore[assignment] # no session is read for what is refused here
            message = f"too large: {size / 1e6:.0f} MB were sent and {limit / 1e6:.0f} MB are the limit"
            return HttpResponse(message, status=413, content_type="text/plain; charset=utf-8")
        return self.get_response(request)


class Headers:
    """Puts the content policy on every answer that has none of its own; no shared cache keeps a page."""

    def __init__(self, get_response: Next) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Pass a request on and mark the answer."""
        response = self.get_response(request)
        if "Content-Security-Policy" not in response:
            response["Content-Security-Policy"] = _POLICY
        response.setdefault("Referrer-Policy", "same-origin")
        response.setdefault("X-Content-Type-Options", "nosniff")
        response.setdefault("Permissions-Policy", "camera=(), microphone=(), geolocation=()")
        response.setdefault("Cache-Control", "private, no-cache")
        return response


class Gatekeeper:
    """Lets everybody to the pages of their role and to no others."""

    def __init__(self, get_response: Next) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Pass a request on."""
        return self.get_response(request)

    def process_view(
        self, request: HttpRequest, _view: object, _args: tuple[Any, ...], _kwargs: dict[str, Any]
    ) -> HttpResponse | None:
        """Refuse a page before it runs; a page that is not on the list is refused to everybody."""
        match = request.resolver_match
        roles = roles_of(match.url_name if match else None)
        if roles is OPEN:
            return None
        person = request.user
        if isinstance(person, Person) and _tablet_forgotten(request):
            logout(request)
            person = request.user
        if not isinstance(person, Person):
            return _to_sign_in(request)
        if roles is None or person.role not in roles:
            return refusal(
                request, 403, "Not for you", f"{person.name} ({person.role}) may not do this: ask the owner."
            )
        return None

    def process_exception(self, request: HttpRequest, wrong: Exception) -> HttpResponse | None:
        """Say in plain words what went wrong with the disk or with what was typed."""
        words = str(wrong).lower()
        is_full = isinstance(wrong, OSError) and wrong.errno in {errno.ENOSPC, errno.EDQUOT}
        if is_full or (isinstance(wrong, DatabaseError) and ("full" in words or "no space" in words)):
            return refusal(
                request, 507, "The disk is full",
                "The disk of the shop's machine is full. This was not saved, and nothing else is lost. Free "
                "space there and do it again.",
            )  # fmt: skip
        is_locked = isinstance(wrong, OSError) and wrong.errno in {errno.EROFS, errno.EACCES, errno.EPERM}
        if is_locked or (isinstance(wrong, DatabaseError) and ("readonly" in words or "read-only" in words)):
            return refusal(
                request, 507, "The data folder cannot be written",
                "The shop's data folder is read-only. This was not saved, and nothing else is lost. Give the "
                "user who started the shop the right to write there.",
            )  # fmt: skip
        if isinstance(wrong, DatabaseError) and ("unable to open" in words or "disk i/o" in words):
            return refusal(
                request, 507, "The database cannot be reached",
                "The shop's database cannot be opened. This was not saved. Look at the data folder "
                "and its disk.",
            )  # fmt: skip
        if isinstance(wrong, GagelineError):
            return refusal(request, 422, "This cannot be", str(wrong))
        return None


def _tablet_forgotten(request: HttpRequest) -> bool:
    known = request.session.get("tablet")
    return known is not None and not Tablet.objects.filter(pk=known).exists()


def _to_sign_in(request: HttpRequest) -> HttpResponse:
    if request.headers.get("accept", "").startswith("application/json"):
        return JsonResponse({"refused": "signed out: sign in again"}, status=401)
    if getattr(request, "htmx", False):  # the page stays as it is, with what is typed into it
        said = render(request, "shop/part_signed_out.html")
        said["HX-Retarget"], said["HX-Reswap"] = "#net", "innerHTML"
        return said
    if not Person.objects.exists():
        return HttpResponseRedirect(reverse("first"))
    if request.method == "POST" and not request.FILES:
        typed = [(key, value) for key, values in request.POST.lists() for value in values]
        fields = [one for one in typed if one[0] != "csrfmiddlewaretoken"]
        return render(request, "shop/signed_out.html", {"fields": fields}, status=401)
    return HttpResponseRedirect(f"{reverse('sign-in')}?next={request.path}")
