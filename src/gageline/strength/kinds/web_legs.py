"""The legs of connection angles on the beam's web: bolts through it, or welds on it."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.errors import ValueProblem
from gageline.strength.aisc360.f_bars import bar_yielding
from gageline.strength.check import Strength, found, step
from gageline.strength.connection import UNDER_RUN, Bolted, Connection, Fillet
from gageline.strength.groups import wrench
from gageline.strength.kinds.axial import PulledWeb
from gageline.strength.kinds.beam_web import first_row
from gageline.strength.kinds.bolted import Ply, eccentric_rows, rows_of_bolts, rupture_of_net
from gageline.strength.kinds.welded import c_shape, eccentric_lines
from gageline.strength.verdict import NotChecked

__all__ = ["SHORT_BEAM", "as_reaction", "eccentricity_on_web", "pulled_web", "web_bolts", "web_weld"]

_MOST_GAGE = 3.0
SHORT_BEAM = NotChecked(
    f"welds on the web of a beam that is {UNDER_RUN:g} in ({UNDER_RUN * 25.4:.1f} mm) too short",
    "the ends of the legs are welded up to the end of the beam as drawn, as Manual Table 10-2 has it; "
    "a shorter beam takes as much off that length, and about 6 % of the strength of short legs",
)
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
    arm = found("e", e, "in", "level from the reaction to the section that bends")
    last = step("R_n", f"{symbol}/e", strength.nominal / e, "kip", **{symbol: strength.nominal, "e": e})
    return Strength(strength.clause, last.value, strength.factors, "kip", (*strength.steps, arm, last))


def eccentricity_on_web(joint: Bolted) -> float:
    """From the heel to the middle of the bolts, in; zero where the Manual leaves it out.

    Source: Manual Part 10: it is left out for one column of bolts up to 3 in from the heel.
    """
    if joint.columns == 1 and joint.gage <= _MOST_GAGE:
        return 0.0
    return joint.gage + joint.width / 2


def pulled_web(connection: Connection, joint: Bolted, count: int) -> PulledWeb:
    """The bolts of the legs on the beam's web, and what they bear on.

    Args:
        connection: the connection, with its beam.
        joint: the bolts.
        count: angles side by side.
    """
    beam, fitting = connection.end, connection.fitting
    edge = first_row(connection, joint) if beam.top else None
    legs = Ply(fitting.steel, count * fitting.t, joint.holes, joint.edge_bottom)
    web = Ply(beam.steel, beam.t_w, joint.other, edge, at_top=True)
    e = eccentricity_on_web(joint)
    return PulledWeb(joint, legs, web, count, e, joint.gage if e else 0.0)


def web_bolts(connection: Connection, joint: Bolted, count: int) -> Iterator[State]:
    """The bolts through the beam's web, and the bending of the legs where the bolts are far from the heel.

    Args:
        connection: the connection, with its beam.
        joint: the bolts.
        count: angles side by side, which is also the number of shear planes.

    Source: Manual Part 10; Part 7 where the eccentricity counts, Part 9 for the bending of the legs.
    """
    pulled, fitting = pulled_web(connection, joint, count), connection.fitting
    plies = [ply for ply in (pulled.fitting, pulled.web) if ply]
    if not pulled.e:
        yield "bolts through the beam web", rows_of_bolts(joint, count, plies)
        return
    yield "bolts through the beam web, eccentric", eccentric_rows(joint, count, plies, pulled.e)
    yielding = bar_yielding(fitting.steel.F_y, fitting.length, count * fitting.t)
    yield "bending of the legs on the beam", as_reaction(yielding, pulled.arm)
    rupture = rupture_of_net(fitting, joint, count)
    yield "flexural rupture of the legs on the beam", as_reaction(rupture, pulled.arm)


def web_weld(connection: Connection, weld: Fillet, count: int, angle: float = 0.0) -> Strength:
    """The weld of the legs on the web under a load through the face of the support.

    Args:
        connection: the connection.
        weld: the weld, along the toe and both ends of each leg.
        count: angles side by side.
        angle: of the load from straight down, degrees.

    Returns:
        Strength in kips, the ends of the legs welded from the toe to the end of the beam as drawn.

    Raises:
        ValueProblem: legs that do not reach past the setback.

    Source: Manual Part 8; Part 10, Table 10-2, weld A: the method gives the table's 110 kips for legs of
        3 1/2 in and returns of 3 in, the leg less the setback of 1/2 in. With the under-run of 1/4 in taken
        off as well it would be 104; the table leaves it out, so it is left out here and said (`SHORT_BEAM`).
    """
    fitting = connection.fitting
    run = fitting.leg - connection.setback
    if run <= 0:
        raise ValueProblem(
            f"legs of {fitting.leg:g} in do not reach past a setback of {connection.setback:g} in: "
            "use longer legs or a smaller setback"
        )
    length = step("k_l", "b - s", run, "in", b=fitting.leg, s=connection.setback)
    lines = c_shape(fitting.length, run)
    centroid = run**2 / (fitting.length + 2 * run)
    load = wrench(angle, fitting.leg)
    return eccentric_lines(weld, lines, load.tolist(), fitting.leg - centroid, count).after(length)
