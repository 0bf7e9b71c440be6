"""Shear end plates: welded to the beam's web, bolted to the support."""

from __future__ import annotations

import math
from collections.abc import Iterator

from gageline.errors import ValueProblem
from gageline.strength.aisc360.j2_welds import fillet_weld
from gageline.strength.aisc360.j4_elements import shear_rupture, tensile_rupture
from gageline.strength.check import Method, Step, Strength, step
from gageline.strength.connection import Bolted, Connection, Fillet
from gageline.strength.kinds.areas import net_shear
from gageline.strength.kinds.bolted import (
    Ply,
    block_of_fitting,
    rows_of_bolts,
    yield_of_fitting,
)
from gageline.strength.kinds.pulled import PulledEnd, pulled
from gageline.strength.kinds.support import shared_bolts, support_ply
from gageline.strength.kinds.welded import beside_weld, counted
from gageline.strength.verdict import Findings, gathered

__all__ = ["end_plate"]

_SIDES = 2
State = tuple[str, Strength]


def end_plate(connection: Connection, method: Method) -> Findings:
    """Plate, bolts and weld of a shear end plate.

    Args:
        connection: the connection; its bolts lie in one column on each side of the web.
        method: design method.

    Returns:
        Checks; the beam's web and the rules of detail are apart.

    Raises:
        ValueProblem: joined otherwise than welded to the beam and bolted to the support.

    Source: Manual Part 10, Table 10-4; Examples II.A-11A and II.A-11B.
    """
    weld, bolts = connection.to_beam, connection.to_support
    if not isinstance(weld, Fillet) or not isinstance(bolts, Bolted):
        raise ValueProblem(
            "a shear end plate is welded to the beam's web and bolted to its support: "
            "the method covers no other way of joining it"
        )
    states = [*_plate(connection, bolts), *_bolts(connection, bolts), *_weld(connection, weld)]
    found = Findings(tuple(state.check(connection.V, method, title) for title, state in states))
    return gathered(
        [found, shared_bolts(connection, _SIDES, method), _axial(connection, weld, bolts, method)]
    )


def _plate(connection: Connection, bolts: Bolted) -> Iterator[State]:
    fitting = connection.fitting
    yield "shear yielding of the plate", yield_of_fitting(fitting, _SIDES)
    yield "shear rupture of the plate", net_shear(fitting, bolts, _SIDES)
    yield "block shear of the plate", block_of_fitting(fitting, bolts, _SIDES, pushed_up=True)


def _bolts(connection: Connection, bolts: Bolted) -> Iterator[State]:
    fitting = connection.fitting
    plate = Ply(fitting.steel, _SIDES * fitting.t, bolts.holes, bolts.edge_top, at_top=True)
    plies = (plate, *support_ply(connection.support, bolts, _SIDES))
    yield "bolts to the support, in pairs", rows_of_bolts(bolts, _SIDES, plies)


def _effective(connection: Connection, weld: Fillet) -> Step:
    """Length of the weld on one side of the web, less a leg at each end, in."""
    L = connection.fitting.length
    length = L - 2 * weld.leg
    if length <= 0:
        raise ValueProblem(
            f"welds of {weld.leg:g} in leave nothing of a plate {L:g} in long: give a longer plate"
        )
    return step("L_w", "L_p - 2 w", length, "in", L_p=L, w=weld.leg)


def _metal(weld: Fillet, length: Step, angle: float = 0.0) -> Strength:
    weld, short = counted(weld, length.value)
    both = step("L", "2 L_w", _SIDES * length.value, "in", L_w=length.value)
    return fillet_weld(weld.leg, both.value, weld.F_EXX, angle).after(length, both, *short)


def _weld(connection: Connection, weld: Fillet) -> Iterator[State]:
    beam, length = connection.end, _effective(connection, weld)
    yield "weld to the beam web", _metal(weld, length)
    area = step("A_nv", "L_w t_w", length.value * beam.t_w, "in²", L_w=length.value, t_w=beam.t_w)
    rupture = shear_rupture(beam.steel.F_u, area.value).after(length, area)
    yield "shear rupture of the beam web beside the weld", rupture


def _axial(connection: Connection, weld: Fillet, bolts: Bolted, method: Method) -> Findings:
    if not connection.N:
        return Findings()
    beam, fitting = connection.end, connection.fitting
    length = _effective(connection, weld)
    area = step("A_e", "L_w t_w", length.value * beam.t_w, "in²", L_w=length.value, t_w=beam.t_w)
    angle = math.degrees(math.atan2(connection.N, connection.V))
    metal = _metal(weld, length, angle)
    resultant = math.hypot(connection.V, connection.N)
    checks = (
        metal.check(resultant, method, "weld to the beam web, both forces"),
        beside_weld(metal, weld, beam.steel, beam.t_w, _SIDES).check(
            resultant, method, "beam web beside the weld, both forces"
        ),
        tensile_rupture(beam.steel.F_u, area.value)
        .after(length, area)
        .check(connection.N, method, "rupture of the beam web along the weld, axial force"),
    )
    end = PulledEnd(bolts, fitting, b=bolts.gage - beam.t_w / 2, a=bolts.edge_side)
    return gathered([Findings(checks), pulled(connection, end, method)])
