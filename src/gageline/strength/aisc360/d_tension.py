"""Chapter D, sections D2 and D3, with the net area of section B4.3: members in tension."""

from __future__ import annotations

from collections.abc import Sequence

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import RUPTURE, YIELDING, spec
from gageline.strength.check import Step, step
from gageline.strength.clause import limit_state, provision
from gageline.strength.guard import fraction, not_negative, positive

__all__ = ["effective_net_area", "hole_for_net_area", "net_width", "tensile_rupture", "tensile_yielding"]

_HOLE_DAMAGE = 1 / 16


@provision(spec("B4.3b", "Width of a hole in a net area"))
def hole_for_net_area(d_h: float) -> float:
    """Width that a bolt hole takes out of a net area: the hole and the sixteenth its edge has suffered.

    Args:
        d_h: Nominal size of the hole across the line of the section, in.

    Returns:
        Width, in.

    Source: Section B4.3b.
    """
    positive(d_h=d_h)
    return d_h + _HOLE_DAMAGE


@provision(spec("B4.3b", "Net width across a chain of holes"))
def net_width(b: float, d_h: float, n: int, staggers: Sequence[tuple[float, float]] = ()) -> Step:
    """Net width along a chain of holes, straight or zigzag.

    Args:
        b: Gross width, in.
        d_h: Nominal size of the holes, in.
        n: Number of holes in the chain.
        staggers: Pitch s and gage g of each slanting part of the chain, in.

    Returns:
        b_n, in.

    Raises:
        ValueProblem: The holes take the whole width.

    Source: Section B4.3b.
    """
    positive(b=b)
    not_negative(n=n)
    back = 0.0
    for s, g in staggers:
        not_negative(s=s)
        positive(g=g)
        back += s**2 / (4 * g)
    hole = hole_for_net_area(d_h)
    width = b - n * hole + back
    if width <= 0:
        raise ValueProblem(
            f"{n} holes of {hole:g} in leave {width:g} in of b = {b:g} in: use fewer or smaller holes"
        )
    return step("b_n", "b - n d_n + z", width, "in", b=b, n=n, d_n=hole, z=back)


@provision(spec("D3", "Effective net area"))
def effective_net_area(A_n: float, U: float) -> Step:
    """Net area that takes tension, less what shear lag leaves idle.

    Args:
        A_n: Net area, in².
        U: Shear lag factor of Table D3.1.

    Returns:
        A_e, in².

    Source: Equation D3-1.
    """
    positive(A_n=A_n)
    fraction(U=U)
    return step("A_e", "A_n U", A_n * U, "in²", A_n=A_n, U=U)


@limit_state(spec("D2(a)", "Tensile yielding"), YIELDING)
def tensile_yielding(F_y: float, A_g: float) -> tuple[Step, ...]:
    """Tensile yielding of the gross section of a member.

    Args:
        F_y: Yield stress, ksi.
        A_g: Gross area, in².

    Returns:
        Strength in kips.

    Source: Equation D2-1.
    """
    positive(F_y=F_y, A_g=A_g)
    return (step("P_n", "F_y A_g", F_y * A_g, "kip", F_y=F_y, A_g=A_g),)


@limit_state(spec("D2(b)", "Tensile rupture"), RUPTURE)
def tensile_rupture(F_u: float, A_e: float) -> tuple[Step, ...]:
    """Tensile rupture of the effective net section of a member.

    Args:
        F_u: Tensile strength, ksi.
        A_e: Effective net area, in².

    Returns:
        Strength in kips.

    Source: Equation D2-2.
    """
    positive(F_u=F_u, A_e=A_e)
    return (step("P_n", "F_u A_e", F_u * A_e, "kip", F_u=F_u, A_e=A_e),)
