"""Table D3.1: how much of a net area in tension is idle because not all of it is joined (shear lag).

Case numbers are those of the table in the 2022 edition, from memory. Not covered: cases 5 and 6, hollow
sections on a slotted gusset, whose formulas of that edition were not read.
"""

from __future__ import annotations

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import spec
from gageline.strength.check import Step, step
from gageline.strength.clause import provision
from gageline.strength.guard import positive

__all__ = [
    "all_joined",
    "angle_rows",
    "flange_or_web_rows",
    "part_joined",
    "transverse_welds",
    "welded_plate",
]

_FLANGE_ROWS, _WEB_ROWS = 3, 4
_WIDE = 2 / 3


@provision(spec("Table D3.1, case 1", "Shear lag factor, all of the section joined"))
def all_joined() -> Step:
    """Shear lag factor where every element of the section is joined by bolts or welds.

    Returns:
        U = 1.

    Source: Table D3.1, case 1.
    """
    return step("U", "1", 1.0)


@provision(spec("Table D3.1, case 2", "Shear lag factor, some of the section joined"))
def part_joined(x_bar: float, l: float) -> Step:  # noqa: E741 # the standard's own letter
    """Shear lag factor of a member, not a plate, some but not all of whose elements are joined.

    Args:
        x_bar: Eccentricity of the joint: from its plane to the centroid of the steel that it draws on, in.
        l: Length of the joint along the load, in: between the outer bolts, or of the weld.

    Returns:
        U.

    Raises:
        ValueProblem: A joint no longer than its eccentricity, of which nothing is left.

    Source: Table D3.1, case 2.
    """
    positive(x_bar=x_bar, l=l)
    if l <= x_bar:
        raise ValueProblem(f"l = {l:g} in must be more than x_bar = {x_bar:g} in: make the joint longer")
    return step("U", "1 - x_bar/l", 1 - x_bar / l, x_bar=x_bar, l=l)


@provision(spec("Table D3.1, case 3", "Shear lag factor, welds across the load only"))
def transverse_welds(A_n: float, A_g: float) -> Step:
    """Shear lag factor where only welds across the load join some of the elements.

    Args:
        A_n: Area of the elements that are joined directly, in².
        A_g: Area of the whole section, in².

    Returns:
        U of the whole section: 1 for the area that is joined, so A_n/A_g.

    Raises:
        ValueProblem: More area joined than there is.

    Source: Table D3.1, case 3.
    """
    positive(A_n=A_n, A_g=A_g)
    if A_n > A_g:
        raise ValueProblem(f"A_n = {A_n:g} in² is more than A_g = {A_g:g} in²: leave out what is not joined")
    return step("U", "A_n/A_g", A_n / A_g, A_n=A_n, A_g=A_g)


@provision(spec("Table D3.1, case 4", "Shear lag factor, welds along both edges"))
def welded_plate(l: float, w: float, x_bar: float = 0.0) -> Step:  # noqa: E741 # the standard's own letter
    """Shear lag factor of a plate, angle, channel, tee or W-shape with welds along its edges only.

    Args:
        l: Length of the welds, in; the average of two that differ.
        w: Width between the welds, in.
        x_bar: Eccentricity of the joint, in; zero for a plate.

    Returns:
        U.

    Raises:
        ValueProblem: A joint no longer than its eccentricity.

    Source: Table D3.1, case 4.
    """
    positive(l=l, w=w)
    if not 0 <= x_bar < l:
        raise ValueProblem(
            f"x_bar = {x_bar:g} in must be 0 or more and less than l = {l:g} in: make the welds longer"
        )
    value = 3 * l**2 / (3 * l**2 + w**2) * (1 - x_bar / l)
    return step("U", "3 l^2/(3 l^2 + w^2) (1 - x_bar/l)", value, l=l, w=w, x_bar=x_bar)


@provision(spec("Table D3.1, case 7", "Shear lag factor, bolts in the flange or the web alone"))
def flange_or_web_rows(n: int, d: float, b_f: float, *, flange: bool) -> Step:
    """Shear lag factor of a W-, M-, S- or HP-shape, or a tee cut from one, joined by one element.

    Args:
        n: Bolts in a line along the load.
        d: Depth of the shape, of a tee that of the shape it is cut from, in.
        b_f: Width of its flange, in.
        flange: Joined by the flange; else by the web.

    Returns:
        U: 0.90 or 0.85 by the flange, 0.70 by the web. Case 2 may be taken where it gives more.

    Raises:
        ValueProblem: Fewer than 3 bolts in a line in the flange, or 4 in the web.

    Source: Table D3.1, case 7.
    """
    positive(n=n, d=d, b_f=b_f)
    least, where = (_FLANGE_ROWS, "flange") if flange else (_WEB_ROWS, "web")
    if n < least:
        raise ValueProblem(f"n = {n} bolts in a line in the {where} must be at least {least}: use case 2")
    if not flange:
        return step("U", "0.70", 0.70)
    return step("U", "0.90", 0.90) if b_f >= _WIDE * d else step("U", "0.85", 0.85)


@provision(spec("Table D3.1, case 8", "Shear lag factor of single and double angles"))
def angle_rows(n: int) -> Step:
    """Shear lag factor of angles with bolts in one leg.

    Args:
        n: Bolts in a line along the load.

    Returns:
        U: 0.80 with four or more, 0.60 with three. Case 2 may be taken where it gives more.

    Raises:
        ValueProblem: Fewer than three.

    Source: Table D3.1, case 8.
    """
    positive(n=n)
    if n < _FLANGE_ROWS:
        raise ValueProblem(f"n = {n} bolts in a line must be at least 3: use case 2")
    return step("U", "0.80", 0.80) if n >= _WEB_ROWS else step("U", "0.60", 0.60)
