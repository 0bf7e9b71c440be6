"""The views along a piece, one over the other at one scale: flange plan, elevation, bottom."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely

from gageline.errors import GagelineError, ValueProblem
from gageline.part import Assembly, End, Face, Part, face_range
from gageline.sheets.breaks import BrokenScale, broken_scale
from gageline.sheets.labels import Side
from gageline.sheets.lining import Lining
from gageline.sheets.long_view import (
    NAME_ROOM,
    TRIANGLE,
    bevel_triangle,
    long_view,
    overall_lengths,
    row_room,
)
from gageline.sheets.measured import Measured, measure, shows
from gageline.sheets.notation import Scribe
from gageline.sheets.panels import Panel, panel, under
from gageline.sheets.scales import Scale
from gageline.sheets.scene import Item
from gageline.sheets.sight import BOTTOM, ELEVATION, TOP, Picture, View, look
from gageline.sheets.slabs import slabs_of_fitting, slabs_of_main
from gageline.sheets.weld_arrows import weld_arrows
from gageline.steel import Plate, Profile
from gageline.units import Slope, System

__all__ = ["Sighting", "picture_of", "sightings", "stick_views"]

_GAP = 4.0
_FLANGED = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.TEE})
_NAMES = {TOP: "Top", ELEVATION: "Near side", BOTTOM: "Bottom"}
_EDGE = 2.0
_TEXTS = 8.0
"""mm: a view with its dimensions is higher than its steel by at least this."""
_WHOLE_TO = 16
_LEAST = 60.0
"""mm: no piece is drawn on less than this along it."""
_ASIDE = 13.0
_HALF_TEXT = 5.0
_DEPTH_ROOM = 9.0


@dataclass(frozen=True, slots=True, eq=False)
class Sighting:
    """A view along a piece and what is said of it."""

    view: View
    name: str
    picture: Picture
    measured: Measured


def picture_of(assembly: Assembly, view: View) -> Picture:
    """A view along a piece with all its fittings."""
    fittings = (slab for fitting in assembly.fittings for slab in slabs_of_fitting(fitting, view.axis))
    return look([*slabs_of_main(assembly, view.axis), *fittings], view)


def sightings(assembly: Assembly, scribe: Scribe) -> list[Sighting]:
    """The views that a piece needs, from the top down.

    Args:
        assembly: the piece.
        scribe: writes in the units of the job.
    """
    profile = assembly.main.profile
    views = [ELEVATION]
    if profile in _FLANGED or shows(assembly, TOP):
        views.insert(0, TOP)
    if shows(assembly, BOTTOM):
        views.append(BOTTOM)
    return [
        Sighting(
            view, _name(assembly, view, scribe), picture_of(assembly, view), measure(assembly, view, scribe)
        )
        for view in views
    ]


def _name(assembly: Assembly, view: View, scribe: Scribe) -> str:
    main = assembly.main
    if main.profile is Profile.ANGLE:
        low, high = face_range(main.stock, Face.LEG_A if view is ELEVATION else Face.LEG_B)
        leg = high - low
        return f"{scribe.tell(leg)} leg"
    return "" if main.profile is Profile.PLATE else _NAMES[view]


def stick_views(
    assembly: Assembly,
    seen: Sequence[Sighting],
    scribe: Scribe,
    room: tuple[float, float],
    choice: Sequence[Scale],
    *,
    detail: bool = False,
) -> tuple[Panel, Scale]:
    """Set the views of a piece at the largest scale that they have room for.

    Args:
        assembly: the piece.
        seen: its views from the top down.
        scribe: writes in the units of the job.
        room: width and height for them all, mm.
        choice: scales from the largest down; the last is taken where none has room.
        detail: a fitting by itself: not broken while it need not be, and without overall lengths.

    Returns:
        The views, and their scale.

    Raises:
        GagelineError: when even the smallest scale cannot be drawn.
    """
    best: tuple[Panel, Scale] | None = None
    trouble: ValueProblem | None = None
    for scale in choice:
        steel = sum(one.picture.bounds[3] - one.picture.bounds[1] for one in seen) * scale.paper
        if steel + _TEXTS * len(seen) > room[1] and scale is not choice[-1]:
            continue
        along = _along(assembly, seen, room[0], scale)
        if along is None or (detail and along.gaps and scale.one_to < _WHOLE_TO):
            continue
        try:
            made = _set(assembly, seen, scribe, room[0], along, overall=not detail)
        except ValueProblem as problem:
            trouble = problem
            continue
        best = made, scale
        if made.box.height <= room[1]:
            break
    if best is None:
        raise GagelineError(f"piece {assembly.mark} cannot be drawn on this paper") from trouble
    return best


def _along(assembly: Assembly, seen: Sequence[Sighting], width: float, scale: Scale) -> BrokenScale | None:
    """How the piece lies along the paper; None where it is too long for the scale even when broken."""
    main = assembly.main
    left, right = (room + _EDGE for room in _row_rooms(seen, scale.paper))
    left += (NAME_ROOM if any(one.name for one in seen) else 0.0) + _triangle_room(main, End.LEFT)
    right += (_DEPTH_ROOM if isinstance(main.stock, Plate) else 0.0) + _triangle_room(main, End.RIGHT)
    if width - left - right < _LEAST:
        return None
    along = broken_scale(sorted(_places(seen)), left, width - left - right, wanted=scale.paper)
    return along if along.scale > scale.paper * 0.999 else None


def _set(
    assembly: Assembly,
    seen: Sequence[Sighting],
    scribe: Scribe,
    width: float,
    along: BrokenScale,
    *,
    overall: bool,
) -> Panel:
    """The views one over the other."""
    main = assembly.main
    panels = []
    for one in seen:
        lining = Lining(one.picture, along)
        elevation = one.view is ELEVATION
        drawn = long_view(
            lining,
            one.measured,
            one.name,
            (0.0, width),
            notes=Side.BELOW if one.view is TOP else Side.ABOVE,
            overall=overall_lengths(assembly, scribe) if elevation and overall else (),
            depth=scribe.tell(main.stock.width) if isinstance(main.stock, Plate) else "",
        )
        if elevation:
            triangles = _triangles(main, lining, _row_rooms(seen, along.scale), scribe)
            drawn = panel([*drawn.items, *triangles], drawn.name)
            arrows = weld_arrows(assembly, lining, drawn.items, drawn.box, scribe) if overall else []
            drawn = panel([*drawn.items, *arrows], drawn.name)
        panels.append(drawn)
    return under(panels, _GAP)


def _places(seen: Sequence[Sighting]) -> set[float]:
    """Where something is to be seen along the piece."""
    places: set[float] = set()
    for one in seen:
        for shape in (one.picture.visible, one.picture.hidden):
            places.update(round(float(u), 3) for u in shapely.get_coordinates(shape)[:, 0])
        for sighted in one.picture.bores:
            u, half = sighted.bore.at[0], sighted.bore.length / 2
            places.update((round(u - half, 3), round(u + half, 3)))
        places.update(round(u, 3) for axis in one.picture.axes for u, _ in axis)
        places.update(round(u, 3) for u, _ in one.measured.stations)
    return places


def _row_rooms(seen: Sequence[Sighting], scale: float) -> tuple[float, float]:
    """How far the rows of all views reach out at the left and at the right of the steel, mm."""
    left = max(row_room(one.picture, one.measured.left, scale) for one in seen)
    return left, max(row_room(one.picture, one.measured.right, scale) for one in seen)


def _triangle_room(main: Part, end: End) -> float:
    return _ASIDE + TRIANGLE + _HALF_TEXT if main.cut(end).bevel else 0.0


def _triangles(main: Part, lining: Lining, rows: tuple[float, float], scribe: Scribe) -> Iterator[Item]:
    for end in End:
        slope = main.cut(end).bevel
        if slope:
            x = lining.ends[0] - rows[0] - _ASIDE if end is End.LEFT else lining.ends[1] + rows[1] + _ASIDE
            y = 0.0 if slope.ratio > 0 else lining.height
            yield from bevel_triangle(slope, end, (x, y), _legs(slope, scribe.system))


def _legs(slope: Slope, system: System) -> tuple[str, str]:
    """The texts of a bevel's level and upright leg: rise and 12, or millimetres on 100."""
    ratio = abs(slope.ratio)
    if system is System.MM:
        legs = (100 * ratio, 100) if ratio <= 1 else (100, 100 / ratio)
        return f"{float(legs[0]):.1f}".removesuffix(".0"), f"{float(legs[1]):.1f}".removesuffix(".0")
    words = slope.bevel_text().split(" in ")
    return words[0], words[1]
