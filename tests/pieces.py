"""Small pieces of steel for tests, all of them invented."""

from gageline.part import (
    End,
    Face,
    Fitting,
    FittingKind,
    Hole,
    HoleGroup,
    Join,
    Part,
    Placement,
    face_point,
    normal,
)
from gageline.steel import HoleKind, find
from gageline.units import Length, parse_length

__all__ = ["ONE_OF_EACH", "at", "clip_angle", "drilled", "hole", "leaning_aside", "leaning_plate", "piece"]

ONE_OF_EACH = ("W16X26", "C8X11.5", "WT8X18", "HSS6X6X3/8", "HSS6.000X0.375", "L6X4X1/2", "PL1/2X8")


def at(text: str) -> Length:
    return parse_length(text)


def piece(stock: str = "W16X26", length: str = "10'-0", mark: str = "B1", **features: object) -> Part:
    """A part of any stock; features as keyword arguments of `Part`."""
    return Part(mark, find(stock), "A992", at(length), **features)  # type: ignore[arg-type] # tests give any feature


def hole(x: str, y: str, width: str = "13/16", length: str = "", angle: int = 0) -> Hole:
    """A hole by the text of its dimensions; round unless a length is given."""
    below = y.startswith("-")
    level = -at(y[1:]) if below else at(y)
    return Hole(at(x), level, at(width), at(length or width), angle)  # type: ignore[arg-type] # an int is a fraction


def drilled(
    face: Face, *holes: Hole, bolt: str = "3/4", name: str = "web", through: bool = False
) -> HoleGroup:
    kind = HoleKind.STD if bolt else None
    return HoleGroup(name, face, holes, bolt, kind, through=through)


def clip_angle(
    main: Part, *, length: str = '9"', low: str = '3"', holes: tuple[HoleGroup, ...] = ()
) -> Fitting:
    """A connection angle on the near side of a beam's web at its left end, its back against the web.

    The angle's x runs up the web; its longer leg lies on the web and its other leg stands at the end.
    """
    angle = piece("L4X3-1/2X5/16", length, "a1", groups=holes)
    web = face_point(main.stock, Face.NEAR, at("0"), at("0"))[2]
    # angle's z (out of the web leg's outside) looks into the web, so its y runs along the beam
    stand = Placement((-at('1/2"'), at(low), web), (0, 1, 0), (1, 0, 0))
    return Fitting("left near angle", FittingKind.ANGLE, angle, stand, Face.NEAR, End.LEFT, Join.BOLTED)


def leaning_plate(toward: int, on: Face = Face.NEAR) -> Fitting:
    """A plate 3/8 thick that stands out of the web by 4 where it runs 3 along it: a 3-4-5 triangle."""
    out = 1 if on is Face.NEAR else -1
    web = face_point(piece().stock, on, at("0"), at("0"))[2]
    stand = Placement((at("5'"), at("3"), web), (0.6 * toward, 0, 0.8 * out), (0, 1, 0))
    plate = piece("PL3/8X9", "5", "p1")
    return Fitting("plate", FittingKind.PLATE, plate, stand, on, None, Join.WELDED)


def leaning_aside(on: Face, toward: int, stock: str = "HSS6X6X3/8") -> Fitting:
    """The same triangle across a column: the plate runs 9 along it from 5 feet and leans to a side of it."""
    way = normal(on)
    aside = (0, 0, 1) if way[1] else (0, 1, 0)
    ex = tuple(0.6 * toward * a + 0.8 * b for a, b in zip(aside, way, strict=True))
    middle = at("0") if way[1] else at("3")
    stand = Placement(face_point(piece(stock).stock, on, at("5'"), middle), (ex[0], ex[1], ex[2]), (1, 0, 0))
    return Fitting("plate", FittingKind.PLATE, piece("PL3/8X9", "5", "p1"), stand, on, None, Join.WELDED)
