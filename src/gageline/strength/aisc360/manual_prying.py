"""Manual Part 9: prying on the bolts of an angle, tee or end plate that is pulled away."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import FLEXURE, manual
from gageline.strength.check import Method, Step, step
from gageline.strength.clause import provision
from gageline.strength.guard import positive

__all__ = ["prying"]


@provision(manual("Part 9", "Prying action"))
def prying(
    B_c: float,
    F_u: float,
    t: float,
    *,
    b: float,
    a: float,
    p: float,
    d_b: float,
    d_hole: float,
    method: Method,
) -> tuple[Step, ...]:
    """Tension that a bolt can take from a fitting whose flange bends and pries.

    Args:
        B_c: Available tension of the bolt by the same method, with its shear allowed for, kips.
        F_u: Tensile strength of the fitting, ksi.
        t: Thickness of the flange or leg, in.
        b: Distance from the bolt to the face of the stem (to the middle of the other leg of an angle), in.
        a: Distance from the bolt to the edge of the flange or leg, in; more than 1.25b does not count.
        p: Length of the fitting that belongs to the bolt, in.
        d_b: Bolt diameter, in.
        d_hole: Width of the hole along the length of the fitting, in.
        method: Design method.

    Returns:
        The working, its last line the available tension of one bolt, T_c in kips.

    Raises:
        ValueProblem: A bolt so near the stem, or a pitch so small, that nothing is left to bend.

    Source: Manual Part 9, Equations 9-20 to 9-31 of earlier editions (equation numbers from memory).
    """
    positive(B_c=B_c, F_u=F_u, t=t, b=b, a=a, p=p, d_b=d_b, d_hole=d_hole)
    if b <= d_b / 2:
        raise ValueProblem(
            f"b = {b:g} in must be more than half the bolt, {d_b / 2:g} in: move the bolt from the stem"
        )
    if p <= d_hole:
        raise ValueProblem(
            f"p = {p:g} in must be more than the hole, {d_hole:g} in: give the bolts more pitch"
        )
    inner, outer = b - d_b / 2, min(a, 1.25 * b) + d_b / 2
    rho, delta = inner / outer, 1 - d_hole / p
    if method is Method.LRFD:
        t_c = math.sqrt(4 * B_c * inner / (FLEXURE.phi * p * F_u))
        formula, factor = "sqrt(4 B_c b'/(φ p F_u))", ("φ", FLEXURE.phi)
    else:
        t_c = math.sqrt(FLEXURE.omega * 4 * B_c * inner / (p * F_u))
        formula, factor = "sqrt(Ω 4 B_c b'/(p F_u))", ("Ω", FLEXURE.omega)
    alpha = ((t_c / t) ** 2 - 1) / (delta * (1 + rho))
    share = min(max(alpha, 0.0), 1.0)
    Q = min(1.0, (t / t_c) ** 2 * (1 + delta * share))
    return (
        step("b'", "b - d_b/2", inner, "in", b=b, d_b=d_b),
        step("a'", "min(a, 1.25 b) + d_b/2", outer, "in", a=a, b=b, d_b=d_b),
        Step("ρ", "b'/a'", (("b'", inner), ("a'", outer)), rho, ""),
        Step("δ", "1 - d'/p", (("d'", d_hole), ("p", p)), delta, ""),
        Step("t_c", formula, (factor, ("B_c", B_c), ("b'", inner), ("p", p), ("F_u", F_u)), t_c, "in"),
        step("α'", "((t_c/t)^2 - 1)/(δ (1 + ρ))", alpha, t_c=t_c, t=t, δ=delta, ρ=rho),
        Step(
            "Q",
            "min(1, (t/t_c)^2 (1 + δ min(max(α', 0), 1)))",
            (("t", t), ("t_c", t_c), ("δ", delta), ("α'", alpha)),
            Q,
            "",
        ),
        step("T_c", "Q B_c", Q * B_c, "kip", Q=Q, B_c=B_c),
    )
