"""Piece marks: equal pieces get one mark, opposite hands are recognised, marks given by people stay."""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from dataclasses import dataclass, replace

from gageline.part import Assembly, Fitting, HoleGroup, Part, Placement, opposite_hand, reflect_x, reflect_z
from gageline.steel import Profile

__all__ = ["Marked", "mark_pieces", "signature", "turned_round"]

_TURNABLE = frozenset({Profile.I_SHAPE, Profile.BOX})
_FINE = 7  # decimals of a direction that tell pieces apart
_ROUND = {"left": "right", "right": "left", "near": "far", "far": "near"}


@dataclass(frozen=True, slots=True)
class Marked:
    """A piece of the frame with the mark it got.

    Args:
        mark: of the piece.
        turned: whether it lies turned end for end from the piece that is drawn.
    """

    mark: str
    turned: bool


def turned_round(assembly: Assembly) -> Assembly:
    """The same piece seen from its other side: what was left and near is right and far.

    Args:
        assembly: of a section that is alike on both sides of its web.
    """
    length = assembly.main.length

    def word(name: str) -> str:
        return " ".join(_ROUND.get(part, part) for part in name.split(" "))

    def fitting(old: Fitting) -> Fitting:
        x, y, z = old.placement.origin
        (ax, ay, az), (bx, by, bz) = old.placement.ex, old.placement.ey
        placement = Placement((length - x, y, -z), (-ax, ay, -az), (-bx, by, -bz))
        return replace(
            old,
            name=word(old.name),
            placement=placement,
            on=None if old.on is None else type(old.on)(_ROUND.get(old.on, old.on)),
            end=None if old.end is None else old.end.other,
        )

    main = reflect_x(reflect_z(assembly.main))
    groups = tuple(replace(group, name=word(group.name)) for group in main.groups)
    return replace(
        assembly,
        main=replace(main, groups=groups),
        fittings=tuple(fitting(old) for old in assembly.fittings),
        welds=tuple(replace(weld, fitting=word(weld.fitting)) for weld in assembly.welds),
        bolts=tuple(
            replace(bolts, fittings=tuple(word(name) for name in bolts.fittings)) for bolts in assembly.bolts
        ),
    )


def signature(assembly: Assembly) -> Hashable:
    """What makes a piece itself: geometry, fittings, grade and finish; no marks, no names, no order."""
    return (
        _part_signature(assembly.main),
        frozenset(_counted(_fitting_signature(one) for one in assembly.fittings)),
        frozenset(_counted((weld.size, weld.length, weld.runs) for weld in assembly.welds)),
        frozenset(_counted((bolts.bolt, bolts.count, bolts.grip, bolts.field) for bolts in assembly.bolts)),
        assembly.finish,
    )


def _counted(items: Iterable[Hashable]) -> Iterable[Hashable]:
    counts: dict[Hashable, int] = {}
    for item in items:
        counts[item] = counts.get(item, 0) + 1
    return counts.items()


def _part_signature(part: Part) -> Hashable:
    holes: dict[Hashable, int] = {}
    for group in part.groups:
        for hole in _holes(group):
            holes[hole] = holes.get(hole, 0) + 1
    return (
        part.stock.designation,
        part.grade,
        part.length,
        part.left,
        part.right,
        frozenset(part.copes),
        frozenset(part.trims),
        frozenset(part.clips),
        frozenset(holes.items()),
        frozenset(part.openings),
    )


def _holes(group: HoleGroup) -> Iterable[Hashable]:
    face = "web" if group.face in {"near", "far"} and not group.through else group.face
    for hole in group.holes:
        yield (face, hole.x, hole.y, hole.width, hole.length, hole.angle, group.bolt, group.kind)


def _fitting_signature(fitting: Fitting) -> Hashable:
    placement = fitting.placement
    axes = tuple(round(value, _FINE) + 0.0 for value in (*placement.ex, *placement.ey))
    return (
        _part_signature(fitting.part),
        fitting.kind,
        fitting.join,
        placement.origin,
        axes,
    )


def mark_pieces(
    pieces: dict[str, Assembly], given: dict[str, str], taken: set[str]
) -> tuple[dict[str, Marked], tuple[Assembly, ...]]:
    """The marks of the pieces of a frame, and one of each with its quantity.

    A piece without a mark of its own takes the name of the first member that is equal to it, so that
    marks do not move when something else changes.

    Args:
        pieces: by the member's name, in the order of the document.
        given: marks that people gave, by the member's name.
        taken: marks of pieces as drawn, in small letters.

    Returns:
        The mark of each member, and the pieces.
    """
    marks: dict[str, Marked] = {}
    first: dict[tuple[Hashable, str | None], str] = {}
    made: dict[str, Assembly] = {}
    for name, assembly in pieces.items():
        own = given.get(name)
        key = (signature(assembly), own)
        round_key = (signature(turned_round(assembly)), own) if _turnable(assembly) else None
        if key in first:
            marks[name] = Marked(first[key], turned=False)
        elif round_key is not None and round_key in first:
            marks[name] = Marked(first[round_key], turned=True)
        else:
            mark = _free(own or name, {*taken, *(m.casefold() for m in made)})
            first[key] = mark
            marks[name] = Marked(mark, turned=False)
            hand = _hand_of(assembly, own, first, made)
            made[mark] = replace(assembly, main=replace(assembly.main, mark=mark), quantity=0, hand_of=hand)
        mark = marks[name].mark
        made[mark] = replace(made[mark], quantity=made[mark].quantity + 1)
    return marks, tuple(made.values())


def _turnable(assembly: Assembly) -> bool:
    return assembly.main.profile in _TURNABLE


def _hand_of(
    assembly: Assembly,
    own: str | None,
    first: dict[tuple[Hashable, str | None], str],
    made: dict[str, Assembly],
) -> str | None:
    """The mark of the piece that this one is the opposite hand of, if any."""
    mirrored = opposite_hand(assembly, assembly.mark, 1)
    seen = [signature(mirrored)]
    if _turnable(assembly):
        seen.append(signature(turned_round(mirrored)))
    itself = signature(assembly)
    for one in seen:
        mark = first.get((one, own)) or first.get((one, None))
        if mark is not None and one != itself and mark in made:
            return mark
    return None


def _free(mark: str, taken: set[str]) -> str:
    if mark.casefold() not in taken:
        return mark
    number = 2
    while f"{mark}-{number}".casefold() in taken:
        number += 1
    return f"{mark}-{number}"
