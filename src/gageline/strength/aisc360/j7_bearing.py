"""Chapter J, sections J7 and J8: steel bearing on steel, and a base bearing on concrete."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import RUPTURE, spec
from gageline.strength.check import Factors, Step, step
from gageline.strength.clause import limit_state
from gageline.strength.guard import positive

__all__ = ["concrete_bearing", "surface_bearing"]


@limit_state(spec("J7(a)", "Bearing on a finished surface"), RUPTURE)
def surface_bearing(F_y: float, A_pb: float) -> tuple[Step, ...]:
    """Bearing of finished surfaces, pins in reamed holes and ends of fitted stiffeners.

    Args:
        F_y: Lower yield stress of the two parts, ksi.
        A_pb: Projected area in bearing, in².

    Returns:
        Strength in kips.

    Source: Equation J7-1.
    """
    positive(F_y=F_y, A_pb=A_pb)
    return (step("R_n", "1.8 F_y A_pb", 1.8 * F_y * A_pb, "kip", F_y=F_y, A_pb=A_pb),)


@limit_state(spec("J8", "Bearing on concrete"), Factors(0.65, 2.31))
def concrete_bearing(f_c: float, A_1: float, A_2: float) -> tuple[Step, ...]:
    """Crushing of the concrete under a base plate.

    Args:
        f_c: Specified compressive strength of the concrete, ksi.
        A_1: Area of steel in bearing, in².
        A_2: Largest area of the support's top that has the same shape and centre, in².

    Returns:
        Strength in kips.

    Raises:
        ValueProblem: A support smaller than the plate.

    Source: Equations J8-1 and J8-2.
    """
    positive(f_c=f_c, A_1=A_1)
    if A_2 < A_1:
        raise ValueProblem(
            f"A_2 = {A_2:g} in² must be at least A_1 = {A_1:g} in²: the plate must fit on the support"
        )
    spread = min(math.sqrt(A_2 / A_1), 2.0)
    wider = step("k_c", "min(sqrt(A_2/A_1), 2)", spread, A_2=A_2, A_1=A_1)
    total = 0.85 * f_c * A_1 * spread
    return wider, step("P_p", "0.85 f_c A_1 k_c", total, "kip", f_c=f_c, A_1=A_1, k_c=spread)
