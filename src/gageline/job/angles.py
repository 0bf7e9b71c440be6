"""Connection angles at the ends of a piece, built from their tables."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.job.axes import hung, into, minus
from gageline.job.cutting import HoleMaker, ends, sides
from gageline.job.fittings import AnglesEntry
from gageline.job.joining import Joined, field_bolts, grade_of, rows_down, web_face
from gageline.job.practice import Practice
from gageline.job.stock import stock_named
from gageline.job.wording import say
from gageline.part import (
    BoltSet,
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
    face_point,
    face_thickness,
    reflect_x,
)
from gageline.steel import Profile, Section, leg_gage
from gageline.units import ZERO, Length, System

__all__ = ["join_angles"]

_TWO_SIDED = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.TEE, Profile.BOX})


def join_angles(entry: AnglesEntry, main: Part, practice: Practice, system: System) -> Joined:
    """Connection angles at one end or both, with the holes they ask for in the web.

    Raises:
        ValueProblem: when the main part has no web, the stock is no angle, or rows and length disagree.
    """
    stock = stock_named(entry.stock, system)
    if not isinstance(stock, Section) or stock.profile is not Profile.ANGLE:
        raise ValueProblem(f"stock {stock.designation} is no angle: give one like L4x3-1/2x5/16")
    _check_main(entry, main)
    _check_keys(entry)
    angle = _AngleWork(entry, stock, main, practice, system)
    part = angle.part()
    joined = [angle.at(end, part) for end in ends(entry.end)]
    return Joined(
        tuple(fitting for one in joined for fitting in one.fittings),
        tuple(weld for one in joined for weld in one.welds),
        tuple(bolts for one in joined for bolts in one.bolts),
        tuple(group for one in joined for group in one.groups),
    )


def _check_main(entry: AnglesEntry, main: Part) -> None:
    name = main.stock.designation
    if main.profile not in _TWO_SIDED:
        raise ValueProblem(f"{name} has no web for connection angles: use plates")
    if main.profile is Profile.BOX and entry.to_web == "bolted":
        raise ValueProblem(f'{name} is hollow and takes no bolts through it: give to_web = "welded"')
    for end in ends(entry.end):
        if not main.cut(end).square:
            raise ValueProblem(f"the {end} end is not cut square: connection angles need a square end")


def _check_keys(entry: AnglesEntry) -> None:
    """Refuse keys that contradict how the legs are joined."""
    if entry.to_web == "bolted" and entry.weld is not None:
        raise ValueProblem('weld is given but the angles are bolted to the web: give to_web = "welded"')
    welded = {"web_gage": entry.to_web, "out_gage": entry.out, "out_hole": entry.out}
    for name, join in welded.items():
        if join == "welded" and getattr(entry, name) is not None:
            raise ValueProblem(f"{name} is given for a leg that is welded: leave it out")
    if entry.stagger and "welded" in {entry.to_web, entry.out}:
        raise ValueProblem("stagger is given, but one leg is welded: leave it out")
    bolted = "bolted" in {entry.to_web, entry.out}
    if bolted and entry.rows is None:
        raise ValueProblem("rows is missing for the bolted leg: give it")
    if not bolted and (entry.length is None or entry.rows is not None):
        raise ValueProblem("both legs are welded: give length, and leave out rows")


@dataclass(frozen=True, slots=True)
class _AngleWork:
    """One table of connection angles on its way to fittings."""

    entry: AnglesEntry
    stock: Section
    main: Part
    practice: Practice
    system: System

    @property
    def web_leg(self) -> Face:
        """Of a section's two legs the upright one is the longer."""
        return Face.LEG_A if self.entry.web_leg == "long" else Face.LEG_B

    @property
    def out_leg(self) -> Face:
        return Face.LEG_B if self.web_leg is Face.LEG_A else Face.LEG_A

    def leg(self, face: Face) -> Length:
        return self.stock.d if face is Face.LEG_A else self.stock.bf

    @property
    def first(self) -> Length:
        return self.entry.end_distance or self.practice.end_distance

    @property
    def rows(self) -> tuple[Length, ...]:
        """Rows from the angle's upper end; without bolts none."""
        return rows_down(self.first, self.entry.rows or 0, self.entry.pitch or self.practice.pitch)

    @property
    def out_rows(self) -> tuple[Length, ...]:
        """Rows of the outstanding leg from the angle's upper end."""
        return tuple(row + (self.entry.stagger or ZERO) for row in self.rows)

    @property
    def length(self) -> Length:
        last = self.out_rows[-1] if self.rows else ZERO
        wanted = self.entry.length or last + self.first
        if wanted <= last:
            raise ValueProblem(
                f"length {say(wanted, self.system)} ends above the last of {len(self.rows)} rows, "
                f"{say(last, self.system)} down: give a longer angle or leave length out"
            )
        return wanted

    @property
    def projection(self) -> Length:
        return self.practice.projection if self.entry.projection is None else self.entry.projection

    def gage(self, face: Face) -> Length:
        name = "web_gage" if face is self.web_leg else "out_gage"
        given: Length | None = getattr(self.entry, name)
        leg = say(self.leg(face), self.system)
        if given is not None and given >= self.leg(face):
            raise ValueProblem(
                f"{name} {say(given, self.system)} is beyond the leg of {leg}: give the distance "
                "from the heel"
            )
        try:
            return given or leg_gage(self.leg(face)).gage
        except ValueProblem as unknown:
            raise ValueProblem(
                f"{name} is missing, for a leg of {leg} has no usual gage: give it"
            ) from unknown

    def part(self) -> Part:
        """The angle as it lies with its upper end to the left."""
        groups = []
        maker = HoleMaker.of(self.entry, self.practice)
        if self.entry.to_web == "bolted":
            groups.append((self.web_leg, "web leg", self.rows, maker))
        if self.entry.out == "bolted":
            groups.append(
                (
                    self.out_leg,
                    "outstanding leg",
                    self.out_rows,
                    HoleMaker.of(self.entry, self.practice, self.entry.out_hole),
                )
            )
        return Part(
            self.entry.mark or "",
            self.stock,
            grade_of(self.stock, self.entry.grade),
            self.length,
            groups=tuple(
                HoleGroup(name, face, m.grid(rows, (self.gage(face),)), m.bolt, m.kind)
                for face, name, rows, m in groups
            ),
        )

    def at(self, end: End, part: Part) -> Joined:
        chosen = sides(self.entry.sides)
        names = [f"{end} {side} angle" for side in chosen]
        fittings = tuple(
            self.fitting(end, side, name, part) for side, name in zip(chosen, names, strict=True)
        )
        bolts: list[BoltSet] = []
        welds: tuple[Weld, ...] = ()
        groups: tuple[HoleGroup, ...] = ()
        maker = HoleMaker.of(self.entry, self.practice)
        if self.entry.to_web == "bolted":
            grip = face_thickness(self.main.stock, Face.NEAR) + self.stock.tw * len(names)
            if maker.bolt:
                bolts.append(BoltSet(tuple(names), maker.bolt, len(self.rows), grip, field=False))
            groups = (self.web_holes(end, maker),)
        else:
            size = self.entry.weld or self.practice.weld
            run = self.length + (self.leg(self.web_leg) - self.projection) * 2
            where = "toe, top and bottom of the web leg"
            welds = tuple(Weld(name, size, run, 1, where) for name in names)
        if self.entry.out == "bolted":
            bolts.extend(field_bolts(tuple(names), maker.bolt, len(self.rows) * len(names)))
        return Joined(fittings, welds, tuple(bolts), groups)

    def top(self) -> Length:
        """Height of the angle's upper end over the section's bottom."""
        _, high = extent_y(self.main.stock)
        return high - (self.entry.drop or self.practice.drop) + self.first

    def fitting(self, end: End, side: Side, name: str, part: Part) -> Fitting:
        face = web_face(side)
        heel = -self.projection if end is End.LEFT else self.main.length + self.projection
        level = face_point(self.main.stock, face, ZERO, ZERO)[2]
        to_web: Vector = (0, 0, -1) if side is Side.NEAR else (0, 0, 1)
        ey, ez = (into(end), to_web) if self.web_leg is Face.LEG_A else (minus(to_web), minus(into(end)))
        placement, down = hung(ey, ez, (heel, self.top(), level), self.length)
        join = Join.BOLTED if self.entry.to_web == "bolted" else Join.WELDED
        return Fitting(name, FittingKind.ANGLE, part if down else reflect_x(part), placement, face, end, join)

    def web_holes(self, end: End, maker: HoleMaker) -> HoleGroup:
        distance = self.gage(self.web_leg) - self.projection
        x = distance if end is End.LEFT else self.main.length - distance
        ys = tuple(self.top() - row for row in self.rows)
        face = Face.FAR if self.entry.sides == "far" else Face.NEAR
        holes = replace(maker, angle=_across_fitting(maker.angle)).grid((x,), ys)
        return HoleGroup(f"{end} end, for the angles", face, holes, maker.bolt, maker.kind)


def _across_fitting(turn: Fraction) -> Fraction:
    """The turn of a slot in the steel that a fitting stands square to, from its turn in the fitting."""
    return turn - 90 if turn > 0 else turn + 90
