"""Conventional single plates: welded to the support, bolted to the beam's web."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.errors import ValueProblem
from gageline.strength.aisc360.j2_welds import fillet_weld
from gageline.strength.aisc360.manual_plates import conventional_plate, single_plate_weld
from gageline.strength.aisc360.standard import manual
from gageline.strength.check import Check, Method, Strength, step
from gageline.strength.clause import clause_of
from gageline.strength.connection import Bolted, Connection, Fillet
from gageline.strength.kinds.beam_web import end_distance, first_row
from gageline.strength.kinds.bolted import (
    Ply,
    block_of_fitting,
    eccentric_rows,
    net_shear,
    yield_of_fitting,
)
from gageline.strength.kinds.rules import at_least, at_most
from gageline.strength.kinds.welded import beside_weld
from gageline.strength.verdict import Findings, NotChecked

__all__ = ["plate_states", "plates_joints", "plies_of_plate", "single_plate"]

_EDGES = manual("Table 10-9", "Edge distances along the beam")
_AXIAL = NotChecked("the axial force", "it is not followed through a single plate")
State = tuple[str, Strength]


def plates_joints(connection: Connection) -> tuple[Bolted, Fillet]:
    """The bolts on the beam's web and the weld on the support.

    Raises:
        ValueProblem: joined in another way.
    """
    bolts, weld = connection.to_beam, connection.to_support
    if not isinstance(bolts, Bolted) or not isinstance(weld, Fillet):
        raise ValueProblem(
            "a single plate is welded to its support and bolted to the beam's web: "
            "the method covers no other way of joining it"
        )
    return bolts, weld


def plies_of_plate(connection: Connection, bolts: Bolted) -> tuple[Ply, ...]:
    """The plate, and the beam's web where the beam is known, as the bolts bear on them."""
    beam, fitting = connection.beam, connection.fitting
    plate = Ply(fitting.steel, fitting.t, bolts.holes, bolts.edge_bottom)
    if beam is None:
        return (plate,)
    edge = first_row(connection, bolts) if beam.top else None
    return (plate, Ply(beam.steel, beam.t_w, bolts.other, edge, at_top=True))


def plate_states(connection: Connection, bolts: Bolted) -> Iterator[State]:
    """Shear yielding, shear rupture and block shear of the plate."""
    fitting = connection.fitting
    yield "shear yielding of the plate", yield_of_fitting(fitting, 1)
    yield "shear rupture of the plate", net_shear(fitting, bolts, 1)
    yield "block shear of the plate", block_of_fitting(fitting, bolts, 1, pushed_up=False)


def single_plate(connection: Connection, method: Method) -> Findings:
    """Plate, bolts and welds of a conventional single plate.

    Args:
        connection: the connection.
        method: design method.

    Returns:
        Checks and the method's own limits; the beam's web is apart.

    Raises:
        ValueProblem: outside the method.

    Source: Manual Part 10, Tables 10-9 and 10-10; Examples II.A-17A and II.A-18.
    """
    bolts, weld = plates_joints(connection)
    if bolts.columns > 1:
        raise ValueProblem(
            f"{bolts.columns} columns of bolts are outside the conventional single plate: "
            "design it as extended"
        )
    fitting, support = connection.fitting, connection.support
    limits = conventional_plate(bolts.rows, bolts.d, bolts.gage, bolts.holes.kind)
    plies = plies_of_plate(connection, bolts)
    states = [
        ("bolts through the beam web, eccentric", eccentric_rows(bolts, 1, plies, limits.e.value)),
        *plate_states(connection, bolts),
    ]
    metal = fillet_weld(weld.leg, 2 * fitting.length, weld.F_EXX)
    states.append(("weld to the support", metal))
    if support is not None:
        sides = 2 if support.opposite else 1
        states.append(("support beside the weld", beside_weld(metal, weld, support.steel, support.t, sides)))
    return Findings(
        tuple(state.check(connection.V, method, title) for title, state in states),
        tuple(_limits(connection, bolts, weld, limits.t_max)),
        (_AXIAL,) if connection.N else (),
    )


def _limits(connection: Connection, bolts: Bolted, weld: Fillet, t_max: float) -> Iterator[Check]:
    fitting = connection.fitting
    thinner = min(fitting.t, connection.beam.t_w) if connection.beam else fitting.t
    if t_max < float("inf"):
        most = step("t_max", "t_9", t_max, "in", t_9=t_max)
        clause = clause_of(conventional_plate)
        yield at_most(clause, "thickness of the plate or of the web", most, thinner)
    two = step("l_eh", "2 d", 2 * bolts.d, "in", d=bolts.d)
    yield at_least(_EDGES, "bolts to the edge of the plate", two, bolts.edge_side)
    yield at_least(
        _EDGES, "bolts to the end of the beam", two, end_distance(connection, bolts) + connection.under_run
    )
    yield at_least(clause_of(single_plate_weld), "weld of the plate", single_plate_weld(fitting.t), weld.leg)
