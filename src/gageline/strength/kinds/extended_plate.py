"""Extended single plates: bolts farther from the support, or in more than one column."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from gageline.strength.aisc360.f_bars import bar_lateral_buckling
from gageline.strength.aisc360.h_combined import shear_and_flexure
from gageline.strength.aisc360.j3_bolts import nominal_shear_stress
from gageline.strength.aisc360.j4_elements import flexural_yielding
from gageline.strength.aisc360.manual_plates import (
    maximum_plate_thickness,
    plate_without_stabilizer,
)
from gageline.strength.check import Check, Method, Strength, found, step
from gageline.strength.clause import clause_of
from gageline.strength.connection import Bolted, Connection, Fillet
from gageline.strength.kinds.beam_web import end_distance
from gageline.strength.kinds.bolted import (
    eccentric_rows,
    moment_coefficient,
    rupture_of_net,
    yield_of_fitting,
)
from gageline.strength.kinds.rules import at_most, condition, exempt
from gageline.strength.kinds.single_plate import (
    plate_axial,
    plate_states,
    plate_welds,
    plates_joints,
    plies_of_plate,
    weld_of_plate,
)
from gageline.strength.kinds.web_legs import as_reaction
from gageline.strength.verdict import Findings, NotChecked, gathered

__all__ = ["extended_plate"]

_LEAST_CB = 1.84
_LEFT_OUT = (
    NotChecked("torsion of the plate lapped to one side of the web", "the slab or bracing is not known here"),
    NotChecked("moment from the plate in its support", "the support is not analysed"),
)
State = tuple[str, Strength]


def extended_plate(connection: Connection, method: Method) -> Findings:
    """Plate, bolts and welds of an extended single plate.

    Args:
        connection: the connection.
        method: design method.

    Returns:
        Checks and the method's own limits; the beam's web is apart.

    Raises:
        ValueProblem: joined otherwise than welded to the support and bolted to the beam.

    Source: Manual Part 10, extended configuration; buckling as Section F11 with the C_b of 1.84 that the
        Manual gives for a coped plate.
    """
    bolts, weld = plates_joints(connection)
    e = bolts.gage + bolts.width / 2
    plies = plies_of_plate(connection, bolts)
    states: list[State] = [
        ("bolts through the beam web, eccentric", eccentric_rows(bolts, 1, plies, e)),
        *plate_states(connection, bolts),
        *_bending(connection, bolts),
    ]
    checks = [state.check(connection.V, method, title) for title, state in states]
    checks.append(_together(connection, bolts, method))
    own = Findings(tuple(checks), tuple(_limits(connection, bolts, weld)), _LEFT_OUT)
    return gathered(
        [
            own,
            plate_welds(connection, weld, method),
            plate_axial(connection, bolts, (e, bolts.gage), method),
        ]
    )


def _bending(connection: Connection, bolts: Bolted) -> Iterator[State]:
    fitting, a = connection.fitting, bolts.gage
    rupture = rupture_of_net(fitting, bolts)
    yield "flexural rupture of the plate", as_reaction(rupture, a)
    buckling = bar_lateral_buckling(fitting.steel.F_y, fitting.length, fitting.t, a, _LEAST_CB)
    yield "buckling of the plate in bending", as_reaction(buckling, a)
    bare = plate_without_stabilizer(fitting.length, fitting.t, a)
    yield "plate without stabilizer plates", bare


def _together(connection: Connection, bolts: Bolted, method: Method) -> Check:
    """Equation 10-5 solved for the reaction at which its sum reaches 1."""
    fitting, a = connection.fitting, bolts.gage
    L, t = fitting.length, fitting.t
    Z = step("Z", "t L^2/4", t * L**2 / 4, "in³", t=t, L=L)
    sheared = yield_of_fitting(fitting, 1)
    bent = flexural_yielding(fitting.steel.F_y, Z.value).after(Z)
    V_c, M_c = sheared.available(method), bent.available(method)
    total = 1 / math.sqrt((1 / V_c) ** 2 + (a / M_c) ** 2)
    parts = (
        found("a", a, "in", "weld to the first column of bolts"),
        *sheared.check(connection.V, method).steps,
        found("V_c", V_c, "kip", "available strength of the plate in shear yielding (J4.2(a))"),
        *bent.check(connection.V, method).steps,
        found("M_c", M_c, "kip-in", "available strength of the whole plate in bending (J4.5)"),
    )
    last = step("R", "1/sqrt((1/V_c)^2 + (a/M_c)^2)", total, "kip", V_c=V_c, a=a, M_c=M_c)
    title = "shear and bending of the plate together"
    return Check(clause_of(shear_and_flexure), title, connection.V, total, "kip", (*parts, last))


def _limits(connection: Connection, bolts: Bolted, weld: Fillet) -> Iterator[Check]:
    fitting, beam = connection.fitting, connection.beam
    thinner = min(fitting.t, beam.t_w) if beam else fitting.t
    slim = bolts.d / 2 + 1 / 16
    roomy = min(bolts.edge_side, end_distance(connection, bolts) + connection.under_run) >= 2 * bolts.d
    if bolts.columns > 1 or thinner > slim or not roomy:
        C = moment_coefficient(bolts)
        stress = nominal_shear_stress(bolts.group, bolts.threads)
        working = maximum_plate_thickness(
            fitting.steel.F_y, fitting.length, stress, math.pi * bolts.d**2 / 4, C
        )
        clause = clause_of(maximum_plate_thickness)
        most = at_most(clause, "thickness of the plate", working[-1], fitting.t)
        yield condition(replace(most, steps=working))
    else:
        yield exempt(
            clause_of(maximum_plate_thickness),
            "thickness of the plate: no limit, for one column of bolts, plate or web up to d/2 + 1/16 in, "
            "edges of 2 d",
        )
    yield weld_of_plate(connection, weld)
