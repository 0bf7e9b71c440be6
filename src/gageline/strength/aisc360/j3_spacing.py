"""Chapter J, sections J3.4 and J3.6: how near and how far bolts may stand.

The least edge distance with its increment C_2 is a table and is kept with the holes, as
`minimum_edge_distance` of `gageline.steel`.
"""

from __future__ import annotations

from gageline.errors import ValueProblem
from gageline.strength.aisc360.standard import spec
from gageline.strength.check import Step, step
from gageline.strength.clause import provision
from gageline.strength.guard import not_negative, positive

__all__ = [
    "clear_between_holes",
    "clear_to_edge",
    "maximum_edge_distance",
    "maximum_spacing",
    "minimum_spacing",
]


@provision(spec("J3.4", "Minimum spacing"))
def minimum_spacing(d: float, d_h: float = 0.0) -> Step:
    """Least distance between centres of holes, along any line.

    Args:
        d: Bolt diameter, in.
        d_h: Size of the hole or slot along the line of centres, in; zero leaves out the rule on clear
            distance, which governs only in slots.

    Returns:
        s_min, in: 2 2/3 diameters, and a clear distance of a diameter between the holes. Three
        diameters are preferred.

    Source: Section J3.4; the rule on clear distance from memory.
    """
    positive(d=d)
    not_negative(d_h=d_h)
    return step("s_min", "max(8/3 d, d_h + d)", max(8 / 3 * d, d_h + d), "in", d=d, d_h=d_h)


@provision(spec("J3.6", "Maximum edge distance"))
def maximum_edge_distance(t: float) -> Step:
    """Most distance from the centre of a bolt to the nearest edge of a part in contact.

    Args:
        t: Thickness of the part, in.

    Returns:
        l_max, in.

    Source: Section J3.6.
    """
    positive(t=t)
    return step("l_max", "min(12 t, 6)", min(12 * t, 6.0), "in", t=t)


@provision(spec("J3.6", "Maximum spacing"))
def maximum_spacing(t: float, *, weathering: bool = False) -> Step:
    """Most distance between bolts that hold a plate to a shape or two plates together.

    Args:
        t: Thickness of the thinner part, in.
        weathering: Whether the steel is unpainted weathering steel open to the weather.

    Returns:
        s_max, in.

    Source: Section J3.6.
    """
    positive(t=t)
    if weathering:
        return step("s_max", "min(14 t, 7)", min(14 * t, 7.0), "in", t=t)
    return step("s_max", "min(24 t, 12)", min(24 * t, 12.0), "in", t=t)


@provision(spec("J3.11", "Clear distance to an edge"))
def clear_to_edge(l_e: float, d_h: float) -> Step:
    """Clear distance along the load from the edge of a hole to the edge of the part.

    Args:
        l_e: Distance from the centre of the hole to the edge, in.
        d_h: Size of the hole along the load, in.

    Returns:
        l_c, in.

    Raises:
        ValueProblem: The hole reaches over the edge.

    Source: Definition of l_c in Section J3.11.
    """
    positive(l_e=l_e, d_h=d_h)
    if l_e <= d_h / 2:
        raise ValueProblem(
            f"l_e = {l_e:g} in must be more than half the hole, {d_h / 2:g} in: move the hole from the edge"
        )
    return step("l_c", "l_e - d_h/2", l_e - d_h / 2, "in", l_e=l_e, d_h=d_h)


@provision(spec("J3.11", "Clear distance between holes"))
def clear_between_holes(s: float, d_h: float) -> Step:
    """Clear distance along the load between the edges of two holes.

    Args:
        s: Distance between the centres, in.
        d_h: Size of the holes along the load, in.

    Returns:
        l_c, in.

    Raises:
        ValueProblem: The holes run into each other.

    Source: Definition of l_c in Section J3.11.
    """
    positive(s=s, d_h=d_h)
    if s <= d_h:
        raise ValueProblem(f"s = {s:g} in must be more than the hole, {d_h:g} in: give the holes more pitch")
    return step("l_c", "s - d_h", s - d_h, "in", s=s, d_h=d_h)
