"""Fittings that are pulled off their support: bolts in tension beside shear, and prying."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.strength.aisc360.j3_bolts import bolt_tension_with_shear
from gageline.strength.aisc360.manual_prying import prying
from gageline.strength.check import Check, Method, found, step
from gageline.strength.clause import clause_of
from gageline.strength.connection import Bolted, Connection, Fitting
from gageline.strength.verdict import Findings

__all__ = ["PulledEnd", "pulled", "tributary"]


@dataclass(frozen=True, slots=True)
class PulledEnd:
    """A pair of legs or the two sides of a plate that are pulled off.

    Args:
        joint: its bolts, a pair in each row.
        fitting: the angles or the plate.
        b: bolt to the face of the stem, or to the middle of the other leg, in.
        a: bolt to the edge, in.
    """

    joint: Bolted
    fitting: Fitting
    b: float
    a: float


def tributary(joint: Bolted, b: float) -> float:
    """The length of a fitting that bends with one of its bolts, in.

    Args:
        joint: the bolts.
        b: bolt to the face of the stem, or to the middle of the other leg, in.

    Returns:
        The mean of the bolts, no more than the least pitch. Each has half of the way to the next one, or
        all of it to the end, and at most b to either side.

    Source: Manual Part 9, p at most 2 b and at most the spacing (from memory); the mean of the bolts as in
        Examples II.A-2B and II.A-11B.
    """
    halves = [step / 2 for step in joint.steps]
    sides = (joint.edge_top, *(half for half in halves for _ in range(2)), joint.edge_bottom)
    mean = sum(min(side, b) for side in sides) / joint.rows
    return min((mean, *joint.steps))


def pulled(connection: Connection, end: PulledEnd, method: Method) -> Findings:
    """The bolts of a support in tension, with the shear that they also carry, and prying of the fitting.

    Args:
        connection: the connection.
        end: what is pulled off.
        method: design method.

    Returns:
        Two checks; of bolts that their shear uses up the first alone, which fails.

    Source: Sections J3.7 and J3.8, Manual Part 9; Examples II.A-2B and II.A-11B.
    """
    joint, fitting = end.joint, end.fitting
    n = 2 * joint.rows
    each = bolt_tension_with_shear(joint.group, joint.threads, joint.d, connection.V / n, method)
    bolts = each.check(connection.N / n, method, "tension of one bolt that also carries shear")
    if not each.nominal:
        return Findings((bolts,))  # nothing is left for prying to lessen
    left = found(
        "B_c", each.available(method), "kip", "available tension of one bolt beside its shear (J3.8)"
    )
    length = found(
        "p",
        tributary(joint, end.b),
        "in",
        "of the fitting for one bolt: half of the way to the next or all to the end, at most b each side",
    )
    working = prying(
        each.available(method),
        fitting.steel.F_u,
        fitting.t,
        b=end.b,
        a=end.a,
        p=length.value,
        d_b=joint.d,
        d_hole=joint.holes.along,
        method=method,
    )
    capacity = n * working[-1].value
    total = step("T", "n T_c", capacity, "kip", n=n, T_c=working[-1].value)
    pry = Check(
        clause_of(prying),
        "bolts pulled with prying",
        connection.N,
        capacity,
        "kip",
        (left, length, *working, total),
    )
    return Findings((bolts, pry))
