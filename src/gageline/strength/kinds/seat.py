"""Unstiffened seats: an angle under the beam, with an angle above that only holds it upright."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.errors import ValueProblem
from gageline.strength.aisc360.j10_forces import web_local_crippling, web_local_yielding
from gageline.strength.aisc360.manual_seats import (
    required_bearing_length,
    seat_eccentricity,
    seat_leg_flexure,
    seat_weld,
)
from gageline.strength.check import Check, Method, Strength
from gageline.strength.connection import Bolted, Connection
from gageline.strength.kinds.bolted import Ply, rows_of_bolts, yield_of_fitting
from gageline.strength.kinds.support import support_ply
from gageline.strength.kinds.welded import beside_weld, counted
from gageline.strength.verdict import Findings, NotChecked

__all__ = ["seat"]

_LEFT_OUT = (
    NotChecked(
        "the angle or other steadying of the beam's top", "it carries no reaction and is not sized here"
    ),
)
_PRYING = NotChecked(
    "tension and prying of the seat's bolts", "the Manual's tables count the shear of the bolts alone"
)
_AXIAL = NotChecked("the axial force", "it is not followed through a seat")
State = tuple[str, Strength]


def seat(connection: Connection, method: Method) -> Findings:
    """Beam web over an unstiffened seat, the seat's angle, and its welds or bolts.

    Args:
        connection: the connection; `fitting.out` is the leg under the beam, `fitting.leg` the upright one,
            `fitting.length` runs along the support.
        method: design method.

    Returns:
        Checks. The bending of the leg is found for the length of bearing that the reaction needs.

    Raises:
        ValueProblem: a coped beam, or a leg shorter than the gap.

    Source: Manual Part 10, Tables 10-5 and 10-6; Example II.A-16.
    """
    beam, fitting = connection.end, connection.fitting
    if beam.bottom:
        raise ValueProblem("the beam is coped at its bottom, where a seat bears: leave the flange whole")
    if fitting.out <= connection.gap:
        raise ValueProblem(
            f"the seat's leg of {fitting.out:g} in does not reach past the gap of {connection.gap:g} in: "
            "use a longer leg"
        )
    l_b = fitting.out - connection.gap
    states = [*_web(connection, l_b), *_leg(connection, method), *_joint(connection)]
    joint = connection.to_support
    left_out = (
        *_LEFT_OUT,
        *((_PRYING,) if isinstance(joint, Bolted) else ()),
        *((_AXIAL,) if connection.N else ()),
    )
    checks: tuple[Check, ...] = tuple(state.check(connection.V, method, title) for title, state in states)
    return Findings(checks, not_checked=left_out)


def _web(connection: Connection, l_b: float) -> Iterator[State]:
    beam = connection.end
    yielding = web_local_yielding(beam.steel.F_y, beam.t_w, beam.k, l_b, beam.d, 0.0)
    yield "local yielding of the beam web over the seat", yielding
    crippling = web_local_crippling(beam.steel.F_y, beam.t_w, beam.t_f, beam.d, l_b, 0.0)
    yield "local crippling of the beam web over the seat", crippling


def _leg(connection: Connection, method: Method) -> Iterator[State]:
    beam, fitting = connection.end, connection.fitting
    lines = required_bearing_length(connection.V, beam.steel.F_y, beam.t_w, beam.t_f, beam.d, beam.k, method)
    e = seat_eccentricity(lines[-1].value, connection.gap, fitting.t)
    yield "shear of the seat's leg", yield_of_fitting(fitting, 1)
    if e.value > 0:
        bending = seat_leg_flexure(fitting.steel.F_y, fitting.length, fitting.t, e.value)
        working = (*lines, e, *bending.steps)
        yield (
            "bending of the seat's leg",
            Strength(bending.clause, bending.nominal, bending.factors, bending.unit, working),
        )


def _joint(connection: Connection) -> Iterator[State]:
    fitting, joint, support = connection.fitting, connection.to_support, connection.support
    if isinstance(joint, Bolted):
        angle = Ply(fitting.steel, 2 * fitting.t, joint.holes, joint.edge_top, at_top=True)
        plies = (angle, *support_ply(support, joint, 2))
        yield "bolts of the seat, in pairs", rows_of_bolts(joint, 2, plies)
        return
    sized, short = counted(joint, fitting.leg)
    eccentric = (fitting.out + connection.gap) / 2
    metal = seat_weld(sized.leg, fitting.leg, eccentric, joint.F_EXX).after(*short)
    yield "welds of the seat", metal
    if support is not None:
        beside = beside_weld(metal, joint, support.steel, support.t, support.sides)
        yield "support beside the weld", beside
