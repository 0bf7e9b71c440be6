"""Chapter J, section J3: bolts in tension, in shear and in both, in bearing, and against slip."""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import Enum

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import RUPTURE, SHEAR_YIELDING, spec
from gageline.strength.check import Factors, Method, Step, Strength, step
from gageline.strength.clause import limit_state, provision
from gageline.strength.guard import not_negative, positive

__all__ = [
    "Hole",
    "bearing",
    "bolt_group",
    "bolt_shear",
    "bolt_tension",
    "bolt_tension_with_shear",
    "effective_bolt",
    "nominal_shear_stress",
    "nominal_tensile_stress",
    "slip",
    "slip_with_tension",
    "tear_out",
]

_MPA = 6.894757
"""Newtons per square millimetre in a ksi."""

_THREADED = (0.75, 0.450, 0.563)
"""Shares of the tensile strength in Table J3.2's row for threaded parts: tension, shear with and without
threads in the plane."""


def _threaded(F_u: float) -> tuple[float, float, float]:
    return _THREADED[0] * F_u, _THREADED[1] * F_u, _THREADED[2] * F_u


_STRESSES = {
    "A307": (45.0, 27.0, 27.0),
    "120": (90.0, 54.0, 68.0),
    "144": (108.0, 65.0, 81.0),
    "150": (113.0, 68.0, 84.0),
    "8.8": _threaded(800 / _MPA),
    "10.9": _threaded(1000 / _MPA),
}
_FRICTION = {"A": 0.30, "B": 0.50}
_LONG_JOINT = 38.0
_D_u = 1.13


class Hole(Enum):
    """The kind of hole, and for a slot how it lies to the load."""

    STANDARD = "standard"
    OVERSIZED = "oversized"
    SHORT_PARALLEL = "short slot parallel to the load"
    SHORT_PERPENDICULAR = "short slot perpendicular to the load"
    LONG_PARALLEL = "long slot parallel to the load"
    LONG_PERPENDICULAR = "long slot perpendicular to the load"


_SLIP_FACTORS = {
    Hole.STANDARD: SHEAR_YIELDING,
    Hole.SHORT_PERPENDICULAR: SHEAR_YIELDING,
    Hole.OVERSIZED: Factors(0.85, 1.76),
    Hole.SHORT_PARALLEL: Factors(0.85, 1.76),
    Hole.LONG_PARALLEL: Factors(0.70, 2.14),
    Hole.LONG_PERPENDICULAR: Factors(0.70, 2.14),
}


def _stresses(group: str) -> tuple[float, float, float]:
    if group not in _STRESSES:
        raise ValueProblem(
            f"bolt group {group!r} is not one of {', '.join(_STRESSES)}: give the group of Table J3.2"
        )
    return _STRESSES[group]


@provision(spec("Table J3.2", "Nominal tensile stress of bolts"))
def nominal_tensile_stress(group: str) -> float:
    """Nominal tensile stress of a bolt.

    Args:
        group: `A307`, `120`, `144` or `150`, or a property class of ISO 898-1, `8.8` or `10.9`.

    Returns:
        F_nt, ksi.

    Raises:
        ValueProblem: Another group.

    Source: Table J3.2; group 120 read in Example II.A-2B, the others from memory. Property classes are not in
        the table: they have its row for threaded parts with their nominal tensile strength, 800 and 1000 MPa.
    """
    return _stresses(group)[0]


@provision(spec("Table J3.2", "Nominal shear stress of bolts"))
def nominal_shear_stress(group: str, threads: str) -> float:
    """Nominal shear stress of a bolt in a bearing-type connection.

    Args:
        group: `A307`, `120`, `144` or `150`, or a property class of ISO 898-1, `8.8` or `10.9`.
        threads: `N`, threads not excluded from the shear plane, or `X`, threads excluded.

    Returns:
        F_nv, ksi.

    Raises:
        ValueProblem: Another group, or neither N nor X.

    Source: Table J3.2; group 120-N read in Example II.A-1A, the others from memory; property classes as for
        tension.
    """
    stresses = _stresses(group)
    if threads not in {"N", "X"}:
        raise ValueProblem(
            f"threads {threads!r} must be N (in the shear plane) or X (excluded): give one of them"
        )
    return stresses[1] if threads == "N" else stresses[2]


def _bolt_area(d: float) -> Step:
    positive(d=d)
    return step("A_b", "π d^2/4", math.pi * d**2 / 4, "in²", π=math.pi, d=d)


@limit_state(spec("J3.7", "Bolt in tension"), RUPTURE)
def bolt_tension(group: str, d: float) -> tuple[Step, ...]:
    """Tensile strength of one bolt.

    Args:
        group: Bolt group of Table J3.2.
        d: Bolt diameter, in.

    Returns:
        Strength in kips.

    Source: Equation J3-1.
    """
    F_nt, area = nominal_tensile_stress(group), _bolt_area(d)
    return area, step("R_n", "F_nt A_b", F_nt * area.value, "kip", F_nt=F_nt, A_b=area.value)


@limit_state(spec("J3.7", "Bolt in shear"), RUPTURE)
def bolt_shear(
    group: str, threads: str, d: float, n_s: int = 1, *, end_loaded_length: float = 0.0
) -> tuple[Step, ...]:
    """Shear strength of one bolt in a bearing-type connection.

    Args:
        group: Bolt group of Table J3.2.
        threads: `N` or `X`.
        d: Bolt diameter, in.
        n_s: Number of shear planes.
        end_loaded_length: Length of the bolt pattern along the load of an end-loaded joint, in; above
            38 in the shear stress is taken at 83.3 %. Zero for the end connection of a beam.

    Returns:
        Strength in kips.

    Source: Equation J3-1 and the footnote on long end-loaded joints of Table J3.2.
    """
    positive(n_s=n_s)
    not_negative(end_loaded_length=end_loaded_length)
    area = _bolt_area(d)
    F_nv = nominal_shear_stress(group, threads)
    if end_loaded_length <= _LONG_JOINT:
        total = F_nv * area.value * n_s
        return area, step("R_n", "F_nv A_b n_s", total, "kip", F_nv=F_nv, A_b=area.value, n_s=n_s)
    total = 0.833 * F_nv * area.value * n_s
    return area, step("R_n", "0.833 F_nv A_b n_s", total, "kip", F_nv=F_nv, A_b=area.value, n_s=n_s)


def _available(F_nv: float, method: Method) -> float:
    return RUPTURE.phi * F_nv if method is Method.LRFD else F_nv / RUPTURE.omega


@limit_state(spec("J3.8", "Bolt in tension and shear"), RUPTURE)
def bolt_tension_with_shear(
    group: str, threads: str, d: float, V_r: float, method: Method
) -> tuple[Step, ...]:
    """Tensile strength left in one bolt of a bearing-type connection that also carries shear.

    Args:
        group: Bolt group of Table J3.2.
        threads: `N` or `X`.
        d: Bolt diameter, in.
        V_r: Required shear of the bolt on its most loaded plane by the same method, kips.
        method: Design method.

    Returns:
        Strength in kips, zero where shear leaves nothing or is more than the bolt has.

    Source: Equations J3-2, J3-3a and J3-3b.
    """
    not_negative(V_r=V_r)
    F_nt, F_nv, area = nominal_tensile_stress(group), nominal_shear_stress(group, threads), _bolt_area(d)
    f_rv = V_r / area.value
    stress = step("f_rv", "V_r/A_b", f_rv, "ksi", V_r=V_r, A_b=area.value)
    given = {"F_nt": F_nt, "F_nv": F_nv, "f_rv": f_rv}
    if f_rv > _available(F_nv, method) * (1 + 1e-9):
        left, formula, given = 0.0, "0", {}
    elif method is Method.LRFD:
        left = max(0.0, min(1.3 * F_nt - F_nt / (RUPTURE.phi * F_nv) * f_rv, F_nt))
        formula = "max(0, min(1.3 F_nt - F_nt/(φ F_nv) f_rv, F_nt))"
        given["φ"] = RUPTURE.phi
    else:
        left = max(0.0, min(1.3 * F_nt - RUPTURE.omega * F_nt / F_nv * f_rv, F_nt))
        formula = "max(0, min(1.3 F_nt - Ω F_nt/F_nv f_rv, F_nt))"
        given["Ω"] = RUPTURE.omega
    note = "" if given else "the shear alone is more than the bolt has"
    reduced = Step("F'_nt", formula, tuple(given.items()), left, "ksi", note)
    last = Step("R_n", "F'_nt A_b", (("F'_nt", left), ("A_b", area.value)), left * area.value, "kip")
    return area, stress, reduced, last


@limit_state(spec("J3.9", "Slip"), SHEAR_YIELDING)
def _slip(T_b: float, n_s: int, surface: str, fillers: int) -> tuple[Step, ...]:
    positive(T_b=T_b, n_s=n_s)
    not_negative(fillers=fillers)
    if surface not in _FRICTION:
        raise ValueProblem(f"faying surface class {surface!r} must be A or B: give the class of the surface")
    given = {
        "μ": _FRICTION[surface],
        "D_u": _D_u,
        "h_f": 1.0 if fillers <= 1 else 0.85,
        "T_b": T_b,
        "n_s": n_s,
    }
    return (step("R_n", "μ D_u h_f T_b n_s", math.prod(given.values()), "kip", **given),)


@provision(spec("J3.9", "Slip"))
def slip(
    T_b: float, hole: Hole = Hole.STANDARD, *, n_s: int = 1, surface: str = "A", fillers: int = 0
) -> Strength:
    """Slip resistance of one bolt of a slip-critical connection.

    Args:
        T_b: Least pretension of the bolt (Table J3.1, `pretension` of `gageline.steel`), kips.
        hole: Kind of hole and how a slot lies to the load.
        n_s: Number of slip planes.
        surface: Class of the faying surfaces, `A` (μ 0.30) or `B` (μ 0.50).
        fillers: Number of fillers between the connected parts; two or more lower the resistance to 85 %.

    Returns:
        Strength in kips; its factors follow the hole.

    Source: Equation J3-4 with the factors of Section J3.9.
    """
    return _slip(T_b, n_s, surface, fillers).under(_SLIP_FACTORS[hole])


@provision(spec("J3.10", "Slip with tension"))
def slip_with_tension(T_b: float, n_b: int, T_r: float, method: Method) -> Step:
    """Share of the slip resistance that is left when the joint is also pulled apart.

    Args:
        T_b: Least pretension of one bolt, kips.
        n_b: Number of bolts that carry the tension.
        T_r: Required tension of the joint by the same method, kips.
        method: Design method.

    Returns:
        k_sc, by which the slip resistance is multiplied; zero where tension leaves nothing.

    Source: Equations J3-5a and J3-5b.
    """
    positive(T_b=T_b, n_b=n_b)
    not_negative(T_r=T_r)
    given = {"T_r": T_r, "D_u": _D_u, "T_b": T_b, "n_b": n_b}
    if method is Method.LRFD:
        left = max(0.0, 1 - T_r / (_D_u * T_b * n_b))
        return step("k_sc", "max(0, 1 - T_r/(D_u T_b n_b))", left, **given)
    left = max(0.0, 1 - 1.5 * T_r / (_D_u * T_b * n_b))
    return step("k_sc", "max(0, 1 - 1.5 T_r/(D_u T_b n_b))", left, **given)


@limit_state(spec("J3.11(a)", "Bearing at a bolt hole"), RUPTURE)
def bearing(
    F_u: float, d: float, t: float, hole: Hole = Hole.STANDARD, *, deformation: bool = True
) -> tuple[Step, ...]:
    """Bearing of one bolt on one part.

    Args:
        F_u: Tensile strength of the part, ksi.
        d: Bolt diameter, in.
        t: Thickness of the part, in.
        hole: Kind of hole and how a slot lies to the load.
        deformation: Whether deformation of the hole at service load matters to the design.

    Returns:
        Strength in kips.

    Source: Equations J3-6a, J3-6b and J3-6e.
    """
    positive(F_u=F_u, d=d, t=t)
    factor = 2.0 if hole is Hole.LONG_PERPENDICULAR else (2.4 if deformation else 3.0)
    return (step("R_n", f"{factor} d t F_u", factor * d * t * F_u, "kip", d=d, t=t, F_u=F_u),)


@limit_state(spec("J3.11(b)", "Tear-out at a bolt hole"), RUPTURE)
def tear_out(
    F_u: float, l_c: float, t: float, hole: Hole = Hole.STANDARD, *, deformation: bool = True
) -> tuple[Step, ...]:
    """Tear-out of one part between a bolt hole and the next hole or the edge.

    Args:
        F_u: Tensile strength of the part, ksi.
        l_c: Clear distance along the load from the edge of the hole (not the hole for net area) to the
            edge of the next hole or of the part, in.
        t: Thickness of the part, in.
        hole: Kind of hole and how a slot lies to the load.
        deformation: Whether deformation of the hole at service load matters to the design.

    Returns:
        Strength in kips.

    Source: Equations J3-6c, J3-6d and J3-6f.
    """
    positive(F_u=F_u, l_c=l_c, t=t)
    factor = 1.0 if hole is Hole.LONG_PERPENDICULAR else (1.2 if deformation else 1.5)
    return (step("R_n", f"{factor} l_c t F_u", factor * l_c * t * F_u, "kip", l_c=l_c, t=t, F_u=F_u),)


def effective_bolt(strengths: Sequence[Strength]) -> Strength:
    """The strength of one bolt: the least of its own shear and the bearing and tear-out of what it joins.

    Args:
        strengths: The strengths of the bolt by each of these limit states.

    Returns:
        The least.

    Raises:
        ValueProblem: No strengths are given.

    Source: User note of Section J3.7.
    """
    if not strengths:
        raise ValueProblem("a bolt has 0 limit states, at least 1 is needed: give its shear and its bearing")
    return min(strengths, key=lambda strength: strength.nominal)


@limit_state(spec("J3.7, J3.11", "Group of bolts: the sum of the bolts' own strengths"), RUPTURE)
def bolt_group(bolts: Sequence[Strength]) -> tuple[Step, ...]:
    """The strength of a group of bolts loaded through its centre: the sum of what each bolt carries.

    Args:
        bolts: The effective strength of each bolt (`effective_bolt`), all with the factors 0.75 and 2.00.

    Returns:
        Strength in kips, its working listing what the bolts start from and each bolt.

    Raises:
        ValueProblem: No bolts.

    Source: User note of Section J3.7; bearing and tear-out of each bolt by Section J3.11.
    """
    if not bolts:
        raise ValueProblem("the group has 0 bolts, at least 1 is needed: give the strength of each bolt")
    each = tuple(
        Step(f"r_{i}", bolt.steps[-1].formula, bolt.steps[-1].values, bolt.nominal, bolt.unit)
        for i, bolt in enumerate(bolts, 1)
    )
    found = dict.fromkeys(line for bolt in bolts for line in bolt.steps[:-1])
    total = sum(line.value for line in each)
    names = " + ".join(line.symbol for line in each)
    return *found, *each, Step("R_n", names, tuple((line.symbol, line.value) for line in each), total, "kip")
