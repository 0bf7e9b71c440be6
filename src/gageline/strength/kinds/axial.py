"""Axial force through bolts in the beam's web: the bolts, the fitting that they pull, and the web."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from gageline.strength.aisc360.h_combined import axial_shear_and_flexure
from gageline.strength.aisc360.j4_elements import (
    block_shear,
    flexural_yielding,
    tensile_rupture,
    tensile_yielding,
)
from gageline.strength.aisc360.standard import manual
from gageline.strength.check import Check, Method, Strength, step
from gageline.strength.clause import clause_of
from gageline.strength.connection import Bolted, Connection, Holes, Material
from gageline.strength.kinds.areas import net_hole, pulled_areas
from gageline.strength.kinds.beam_web import bolted_block, end_distance, first_row
from gageline.strength.kinds.bolted import (
    Ply,
    block_of_fitting,
    eccentric_rows,
    rows_of_bolts,
    yield_of_fitting,
)
from gageline.strength.verdict import Findings

__all__ = ["PulledWeb", "pulled_block", "resultant_of", "through_bolts"]

_BOTH = manual("Part 9", "Block shear under shear and axial force together")


@dataclass(frozen=True, slots=True)
class PulledWeb:
    """A fitting that bolts in the beam's web pull.

    Args:
        joint: the bolts.
        fitting: the fitting's part of what they bear on.
        web: the beam's web, where the beam is known.
        count: how many fittings stand side by side, which is also the number of shear planes.
        e: level from the reaction to the middle of the bolts, in; zero where the method leaves it out.
        arm: from the reaction to the section of the fitting that bends, in; zero where it does not bend.
    """

    joint: Bolted
    fitting: Ply
    web: Ply | None
    count: int
    e: float = 0.0
    arm: float = 0.0


def resultant_of(connection: Connection) -> tuple[float, float]:
    """Both forces as one.

    Returns:
        Its size in kips, and its angle from upright in degrees.
    """
    return math.hypot(connection.V, connection.N), math.degrees(math.atan2(connection.N, connection.V))


def pulled_block(
    steel: Material, t: float, joint: Bolted, holes: Holes, reach: float, end: float | None
) -> Strength:
    """Block shear where bolts are pulled toward an edge that runs along their rows' ends.

    Args:
        steel: of the part.
        t: its thickness, in.
        joint: the bolts.
        holes: of the part.
        reach: from the edge to the farthest column, in.
        end: from the first row, or the last, to a free end of the part above or below, in; None without one.

    Returns:
        Strength in kips: of the block between the outer rows, or of the one that also takes a free end.

    Source: Section J4.3.
    """
    on_line = (reach, joint.columns - 0.5)
    found = []
    if joint.rows > 1:
        found.append(pulled_areas(t, holes, on_line, (joint.span, joint.rows - 1), 2))
    if end is not None:
        found.append(pulled_areas(t, holes, on_line, (end + joint.span, joint.rows - 0.5), 1))
    blocks = [
        block_shear(steel.F_y, steel.F_u, *(area.value for area in areas[-3:])).after(*areas)
        for areas in found
    ]
    return min(blocks, key=lambda strength: strength.nominal)


def through_bolts(connection: Connection, pulled: PulledWeb, method: Method) -> Findings:
    """What an axial force asks of bolts in the beam's web, of their fitting and of the web.

    Args:
        connection: the connection, with an axial force.
        pulled: the joint.
        method: design method.

    Returns:
        Checks; those of the reaction alone are apart.

    Source: Manual Part 9 with Equation 9-1; the sum of squares of both block shears as in the Design
        Examples (II.A-1B and II.A-17B, from memory).
    """
    joint, fitting, web = pulled.joint, connection.fitting, pulled.web
    total, angle = resultant_of(connection)
    plies = [replace(pulled.fitting, side=joint.edge_side)]
    if web is not None:
        plies.append(replace(web, side=end_distance(connection, joint)))
    group = (
        eccentric_rows(joint, pulled.count, plies, pulled.e, angle)
        if pulled.e
        else rows_of_bolts(joint, pulled.count, plies)
    )
    c, L, t, hole = pulled.count, fitting.length, fitting.t, net_hole(joint.holes.along)
    area = step("A_g", "c L t", c * L * t, "in²", c=c, L=L, t=t)
    left = c * (L - joint.rows * hole.value) * t
    net = step("A_e", "c (L - n d_n) t", left, "in²", c=c, L=L, n=joint.rows, d_n=hole.value, t=t)
    stretch = tensile_yielding(fitting.steel.F_y, area.value).after(area)
    torn = tensile_rupture(fitting.steel.F_u, net.value).after(hole, net)
    checks = [
        group.check(total, method, "bolts through the beam web, both forces"),
        stretch.check(connection.N, method, "tensile yielding of the fitting"),
        torn.check(connection.N, method, "tensile rupture of the fitting"),
        _yields_through(connection, pulled, stretch, method),
        *_blocks(connection, pulled, method),
    ]
    return Findings(tuple(checks))


def _yields_through(connection: Connection, pulled: PulledWeb, stretch: Strength, method: Method) -> Check:
    fitting, t = connection.fitting, pulled.count * connection.fitting.t
    bending = flexural_yielding(fitting.steel.F_y, t * fitting.length**2 / 4)
    used = axial_shear_and_flexure(
        connection.N,
        stretch.available(method),
        connection.V,
        yield_of_fitting(fitting, pulled.count).available(method),
        connection.V * pulled.arm,
        bending.available(method),
    )
    clause = clause_of(axial_shear_and_flexure)
    return Check(clause, "yielding of the fitting, both forces", used.value, 1.0, "", (used,))


def _blocks(connection: Connection, pulled: PulledWeb, method: Method) -> Iterator[Check]:
    """Block shear of the fitting and of the web by the axial force, and by both forces."""
    joint, fitting, beam = pulled.joint, connection.fitting, connection.beam
    block = pulled_block(
        fitting.steel,
        pulled.count * fitting.t,
        joint,
        joint.holes,
        joint.edge_side + joint.width,
        min(joint.edge_top, joint.edge_bottom),
    )
    upright = block_of_fitting(fitting, joint, pulled.count, pushed_up=False)
    yield block.check(connection.N, method, "block shear of the fitting, axial force")
    yield _together(connection, upright, block, method, "block shear of the fitting, both forces")
    if beam is None:
        return
    reach = end_distance(connection, joint) + joint.width
    free = first_row(connection, joint) if beam.top else None
    if joint.rows == 1 and free is None:
        return
    block = pulled_block(beam.steel, beam.t_w, joint, joint.other, reach, free)
    yield block.check(connection.N, method, "block shear of the beam web, axial force")
    if beam.top:
        upright = bolted_block(connection, joint)
        yield _together(connection, upright, block, method, "block shear of the beam web, both forces")


def _together(
    connection: Connection, upright: Strength, level: Strength, method: Method, title: str
) -> Check:
    V_c, N_c = upright.available(method), level.available(method)
    given = {"V_r": connection.V, "V_c": V_c, "N_r": connection.N, "N_c": N_c}
    used = (connection.V / V_c) ** 2 + (connection.N / N_c) ** 2
    return Check(_BOTH, title, used, 1.0, "", (step("U", "(V_r/V_c)^2 + (N_r/N_c)^2", used, **given),))
