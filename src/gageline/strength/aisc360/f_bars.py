"""Chapter F, sections F11 and F13.1: bending of bars and plates, and holes in a tension flange."""

from __future__ import annotations

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import FLEXURE, E, spec
from gageline.strength.check import Step, step
from gageline.strength.clause import limit_state
from gageline.strength.guard import gradient, not_negative, positive

__all__ = ["bar_lateral_buckling", "bar_yielding", "rupture_at_holes"]


@limit_state(spec("F11.1", "Yielding of a rectangular bar"), FLEXURE, "kip-in")
def bar_yielding(F_y: float, d: float, t: float) -> tuple[Step, ...]:
    """Yielding of a rectangular bar or plate bent edgewise.

    Args:
        F_y: Yield stress, ksi.
        d: Depth, in.
        t: Thickness, in.

    Returns:
        Strength in kip-inches.

    Source: Equation F11-1; for a rectangle F_y Z is at its cap of 1.5 F_y S.
    """
    positive(F_y=F_y, d=d, t=t)
    Z = step("Z", "t d^2/4", t * d**2 / 4, "in³", t=t, d=d)
    return Z, step("M_p", "F_y Z", F_y * Z.value, "kip-in", F_y=F_y, Z=Z.value)


@limit_state(spec("F11.2", "Lateral-torsional buckling of a rectangular bar"), FLEXURE, "kip-in")
def bar_lateral_buckling(F_y: float, d: float, t: float, L_b: float, C_b: float = 1.0) -> tuple[Step, ...]:
    """Lateral-torsional buckling of a rectangular bar or plate bent edgewise.

    Args:
        F_y: Yield stress, ksi.
        d: Depth, in.
        t: Thickness, in.
        L_b: Unbraced length, in.
        C_b: Modification factor for the moment gradient.

    Returns:
        Strength in kip-inches; the plastic moment where the bar is too stocky to buckle.

    Source: Equations F11-2 to F11-4.
    """
    positive(F_y=F_y, d=d, t=t)
    gradient(C_b)
    not_negative(L_b=L_b)
    S, Z = t * d**2 / 6, t * d**2 / 4
    M_p, M_y, lam = F_y * Z, F_y * S, L_b * d / t**2
    found = (
        step("λ", "L_b d/t^2", lam, L_b=L_b, d=d, t=t),
        step("S", "t d^2/6", S, "in³", t=t, d=d),
        step("M_p", "F_y t d^2/4", M_p, "kip-in", F_y=F_y, t=t, d=d),
    )
    if lam <= 0.08 * E / F_y:
        return *found, step("M_n", "M_p", M_p, "kip-in", M_p=M_p)
    if lam <= 1.9 * E / F_y:
        M_n = min(C_b * (1.52 - 0.274 * lam * F_y / E) * M_y, M_p)
        given = {"C_b": C_b, "λ": lam, "F_y": F_y, "E": E, "S": S, "M_p": M_p}
        return *found, step("M_n", "min(C_b (1.52 - 0.274 λ F_y/E) F_y S, M_p)", M_n, "kip-in", **given)
    F_cr = 1.9 * E * C_b / lam
    critical = step("F_cr", "1.9 E C_b/λ", F_cr, "ksi", E=E, C_b=C_b, λ=lam)
    given = {"F_cr": F_cr, "S": S, "M_p": M_p}
    return *found, critical, step("M_n", "min(F_cr S, M_p)", min(F_cr * S, M_p), "kip-in", **given)


@limit_state(spec("F13.1", "Rupture of a tension flange with holes"), FLEXURE, "kip-in")
def rupture_at_holes(
    F_y: float, F_u: float, A_fg: float, A_fn: float, S_x: float, Z_x: float
) -> tuple[Step, ...]:
    """Bending strength of a shape with holes in its tension flange.

    Args:
        F_y: Yield stress, ksi.
        F_u: Tensile strength, ksi.
        A_fg: Gross area of the tension flange, in².
        A_fn: Net area of the tension flange, in².
        S_x: Elastic section modulus, in³.
        Z_x: Plastic section modulus, in³.

    Returns:
        Strength in kip-inches; the plastic moment where the holes do not matter.

    Raises:
        ValueProblem: A net area larger than its gross area.

    Source: Equation F13-1.
    """
    positive(F_y=F_y, F_u=F_u, A_fg=A_fg, A_fn=A_fn, S_x=S_x, Z_x=Z_x)
    if A_fn > A_fg:
        raise ValueProblem(
            f"A_fn = {A_fn:g} in² is more than A_fg = {A_fg:g} in²: take the holes off the gross area"
        )
    Y_t = 1.0 if F_y / F_u <= 0.8 else 1.1
    rupture = step("P_fn", "F_u A_fn", F_u * A_fn, "kip", F_u=F_u, A_fn=A_fn)
    yielding = step("P_fg", "Y_t F_y A_fg", Y_t * F_y * A_fg, "kip", Y_t=Y_t, F_y=F_y, A_fg=A_fg)
    if rupture.value >= yielding.value:
        return rupture, yielding, step("M_n", "F_y Z_x", F_y * Z_x, "kip-in", F_y=F_y, Z_x=Z_x)
    given = {"P_fn": rupture.value, "A_fg": A_fg, "S_x": S_x}
    M_n = rupture.value / A_fg * S_x
    return rupture, yielding, step("M_n", "P_fn/A_fg S_x", M_n, "kip-in", **given)
