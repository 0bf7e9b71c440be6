"""A single angle on one side of the beam's web."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.strength.aisc360.f_bars import bar_yielding
from gageline.strength.check import Method, Strength
from gageline.strength.connection import Bolted, Connection
from gageline.strength.groups import wrench
from gageline.strength.kinds.areas import net_shear
from gageline.strength.kinds.bolted import (
    Ply,
    block_of_fitting,
    eccentric_rows,
    rupture_of_net,
    yield_of_fitting,
)
from gageline.strength.kinds.support import shared_bolts, support_ply
from gageline.strength.kinds.web_legs import SHORT_BEAM, as_reaction, web_bolts, web_weld
from gageline.strength.kinds.welded import beside_weld, eccentric_lines, l_shape
from gageline.strength.verdict import Findings, NotChecked, gathered

__all__ = ["single_angle"]

_AXIAL = NotChecked(
    "the axial force",
    "an angle on one side of the web pries and twists, and no method of the Manual follows that",
)
State = tuple[str, Strength]


def single_angle(connection: Connection, method: Method) -> Findings:
    """Angle, bolts and welds of a single-angle connection.

    Args:
        connection: the connection.
        method: design method.

    Returns:
        Checks; the beam's web and the rules of detail are apart.

    Source: Manual Part 10, single-angle connections; Example II.A-28A. The reaction acts in the middle of
        the beam's web, so that the joint with the support has the gage and half the web for its eccentricity.
        A leg welded to the support is welded along its toe and its foot, as in Table 10-12; one welded to the
        web is the weld A of Table 10-2 on one side.
    """
    joint = connection.to_beam
    if isinstance(joint, Bolted):
        on_web = tuple(web_bolts(connection, joint, 1))
    else:
        beam, weld = connection.end, web_weld(connection, joint, 1)
        beside = beside_weld(weld, joint, beam.steel, beam.t_w, 1)
        on_web = (("weld to the beam web", weld), ("beam web beside the weld", beside))
    states = [*_angle(connection), *on_web, *_to_support(connection)]
    found = Findings(
        tuple(state.check(connection.V, method, title) for title, state in states),
        not_checked=(
            *(() if isinstance(joint, Bolted) else (SHORT_BEAM,)),
            *((_AXIAL,) if connection.N else ()),
        ),
    )
    return gathered([found, shared_bolts(connection, 1, method)])


def _angle(connection: Connection) -> Iterator[State]:
    fitting, web, out = connection.fitting, connection.to_beam, connection.to_support
    yield "shear yielding of the angle", yield_of_fitting(fitting, 1)
    joints = [joint for joint in (web, out) if isinstance(joint, Bolted)]
    weakest = min((net_shear(fitting, j, 1) for j in joints), key=_nominal, default=None)
    yield "shear rupture of the angle", weakest or net_shear(fitting, None, 1)
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
        rupture = as_reaction(rupture_of_net(fitting, out), e)
        yield "flexural rupture of the outstanding leg", rupture


def _nominal(strength: Strength) -> float:
    return strength.nominal


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
    foot = fitting.out**2 / 2 / (fitting.length + fitting.out)
    e = fitting.out - foot + half
    weld = eccentric_lines(joint, l_shape(fitting.length, fitting.out), wrench(0.0, -half).tolist(), e, 1)
    yield "weld to the support, along the toe and the foot", weld
    if support is not None:
        beside = beside_weld(weld, joint, support.steel, support.t, support.sides)
        yield "support beside the weld", beside
