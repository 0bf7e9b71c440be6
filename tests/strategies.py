"""Random valid parts for the property tests of every room: all profiles, both unit systems."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import pairwise

from hypothesis import strategies as st

from gageline.part import (
    SQUARE_CUT,
    Clip,
    Cope,
    End,
    EndCut,
    Face,
    FlangeTrim,
    Hole,
    HoleGroup,
    Opening,
    Part,
    Severity,
    Side,
    check_part,
    extent_y,
    extent_z,
    face_range,
    faces_of,
    in_order,
)
from gageline.steel import HoleKind, Measure, Plate, Profile, Section, Stock, all_sections
from gageline.units import SQUARE, ZERO, Length, Slope, System

__all__ = ["lengths", "parts", "stocks"]

_INCH = Length.from_inches(1)
_MM = Length.from_mm(1)
_MEASURES = {System.FT_IN: Measure.US, System.MM: Measure.EU}
_GRAINS = {
    System.FT_IN: (_INCH / 16, _INCH / 32, _INCH / 64, Length(1)),
    System.MM: (_MM, Length(3200), Length(640), Length(1)),
}
_DRILLS = {
    System.FT_IN: (_INCH * 9 / 16, _INCH * 13 / 16, _INCH * 15 / 16, _INCH * 17 / 16),
    System.MM: (_MM * 14, _MM * 18, _MM * 22, _MM * 26),
}
_EDGES = (Face.TOP, Face.BOTTOM)
_TWO_FLANGES = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_HOLLOW = frozenset({Profile.BOX, Profile.TUBE})
_NOTCHED = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.ANGLE, Profile.BOX, Profile.PLATE})


def lengths(low: Length, high: Length, system: System = System.FT_IN) -> st.SearchStrategy[Length]:
    """Lengths from low to high: whole divisions of a tape, finer ones, and any tick at all.

    A grain that has no multiple between the two limits is left to the finer ones.
    """

    def of(grain: Length) -> st.SearchStrategy[Length]:
        first, last = -(-low.ticks // grain.ticks), high.ticks // grain.ticks
        return st.integers(first, last).map(lambda count: grain * count)

    fitting = [
        grain for grain in _GRAINS[system] if -(-low.ticks // grain.ticks) <= high.ticks // grain.ticks
    ]
    return st.sampled_from(fitting).flatmap(of)


@cache
def _sections(profile: Profile, system: System) -> tuple[Section, ...]:
    """Sections of a profile; European tables have no tees and hollow sections, so American ones serve."""
    found = tuple(one for one in all_sections(_MEASURES[system]) if one.profile is profile)
    return found or _sections(profile, System.FT_IN)


@st.composite
def stocks(draw: st.DrawFn, profile: Profile, system: System) -> Stock:
    """A section or a plate of one profile."""
    if profile is not Profile.PLATE:
        return draw(st.sampled_from(_sections(profile, system)))
    thickness = draw(lengths(_INCH / 4, _INCH * 2, system))
    return Plate(thickness, draw(lengths(_INCH * 3, _INCH * 30, system)), _MEASURES[system])


@st.composite
def parts(draw: st.DrawFn, profile: Profile | None = None, system: System | None = None) -> Part:
    """A part with random ends, copes, trims, clips, holes and openings that the rules find no error in.

    Args:
        draw: given by hypothesis.
        profile: of this profile only.
        system: in lengths of this system only.
    """
    system = system or draw(st.sampled_from(System))
    stock = draw(stocks(profile or draw(st.sampled_from(Profile)), system))
    length = draw(lengths(_INCH * 12, _INCH * 480, system))
    left, right = (draw(_ends(stock, length)) for _ in End)
    part = Part(
        "X1", stock, "A36", length, left, right,
        copes=draw(_copes(stock, length, system)),
        trims=draw(_trims(stock, length, system, {End.LEFT: left, End.RIGHT: right})),
        clips=draw(_clips(stock, length, system)),
    )  # fmt: skip
    groups: list[HoleGroup] = []
    openings: list[Opening] = []
    for face in faces_of(stock):
        for number, (start, stop) in enumerate(_bins(part, draw(st.integers(0, 2)))):
            what = draw(st.sampled_from(("holes", "holes", "opening")))
            if what == "holes":
                made = draw(_group(part, face, (start, stop), system, f"{face} pattern {number + 1}"))
                groups.extend(made)
            else:
                openings.extend(draw(_opening(part, face, (start, stop), system)))
    whole = replace(part, groups=tuple(groups))
    for opening in openings:  # one that falls on holes across the web is left out
        more = replace(whole, openings=(*whole.openings, opening))
        whole = whole if _errors(more, system) else more
    wrong = _errors(whole, system)
    assert not wrong, wrong
    return whole


def _errors(part: Part, system: System) -> list[str]:
    return [found.text() for found in check_part(part, system) if found.severity is Severity.ERROR]


def _slopes(reach: Length, length: Length) -> st.SearchStrategy[Slope]:
    """A lean either way that takes no more than a sixth of the length off."""
    most = min(96, 96 * length.ticks // (6 * reach.ticks))
    return st.one_of(st.just(SQUARE), st.integers(-most, most).map(lambda rise: Slope(Fraction(rise, 96))))


@st.composite
def _ends(draw: st.DrawFn, stock: Stock, length: Length) -> EndCut:
    if draw(st.booleans()):
        return SQUARE_CUT
    (low, high), (far, near) = extent_y(stock), extent_z(stock)
    mitre = SQUARE if isinstance(stock, Plate) else draw(_slopes(near - far, length))
    return EndCut(draw(_slopes(high - low, length)), mitre)


@st.composite
def _copes(draw: st.DrawFn, stock: Stock, length: Length, system: System) -> tuple[Cope, ...]:
    if stock.profile not in _NOTCHED:
        return ()
    low, high = extent_y(stock)
    made: list[Cope] = []
    for end in End:
        for edge in _EDGES:
            if draw(st.integers(0, 3)) == 0:
                long = draw(lengths(_INCH, length / 8 if length > _INCH * 16 else _INCH * 2, system))
                deep = draw(lengths((high - low) / 8, (high - low) * 2 / 5, system))
                most = min(long, deep) / 2
                made.append(Cope(end, edge, long, deep, draw(st.sampled_from((ZERO, most)))))
    return tuple(made)


@st.composite
def _trims(
    draw: st.DrawFn, stock: Stock, length: Length, system: System, cuts: dict[End, EndCut]
) -> tuple[FlangeTrim, ...]:
    """Trims at square ends only: a slant may have taken off already what a short trim would cut."""
    if stock.profile not in _TWO_FLANGES:
        return ()
    sides = (Side.FAR,) if stock.profile is Profile.CHANNEL else tuple(Side)
    return tuple(
        FlangeTrim(
            end,
            edge,
            side,
            draw(lengths(_INCH, length / 8 + _INCH, system)),
            draw(st.sampled_from((ZERO, _INCH / 4))),
        )
        for end in End
        if cuts[end].square
        for edge in _EDGES
        for side in sides
        if draw(st.integers(0, 7)) == 0
    )


@st.composite
def _clips(draw: st.DrawFn, stock: Stock, length: Length, system: System) -> tuple[Clip, ...]:
    if not isinstance(stock, Plate):
        return ()
    most = min(stock.width, length) / 5
    return tuple(
        Clip(end, edge, draw(lengths(_INCH / 4, most, system)), draw(lengths(_INCH / 4, most, system)))
        for end in End
        for edge in _EDGES
        if draw(st.integers(0, 5)) == 0
    )


def _bins(part: Part, count: int) -> tuple[tuple[Length, Length], ...]:
    """The part between everything that is cut at its ends, in so many lots with a gap between them."""
    taken = dict.fromkeys(End, ZERO)
    for cope in part.copes:
        taken[cope.end] = max(taken[cope.end], cope.length)
    for trim in part.trims:
        taken[trim.end] = max(taken[trim.end], trim.length)
    for clip in part.clips:
        taken[clip.end] = max(taken[clip.end], clip.along)
    (low, high), (far, near) = extent_y(part.stock), extent_z(part.stock)
    for end in End:
        cut = part.cut(end)
        retreat = abs(cut.bevel.over(high - low)) + abs(cut.mitre.over(near - far))
        taken[end] = max(taken[end], retreat)
    start, stop = taken[End.LEFT], part.length - taken[End.RIGHT]
    if not count or stop - start < _INCH * 4 * count:
        return ()
    edges = [start + (stop - start) * number / count for number in range(count + 1)]
    return tuple(pairwise(edges))


def _room(low: Length, high: Length, margin: Length, pitch: Length) -> int:
    """How many lines fit between two limits at a pitch, a margin kept at both."""
    clear = high - low - margin * 2
    return 0 if clear < ZERO else 1 + clear.ticks // pitch.ticks


@st.composite
def _group(
    draw: st.DrawFn, part: Part, face: Face, span: tuple[Length, Length], system: System, name: str
) -> tuple[HoleGroup, ...]:
    """A pattern of round holes or slots within a stretch of a face; none where there is no room."""
    drill = draw(st.sampled_from(_DRILLS[system]))
    slotted = draw(st.integers(0, 3)) == 0
    margin, least = drill * 2, drill * 4
    pitch_x, pitch_y = (draw(lengths(least, least * 2, system)) for _ in "xy")
    low, high = face_range(part.stock, face)
    fit_x, fit_y = _room(*span, margin, pitch_x), _room(low, high, margin, pitch_y)
    if not fit_x or not fit_y:
        return ()
    columns, rows = draw(st.integers(1, min(fit_x, 6))), draw(st.integers(1, min(fit_y, 5)))
    x0 = draw(lengths(span[0] + margin, span[1] - margin - pitch_x * (columns - 1), system))
    y0 = draw(lengths(low + margin, high - margin - pitch_y * (rows - 1), system))
    cells = [(i, j) for i in range(columns) for j in range(rows)]
    mates, whole = draw(st.booleans()), draw(st.booleans())
    if not whole:
        cells = draw(st.lists(st.sampled_from(cells), min_size=1, max_size=len(cells), unique=True))
    long = drill * 2 if slotted else drill
    angle = draw(st.sampled_from((0, 30, 90, 135))) if slotted else 0
    stray = st.just(ZERO) if mates else st.integers(-(drill.ticks // 2), drill.ticks // 2).map(Length)
    holes = [
        Hole(x0 + pitch_x * i + draw(stray), y0 + pitch_y * j + draw(stray), drill, long, Fraction(angle))
        for i, j in cells
    ]
    kind = HoleKind.LSL if slotted else HoleKind.STD
    through = part.profile in _HOLLOW and draw(st.booleans())
    return (HoleGroup(name, face, in_order(tuple(holes)), "", kind, mates, through),)


@st.composite
def _opening(
    draw: st.DrawFn, part: Part, face: Face, span: tuple[Length, Length], system: System
) -> tuple[Opening, ...]:
    """A round or rectangular opening in the middle half of a stretch of a web, wall or plate."""
    low, high = face_range(part.stock, face)
    if face in _EDGES or face is Face.LEG_B:
        return ()
    most = min(span[1] - span[0], high - low) / 2
    long, deep = (draw(lengths(most / 3, most, system)) for _ in "xy")
    x, y = ((a + (b - a) / 2) for a, b in (span, (low, high)))
    if draw(st.booleans()):
        radius = long / 2
        return (Opening(face, x, y, radius * 2, radius * 2, radius),)
    radius = draw(st.sampled_from((ZERO, min(long, deep) / 4)))
    return (Opening(face, x, y, long, deep, radius, part.profile in _HOLLOW and draw(st.booleans())),)
