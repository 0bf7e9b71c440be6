"""Manual Part 14: the base plate of a column, loaded through its centre.

Not covered: bending, uplift, anchor rods, shear, and round columns. Crushing of the concrete is Section J8
(`j7_bearing.concrete_bearing`).
"""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import FLEXURE, manual
from gageline.strength.check import Method, Step, step
from gageline.strength.clause import provision
from gageline.strength.guard import positive

__all__ = ["base_plate_cantilever", "base_plate_thickness", "hollow_base_cantilever"]


@provision(manual("Part 14", "Cantilever of a base plate"))
def base_plate_cantilever(
    N: float, B: float, d: float, b_f: float, P_r: float | None = None, P_c: float | None = None
) -> tuple[Step, ...]:
    """Longest overhang of a base plate beyond, or of the strip inside, its I-shaped column.

    Args:
        N: Length of the plate along the depth of the column, in.
        B: Width of the plate, in.
        d: Depth of the column, in.
        b_f: Width of the column's flange, in.
        P_r: Required axial strength, kips; left out, λ is taken as 1, on the safe side.
        P_c: Available bearing strength of the concrete by the same method, kips.

    Returns:
        The working, its last line l in inches.

    Raises:
        ValueProblem: A plate smaller than its column, or a load above the bearing strength.

    Source: Manual Part 14, Equations 14-2 to 14-6 (equation numbers from memory).
    """
    positive(N=N, B=B, d=d, b_f=b_f)
    if d > N or b_f > B:
        raise ValueProblem(
            f"plate {N:g} x {B:g} in must cover the column, {d:g} x {b_f:g} in: make the plate larger"
        )
    m, n = (N - 0.95 * d) / 2, (B - 0.8 * b_f) / 2
    found: tuple[Step, ...] = (
        step("m", "(N - 0.95 d)/2", m, "in", N=N, d=d),
        step("n", "(B - 0.8 b_f)/2", n, "in", B=B, b_f=b_f),
    )
    lam = 1.0
    if P_r is not None and P_c is not None:
        positive(P_r=P_r, P_c=P_c)
        if P_r > P_c:
            raise ValueProblem(
                f"P_r = {P_r:g} kip must be at most the bearing strength, {P_c:.4g} kip: enlarge the plate"
            )
        X = 4 * d * b_f / (d + b_f) ** 2 * P_r / P_c
        lam = min(1.0, 2 * math.sqrt(X) / (1 + math.sqrt(1 - X)))
        formula = "4 d b_f/(d + b_f)^2 P_r/P_c"
        found += (
            step("X", formula, X, d=d, b_f=b_f, P_r=P_r, P_c=P_c),
            step("λ", "min(1, 2 sqrt(X)/(1 + sqrt(1 - X)))", lam, X=X),
        )
    inner = lam * math.sqrt(d * b_f) / 4
    found += (step("n'", "λ sqrt(d b_f)/4", inner, "in", λ=lam, d=d, b_f=b_f),)
    last = Step("l", "max(m, n, n')", (("m", m), ("n", n), ("n'", inner)), max(m, n, inner), "in")
    return *found, last


@provision(manual("Part 14", "Cantilever of the base plate of a hollow column"))
def hollow_base_cantilever(N: float, B: float, d: float, b: float) -> tuple[Step, ...]:
    """Longest overhang of a base plate beyond its rectangular hollow column.

    Args:
        N: Length of the plate along the depth of the column, in.
        B: Width of the plate, in.
        d: Depth of the column, in.
        b: Width of the column, in.

    Returns:
        The working, its last line l in inches.

    Raises:
        ValueProblem: A plate smaller than its column.

    Source: AISC Design Guide 1, the plate bends at 0.95 of the column's outside both ways (from memory).
    """
    positive(N=N, B=B, d=d, b=b)
    if d > N or b > B:
        raise ValueProblem(
            f"plate {N:g} x {B:g} in must cover the column, {d:g} x {b:g} in: make the plate larger"
        )
    m, n = (N - 0.95 * d) / 2, (B - 0.95 * b) / 2
    return (
        step("m", "(N - 0.95 d)/2", m, "in", N=N, d=d),
        step("n", "(B - 0.95 b)/2", n, "in", B=B, b=b),
        step("l", "max(m, n)", max(m, n), "in", m=m, n=n),
    )


@provision(manual("Part 14", "Thickness of a base plate"))
def base_plate_thickness(
    cantilever: float, P_r: float, F_y: float, N: float, B: float, method: Method
) -> Step:
    """Least thickness of a base plate that bends under an even pressure.

    Args:
        cantilever: Longest overhang (`base_plate_cantilever`), in.
        P_r: Required axial strength by the same method, kips.
        F_y: Yield stress of the plate, ksi.
        N: Length of the plate, in.
        B: Width of the plate, in.
        method: Design method.

    Returns:
        t_min, in.

    Source: Manual Part 14, Equations 14-7a and 14-7b (equation numbers from memory).
    """
    positive(cantilever=cantilever, P_r=P_r, F_y=F_y, N=N, B=B)
    given = {"l": cantilever, "P_r": P_r, "F_y": F_y, "B": B, "N": N}
    if method is Method.LRFD:
        least = cantilever * math.sqrt(2 * P_r / (FLEXURE.phi * F_y * B * N))
        return step("t_min", "l sqrt(2 P_r/(φ F_y B N))", least, "in", **given, φ=FLEXURE.phi)
    least = cantilever * math.sqrt(FLEXURE.omega * 2 * P_r / (F_y * B * N))
    return step("t_min", "l sqrt(Ω 2 P_r/(F_y B N))", least, "in", **given, Ω=FLEXURE.omega)
