"""The strip of places that a piece passes through, each with the count of what waits there."""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import urlsplit

from django.http import HttpRequest
from django.urls import Resolver404, resolve

from gageline.shop.models import Copy, Cutting, Job, Person, Search, Stage, Stick, Where

__all__ = ["Place", "places", "strip"]


@dataclass(frozen=True, slots=True)
class Place:
    """One place of the strip.

    Args:
        name: what it is called.
        url: the name of its page.
        count: of what waits there.
        waits: what is counted, for those who listen.
    """

    name: str
    url: str
    count: int
    waits: str


def places() -> tuple[Place, ...]:
    """The places that do something, in the order a piece travels."""
    waiting = Copy.objects.filter(active=True)
    counts = {stage: waiting.filter(stage=stage).count() for stage in Stage}
    return (
        Place("Office", "jobs", Job.objects.count(), "jobs"),
        Place("Yard", "yard", Stick.objects.filter(where=Where.YARD).count(), "sticks in stock"),
        Place("Saw", "saw", _to_cut(), "sticks to cut"),
        Place("Bench", "bench", counts[Stage.BENCH], "waiting for layout"),
        Place("Fit", "fit", counts[Stage.FIT], "waiting for fit-up"),
        Place("Check", "check", counts[Stage.CHECK], "waiting for inspection"),
        Place("Gate", "gate", counts[Stage.GATE], "ready to go"),
    )


def _to_cut() -> int:
    return Cutting.objects.filter(plan__state=Search.CHOSEN, done=False).count()


def strip(request: HttpRequest) -> dict[str, object]:
    """What every page shows at its head; the places are counted only where they are shown."""
    person = getattr(request, "user", None)
    if not isinstance(person, Person):
        return {"places": (), "person": None}
    here = _view(request).split("-", maxsplit=1)[0]
    at = {"job": "jobs", "piece": "jobs", "frame": "jobs"}.get(here, here)
    return {"places": places, "person": person, "here": at}


def _view(request: HttpRequest) -> str:
    """The name of the page that is looked at: for a part of it that comes anew, the page it stands on."""
    details = getattr(request, "htmx", None)
    address = details.current_url if details else None
    try:  # by its path alone: behind a proxy the shop does not know the rest of its own address
        match = resolve(urlsplit(address).path) if address else request.resolver_match
    except (Resolver404, ValueError):  # an address that somebody made up
        return ""
    return (match.url_name or "") if match else ""
