"""The web of the supported beam at its end, coped or not."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.strength.aisc360.g_shear import web_shear
from gageline.strength.aisc360.j4_elements import block_shear, shear_rupture, shear_yielding
from gageline.strength.aisc360.manual_copes import coped_section, double_cope_flexure, single_cope_flexure
from gageline.strength.check import Method, Step, Strength, step
from gageline.strength.connection import Beam, Bolted, Connection, Kind, Notch
from gageline.strength.kinds.areas import block_through_bolts, net_hole
from gageline.strength.verdict import Findings, NotChecked

__all__ = ["beam_web", "bolted_block", "end_distance", "first_row"]

_BOTTOM_ONLY = NotChecked(
    "bending of the web at a bottom cope",
    "the method of the Manual is for copes of the top flange, or of both",
)

_SHORT_BOTTOM = NotChecked(
    "what Equation 9-22 of the Manual gains where the bottom cope is the shorter",
    "the equation was not read: the least modification factor of the method, 1.84, is taken",
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
    """End of the beam's web or tongue to the first column of bolts in it, the under-run taken off, in."""
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
        Checks; bearing and tear-out belong to the bolts. Nothing of a hollow beam, which has a tongue.
    """
    if connection.tongue is not None:
        return Findings()
    if connection.beam is None:
        return Findings(not_checked=(_NO_BEAM,))
    beam = connection.beam
    states = [_gross_shear(beam), *_by_joint(connection), *_bending(connection)]
    checks = tuple(state.check(connection.V, method, title) for title, state in states)
    return Findings(checks, not_checked=tuple(_left_out(connection, beam)))


def _left_out(connection: Connection, beam: Beam) -> Iterator[NotChecked]:
    if connection.N and (beam.top or beam.bottom):
        yield _PULLED
    if beam.top and beam.bottom and beam.bottom.c < beam.top.c:
        yield _SHORT_BOTTOM
    if beam.bottom is not None and beam.top is None:
        yield _BOTTOM_ONLY
    if beam.top is not None and not beam.rolled_i:
        yield NotChecked("bending of the coped web", "the method of the Manual is for rolled I-shapes")


def _gross_shear(beam: Beam) -> tuple[str, Strength]:
    if beam.top or beam.bottom:
        area = step("A_gv", "h_o t_w", beam.h_o * beam.t_w, "in²", h_o=beam.h_o, t_w=beam.t_w)
        strength = shear_yielding(beam.steel.F_y, area.value).after(area)
        return "shear yielding of the coped beam web", strength
    strength = web_shear(beam.steel.F_y, beam.d, beam.t_w, beam.h_tw, rolled_i=beam.rolled_i)
    return "shear of the beam web", strength


def _by_joint(connection: Connection) -> Iterator[tuple[str, Strength]]:
    beam, joint = connection.end, connection.to_beam
    if not (beam.top or beam.bottom) or connection.kind is Kind.SEAT:
        return
    if isinstance(joint, Bolted):
        if beam.top and beam.bottom:
            hole = net_hole(joint.other.along)
            left = (beam.h_o - joint.rows * hole.value) * beam.t_w
            given = {"h_o": beam.h_o, "n": joint.rows, "d_n": hole.value, "t_w": beam.t_w}
            area = step("A_nv", "(h_o - n d_n) t_w", left, "in²", **given)
            state = shear_rupture(beam.steel.F_u, left).after(hole, area)
            yield "shear rupture of the coped beam web", state
        if beam.top:
            yield "block shear of the beam web", bolted_block(connection, joint)
    else:
        area = step("A_nv", "h_o t_w", beam.h_o * beam.t_w, "in²", h_o=beam.h_o, t_w=beam.t_w)
        yield "shear rupture of the coped beam web", shear_rupture(beam.steel.F_u, area.value).after(area)
        if beam.top and connection.fitting.out:
            yield "block shear of the beam web", _welded_block(connection)


def bolted_block(connection: Connection, joint: Bolted) -> Strength:
    """Block shear of a web coped at its top: down the columns of bolts from the cope, and out to the end."""
    beam = connection.end
    down = first_row(connection, joint) + joint.span
    across = end_distance(connection, joint) + joint.width
    return block_through_bolts(beam.steel, beam.t_w, joint, joint.other, (down, across))


def _welded_block(connection: Connection) -> Strength:
    """The block outlined by the weld of an angle's leg: down its toe from the cope, and out at its foot."""
    beam, fitting, t_w = connection.end, connection.fitting, connection.end.t_w
    given = {"L": fitting.length, "s": connection.drop, "t_w": t_w}
    shear = step("A_gv", "(L + s) t_w", (fitting.length + connection.drop) * t_w, "in²", **given)
    run = {"b": fitting.leg, "g": connection.gap, "t_w": t_w}
    tension = step("A_nt", "(b - g) t_w", (fitting.leg - connection.gap) * t_w, "in²", **run)
    block = block_shear(beam.steel.F_y, beam.steel.F_u, shear.value, shear.value, tension.value)
    return block.after(shear.noted("also A_nv: no holes"), tension)


def _bending(connection: Connection) -> Iterator[tuple[str, Strength]]:
    beam = connection.end
    if beam.top is None or not beam.rolled_i:
        return
    if beam.bottom is not None:
        yield "bending of the web between the copes", _between_copes(connection, beam.top, beam.bottom)
        return
    section = coped_section(beam.d, beam.t_w, beam.b_f, beam.t_f, beam.top.d_c)
    arm = _arm(beam.top.c, connection)
    state = single_cope_flexure(beam.steel.F_y, beam.d, beam.t_w, beam.top.c, arm.value, section)
    yield "local buckling of the coped beam web in bending", state.after(arm)


def _arm(c: float, connection: Connection) -> Step:
    """From the face of the support to the end of the cope, in."""
    off = connection.setback + connection.play
    return step("e", "c + s", c + off, "in", c=c, s=off)


def _between_copes(connection: Connection, top: Notch, bottom: Notch) -> Strength:
    beam, arm = connection.end, _arm(max(top.c, bottom.c), connection)
    strength = double_cope_flexure(
        beam.steel.F_y,
        beam.d,
        beam.t_w,
        c_t=top.c,
        c_b=bottom.c,
        d_ct=top.d_c,
        d_cb=bottom.d_c,
        e=arm.value,
    )
    return strength.after(arm)
