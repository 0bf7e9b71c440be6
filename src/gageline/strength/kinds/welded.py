"""Joints with fillet welds: eccentric groups, and the steel beside them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from gageline.strength.aisc360.j2_welds import effective_fillet_size, fillet_weld
from gageline.strength.aisc360.manual_welds import minimum_thickness_at_weld
from gageline.strength.aisc360.standard import RUPTURE, manual
from gageline.strength.check import Step, Strength, found, step
from gageline.strength.clause import limit_state
from gageline.strength.connection import Fillet, Material
from gageline.strength.weld_groups import eccentric_welds

__all__ = ["Lines", "beside_weld", "c_shape", "counted", "eccentric_lines", "l_shape", "upright_line"]

Place = tuple[float, float]
Lines = tuple[tuple[Place, Place], ...]
_KEPT = 4096


def counted(weld: Fillet, shortest: float) -> tuple[Fillet, tuple[Step, ...]]:
    """A weld as it counts: of lines shorter than four legs a quarter of their length is the leg.

    Args:
        weld: as made.
        shortest: length of its shortest line, in.

    Returns:
        The weld that counts, and the working of its leg; none where the whole leg counts.

    Source: Section J2.2b(c).
    """
    size = effective_fillet_size(weld.leg, shortest)
    if size.value >= weld.leg:
        return weld, ()
    return replace(weld, leg=size.value), (size,)


@limit_state(manual("Part 8", "Eccentrically loaded fillet welds"), RUPTURE)
def _eccentric(r_n: float, L_e: float, count: int, e: float) -> tuple[Step, ...]:
    return (
        found("e", e, "in", "level from the reaction to the centroid of the weld"),
        found(
            "L_e",
            L_e,
            "in",
            "straight length along the load that carries as much, instantaneous-centre method",
        ),
        step("R_n", "n r_n L_e", count * r_n * L_e, "kip", n=count, r_n=r_n, L_e=L_e),
    )


def eccentric_lines(weld: Fillet, lines: Lines, load: Sequence[float], e: float, count: int) -> Strength:
    """What equal groups of fillet welds carry under a load in their plane.

    Args:
        weld: the weld.
        lines: both ends of each line of one group, in.
        load: the wrench of a unit force on one group.
        e: eccentricity of that load, in, for the working.
        count: how many groups share the load evenly.

    Returns:
        Strength in kips.

    Source: Manual Part 8, instantaneous-centre method.
    """
    weld, short = counted(weld, min(math.dist(*line) for line in lines))
    inch = fillet_weld(weld.leg, 1.0, weld.F_EXX)
    length = _effective_length(lines, tuple(load))
    group = _eccentric(inch.nominal, length, count, e)
    one = Step("r_n", inch.steps[-1].formula, inch.steps[-1].values, inch.nominal, "kip/in")
    return Strength(
        group.clause, group.nominal, group.factors, group.unit, (*short, *inch.steps[:-1], one, *group.steps)
    )


@lru_cache(_KEPT)
def _effective_length(lines: Lines, load: tuple[float, ...]) -> float:
    """Kept from one connection to the next, for a job repeats its welds many times."""
    return float(eccentric_welds(lines, load).length[0])


def upright_line(length: float) -> Lines:
    """One upright line of weld through x = 0, its middle at y = 0."""
    return (((0.0, -length / 2), (0.0, length / 2)),)


def l_shape(length: float, out: float) -> Lines:
    """The weld of a single angle's outstanding leg: along its toe and along its foot, the heel at x = 0."""
    top, bottom = length / 2, -length / 2
    return ((out, bottom), (out, top)), ((0.0, bottom), (out, bottom))


def c_shape(length: float, run: float) -> Lines:
    """The weld of an angle's leg on a web: along the toe at x = 0 and along both ends toward the support."""
    top, bottom = length / 2, -length / 2
    return ((0.0, bottom), (0.0, top)), ((0.0, top), (run, top)), ((0.0, bottom), (run, bottom))


@limit_state(manual("Equations 9-6 and 9-7", "Rupture of the steel beside a fillet weld"), RUPTURE)
def _beside(R_w: float, t: float, t_min: float) -> tuple[Step, ...]:
    return (
        found("R_w", R_w, "kip", "nominal strength of the weld itself"),
        step("R_n", "R_w t/t_min", R_w * t / t_min, "kip", R_w=R_w, t=t, t_min=t_min),
    )


def beside_weld(strength: Strength, weld: Fillet, steel: Material, t: float, sides: int) -> Strength:
    """What the steel beside a weld carries: the weld's strength in proportion to the thickness it needs.

    Args:
        strength: of the weld.
        weld: the weld.
        steel: of the part beside it.
        t: thickness of that part, in.
        sides: on how many of its faces the weld lies, opposite each other.

    Returns:
        Strength in kips; more than the weld's own where the part is thicker than it needs to be.

    Source: Manual Part 9, Equations 9-6 and 9-7; where the part is thinner, the weld's strength is taken in
        proportion.
    """
    least = minimum_thickness_at_weld(weld.leg, steel.F_u, sides, weld.F_EXX)
    return _beside(strength.nominal, t, least.value).after(least)
