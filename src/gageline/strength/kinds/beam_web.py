"""The web of the supported beam at its end, coped or not."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.strength.aisc360.d_tension import hole_for_net_area
from gageline.strength.aisc360.g_shear import web_shear
from gageline.strength.aisc360.j4_elements import block_shear, shear_rupture, shear_yielding
from gageline.strength.aisc360.manual_copes import coped_section, double_cope_flexure, single_cope_flexure
from gageline.strength.check import Method, Strength
from gageline.strength.connection import Beam, Bolted, Connection, Kind, Notch
from gageline.strength.verdict import Findings, NotChecked

__all__ = ["beam_web", "bolted_block", "end_distance", "first_row"]

_BOTTOM_ONLY = NotChecked(
    "bending of the web at a bottom cope",
    "the method of the Manual is for copes of the top flange, or of both",
)

_PULLED = NotChecked(
    "bending and buckling of the coped web under the axial force",
    "the Manual's method for copes leaves it out",
)

_NO_BEAM = NotChecked(
    "the supported beam",
    "the job does not say which it is: bearing on its web, copes and block shear are open",
)


def end_distance(connection: Connection, joint: Bolted) -> float:
    """End of the beam to the first column of bolts in its web, its under-run taken off, in."""
    return joint.gage - connection.gap


def first_row(connection: Connection, joint: Bolted) -> float:
    """Upper edge of the web as cut to the first row of bolts, in."""
    return connection.drop + joint.edge_top


def beam_web(connection: Connection, method: Method) -> Findings:
    """Shear, bending at copes and block shear of the web of the supported beam.

    Args:
        connection: the connection.
        method: design method.

    Returns:
        Checks; bearing and tear-out belong to the bolts.
    """
    if connection.beam is None:
        return Findings(not_checked=(_NO_BEAM,))
    beam = connection.beam
    states = [_gross_shear(beam), *_by_joint(connection), *_bending(connection)]
    checks = tuple(state.check(connection.V, method, title) for title, state in states)
    return Findings(checks, not_checked=tuple(_left_out(connection, beam)))


def _left_out(connection: Connection, beam: Beam) -> Iterator[NotChecked]:
    if connection.N and (beam.top or beam.bottom):
        yield _PULLED
    if beam.bottom is not None and beam.top is None:
        yield _BOTTOM_ONLY
    if beam.top is not None and not beam.rolled_i:
        yield NotChecked("bending of the coped web", "the method of the Manual is for rolled I-shapes")


def _gross_shear(beam: Beam) -> tuple[str, Strength]:
    if beam.top or beam.bottom:
        area = beam.h_o * beam.t_w
        return "shear yielding of the coped beam web", shear_yielding(beam.steel.F_y, area)
    strength = web_shear(beam.steel.F_y, beam.d, beam.t_w, beam.h_tw, rolled_i=beam.rolled_i)
    return "shear of the beam web", strength


def _by_joint(connection: Connection) -> Iterator[tuple[str, Strength]]:
    beam, joint = connection.end, connection.to_beam
    if not (beam.top or beam.bottom) or connection.kind is Kind.SEAT:
        return
    if isinstance(joint, Bolted):
        if beam.top and beam.bottom:
            net = beam.h_o - joint.rows * hole_for_net_area(joint.other.along)
            yield "shear rupture of the coped beam web", shear_rupture(beam.steel.F_u, net * beam.t_w)
        if beam.top:
            yield "block shear of the beam web", bolted_block(connection, joint)
    else:
        yield "shear rupture of the coped beam web", shear_rupture(beam.steel.F_u, beam.h_o * beam.t_w)
        if beam.top and connection.fitting.out:
            yield "block shear of the beam web", _welded_block(connection)


def bolted_block(connection: Connection, joint: Bolted) -> Strength:
    """Block shear of a web coped at its top: down the columns of bolts from the cope, and out to the end."""
    beam = connection.end
    hole_v, hole_t = hole_for_net_area(joint.other.along), hole_for_net_area(joint.other.across)
    length = first_row(connection, joint) + joint.span
    width = end_distance(connection, joint) + joint.width
    return block_shear(
        beam.steel.F_y,
        beam.steel.F_u,
        length * beam.t_w,
        (length - (joint.rows - 0.5) * hole_v) * beam.t_w,
        (width - (joint.columns - 0.5) * hole_t) * beam.t_w,
        1.0 if joint.columns == 1 else 0.5,
    )


def _welded_block(connection: Connection) -> Strength:
    """The block outlined by the weld of an angle's leg: down its toe from the cope, and out at its foot."""
    beam, fitting = connection.end, connection.fitting
    shear = (connection.drop + fitting.length) * beam.t_w
    tension = (fitting.leg - connection.gap) * beam.t_w
    return block_shear(beam.steel.F_y, beam.steel.F_u, shear, shear, tension)


def _bending(connection: Connection) -> Iterator[tuple[str, Strength]]:
    beam = connection.end
    if beam.top is None or not beam.rolled_i:
        return
    if beam.bottom is not None:
        yield "bending of the web between the copes", _between_copes(connection, beam.top, beam.bottom)
        return
    section = coped_section(beam.d, beam.t_w, beam.b_f, beam.t_f, beam.top.d_c)
    e = beam.top.c + connection.setback
    state = single_cope_flexure(beam.steel.F_y, beam.d, beam.t_w, beam.top.c, e, section)
    yield "local buckling of the coped beam web in bending", state


def _between_copes(connection: Connection, top: Notch, bottom: Notch) -> Strength:
    beam = connection.end
    return double_cope_flexure(
        beam.steel.F_y,
        beam.d,
        beam.t_w,
        c_t=top.c,
        c_b=bottom.c,
        d_ct=top.d_c,
        d_cb=bottom.d_c,
        e=max(top.c, bottom.c) + connection.setback,
    )
