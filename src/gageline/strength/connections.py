"""A connection in, every limit state that applies to it out."""

from __future__ import annotations

from collections.abc import Callable

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
    parts = [
        _CHECKS[connection.kind](connection, method),
        beam_web(connection, method),
        slip_checks(connection, method),
        detail_rules(connection),
        Findings(not_checked=support_left_out(connection)),
    ]
    found = gathered(parts)
    checks = sorted(found.checks, key=lambda check: -check.utilisation)
    return Verdict(connection, method, tuple(checks), found.rules, found.not_checked)
