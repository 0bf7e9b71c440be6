"""Chapter J, section J2: fillet welds and partial-joint-penetration groove welds."""

from __future__ import annotations

import math

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import RUPTURE, spec
from gageline.strength.check import Factors, Step, step
from gageline.strength.clause import limit_state, provision
from gageline.strength.guard import not_negative, positive

__all__ = [
    "directional_increase",
    "effective_fillet_size",
    "fillet_lines_along_and_across",
    "fillet_weld",
    "groove_shear",
    "groove_tension",
    "long_weld_length",
    "maximum_fillet",
    "minimum_fillet",
    "minimum_groove_throat",
]

_LEAST_FILLET = ((0.25, 1 / 8), (0.5, 3 / 16), (0.75, 1 / 4), (math.inf, 5 / 16))
_LEAST_THROAT = (
    (0.25, 1 / 8),
    (0.5, 3 / 16),
    (0.75, 1 / 4),
    (1.5, 5 / 16),
    (2.25, 3 / 8),
    (6.0, 1 / 2),
    (math.inf, 5 / 8),
)
_SLACK = 1e-9  # a size typed as a decimal may sit a hair above the limit it stands for


@provision(spec("Table J2.4", "Minimum size of fillet weld"))
def minimum_fillet(t: float) -> Step:
    """Least leg of a fillet weld, which keeps it from cooling too fast.

    Args:
        t: Thickness of the thinner part joined, in.

    Returns:
        w_min, in.

    Source: Table J2.4.
    """
    positive(t=t)
    size = next(least for up_to, least in _LEAST_FILLET if t <= up_to + _SLACK)
    return step("w_min", "w_t", size, "in", w_t=size)


@provision(spec("J2.2b", "Maximum size of fillet weld along an edge"))
def maximum_fillet(t: float) -> Step:
    """Most leg of a fillet weld along the edge of a part, so that the edge is still seen.

    Args:
        t: Thickness of the part whose edge is welded, in.

    Returns:
        w_max, in.

    Source: Section J2.2b(b).
    """
    positive(t=t)
    if t < 0.25 - _SLACK:
        return step("w_max", "t", t, "in", t=t)
    return step("w_max", "t - 1/16", t - 1 / 16, "in", t=t)


@provision(spec("J2.2b", "Effective size of a short fillet weld"))
def effective_fillet_size(w: float, L: float) -> Step:
    """Leg that counts in a fillet weld: a weld shorter than four legs counts only a quarter of its length.

    Args:
        w: Leg, in.
        L: Length, in.

    Returns:
        w_e, in.

    Source: Section J2.2b(c).
    """
    positive(w=w, L=L)
    return step("w_e", "min(w, L/4)", min(w, L / 4), "in", w=w, L=L)


@provision(spec("J2.2b", "Effective length of a long end-loaded fillet weld"))
def long_weld_length(w: float, L: float) -> tuple[Step, ...]:
    """Length that counts in a fillet weld along the load that is loaded at its end.

    Args:
        w: Leg, in.
        L: Length, in.

    Returns:
        The working, its last line L_e in inches.

    Source: Section J2.2b(d), Equation J2-1.
    """
    positive(w=w, L=L)
    if L / w > 300:
        return (step("L_e", "180 w", 180 * w, "in", w=w),)
    factor = step("β", "min(1.2 - 0.002 L/w, 1)", min(1.2 - 0.002 * L / w, 1.0), L=L, w=w)
    return factor, step("L_e", "β L", factor.value * L, "in", β=factor.value, L=L)


@provision(spec("J2.4", "Directional strength increase"))
def directional_increase(theta: float) -> Step:
    """How much stronger a fillet weld is when the load crosses it.

    Args:
        theta: Angle between the load and the weld's own line, degrees, from 0 (along) to 90 (across).

    Returns:
        k_ds, 1.0 to 1.5.

    Raises:
        ValueProblem: An angle outside 0 to 90.

    Source: Equation J2-5; not for fillet welds to the ends of rectangular hollow sections.
    """
    if not 0 <= theta <= 90:
        raise ValueProblem(
            f"θ = {theta:g} degrees must lie between 0 and 90: measure the acute angle to the weld"
        )
    return step("k_ds", "1.0 + 0.50 sin(θ)^1.5", 1.0 + 0.50 * math.sin(math.radians(theta)) ** 1.5, θ=theta)


@limit_state(spec("J2.4", "Fillet weld"), RUPTURE)
def fillet_weld(
    w: float,
    L: float,
    F_EXX: float = 70.0,
    theta: float = 0.0,
) -> tuple[Step, ...]:
    """Strength of the weld metal of fillet welds that all lie at one angle to the load.

    Args:
        w: Leg, in.
        L: Effective length of all lines together, in.
        F_EXX: Strength of the filler metal, ksi.
        theta: Angle between the load and the weld's own line, degrees.

    Returns:
        Strength in kips.

    Source: Table J2.5 and Equations J2-3 to J2-5; the throat is 0.707 of the leg.
    """
    positive(w=w, L=L, F_EXX=F_EXX)
    increase = directional_increase(theta)
    area = step("A_we", "sqrt(2)/2 w L", math.sqrt(2) / 2 * w * L, "in²", w=w, L=L)
    given = {"F_EXX": F_EXX, "k_ds": increase.value, "A_we": area.value}
    total = 0.60 * math.prod(given.values())
    return increase, area, step("R_n", "0.60 F_EXX k_ds A_we", total, "kip", **given)


@limit_state(spec("J2.4", "Fillet welds along and across the load"), RUPTURE)
def fillet_lines_along_and_across(R_nwl: float, R_nwt: float) -> tuple[Step, ...]:
    """Strength of a concentric group of fillet welds of one size, some along and some across the load.

    Args:
        R_nwl: Nominal strength of the lines along the load, without directional increase, kips.
        R_nwt: Nominal strength of the lines across the load, without directional increase, kips.

    Returns:
        Strength in kips.

    Source: Equations J2-6a and J2-6b (equation numbers from memory).
    """
    not_negative(R_nwl=R_nwl, R_nwt=R_nwt)
    total = max(R_nwl + R_nwt, 0.85 * R_nwl + 1.5 * R_nwt)
    formula = "max(R_nwl + R_nwt, 0.85 R_nwl + 1.5 R_nwt)"
    return (step("R_n", formula, total, "kip", R_nwl=R_nwl, R_nwt=R_nwt),)


@provision(spec("Table J2.3", "Minimum effective throat of a groove weld"))
def minimum_groove_throat(t: float) -> Step:
    """Least effective throat of a partial-joint-penetration groove weld.

    Args:
        t: Thickness of the thinner part joined, in.

    Returns:
        E_min, in.

    Source: Table J2.3, from memory.
    """
    positive(t=t)
    size = next(least for up_to, least in _LEAST_THROAT if t <= up_to + _SLACK)
    return step("E_min", "E_t", size, "in", E_t=size)


@limit_state(spec("Table J2.5", "Partial-joint-penetration groove weld in shear"), RUPTURE)
def groove_shear(E: float, L: float, F_EXX: float = 70.0) -> tuple[Step, ...]:
    """Strength of the weld metal of partial-joint-penetration groove welds in shear.

    Args:
        E: Effective throat, in.
        L: Length of all lines together, in.
        F_EXX: Strength of the filler metal, ksi.

    Returns:
        Strength in kips.

    Source: Table J2.5.
    """
    positive(E=E, L=L, F_EXX=F_EXX)
    return (step("R_n", "0.60 F_EXX E L", 0.60 * F_EXX * E * L, "kip", F_EXX=F_EXX, E=E, L=L),)


@limit_state(spec("Table J2.5", "Partial-joint-penetration groove weld in tension"), Factors(0.80, 1.88))
def groove_tension(E: float, L: float, F_EXX: float = 70.0) -> tuple[Step, ...]:
    """Strength of the weld metal of partial-joint-penetration groove welds pulled across their line.

    Args:
        E: Effective throat, in.
        L: Length of all lines together, in.
        F_EXX: Strength of the filler metal, ksi.

    Returns:
        Strength in kips.

    Source: Table J2.5.
    """
    positive(E=E, L=L, F_EXX=F_EXX)
    return (step("R_n", "0.60 F_EXX E L", 0.60 * F_EXX * E * L, "kip", F_EXX=F_EXX, E=E, L=L),)
