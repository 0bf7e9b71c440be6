from __future__ import annotations

from gageline.shop.roles import EVERYBODY, OFFICE, OWNER, WORK, Role


def test_each_circle_lies_in_the_next() -> None:
    assert {Role.OWNER} == OWNER < OFFICE < WORK < EVERYBODY == set(Role)
    assert Role.LOOK not in WORK
