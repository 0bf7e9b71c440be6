"""Connections read off a piece as drawn: its fittings, their holes and welds, and the end of its web."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from gageline.errors import ValueProblem
from gageline.part import (
    Assembly,
    End,
    Face,
    Fitting,
    FittingKind,
    Hole,
    HoleGroup,
    Join,
    Part,
    bounds,
    face_thickness,
)
from gageline.steel import HoleKind, Plate, Profile, Section, bolt, grade, hole_size
from gageline.strength.aisc360.j3_bolts import Hole as HoleType
from gageline.strength.connection import (
    Beam,
    Bolted,
    Connection,
    Fillet,
    Holes,
    Kind,
    Material,
    Notch,
    Support,
    SupportFace,
)
from gageline.strength.connection import Fitting as Between
from gageline.units import Length

__all__ = ["BoltSteel", "Drawn", "beam_of", "bolt_steel", "connections_of", "material_of", "support_of"]

_GROUPS = {
    "A325": "120",
    "F1852": "120",
    "120": "120",
    "A490": "150",
    "F2280": "150",
    "150": "150",
    "A307": "A307",
}
_MOST_CONVENTIONAL = 3.5


@dataclass(frozen=True, slots=True)
class BoltSteel:
    """What bolts are made of.

    Args:
        group: of Table J3.2.
        threads: N or X.
    """

    group: str
    threads: str


@dataclass(frozen=True, slots=True)
class Drawn:
    """A connection as drawn, before its reaction is known; or why there is none.

    Args:
        name: which end or plate.
        end: of the piece; None for a plate that carries another beam.
        connection: with a reaction of 1 kip; None where it cannot be checked.
        why: the reason, where it cannot.
    """

    name: str
    end: End | None
    connection: Connection | None
    why: str = ""


def bolt_steel(text: str) -> BoltSteel:
    """The strength group that a bolt's grade stands for.

    Args:
        text: `A325-N`, `A490-X`, `F1852`; N where the threads are not given.

    Raises:
        ValueProblem: a grade that is not in Table J3.2.

    Source: Table J3.2: group 120 is A325 and F1852, group 150 is A490 and F2280.
    """
    name, _, threads = text.upper().replace("ASTM", "").replace(" ", "").partition("-")
    if name not in _GROUPS or threads not in {"", "N", "X"}:
        raise ValueProblem(
            f'bolt grade "{text}" is not in Table J3.2: give A325-N, A325-X, A490-N or A490-X as bolt_grade'
        )
    return BoltSteel(_GROUPS[name], threads or "N")


def material_of(part: Part) -> Material:
    """The steel of a part, at its own thickness."""
    stock = part.stock
    thickness = stock.thickness if isinstance(stock, Plate) else stock.tf
    F_y, F_u = grade(part.grade).strength(thickness)
    return Material(part.grade, F_y, F_u)


def beam_of(part: Part, end: End) -> Beam:
    """The end of a beam.

    Args:
        part: the beam.
        end: which end.

    Raises:
        ValueProblem: no I-shape or channel, or an end that is not cut square.
    """
    stock = part.stock
    if not isinstance(stock, Section) or stock.profile not in {Profile.I_SHAPE, Profile.CHANNEL}:
        raise ValueProblem(f"{stock.designation} is no I-shape or channel: its end is not covered")
    if not part.cut(end).square:
        raise ValueProblem(f"the {end} end is not cut square: skewed and sloped connections are not covered")
    notches = {
        cope.edge: Notch(cope.length.inches, cope.depth.inches) for cope in part.copes if cope.end is end
    }
    return Beam(
        stock.designation,
        material_of(part),
        stock.d.inches,
        stock.tw.inches,
        stock.bf.inches,
        stock.tf.inches,
        (stock.kdes or stock.kdet or stock.tf).inches,
        stock.profile is Profile.I_SHAPE,
        notches.get(Face.TOP),
        notches.get(Face.BOTTOM),
    )


def support_of(section: Section, steel: Material, face: SupportFace) -> Support:
    """A support, its thickness at the face taken from the section.

    Args:
        section: of the support.
        steel: its steel.
        face: what the connection stands on.
    """
    flange = face is SupportFace.COLUMN_FLANGE
    return Support(section.designation, steel, face, (section.tf if flange else section.tw).inches)


def connections_of(
    assembly: Assembly, steel: BoltSteel, weld: Length, supports: Mapping[End, Support] | None = None
) -> tuple[Drawn, ...]:
    """The connections of a piece as drawn.

    Args:
        assembly: the piece.
        steel: of its bolts.
        weld: leg of field welds, which a drawing of the piece does not give.
        supports: of its ends, where they are known.

    Returns:
        One for each end with connection angles or an end plate, and for each single plate on it; each with a
        reaction of 1 kip.
    """
    reader = _Reader(assembly, steel, weld, supports or {})
    found = [reader.end(end) for end in End if reader.at(end)]
    found.extend(reader.plate(fitting) for fitting in assembly.fittings if fitting.kind is FittingKind.PLATE)
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Reader:
    """A piece on its way to connections."""

    assembly: Assembly
    steel: BoltSteel
    weld: Length
    supports: Mapping[End, Support]

    def at(self, end: End) -> tuple[Fitting, ...]:
        kinds = {FittingKind.ANGLE, FittingKind.END_PLATE}
        return tuple(f for f in self.assembly.fittings if f.end is end and f.kind in kinds)

    def end(self, end: End) -> Drawn:
        name = f"{self.assembly.mark} {end}"
        fittings = self.at(end)
        kinds = {fitting.kind for fitting in fittings}
        if len(kinds) > 1:
            return Drawn(
                name, end, None, "angles and an end plate at one end are not covered: use one of them"
            )
        made = self._end_plate if FittingKind.END_PLATE in kinds else self._angles
        try:
            return Drawn(name, end, made(name, end, fittings))
        except ValueProblem as refused:
            return Drawn(name, end, None, str(refused))

    def plate(self, fitting: Fitting) -> Drawn:
        name = f"{self.assembly.mark} {fitting.name}"
        try:
            return Drawn(name, None, self._single_plate(name, fitting))
        except ValueProblem as refused:
            return Drawn(name, None, None, str(refused))

    def _leg(self, fitting: Fitting) -> Fillet:
        size = next((weld.size for weld in self.assembly.welds if weld.fitting == fitting.name), self.weld)
        return Fillet(size.inches)

    def _angles(self, name: str, end: End, fittings: Sequence[Fitting]) -> Connection:
        fitting, main = fittings[0], self.assembly.main
        stock = fitting.part.stock
        if not isinstance(stock, Section):
            raise ValueProblem(f"{stock.designation} is no angle: use one")
        web_face = _face_on_web(fitting)
        legs = {Face.LEG_A: stock.d.inches, Face.LEG_B: stock.bf.inches}
        out_face = Face.LEG_B if web_face is Face.LEG_A else Face.LEG_A
        beam = beam_of(main, end)
        between = Between(
            f"{'2' if len(fittings) == 2 else ''}{stock.designation}",
            material_of(fitting.part),
            stock.tw.inches,
            fitting.part.length.inches,
            legs[web_face],
            legs[out_face],
        )
        web, out = _group_on(fitting.part, web_face), _group_on(fitting.part, out_face)
        in_web = next((g for g in main.groups if g.name == f"{end} end, for the angles"), None)
        to_beam: Bolted | Fillet = self._leg(fitting)
        if fitting.join is Join.BOLTED and web is not None:
            to_beam = self._bolted(fitting, web, legs[web_face], in_web)
        to_support: Bolted | Fillet = Fillet(self.weld.inches)
        if out is not None:
            to_support = self._bolted(fitting, out, legs[out_face], None)
        kind = Kind.DOUBLE_ANGLES if len(fittings) == 2 else Kind.SINGLE_ANGLE
        return self._at_end(name, end, kind, (beam, between, to_beam, to_support), fitting)

    def _end_plate(self, name: str, end: End, fittings: Sequence[Fitting]) -> Connection:
        fitting = fittings[0]
        stock, part = fitting.part.stock, fitting.part
        if not isinstance(stock, Plate) or not part.groups:
            raise ValueProblem("the end plate has no holes for bolts: give rows")
        beam, group = beam_of(self.assembly.main, end), part.groups[0]
        ys = sorted({hole.y for hole in group.holes})
        if len(ys) != 2:
            raise ValueProblem(f"{len(ys)} columns of bolts in an end plate are not covered: use 2")
        half = (ys[1] - ys[0]).inches / 2
        column = HoleGroup(
            group.name, group.face, tuple(h for h in group.holes if h.y == ys[0]), group.bolt, group.kind
        )
        edge = min(ys[0], stock.width - ys[1]).inches
        bolts = self._joint(fitting, column, half, edge, None)
        between = Between(
            stock.designation,
            material_of(part),
            stock.thickness.inches,
            part.length.inches,
            stock.width.inches,
        )
        found = (beam, between, self._leg(fitting), bolts)
        return self._at_end(name, end, Kind.END_PLATE, found, fitting)

    def _at_end(
        self,
        name: str,
        end: End,
        kind: Kind,
        found: tuple[Beam, Between, Bolted | Fillet, Bolted | Fillet],
        fitting: Fitting,
    ) -> Connection:
        beam, between, to_beam, to_support = found
        (x_low, x_high), (_, y_high), _ = bounds(fitting)
        setback = -x_low if end is End.LEFT else x_high - self.assembly.main.length
        top = beam.d - (beam.top.d_c if beam.top else 0.0)
        drop = top - y_high.inches
        support = self.supports.get(end)
        return Connection(
            name, kind, beam, between, to_beam, to_support, setback.inches, drop, 1.0, support=support
        )

    def _bolted(self, fitting: Fitting, group: HoleGroup, leg: float, other: HoleGroup | None) -> Bolted:
        ys = {hole.y for hole in group.holes}
        if len(ys) != 1:
            raise ValueProblem(f"{len(ys)} columns of bolts in one leg are not covered: use 1")
        gage = ys.pop().inches
        return self._joint(fitting, group, gage, leg - gage, other)

    def _joint(
        self, fitting: Fitting, group: HoleGroup, gage: float, side: float, other: HoleGroup | None
    ) -> Bolted:
        if not group.bolt or group.kind is None:
            raise ValueProblem(f'the holes "{group.name}" are for no bolt of a table: give bolt and hole')
        size = bolt(group.bolt)
        xs, down = sorted({hole.x for hole in group.holes}), fitting.placement.ex[1] < 0
        first, last = xs[0], fitting.part.length - xs[-1]
        standard = hole_size(size, HoleKind.STD)
        mate = (
            _holes(other.holes[0], other.kind or HoleKind.STD)
            if other is not None
            else Holes(HoleType.STANDARD, standard.width.inches, standard.width.inches)
        )
        return Bolted(
            size.size,
            size.diameter.inches,
            self.steel.group,
            self.steel.threads,
            len(xs),
            _pitch(xs),
            gage,
            (first if down else last).inches,
            (last if down else first).inches,
            side,
            _holes(group.holes[0], group.kind),
            mate,
        )

    def _single_plate(self, name: str, fitting: Fitting) -> Connection:
        stock, part, main = fitting.part.stock, fitting.part, self.assembly.main
        if not isinstance(stock, Plate) or not part.groups or fitting.on is None:
            raise ValueProblem("the plate has no holes for bolts: give rows")
        ys = sorted({hole.y for hole in part.groups[0].holes})
        if len(ys) != 1:
            raise ValueProblem(f"{len(ys)} columns of bolts on a plate as drawn are not covered: use 1")
        gage = ys[0].inches
        bolts = self._joint(fitting, part.groups[0], gage, stock.width.inches - gage, None)
        between = Between(
            stock.designation,
            material_of(part),
            stock.thickness.inches,
            part.length.inches,
            stock.width.inches,
        )
        kind = Kind.SINGLE_PLATE if gage <= _MOST_CONVENTIONAL else Kind.EXTENDED_PLATE
        support = Support(
            main.stock.designation,
            material_of(main),
            _support_face(self.assembly, fitting),
            face_thickness(main.stock, fitting.on).inches,
        )
        return Connection(
            name, kind, None, between, bolts, self._leg(fitting), 0.5, 0.0, 1.0, support=support
        )


def _face_on_web(fitting: Fitting) -> Face:
    """The leg of an angle that lies against the web: the one whose face looks across the beam."""
    across = abs(fitting.placement.ez[2])
    return Face.LEG_A if across > 0.5 else Face.LEG_B


def _group_on(part: Part, face: Face) -> HoleGroup | None:
    return next((group for group in part.groups if group.face is face), None)


def _pitch(xs: Sequence[Length]) -> float:
    steps = {b - a for a, b in pairwise(xs)}
    if len(steps) > 1:
        raise ValueProblem("rows of bolts at uneven pitches are not covered: give them one pitch")
    return steps.pop().inches if steps else 1.0


def _holes(hole: Hole, kind: HoleKind) -> Holes:
    """Holes of a fitting that stands upright: its x runs along the reaction."""
    upright = abs(hole.angle) < 45
    length, width = hole.length.inches, hole.width.inches
    along, across = (length, width) if upright else (width, length)
    kinds = {
        HoleKind.STD: (HoleType.STANDARD, HoleType.STANDARD),
        HoleKind.OVS: (HoleType.OVERSIZED, HoleType.OVERSIZED),
        HoleKind.SSL: (HoleType.SHORT_PARALLEL, HoleType.SHORT_PERPENDICULAR),
        HoleKind.LSL: (HoleType.LONG_PARALLEL, HoleType.LONG_PERPENDICULAR),
    }
    return Holes(kinds[kind][0 if upright else 1], along, across)


def _support_face(assembly: Assembly, fitting: Fitting) -> SupportFace:
    profile = assembly.main.profile
    if profile in {Profile.BOX, Profile.TUBE}:
        return SupportFace.WALL
    if fitting.on in {Face.TOP, Face.BOTTOM}:
        return SupportFace.COLUMN_FLANGE
    column = {FittingKind.BASE_PLATE, FittingKind.CAP_PLATE} & {f.kind for f in assembly.fittings}
    return SupportFace.COLUMN_WEB if column else SupportFace.GIRDER_WEB
