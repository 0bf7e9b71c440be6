"""Marks of fittings: their own, or one that follows from their steel, and one mark for equal steel.

The mark follows from nothing but the fitting itself, so that steel which is cut and marked keeps its mark
when something else in the job changes: a letter for its kind and a number of four digits, `a4713`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from hashlib import sha256
from itertools import count, islice

from gageline.errors import ValueProblem
from gageline.part import (
    Assembly,
    Fitting,
    FittingKind,
    Part,
    Placement,
    content_of,
    extent_z,
    reflect_x,
    same_steel,
)
from gageline.steel import Profile
from gageline.units import ZERO

__all__ = ["FittingMarks"]

_LETTERS = {
    FittingKind.ANGLE: "a",
    FittingKind.PLATE: "p",
    FittingKind.END_PLATE: "e",
    FittingKind.STIFFENER: "s",
    FittingKind.BASE_PLATE: "b",
    FittingKind.CAP_PLATE: "c",
    FittingKind.END_CAP: "k",
    FittingKind.TONGUE: "t",
}
_SEARCHED = 64  # numbers of four digits that are tried for one fitting
_HAND = "-OH"  # of the opposite hand of a fitting whose mark the document gives


@dataclass(slots=True)
class FittingMarks:
    """The marks given out in a job so far.

    Args:
        pieces: marks of pieces, in small letters, since marks are painted in capitals.
        given: marks that the document gives to fittings, in small letters.
        parts: the fitting's steel by the mark that the document gives.
        marks: marks given out, by the letter of the kind and the steel without its mark.
    """

    pieces: set[str]
    given: set[str]
    parts: dict[str, Part] = field(default_factory=dict)
    marks: dict[str, dict[Part, str]] = field(default_factory=dict)

    @classmethod
    def beside(cls, pieces: set[str], drawn: Iterable[Assembly]) -> FittingMarks:
        """The marks of further pieces of a job, whose fittings share those that equal steel has been given.

        Args:
            pieces: marks of all pieces, in small letters.
            drawn: the pieces that have their marks.
        """
        made = cls(pieces, set())
        for fitting in (fitting for assembly in drawn for fitting in assembly.fittings):
            mark, letter = fitting.part.mark, _LETTERS[fitting.kind]
            ways = _ways(replace(fitting, part=replace(fitting.part, mark="")))
            made.given.add(mark.casefold())
            if mark in islice(_numbered(letter, ways), _SEARCHED):  # else the document gave it
                made.marks.setdefault(letter, {})[ways[0].part] = mark
        return made

    def of(self, assembly: Assembly) -> Assembly:
        """The piece with a mark on every fitting; equal ones, but for a few ticks, are made as one.

        Raises:
            ValueProblem: when the document gives one mark to fittings that differ.
        """
        return replace(assembly, fittings=tuple(self._marked(fitting) for fitting in assembly.fittings))

    def _marked(self, fitting: Fitting) -> Fitting:
        first, *others = _ways(fitting)
        if fitting.part.mark:
            return self._own(first)
        letter = _LETTERS[fitting.kind]
        marks = self.marks.setdefault(letter, {})
        if first.part not in marks:
            for way in (first, *others):
                for part, mark in marks.items():
                    if same_steel(part, way.part):
                        return replace(way, part=replace(part, mark=mark))
            marks[first.part] = self._new(letter, (first, *others))
        return replace(first, part=replace(first.part, mark=marks[first.part]))

    def _own(self, fitting: Fitting) -> Fitting:
        """The fitting with the mark that the document gives, or with that of its opposite hand."""
        part = fitting.part
        if part.mark.casefold() in self.pieces:
            raise ValueProblem(
                f'mark "{part.mark}" of a fitting is the mark of a piece: give it one of its own'
            )
        first = self.parts.setdefault(part.mark, part)
        if same_steel(first, part):
            return replace(fitting, part=first)
        hand = reflect_x(first)
        if same_steel(hand, part):
            return replace(fitting, part=replace(hand, mark=part.mark + _HAND))
        raise ValueProblem(
            f'mark "{part.mark}" is given to two fittings that differ: give each a mark of its own'
        )

    def _new(self, letter: str, ways: tuple[Fitting, ...]) -> str:
        taken = self.pieces | self.given
        mark = next(mark for mark in _numbered(letter, ways) if mark not in taken)
        self.given.add(mark)
        return mark


def _numbered(letter: str, ways: tuple[Fitting, ...]) -> Iterator[str]:
    """The marks that follow from a fitting's steel: the first, and those for when it is taken."""
    content = min(content_of(way.part) for way in ways)
    for turn in count():
        least = 1000 if turn < _SEARCHED else 100_000  # more digits where nearly all of four are taken
        number = int(sha256(f"{turn} {content}".encode()).hexdigest(), 16) % (9 * least) + least
        yield f"{letter}{number}"


def _ways(fitting: Fitting) -> tuple[Fitting, ...]:
    """A fitting in each way that it can be described, the one first that is the same wherever it stands.

    A plate has no hands: turned over it is its own mirror image, so one mark will do for both.
    """
    part, stand = fitting.part, fitting.placement
    if part.profile is not Profile.PLATE:
        return (fitting,)
    back, _ = extent_z(part.stock)
    x, y, z = stand.ex
    placement = Placement(stand.point((part.length, ZERO, back)), (-x, -y, -z), stand.ey)
    turned = replace(fitting, part=reflect_x(part), placement=placement)
    return tuple(sorted((fitting, turned), key=lambda way: repr(way.part)))  # any fixed choice will do
