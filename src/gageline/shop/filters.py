"""The few things that templates need and Django's own language lacks."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.template import Library

from gageline.layout import Step
from gageline.shop.models import Stage
from gageline.shop.saying import Said

__all__ = ["face", "register", "said_at", "stage", "thousands"]

register = Library()
_FACES = {
    "top": "top flange", "near": "near web", "bottom": "bottom flange", "far": "far web",
    "leg_a": "leg A", "leg_b": "leg B", "face": "marked face",
}  # fmt: skip


@register.filter
def said_at(said: Mapping[str, Said], place: str) -> Said:
    """What is said at a place of a form; nothing is an empty echo."""
    return said.get(place, Said(place, "echo", ""))


@register.filter
def stage(value: str) -> str:
    """A place of the shop by its name."""
    return Stage(value).label


@register.filter
def face(step: Step) -> str:
    """The face that is up for a step, in the trade's words."""
    return _FACES.get(str(step.face), "") if step.face else ""


@register.filter
def thousands(value: Any) -> str:
    """A weight in whole pounds."""
    return f"{float(value):,.0f}" if value is not None else "-"
