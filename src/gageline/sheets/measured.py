"""What is measured and noted on a view along a piece: stations, rows and call-outs."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from gageline.part import (
    Assembly,
    End,
    Face,
    Fitting,
    HoleGroup,
    Part,
    extent_y,
    extent_z,
    foot,
    foot_across,
    lean,
    lean_across,
)
from gageline.sheets.notation import WEB_FACES, Scribe, is_scattered
from gageline.sheets.sight import BOTTOM, TOP, View
from gageline.steel import Profile, Section
from gageline.units import ZERO, Length

__all__ = ["Measured", "Note", "Row", "measure", "shows"]

Lengths = tuple[Length, Length]
_FLANGES = frozenset({Face.TOP, Face.BOTTOM})


@dataclass(frozen=True, slots=True)
class Note:
    """A call-out: its text and the place its arrow points at, in u and v of the view, in."""

    at: tuple[float, float]
    text: str


@dataclass(frozen=True, slots=True)
class Row:
    """A row of holes measured across the piece.

    Attributes:
        v: of the row, in.
        u: of the hole nearest to the side where the reading stands, in.
        text: the reading.
    """

    v: float
    u: float
    text: str


@dataclass(frozen=True, slots=True)
class Measured:
    """Everything that is measured on one view.

    Attributes:
        stations: running readings from the left end: u in inches, and text.
        notes: call-outs.
        left: rows read at the left of the view.
        right: rows read at its right.
        datum: v that the rows are measured from, in.
    """

    stations: tuple[tuple[float, str], ...]
    notes: tuple[Note, ...]
    left: tuple[Row, ...] = ()
    right: tuple[Row, ...] = ()
    datum: float = 0.0


def _faces(view: View, part: Part) -> frozenset[Face]:
    """The faces that are dimensioned on a view."""
    if view is TOP:
        return frozenset({Face.TOP})
    if view is BOTTOM:
        return frozenset({Face.LEG_B if part.profile is Profile.ANGLE else Face.BOTTOM})
    return WEB_FACES


def shows(assembly: Assembly, view: View) -> bool:
    """Whether anything is to be said on a flange plan."""
    main = assembly.main
    if main.profile is Profile.ANGLE:
        return view is BOTTOM
    faces = _faces(view, main)
    cut = any(main.cut(end).mitre for end in End) and view is TOP
    return cut or any(
        [
            any(group.face in faces for group in main.groups),
            any(opening.face in faces for opening in main.openings),
            any(trim.flange in faces for trim in main.trims),
            any(fitting.on in faces for fitting in assembly.fittings),
        ]
    )


def measure(assembly: Assembly, view: View, scribe: Scribe) -> Measured:
    """The dimensions of a view along a piece.

    Args:
        assembly: the piece.
        view: elevation, top or bottom.
        scribe: writes in the units of the job.
    """
    main = assembly.main
    faces = _faces(view, main)
    groups = [group for group in main.groups if group.face in faces]
    in_rows = [group for group in groups if not is_scattered(group)]
    left, right = _row_groups(in_rows, main) if faces is WEB_FACES else ([], [])
    lie = _Lie(main, view, scribe)
    notes = [
        *(lie.of_holes(group, rows=group not in {*left, *right}) for group in groups),
        *lie.of_cuts(faces),
        *lie.of_fittings([fitting for fitting in assembly.fittings if _is_noted(fitting, view)]),
    ]
    places = {hole.x for group in groups for hole in group.holes}
    places.update(opening.x for opening in main.openings if opening.face in faces)
    places.update(_middle(f, main) for f in assembly.fittings if _is_noted(f, view) and f.end is None)
    if places or faces is WEB_FACES:
        places |= {ZERO, main.length}
    stations = tuple((x.inches, scribe.tell(x)) for x in sorted(places))
    datum = ZERO if main.profile is Profile.ANGLE else extent_y(main.stock)[1]
    return Measured(
        stations, tuple(notes), lie.rows(left, datum, min), lie.rows(right, datum, max), datum.inches
    )


def _is_noted(fitting: Fitting, view: View) -> bool:
    """Whether a fitting gets its mark here: on the plan of its flange, else on the elevation."""
    on = {TOP: Face.TOP, BOTTOM: Face.BOTTOM}.get(view)
    return fitting.on is on if on else fitting.on not in {Face.TOP, Face.BOTTOM}


def _middle(fitting: Fitting, main: Part) -> Length:
    low, high = foot(fitting, main.stock)
    return (low + high) / 2


def _row_groups(groups: list[HoleGroup], part: Part) -> tuple[list[HoleGroup], list[HoleGroup]]:
    """The groups whose rows are read beside the view: those nearest to its ends."""
    if not groups:
        return [], []
    first = min(groups, key=lambda group: min(hole.x for hole in group.holes))
    last = max(groups, key=lambda group: max(hole.x for hole in group.holes))
    half = part.length / 2
    at_left = min(hole.x for hole in first.holes) <= half or first is last
    left = [group for group in groups if at_left and _same_rows(group, first) and _starts(group) <= half]
    right = [group for group in groups if _same_rows(group, last) and _starts(group) > half]
    return left, right


def _starts(group: HoleGroup) -> Length:
    return min(hole.x for hole in group.holes)


def _same_rows(one: HoleGroup, other: HoleGroup) -> bool:
    return one is other or {hole.y for hole in one.holes} == {hole.y for hole in other.holes}


@dataclass(frozen=True, slots=True)
class _Lie:
    """How features of a part lie on a view."""

    part: Part
    view: View
    scribe: Scribe

    def v(self, face: Face, y: Length) -> float:
        """Height on the view of a face's own y."""
        if face in {Face.TOP, Face.BOTTOM}:
            return y.inches * self.view.v[1]
        return -y.inches if face is Face.LEG_B else y.inches

    def edge(self) -> float:
        """Height of the edge that call-outs come from: the lower one of a top view."""
        if self.view is TOP:
            return -extent_z(self.part.stock)[1].inches
        if self.view is BOTTOM:
            return extent_z(self.part.stock)[1].inches
        return extent_y(self.part.stock)[1].inches

    def nearest(self, vs: list[float]) -> float:
        """The height nearest to the call-outs."""
        return min(vs) if self.view is TOP else max(vs)

    def of_holes(self, group: HoleGroup, *, rows: bool) -> Note:
        first = _starts(group)
        v = self.nearest([self.v(group.face, hole.y) for hole in group.holes if hole.x == first])
        return Note((first.inches, v), self.scribe.holes(group, self.part, rows=rows))

    def of_cuts(self, faces: frozenset[Face]) -> Iterator[Note]:
        part, say = self.part, self.scribe
        for opening in (one for one in part.openings if one.face in faces):
            reach = opening.depth.inches / 2 * (-1 if self.view is TOP else 1)
            at = opening.x.inches, self.v(opening.face, opening.y) + reach
            yield Note(at, say.opening(opening, part))
        for trim in (one for one in part.trims if one.flange in faces):
            u = trim.length.inches if trim.end is End.LEFT else (part.length - trim.length).inches
            yield Note((u, self.edge()), say.trim(trim))
        for end in End:
            in_web, in_flange = say.end(part, end)
            text = in_web if faces is WEB_FACES else in_flange if self.view is TOP else ""
            if text:
                yield self._of_end(end, text)
        if faces is WEB_FACES:
            yield from self._of_copes()
            for clip in part.clips:
                u = clip.along.inches if clip.end is End.LEFT else (part.length - clip.along).inches
                level = extent_y(part.stock)[1 if clip.edge is Face.TOP else 0].inches
                yield Note((u, level), say.clip(clip))

    def _of_end(self, end: End, text: str) -> Note:
        """A note that points at the middle of an end that is not square."""
        (low, high), (far, near) = extent_y(self.part.stock), extent_z(self.part.stock)
        if self.view is TOP:
            z = (far + near) / 2
            return Note((self.part.end_x(end, high, z).inches, -z.inches), text)
        y = (low + high) / 2
        return Note((self.part.end_x(end, y, near).inches, y.inches), text)

    def _of_copes(self) -> Iterator[Note]:
        overall, high = self.part.length.inches, extent_y(self.part.stock)[1].inches
        for end in End:
            copes = [cope for cope in self.part.copes if cope.end is end]
            alike = {(cope.length, cope.depth, cope.radius) for cope in copes}
            together = len(copes) == 2 and len(alike) == 1
            for cope in copes[:1] if together else copes:
                u = cope.length.inches if end is End.LEFT else overall - cope.length.inches
                v = high - cope.depth.inches if cope.edge is Face.TOP else cope.depth.inches
                back = cope.radius.inches * (0.3 if end is End.LEFT else -0.3)
                turn = cope.radius.inches * (0.3 if cope.edge is Face.TOP else -0.3)
                text = self.scribe.cope(copes if together else [cope])
                yield Note((u - back, v + turn), text)

    def of_fittings(self, fittings: list[Fitting]) -> Iterator[Note]:
        """Marks of fittings, those at one place together."""

        def place(fitting: Fitting) -> tuple[str, Lengths, str]:
            return fitting.part.mark, foot(fitting, self.part.stock), self._says(fitting)

        for (mark, (low, high), across), alike in groupby(sorted(fittings, key=place), key=place):
            these = list(alike)
            sign = self.view.v[1] if self.view in {TOP, BOTTOM} else 1
            v = self.nearest([sign * at.inches for f in these for at in foot_across(f, self.part.stock)])
            sides = sorted({str(f.on) for f in these if f.on in {Face.NEAR, Face.FAR}}, reverse=True)
            where = f" {' and '.join(sides)} side" if sides else ""
            yield Note((((low + high) / 2).inches, v), f"{mark}{where}{across}")

    def _says(self, fitting: Fitting) -> str:
        """Where a fitting stands across the face, and how it leans."""
        ways = ("near side", "far side") if fitting.on in _FLANGES else ("top", "bottom")
        leans = [
            f", leans {slope.text(self.scribe.system)} to the {ahead if slope.ratio > 0 else back}"
            for slope, (ahead, back) in ((lean(fitting), ("right", "left")), (lean_across(fitting), ways))
            if slope
        ]
        return f"{self._across(fitting)}{''.join(leans)}"

    def _across(self, fitting: Fitting) -> str:
        """Where a fitting between the ends stands across the face; nothing where that is plain to see."""
        if fitting.end is not None:
            return ""
        stock = self.part.stock
        low, high = foot_across(fitting, stock)
        if fitting.on in _FLANGES:
            middle = (low + high) / 2
            from_ = "back" if self.part.profile is Profile.CHANNEL else "middle"
            side = "near" if middle > ZERO else "far"
            return f", {self.scribe.tell(abs(middle))} {side} of {from_}" if middle else ""
        drop = extent_y(stock)[1] - high
        if isinstance(stock, Section) and abs(drop - stock.tf) <= self.scribe.tape:
            return ""
        return f", top {self.scribe.tell(abs(drop))} {'above' if drop < ZERO else 'down'}"

    def rows(
        self, groups: list[HoleGroup], datum: Length, nearest: Callable[[Iterable[float]], float]
    ) -> tuple[Row, ...]:
        """The rows of groups that share them, each read once."""
        rows = {}
        for y in sorted({hole.y for group in groups for hole in group.holes}, reverse=True):
            u = nearest(hole.x.inches for group in groups for hole in group.holes if hole.y == y)
            rows[y] = Row(y.inches, u, self.scribe.tell(abs(datum - y)))
        return tuple(rows.values())
