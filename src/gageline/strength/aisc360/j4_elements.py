"""Chapter J, section J4: angles, plates and webs as the connecting and affected elements of a connection."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import FLEXURE, RUPTURE, SHEAR_YIELDING, YIELDING, E, manual, spec
from gageline.strength.check import Step, step
from gageline.strength.clause import limit_state
from gageline.strength.guard import not_negative, positive

__all__ = [
    "block_shear",
    "compression",
    "flexural_rupture",
    "flexural_yielding",
    "shear_rupture",
    "shear_yielding",
    "tensile_rupture",
    "tensile_yielding",
]


@limit_state(spec("J4.1(a)", "Tensile yielding of a connecting element"), YIELDING)
def tensile_yielding(F_y: float, A_g: float) -> tuple[Step, ...]:
    """Tensile yielding of the gross section of a connecting element.

    Args:
        F_y: Yield stress, ksi.
        A_g: Gross area, in².

    Returns:
        Strength in kips.

    Source: Equation J4-1.
    """
    positive(F_y=F_y, A_g=A_g)
    return (step("R_n", "F_y A_g", F_y * A_g, "kip", F_y=F_y, A_g=A_g),)


@limit_state(spec("J4.1(b)", "Tensile rupture of a connecting element"), RUPTURE)
def tensile_rupture(F_u: float, A_e: float) -> tuple[Step, ...]:
    """Tensile rupture of the effective net section of a connecting element.

    Args:
        F_u: Tensile strength, ksi.
        A_e: Effective net area, in².

    Returns:
        Strength in kips.

    Source: Equation J4-2.
    """
    positive(F_u=F_u, A_e=A_e)
    return (step("R_n", "F_u A_e", F_u * A_e, "kip", F_u=F_u, A_e=A_e),)


@limit_state(spec("J4.2(a)", "Shear yielding"), SHEAR_YIELDING)
def shear_yielding(F_y: float, A_gv: float) -> tuple[Step, ...]:
    """Shear yielding of the gross section along the line of shear.

    Args:
        F_y: Yield stress, ksi.
        A_gv: Gross area in shear, in².

    Returns:
        Strength in kips.

    Source: Equation J4-3.
    """
    positive(F_y=F_y, A_gv=A_gv)
    return (step("R_n", "0.60 F_y A_gv", 0.60 * F_y * A_gv, "kip", F_y=F_y, A_gv=A_gv),)


@limit_state(spec("J4.2(b)", "Shear rupture"), RUPTURE)
def shear_rupture(F_u: float, A_nv: float) -> tuple[Step, ...]:
    """Shear rupture of the net section along the line of shear.

    Args:
        F_u: Tensile strength, ksi.
        A_nv: Net area in shear, in².

    Returns:
        Strength in kips.

    Source: Equation J4-4.
    """
    positive(F_u=F_u, A_nv=A_nv)
    return (step("R_n", "0.60 F_u A_nv", 0.60 * F_u * A_nv, "kip", F_u=F_u, A_nv=A_nv),)


@limit_state(spec("J4.3", "Block shear rupture"), RUPTURE)
def block_shear(
    F_y: float, F_u: float, A_gv: float, A_nv: float, A_nt: float, U_bs: float = 1.0
) -> tuple[Step, ...]:
    """Block shear: a piece tearing out along a line of shear and a line of tension.

    Args:
        F_y: Yield stress, ksi.
        F_u: Tensile strength, ksi.
        A_gv: Gross area in shear, in².
        A_nv: Net area in shear, in².
        A_nt: Net area in tension, in².
        U_bs: 1.0 where the tension stress is uniform (one column of bolts in a beam web or angle, a
            welded angle), 0.5 where it is not (two or more columns in a coped beam).

    Returns:
        Strength in kips.

    Raises:
        ValueProblem: A net area larger than its gross area, or a U_bs that the clause does not know.

    Source: Equation J4-5.
    """
    positive(F_y=F_y, F_u=F_u, A_gv=A_gv, A_nv=A_nv, A_nt=A_nt)
    if A_nv > A_gv:
        raise ValueProblem(
            f"A_nv = {A_nv:g} in² is more than A_gv = {A_gv:g} in²: take the holes off the gross area"
        )
    if U_bs not in {0.5, 1.0}:
        raise ValueProblem(f"U_bs = {U_bs:g} must be 1.0 (even tension) or 0.5 (uneven): give one of them")
    tension = step("R_t", "U_bs F_u A_nt", U_bs * F_u * A_nt, "kip", U_bs=U_bs, F_u=F_u, A_nt=A_nt)
    rupture = step("R_v", "0.60 F_u A_nv", 0.60 * F_u * A_nv, "kip", F_u=F_u, A_nv=A_nv)
    yielding = step("R_y", "0.60 F_y A_gv", 0.60 * F_y * A_gv, "kip", F_y=F_y, A_gv=A_gv)
    parts = {"R_v": rupture.value, "R_y": yielding.value, "R_t": tension.value}
    total = min(rupture.value, yielding.value) + tension.value
    return rupture, yielding, tension, step("R_n", "min(R_v, R_y) + R_t", total, "kip", **parts)


@limit_state(spec("J4.4", "Compression of a connecting element"), YIELDING)
def compression(F_y: float, A_g: float, L_c: float, r: float) -> tuple[Step, ...]:
    """Compression of a connecting element, by yielding when it is stocky and by buckling when it is not.

    Args:
        F_y: Yield stress, ksi.
        A_g: Gross area, in².
        L_c: Effective length, in.
        r: Radius of gyration, in.

    Returns:
        Strength in kips.

    Source: Equation J4-6; for L_c/r above 25, Equations E3-1 to E3-4.
    """
    positive(F_y=F_y, A_g=A_g, r=r)
    not_negative(L_c=L_c)
    slenderness = step("λ", "L_c/r", L_c / r, L_c=L_c, r=r)
    if slenderness.value <= 25:
        return slenderness, step("P_n", "F_y A_g", F_y * A_g, "kip", F_y=F_y, A_g=A_g)
    lam = slenderness.value
    F_e = math.pi**2 * E / lam**2
    elastic = step("F_e", "π^2 E/λ^2", F_e, "ksi", π=math.pi, E=E, λ=lam)
    if lam <= 4.71 * math.sqrt(E / F_y):
        F_n = 0.658 ** (F_y / F_e) * F_y
        critical = step("F_n", "0.658^(F_y/F_e) F_y", F_n, "ksi", F_y=F_y, F_e=F_e)
    else:
        F_n = 0.877 * F_e
        critical = step("F_n", "0.877 F_e", F_n, "ksi", F_e=F_e)
    return slenderness, elastic, critical, step("P_n", "F_n A_g", F_n * A_g, "kip", F_n=F_n, A_g=A_g)


@limit_state(spec("J4.5", "Flexural yielding of a connecting element"), FLEXURE, "kip-in")
def flexural_yielding(F_y: float, Z: float) -> tuple[Step, ...]:
    """Flexural yielding of the gross section of a connecting element that cannot buckle.

    Args:
        F_y: Yield stress, ksi.
        Z: Plastic section modulus of the gross section, in³.

    Returns:
        Strength in kip-inches.

    Source: Section J4.5 with Equation F11-1; lateral buckling is `f_flexure.bar_lateral_buckling`.
    """
    positive(F_y=F_y, Z=Z)
    return (step("M_n", "F_y Z", F_y * Z, "kip-in", F_y=F_y, Z=Z),)


@limit_state(manual("Part 9", "Flexural rupture of a connecting element"), RUPTURE, "kip-in")
def flexural_rupture(F_u: float, Z_net: float) -> tuple[Step, ...]:
    """Flexural rupture of the net section of a connecting element.

    Args:
        F_u: Tensile strength, ksi.
        Z_net: Plastic section modulus of the net section, in³.

    Returns:
        Strength in kip-inches.

    Source: Manual Part 9, Equation 9-4 (equation number from memory).
    """
    positive(F_u=F_u, Z_net=Z_net)
    return (step("M_n", "F_u Z_net", F_u * Z_net, "kip-in", F_u=F_u, Z_net=Z_net),)
