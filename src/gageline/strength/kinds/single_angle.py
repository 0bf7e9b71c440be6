"""A single angle on one side of the beam's web."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.errors import ValueProblem
from gageline.strength.aisc360.f_bars import bar_yielding
from gageline.strength.aisc360.j4_elements import flexural_rupture
from gageline.strength.check import Method, Step, Strength
from gageline.strength.connection import Bolted, Connection, Fillet
from gageline.strength.groups import wrench
from gageline.strength.kinds.beam_web import first_row
from gageline.strength.kinds.bolted import (
    Ply,
    block_of_fitting,
    eccentric_rows,
    net_modulus,
    net_shear,
    rows_of_bolts,
    yield_of_fitting,
)
from gageline.strength.kinds.support import shared_bolts, support_ply
from gageline.strength.kinds.welded import beside_weld, eccentric_lines, upright_line
from gageline.strength.verdict import Findings, NotChecked, gathered

__all__ = ["as_reaction", "single_angle"]

_MOST_GAGE = 3.0
_AXIAL = NotChecked("the axial force", "it is not followed through a single angle")
State = tuple[str, Strength]


def as_reaction(strength: Strength, e: float) -> Strength:
    """A bending strength as the reaction that uses it up.

    Args:
        strength: in kip-inches.
        e: from the reaction to the section that bends, in.

    Returns:
        Strength in kips.
    """
    symbol = strength.steps[-1].symbol
    last = Step("R_n", f"{symbol}/e", ((symbol, strength.nominal), ("e", e)), strength.nominal / e, "kip")
    return Strength(strength.clause, last.value, strength.factors, "kip", (*strength.steps, last))


def single_angle(connection: Connection, method: Method) -> Findings:
    """Angle, bolts and welds of a single-angle connection, bolted to the beam.

    Args:
        connection: the connection.
        method: design method.

    Returns:
        Checks; the beam's web and the rules of detail are apart.

    Raises:
        ValueProblem: an angle welded to the beam's web, or bolts there more than 3 in from the heel.

    Source: Manual Part 10, single-angle connections; Example II.A-28A. The reaction acts in the middle of
        the beam's web, so that the joint with the support has the gage and half the web for its eccentricity.
    """
    joint = connection.to_beam
    if isinstance(joint, Fillet):
        raise ValueProblem(
            "a single angle welded to the beam's web is outside the Manual's method: "
            "bolt it to the web, or use two angles"
        )
    if joint.gage > _MOST_GAGE or joint.columns > 1:
        raise ValueProblem(
            f"bolts {joint.gage:g} in from the heel in {joint.columns} columns: the method leaves out their "
            f"eccentricity up to {_MOST_GAGE:g} in and one column: move them nearer"
        )
    states = [*_angle(connection), *_to_beam(connection, joint), *_to_support(connection)]
    found = Findings(
        tuple(state.check(connection.V, method, title) for title, state in states),
        not_checked=(_AXIAL,) if connection.N else (),
    )
    return gathered([found, shared_bolts(connection, 1, method)])


def _angle(connection: Connection) -> Iterator[State]:
    fitting, web, out = connection.fitting, connection.to_beam, connection.to_support
    yield "shear yielding of the angle", yield_of_fitting(fitting, 1)
    joints = [joint for joint in (web, out) if isinstance(joint, Bolted)]
    yield "shear rupture of the angle", min((net_shear(fitting, j, 1) for j in joints), key=_nominal)
    if isinstance(web, Bolted):
        block = block_of_fitting(fitting, web, 1, pushed_up=False)
        yield "block shear of the angle, leg on the beam", block
    half = connection.end.t_w / 2
    e = (out.gage if isinstance(out, Bolted) else fitting.out) + half
    bending = as_reaction(bar_yielding(fitting.steel.F_y, fitting.length, fitting.t), e)
    yield "bending of the outstanding leg", bending
    if isinstance(out, Bolted):
        block = block_of_fitting(fitting, out, 1, pushed_up=True)
        yield "block shear of the angle, outstanding leg", block
        rupture = as_reaction(flexural_rupture(fitting.steel.F_u, net_modulus(fitting, out)), e)
        yield "flexural rupture of the outstanding leg", rupture


def _nominal(strength: Strength) -> float:
    return strength.nominal


def _to_beam(connection: Connection, joint: Bolted) -> Iterator[State]:
    beam, fitting = connection.end, connection.fitting
    edge = first_row(connection, joint) if beam.top else None
    plies = (
        Ply(fitting.steel, fitting.t, joint.holes, joint.edge_bottom),
        Ply(beam.steel, beam.t_w, joint.other, edge, at_top=True),
    )
    yield "bolts through the beam web", rows_of_bolts(joint, 1, plies)


def _to_support(connection: Connection) -> Iterator[State]:
    fitting, joint, support = connection.fitting, connection.to_support, connection.support
    half = connection.end.t_w / 2
    if isinstance(joint, Bolted):
        plies = (
            Ply(fitting.steel, fitting.t, joint.holes, joint.edge_top, at_top=True),
            *support_ply(support, joint, 1),
        )
        e = joint.gage + half
        yield "bolts to the support, eccentric", eccentric_rows(joint, 1, plies, e)
        return
    e = fitting.out + half
    weld = eccentric_lines(joint, upright_line(fitting.length), wrench(0.0, e).tolist(), e, 1)
    yield "weld to the support, along the toe", weld
    if support is not None:
        yield "support beside the weld", beside_weld(weld, joint, support.steel, support.t, 1)
