"""Manual Part 10: seats, an angle or a stiffened plate under the end of a beam.

The beam's web over the seat is Section J10 (`j10_forces`), shear of the outstanding leg Section J4.2. Of
stiffened seats the weld on the support is here, not the stiffener's own bearing and thickness. Not covered:
seats on both sides of a column web beyond the sharing of its thickness.
"""

from __future__ import annotations

import math

from gageline.strength.aisc360.standard import FLEXURE, RUPTURE, SHEAR_YIELDING, E, manual, spec
from gageline.strength.check import Method, Step, step
from gageline.strength.clause import limit_state, provision
from gageline.strength.guard import not_negative, positive

__all__ = [
    "required_bearing_length",
    "seat_eccentricity",
    "seat_leg_flexure",
    "seat_weld",
    "stiffened_seat_weld",
]

_FILLET = 3 / 8


@provision(spec("J10.2, J10.3", "Length of bearing that a reaction needs"))
def required_bearing_length(
    R: float, F_yw: float, t_w: float, t_f: float, d: float, k: float, method: Method
) -> tuple[Step, ...]:
    """Length of bearing that the end of a beam needs on its seat, by yielding and by crippling of its web.

    Args:
        R: Required end reaction by the same method, kips.
        F_yw: Yield stress of the web, ksi.
        t_w: Thickness of the web, in.
        t_f: Thickness of the flange, in.
        d: Depth of the beam, in.
        k: Distance from the outer face of the flange to the toe of the fillet, design value, in.
        method: Design method.

    Returns:
        The working, its last line l_b in inches, at least k.

    Source: Equations J10-3, J10-5a and J10-5b solved for l_b; the least of k is Section J10.2.
    """
    positive(F_yw=F_yw, t_w=t_w, t_f=t_f, d=d, k=k)
    not_negative(R=R)
    lrfd = method is Method.LRFD
    letter, needed = ("φ", "R/φ") if lrfd else ("Ω", "R Ω")
    safe_y = SHEAR_YIELDING.phi if lrfd else SHEAR_YIELDING.omega
    safe_c = RUPTURE.phi if lrfd else RUPTURE.omega
    R_y, R_c = (R / safe_y, R / safe_c) if lrfd else (R * safe_y, R * safe_c)
    q = 0.40 * t_w**2 * math.sqrt(E * F_yw * t_f / t_w)
    slim = (t_w / t_f) ** 1.5
    short = (R_c / q - 1) * d / (3 * slim)
    lines = [
        Step("R_y", needed, (("R", R), (letter, safe_y)), R_y, "kip"),
        Step("R_c", needed, (("R", R), (letter, safe_c)), R_c, "kip"),
        step(
            "l_1",
            "R_y/(F_yw t_w) - 2.5 k",
            R_y / (F_yw * t_w) - 2.5 * k,
            "in",
            R_y=R_y,
            F_yw=F_yw,
            t_w=t_w,
            k=k,
        ),
        step("q", "0.40 t_w^2 sqrt(E F_yw t_f/t_w)", q, "kip", t_w=t_w, E=E, F_yw=F_yw, t_f=t_f),
    ]
    given = {"R_c": R_c, "q": q, "d": d, "t_w": t_w, "t_f": t_f}
    if short <= 0.2 * d:
        crippling = step("l_2", "(R_c/q - 1) d/(3 (t_w/t_f)^1.5)", short, "in", **given)
    else:
        longer = ((R_c / q - 1) / slim + 0.2) * d / 4
        crippling = step("l_2", "((R_c/q - 1)/(t_w/t_f)^1.5 + 0.2) d/4", longer, "in", **given)
    l_1, l_2 = lines[2].value, crippling.value
    return *lines, crippling, step("l_b", "max(l_1, l_2, k)", max(l_1, l_2, k), "in", l_1=l_1, l_2=l_2, k=k)


@provision(manual("Part 10", "Eccentricity on the outstanding leg of a seat"))
def seat_eccentricity(l_b: float, setback: float, t: float) -> Step:
    """Distance from the middle of the bearing to the section of the leg that bends.

    Args:
        l_b: Length of bearing that the reaction needs, in.
        setback: Gap from the support to the end of the beam with its under-run, in.
        t: Thickness of the angle, in.

    Returns:
        e, in; zero or less means that the leg does not bend.

    Source: Manual Part 10, bending checked 3/8 in from the face of the upright leg, from memory.
    """
    positive(l_b=l_b, t=t)
    not_negative(setback=setback)
    e = l_b / 2 + setback - t - _FILLET
    return step("e", "l_b/2 + s - t - 3/8", e, "in", l_b=l_b, s=setback, t=t)


@limit_state(manual("Part 10", "Flexure of the outstanding leg of a seat"), FLEXURE)
def seat_leg_flexure(F_y: float, L: float, t: float, e: float) -> tuple[Step, ...]:
    """End reaction at which the outstanding leg of a seat yields in bending.

    Args:
        F_y: Yield stress of the angle, ksi.
        L: Length of the angle along the support, in.
        t: Thickness of the angle, in.
        e: Eccentricity (`seat_eccentricity`), in, more than zero.

    Returns:
        Strength as an end reaction in kips.

    Source: Manual Part 10 with Equation F11-1.
    """
    positive(F_y=F_y, L=L, t=t, e=e)
    moment = step("M_n", "F_y L t^2/4", F_y * L * t**2 / 4, "kip-in", F_y=F_y, L=L, t=t)
    return moment, step("R_n", "M_n/e", moment.value / e, "kip", M_n=moment.value, e=e)


@limit_state(manual("Table 10-6", "Welds of an unstiffened seat"), RUPTURE)
def seat_weld(w: float, L: float, e: float, F_EXX: float = 70.0) -> tuple[Step, ...]:
    """End reaction that the two upright welds of a seat carry, bending of the leg counted elastically.

    Args:
        w: Leg, in.
        L: Length of each weld, the upright leg of the angle, in.
        e: Distance from the support to the reaction, in; with the reaction in the middle of the leg
            beyond a setback s it is (leg + s)/2.
        F_EXX: Strength of the filler metal, ksi.

    Returns:
        Strength as an end reaction in kips.

    Source: Manual Part 10, from memory; it gives the 53.4 and 35.6 kips of Example II.A-16.
    """
    positive(w=w, L=L, e=e, F_EXX=F_EXX)
    line = step(
        "r_n", "0.60 F_EXX sqrt(2)/2 w", 0.60 * F_EXX * math.sqrt(2) / 2 * w, "kip/in", F_EXX=F_EXX, w=w
    )
    total = 2 * line.value * L**2 / math.sqrt(L**2 + 20.25 * e**2)
    return line, step("R_n", "2 r_n L^2/sqrt(L^2 + 20.25 e^2)", total, "kip", r_n=line.value, L=L, e=e)


@limit_state(manual("Table 10-8", "Weld of a stiffened seat"), RUPTURE)
def stiffened_seat_weld(w: float, L: float, W: float, F_EXX: float = 70.0) -> tuple[Step, ...]:
    """End reaction that the welds of a stiffened seat carry on its support.

    Args:
        w: Leg, in.
        L: Depth of the stiffener, welded on both sides, with a fifth of it on each side under the seat
            plate, in.
        W: Width of the seat from the support out, in; the reaction is taken at 0.8 W.
        F_EXX: Strength of the filler metal, ksi.

    Returns:
        Strength as an end reaction in kips.

    Source: Manual Part 10, Table 10-8, from memory; the formula is the elastic method for that T of weld.
    """
    positive(w=w, L=L, W=W, F_EXX=F_EXX)
    line = step(
        "r_n", "0.60 F_EXX sqrt(2)/2 w", 0.60 * F_EXX * math.sqrt(2) / 2 * w, "kip/in", F_EXX=F_EXX, w=w
    )
    reach = step("e", "0.8 W", 0.8 * W, "in", W=W)
    total = 2.4 * line.value * L**2 / math.sqrt(L**2 + 16 * reach.value**2)
    given = {"r_n": line.value, "L": L, "e": reach.value}
    return line, reach, step("R_n", "2.4 r_n L^2/sqrt(L^2 + 16 e^2)", total, "kip", **given)
