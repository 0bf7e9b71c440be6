"""Opposite hand: the mirror image of a part or of a whole assembly."""

from __future__ import annotations

from dataclasses import replace

from gageline.part.assembly import Assembly, Fitting
from gageline.part.faces import Face, Point
from gageline.part.features import EndCut, Hole, HoleGroup
from gageline.part.part import Part
from gageline.part.placing import Placement, Vector
from gageline.steel import Profile
from gageline.units import Length

__all__ = ["opposite_hand", "reflect_x", "reflect_z", "turns_end_for_end"]

_ACROSS_WEB = {Face.NEAR: Face.FAR, Face.FAR: Face.NEAR}
_FLANGES = frozenset({Face.TOP, Face.BOTTOM})
_TWO_SIDED = frozenset({Profile.I_SHAPE, Profile.TEE, Profile.BOX, Profile.TUBE})
_SWAPPED = {"near": "far", "far": "near"}
_TURNED = {"left": "right", "right": "left"}


def in_order(holes: tuple[Hole, ...]) -> tuple[Hole, ...]:
    """Holes in the order of record: along x, then from the top down."""
    return tuple(sorted(holes, key=lambda hole: (hole.x, -hole.y)))


def reflect_x(part: Part) -> Part:
    """The part end for end: what was at the left is at the right, every face keeps its name."""

    def group(old: HoleGroup) -> HoleGroup:
        holes = tuple(replace(hole, x=part.length - hole.x, angle=-hole.angle) for hole in old.holes)
        return replace(old, holes=in_order(holes))

    return replace(
        part,
        left=part.right,
        right=part.left,
        copes=tuple(replace(cope, end=cope.end.other) for cope in part.copes),
        trims=tuple(replace(trim, end=trim.end.other) for trim in part.trims),
        clips=tuple(replace(clip, end=clip.end.other) for clip in part.clips),
        groups=tuple(group(old) for old in part.groups),
        openings=tuple(replace(opening, x=part.length - opening.x) for opening in part.openings),
    )


def reflect_z(part: Part) -> Part:
    """The part with near and far side changed, for sections that are alike on both sides of the web."""

    def cut(old: EndCut) -> EndCut:
        return replace(old, mitre=-old.mitre)

    def group(old: HoleGroup) -> HoleGroup:
        face = _ACROSS_WEB.get(old.face, old.face)
        if face not in _FLANGES:
            return replace(old, face=face)
        holes = tuple(replace(hole, y=-hole.y, angle=-hole.angle) for hole in old.holes)
        return replace(old, face=face, holes=in_order(holes))

    return replace(
        part,
        left=cut(part.left),
        right=cut(part.right),
        trims=tuple(replace(trim, side=trim.side.other) for trim in part.trims),
        groups=tuple(group(old) for old in part.groups),
        openings=tuple(
            replace(
                opening,
                face=_ACROSS_WEB.get(opening.face, opening.face),
                y=-opening.y if opening.face in _FLANGES else opening.y,
            )
            for opening in part.openings
        ),
    )


def turns_end_for_end(part: Part) -> bool:
    """Whether the opposite hand of a part changes left and right, not near and far."""
    return part.profile not in _TWO_SIDED


def opposite_hand(assembly: Assembly, mark: str, quantity: int) -> Assembly:
    """The opposite hand of a piece, with its fittings.

    Sections that are alike on both sides of the web change near and far, so that every reading
    along the beam stays; channels, angles and plates are turned end for end.

    Args:
        assembly: the piece as shown.
        mark: the mark of the opposite hand.
        quantity: how many are wanted.
    """
    across_web = not turns_end_for_end(assembly.main)
    main = reflect_z(assembly.main) if across_web else reflect_x(assembly.main)
    words = _SWAPPED if across_web else _TURNED
    groups = tuple(replace(group, name=_reworded(group.name, words)) for group in main.groups)
    return replace(
        assembly,
        main=replace(main, mark=mark, groups=groups),
        quantity=quantity,
        hand_of=assembly.mark,
        fittings=tuple(
            _mirrored_fitting(fitting, assembly.main.length, across_web=across_web)
            for fitting in assembly.fittings
        ),
        welds=tuple(replace(weld, fitting=_reworded(weld.fitting, words)) for weld in assembly.welds),
        bolts=tuple(
            replace(bolts, fittings=tuple(_reworded(name, words) for name in bolts.fittings))
            for bolts in assembly.bolts
        ),
    )


def _reworded(name: str, words: dict[str, str]) -> str:
    return " ".join(words.get(word, word) for word in name.split(" "))


def _mirrored_fitting(fitting: Fitting, main_length: Length, *, across_web: bool) -> Fitting:
    """A fitting in the mirror: its part end for end, so that it is turned and not turned inside out."""
    placement = fitting.placement
    corner = placement.point((fitting.part.length, Length(0), Length(0)))
    origin: Point = (
        (corner[0], corner[1], -corner[2]) if across_web else (main_length - corner[0], corner[1], corner[2])
    )

    def flip(vector: Vector, sign: int) -> Vector:
        x, y, z = (sign * value for value in vector)
        return (x, y, -z) if across_web else (-x, y, z)

    words = _SWAPPED if across_web else _TURNED
    end = fitting.end
    return replace(
        fitting,
        name=_reworded(fitting.name, words),
        part=reflect_x(fitting.part),
        placement=Placement(origin, flip(placement.ex, -1), flip(placement.ey, 1)),
        on=_ACROSS_WEB.get(fitting.on, fitting.on) if across_web and fitting.on else fitting.on,
        end=end if across_web or end is None else end.other,
    )
