"""Chapter G: the web of a beam in shear, without tension field action."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import FLEXURE, SHEAR_YIELDING, E, spec
from gageline.strength.check import Step, Strength, step
from gageline.strength.clause import limit_state, provision
from gageline.strength.guard import positive

__all__ = ["leg_or_stem_shear", "other_web_shear", "stocky_web_shear", "web_shear"]

_KV_WEB = 5.34
_KV_STEM = 1.2


def _stocky_limit(F_y: float) -> float:
    return 2.24 * math.sqrt(E / F_y)


@limit_state(spec("G2.1(a)", "Shear of a stocky rolled I-shape web"), SHEAR_YIELDING)
def stocky_web_shear(F_y: float, d: float, t_w: float, h_tw: float) -> tuple[Step, ...]:
    """Shear of the web of a rolled I-shape that is stocky enough for φ = 1.00.

    Args:
        F_y: Yield stress, ksi.
        d: Depth, in.
        t_w: Thickness of the web, in.
        h_tw: Slenderness of the web between fillets.

    Returns:
        Strength in kips.

    Raises:
        ValueProblem: A more slender web, which belongs to `other_web_shear`.

    Source: Equations G2-1 and G2-2.
    """
    positive(F_y=F_y, d=d, t_w=t_w, h_tw=h_tw)
    limit = _stocky_limit(F_y)
    if h_tw > limit:
        raise ValueProblem(
            f"h/t_w = {h_tw:g} is more than {limit:.4g} of G2.1(a): use G2.1(b), which has φ = 0.90"
        )
    area = step("A_w", "d t_w", d * t_w, "in²", d=d, t_w=t_w)
    return area, step("V_n", "0.6 F_y A_w", 0.6 * F_y * area.value, "kip", F_y=F_y, A_w=area.value)


@limit_state(spec("G2.1(b)", "Shear of a web without stiffeners"), FLEXURE)
def other_web_shear(F_y: float, d: float, t_w: float, h_tw: float) -> tuple[Step, ...]:
    """Shear of the web of any other I-shape or of a channel, without transverse stiffeners.

    Args:
        F_y: Yield stress, ksi.
        d: Depth, in.
        t_w: Thickness of the web, in.
        h_tw: Slenderness of the web between fillets.

    Returns:
        Strength in kips.

    Source: Equations G2-1, G2-3 and G2-4, with k_v = 5.34.
    """
    positive(F_y=F_y, d=d, t_w=t_w, h_tw=h_tw)
    area = step("A_w", "d t_w", d * t_w, "in²", d=d, t_w=t_w)
    C_v1 = min(1.0, 1.10 * math.sqrt(_KV_WEB * E / F_y) / h_tw)
    formula = "min(1, 1.10 sqrt(k_v E/F_y)/λ_w)"
    share = step("C_v1", formula, C_v1, k_v=_KV_WEB, E=E, F_y=F_y, λ_w=h_tw)
    total = 0.6 * F_y * area.value * C_v1
    return area, share, step("V_n", "0.6 F_y A_w C_v1", total, "kip", F_y=F_y, A_w=area.value, C_v1=C_v1)


@provision(spec("G2.1", "Shear of the web"))
def web_shear(F_y: float, d: float, t_w: float, h_tw: float, *, rolled_i: bool) -> Strength:
    """Shear of a web by the part of the clause that applies to it.

    Args:
        F_y: Yield stress, ksi.
        d: Depth, in.
        t_w: Thickness of the web, in.
        h_tw: Slenderness of the web between fillets.
        rolled_i: Whether the member is a rolled I-shape.

    Returns:
        Strength in kips, with φ = 1.00 for a stocky rolled I-shape and 0.90 for all others.

    Source: Section G2.1.
    """
    positive(F_y=F_y)
    if rolled_i and h_tw <= _stocky_limit(F_y):
        return stocky_web_shear(F_y, d, t_w, h_tw)
    return other_web_shear(F_y, d, t_w, h_tw)


@limit_state(spec("G3", "Shear of an angle leg or a tee stem"), FLEXURE)
def leg_or_stem_shear(F_y: float, b: float, t: float) -> tuple[Step, ...]:
    """Shear of the leg of a single angle or the stem of a tee along the load.

    Args:
        F_y: Yield stress, ksi.
        b: Width of the leg or depth of the tee, in.
        t: Thickness of the leg or stem, in.

    Returns:
        Strength in kips.

    Source: Equation G3-1 with the buckling coefficient of Section G2.2 and k_v = 1.2.
    """
    positive(F_y=F_y, b=b, t=t)
    slenderness = step("λ", "b/t", b / t, b=b, t=t)
    lam, given = slenderness.value, {"k_v": _KV_STEM, "E": E, "F_y": F_y, "λ": b / t}
    root = math.sqrt(_KV_STEM * E / F_y)
    if lam <= 1.10 * root:
        share = step("C_v2", "1", 1.0)
    elif lam <= 1.37 * root:
        share = step("C_v2", "1.10 sqrt(k_v E/F_y)/λ", 1.10 * root / lam, **given)
    else:
        share = step("C_v2", "1.51 k_v E/(λ^2 F_y)", 1.51 * _KV_STEM * E / (lam**2 * F_y), **given)
    total = 0.6 * F_y * b * t * share.value
    last = step("V_n", "0.6 F_y b t C_v2", total, "kip", F_y=F_y, b=b, t=t, C_v2=share.value)
    return slenderness, share, last
