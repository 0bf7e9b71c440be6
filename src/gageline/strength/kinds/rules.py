"""Rules of detail that need no load: edges, spacing, least and largest weld, least length."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from gageline.steel import HoleKind, bolt, minimum_edge_distance
from gageline.strength.aisc360.j2_welds import maximum_fillet, minimum_fillet
from gageline.strength.aisc360.j3_bolts import Hole
from gageline.strength.aisc360.j3_spacing import (
    maximum_edge_distance,
    maximum_spacing,
    minimum_spacing,
)
from gageline.strength.aisc360.standard import manual, spec
from gageline.strength.check import Check, Clause, Step, found, step
from gageline.strength.clause import clause_of
from gageline.strength.connection import Bolted, Connection, Fillet, Holes, Kind, Tongue
from gageline.strength.kinds.beam_web import end_distance
from gageline.strength.verdict import Findings, NotChecked

__all__ = ["at_least", "at_most", "condition", "detail_rules", "exempt"]

_EDGE = spec("Table J3.4", "Least edge distance")
_LENGTH = manual("Part 10", "Least length of a connection")
_TURN = manual("Part 10", "Flexibility of simple connections")
_LARGE = 0.9  # in: M22 and 7/8 in are the largest bolts of the thinner angle
_METRIC = NotChecked(
    "whether bolts of an ISO 898-1 property class are accepted",
    "Table J3.2 does not name them: they are given the stresses of its row for threaded parts, with their "
    "nominal tensile strength",
)
_METRIC_GROUPS = frozenset({"8.8", "10.9"})
_METRIC_EDGES = {16: 22, 20: 26, 22: 28, 24: 30, 27: 34, 30: 38, 36: 46}
_MM = 25.4
_USE = spec("J3.3", "Kinds of hole that a joint may have")
_ENDS = 2  # rows that have an end of the fitting beside them
_IN_BEARING = (
    "not allowed in a bearing joint; use STD, or slots across the load, or slip-critical bolts (A325-SC)"
)
_ANY = "not allowed in any joint; use STD in one of them"
_LONG = frozenset({Hole.LONG_PARALLEL, Hole.LONG_PERPENDICULAR})
_PARALLEL = frozenset({Hole.SHORT_PARALLEL, Hole.LONG_PARALLEL})
_ACROSS = frozenset({Hole.SHORT_PERPENDICULAR, Hole.LONG_PERPENDICULAR})
_STEEPEST = math.tan(math.radians(10.0))
_OF_TABLE = {
    Hole.STANDARD: HoleKind.STD,
    Hole.OVERSIZED: HoleKind.OVS,
    Hole.SHORT_PARALLEL: HoleKind.SSL,
    Hole.SHORT_PERPENDICULAR: HoleKind.SSL,
    Hole.LONG_PARALLEL: HoleKind.LSL,
    Hole.LONG_PERPENDICULAR: HoleKind.LSL,
}
_EDGES = {0.5: 0.75, 0.625: 0.875, 0.75: 1.0, 0.875: 1.125, 1.0: 1.25, 1.125: 1.5, 1.25: 1.625}


def at_least(clause: Clause, title: str, least: Step, given: float) -> Check:
    """A rule that something is no less than a limit.

    Args:
        clause: where it stands.
        title: what is measured.
        least: the limit.
        given: what is there.
    """
    return Check(clause, title, least.value, given, "in", (least,))


def at_most(clause: Clause, title: str, most: Step, given: float) -> Check:
    """A rule that something is no more than a limit.

    Args:
        clause: where it stands.
        title: what is measured.
        most: the limit.
        given: what is there.
    """
    return Check(clause, title, given, most.value, "in", (most,))


def condition(rule: Check) -> Check:
    """A limit of the method itself: beyond it the method gives no strength at all, whatever it works out to.

    Args:
        rule: the limit.
    """
    return replace(rule, binding=True)


def exempt(clause: Clause, title: str) -> Check:
    """A rule that does not bind here, said so that nobody looks for it.

    Args:
        clause: where it stands.
        title: what it does not bind, and why.
    """
    return Check(clause, title, 0.0, 1.0, "", ())


def detail_rules(connection: Connection) -> Findings:
    """The rules of detail for both joints of a connection; a seat has one, with its support."""
    rules: list[Check] = []
    seat = connection.kind is Kind.SEAT
    joints = ((connection.to_beam, "beam"), (connection.to_support, "support"))
    for joint, where in joints[1:] if seat else joints:
        if isinstance(joint, Bolted):
            rules.extend(_of_bolts(joint, connection, where))
            sheared = connection.N if where == "beam" else 0.0
            rules.extend(_of_kinds(joint, where, sheared / connection.V))
        else:
            rules.extend(_of_weld(joint, connection, where))
    if connection.tongue is not None and isinstance(connection.to_beam, Bolted):
        rules.extend(_of_tongue(connection, connection.tongue, connection.to_beam))
    if connection.beam is not None and not seat:
        if isinstance(connection.to_beam, Bolted):
            rules.extend(_of_web(connection, connection.to_beam))
        rules.append(_length(connection))
    rules.extend(_ductility(connection))
    groups = {
        joint.group for joint in (connection.to_beam, connection.to_support) if isinstance(joint, Bolted)
    }
    return Findings(rules=tuple(rules), not_checked=(_METRIC,) if groups & _METRIC_GROUPS else ())


def _ductility(connection: Connection) -> Iterator[Check]:
    """What lets the end of the beam turn: thin angles and end plates, bolts that are not too near the web.

    Source: Manual Part 10, from memory: double angles at most 5/8 in thick; end plates at most 3/8 in with
        their bolts 3 1/2 to 5 1/2 in apart; single angles at least 3/8 in with bolts to 7/8 in, and 1/2 in
        with larger ones. Each has the millimetre size that stands for it.
    """
    t, joint = connection.fitting.t, connection.to_support
    title = "thickness of the {}, so that the beam's end can turn"
    if connection.kind is Kind.DOUBLE_ANGLES:
        yield at_most(_TURN, title.format("angles"), _size("t_max", 16 / _MM, "5/8 in, or 16 mm"), t)
    elif connection.kind is Kind.END_PLATE and isinstance(joint, Bolted):
        yield at_most(_TURN, title.format("end plate"), _size("t_max", 10 / _MM, "3/8 in, or 10 mm"), t)
        apart, what = 2 * joint.gage, "bolts on both sides of the web, apart"
        yield at_least(_TURN, what, _size("g_min", 88 / _MM, "3 1/2 in, or 88 mm"), apart)
        yield at_most(_TURN, what, _size("g_max", 140 / _MM, "5 1/2 in, or 140 mm"), apart)
    elif connection.kind is Kind.SINGLE_ANGLE:
        bolts = [one for one in (connection.to_beam, joint) if isinstance(one, Bolted)]
        large = max((one.d for one in bolts), default=0.0) > _LARGE
        least = (
            _size("t_min", 0.5, "for its bolts") if large else _size("t_min", 9.5 / _MM, "3/8 in, or 9.5 mm")
        )
        if bolts:
            yield at_least(_TURN, "thickness of the single angle for its bolts", least, t)


def _size(symbol: str, inches: float, note: str) -> Step:
    return found(symbol, inches, "in", note)


def _of_kinds(joint: Bolted, where: str, slope: float) -> Iterator[Check]:
    """Kinds of hole that a joint in bearing may not have.

    Args:
        joint: the joint.
        where: what it is bolted to.
        slope: of the load that shears its bolts, level over upright.

    Slip-critical bolts may have any of them, but not long slots in both parts.

    Source: Section J3.3(b) to (d), from memory; that a slot lies across the load within 10 degrees: Section
        4.3 of the RCSC Specification, from memory.
    """
    plies = {"the fitting": joint.holes.kind, f"the {where}": joint.other.kind}
    for name, kind in plies.items() if not joint.surface else ():
        if kind is Hole.OVERSIZED:
            yield _not_allowed(f"oversized holes in {name}, bolts to the {where}", 1)
        elif kind in _PARALLEL or (kind in _ACROSS and slope > _STEEPEST):
            yield _not_allowed(f"slots along the load in {name}, bolts to the {where}", 1)
    if all(kind in _LONG for kind in plies.values()):
        yield _not_allowed(f"long slots in both parts, bolts to the {where}", 2, 1, _ANY)


def _not_allowed(what: str, plies: int, most: int = 0, words: str = _IN_BEARING) -> Check:
    limit = step("n_max", "n_p", most, n_p=most)
    title = f"{what}: {words}"
    return Check(_USE, title, plies, most, "", (limit,), binding=True)


def _edge_of(joint: Bolted, holes: Holes, *, along: bool) -> Step:
    """Least edge distance of a joint's holes along the reaction or across it, in.

    Source: Tables J3.4 and J3.5; a slot along the edge adds nothing.
    """
    size, kind, standard = bolt(joint.size), _OF_TABLE[holes.kind], _least_edge(joint.d)
    toward = holes.along > holes.across if along else holes.across > holes.along
    more = (minimum_edge_distance(size, kind, slot_to_edge=toward) - minimum_edge_distance(size)).inches
    if not more:
        return standard
    return step("l_min", "l_t + C_2", standard.value + more, "in", l_t=standard.value, C_2=more)


def _least_edge(d: float) -> Step:
    """Least edge distance of a standard hole, in.

    Source: Tables J3.4 and J3.4M; over the sizes they list, 1.25 d.
    """
    mm = _METRIC_EDGES.get(round(d * _MM)) if abs(d * _MM - round(d * _MM)) < 0.01 else None
    if mm is not None:
        return step("l_min", "l_t", mm / _MM, "in", l_t=mm / _MM)
    size = next((edge for up_to, edge in _EDGES.items() if d <= up_to + 1e-9), 1.25 * d)
    return step("l_min", "l_t", size, "in", l_t=size)


def _other_part(connection: Connection, where: str) -> float | None:
    """Thickness of what the fitting is joined to: the beam's web or the support, in; None if not known."""
    if where == "beam":
        return connection.web_thickness
    return connection.support.t if connection.support else None


def _of_bolts(joint: Bolted, connection: Connection, where: str) -> Iterator[Check]:
    """Edges and pitches of a joint's holes; the pitch is bound by the thinner of the parts in contact."""
    fitting = connection.fitting
    thinner = min(fitting.t, _other_part(connection, where) or fitting.t)
    edges = (("end", min(joint.edge_top, joint.edge_bottom), True), ("edge", joint.edge_side, False))
    for name, given, along in edges:
        least = _edge_of(joint, joint.holes, along=along)
        yield at_least(_EDGE, f"{name} distance in the fitting, bolts to the {where}", least, given)
    most = maximum_edge_distance(fitting.t)
    title = f"bolts to the {where}, the nearest edge of the fitting"
    yield at_most(clause_of(maximum_edge_distance), title, most, _farthest_edge(joint))
    if joint.rows > 1:
        near = minimum_spacing(joint.d, joint.holes.along)
        yield at_least(
            clause_of(minimum_spacing), f"pitch of the bolts to the {where}", near, min(joint.steps)
        )
        far = maximum_spacing(thinner)
        yield at_most(clause_of(maximum_spacing), f"pitch of the bolts to the {where}", far, max(joint.steps))
    if joint.columns > 1:
        title = f"columns of the bolts to the {where}"
        near = minimum_spacing(joint.d, joint.holes.across)
        yield at_least(clause_of(minimum_spacing), title, near, joint.between)
        yield at_most(clause_of(maximum_spacing), title, maximum_spacing(thinner), joint.between)


def _farthest_edge(joint: Bolted) -> float:
    """The largest distance from a bolt of the outer column to the edge that is nearest to it, in."""
    if joint.rows > _ENDS:
        return joint.edge_side
    return max(min(end, joint.edge_side) for end in (joint.edge_top, joint.edge_bottom))


def _of_weld(weld: Fillet, connection: Connection, where: str) -> Iterator[Check]:
    """Least size by the thinner part; most along the edges of an angle's leg. A plate is welded square on."""
    fitting = connection.fitting
    thinner = min(fitting.t, _other_part(connection, where) or fitting.t)
    yield at_least(clause_of(minimum_fillet), f"weld to the {where}", minimum_fillet(thinner), weld.leg)
    if fitting.out:
        title = f"weld along the edges of the angle, to the {where}"
        yield at_most(clause_of(maximum_fillet), title, maximum_fillet(fitting.t), weld.leg)


def _of_web(connection: Connection, joint: Bolted) -> Iterator[Check]:
    level = _edge_of(joint, joint.other, along=False)
    end = end_distance(connection, joint)
    yield at_least(_EDGE, "end of the beam to its bolts, under-run taken off", level, end)
    farthest = end + connection.under_run
    most = maximum_edge_distance(connection.end.t_w)
    yield at_most(clause_of(maximum_edge_distance), "end of the beam to its bolts, at most", most, farthest)
    if connection.end.top:
        down = connection.drop + joint.edge_top
        upright = _edge_of(joint, joint.other, along=True)
        yield at_least(_EDGE, "cope to the first row of bolts", upright, down)


def _of_tongue(connection: Connection, tongue: Tongue, joint: Bolted) -> Iterator[Check]:
    level, upright = (_edge_of(joint, joint.other, along=along) for along in (False, True))
    end = end_distance(connection, joint)
    yield at_least(_EDGE, "end of the tongue to its bolts, under-run taken off", level, end)
    beyond = tongue.plate.length - tongue.edge_top - joint.span
    yield at_least(_EDGE, "end distance in the tongue", upright, min(tongue.edge_top, beyond))


def _length(connection: Connection) -> Check:
    """Half of T, or of the depth that copes leave.

    Source: read in Examples II.A-17A (T) and II.A-28A (copes); T is in the tables of sections, and where they
        leave it out it is the flat of the web.
    """
    beam, length = connection.end, connection.fitting.length
    if beam.top or beam.bottom:
        least = step("L_min", "h_o/2", beam.h_o / 2, "in", h_o=beam.h_o)
    elif beam.T:
        least = step("L_min", "T/2", beam.T / 2, "in", T=beam.T)
    else:
        least = step("L_min", "(d - 2 k)/2", (beam.d - 2 * beam.k) / 2, "in", d=beam.d, k=beam.k)
    return at_least(_LENGTH, "length of the connection", least, length)
