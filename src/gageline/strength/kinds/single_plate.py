"""Conventional single plates: welded to the support, bolted to the beam's web."""

from __future__ import annotations

import math
from collections.abc import Iterator

from gageline.errors import ValueProblem
from gageline.strength.aisc360.j2_welds import fillet_weld
from gageline.strength.aisc360.manual_plates import conventional_plate, single_plate_weld
from gageline.strength.aisc360.standard import manual
from gageline.strength.check import Check, Method, Step, Strength, step
from gageline.strength.clause import clause_of
from gageline.strength.connection import Bolted, Connection, Fillet, SupportFace
from gageline.strength.kinds.areas import net_shear
from gageline.strength.kinds.axial import PulledWeb, resultant_of, through_bolts
from gageline.strength.kinds.beam_web import end_distance, first_row
from gageline.strength.kinds.bolted import (
    Ply,
    block_of_fitting,
    eccentric_rows,
    yield_of_fitting,
)
from gageline.strength.kinds.rules import at_least, at_most, condition, exempt
from gageline.strength.kinds.tongue import ply_of_tongue
from gageline.strength.kinds.welded import beside_weld, counted
from gageline.strength.verdict import Findings, NotChecked, gathered

__all__ = [
    "bolts_title",
    "conventional_eccentricity",
    "plate_axial",
    "plate_states",
    "plate_welds",
    "plates_joints",
    "plies_of_plate",
    "single_plate",
    "thinner_ply",
    "weld_of_plate",
]

_EDGES = manual("Table 10-9", "Edge distances along the beam")
_WALL = manual("Part 10", "Single plate on a hollow section")
_STEEP = NotChecked(
    "the weld of the plate",
    "at a skew over 30 degrees its acute side is no fillet weld any more (Section J2.2)",
)
_MOST_SKEW = 30.0
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
    """The plate, and the tongue or, where the beam is known, its web, as the bolts bear on them."""
    beam, fitting = connection.beam, connection.fitting
    plate = Ply(fitting.steel, fitting.t, bolts.holes, bolts.edge_bottom)
    if connection.tongue is not None:
        return (plate, ply_of_tongue(connection.tongue, bolts))
    if beam is None:
        return (plate,)
    edge = first_row(connection, bolts) if beam.top else None
    return (plate, Ply(beam.steel, beam.t_w, bolts.other, edge, at_top=True))


def bolts_title(connection: Connection) -> str:
    """What the bolts of a plate go through, for the title of their check."""
    return f"bolts through the {'tongue' if connection.tongue else 'beam web'}, eccentric"


def thinner_ply(connection: Connection) -> float:
    """The thinner of the plate and what it is bolted to, as far as that is known, in."""
    return min(connection.fitting.t, connection.web_thickness or connection.fitting.t)


def plate_states(connection: Connection, bolts: Bolted) -> Iterator[State]:
    """Shear yielding, shear rupture and block shear of the plate."""
    fitting = connection.fitting
    yield "shear yielding of the plate", yield_of_fitting(fitting, 1)
    yield "shear rupture of the plate", net_shear(fitting, bolts, 1)
    yield "block shear of the plate", block_of_fitting(fitting, bolts, 1, pushed_up=False)


def conventional_eccentricity(bolts: Bolted) -> float:
    """From the weld, or half of that, to the bolts of a conventional plate, as its method counts it, in.

    Args:
        bolts: in the beam's web.

    Raises:
        ValueProblem: outside the method.
    """
    return conventional_plate(bolts.rows, bolts.d, bolts.gage, bolts.holes.kind).e.value


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
    limits = conventional_plate(bolts.rows, bolts.d, bolts.gage, bolts.holes.kind)
    plies = plies_of_plate(connection, bolts)
    states = [
        (bolts_title(connection), eccentric_rows(bolts, 1, plies, limits.e.value)),
        *plate_states(connection, bolts),
    ]
    e = limits.e.value
    found = Findings(
        tuple(state.check(connection.V, method, title) for title, state in states),
        tuple(_limits(connection, bolts, weld, limits.t_max)),
    )
    return gathered(
        [
            found,
            plate_welds(connection, weld, method),
            plate_axial(connection, bolts, (e, e), method),
        ]
    )


def plate_welds(connection: Connection, weld: Fillet, method: Method) -> Findings:
    """The welds of a single plate on its support, and the steel of the support beside them.

    Args:
        connection: the connection.
        weld: on both sides of the plate.
        method: design method.

    Source: Section J2.4. On a skewed plate the throats of both sides are the leg times the cosine of half the
        angle between plate and support; together they are as much as on a square plate times the cosine of
        half the skew (geometry).
    """
    if connection.skew > _MOST_SKEW:
        return Findings(not_checked=(_STEEP,))
    support, fitting = connection.support, connection.fitting
    total, angle = resultant_of(connection)
    lean = math.cos(math.radians(connection.skew) / 2)
    sized, short = counted(weld, fitting.length)
    metal = fillet_weld(sized.leg * lean, 2 * fitting.length, weld.F_EXX, angle).after(*short)
    both = ", both forces" if connection.N else ""
    checks = [metal.check(total, method, f"weld to the support{both}")]
    if support is not None:
        beside = beside_weld(metal, weld, support.steel, support.t, support.sides)
        checks.append(beside.check(total, method, f"support beside the weld{both}"))
    return Findings(tuple(checks), tuple(_punching(connection)))


def _punching(connection: Connection) -> Iterator[Check]:
    """A plate on a hollow wall must yield before it punches through.

    Source: Manual Part 10, single plates on hollow sections, after Equation K1-3 of earlier editions (from
        memory).
    """
    support, fitting = connection.support, connection.fitting
    if support is None or support.face is not SupportFace.WALL:
        return
    most = support.steel.F_u / fitting.steel.F_y * support.t
    given = {"F_u": support.steel.F_u, "F_yp": fitting.steel.F_y, "t": support.t}
    limit = step("t_max", "F_u/F_yp t", most, "in", **given)
    rule = at_most(_WALL, "plate that would punch through the wall", limit, fitting.t)
    yield condition(rule)


def plate_axial(connection: Connection, bolts: Bolted, arms: tuple[float, float], method: Method) -> Findings:
    """What an axial force asks of a single plate and of what it is bolted to.

    Args:
        connection: the connection.
        bolts: in the beam's web.
        arms: eccentricity of the bolts, and from the reaction to the section that bends, in.
        method: design method.
    """
    if not connection.N:
        return Findings()
    plate, *web = plies_of_plate(connection, bolts)
    pulled = PulledWeb(bolts, plate, web[0] if web else None, 1, *arms)
    return through_bolts(connection, pulled, method)


def _limits(connection: Connection, bolts: Bolted, weld: Fillet, t_max: Step | None) -> Iterator[Check]:
    thinner = thinner_ply(connection)
    if t_max is not None:
        title = "thickness of the plate or of the web"
        yield condition(at_most(clause_of(conventional_plate), title, t_max, thinner))
    else:
        yield exempt(
            clause_of(conventional_plate),
            "thickness of the plate or of the web: no limit, for up to 5 bolts in short slots",
        )
    two = step("l_eh", "2 d", 2 * bolts.d, "in", d=bolts.d)
    end = end_distance(connection, bolts) + connection.under_run
    for title, given in (
        ("bolts to the edge of the plate", bolts.edge_side),
        ("bolts to the end of the beam", end),
    ):
        yield condition(at_least(_EDGES, title, two, given))
    yield weld_of_plate(connection, weld)


def weld_of_plate(connection: Connection, weld: Fillet) -> Check:
    """The least weld of a single plate, which lets the plate yield before it.

    Args:
        connection: the connection.
        weld: on both sides of the plate.
    """
    throat = weld.leg * math.cos(math.radians(connection.skew) / 2)
    clause = clause_of(single_plate_weld)
    return condition(at_least(clause, "weld of the plate", single_plate_weld(connection.fitting.t), throat))
