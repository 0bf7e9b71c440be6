"""Slip-critical joints: bolts that hold by friction, beside their bearing, checked as in any joint."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from gageline.steel import BoltGroup, bolt, pretension
from gageline.strength.aisc360.j3_bolts import Hole, slip, slip_with_tension
from gageline.strength.check import Check, Method, Step, Strength, step
from gageline.strength.connection import Bolted, Connection, Kind
from gageline.strength.kinds.axial import resultant_of
from gageline.strength.kinds.bolted import bolt_coefficient
from gageline.strength.kinds.single_plate import conventional_eccentricity
from gageline.strength.kinds.web_legs import eccentricity_on_web
from gageline.strength.verdict import Findings, NotChecked

__all__ = ["slip_checks"]

_FROM_STRICT = (
    Hole.LONG_PARALLEL,
    Hole.LONG_PERPENDICULAR,
    Hole.SHORT_PARALLEL,
    Hole.OVERSIZED,
    Hole.SHORT_PERPENDICULAR,
    Hole.STANDARD,
)
_ONE_ANGLE = frozenset({Kind.SINGLE_ANGLE, Kind.SINGLE_PLATE, Kind.EXTENDED_PLATE})
_SURFACES = NotChecked(
    "the faying surfaces and the tightening of the slip-critical bolts",
    "their class and the pretension of Table J3.1 are taken: what is on the steel, and how the bolts are "
    "tightened and inspected, is the shop's and the site's to show",
)


@dataclass(frozen=True, slots=True)
class _Friction:
    """One joint that holds by friction.

    Args:
        joint: its bolts.
        where: what it is bolted to.
        per_row: bolts side by side in one row of one column.
        planes: slip planes of one bolt.
        e: level from the reaction to the middle of the bolts, in; zero where the method leaves it out.
    """

    joint: Bolted
    where: str
    per_row: int
    planes: int
    e: float


def slip_checks(connection: Connection, method: Method) -> Findings:
    """Slip of the joints whose bolts are slip-critical.

    Args:
        connection: the connection.
        method: design method.

    Returns:
        A check for each such joint; nothing where bolts bear.

    Source: Sections J3.9 and J3.10; Manual Part 7 for an eccentric group, with the coefficient C for bolts
        that bear, as its tables are used for slip-critical bolts too (from memory). No fillers.
    """
    joints = [one for one in _joints(connection) if one.joint.surface]
    checks = tuple(_check(connection, one, method) for one in joints)
    return Findings(checks, not_checked=(_SURFACES,) if joints else ())


def _joints(connection: Connection) -> Iterator[_Friction]:
    kind, web, support = connection.kind, connection.to_beam, connection.to_support
    alone = kind in _ONE_ANGLE
    if isinstance(web, Bolted) and kind is not Kind.SEAT:
        yield _Friction(web, "beam", 1, 1 if alone else 2, _on_web(connection, web))
    if isinstance(support, Bolted):
        e = support.gage + connection.end.t_w / 2 if kind is Kind.SINGLE_ANGLE else 0.0
        yield _Friction(support, "support", 1 if alone else 2, 1, e)


def _on_web(connection: Connection, joint: Bolted) -> float:
    if connection.kind is Kind.EXTENDED_PLATE or connection.tongue is not None:
        return joint.gage + joint.width / 2
    if connection.kind is Kind.SINGLE_PLATE:
        return conventional_eccentricity(joint)
    return eccentricity_on_web(joint)


def _check(connection: Connection, one: _Friction, method: Method) -> Check:
    joint = one.joint
    total, angle = resultant_of(connection) if one.where == "beam" else (connection.V, 0.0)
    T_b = pretension(bolt(joint.size), BoltGroup(int(joint.group)))
    each = slip(T_b, _strictest(connection, one), n_s=one.planes, surface=joint.surface)
    n = joint.rows * joint.columns
    C = bolt_coefficient(joint, one.e, angle) if one.e else float(n)
    single = Step("r_n", each.steps[-1].formula, each.steps[-1].values, each.nominal, "kip")
    given = {"C": C, "n_p": one.per_row, "r_n": each.nominal}
    working: tuple[Step, ...] = (single,)
    formula, nominal = "C n_p r_n", C * one.per_row * each.nominal
    if one.where == "support" and connection.N:
        left = slip_with_tension(T_b, n * one.per_row, connection.N, method)
        working += (left,)
        formula, nominal = "C n_p k_sc r_n", nominal * left.value
        given["k_sc"] = left.value
    last = step("R_n", formula, nominal, "kip", **given)
    strength = Strength(each.clause, nominal, each.factors, "kip", (*working, last))
    return strength.check(total, method, f"slip of the bolts to the {one.where}, surfaces {joint.surface}")


def _strictest(connection: Connection, one: _Friction) -> Hole:
    """The kind of hole with the lowest factors; an axial force turns the load along level slots."""
    kinds = {one.joint.holes.kind, one.joint.other.kind}
    if one.where == "beam" and connection.N and Hole.SHORT_PERPENDICULAR in kinds:
        kinds.add(Hole.SHORT_PARALLEL)
    return next(kind for kind in _FROM_STRICT if kind in kinds)
