"""Piece marks: equal pieces get one mark, opposite hands are recognised, marks given by people stay."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable
from dataclasses import dataclass, field, replace

from gageline.detail.likeness import Lie, Likeness, likeness_of
from gageline.part import Assembly, Finding, Severity

__all__ = ["mark_pieces"]


@dataclass(slots=True)
class _Marks:
    """The pieces marked so far.

    Args:
        taken: marks in small letters, since marks are painted in capitals.
        made: one piece of each mark.
        like: what each mark is, by the key that equal pieces share.
    """

    taken: set[str]
    made: dict[str, Assembly] = field(default_factory=dict)
    like: dict[Hashable, list[tuple[Likeness, str]]] = field(default_factory=lambda: defaultdict(list))

    def known(self, like: Likeness, own: str | None) -> tuple[str, Lie] | None:
        """The mark of an equal piece, and how this one lies to it."""
        for lie, seen in like.turns():
            mark = self._find(seen, own)
            if mark is not None:
                return mark, lie
        return None

    def _find(self, wanted: Likeness, own: str | None) -> str | None:
        for one, mark in self.like[wanted.key]:
            if one.same(wanted) and own in {None, mark}:
                return mark
        return None

    def new(self, assembly: Assembly, like: Likeness, wanted: str) -> str:
        """A piece that is not there yet."""
        mark, number = wanted, 2
        while mark.casefold() in self.taken:
            mark, number = f"{wanted}-{number}", number + 1
        self.taken.add(mark.casefold())
        hands = (self._find(seen, None) for seen in like.mirrored()) if self.known(like, None) is None else ()
        hand = next((other for other in hands if other is not None), None)
        main = replace(assembly.main, mark=mark, derived=True)
        fittings = tuple(
            replace(fitting, part=replace(fitting.part, derived=True)) for fitting in assembly.fittings
        )
        self.made[mark] = replace(assembly, main=main, fittings=fittings, quantity=0, hand_of=hand)
        self.like[like.key].append((like, mark))
        return mark


def mark_pieces(
    pieces: dict[str, Assembly], given: dict[str, str], taken: set[str]
) -> tuple[dict[str, tuple[str, Lie]], tuple[Assembly, ...], tuple[Finding, ...]]:
    """The marks of the pieces of a frame, and one of each with its quantity.

    A piece without a mark of its own takes that of an equal piece, else the name of its member, so
    that marks do not move when something else changes.

    Args:
        pieces: by the member's name, in the order of the document.
        given: marks that people gave, by the member's name.
        taken: marks of pieces as drawn, in small letters.

    Returns:
        The mark of each member with how it lies to the first of that mark, the pieces in the order of their
        first members, and marks that were given to pieces that differ.
    """
    marks = _Marks(set(taken))
    found: dict[str, tuple[str, Lie]] = {}
    findings: list[Finding] = []
    for name in sorted(pieces, key=lambda one: one not in given):  # given marks first, else in order
        own = given.get(name)
        like = likeness_of(pieces[name])
        mark, lie = marks.known(like, own) or (marks.new(pieces[name], like, own or name), Lie())
        found[name] = mark, lie
        if own is not None and mark != own:
            findings.append(_taken_twice(name, own, mark))
        piece = marks.made[mark]
        marks.made[mark] = replace(piece, quantity=piece.quantity + 1)
    order = dict.fromkeys(found[name][0] for name in pieces)
    return found, tuple(marks.made[mark] for mark in order), tuple(findings)


def _taken_twice(name: str, own: str, mark: str) -> Finding:
    return Finding(
        "mark-taken",
        Severity.ERROR,
        name,
        f'mark "{own}" is the mark of a piece that differs: this one is marked "{mark}"',
        "give pieces that differ marks that differ",
    )
