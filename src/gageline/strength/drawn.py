"""Connections read off the geometry of record: fittings, their holes and welds, and the end of the web."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gageline.errors import ValueProblem
from gageline.part import (
    Assembly,
    End,
    Face,
    Fitting,
    FittingKind,
    HoleGroup,
    Join,
    Vector,
    Weld,
    face_thickness,
    normal,
)
from gageline.steel import HoleKind, Plate, Profile, Section
from gageline.strength.beam_end import beam_of, web_end
from gageline.strength.connection import Bolted, Connection, Fillet, Holes, Kind, Support, SupportFace, Tongue
from gageline.strength.connection import Fitting as Between
from gageline.strength.opposite import face_on_web, footprint, stands_opposite, welded_on
from gageline.strength.reading import bolted, dot, grid_of, holes_of, places_of, reach
from gageline.strength.steels import BoltSteel, material_of
from gageline.units import Length

__all__ = ["Carried", "Drawn", "connections_of"]

_MOST_CONVENTIONAL = 3.5
_WEBS = frozenset({Face.NEAR, Face.FAR})
_EXACT = 6  # decimals of an inch: what is left of turning a fitting in space
_NEAR = 0.1  # inches: a hole of the web this near to one of a fitting is for the same bolt


@dataclass(frozen=True, slots=True)
class Drawn:
    """A connection as drawn, before its reaction is known; or why there is none.

    Args:
        name: which end or plate.
        end: of the piece; None for a plate that carries a beam which is not known.
        connection: with a reaction of 1 kip; None where it cannot be checked.
        why: the reason, where it cannot.
    """

    name: str
    end: End | None
    connection: Connection | None
    why: str = ""


@dataclass(frozen=True, slots=True)
class Carried:
    """What the support of an end has for it: a plate, a pair of angles, a seat.

    Args:
        fittings: placed in the space of the beam.
        welds: of the support's piece.
    """

    fittings: tuple[Fitting, ...]
    welds: tuple[Weld, ...]


def connections_of(
    assembly: Assembly,
    steel: BoltSteel,
    weld: Length,
    supports: Mapping[End, Support] | None = None,
    carried: Mapping[End, Carried] | None = None,
    known: frozenset[str] = frozenset(),
) -> tuple[Drawn, ...]:
    """The connections of a piece as drawn.

    Args:
        assembly: the piece.
        steel: of its bolts.
        weld: leg of field welds, which a drawing of the piece does not give.
        supports: of its ends, where they are known.
        carried: what the supports of its ends have for them.
        known: its plates by name that are checked with the beams they carry.

    Returns:
        One for each end with connection angles or an end plate, or whose support has something for it, and
        for each single plate on it that is not known; each with a reaction of 1 kip.
    """
    reader = _Reader(assembly, steel, weld, supports or {}, carried or {})
    plates = (one for one in assembly.fittings if one.kind is FittingKind.PLATE and one.name not in known)
    return (*reader.ends(), *(reader.plate(fitting) for fitting in plates))


@dataclass(frozen=True, slots=True)
class _Way:
    """How an end stands.

    Args:
        up: plumb, in the space of the beam.
        into: level, from the support into the span.
    """

    up: Vector
    into: Vector


@dataclass(frozen=True, slots=True)
class _Reader:
    """A piece on its way to connections."""

    assembly: Assembly
    steel: BoltSteel
    weld: Length
    supports: Mapping[End, Support]
    carried: Mapping[End, Carried]

    def ends(self) -> Iterator[Drawn]:
        for end in End:
            name = f"{self.assembly.mark} {end}"
            own, theirs = self._own(end), self.carried.get(end)
            try:
                if own:
                    yield Drawn(name, end, self._from_beam(name, end, own))
                elif theirs is not None and theirs.fittings:
                    yield Drawn(name, end, self._from_support(name, end, theirs))
            except ValueProblem as refused:
                yield Drawn(name, end, None, str(refused))

    def _own(self, end: End) -> tuple[Fitting, ...]:
        """What the beam itself has at an end; a clip over a seat is no connection."""
        found = [one for one in self.assembly.fittings if one.end is end]
        return tuple(
            one
            for one in found
            if one.kind is FittingKind.END_PLATE or (one.kind is FittingKind.ANGLE and one.on in _WEBS)
        )

    def _from_beam(self, name: str, end: End, fittings: tuple[Fitting, ...]) -> Connection:
        kinds = {fitting.kind for fitting in fittings}
        if len(kinds) > 1:
            raise ValueProblem("angles and an end plate at one end are not covered: use one of them")
        fitting, way = fittings[0], self._way(end)
        if FittingKind.END_PLATE in kinds:
            return self._at_end(name, end, Kind.END_PLATE, self._end_plate(fitting, way), fitting)
        between, web, out = self._angle(fittings, way)
        kind = Kind.DOUBLE_ANGLES if len(fittings) == 2 else Kind.SINGLE_ANGLE
        to_beam = web or self._leg(fitting, self.assembly.welds)
        return self._at_end(name, end, kind, (between, to_beam, out or Fillet(self.weld.inches)), fitting)

    def _from_support(self, name: str, end: End, theirs: Carried) -> Connection:
        fitting, way = theirs.fittings[0], self._way(end)
        weld = self._leg(fitting, theirs.welds)
        tongue = self._fitting(end, FittingKind.TONGUE)
        if fitting.kind is FittingKind.PLATE and tongue is not None:
            return self._on_tongue(name, end, fitting, weld, tongue)
        if fitting.kind is FittingKind.PLATE:
            between, bolts = self._plate(fitting, way, self._mate(fitting))
            return self._at_end(name, end, _plate_kind(bolts), (between, bolts, weld), fitting)
        if fitting.kind is not FittingKind.ANGLE:
            raise ValueProblem(f"a {fitting.kind.value} on the support is no connection that is covered")
        if abs(dot(fitting.placement.ex, way.up)) < 0.5:
            return self._at_end(name, end, Kind.SEAT, self._seat(fitting, weld), fitting)
        between, web, _ = self._angle(theirs.fittings, way)
        if web is None:
            raise ValueProblem("angles on the support have no holes for the beam: give their rows")
        kind = Kind.DOUBLE_ANGLES if len(theirs.fittings) == 2 else Kind.SINGLE_ANGLE
        return self._at_end(name, end, kind, (between, web, weld), fitting)

    def _fitting(self, end: End, kind: FittingKind) -> Fitting | None:
        return next((one for one in self.assembly.fittings if one.end is end and one.kind is kind), None)

    def _on_tongue(self, name: str, end: End, plate: Fitting, weld: Fillet, tongue: Fitting) -> Connection:
        """A plate on the support, bolted to the tongue of a hollow beam."""
        way, cap = self._way(end), self._fitting(end, FittingKind.END_CAP)
        if cap is None or not tongue.part.groups:
            raise ValueProblem("a tongue without an end cap, or without holes, is not covered")
        group = tongue.part.groups[0]
        upright = abs(dot(tongue.placement.ex, way.up)) > 0.5
        mate = holes_of(group.holes[0], group.kind or HoleKind.STD, upright=upright)
        between, bolts = self._plate(plate, way, mate)
        face, top = reach(plate, way.into)[0], reach(plate, way.up)[1] - bolts.edge_top
        tip, root = reach(tongue, way.into)
        low, high = reach(tongue, way.up)
        wide = cap.part.stock.width if isinstance(cap.part.stock, Plate) else cap.part.stock.bf
        found = Tongue(
            self.assembly.main.stock.designation,
            _plate_between(tongue, Length.from_inches(high - low), Length.from_inches(root - tip)),
            _plate_between(cap, cap.part.length, wide),
            self._leg(tongue, self.assembly.welds),
            round(high - top, _EXACT),
            round(root - face - bolts.gage - bolts.width, _EXACT),
        )
        setback = max(round(tip - face, _EXACT), 0.0)
        return Connection(
            name, _plate_kind(bolts), None, between, bolts, weld, setback, 0.0, 1.0,
            support=self.supports.get(end), skew=_skew_of(plate), tongue=found,
        )  # fmt: skip

    def plate(self, fitting: Fitting) -> Drawn:
        """A plate whose beam is not known; its own length is taken to lie along the reaction."""
        name = f"{self.assembly.mark} {fitting.name}"
        try:
            return Drawn(name, None, self._lone_plate(name, fitting))
        except ValueProblem as refused:
            return Drawn(name, None, None, str(refused))

    def _lone_plate(self, name: str, fitting: Fitting) -> Connection:
        main = self.assembly.main
        if fitting.on is None:
            raise ValueProblem("the plate stands on no face: say on which")
        x, y, z = fitting.placement.ex
        up = fitting.placement.ex if (y if abs(y) > 0.5 else x) > 0 else (-x, -y, -z)
        out = normal(fitting.on)
        way = _Way(up, (float(out[0]), float(out[1]), float(out[2])))
        between, bolts = self._plate(fitting, way, None)
        support = Support(
            main.stock.designation,
            material_of(main),
            _support_face(self.assembly, fitting),
            face_thickness(main.stock, fitting.on).inches,
            both_faces=stands_opposite(footprint(fitting, fitting.on), welded_on(self.assembly.fittings))
            or None,
        )
        weld, skew = self._leg(fitting, self.assembly.welds), _skew_of(fitting)
        kind = _plate_kind(bolts)
        return Connection(name, kind, None, between, bolts, weld, 0.5, 0.0, 1.0, support=support, skew=skew)

    def _way(self, end: End) -> _Way:
        lean = float(self.assembly.main.cut(end).bevel.ratio)
        scale = math.hypot(lean, 1.0)
        left = end is End.LEFT
        x, y = (-lean if left else lean) / scale, 1.0 / scale
        return _Way((x, y, 0.0), (y, -x, 0.0) if left else (-y, x, 0.0))

    def _leg(self, fitting: Fitting, welds: Sequence[Weld]) -> Fillet:
        size = next((weld.size for weld in welds if weld.fitting == fitting.name), self.weld)
        return Fillet(size.inches)

    def _angle(self, fittings: Sequence[Fitting], way: _Way) -> tuple[Between, Bolted | None, Bolted | None]:
        """The angles of an end, with the bolts of each leg that has holes."""
        fitting, part = fittings[0], fittings[0].part
        stock = part.stock
        if not isinstance(stock, Section):
            raise ValueProblem(f"{stock.designation} is no angle: use one")
        web_face = face_on_web(fitting)
        out_face = Face.LEG_B if web_face is Face.LEG_A else Face.LEG_A
        legs = {Face.LEG_A: stock.d.inches, Face.LEG_B: stock.bf.inches}
        between = Between(
            f"{'2' if len(fittings) == 2 else ''}{stock.designation}",
            material_of(part),
            stock.tw.inches,
            part.length.inches,
            legs[web_face],
            legs[out_face],
        )

        def joint(face: Face, mate: Holes | None) -> Bolted | None:
            group = next((group for group in part.groups if group.face is face), None)
            if group is None:
                return None
            grid = grid_of(part, group, upright=True, down=dot(fitting.placement.ex, way.up) < 0)
            first, last = grid.columns[0].inches, grid.columns[-1].inches
            return bolted(group, grid, self.steel, first, legs[face] - last, mate)

        on_web = joint(web_face, self._mate(fitting))
        own = fitting.end is None or fitting.join is Join.BOLTED
        return between, on_web if own else None, joint(out_face, None)

    def _end_plate(self, fitting: Fitting, way: _Way) -> tuple[Between, Fillet, Bolted]:
        stock, part = fitting.part.stock, fitting.part
        if not isinstance(stock, Plate) or not part.groups:
            raise ValueProblem("the end plate has no holes for bolts: give rows")
        group = part.groups[0]
        ys = sorted({hole.y for hole in group.holes})
        if len(ys) != 2:
            raise ValueProblem(f"{len(ys)} columns of bolts in an end plate are not covered: use 2")
        column = HoleGroup(
            group.name, group.face, tuple(h for h in group.holes if h.y == ys[0]), group.bolt, group.kind
        )
        grid = grid_of(part, column, upright=True, down=dot(fitting.placement.ex, way.up) < 0)
        edge = min(ys[0], stock.width - ys[1]).inches
        bolts = bolted(column, grid, self.steel, (ys[1] - ys[0]).inches / 2, edge, None)
        return (
            _plate_between(fitting, part.length, stock.width),
            self._leg(fitting, self.assembly.welds),
            bolts,
        )

    def _plate(self, fitting: Fitting, way: _Way, mate: Holes | None) -> tuple[Between, Bolted]:
        """A plate that stands on the support, its length upright or, where it is skewed, level."""
        stock, part = fitting.part.stock, fitting.part
        if not isinstance(stock, Plate) or not part.groups:
            raise ValueProblem("the plate has no holes for bolts: give rows")
        place = fitting.placement
        upright = abs(dot(place.ex, way.up)) > 0.5
        up, across = (place.ex, place.ey) if upright else (place.ey, place.ex)
        length, width = (part.length, stock.width) if upright else (stock.width, part.length)
        grid = grid_of(part, part.groups[0], upright=upright, down=dot(up, way.up) < 0)
        first, last = grid.columns[0], grid.columns[-1]
        if dot(across, way.into) < 0:
            first, last = width - last, width - first
        side = (width - last).inches
        bolts = bolted(part.groups[0], grid, self.steel, first.inches, side, mate)
        return _plate_between(fitting, length, width), bolts

    def _seat(self, fitting: Fitting, weld: Fillet) -> tuple[Between, Fillet, Fillet]:
        """A seat: its longer leg is the upright one, on the support."""
        stock, part = fitting.part.stock, fitting.part
        if not isinstance(stock, Section):
            raise ValueProblem(f"{stock.designation} is no angle: use one for a seat")
        legs = {Face.LEG_A: stock.d.inches, Face.LEG_B: stock.bf.inches}
        bearing = next((group.face for group in part.groups), Face.LEG_B)
        upright = Face.LEG_A if bearing is Face.LEG_B else Face.LEG_B
        between = Between(
            stock.designation,
            material_of(part),
            stock.tw.inches,
            part.length.inches,
            legs[upright],
            legs[bearing],
        )
        return between, weld, weld

    def _mate(self, fitting: Fitting) -> Holes | None:
        """The holes of the beam's web behind those of a fitting."""
        places = [
            (x.inches, y.inches) for group in fitting.part.groups for x, y, _ in places_of(fitting, group)
        ]
        for group in self.assembly.main.groups:
            if group.face not in _WEBS or group.kind is None:
                continue
            hole = group.holes[0]
            at = (hole.x.inches, hole.y.inches)
            if any(math.dist(at, place) < _NEAR for place in places):
                return holes_of(hole, group.kind, upright=False)
        return None

    def _at_end(
        self,
        name: str,
        end: End,
        kind: Kind,
        found: tuple[Between, Bolted | Fillet, Bolted | Fillet],
        fitting: Fitting,
    ) -> Connection:
        main, way = self.assembly.main, self._way(end)
        beam, (between, to_beam, to_support) = beam_of(main, end), found
        face, toe = reach(fitting, way.into)
        middle, top = beam.d / 2, beam.d - (beam.top.d_c if beam.top else 0.0)

        def corner(y: float) -> Vector:
            return (web_end(main, end, Length.from_inches(y)).inches, y, 0.0)

        setback = max(round(dot(corner(middle), way.into) - face, _EXACT), 0.0)
        x, y, _ = corner(top)
        run = (toe - face) if end is End.LEFT else (face - toe)
        edge = min(dot((at, y, 0.0), way.up) for at in (x, x + run))
        drop = round(edge - reach(fitting, way.up)[1], _EXACT)
        return Connection(
            name, kind, beam, between, to_beam, to_support, setback, drop, 1.0,
            support=self.supports.get(end), skew=_skew_of(fitting),
        )  # fmt: skip


def _plate_between(fitting: Fitting, length: Length, width: Length) -> Between:
    """A plate by the length along the reaction and the width across it."""
    part, stock = fitting.part, fitting.part.stock
    thickness = stock.thickness if isinstance(stock, Plate) else stock.tw
    name = stock.designation if length == part.length else f"{stock.designation} on its side"
    return Between(name, material_of(part), thickness.inches, length.inches, width.inches)


def _plate_kind(bolts: Bolted) -> Kind:
    near = bolts.gage <= _MOST_CONVENTIONAL and bolts.columns == 1
    return Kind.SINGLE_PLATE if near else Kind.EXTENDED_PLATE


def _skew_of(fitting: Fitting) -> float:
    """How far a plate leans in the plan from square to its support, by the mitre of its root, degrees."""
    if fitting.kind is not FittingKind.PLATE:
        return 0.0
    cuts = (fitting.part.left, fitting.part.right)
    return max(math.degrees(math.atan(abs(float(cut.mitre.ratio)))) for cut in cuts)


def _support_face(assembly: Assembly, fitting: Fitting) -> SupportFace:
    profile = assembly.main.profile
    if profile in {Profile.BOX, Profile.TUBE}:
        return SupportFace.WALL
    if fitting.on in {Face.TOP, Face.BOTTOM}:
        return SupportFace.COLUMN_FLANGE
    column = {FittingKind.BASE_PLATE, FittingKind.CAP_PLATE} & {f.kind for f in assembly.fittings}
    return SupportFace.COLUMN_WEB if column else SupportFace.GIRDER_WEB
