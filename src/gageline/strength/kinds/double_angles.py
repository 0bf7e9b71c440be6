"""Double angles: bolted or welded to the beam's web, bolted or welded to the support."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from gageline.strength.aisc360.j4_elements import block_shear
from gageline.strength.check import Check, Method, Strength, step
from gageline.strength.connection import Bolted, Connection, Fillet
from gageline.strength.groups import wrench
from gageline.strength.kinds.areas import net_shear
from gageline.strength.kinds.axial import resultant_of, through_bolts
from gageline.strength.kinds.bolted import (
    Ply,
    block_of_fitting,
    rows_of_bolts,
    yield_of_fitting,
)
from gageline.strength.kinds.pulled import PulledEnd, pulled
from gageline.strength.kinds.support import shared_bolts, support_ply
from gageline.strength.kinds.web_legs import SHORT_BEAM, pulled_web, web_bolts, web_weld
from gageline.strength.kinds.welded import beside_weld, eccentric_lines, upright_line
from gageline.strength.verdict import Findings, NotChecked, gathered

__all__ = ["double_angles"]

_PAIR = 2
_PULL = NotChecked(
    "the axial force on the weld to the support",
    "the legs bend between their toes and heels, and no method of the Manual follows that into the weld",
)
State = tuple[str, Strength]


def double_angles(connection: Connection, method: Method) -> Findings:
    """Angles, bolts and welds of a pair of connection angles.

    Args:
        connection: the connection.
        method: design method.

    Returns:
        Checks; the beam's web and the rules of detail are apart.

    Source: Manual Part 10, Tables 10-1 to 10-3 and Examples II.A-1 to II.A-5.
    """
    states = [*_angles(connection), *_to_beam(connection), *_to_support(connection)]
    found = Findings(
        tuple(state.check(connection.V, method, title) for title, state in states),
        not_checked=(SHORT_BEAM,) if isinstance(connection.to_beam, Fillet) else (),
    )
    return gathered([found, shared_bolts(connection, _PAIR, method), _axial(connection, method)])


def _angles(connection: Connection) -> Iterator[State]:
    fitting = connection.fitting
    yield "shear yielding of the angles", yield_of_fitting(fitting, _PAIR)
    joints = [joint for joint in (connection.to_beam, connection.to_support) if isinstance(joint, Bolted)]
    weakest = min((net_shear(fitting, joint, _PAIR) for joint in joints), key=_nominal, default=None)
    yield "shear rupture of the angles", weakest or net_shear(fitting, None, _PAIR)
    if isinstance(connection.to_beam, Bolted):
        block = block_of_fitting(fitting, connection.to_beam, _PAIR, pushed_up=False)
        yield "block shear of the angles, legs on the beam", block
    if isinstance(connection.to_support, Bolted):
        block = block_of_fitting(fitting, connection.to_support, _PAIR, pushed_up=True)
        yield "block shear of the angles, outstanding legs", block


def _nominal(strength: Strength) -> float:
    return strength.nominal


def _to_beam(connection: Connection) -> Iterator[State]:
    beam, joint = connection.end, connection.to_beam
    if isinstance(joint, Bolted):
        yield from web_bolts(connection, joint, _PAIR)
        return
    weld = web_weld(connection, joint, _PAIR)
    yield "weld to the beam web", weld
    yield "beam web beside the weld", beside_weld(weld, joint, beam.steel, beam.t_w, 2)


def _to_support(connection: Connection) -> Iterator[State]:
    fitting, joint, support = connection.fitting, connection.to_support, connection.support
    if isinstance(joint, Bolted):
        angles = Ply(fitting.steel, _PAIR * fitting.t, joint.holes, joint.edge_top, at_top=True)
        plies = (angles, *support_ply(support, joint, _PAIR))
        yield "bolts to the support, in pairs", rows_of_bolts(joint, _PAIR, plies)
        return
    weld = eccentric_lines(
        joint, upright_line(fitting.length), wrench(0.0, fitting.out).tolist(), fitting.out, _PAIR
    )
    yield "weld to the support", weld
    if support is not None:
        beside = beside_weld(weld, joint, support.steel, support.t, support.sides)
        yield "support beside the weld", beside


def _axial(connection: Connection, method: Method) -> Findings:
    if not connection.N:
        return Findings()
    on_web, joint, fitting = connection.to_beam, connection.to_support, connection.fitting
    if isinstance(on_web, Bolted):
        parts = [through_bolts(connection, pulled_web(connection, on_web, _PAIR), method)]
    else:
        parts = [_pulled_weld(connection, on_web, method)]
    if isinstance(joint, Bolted):
        end = PulledEnd(joint, fitting, b=joint.gage - fitting.t / 2, a=joint.edge_side)
        parts.append(pulled(connection, end, method))
    else:
        parts.append(Findings(not_checked=(_PULL,)))
    return gathered(parts)


def _pulled_weld(connection: Connection, weld: Fillet, method: Method) -> Findings:
    beam, fitting = connection.end, connection.fitting
    resultant, angle = resultant_of(connection)
    metal = web_weld(connection, weld, _PAIR, -angle)
    legs = fitting.leg - connection.gap
    sheared = step("A_gv", "2 l t_w", 2 * legs * beam.t_w, "in²", l=legs, t_w=beam.t_w)
    torn = step("A_nt", "L t_w", fitting.length * beam.t_w, "in²", L=fitting.length, t_w=beam.t_w)
    block = block_shear(beam.steel.F_y, beam.steel.F_u, sheared.value, sheared.value, torn.value).after(
        replace(sheared, note="also A_nv: no holes"), torn
    )
    checks: tuple[Check, ...] = (
        metal.check(resultant, method, "weld to the beam web, both forces"),
        beside_weld(metal, weld, beam.steel, beam.t_w, 2).check(
            resultant, method, "beam web beside the weld, both forces"
        ),
        block.check(connection.N, method, "block shear of the beam web, axial force"),
    )
    return Findings(checks)
