"""Shear and bending of a plate together."""

from __future__ import annotations

import math

from gageline.strength.aisc360.h_combined import shear_and_flexure
from gageline.strength.aisc360.j4_elements import flexural_yielding
from gageline.strength.check import Check, Method, found, step
from gageline.strength.clause import clause_of
from gageline.strength.connection import Fitting
from gageline.strength.kinds.bolted import yield_of_fitting

__all__ = ["shear_and_bending"]


def shear_and_bending(plate: Fitting, a: float, what: str, V: float, method: Method, title: str) -> Check:
    """A plate under a reaction beside it.

    Args:
        plate: the plate.
        a: level from the reaction to the section that bends, in.
        what: from what to what that is.
        V: the reaction, kips.
        method: design method.
        title: of the check.

    Source: Manual Equation 10-5, solved for the reaction at which its sum reaches 1.
    """
    L, t = plate.length, plate.t
    Z = step("Z", "t L^2/4", t * L**2 / 4, "in³", t=t, L=L)
    sheared = yield_of_fitting(plate, 1)
    bent = flexural_yielding(plate.steel.F_y, Z.value).after(Z)
    V_c, M_c = sheared.available(method), bent.available(method)
    total = 1 / math.sqrt((1 / V_c) ** 2 + (a / M_c) ** 2)
    parts = (
        found("a", a, "in", what),
        *sheared.check(V, method).steps,
        found("V_c", V_c, "kip", "available strength of the plate in shear yielding (J4.2(a))"),
        *bent.check(V, method).steps,
        found("M_c", M_c, "kip-in", "available strength of the whole plate in bending (J4.5)"),
    )
    last = step("R", "1/sqrt((1/V_c)^2 + (a/M_c)^2)", total, "kip", V_c=V_c, a=a, M_c=M_c)
    return Check(clause_of(shear_and_flexure), title, V, total, "kip", (*parts, last))
