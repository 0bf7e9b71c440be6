"""Which page is for whom: the whole list, in one place."""

from __future__ import annotations

from gageline.shop.roles import EVERYBODY, OFFICE, OWNER, WORK, Role

__all__ = ["ACCESS", "OPEN", "roles_of"]

OPEN: frozenset[Role] = frozenset()
"""Even those who are not signed in: no role is asked for."""

ACCESS: dict[str, frozenset[Role]] = {
    "home": EVERYBODY,
    "first": OPEN,
    "sign-in": OPEN,
    "sign-in-shop": OPEN,
    "sign-out": EVERYBODY,
    "worker": OPEN,
    "people": OWNER,
    "person": OWNER,
    "tablets": OWNER,
    "tablet-forget": OWNER,
    "counts": EVERYBODY,
    "echo": OFFICE,
    "jobs": EVERYBODY,
    "job-new": OFFICE,
    "job-import": OFFICE,
    "job": EVERYBODY,
    "job-facts": OFFICE,
    "job-facts-look": OFFICE,
    "job-text": OFFICE,
    "job-strength": EVERYBODY,
    "frame": EVERYBODY,
    "frame-grid": OFFICE,
    "frame-new": OFFICE,
    "frame-look": OFFICE,
    "frame-edit": OFFICE,
    "frame-remove": OFFICE,
    "job-export": EVERYBODY,
    "job-print": EVERYBODY,
    "job-parts": EVERYBODY,
    "job-labels": EVERYBODY,
    "job-log": EVERYBODY,
    "job-undo": OFFICE,
    "piece-new": OFFICE,
    "piece-edit": OFFICE,
    "piece-picture": OFFICE,
    "piece-remove": OFFICE,
    "piece-undo": OFFICE,
    "piece": EVERYBODY,
    "piece-odds": EVERYBODY,
    "piece-solid": EVERYBODY,
    "piece-dxf": EVERYBODY,
    "yard": EVERYBODY,
    "yard-new": WORK,
    "yard-said": WORK,
    "yard-rack": OFFICE,
    "yard-export": EVERYBODY,
    "yard-csv": EVERYBODY,
    "yard-stick": EVERYBODY,
    "yard-edit": WORK,
    "yard-measure": WORK,
    "yard-assign": WORK,
    "yard-way": WORK,
    "yard-odds": EVERYBODY,
    "yard-card": EVERYBODY,
    "yard-remove": WORK,
    "yard-back": WORK,
    "saw": EVERYBODY,
    "saw-new": WORK,
    "saw-plan": EVERYBODY,
    "saw-stop": WORK,
    "saw-choose": WORK,
    "saw-print": EVERYBODY,
    "saw-card": EVERYBODY,
    "bench": EVERYBODY,
    "bench-card": EVERYBODY,
    "fit": EVERYBODY,
    "fit-card": EVERYBODY,
    "check": EVERYBODY,
    "check-card": EVERYBODY,
    "check-outcome": EVERYBODY,
    "check-print": EVERYBODY,
    "gate": EVERYBODY,
    "gate-send": WORK,
    "gate-back": WORK,
    "ticks": WORK,
    "tick": WORK,
}


def roles_of(name: str | None) -> frozenset[Role] | None:
    """Who may open the page of a name: OPEN for everybody, None for nobody."""
    return ACCESS.get(name or "")
