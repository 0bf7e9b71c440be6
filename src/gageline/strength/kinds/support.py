"""The supporting member where a connection stands on it."""

from __future__ import annotations

from gageline.strength.aisc360.j3_bolts import bearing, bolt_shear, effective_bolt
from gageline.strength.check import Check, Method
from gageline.strength.connection import Bolted, Connection, Support, SupportFace
from gageline.strength.kinds.bolted import Ply
from gageline.strength.verdict import Findings, NotChecked

__all__ = ["shared_bolts", "support_left_out", "support_ply"]

_UNKNOWN = NotChecked(
    "the supporting member",
    "the job does not say what it is: bearing, thickness at welds and bending are open",
)
_ALWAYS = (
    NotChecked(
        "structural integrity (Section B3.9)", "whether the building code asks for it is not known here"
    ),
    NotChecked("seismic detailing", "outside AISC 360: see AISC 341 where it applies"),
)
_TORSION = NotChecked(
    "torsion of the supporting member", "the reaction is taken at the face of its web; restraint is not known"
)
_WALL = NotChecked(
    "bending of the wall of the hollow support",
    "Chapter K is not covered; a single plate is held against punching through it",
)
_COLUMN_WEB = NotChecked(
    "bending of the column web out of its plane", "the method for flexible supports is not covered"
)

_PULLED = NotChecked(
    "bending of the support's face that the axial force pulls",
    "yield lines of a web or flange are not covered",
)


_WEBS = frozenset({SupportFace.GIRDER_WEB, SupportFace.COLUMN_WEB})
_OTHER_SIDE = NotChecked(
    "a beam on the other side of the supporting web",
    "the job does not say whether one shares its bolts, or is welded to the same steel: a frame does",
)


def support_ply(support: Support | None, joint: Bolted, per_row: int) -> tuple[Ply, ...]:
    """The support as a part that a joint bears on; nothing where it is not known.

    Args:
        support: what carries the connection.
        joint: the joint with it.
        per_row: bolts side by side in one row.
    """
    return () if support is None else (Ply(support.steel, per_row * support.t, joint.other),)


def support_left_out(connection: Connection) -> tuple[NotChecked, ...]:
    """What is not checked of the support and of the building."""
    support = connection.support
    if support is None:
        return (_UNKNOWN, *_ALWAYS)
    faces = {SupportFace.WALL: (_WALL,), SupportFace.COLUMN_WEB: (_COLUMN_WEB,)}
    found = faces.get(support.face, ())
    if support.face is SupportFace.GIRDER_WEB and not (support.opposite or support.both_faces):
        found = (_TORSION,)
    if support.face in _WEBS and support.both_faces is None:
        found = (*found, _OTHER_SIDE)
    return (*found, *((_PULLED,) if connection.N else ()), *_ALWAYS)


def shared_bolts(connection: Connection, per_row: int, method: Method) -> Findings:
    """Bolts of the support that also carry a beam on its other side.

    Args:
        connection: the connection.
        per_row: bolts side by side in one row.
        method: design method.

    Returns:
        The check of one such bolt in double shear and of the web between the two beams.

    Source: Example II.A-9.
    """
    support, joint = connection.support, connection.to_support
    if support is None or not support.opposite_rows or not isinstance(joint, Bolted):
        return Findings()
    each = connection.V / (per_row * joint.rows)
    other = support.opposite / (per_row * support.opposite_rows)
    one = effective_bolt(
        [
            bolt_shear(joint.group, joint.threads, joint.d, 2),
            bearing(support.steel.F_u, joint.d, support.t, joint.other.kind),
        ]
    )
    check: Check = one.check(each + other, method, "one bolt that carries beams on both sides")
    return Findings((check,))
