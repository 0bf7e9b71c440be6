"""Plates that stand on a face: single plates and stiffeners."""

from __future__ import annotations

from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.job.axes import standing
from gageline.job.cutting import HoleMaker, flanged_sides
from gageline.job.fittings import PlateEntry, StiffenerEntry
from gageline.job.joining import Joined, field_bolts, grade_of, plate_stock, rows_down, web_face
from gageline.job.locating import columns, face_named, where_along
from gageline.job.practice import Practice
from gageline.job.wording import say
from gageline.part import (
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
    extent_z,
    face_point,
    face_range,
)
from gageline.steel import Plate, Profile, Section
from gageline.units import ZERO, Length, System, round_down, round_up

__all__ = ["join_plates", "join_stiffeners"]

_STOOD_ON = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.TEE, Profile.BOX, Profile.TUBE})
_FLANGED = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_LYING = frozenset({Face.TOP, Face.BOTTOM})
_ALONG: Vector = (1, 0, 0)
_DOWN: Vector = (0, -1, 0)
_TOWARD: Vector = (0, 0, 1)
_WIDTHS = {System.FT_IN: Length.from_inches(Fraction(1, 4)), System.MM: Length.from_mm(5)}
_SAWN = {System.FT_IN: Length.from_inches(Fraction(1, 16)), System.MM: Length.from_mm(1)}
"""Plates are cut to these, so that a stiffener goes in between the flanges (common practice, no source)."""


def join_plates(entry: PlateEntry, main: Part, practice: Practice, system: System) -> Joined:
    """A single plate standing on a face of the main part.

    Raises:
        ValueProblem: when the main part has no such face, or the place is not given right.
    """
    section = main.stock
    if section.profile not in _STOOD_ON:
        raise ValueProblem(f"{section.designation} takes no plate on it: plates stand on W, C, tee and HSS")
    face = face_named(section, entry.on)
    lying = face in _LYING
    runs = entry.runs or ("along" if lying or section.profile is Profile.TUBE else "across")
    if section.profile is Profile.TUBE and (runs != "along" or entry.offset):
        raise ValueProblem(
            f'{section.designation} is round: a plate stands on it with runs = "along" and no offset'
        )
    drops = runs == "across" and not lying
    if (entry.offset if drops else entry.drop) is not None:
        wrong, right = ("offset", "drop") if drops else ("drop", "offset")
        raise ValueProblem(f"{wrong} does not place a plate that runs {runs} the {face} face: give {right}")
    part, maker, first = _single_plate(entry, practice, system)
    (x,) = columns(entry.from_, (entry.x,), main.length, {})
    low, high = face_range(section, face)
    y = low + (high - low) / 2 + (entry.offset or ZERO)
    if runs == "along":
        along, foot = _ALONG, face_point(section, face, x - part.length / 2, y)
    elif lying:
        along, foot = _TOWARD, face_point(section, face, x, y - part.length / 2)
    else:
        start = high - (practice.drop if entry.drop is None else entry.drop) + first
        along, foot = _DOWN, face_point(section, face, x, start)
    name = f"{face} plate, {where_along(entry.from_, entry.x, practice.tape, system)}"
    placement = standing(face, along, foot, entry.thickness)
    fitting = Fitting(name, FittingKind.PLATE, part, placement, face, None, Join.WELDED)
    weld = Weld(name, entry.weld or practice.weld, part.length, 2, "both sides of the plate", both_sides=True)
    return Joined((fitting,), (weld,), field_bolts((name,), maker.bolt, entry.rows))


def _single_plate(entry: PlateEntry, practice: Practice, system: System) -> tuple[Part, HoleMaker, Length]:
    """The plate lying flat, its holes, and its first row from its upper or left end."""
    pitch, first = entry.pitch or practice.pitch, entry.end_distance or practice.end_distance
    rows = rows_down(first, entry.rows, pitch)
    length = entry.length or rows[-1] + first
    if length <= rows[-1]:
        raise ValueProblem(
            f"length {say(length, system)} ends before the last of {len(rows)} rows, "
            f"at {say(rows[-1], system)}: give a longer plate or leave length out"
        )
    gage = entry.gage or entry.width / 2
    if gage >= entry.width:
        raise ValueProblem(
            f"gage {say(gage, system)} is not less than width {say(entry.width, system)}: "
            "give the distance from the face to the holes"
        )
    stock = plate_stock(entry.thickness, entry.width, system)
    maker = HoleMaker.of(entry, practice)
    group = HoleGroup("bolt holes", Face.FACE, maker.grid(rows, (gage,)), maker.bolt, maker.kind)
    part = Part(entry.mark or "", stock, grade_of(stock, entry.grade), length, groups=(group,))
    return part, maker, first


def join_stiffeners(entry: StiffenerEntry, main: Part, practice: Practice, system: System) -> Joined:
    """Stiffeners on one side or both sides of a web.

    Raises:
        ValueProblem: when the main part has no flanges, or the place is not given right.
    """
    section = main.stock
    if not isinstance(section, Section) or section.profile not in _FLANGED:
        raise ValueProblem(f"{section.designation} has no web between flanges: stiffeners need one")
    (x,) = columns(entry.from_, (entry.x,), main.length, {})
    chosen = flanged_sides(entry.sides, section)
    placed = [_stiffener(entry, section, side, system) for side in chosen]
    where = where_along(entry.from_, entry.x, practice.tape, system)
    fittings: list[Fitting] = []
    welds: list[Weld] = []
    for part, side in zip(placed, chosen, strict=True):
        face, name = web_face(side), f"{side} stiffener, {where}"
        foot = face_point(section, face, x, section.d - _flange_beyond(section, _clip_of(part)))
        placement = standing(face, _DOWN, foot, entry.thickness)
        fittings.append(Fitting(name, FittingKind.STIFFENER, part, placement, face, None, Join.WELDED))
        welds.extend(_stiffener_welds(name, part, section, entry.weld or practice.weld, _SAWN[system]))
    return Joined(tuple(fittings), tuple(welds))


def _stiffener(entry: StiffenerEntry, section: Section, side: Side, system: System) -> Part:
    """A stiffener as it lies, its foot on the web along its bottom edge."""
    far, near = extent_z(section)
    level = face_point(section, web_face(side), ZERO, ZERO)[2]
    width = entry.width or _shop_width(near - level if side is Side.NEAR else level - far, system)
    clip = _fillet_clip(section, system) if entry.clip is None else entry.clip
    clear = section.d - _flange_beyond(section, clip) * 2
    length = entry.length or round_down(clear, _SAWN[system])
    if length > clear:
        raise ValueProblem(
            f"length {say(length, system)} is more than the clear depth {say(clear, system)} "
            "between the flanges: leave it out"
        )
    if clip >= width or clip * 2 >= length:
        raise ValueProblem(
            f"clip {say(clip, system)} leaves nothing of a stiffener {say(width, system)} by "
            f"{say(length, system)}: give a smaller clip"
        )
    stock = plate_stock(entry.thickness, width, system)
    corners = tuple(Clip(end, Face.BOTTOM, clip, clip) for end in End) if clip else ()
    return Part(entry.mark or "", stock, grade_of(stock, entry.grade), length, clips=corners)


def _shop_width(room: Length, system: System) -> Length:
    """The widest plate up to the flange's edge, in steps of 1/4 in or 5 mm (common practice, no source)."""
    return round_down(room, _WIDTHS[system]) or room


def _fillet_clip(section: Section, system: System) -> Length:
    """What clears the fillet both ways, up to the next 1/4 in or 5 mm (common practice, no source)."""
    k = section.kdet or section.kdes or section.tf
    up = k - section.tf
    out = section.k1 - section.tw / 2 if section.k1 else up
    return round_up(max(up, out), _WIDTHS[system])


def _clip_of(part: Part) -> Length:
    return part.clips[0].along if part.clips else ZERO


def _flange_beyond(section: Section, clip: Length) -> Length:
    """How thick the flange is where a stiffener begins to touch it, past its clip; more where it tapers."""
    sides_of_web = 1 if section.profile is Profile.CHANNEL else 2
    overhang = (section.bf - section.tw) / sides_of_web
    run = overhang - (section.taper_run or overhang) - clip
    rise = Length.from_inches(run.inches * (section.flange_slope or 0.0))
    return section.tf + max(rise, ZERO)


def _stiffener_welds(name: str, part: Part, section: Section, size: Length, gap: Length) -> tuple[Weld, Weld]:
    """To the web, and to the flanges that it reaches but for less than a division of the saw's stop."""
    clip = _clip_of(part)
    reaches = section.d - _flange_beyond(section, clip) * 2 - part.length < gap
    flanges, runs = ("both flanges", 4) if reaches else ("the top flange", 2)
    width = part.stock.width if isinstance(part.stock, Plate) else ZERO
    return (
        Weld(name, size, part.length - clip * 2, 2, "both sides, to the web", both_sides=True),
        Weld(name, size, width - clip, runs, f"both sides, to {flanges}", both_sides=True),
    )
