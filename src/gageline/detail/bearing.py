"""Beams on top of columns: cap plates, the bolts through them, and stiffeners over the column."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from gageline.detail.carrier import Carrier
from gageline.detail.clearances import Gap, beside, room_for, to_fillet
from gageline.detail.flange import flange_gage
from gageline.detail.line import Line
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop
from gageline.detail.space import Vec, along, cross, dot
from gageline.detail.stick import EndPlane
from gageline.detail.supports import Bearing
from gageline.detail.wrench import Wrench, wrench_of
from gageline.job import ColumnEntry, ColumnPlateEntry, HoleMaker, HoleSize, StiffenerEntry, join_stiffeners
from gageline.part import Face, Finding, FittingKind, Severity
from gageline.steel import Bolt, Profile, hole_size, minimum_edge_distance
from gageline.units import ZERO, Length, counted, round_down, round_up

__all__ = ["bear", "cap_for", "end_plane_on_column", "stiffens"]

_PARALLEL = 1e-6
_BESIDE = 6.0  # inches past a column that connection angles reach to its stiffeners


@dataclass(frozen=True, slots=True)
class _Cap:
    """A cap plate's size and holes, along and across the beam.

    Args:
        along: whether the beam runs along the column's depth.
        pitch: between its holes along the beam.
        gage: between them across it.
        wider: whether that is more than the beam's usual gage, for the wrench.
    """

    along: bool
    pitch: Length
    gage: Length
    wider: bool


def _way(bearing: Bearing) -> bool | None:
    """Whether the beam runs along the column's depth, across it, or (None) neither."""
    if abs(cross(bearing.member.plan, bearing.column.ey)[2]) < _PARALLEL:
        return True
    if abs(dot(bearing.member.plan, bearing.column.ey)) < _PARALLEL:
        return False
    return None


def stiffens(bearing: Bearing, station: float) -> bool:
    """Whether a beam has stiffeners over its column that stand beside a place along it.

    Args:
        bearing: the beam on the column.
        station: along the beam from its start, inches.
    """
    half = max(bearing.column.stock.d, bearing.column.stock.bf).inches / 2
    return bearing.member.stock.profile is not Profile.BOX and abs(bearing.run - station) < half + _BESIDE


def _holes(bearing: Bearing, shop: Shop) -> _Cap | None:
    """Where the bolts through a cap plate lie, as given or by rule; None where none are detailed."""
    way = _way(bearing)
    column, beam = bearing.column.stock, bearing.member.stock
    if way is None or abs(bearing.member.slope) > 1e-9 or beam.profile is not Profile.I_SHAPE:
        return None
    size = shop.bolt(None)
    gage, wider = flange_gage(beam, size, shop)
    wrench = wrench_of(size)
    off = max(shop.practice.end_distance, wrench.tighten if wrench else ZERO)
    # The bolts pass the column under the plate, and the stiffeners in line with its flanges over it.
    between = max(column.d, _to_stiffeners(bearing, along=True) * 2 + shop.frame.stiffener)
    pitch = round_up((between if way else column.bf) + off * 2, shop.pick(0.5, 10))
    entry = bearing.column.entry
    given = (entry.cap_plate if isinstance(entry, ColumnEntry) else None) or ColumnPlateEntry()
    along, across = (given.pitch, given.gage) if way else (given.gage, given.pitch)
    return _Cap(way, along or pitch, across or gage, wider and not across)


def cap_for(
    column: Line, given: ColumnPlateEntry | None, bearings: list[Bearing], shop: Shop
) -> ColumnPlateEntry | None:
    """The cap plate of a column: as given, with the holes of what bears on it.

    Args:
        column: the column.
        given: its table, None without one.
        bearings: what bears on it.
        shop: the practice.
    """
    caps = [cap for bearing in bearings if (cap := _holes(bearing, shop)) is not None]
    if not caps:
        return given if given is not None or not bearings else ColumnPlateEntry()
    cap = caps[0]
    known = dict(given) if given is not None else {}
    hole = hole_size(shop.bolt(None), shop.practice.hole).width
    edge = shop.practice.end_distance * 2
    stock = column.stock
    long, wide = (
        cap.pitch + edge,
        max(
            cap.gage + edge,
            round_up((stock.bf if cap.along else stock.d) + shop.pick(1, 25), shop.pick(1, 10)),
        ),
    )
    made = {
        "length": long if cap.along else wide,
        "width": wide if cap.along else long,
        "pitch": cap.pitch if cap.along else cap.gage,
        "gage": cap.gage if cap.along else cap.pitch,
        "diameter": hole,
    }
    return ColumnPlateEntry.model_construct(**{**made, **{k: v for k, v in known.items() if v is not None}})


def end_plane_on_column(bearing: Bearing, inward: Vec, word: str, shop: Shop, *, alone: bool) -> EndPlane:
    """Where a beam that ends on a column is cut: at the cap plate's edge, or short of the beam it meets.

    Args:
        bearing: the beam on the column.
        inward: direction into the beam's span.
        word: the end as the document calls it.
        shop: the practice.
        alone: whether nothing else bears on that column.
    """
    middle, name = bearing.column.finish, bearing.column.name
    if not alone:
        short = shop.frame.setback / 2
        why = f"the {word} stops {shop.say(short)} short of the middle of {name}, where another ends"
        return EndPlane(along(middle, inward, short.inches), inward, why)
    cap = _holes(bearing, shop)
    half = cap.pitch / 2 + shop.practice.end_distance if cap else bearing.column.stock.d / 2
    edge = "cap plate" if cap else "column"
    why = f"the {word} goes on {shop.say(half)} past the middle of {name} to the edge of its {edge}"
    return EndPlane(along(middle, inward, -half.inches), inward, why)


def bear(bearing: Bearing, beam: Carrier, column: Carrier, shop: Shop) -> None:
    """Holes in the beam over a cap plate, and stiffeners over the column.

    Args:
        bearing: the beam on the column.
        beam: the beam's piece.
        column: the column's piece.
        shop: the practice.
    """
    cap = _holes(bearing, shop)
    plate = next((fit for fit in column.fittings if fit.kind is FittingKind.CAP_PLATE), None)
    if cap is None or plate is None:
        beam.findings.append(_not_detailed(bearing))
        return
    maker = HoleMaker.of(HoleSize.model_construct(), shop.practice)
    size = shop.bolt(None)
    points = _bolt_points(bearing, cap, beam, size)
    word = "for the column"
    beam.drill(f"bottom, {word}", Face.BOTTOM, points, maker, shop.division)
    beam.reasons.append(
        Reason(
            f"{len(points)} holes over column {bearing.column.name}, {shop.say(cap.pitch)} by "
            f"{shop.say(cap.gage)}",
            f"outside the column's {bearing.column.stock.designation}, at the beam's gage"
            f"{', or what the wrench wants beside its web' * cap.wider}",
            "AISC Manual Table 1-1, workable gage",
        )
    )
    gaps = partial(_beside_bolts, bearing, cap, shop)
    reasons, findings = room_for(size, gaps, bearing.member.name, "", shop, Severity.WARNING)
    beam.reasons.extend(reasons)
    beam.findings.extend(findings)
    _stiffen(bearing, cap, beam, shop)


def _not_detailed(bearing: Bearing) -> Finding:
    """Why a beam on a column has no holes over it, and what to do."""
    beam, slope = bearing.member, abs(bearing.member.slope)
    why, remedy = "lies askew", "turn the column along the beam or across it"
    if beam.stock.profile is not Profile.I_SHAPE:
        why, remedy = f"is a {beam.stock.designation}, no I-section", "use an I-section"
    elif slope > 1e-9:
        why, remedy = f"slopes {slope * 12:.3g} in 12", "level the beam"
    return Finding(
        "bearing-not-detailed",
        Severity.ERROR,
        beam.name,
        f"on column {bearing.column.name} it {why}: the holes in its cap plate and its stiffeners are not "
        "detailed",
        f"{remedy}, or enter them as drawn",
    )


def _beside_bolts(bearing: Bearing, cap: _Cap, shop: Shop, wrench: Wrench) -> Iterator[Gap]:
    """From the bolts through a cap plate to the column under it, and to web and stiffeners over it."""
    column, beam, along, across = bearing.column.stock, bearing.member.stock, cap.pitch / 2, cap.gage / 2
    size = column.d if cap.along else column.bf
    name = bearing.column.name
    remedy = "give the cap plate a wider pitch or gage, or use smaller bolts"
    yield beside(
        f"bolts over {name} to the column under the plate", (along - size / 2).inches, wrench, remedy
    )
    off = along - _to_stiffeners(bearing, along=cap.along) - shop.frame.stiffener / 2
    yield beside(f"bolts over {name} to the stiffener", off.inches, wrench, remedy)
    yield beside(f"bolts over {name} to the beam's web", (across - beam.tw / 2).inches, wrench, remedy)
    if beam.k1 is not None:
        yield to_fillet(f"bolts over {name} to the beam's fillet", (across - beam.k1).inches, wrench, remedy)


def _to_stiffeners(bearing: Bearing, *, along: bool) -> Length:
    """From a column's middle to the stiffeners over it: in line with its flanges, or on its middle."""
    column = bearing.column.stock
    return (column.d - column.tf) / 2 if along else ZERO


def _bolt_points(bearing: Bearing, cap: _Cap, beam: Carrier, size: Bolt) -> tuple[Vec, ...]:
    """The bolts that still have steel of the beam over them, a beam's end being in the way of some."""
    member, centre = bearing.member, bearing.column.finish
    edge = minimum_edge_distance(size).inches
    length = beam.part.length.inches
    found: list[Vec] = []
    for far in (-0.5, 0.5):
        for aside in (-0.5, 0.5):
            at = along(centre, member.plan, far * cap.pitch.inches)
            point = along(at, member.ez, aside * cap.gage.inches)
            x = beam.local(point)[0]
            if edge <= x <= length - edge:
                found.append(point)
    return tuple(found)


def _stiffen(bearing: Bearing, cap: _Cap, beam: Carrier, shop: Shop) -> None:
    column = bearing.column.stock
    at = beam.local(bearing.column.finish)[0]
    half = _to_stiffeners(bearing, along=cap.along).inches
    length = beam.part.length.inches
    places = sorted({at - half, at + half})
    inside = [x for x in places if shop.frame.stiffener.inches <= x <= length - shop.frame.stiffener.inches]
    stock = bearing.member.stock
    width = round_down((stock.bf - stock.tw) / 2, shop.pick(0.125, 1))
    for x in inside:
        entry = StiffenerEntry.model_construct(
            thickness=shop.frame.stiffener,
            width=width,
            x=Length.from_inches(x),
            sides="both",
        )
        beam.join(join_stiffeners(entry, beam.part, shop.practice, shop.system))
    beam.reasons.append(
        Reason(
            f"{counted(len(inside), 'pair')} of stiffeners over column {bearing.column.name}",
            f"in line with the flanges or the middle of {column.designation}, {shop.say(half * 2)} apart",
            PRACTICE,
        )
    )
