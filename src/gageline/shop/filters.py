"""The few things that templates need and Django's own language lacks."""

from __future__ import annotations

from collections.abc import Mapping

from django.template import Library

from gageline.layout import Step
from gageline.shop.models import Stage
from gageline.shop.saying import Said
from gageline.takeoff import weight_text, weight_unit
from gageline.units import System

__all__ = ["face", "register", "said_at", "said_within", "stage", "weight"]

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
def said_within(said: Mapping[str, Said], place: str) -> bool:
    """Whether an error or a warning is said at a part of a form or in it, so that it must not be folded."""
    loud = (name for name, one in said.items() if one.kind in {"error", "warning"} and one.text)
    return any(name == place or name.startswith(f"{place}-") for name in loud)


@register.filter
def stage(value: str) -> str:
    """A place of the shop by its name."""
    return Stage(value).label


@register.filter
def face(step: Step) -> str:
    """The face that is up for a step, in the trade's words."""
    return _FACES.get(str(step.face), "") if step.face else ""


@register.filter
def weight(pounds: float | None, system: System) -> str:
    """A weight in whole pounds or kilograms with its unit."""
    return "-" if pounds is None else f"{weight_text(pounds, system, 0)} {weight_unit(system)}"
