"""Manual Part 9: bending and local buckling of the web that is left at a cope.

Covered: the top flange coped (c up to 2d, d_c up to d/2) and both flanges coped. Not covered: webs
reinforced by doublers or stiffeners, copes with axial load, and skewed cuts.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from gageline.errors import ValueProblem
from gageline.strength.aisc360.f_bars import bar_lateral_buckling, bar_yielding
from gageline.strength.aisc360.standard import FLEXURE, E, manual
from gageline.strength.check import Step, Strength, found, step
from gageline.strength.clause import limit_state, provision
from gageline.strength.guard import positive

__all__ = [
    "CopedSection",
    "coped_section",
    "double_cope_C_b",
    "double_cope_flexure",
    "single_cope_flexure",
]

_TOLERANCE = 1e-9
_LEAST_CB = 1.84
_DEEPEST_OF_DOUBLE = 0.4


class CopedSection(NamedTuple):
    """What is left of an I-shape where its top flange is coped: a tee without fillets.

    Args:
        h_o: Depth left, in.
        Z_c: Plastic section modulus, in³.
        S_c: Elastic section modulus at the cope, in³.
    """

    h_o: float
    Z_c: float
    S_c: float


@provision(manual("Table 9-2", "Section moduli of a coped W-shape"))
def coped_section(d: float, t_w: float, b_f: float, t_f: float, d_c: float) -> CopedSection:
    """Section moduli of the tee that a top cope leaves, fillets left out.

    Args:
        d: Depth of the beam, in.
        t_w: Thickness of the web, in.
        b_f: Width of the flange, in.
        t_f: Thickness of the flange, in.
        d_c: Depth of the cope, in.

    Returns:
        Depth left and section moduli.

    Raises:
        ValueProblem: The cope does not clear the top flange, or reaches the bottom flange.

    Source: The section of Manual Tables 9-2a and 9-2b; statics.
    """
    positive(d=d, t_w=t_w, b_f=b_f, t_f=t_f, d_c=d_c)
    if not t_f <= d_c < d - 2 * t_f:
        raise ValueProblem(
            f"cope depth d_c = {d_c:g} in must lie between the flange, {t_f:g} in, and {d - 2 * t_f:.4g} in: "
            "set it so that the top flange goes and the bottom flange stays"
        )
    h_o = d - d_c
    stem, flange = (h_o - t_f) * t_w, b_f * t_f
    area = stem + flange
    y = (flange * t_f / 2 + stem * (t_f + h_o) / 2) / area
    inertia = (
        b_f * t_f**3 / 12
        + flange * (y - t_f / 2) ** 2
        + t_w * (h_o - t_f) ** 3 / 12
        + stem * ((t_f + h_o) / 2 - y) ** 2
    )
    half = area / 2
    p = half / b_f if flange >= half else t_f + (half - flange) / t_w
    if p <= t_f:
        Z = b_f * p**2 / 2 + b_f * (t_f - p) ** 2 / 2 + stem * ((t_f + h_o) / 2 - p)
    else:
        Z = flange * (p - t_f / 2) + t_w * (p - t_f) ** 2 / 2 + t_w * (h_o - p) ** 2 / 2
    return CopedSection(h_o, Z, inertia / (h_o - y))


@limit_state(manual("Part 9", "Flexural local buckling of a web coped at the top"), FLEXURE)
def single_cope_flexure(
    F_y: float, d: float, t_w: float, c: float, e: float, section: CopedSection
) -> tuple[Step, ...]:
    """End reaction at which the web beside a top cope yields or buckles in bending.

    Args:
        F_y: Yield stress, ksi.
        d: Depth of the beam, in.
        t_w: Thickness of the web, in.
        c: Length of the cope, in.
        e: Distance from the reaction to the end of the cope, in.
        section: What the cope leaves (`coped_section`).

    Returns:
        Strength as an end reaction in kips.

    Raises:
        ValueProblem: A cope longer than 2d or deeper than d/2.

    Source: Manual Part 9, Equations 9-10 to 9-20; the limits on the cope and the branches c > d, c > h_o
        and λ > 2λ_p from memory.
    """
    h_o, Z_c, S_c = section
    positive(F_y=F_y, d=d, t_w=t_w, c=c, e=e, h_o=h_o, Z_c=Z_c, S_c=S_c)
    if c > 2 * d + _TOLERANCE:
        raise ValueProblem(f"cope length c = {c:g} in must be at most 2d = {2 * d:g} in: shorten the cope")
    if d - h_o > d / 2 + _TOLERANCE:
        raise ValueProblem(
            f"cope depth d_c = {d - h_o:.4g} in must be at most d/2 = {d / 2:g} in: make it shallower"
        )
    lam = h_o / t_w
    tee = "of the tee that the cope leaves, without fillets, Table 9-2"
    moduli = (found("Z_c", Z_c, "in³", tee), found("S_c", S_c, "in³", tee))
    slender = step("λ", "h_o/t_w", lam, h_o=h_o, t_w=t_w)
    long, narrow = c > d, c > h_o
    adjust = step("f", "1 + c/d" if long else "2 c/d", 1 + c / d if long else 2 * c / d, c=c, d=d)
    power = 1.0 if narrow else 1.65
    plate = step("k", f"2.2 (h_o/c)^{power}", 2.2 * (h_o / c) ** power, h_o=h_o, c=c)
    k_1 = max(adjust.value * plate.value, 1.61)
    both = step("k_1", "max(f k, 1.61)", k_1, f=adjust.value, k=plate.value)
    lam_p = 0.475 * math.sqrt(k_1 * E / F_y)
    limit = step("λ_p", "0.475 sqrt(k_1 E/F_y)", lam_p, k_1=k_1, E=E, F_y=F_y)
    moment = _coped_moment(F_y, section, lam, lam_p, k_1)
    reaction = step("R_n", "M_n/e", moment[-1].value / e, "kip", M_n=moment[-1].value, e=e)
    return *moduli, slender, adjust, plate, both, limit, *moment, reaction


def _coped_moment(
    F_y: float, section: CopedSection, lam: float, lam_p: float, k_1: float
) -> tuple[Step, ...]:
    M_p, M_y = F_y * section.Z_c, F_y * section.S_c
    plastic = step("M_p", "F_y Z_c", M_p, "kip-in", F_y=F_y, Z_c=section.Z_c)
    if lam <= lam_p:
        return plastic, step("M_n", "M_p", M_p, "kip-in", M_p=M_p)
    if lam <= 2 * lam_p:
        elastic = step("M_y", "F_y S_c", M_y, "kip-in", F_y=F_y, S_c=section.S_c)
        M_n = M_p - (M_p - M_y) * (lam / lam_p - 1)
        given = {"M_p": M_p, "M_y": M_y, "λ": lam, "λ_p": lam_p}
        return plastic, elastic, step("M_n", "M_p - (M_p - M_y) (λ/λ_p - 1)", M_n, "kip-in", **given)
    F_cr = 0.903 * E * k_1 / lam**2
    critical = step("F_cr", "0.903 E k_1/λ^2", F_cr, "ksi", E=E, k_1=k_1, λ=lam)
    return critical, step("M_n", "F_cr S_c", F_cr * section.S_c, "kip-in", F_cr=F_cr, S_c=section.S_c)


@provision(manual("Equation 9-21", "Modification factor of a web coped top and bottom"))
def double_cope_C_b(d: float, c_t: float, c_b: float, d_ct: float) -> Step:
    """Moment gradient factor of the plate that is left between a top and a bottom cope.

    Args:
        d: Depth of the beam, in.
        c_t: Length of the top cope, in.
        c_b: Length of the bottom cope, in.
        d_ct: Depth of the top cope, in.

    Returns:
        C_b for an unbraced length of c_t. Where the bottom cope is the shorter one the least value,
        1.84, is taken, which is never more than the Manual's own equation gives.

    Source: Manual Part 9, Equation 9-21 (read in Example II.A-7 through the reference notes).
    """
    positive(d=d, c_t=c_t, c_b=c_b, d_ct=d_ct)
    if c_b < c_t:
        return step("C_b", "C_min", _LEAST_CB, C_min=_LEAST_CB)
    value = max((3 + math.log(c_t / d)) * (1 - d_ct / d), _LEAST_CB)
    return step("C_b", "max((3 + ln(c_t/d)) (1 - d_ct/d), 1.84)", value, c_t=c_t, d=d, d_ct=d_ct)


@limit_state(manual("Part 9", "Flexure of a web coped at top and bottom"), FLEXURE)
def double_cope_flexure(
    F_y: float, d: float, t_w: float, *, c_t: float, c_b: float, d_ct: float, d_cb: float, e: float
) -> tuple[Step, ...]:
    """End reaction at which the web between two copes yields or buckles sideways in bending.

    Args:
        F_y: Yield stress, ksi.
        d: Depth of the beam, in.
        t_w: Thickness of the web, in.
        c_t: Length of the top cope, in.
        c_b: Length of the bottom cope, in.
        d_ct: Depth of the top cope, in.
        d_cb: Depth of the bottom cope, in.
        e: Distance from the reaction to the end of the longer cope, in.

    Returns:
        Strength as an end reaction in kips.

    Raises:
        ValueProblem: A cope longer than 2d or deeper than 0.4d.

    Source: Manual Part 9 with Specification Section F11; the depth limit is that of the tests behind it
        (Dowswell and Whyte, Engineering Journal 2014).
    """
    positive(F_y=F_y, d=d, t_w=t_w, c_t=c_t, c_b=c_b, d_ct=d_ct, d_cb=d_cb, e=e)
    if max(c_t, c_b) > 2 * d + _TOLERANCE:
        raise ValueProblem(
            f"cope length {max(c_t, c_b):g} in must be at most 2d = {2 * d:g} in: shorten the cope"
        )
    if max(d_ct, d_cb) > _DEEPEST_OF_DOUBLE * d + _TOLERANCE:
        raise ValueProblem(
            f"cope depth {max(d_ct, d_cb):g} in must be at most 0.4d = {_DEEPEST_OF_DOUBLE * d:.4g} in: "
            "make the cope shallower"
        )
    h_o = step("h_o", "d - d_ct - d_cb", d - d_ct - d_cb, "in", d=d, d_ct=d_ct, d_cb=d_cb)
    gradient = double_cope_C_b(d, c_t, c_b, d_ct)
    states = (
        bar_yielding(F_y, h_o.value, t_w),
        bar_lateral_buckling(F_y, h_o.value, t_w, c_t, gradient.value),
    )
    least: Strength = min(states, key=lambda strength: strength.nominal)
    symbol = least.steps[-1].symbol
    reaction = Step("R_n", f"{symbol}/e", ((symbol, least.nominal), ("e", e)), least.nominal / e, "kip")
    return h_o, gradient, *least.steps, reaction
