"""A connection in, every limit state that applies to it out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache

from gageline.errors import ValueProblem
from gageline.strength.check import Method
from gageline.strength.connection import Connection, Kind
from gageline.strength.kinds import (
    beam_web,
    detail_rules,
    double_angles,
    end_plate,
    extended_plate,
    seat,
    single_angle,
    single_plate,
    slip_checks,
    support_left_out,
)
from gageline.strength.verdict import Findings, Verdict, gathered

__all__ = ["check_connection"]

_KEPT = 512  # connections whose findings are kept: alike ends of a frame, and what was checked before
_CHECKS: dict[Kind, Callable[[Connection, Method], Findings]] = {
    Kind.DOUBLE_ANGLES: double_angles,
    Kind.SINGLE_ANGLE: single_angle,
    Kind.SINGLE_PLATE: single_plate,
    Kind.EXTENDED_PLATE: extended_plate,
    Kind.END_PLATE: end_plate,
    Kind.SEAT: seat,
}


def check_connection(connection: Connection, method: Method) -> Verdict:
    """Everything that is checked of one connection, and what is not.

    Args:
        connection: the connection with its reaction by the same method.
        method: design method.

    Returns:
        The checks, the governing one first, the rules of detail, and what was not checked.

    Raises:
        ValueProblem: the connection lies outside the methods; the message says where.

    Source: ANSI/AISC 360-22 and the Manual's methods that go with it, clause by clause.
    """
    try:
        found = _known(replace(connection, name="", leeway=None), method)
    except ValueProblem:
        found = _found(connection, method)  # says which connection it is
    return Verdict(connection, method, found.checks, found.rules, found.not_checked)


def _found(connection: Connection, method: Method) -> Findings:
    """What is found of a connection, the governing check first."""
    found = gathered(
        (
            (extended_plate if connection.tongue else _CHECKS[connection.kind])(connection, method),
            beam_web(connection, method),
            slip_checks(connection, method),
            detail_rules(connection),
            Findings(not_checked=support_left_out(connection)),
        )
    )
    return replace(found, checks=tuple(sorted(found.checks, key=lambda check: -check.utilisation)))


_known = lru_cache(maxsize=_KEPT)(_found)
