"""Beams with holes and openings: what the holes take away, and the openings that no clause here covers."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gageline.part import Face, HoleGroup, Opening, Part
from gageline.steel import Profile, Section
from gageline.strength.aisc360.d_tension import hole_for_net_area
from gageline.strength.aisc360.f_bars import rupture_at_holes
from gageline.strength.aisc360.j4_elements import shear_rupture
from gageline.strength.beams import SimpleBeam
from gageline.strength.check import Check, Method, step
from gageline.strength.loads import Combination, combinations, moment_along, shear_along
from gageline.strength.verdict import NotChecked
from gageline.units import System, write_length

__all__ = ["check_holes", "left_out_of_openings"]

_BEAMS = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_FLANGES = (Face.TOP, Face.BOTTOM)
_WEB = frozenset({Face.NEAR, Face.FAR})
_TOGETHER = 3.0  # in: lines of holes this near along the beam are taken in one section, without their stagger
_SAME_LINE = 1e-3
_Values = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Line:
    """The holes of one section across a flange or a web.

    Args:
        x: from the part's left end, in.
        cut: sum of the widths that they take out, each with its sixteenth, in.
    """

    x: float
    cut: float


def check_holes(part: Part, beam: SimpleBeam, method: Method) -> Iterator[Check]:
    """The worst section through the holes of a beam's tension flange, and of its web.

    Args:
        part: the beam as made.
        beam: the beam on its supports; it and the part have one middle.
        method: design method.

    Returns:
        Rupture of the tension flange with the moment there, and rupture of the net web with the shear there;
        none of what has no holes. Holes within 3 in along the beam count as one section, so that what a
        stagger gives back (Section B4.3b) is left away.

    Source: Sections F13.1 and J4.2(b).
    """
    section = beam.section
    b_f, t_f, d, t_w = (value.inches for value in (section.bf, section.tf, section.d, section.tw))
    bending = [
        check
        for face in _FLANGES
        for line in _lines(part, frozenset({face}))
        if (check := _flange(beam, line, face, (b_f, t_f), _shift(part, beam), method))
    ]
    tearing = [_web(beam, line, (d, t_w), _shift(part, beam), method) for line in _lines(part, _WEB)]
    for found in (bending, tearing):
        if found:
            yield max(found, key=lambda check: check.utilisation)


def _shift(part: Part, beam: SimpleBeam) -> float:
    """From the part's left end to its support, in."""
    return (beam.length - part.length.inches) / 2


def _lines(part: Part, faces: frozenset[Face]) -> list[_Line]:
    """Sections through the holes of some faces, one at each place along the part."""
    holes = [
        (hole.x.inches, hole.y.inches, _across(group, index))
        for group in part.groups
        if group.face in faces
        for index, hole in enumerate(group.holes)
    ]
    lines = []
    for x in sorted({round(x, 3) for x, _, _ in holes}):
        widest: dict[int, float] = {}
        for other, y, width in holes:
            if 0 <= other - x + _SAME_LINE < _TOGETHER:
                key = round(y / _SAME_LINE)
                widest[key] = max(widest.get(key, 0.0), width)
        lines.append(_Line(x, sum(hole_for_net_area(width) for width in widest.values())))
    return lines


def _across(group: HoleGroup, index: int) -> float:
    """What a hole takes of the width across the part, in; of a slot that leans its whole length."""
    hole = group.holes[index]
    return (hole.length if hole.angle else hole.width).inches


def _stations(beam: SimpleBeam, line: _Line, shift: float) -> _Values:
    """Where a section may stand on the span: as far to either side as the part and the span differ."""
    places = np.linspace(line.x + shift - abs(shift), line.x + shift + abs(shift) + _TOGETHER, 9)
    return np.clip(places, 0.0, beam.length)


def _most(method: Method, values: Callable[[Combination], _Values]) -> tuple[str, float]:
    """The combination of loads with the largest of some values, and that value."""
    most = {one.name: float(values(one).max()) for one in combinations(method)}
    name = max(most, key=lambda one: most[one])
    return name, most[name]


def _flange(
    beam: SimpleBeam, line: _Line, face: Face, flange: tuple[float, float], shift: float, method: Method
) -> Check | None:
    sign = 1.0 if face is Face.BOTTOM else -1.0
    x = _stations(beam, line, shift)
    name, M = _most(method, lambda one: sign * moment_along(beam.loads, beam.length, one, x))
    if M <= 0:
        return None
    b_f, t_f = flange
    gross = step("A_fg", "b_f t_f", b_f * t_f, "in²", b_f=b_f, t_f=t_f)
    net = step(
        "A_fn", "A_fg - t_f d_n", gross.value - t_f * line.cut, "in²", A_fg=gross.value, t_f=t_f, d_n=line.cut
    )
    strength = rupture_at_holes(
        beam.steel.F_y, beam.steel.F_u, gross.value, net.value, beam.section.Sx, beam.section.Zx
    )
    title = f"bending at the holes of the {face.value} flange, {line.x:.4g} in from the left end, {name}"
    return strength.after(gross, net).check(M, method, title)


def _web(beam: SimpleBeam, line: _Line, web: tuple[float, float], shift: float, method: Method) -> Check:
    x = _stations(beam, line, shift)
    name, V = _most(method, lambda one: np.abs(shear_along(beam.loads, beam.length, one, x)))
    d, t_w = web
    net = step("A_nv", "(d - d_n) t_w", (d - line.cut) * t_w, "in²", d=d, d_n=line.cut, t_w=t_w)
    title = f"shear at the holes of the web, {line.x:.4g} in from the left end, {name}"
    return shear_rupture(beam.steel.F_u, net.value).after(net).check(V, method, title)


def left_out_of_openings(mark: str, part: Part, system: System) -> Iterator[NotChecked]:
    """The openings of a beam, each with its place.

    Args:
        mark: of the piece.
        part: the beam.
        system: units of the job.
    """
    if not isinstance(part.stock, Section) or part.profile not in _BEAMS:
        return
    for opening in part.openings:
        where = "web" if opening.face in _WEB else f"{opening.face.value} flange"
        yield NotChecked(
            f"{mark}, shear and bending at the opening in its {where}, {_place(opening, system)}",
            "openings in beams are not covered: the checks of the beam take it as whole there",
        )


def _place(opening: Opening, system: System) -> str:
    unit = " mm" if system is System.MM else ""
    return f"{write_length(opening.x, system)}{unit} from its left end"
