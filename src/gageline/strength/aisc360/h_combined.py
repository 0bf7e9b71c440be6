"""Chapter H, section H1, and the Manual's rules: tension or compression, shear and bending at once."""

from __future__ import annotations

from gageline.strength.aisc360.standard import manual, spec
from gageline.strength.check import Step, step
from gageline.strength.clause import provision
from gageline.strength.guard import not_negative, positive

__all__ = ["axial_and_flexure", "axial_shear_and_flexure", "shear_and_flexure"]


@provision(spec("H1.1", "Axial force and flexure"))
def axial_and_flexure(
    P_r: float, P_c: float, M_rx: float, M_cx: float, M_ry: float = 0.0, M_cy: float = 1.0
) -> Step:
    """Interaction of axial force and bending about both axes in a doubly or singly symmetric member.

    Args:
        P_r: Required axial strength, kips.
        P_c: Available axial strength, kips.
        M_rx: Required flexural strength about the strong axis, kip-in.
        M_cx: Available flexural strength about the strong axis, kip-in.
        M_ry: Required flexural strength about the weak axis, kip-in.
        M_cy: Available flexural strength about the weak axis, kip-in.

    Returns:
        The utilisation.

    Source: Equations H1-1a and H1-1b.
    """
    not_negative(P_r=P_r, M_rx=M_rx, M_ry=M_ry)
    positive(P_c=P_c, M_cx=M_cx, M_cy=M_cy)
    bending = M_rx / M_cx + M_ry / M_cy
    given = {"P_r": P_r, "P_c": P_c, "M_rx": M_rx, "M_cx": M_cx, "M_ry": M_ry, "M_cy": M_cy}
    if P_r / P_c >= 0.2:
        formula = "P_r/P_c + 8/9 (M_rx/M_cx + M_ry/M_cy)"
        return step("U", formula, P_r / P_c + 8 / 9 * bending, **given)
    return step("U", "P_r/(2 P_c) + M_rx/M_cx + M_ry/M_cy", P_r / (2 * P_c) + bending, **given)


@provision(manual("Equation 9-1", "Axial force, shear and flexure of a plate"))
def axial_shear_and_flexure(P_r: float, P_c: float, V_r: float, V_c: float, M_r: float, M_c: float) -> Step:
    """Interaction of axial force, shear and bending on a rectangular connecting plate that yields through.

    Args:
        P_r: Required axial strength, kips.
        P_c: Available axial strength, kips.
        V_r: Required shear strength, kips.
        V_c: Available shear strength, kips.
        M_r: Required flexural strength, kip-in.
        M_c: Available flexural strength, kip-in.

    Returns:
        The utilisation of the interaction, at most 1.

    Source: Manual Part 9, Equation 9-1, from memory.
    """
    not_negative(P_r=P_r, V_r=V_r, M_r=M_r)
    positive(P_c=P_c, V_c=V_c, M_c=M_c)
    total = M_r / M_c + (P_r / P_c) ** 2 + (V_r / V_c) ** 4
    given = {"M_r": M_r, "M_c": M_c, "P_r": P_r, "P_c": P_c, "V_r": V_r, "V_c": V_c}
    return step("U", "M_r/M_c + (P_r/P_c)^2 + (V_r/V_c)^4", total, **given)


@provision(manual("Equation 10-5", "Shear and flexure of a single plate"))
def shear_and_flexure(V_r: float, V_c: float, M_r: float, M_c: float) -> Step:
    """Interaction of shear and bending on the plate of an extended single-plate connection.

    Args:
        V_r: Required shear strength, kips.
        V_c: Available shear yielding strength of the gross section, kips.
        M_r: Required flexural strength, kip-in.
        M_c: Available flexural yielding strength of the gross section, kip-in.

    Returns:
        The utilisation of the interaction, at most 1.

    Source: Manual Part 10, Equation 10-5, from memory.
    """
    not_negative(V_r=V_r, M_r=M_r)
    positive(V_c=V_c, M_c=M_c)
    total = (V_r / V_c) ** 2 + (M_r / M_c) ** 2
    return step("U", "(V_r/V_c)^2 + (M_r/M_c)^2", total, V_r=V_r, V_c=V_c, M_r=M_r, M_c=M_c)
