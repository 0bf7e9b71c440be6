"""Manual Part 10: single plates (shear tabs), conventional and extended.

Covered: eccentricity and thickness limit of the conventional plate, largest thickness, weld size and the
need for stabilizer plates of the extended plate. Bending, buckling and interaction of the plate are the
ordinary clauses (`f_bars`, `j4_elements`, `h_combined`). Not covered: the torsion of an extended plate that
is lapped to a beam without a slab, and axial load through the plate.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from gageline.errors import ValueProblem
from gageline.strength.aisc360.j3_bolts import Hole
from gageline.strength.aisc360.standard import YIELDING, manual
from gageline.strength.check import Step, found, step
from gageline.strength.clause import limit_state, provision
from gageline.strength.guard import positive

__all__ = [
    "ConventionalPlate",
    "conventional_plate",
    "maximum_plate_thickness",
    "plate_without_stabilizer",
    "single_plate_weld",
]

_MOST_DISTANCE = 3.5
_TOLERANCE = 1e-9


class ConventionalPlate(NamedTuple):
    """What the Manual asks of a conventional single plate.

    Args:
        e: Eccentricity for the bolts, in.
        t_max: Most thickness of the plate or of the beam web, one of the two, in; None without a limit.
    """

    e: Step
    t_max: Step | None


@provision(manual("Table 10-9", "Conventional single plate"))
def conventional_plate(n: int, d: float, a: float, hole: Hole) -> ConventionalPlate:
    """Eccentricity and thickness limit of a conventional single plate with one column of bolts.

    Args:
        n: Number of bolts.
        d: Bolt diameter, in.
        a: Distance from the weld to the bolt line, in.
        hole: Standard holes, or short slots perpendicular to the load.

    Returns:
        Eccentricity of the bolts and most thickness.

    Raises:
        ValueProblem: Outside 2 to 12 bolts, more than 3 1/2 in from weld to bolts, or other holes.

    Source: Manual Part 10, Table 10-9, from memory.
    """
    positive(n=n, d=d, a=a)
    if not 2 <= n <= 12:
        raise ValueProblem(
            f"n = {n} bolts must be 2 to 12 in a conventional single plate: use another connection"
        )
    if a > _MOST_DISTANCE + _TOLERANCE:
        raise ValueProblem(
            f"a = {a:g} in must be at most 3.5 in in a conventional single plate: design it as extended"
        )
    if hole not in {Hole.STANDARD, Hole.SHORT_PERPENDICULAR}:
        raise ValueProblem(
            f"{hole.value} holes are outside the method: "
            "use standard holes or short slots perpendicular to the load"
        )
    half = step("e", "a/2", a / 2, "in", a=a)
    thick = step("t_max", "d/2 + 1/16", d / 2 + 1 / 16, "in", d=d).noted("Table 10-9")
    if hole is Hole.SHORT_PERPENDICULAR:
        return ConventionalPlate(half, None if n <= 5 else thick)
    if n <= 5:
        return ConventionalPlate(half, thick)
    thin = step("t_max", "d/2 - 1/16", d / 2 - 1 / 16, "in", d=d).noted("Table 10-9")
    return ConventionalPlate(step("e", "a", a, "in", a=a), thin)


@provision(manual("Equation 10-3", "Most thickness of an extended single plate"))
def maximum_plate_thickness(F_y: float, L: float, F_nv: float, A_b: float, C: float) -> tuple[Step, ...]:
    """Thickness above which an extended plate would break its bolts before it yields.

    Args:
        F_y: Yield stress of the plate, ksi.
        L: Depth of the plate, in.
        F_nv: Nominal shear stress of the bolts, ksi.
        A_b: Area of one bolt, in².
        C: Coefficient of the bolt group for pure moment, C', in.

    Returns:
        The working, its last line t_max in inches. It need not be met where, with one column of bolts,
        the plate or the web is at most d/2 + 1/16 thick with edge distances of 2d along the beam.

    Source: Manual Part 10, Equations 10-3 and 10-4, from memory.
    """
    positive(F_y=F_y, L=L, F_nv=F_nv, A_b=A_b, C=C)
    moment = Step(
        "M_max",
        "F_nv/0.90 A_b C'",
        (("F_nv", F_nv), ("A_b", A_b), ("C'", C)),
        F_nv / 0.90 * A_b * C,
        "kip-in",
    )
    group = found("C'", C, "in", "of the bolts under a moment alone, instantaneous-centre method, Part 7")
    most = 6 * moment.value / (F_y * L**2)
    return group, moment, step("t_max", "6 M_max/(F_y L^2)", most, "in", M_max=moment.value, F_y=F_y, L=L)


@provision(manual("Part 10", "Weld of a single plate"))
def single_plate_weld(t_p: float) -> Step:
    """Leg of the fillet weld on each side of a single plate that lets the plate yield first.

    Args:
        t_p: Thickness of the plate, in.

    Returns:
        w, in, for plates of 36 or 50 ksi and E70 filler metal.

    Source: Manual Part 10, read in use in Example II.A-17A.
    """
    positive(t_p=t_p)
    return step("w", "5/8 t_p", 5 / 8 * t_p, "in", t_p=t_p)


@limit_state(manual("Equation 10-6", "Extended single plate without stabilizer plates"), YIELDING)
def plate_without_stabilizer(L: float, t_p: float, a: float) -> tuple[Step, ...]:
    """Reaction up to which an extended single plate needs no stabilizer plates.

    Args:
        L: Depth of the plate, in.
        t_p: Thickness of the plate, in.
        a: Distance from the support to the first line of bolts, in.

    Returns:
        Strength in kips.

    Source: Manual Part 10, Equation 10-6 (Thornton and Fortney 2011), from memory.
    """
    positive(L=L, t_p=t_p, a=a)
    total = 1500 * math.pi * L * t_p**3 / a**2
    return (step("R_n", "1500 π L t_p^3/a^2", total, "kip", π=math.pi, L=L, t_p=t_p, a=a),)
