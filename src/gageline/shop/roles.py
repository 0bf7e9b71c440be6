"""Who there is in a shop, and what each may do."""

from __future__ import annotations

from enum import StrEnum

__all__ = ["EVERYBODY", "OFFICE", "OWNER", "WORK", "Role"]


class Role(StrEnum):
    """What a person is in the shop."""

    OWNER = "owner"
    OFFICE = "office"
    SHOP = "shop"
    LOOK = "look"


EVERYBODY = frozenset(Role)
"""All who are signed in, those who only look among them."""
WORK = frozenset({Role.OWNER, Role.OFFICE, Role.SHOP})
"""Those who tick work off."""
OFFICE = frozenset({Role.OWNER, Role.OFFICE})
"""Those who enter and change jobs."""
OWNER = frozenset({Role.OWNER})
"""Those who say who may."""
