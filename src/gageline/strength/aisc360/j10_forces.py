"""Chapter J, section J10: concentrated forces on the flanges and the web of an I-shape."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import RUPTURE, SHEAR_YIELDING, YIELDING, E, spec
from gageline.strength.check import Factors, Method, Step, step
from gageline.strength.clause import limit_state
from gageline.strength.guard import not_negative, positive

__all__ = [
    "flange_local_bending",
    "web_compression_buckling",
    "web_local_crippling",
    "web_local_yielding",
    "web_sidesway_buckling",
]


@limit_state(spec("J10.1", "Flange local bending"), YIELDING)
def flange_local_bending(F_yf: float, t_f: float, y_end: float) -> tuple[Step, ...]:
    """Bending of a flange that is pulled across by a plate or a flange welded to it.

    Args:
        F_yf: Yield stress of the flange, ksi.
        t_f: Thickness of the flange, in.
        y_end: Distance from the force to the end of the member, in; within ten flange thicknesses the
            strength is halved.

    Returns:
        Strength in kips. The check may be left out where the loaded width is under 0.15 flange widths.

    Source: Equation J10-1.
    """
    positive(F_yf=F_yf, t_f=t_f)
    not_negative(y_end=y_end)
    if y_end < 10 * t_f:
        return (step("R_n", "0.50 6.25 F_yf t_f^2", 3.125 * F_yf * t_f**2, "kip", F_yf=F_yf, t_f=t_f),)
    return (step("R_n", "6.25 F_yf t_f^2", 6.25 * F_yf * t_f**2, "kip", F_yf=F_yf, t_f=t_f),)


@limit_state(spec("J10.2", "Web local yielding"), SHEAR_YIELDING)
def web_local_yielding(
    F_yw: float, t_w: float, k: float, l_b: float, d: float, y_end: float
) -> tuple[Step, ...]:
    """Yielding of the web just inside a flange under a concentrated force.

    Args:
        F_yw: Yield stress of the web, ksi.
        t_w: Thickness of the web, in.
        k: Distance from the outer face of the flange to the toe of the fillet, design value, in.
        l_b: Length of bearing, in.
        d: Depth of the member, in.
        y_end: Distance from the force to the end of the member, in.

    Returns:
        Strength in kips.

    Source: Equations J10-2 (more than a depth from the end) and J10-3.
    """
    positive(F_yw=F_yw, t_w=t_w, k=k, d=d)
    not_negative(l_b=l_b, y_end=y_end)
    given = {"F_yw": F_yw, "t_w": t_w, "k": k, "l_b": l_b}
    spread = 5.0 if y_end > d else 2.5
    formula = f"F_yw t_w ({spread:g} k + l_b)"
    return (step("R_n", formula, F_yw * t_w * (spread * k + l_b), "kip", **given),)


@limit_state(spec("J10.3", "Web local crippling"), RUPTURE)
def web_local_crippling(
    F_yw: float, t_w: float, t_f: float, d: float, l_b: float, y_end: float
) -> tuple[Step, ...]:
    """Crippling of the web under a concentrated compressive force.

    Args:
        F_yw: Yield stress of the web, ksi.
        t_w: Thickness of the web, in.
        t_f: Thickness of the flange, in.
        d: Depth of the member, in.
        l_b: Length of bearing, in.
        y_end: Distance from the force to the end of the member, in.

    Returns:
        Strength in kips.

    Source: Equations J10-4 (half a depth or more from the end), J10-5a and J10-5b.
    """
    positive(F_yw=F_yw, t_w=t_w, t_f=t_f, d=d)
    not_negative(l_b=l_b, y_end=y_end)
    root = math.sqrt(E * F_yw * t_f / t_w)
    stress = step("q", "sqrt(E F_yw t_f/t_w)", root, "ksi", E=E, F_yw=F_yw, t_f=t_f, t_w=t_w)
    if y_end >= d / 2:
        factor, length, text = 0.80, 3 * l_b / d, "3 l_b/d"
    elif l_b / d <= 0.2:
        factor, length, text = 0.40, 3 * l_b / d, "3 l_b/d"
    else:
        factor, length, text = 0.40, 4 * l_b / d - 0.2, "(4 l_b/d - 0.2)"
    total = factor * t_w**2 * (1 + length * (t_w / t_f) ** 1.5) * root
    formula = f"{factor:.2f} t_w^2 (1 + {text} (t_w/t_f)^1.5) q"
    return stress, step("R_n", formula, total, "kip", t_w=t_w, l_b=l_b, d=d, t_f=t_f, q=root)


@limit_state(spec("J10.4", "Web sidesway buckling"), Factors(0.85, 1.76))
def web_sidesway_buckling(
    t_w: float,
    t_f: float,
    b_f: float,
    h: float,
    L_b: float,
    *,
    M_r: float,
    M_y: float,
    method: Method,
    restrained: bool,
) -> tuple[Step, ...]:
    """Sidesway of the tension flange under a single compressive force on the compression flange.

    Args:
        t_w: Thickness of the web, in.
        t_f: Thickness of the flange, in.
        b_f: Width of the flange, in.
        h: Clear depth of the web between fillets, in.
        L_b: Largest unbraced length along either flange at the force, in.
        M_r: Required moment at the force by the same method, kip-in.
        M_y: Yield moment, kip-in.
        method: Design method.
        restrained: Whether the loaded flange is restrained against rotation.

    Returns:
        Strength in kips.

    Raises:
        ValueProblem: The web is so stocky that the limit state does not apply.

    Source: Equations J10-6 and J10-7.
    """
    positive(t_w=t_w, t_f=t_f, b_f=b_f, h=h, L_b=L_b, M_y=M_y)
    not_negative(M_r=M_r)
    x = (h / t_w) / (L_b / b_f)
    limit = 2.3 if restrained else 1.7
    if x > limit:
        raise ValueProblem(
            f"(h/t_w)/(L_b/b_f) = {x:.3g} is more than {limit:g}: "
            "web sidesway buckling does not apply here, leave it out"
        )
    ratio = step("x", "(h/t_w)/(L_b/b_f)", x, h=h, t_w=t_w, L_b=L_b, b_f=b_f)
    alpha = 1.0 if method is Method.LRFD else 1.5
    C_r = 960_000.0 if alpha * M_r < M_y else 480_000.0
    shape = "(1 + 0.4 x^3)" if restrained else "(0.4 x^3)"
    share = 1 + 0.4 * x**3 if restrained else 0.4 * x**3
    total = C_r * t_w**3 * t_f / h**2 * share
    given = {"C_r": C_r, "t_w": t_w, "t_f": t_f, "h": h, "x": x}
    return ratio, step("R_n", f"C_r t_w^3 t_f/h^2 {shape}", total, "kip", **given)


@limit_state(spec("J10.5", "Web compression buckling"), YIELDING)
def web_compression_buckling(F_yw: float, t_w: float, h: float, d: float, y_end: float) -> tuple[Step, ...]:
    """Buckling of the web between a pair of compressive forces on both flanges.

    Args:
        F_yw: Yield stress of the web, ksi.
        t_w: Thickness of the web, in.
        h: Clear depth of the web between fillets, in.
        d: Depth of the member, in.
        y_end: Distance from the forces to the end of the member, in; within half a depth the strength
            is halved.

    Returns:
        Strength in kips.

    Source: Equation J10-8.
    """
    positive(F_yw=F_yw, t_w=t_w, h=h, d=d)
    not_negative(y_end=y_end)
    total = 24 * t_w**3 * math.sqrt(E * F_yw) / h
    given = {"t_w": t_w, "E": E, "F_yw": F_yw, "h": h}
    if y_end < d / 2:
        return (step("R_n", "0.50 24 t_w^3 sqrt(E F_yw)/h", total / 2, "kip", **given),)
    return (step("R_n", "24 t_w^3 sqrt(E F_yw)/h", total, "kip", **given),)
