"""Manual Part 9: how thick the steel behind a fillet weld must be to match the weld."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import manual
from gageline.strength.check import Step, step
from gageline.strength.clause import provision
from gageline.strength.guard import positive

__all__ = ["minimum_thickness_at_weld"]


@provision(manual("Equations 9-6 and 9-7", "Minimum thickness at a fillet weld"))
def minimum_thickness_at_weld(w: float, F_u: float, sides: int = 1, F_EXX: float = 70.0) -> Step:
    """Thickness at which the rupture of the steel matches the strength of the fillet weld on it.

    Args:
        w: Leg that is needed (not the leg made, where that is more), in.
        F_u: Tensile strength of the steel, ksi.
        sides: 1 for a weld on one face, 2 for welds opposite each other on both faces.
        F_EXX: Strength of the filler metal, ksi.

    Returns:
        t_min, in, by either method: 3.09 or 6.19 times the sixteenths of leg over F_u for E70.

    Raises:
        ValueProblem: Neither 1 nor 2 sides.

    Source: Manual Part 9, Equations 9-6 and 9-7.
    """
    positive(w=w, F_u=F_u, F_EXX=F_EXX)
    if sides not in {1, 2}:
        raise ValueProblem(
            f"sides = {sides} must be 1 or 2: say on how many faces of the steel the weld lies"
        )
    total = sides * F_EXX * math.sqrt(2) / 2 * w / F_u
    return step("t_min", "n F_EXX sqrt(2)/2 w/F_u", total, "in", n=sides, F_EXX=F_EXX, w=w, F_u=F_u)
