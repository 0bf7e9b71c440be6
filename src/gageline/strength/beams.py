"""Simple beams: bending with an unbraced length, shear and deflection. No analysis of a frame.

For the person who sized the beam: one span on two supports, bent about its strong axis, loads in the plane of
its web. Ponding, vibration, torsion and concentrated forces on the web are not checked here.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from gageline.errors import ValueProblem
from gageline.steel import Profile, Section
from gageline.strength.aisc360.f_flexure import channel_c, moment_gradient, strong_axis_flexure
from gageline.strength.aisc360.g_shear import web_shear
from gageline.strength.aisc360.standard import E, manual
from gageline.strength.check import Check, Method, Step, Strength, found, step
from gageline.strength.connection import Material
from gageline.strength.guard import positive
from gageline.strength.loads import (
    Case,
    Combination,
    Load,
    combinations,
    moment_along,
    shear_along,
)

__all__ = ["SimpleBeam", "check_beam", "largest_uniform_load"]

Array = NDArray[np.float64]
_ROLLED = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_STATIONS = 481
_SERVICE = {"live": Combination("L + Lr", 0.0, 1.0, 1.0), "total": Combination("D + L + Lr", 1.0, 1.0, 1.0)}
_DEFLECTION = manual("Table 3-23", "Deflection of a simple beam")


@dataclass(frozen=True, slots=True)
class SimpleBeam:
    """A beam on two supports.

    Args:
        section: a rolled I-shape or channel.
        steel: its steel.
        length: between its supports, in.
        loads: on it, without factors.
        unbraced: length between braces of its top flange, in; None for the whole length.
        live_limit: 360 where live load may deflect it by its length/360; None for no limit.
        total_limit: the same for all load.
    """

    section: Section
    steel: Material
    length: float
    loads: tuple[Load, ...]
    unbraced: float | None = None
    live_limit: int | None = None
    total_limit: int | None = None

    def __post_init__(self) -> None:
        positive(length=self.length)
        if self.section.profile not in _ROLLED:
            raise ValueProblem(
                f"{self.section.designation} is no rolled I-shape or channel: "
                "the check of a simple beam covers no other"
            )


def _numbers(section: Section) -> tuple[float, float, float, float]:
    """d, t_w, h/t_w and the slenderness of the flange."""
    d, t_w, b_f, t_f = (value.inches for value in (section.d, section.tw, section.bf, section.tf))
    k = (section.kdes or section.kdet or section.tf).inches
    flange = b_f / t_f if section.profile is Profile.CHANNEL else b_f / (2 * t_f)
    return d, t_w, (d - 2 * k) / t_w, flange


def _torsion(section: Section) -> tuple[float, float, float]:
    """J, r_ts and h_o, the last two worked out where the tables of a section leave them out.

    Source: Equation F2-7 for r_ts; h_o between the middles of the flanges.
    """
    h_o = section.ho or (section.d - section.tf).inches
    r_ts = section.rts
    if r_ts is None and section.Cw is not None:
        r_ts = math.sqrt(math.sqrt(section.Iy * section.Cw) / section.Sx)
    if section.J is None or r_ts is None:
        raise ValueProblem(
            f"the tables give no J and C_w of {section.designation}: its buckling is not covered"
        )
    return section.J, r_ts, h_o


def _flexure(section: Section, steel: Material, L_b: float, C_b: float) -> Strength:
    _, _, h_tw, flange = _numbers(section)
    J, r_ts, h_o = _torsion(section)
    c = 1.0
    if section.profile is Profile.CHANNEL and section.Cw:
        c = channel_c(h_o, section.Iy, section.Cw).value
    return min(
        strong_axis_flexure(
            steel.F_y,
            L_b,
            lam_f=flange,
            h_tw=h_tw,
            Z_x=section.Zx,
            S_x=section.Sx,
            r_y=section.ry,
            r_ts=r_ts,
            J=J,
            h_o=h_o,
            C_b=C_b,
            c=c,
        ),
        key=lambda strength: strength.nominal,
    )


def _shear(section: Section, steel: Material) -> Strength:
    d, t_w, h_tw, _ = _numbers(section)
    rolled_i = section.profile is Profile.I_SHAPE
    return web_shear(steel.F_y, d, t_w, h_tw, rolled_i=rolled_i)


def largest_uniform_load(section: Section, steel: Material, length: float, method: Method) -> float:
    """The largest total uniform load of a simple beam whose top flange is braced all along.

    Args:
        section: of the beam.
        steel: its steel.
        length: between its supports, in.
        method: design method.

    Returns:
        Total load, kips: by bending, at most twice the shear strength.

    Source: Manual Table 3-6; half of it is the end reaction that the Manual suggests where none is given.
    """
    positive(length=length)
    moment = _flexure(section, steel, 0.0, 1.0).available(method)
    return min(8 * moment / length, 2 * _shear(section, steel).available(method))


def check_beam(beam: SimpleBeam, method: Method) -> tuple[Check, ...]:
    """Bending, shear and deflection of a simple beam.

    Args:
        beam: the beam.
        method: design method.

    Returns:
        The check of the worst stretch between braces, of shear, and of the deflections that have a limit.

    Raises:
        ValueProblem: no loads, a load beyond the beam, or a section outside the clauses.

    Source: Sections F2, F3 and G2.1; deflection by integrating the moment twice.
    """
    if not beam.loads:
        raise ValueProblem("the beam has 0 loads: give its loads to check it")
    x = np.unique(np.concatenate([np.linspace(0.0, beam.length, _STATIONS), _places(beam)]))
    return (_worst_bending(beam, method), _worst_shear(beam, x, method), *_deflections(beam, x))


def _places(beam: SimpleBeam) -> Array:
    return np.array([place for load in beam.loads for place in (load.start, load.end) if place is not None])


def _worst_bending(beam: SimpleBeam, method: Method) -> Check:
    stretch = beam.unbraced or beam.length
    edges = np.append(np.arange(0.0, beam.length - 1e-6, stretch), beam.length)
    found = [
        check
        for combination in combinations(method)
        for low, high in pairwise(edges)
        if (check := _bending(beam, combination, (float(low), float(high)), method))
    ]
    return max(found, key=lambda check: check.utilisation)


def _bending(
    beam: SimpleBeam, combination: Combination, span: tuple[float, float], method: Method
) -> Check | None:
    low, high = span
    inside = _places(beam)
    x = np.unique(
        np.concatenate([np.linspace(low, high, _STATIONS), inside[(inside > low) & (inside < high)]])
    )
    moment = np.abs(moment_along(beam.loads, beam.length, combination, x))
    largest = float(moment.max())
    if largest <= 0:
        return None
    quarters = np.linspace(low, high, 5)[1:4]
    A, B, C = np.abs(moment_along(beam.loads, beam.length, combination, quarters))
    gradient = moment_gradient(largest, float(A), float(B), float(C))
    braced = beam.unbraced == 0.0
    strength = _flexure(beam.section, beam.steel, 0.0 if braced else high - low, gradient.value)
    check = strength.check(largest, method, f"bending of the beam, {_called(beam, combination.name)}")
    return Check(
        check.clause, check.title, check.demand, check.capacity, check.unit, (gradient, *check.steps)
    )


def _called(beam: SimpleBeam, name: str) -> str:
    """The name of a combination; loads that are given with their factors are in none."""
    return "as given" if {load.case for load in beam.loads} == {Case.GIVEN} else name


def _worst_shear(beam: SimpleBeam, x: Array, method: Method) -> Check:
    strength = _shear(beam.section, beam.steel)
    demands = {
        combination.name: float(np.abs(shear_along(beam.loads, beam.length, combination, x)).max())
        for combination in combinations(method)
    }
    name = max(demands, key=lambda name: demands[name])
    return strength.check(demands[name], method, f"shear of the beam, {_called(beam, name)}")


def _deflections(beam: SimpleBeam, x: Array) -> Iterator[Check]:
    for name, limit in (("live", beam.live_limit), ("total", beam.total_limit)):
        if limit is None:
            continue
        sag = tuple(_sag(beam, x, _SERVICE[name]))
        most, allowed = sag[-1].value, beam.length / limit
        bound = step("Δ_max", "L/n", allowed, "in", L=beam.length, n=float(limit))
        yield Check(_DEFLECTION, f"deflection under {name} load", most, allowed, "in", (*sag, bound))


def _sag(beam: SimpleBeam, x: Array, combination: Combination) -> Iterator[Step]:
    """The largest deflection with its working: by the formula of a uniform load, else from the moments.

    Source: Manual Table 3-23, case 1; else the conjugate beam: the deflection is the moment that the diagram
    of M as a load gives, over EI.
    """
    I_x = beam.section.Ix
    w = _uniform(beam, combination)
    if w is not None:
        yield found("w", w, "kip/in", f"{combination.name}, all along the beam")
        sag = 5 * w * beam.length**4 / (384 * E * I_x)
        yield step("Δ", "5 w L^4/(384 E I_x)", sag, "in", w=w, L=beam.length, E=E, I_x=I_x)
        return
    at, Q = _conjugate(beam, x, combination)
    yield found("x", at, "in", "from the left support, where it is largest")
    yield found("Q", Q, "kip-in³", f"moment at x of the diagram of M under {combination.name} as a load")
    yield step("Δ", "Q/(E I_x)", Q / (E * I_x), "in", Q=Q, E=E, I_x=I_x)


def _uniform(beam: SimpleBeam, combination: Combination) -> float | None:
    """The load along the beam in a combination, kip/in; None where it is not one all along."""
    counted = [load for load in beam.loads if combination.factor(load.case)]
    whole = [load for load in counted if load.end is not None and load.end - load.start >= beam.length - 1e-6]
    if not counted or len(whole) < len(counted):
        return None
    return sum(combination.factor(load.case) * load.amount for load in counted)


def _conjugate(beam: SimpleBeam, x: Array, combination: Combination) -> tuple[float, float]:
    """Where a beam is deflected most, in, and the moment there of its M as a load, kip-in³.

    M is integrated twice, step by step between some thousand places, to a part in 100,000.
    """
    grid = np.union1d(x, (x[1:] + x[:-1]) / 2)
    curve = moment_along(beam.loads, beam.length, combination, grid)
    steps = np.diff(grid)
    slope = np.concatenate([[0.0], np.cumsum((curve[1:] + curve[:-1]) / 2 * steps)])
    fall = np.concatenate([[0.0], np.cumsum((slope[:-1] + (2 * curve[:-1] + curve[1:]) / 6 * steps) * steps)])
    moments = np.abs(fall[-1] / beam.length * grid - fall)
    most = int(moments.argmax())
    return float(grid[most]), float(moments[most])
