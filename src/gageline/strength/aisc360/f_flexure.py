"""Chapters B4 and F: bending of rolled I-shapes and channels.

F2 holds shapes with compact web and flanges, F3 those with a noncompact flange (a few rolled shapes at
50 ksi), F6 bending about the weak axis. Built-up shapes with slender webs, hollow sections, tees and angles
are not covered: they are refused or absent.
"""

from __future__ import annotations

import math
from enum import Enum

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import FLEXURE, E, spec
from gageline.strength.check import Step, Strength, step
from gageline.strength.clause import limit_state, provision
from gageline.strength.guard import gradient, not_negative, positive

__all__ = [
    "Slenderness",
    "channel_c",
    "flange_local_buckling",
    "flange_slenderness",
    "lateral_torsional_buckling",
    "moment_gradient",
    "plastic_moment",
    "strong_axis_flexure",
    "weak_axis_flange_local_buckling",
    "weak_axis_yielding",
    "web_slenderness",
]


class Slenderness(Enum):
    """How far an element can be strained in compression before it buckles locally."""

    COMPACT = "compact"
    NONCOMPACT = "noncompact"
    SLENDER = "slender"


def _class(lam: float, lam_p: float, lam_r: float) -> Slenderness:
    if lam <= lam_p:
        return Slenderness.COMPACT
    return Slenderness.NONCOMPACT if lam <= lam_r else Slenderness.SLENDER


def _flange_limits(F_y: float) -> tuple[float, float]:
    return 0.38 * math.sqrt(E / F_y), 1.0 * math.sqrt(E / F_y)


@provision(spec("Table B4.1b", "Flange of a rolled I-shape or channel in flexure"))
def flange_slenderness(F_y: float, lam_f: float) -> Slenderness:
    """Class of the flange of a rolled I-shape or channel in bending.

    Args:
        F_y: Yield stress, ksi.
        lam_f: b_f/2t_f of an I-shape, b_f/t_f of a channel.

    Returns:
        The class.

    Source: Table B4.1b, case 10.
    """
    positive(F_y=F_y, λ_f=lam_f)
    return _class(lam_f, *_flange_limits(F_y))


@provision(spec("Table B4.1b", "Web of a doubly symmetric I-shape or channel in flexure"))
def web_slenderness(F_y: float, h_tw: float) -> Slenderness:
    """Class of the web of a doubly symmetric I-shape or channel in bending.

    Args:
        F_y: Yield stress, ksi.
        h_tw: Slenderness of the web between fillets.

    Returns:
        The class.

    Source: Table B4.1b, case 15.
    """
    positive(F_y=F_y, h_tw=h_tw)
    return _class(h_tw, 3.76 * math.sqrt(E / F_y), 5.70 * math.sqrt(E / F_y))


@provision(spec("F1", "Lateral-torsional buckling modification factor"))
def moment_gradient(M_max: float, M_A: float, M_B: float, M_C: float) -> Step:
    """How much a moment that varies between braces eases lateral-torsional buckling.

    Args:
        M_max: Largest moment between the braces, absolute value, in any one unit.
        M_A: Moment at the quarter point, absolute value.
        M_B: Moment at the middle, absolute value.
        M_C: Moment at the three-quarter point, absolute value.

    Returns:
        C_b.

    Raises:
        ValueProblem: A moment at a quarter point that is more than the largest.

    Source: Equation F1-1.
    """
    positive(M_max=M_max)
    not_negative(M_A=M_A, M_B=M_B, M_C=M_C)
    if max(M_A, M_B, M_C) > M_max * (1 + 1e-9):
        raise ValueProblem(
            f"a moment at a quarter point, {max(M_A, M_B, M_C):g}, is more than M_max = {M_max:g}: "
            "give the largest moment between the braces as M_max"
        )
    given = {"M_max": M_max, "M_A": M_A, "M_B": M_B, "M_C": M_C}
    formula = "12.5 M_max/(2.5 M_max + 3 M_A + 4 M_B + 3 M_C)"
    return step("C_b", formula, 12.5 * M_max / (2.5 * M_max + 3 * M_A + 4 * M_B + 3 * M_C), **given)


@provision(spec("F2.2", "Coefficient c of a channel"))
def channel_c(h_o: float, I_y: float, C_w: float) -> Step:
    """Coefficient c of lateral-torsional buckling for a channel; a doubly symmetric I-shape has 1.

    Args:
        h_o: Distance between the flange centroids, in.
        I_y: Moment of inertia about the weak axis, in⁴.
        C_w: Warping constant, in⁶.

    Returns:
        c.

    Source: Equation F2-8b.
    """
    positive(h_o=h_o, I_y=I_y, C_w=C_w)
    return step("c", "h_o/2 sqrt(I_y/C_w)", h_o / 2 * math.sqrt(I_y / C_w), h_o=h_o, I_y=I_y, C_w=C_w)


@limit_state(spec("F2.1", "Yielding"), FLEXURE, "kip-in")
def plastic_moment(F_y: float, Z_x: float) -> tuple[Step, ...]:
    """Yielding of the whole section about the strong axis.

    Args:
        F_y: Yield stress, ksi.
        Z_x: Plastic section modulus, in³.

    Returns:
        Strength in kip-inches.

    Source: Equation F2-1.
    """
    positive(F_y=F_y, Z_x=Z_x)
    return (step("M_p", "F_y Z_x", F_y * Z_x, "kip-in", F_y=F_y, Z_x=Z_x),)


@limit_state(spec("F2.2", "Lateral-torsional buckling"), FLEXURE, "kip-in")
def lateral_torsional_buckling(
    F_y: float,
    L_b: float,
    *,
    Z_x: float,
    S_x: float,
    r_y: float,
    r_ts: float,
    J: float,
    h_o: float,
    C_b: float = 1.0,
    c: float = 1.0,
) -> tuple[Step, ...]:
    """Lateral-torsional buckling of an I-shape or a channel bent about the strong axis.

    Args:
        F_y: Yield stress, ksi.
        L_b: Unbraced length of the compression flange, in.
        Z_x: Plastic section modulus, in³.
        S_x: Elastic section modulus, in³.
        r_y: Radius of gyration about the weak axis, in.
        r_ts: Effective radius of gyration, in.
        J: Torsional constant, in⁴.
        h_o: Distance between the flange centroids, in.
        C_b: Modification factor for the moment gradient.
        c: 1 for a doubly symmetric I-shape, `channel_c` for a channel.

    Returns:
        Strength in kip-inches.

    Source: Equations F2-2 to F2-6.
    """
    positive(F_y=F_y, Z_x=Z_x, S_x=S_x, r_y=r_y, r_ts=r_ts, J=J, h_o=h_o, c=c)
    gradient(C_b)
    not_negative(L_b=L_b)
    M_p, stress, ratio = F_y * Z_x, 0.7 * F_y, J * c / (S_x * h_o)
    L_p = 1.76 * r_y * math.sqrt(E / F_y)
    L_r = 1.95 * r_ts * E / stress * math.sqrt(ratio + math.sqrt(ratio**2 + 6.76 * (stress / E) ** 2))
    yielding = step("M_p", "F_y Z_x", M_p, "kip-in", F_y=F_y, Z_x=Z_x)
    limit_p = step("L_p", "1.76 r_y sqrt(E/F_y)", L_p, "in", r_y=r_y, E=E, F_y=F_y)
    if L_b <= L_p:
        return limit_p, yielding, step("M_n", "M_p", M_p, "kip-in", M_p=M_p)
    quotient = step("j", "J c/(S_x h_o)", ratio, J=J, c=c, S_x=S_x, h_o=h_o)
    formula = "1.95 r_ts E/(0.7 F_y) sqrt(j + sqrt(j^2 + 6.76 (0.7 F_y/E)^2))"
    limit_r = step("L_r", formula, L_r, "in", r_ts=r_ts, E=E, F_y=F_y, j=ratio)
    found = (yielding, limit_p, quotient, limit_r)
    if L_b <= L_r:
        M_n = min(C_b * (M_p - (M_p - stress * S_x) * (L_b - L_p) / (L_r - L_p)), M_p)
        formula = "min(C_b (M_p - (M_p - 0.7 F_y S_x) (L_b - L_p)/(L_r - L_p)), M_p)"
        given = {"C_b": C_b, "M_p": M_p, "F_y": F_y, "S_x": S_x, "L_b": L_b, "L_p": L_p, "L_r": L_r}
        return *found, step("M_n", formula, M_n, "kip-in", **given)
    slender = L_b / r_ts
    F_cr = C_b * math.pi**2 * E / slender**2 * math.sqrt(1 + 0.078 * ratio * slender**2)
    formula = "C_b π^2 E/(L_b/r_ts)^2 sqrt(1 + 0.078 j (L_b/r_ts)^2)"
    given = {"C_b": C_b, "π": math.pi, "E": E, "L_b": L_b, "r_ts": r_ts, "j": ratio}
    critical = step("F_cr", formula, F_cr, "ksi", **given)
    given = {"F_cr": F_cr, "S_x": S_x, "M_p": M_p}
    return *found, critical, step("M_n", "min(F_cr S_x, M_p)", min(F_cr * S_x, M_p), "kip-in", **given)


@limit_state(spec("F3.2", "Compression flange local buckling"), FLEXURE, "kip-in")
def flange_local_buckling(F_y: float, Z_x: float, S_x: float, lam_f: float) -> tuple[Step, ...]:
    """Local buckling of a noncompact flange in bending about the strong axis.

    Args:
        F_y: Yield stress, ksi.
        Z_x: Plastic section modulus, in³.
        S_x: Elastic section modulus, in³.
        lam_f: b_f/2t_f.

    Returns:
        Strength in kip-inches; the plastic moment where the flange is compact.

    Raises:
        ValueProblem: A slender flange, which no rolled shape has.

    Source: Equation F3-1.
    """
    positive(Z_x=Z_x, S_x=S_x)
    _refuse_slender_flange(F_y, lam_f)
    return _noncompact_flange(F_y, Z_x, S_x, lam_f, F_y * Z_x, "x")


def _refuse_slender_flange(F_y: float, lam_f: float) -> None:
    if flange_slenderness(F_y, lam_f) is Slenderness.SLENDER:
        raise ValueProblem(
            f"b_f/2t_f = {lam_f:g} is more than {_flange_limits(F_y)[1]:.4g}: "
            "a slender flange is outside the rolled shapes"
        )


def _noncompact_flange(
    F_y: float, Z: float, S: float, lam_f: float, M_p: float, axis: str
) -> tuple[Step, ...]:
    lam_p, lam_r = _flange_limits(F_y)
    if axis == "x":
        plastic = step("M_p", "F_y Z_x", M_p, "kip-in", F_y=F_y, Z_x=Z)
    else:
        plastic = step("M_p", "min(F_y Z_y, 1.6 F_y S_y)", M_p, "kip-in", F_y=F_y, Z_y=Z, S_y=S)
    if lam_f <= lam_p:
        return plastic, step("M_n", "M_p", M_p, "kip-in", M_p=M_p)
    M_n = M_p - (M_p - 0.7 * F_y * S) * (lam_f - lam_p) / (lam_r - lam_p)
    given = {"M_p": M_p, "F_y": F_y, f"S_{axis}": S, "λ_f": lam_f, "λ_p": lam_p, "λ_r": lam_r}
    formula = f"M_p - (M_p - 0.7 F_y S_{axis}) (λ_f - λ_p)/(λ_r - λ_p)"
    return (
        plastic,
        step("λ_p", "0.38 sqrt(E/F_y)", lam_p, E=E, F_y=F_y),
        step("λ_r", "1.0 sqrt(E/F_y)", lam_r, E=E, F_y=F_y),
        step("M_n", formula, M_n, "kip-in", **given),
    )


@provision(spec("F2, F3", "Flexure about the strong axis"))
def strong_axis_flexure(
    F_y: float,
    L_b: float,
    *,
    lam_f: float,
    h_tw: float,
    Z_x: float,
    S_x: float,
    r_y: float,
    r_ts: float,
    J: float,
    h_o: float,
    C_b: float = 1.0,
    c: float = 1.0,
) -> tuple[Strength, ...]:
    """All limit states of a rolled I-shape or channel bent about its strong axis.

    Args:
        F_y: Yield stress, ksi.
        L_b: Unbraced length of the compression flange, in.
        lam_f: b_f/2t_f of an I-shape, b_f/t_f of a channel.
        h_tw: Slenderness of the web between fillets.
        Z_x: Plastic section modulus, in³.
        S_x: Elastic section modulus, in³.
        r_y: Radius of gyration about the weak axis, in.
        r_ts: Effective radius of gyration, in.
        J: Torsional constant, in⁴.
        h_o: Distance between the flange centroids, in.
        C_b: Modification factor for the moment gradient.
        c: 1 for a doubly symmetric I-shape, `channel_c` for a channel.

    Returns:
        Strengths in kip-inches; the least governs.

    Raises:
        ValueProblem: A web that is not compact, or a slender flange.

    Source: Sections F2 and F3.
    """
    if web_slenderness(F_y, h_tw) is not Slenderness.COMPACT:
        raise ValueProblem(
            f"h/t_w = {h_tw:g} is more than {3.76 * math.sqrt(E / F_y):.4g}: "
            "webs that are not compact are not covered"
        )
    shape = {"Z_x": Z_x, "S_x": S_x, "r_y": r_y, "r_ts": r_ts, "J": J, "h_o": h_o, "C_b": C_b, "c": c}
    found = (plastic_moment(F_y, Z_x), lateral_torsional_buckling(F_y, L_b, **shape))
    if flange_slenderness(F_y, lam_f) is Slenderness.COMPACT:
        return found
    return *found, flange_local_buckling(F_y, Z_x, S_x, lam_f)


@limit_state(spec("F6.1", "Yielding about the weak axis"), FLEXURE, "kip-in")
def weak_axis_yielding(F_y: float, Z_y: float, S_y: float) -> tuple[Step, ...]:
    """Yielding of an I-shape or a channel bent about the weak axis.

    Args:
        F_y: Yield stress, ksi.
        Z_y: Plastic section modulus, in³.
        S_y: Elastic section modulus, in³.

    Returns:
        Strength in kip-inches.

    Source: Equation F6-1.
    """
    positive(F_y=F_y, Z_y=Z_y, S_y=S_y)
    M_p = min(F_y * Z_y, 1.6 * F_y * S_y)
    return (step("M_p", "min(F_y Z_y, 1.6 F_y S_y)", M_p, "kip-in", F_y=F_y, Z_y=Z_y, S_y=S_y),)


@limit_state(spec("F6.2", "Flange local buckling about the weak axis"), FLEXURE, "kip-in")
def weak_axis_flange_local_buckling(F_y: float, Z_y: float, S_y: float, lam_f: float) -> tuple[Step, ...]:
    """Local buckling of a noncompact flange in bending about the weak axis.

    Args:
        F_y: Yield stress, ksi.
        Z_y: Plastic section modulus, in³.
        S_y: Elastic section modulus, in³.
        lam_f: b_f/2t_f of an I-shape, b_f/t_f of a channel.

    Returns:
        Strength in kip-inches; the plastic moment where the flange is compact.

    Raises:
        ValueProblem: A slender flange, which no rolled shape has.

    Source: Equation F6-2.
    """
    positive(Z_y=Z_y, S_y=S_y)
    _refuse_slender_flange(F_y, lam_f)
    return _noncompact_flange(F_y, Z_y, S_y, lam_f, min(F_y * Z_y, 1.6 * F_y * S_y), "y")
