"""The tongue at the closed end of a hollow beam, which a plate of the support is bolted to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from gageline.strength.aisc360.f_bars import bar_lateral_buckling, bar_yielding
from gageline.strength.aisc360.j2_welds import minimum_fillet
from gageline.strength.check import Check, Method, Strength
from gageline.strength.clause import clause_of
from gageline.strength.connection import Bolted, Connection, Fitting, Tongue
from gageline.strength.groups import wrench
from gageline.strength.kinds.areas import net_shear
from gageline.strength.kinds.beam_web import end_distance
from gageline.strength.kinds.bolted import Ply, block_of_fitting, rupture_of_net, yield_of_fitting
from gageline.strength.kinds.rules import at_least
from gageline.strength.kinds.shear_and_bending import shear_and_bending
from gageline.strength.kinds.web_legs import as_reaction
from gageline.strength.kinds.welded import beside_weld, eccentric_lines, upright_line
from gageline.strength.verdict import Findings, NotChecked

__all__ = ["bolts_of_tongue", "ply_of_tongue", "tongue_checks"]

_LEFT_OUT = (
    NotChecked(
        "bending of the end cap",
        "no published method was found for a cap that a tongue bends between the walls of a hollow beam",
    ),
    NotChecked(
        "weld of the end cap to the walls, and the walls beside it",
        "how the tongue's moment spreads over the cap is not worked out",
    ),
    NotChecked("shear of the walls of the hollow beam", "Section G4 is not covered"),
)
_PULLED = NotChecked(
    "the tongue and its weld under the axial force", "the method for both forces together is not covered"
)
State = tuple[str, Strength]


def bolts_of_tongue(connection: Connection, tongue: Tongue, bolts: Bolted) -> Bolted:
    """The bolts of a plate as they lie in the tongue.

    Args:
        connection: the connection.
        tongue: of its beam.
        bolts: as they lie in the plate.
    """
    return replace(
        bolts,
        gage=tongue.to_cap,
        edge_top=tongue.edge_top,
        edge_bottom=tongue.plate.length - tongue.edge_top - bolts.span,
        edge_side=end_distance(connection, bolts),
        holes=bolts.other,
        other=bolts.holes,
    )


def ply_of_tongue(tongue: Tongue, bolts: Bolted) -> Ply:
    """The tongue as the bolts bear on it, which they push up.

    Args:
        tongue: of the beam.
        bolts: of the plate.
    """
    return Ply(tongue.plate.steel, tongue.plate.t, bolts.other, tongue.edge_top, at_top=True)


def tongue_checks(connection: Connection, tongue: Tongue, bolts: Bolted, method: Method) -> Findings:
    """Tongue and its weld on the end cap; the bolts belong to the plate.

    The reaction is taken at the face of the support, as for the bolts of an extended plate, so that the
    tongue bends at its cap by the whole distance from there: statics, on the safe side where the plate takes
    part of the moment.

    Args:
        connection: the connection.
        tongue: of its beam.
        bolts: of its plate.
        method: design method.

    Source: Sections J4.2, J4.3 and F11; Equation 10-5 of the Manual for shear and bending together; Manual
        Part 8 for a weld loaded off its plane, as Table 8-4 with k = 0.
    """
    own, plate = bolts_of_tongue(connection, tongue, bolts), tongue.plate
    arm = bolts.gage + bolts.width + tongue.to_cap
    checks = [state.check(connection.V, method, title) for title, state in _states(plate, own, arm)]
    title = "shear and bending of the tongue together, at the end cap"
    checks.append(
        shear_and_bending(plate, arm, "face of the support to the end cap", connection.V, method, title)
    )
    checks.extend(state.check(connection.V, method, title) for title, state in _weld(tongue, arm))
    return Findings(
        tuple(checks),
        tuple(_rules(tongue)),
        (*_LEFT_OUT, *((_PULLED,) if connection.N else ())),
    )


def _states(plate: Fitting, own: Bolted, arm: float) -> Iterator[State]:
    yield "shear yielding of the tongue", yield_of_fitting(plate, 1)
    yield "shear rupture of the tongue", net_shear(plate, own, 1)
    yield "block shear of the tongue", block_of_fitting(plate, own, 1, pushed_up=True)
    rupture = rupture_of_net(plate, own)
    yield "flexural rupture of the tongue at its bolts", as_reaction(rupture, arm - own.gage)
    yielding = bar_yielding(plate.steel.F_y, plate.length, plate.t)
    yield "bending of the tongue at the end cap", as_reaction(yielding, arm)
    buckling = bar_lateral_buckling(plate.steel.F_y, plate.length, plate.t, own.gage)
    yield "buckling of the tongue in bending", as_reaction(buckling, arm)


def _weld(tongue: Tongue, arm: float) -> Iterator[State]:
    weld, plate = tongue.weld, tongue.plate
    metal = eccentric_lines(weld, upright_line(plate.length), wrench(0.0, arm).tolist(), arm, 2)
    yield "weld of the tongue to the end cap, eccentric", metal
    yield "tongue beside its weld", beside_weld(metal, weld, plate.steel, plate.t, 2)
    yield "end cap beside the weld of the tongue", beside_weld(metal, weld, tongue.cap.steel, tongue.cap.t, 1)


def _rules(tongue: Tongue) -> Iterator[Check]:
    least = minimum_fillet(min(tongue.plate.t, tongue.cap.t))
    yield at_least(clause_of(minimum_fillet), "weld of the tongue to the end cap", least, tongue.weld.leg)
