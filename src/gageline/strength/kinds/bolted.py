"""Joints with bolts: what each bolt carries, and what tears out of the parts that it joins."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np

from gageline.errors import ValueProblem
from gageline.strength.aisc360.d_tension import hole_for_net_area
from gageline.strength.aisc360.j3_bolts import bearing, bolt_group, bolt_shear, effective_bolt, tear_out
from gageline.strength.aisc360.j3_spacing import clear_between_holes, clear_to_edge
from gageline.strength.aisc360.j4_elements import flexural_rupture
from gageline.strength.aisc360.standard import RUPTURE, manual
from gageline.strength.check import Step, Strength, found, step
from gageline.strength.clause import limit_state
from gageline.strength.connection import Bolted, Fitting, Holes, Material
from gageline.strength.groups import eccentric_bolts, wrench
from gageline.strength.kinds.areas import block_through_bolts, gross_shear

__all__ = [
    "Ply",
    "angle_end",
    "block_of_fitting",
    "bolt_coefficient",
    "eccentric_rows",
    "moment_coefficient",
    "net_modulus",
    "row_strengths",
    "rows_of_bolts",
    "rupture_of_net",
    "yield_of_fitting",
]


_KEPT = 4096


@dataclass(frozen=True, slots=True)
class Ply:
    """One part that a joint's bolts bear on.

    Args:
        steel: its steel.
        t: thickness that belongs to one row, in: of both angles of a pair together.
        holes: its holes.
        edge: along the reaction from the row nearest to a free edge to that edge, in; None without one.
        at_top: whether that row is the first, not the last.
        side: across the reaction from the column nearest to the edge that an axial force tears at, in; None
            without an axial force.
    """

    steel: Material
    t: float
    holes: Holes
    edge: float | None = None
    at_top: bool = False
    side: float | None = None


def row_strengths(joint: Bolted, planes: int, plies: Sequence[Ply]) -> tuple[Strength, ...]:
    """What each row of a joint carries, from the first to the last.

    Args:
        joint: the joint.
        planes: shear planes of one row: two for bolts in double shear, and for a pair of bolts.
        plies: what the bolts bear on.

    Returns:
        The least of shear, bearing and tear-out of each row.

    Source: user note of Section J3.7, Section J3.11.
    """
    return tuple(
        effective_bolt(
            [
                bolt_shear(joint.group, joint.threads, joint.d, planes),
                *(state for ply in plies for state in _on_ply(joint, ply, row)),
            ]
        )
        for row in range(joint.rows)
    )


def _on_ply(joint: Bolted, ply: Ply, row: int) -> Iterator[Strength]:
    yield bearing(ply.steel.F_u, joint.d, ply.t, ply.holes.kind)
    at_edge = row == (0 if ply.at_top else joint.rows - 1)
    clears = []
    if at_edge and ply.edge is not None:
        clears.append(clear_to_edge(ply.edge, ply.holes.along))
    elif joint.rows > 1:
        pitch = joint.steps[max(row - 1, 0) if ply.at_top else min(row, joint.rows - 2)]
        clears.append(clear_between_holes(pitch, ply.holes.along))
    if ply.side is not None:
        clears.append(clear_to_edge(ply.side, ply.holes.across))
        if joint.columns > 1:
            clears.append(clear_between_holes(joint.between, ply.holes.across))
    for clear in clears:
        yield tear_out(ply.steel.F_u, clear.value, ply.t, ply.holes.kind).after(clear)


def rows_of_bolts(joint: Bolted, planes: int, plies: Sequence[Ply]) -> Strength:
    """What a joint loaded through its middle carries.

    Args:
        joint: the joint.
        planes: shear planes of one row.
        plies: what the bolts bear on.

    Returns:
        Strength in kips.
    """
    return bolt_group(row_strengths(joint, planes, plies) * joint.columns)


def bolt_coefficient(joint: Bolted, e: float, angle: float = 0.0) -> float:
    """The coefficient C of the Manual.

    Args:
        joint: the joint.
        e: level from the load to the middle of the joint's columns, in.
        angle: of the load from upright, degrees.

    Returns:
        C, in strengths of one bolt.
    """
    return _coefficient(joint.columns, joint.between, joint.places, tuple(wrench(angle, e).tolist()))


def moment_coefficient(joint: Bolted) -> float:
    """The coefficient C' of the Manual, for a moment without a force, in."""
    return _coefficient(joint.columns, joint.between, joint.places, (0.0, 0.0, 1.0))


@lru_cache(_KEPT)
def _coefficient(columns: int, between: float, places: tuple[float, ...], load: tuple[float, ...]) -> float:
    """Kept from one connection to the next, for a job repeats its patterns many times."""
    across, down = (columns - 1) / 2 * between, sum(places) / len(places)
    points = [(column * between - across, down - place) for column in range(columns) for place in places]
    return float(eccentric_bolts(points, load).coefficient[0])


@limit_state(manual("Part 7", "Eccentrically loaded bolts"), RUPTURE)
def _eccentric(total: float, C: float, n: int) -> tuple[Step, ...]:
    return (step("R_n", "C/n R_b", C / n * total, "kip", C=C, n=n, R_b=total),)


def eccentric_rows(
    joint: Bolted, planes: int, plies: Sequence[Ply], e: float, angle: float = 0.0
) -> Strength:
    """What a joint loaded beside its middle carries: the sum of its bolts, lessened by C/n.

    Args:
        joint: the joint.
        planes: shear planes of one row.
        plies: what the bolts bear on.
        e: level from the load to the middle of the columns, in.
        angle: of the load from upright, degrees.

    Returns:
        Strength in kips.

    Raises:
        ValueProblem: a single bolt, which takes no eccentric load.

    Source: Manual Part 7 and Example II.A-18, where C/n lessens the sum of the bolts' own strengths.
    """
    if joint.rows * joint.columns < 2:
        raise ValueProblem("one bolt cannot carry an eccentric load: give at least 2 rows")
    whole = rows_of_bolts(joint, planes, plies)
    C = bolt_coefficient(joint, e, angle)
    lessened = _eccentric(whole.nominal, C, joint.rows * joint.columns)
    last = whole.steps[-1]
    total = Step("R_b", last.formula, last.values, last.value, last.unit)
    level = found("e", e, "in", "level from the reaction to the middle of the bolts")
    group = found("C", C, "", "coefficient of the group under that load, instantaneous-centre method, Part 7")
    working = (*whole.steps[:-1], total, level, group, *lessened.steps)
    return Strength(lessened.clause, lessened.nominal, lessened.factors, lessened.unit, working)


def yield_of_fitting(fitting: Fitting, count: int) -> Strength:
    """Shear yielding of angles or a plate over their whole length.

    Args:
        fitting: the fitting.
        count: how many stand side by side.
    """
    return gross_shear(fitting.steel, fitting.length, fitting.t, count)


def angle_end(joint: Bolted, *, pushed_up: bool) -> float:
    """The end distance that a fitting's bolts push against.

    Args:
        joint: the joint.
        pushed_up: whether the bolts push the fitting up, as those of the support do.
    """
    return joint.edge_top if pushed_up else joint.edge_bottom


def block_of_fitting(fitting: Fitting, joint: Bolted, count: int, *, pushed_up: bool) -> Strength:
    """Block shear of angles or a plate: down a column of holes and out to the side.

    Args:
        fitting: the fitting.
        joint: whose bolts pull the block out.
        count: how many such blocks stand side by side.
        pushed_up: whether the bolts push the fitting up.

    Source: Section J4.3.
    """
    lengths = (joint.span + angle_end(joint, pushed_up=pushed_up), joint.edge_side + joint.width)
    return block_through_bolts(fitting.steel, count * fitting.t, joint, joint.holes, lengths)


def net_modulus(fitting: Fitting, joint: Bolted) -> float:
    """Plastic modulus of a plate through a column of holes, about its own plastic axis.

    Args:
        fitting: the plate or the leg.
        joint: whose holes weaken it.

    Returns:
        Z_net, in³.

    Source: statics; the holes with the sixteenth of Section B4.3b.
    """
    half = hole_for_net_area(joint.holes.along) / 2
    rows = [joint.edge_top + place for place in joint.places]
    cuts = [0.0, *(y + sign * half for y in rows for sign in (-1, 1)), fitting.length]
    solid = [(low, high) for low, high in list(pairwise(cuts))[::2] if high > low]
    lengths = np.array([high - low for low, high in solid])
    before = np.concatenate([[0.0], np.cumsum(lengths)])
    middle = before[-1] / 2
    index = min(int(np.searchsorted(before, middle, side="right")) - 1, len(solid) - 1)
    axis = solid[index][0] + middle - before[index]
    return float(sum(fitting.t * _first_moment(low, high, axis) for low, high in solid))


def rupture_of_net(fitting: Fitting, joint: Bolted, count: int = 1) -> Strength:
    """Flexural rupture of plates or legs through a column of holes.

    Args:
        fitting: the plate or the leg.
        joint: whose holes weaken it.
        count: how many stand side by side.

    Source: Manual Part 9.
    """
    Z_net = count * net_modulus(fitting, joint)
    origin = found("Z_net", Z_net, "in³", "plastic modulus through the holes, each with its 1/16 in (B4.3b)")
    return flexural_rupture(fitting.steel.F_u, Z_net).after(origin)


def _first_moment(low: float, high: float, axis: float) -> float:
    if low < axis < high:
        return ((axis - low) ** 2 + (high - axis) ** 2) / 2
    return abs((low + high) / 2 - axis) * (high - low)
