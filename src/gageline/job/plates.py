"""Plates that stand on a face: single plates and stiffeners."""

from __future__ import annotations

from gageline.errors import ValueProblem
from gageline.job.axes import standing
from gageline.job.cutting import HoleMaker, sides
from gageline.job.fittings import PlateEntry, StiffenerEntry
from gageline.job.joining import Joined, grade_of, plate_stock, rows_down, web_face
from gageline.job.locating import columns, face_named
from gageline.job.practice import Practice
from gageline.part import (
    BoltSet,
    Clip,
    End,
    Face,
    Fitting,
    FittingKind,
    HoleGroup,
    Join,
    Part,
    Side,
    Vector,
    Weld,
    extent_y,
    extent_z,
    face_point,
)
from gageline.steel import Profile, Section
from gageline.units import ZERO, System, write_length

__all__ = ["join_plates", "join_stiffeners"]

_FLANGED = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_LYING = frozenset({Face.TOP, Face.BOTTOM})
_ALONG: Vector = (1, 0, 0)
_DOWN: Vector = (0, -1, 0)
_TOWARD: Vector = (0, 0, 1)


def join_plates(entry: PlateEntry, main: Part, practice: Practice, system: System) -> Joined:
    """A single plate standing on a face of the main part.

    Raises:
        ValueProblem: when the main part has no such face, or the place is not given right.
    """
    face = face_named(main.stock, entry.on)
    pitch, first = entry.pitch or practice.pitch, entry.end_distance or practice.end_distance
    rows = rows_down(first, entry.rows, pitch)
    length = entry.length or rows[-1] + first
    if length <= rows[-1]:
        raise ValueProblem(f"length holds no {entry.rows} rows: give a longer plate or leave length out")
    gage = entry.gage or entry.width / 2
    if gage >= entry.width:
        raise ValueProblem("gage is not less than width: give the distance from the face to the holes")
    stock = plate_stock(entry.thickness, entry.width, system)
    maker = HoleMaker.of(entry, practice)
    group = HoleGroup("bolt holes", Face.FACE, maker.grid(rows, (gage,)), maker.bolt, maker.kind)
    part = Part(entry.mark or "", stock, grade_of(stock, entry.grade), length, groups=(group,))
    (x,) = columns(entry.from_, (entry.x,), main.length, {})
    runs = entry.runs or ("along" if face in _LYING else "across")
    if runs == "along":
        y = entry.offset if face in _LYING else extent_y(main.stock)[1] / 2 + entry.offset
        along, foot = _ALONG, face_point(main.stock, face, x - length / 2, y)
    else:
        along = _DOWN if face not in _LYING else _TOWARD
        start = extent_y(main.stock)[1] - (practice.drop if entry.drop is None else entry.drop) + first
        foot = face_point(main.stock, face, x, start if face not in _LYING else -length / 2)
    placement = standing(face, along, foot, entry.thickness)
    name = f"{face} plate, {write_length(entry.x, system, 64)} from {entry.from_}"
    weld = Weld(name, entry.weld or practice.weld, length, 2, "both sides of the plate")
    bolts = BoltSet((name,), maker.bolt, entry.rows, None, field=True)
    return Joined(
        (Fitting(name, FittingKind.PLATE, part, placement, face, None, Join.WELDED),), (weld,), (bolts,)
    )


def join_stiffeners(entry: StiffenerEntry, main: Part, practice: Practice, system: System) -> Joined:
    """Stiffeners on one side or both sides of a web.

    Raises:
        ValueProblem: when the main part has no flanges, or the place is not given right.
    """
    section = main.stock
    if not isinstance(section, Section) or section.profile not in _FLANGED:
        raise ValueProblem(f"{section.designation} has no web between flanges: stiffeners need one")
    far, near = extent_z(section)
    (x,) = columns(entry.from_, (entry.x,), main.length, {})
    clear = section.d - section.tf * 2
    length = entry.length or clear
    if length > clear:
        raise ValueProblem("length is more than the clear depth between the flanges: leave it out")
    clip = entry.clip if entry.clip is not None else (section.k1 or section.tw) - section.tw / 2
    fittings, welds = [], []
    for side in sides(entry.sides):
        face = web_face(side)
        level = face_point(section, face, ZERO, ZERO)[2]
        room = near - level if side is Side.NEAR else level - far
        width = entry.width or room
        if room <= ZERO:
            raise ValueProblem(f"{section.designation} has no flange on the {side} side: give the other side")
        stock = plate_stock(entry.thickness, width, system)
        corners = tuple(Clip(end, Face.BOTTOM, clip, clip) for end in End) if clip else ()
        part = Part(entry.mark or "", stock, grade_of(stock, entry.grade), length, clips=corners)
        placement = standing(face, _DOWN, (x, section.d - section.tf, level), entry.thickness)
        name = f"{side} stiffener, {write_length(entry.x, system, 64)} from {entry.from_}"
        fittings.append(Fitting(name, FittingKind.STIFFENER, part, placement, face, None, Join.WELDED))
        runs = length - clip * 2
        welds.append(Weld(name, entry.weld or practice.weld, runs, 2, "both sides, to the web"))
        welds.append(Weld(name, entry.weld or practice.weld, width - clip, 4, "both sides, to both flanges"))
    return Joined(tuple(fittings), tuple(welds))
