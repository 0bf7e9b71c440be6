"""Extended single plates: bolts farther from the support, or in more than one column."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from gageline.strength.aisc360.f_bars import bar_lateral_buckling
from gageline.strength.aisc360.j3_bolts import nominal_shear_stress
from gageline.strength.aisc360.manual_plates import (
    maximum_plate_thickness,
    plate_without_stabilizer,
)
from gageline.strength.check import Check, Method, Strength
from gageline.strength.clause import clause_of
from gageline.strength.connection import Bolted, Connection, Fillet
from gageline.strength.kinds.beam_web import end_distance
from gageline.strength.kinds.bolted import (
    eccentric_rows,
    moment_coefficient,
    rupture_of_net,
)
from gageline.strength.kinds.rules import at_most, condition, exempt
from gageline.strength.kinds.shear_and_bending import shear_and_bending
from gageline.strength.kinds.single_plate import (
    bolts_title,
    plate_axial,
    plate_states,
    plate_welds,
    plates_joints,
    plies_of_plate,
    thinner_ply,
    weld_of_plate,
)
from gageline.strength.kinds.tongue import tongue_checks
from gageline.strength.kinds.web_legs import as_reaction
from gageline.strength.verdict import Findings, NotChecked, gathered

__all__ = ["extended_plate"]

_LEAST_CB = 1.84
_UNBRACED = "the slab or bracing is not known here"
_BESIDE_WEB = NotChecked("torsion of the plate lapped to one side of the web", _UNBRACED)
_BESIDE_TONGUE = NotChecked("torsion of plate and tongue, which lie side by side", _UNBRACED)
_MOMENT = NotChecked("moment from the plate in its support", "the support is not analysed")
State = tuple[str, Strength]


def extended_plate(connection: Connection, method: Method) -> Findings:
    """Plate, bolts and welds of an extended single plate, and of any that is bolted to a tongue.

    On a tongue no plate counts as conventional, however short it is: what may be left out of the check of one
    is proved for the web of a beam that turns at its end, not for the tongue of a hollow one.

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
        (bolts_title(connection), eccentric_rows(bolts, 1, plies, e)),
        *plate_states(connection, bolts),
        *_bending(connection, bolts),
    ]
    checks = [state.check(connection.V, method, title) for title, state in states]
    title, what = "shear and bending of the plate together", "weld to the first column of bolts"
    checks.append(shear_and_bending(connection.fitting, bolts.gage, what, connection.V, method, title))
    tongue = connection.tongue
    left_out = (_BESIDE_TONGUE if tongue else _BESIDE_WEB, _MOMENT)
    own = Findings(tuple(checks), tuple(_limits(connection, bolts, weld)), left_out)
    return gathered(
        [
            own,
            tongue_checks(connection, tongue, bolts, method) if tongue else Findings(),
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


def _limits(connection: Connection, bolts: Bolted, weld: Fillet) -> Iterator[Check]:
    fitting, thinner = connection.fitting, thinner_ply(connection)
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
