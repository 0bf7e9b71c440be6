"""Areas of fittings and webs through their holes, with how they were found written before the strength."""

from __future__ import annotations

from gageline.errors import ValueProblem
from gageline.strength.aisc360.d_tension import hole_for_net_area
from gageline.strength.aisc360.j4_elements import block_shear, shear_rupture, shear_yielding
from gageline.strength.check import Step, Strength, step
from gageline.strength.connection import Bolted, Fitting, Holes, Material

__all__ = ["block_through_bolts", "gross_shear", "net_hole", "net_shear", "pulled_areas"]


def gross_shear(steel: Material, L: float, t: float, count: int = 1) -> Strength:
    """Shear yielding of parts over their whole length.

    Args:
        steel: of the parts.
        L: length along the reaction, in.
        t: thickness of one, in.
        count: how many stand side by side.

    Source: Section J4.2(a).
    """
    area = step("A_gv", "c L t", count * L * t, "in²", c=count, L=L, t=t)
    return shear_yielding(steel.F_y, area.value).after(area)


def net_shear(fitting: Fitting, joint: Bolted | None, count: int) -> Strength:
    """Shear rupture of angles or a plate through a column of holes, or over the whole length without holes.

    Args:
        fitting: the fitting.
        joint: whose holes weaken it; None where it is welded.
        count: how many stand side by side.

    Source: Section J4.2(b), holes as Section B4.3b.
    """
    L, t = fitting.length, fitting.t
    if joint is None:
        area = step("A_nv", "c L t", count * L * t, "in²", c=count, L=L, t=t)
        return shear_rupture(fitting.steel.F_u, area.value).after(area)
    holes = joint.rows * hole_for_net_area(joint.holes.along)
    if holes >= L:
        raise ValueProblem(
            f"{joint.rows} holes take {holes:g} in of the {L:g} in of "
            f"{fitting.name}: use fewer rows or a longer fitting"
        )
    hole = net_hole(joint.holes.along)
    given = {"c": count, "L": L, "n": joint.rows, "d_n": hole.value, "t": t}
    area = step("A_nv", "c (L - n d_n) t", count * (L - holes) * t, "in²", **given)
    return shear_rupture(fitting.steel.F_u, area.value).after(hole, area)


def block_through_bolts(
    steel: Material, t: float, joint: Bolted, holes: Holes, lengths: tuple[float, float]
) -> Strength:
    """Block shear down a column of holes and out to the side.

    Args:
        steel: of the part.
        t: its thickness, of all parts side by side, in.
        joint: whose bolts pull the block out.
        holes: of the part.
        lengths: along the reaction to the end, and across it to the edge, from the farthest bolt, in.

    Source: Section J4.3; U_bs 0.5 with two columns or more as in a coped beam.
    """
    L_v, L_t = lengths
    n, m = joint.rows - 0.5, joint.columns - 0.5
    upright, level = _holes(holes)
    gross = step("A_gv", "L_v t", L_v * t, "in²", L_v=L_v, t=t)
    net, pulled = _net("A_nv", L_v, n, upright, t), _net("A_nt", L_t, m, level, t)
    U_bs = 1.0 if joint.columns == 1 else 0.5
    strength = block_shear(steel.F_y, steel.F_u, gross.value, net.value, pulled.value, U_bs)
    return strength.after(*dict.fromkeys((upright, level)), gross, net, pulled)


def pulled_areas(
    t: float, holes: Holes, shear: tuple[float, float], tension: tuple[float, float], lines: int
) -> tuple[Step, ...]:
    """The areas of a block that is pulled along its rows.

    Args:
        t: thickness of the part, in.
        holes: of the part.
        shear: length of a sheared line to the edge, in, and the holes on it.
        tension: length of the torn line, in, and the holes on it.
        lines: how many lines are sheared.

    Returns:
        The working, its last lines A_gv, A_nv and A_nt.
    """
    L, n = shear
    upright, level = _holes(holes)
    gross = step("A_gv", "c L t", lines * L * t, "in²", c=lines, L=L, t=t)
    given = {"c": lines, "L": L, "n": n, level.symbol: level.value, "t": t}
    net = step("A_nv", f"c (L - n {level.symbol}) t", lines * (L - n * level.value) * t, "in²", **given)
    return *dict.fromkeys((upright, level)), gross, net, _net("A_nt", *tension, upright, t)


def net_hole(d_h: float, symbol: str = "d_n") -> Step:
    """Width that a hole takes out of a net area.

    Args:
        d_h: size of the hole across that area, in.
        symbol: what it is called.

    Source: Section B4.3b.
    """
    return step(symbol, "d_h + 1/16", hole_for_net_area(d_h), "in", d_h=d_h)


def _holes(holes: Holes) -> tuple[Step, Step]:
    """What holes take out along the reaction and across it; one line where they are round."""
    upright = net_hole(holes.along)
    return upright, upright if holes.across == holes.along else net_hole(holes.across, "d_t")


def _net(symbol: str, L: float, n: float, hole: Step, t: float) -> Step:
    given = {"L": L, "n": n, hole.symbol: hole.value, "t": t}
    return step(symbol, f"(L - n {hole.symbol}) t", (L - n * hole.value) * t, "in²", **given)
