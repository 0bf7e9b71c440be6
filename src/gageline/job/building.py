"""Pieces built from the tables of a document."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from gageline.job.angles import join_angles
from gageline.job.collecting import Collector
from gageline.job.cutting import main_part
from gageline.job.document import JobDocument, PieceEntry, PracticeEntry
from gageline.job.end_plates import join_end_plates
from gageline.job.features import EndEntry, without_face
from gageline.job.joining import Joined
from gageline.job.loading import PieceLoads, swapped
from gageline.job.marking import FittingMarks
from gageline.job.plates import join_plates, join_stiffeners
from gageline.job.practice import Practice, default_practice
from gageline.job.problems import Path
from gageline.job.stock import stock_named
from gageline.part import Assembly, FittingKind, Part, opposite_hand, turns_end_for_end
from gageline.steel import grade, usual_grade
from gageline.units import System

__all__ = ["build_pieces", "loads_of", "practice_of"]

_OF_THE_HAND_ITSELF = frozenset({"mark", "quantity", "as_hand_of", "finish"})
_JOINERS: dict[str, Callable[..., Joined]] = {
    "angles": join_angles,
    "plates": join_plates,
    "stiffeners": join_stiffeners,
    "end_plates": partial(join_end_plates, FittingKind.END_PLATE),
    "base_plates": partial(join_end_plates, FittingKind.BASE_PLATE),
    "cap_plates": partial(join_end_plates, FittingKind.CAP_PLATE),
}


def practice_of(entry: PracticeEntry, system: System) -> Practice:
    """The shop's practice: what the document gives, else the default for the job's units."""
    given = {
        name: value for name in PracticeEntry.model_fields if (value := getattr(entry, name)) is not None
    }
    return replace(default_practice(system), **given)


def build_pieces(document: JobDocument, practice: Practice, collector: Collector) -> tuple[Assembly, ...]:
    """The pieces of a document, in its order, every fitting with its mark.

    Args:
        document: of the right form.
        practice: the shop's.
        collector: where problems are noted; a piece that has one may be left out.
    """
    _check_marks(document, collector)
    system = document.job.units
    drawn = {entry.mark: entry for entry in reversed(document.pieces)}
    built: dict[str, Assembly] = {}
    for index, entry in enumerate(document.pieces):
        if entry.as_hand_of is None and (
            piece := _piece(entry, ("piece", index), practice, system, collector)
        ):
            built.setdefault(entry.mark, piece)
    marks = FittingMarks({entry.mark.casefold() for entry in document.pieces}, _fitting_marks(document))
    pieces = []
    for index, entry in enumerate(document.pieces):
        path: Path = ("piece", index)
        if entry.as_hand_of is None:
            found = built.get(entry.mark)
        else:
            found = _hand(entry, path, built, drawn, collector)
        if found is not None:
            marked = collector.attempt(path, partial(marks.of, found))
            pieces.extend([marked] if marked else [])
    return tuple(pieces)


def loads_of(document: JobDocument, pieces: tuple[Assembly, ...]) -> tuple[PieceLoads, ...]:
    """What each piece carries, opposite hands as the piece they mirror.

    Args:
        document: of the right form.
        pieces: that were built of it.
    """
    given = {
        entry.mark: PieceLoads(
            entry.mark,
            entry.left,
            entry.right,
            entry.loads,
            entry.span,
            tuple(plate.reaction for plate in entry.plates),
        )
        for entry in document.pieces
        if entry.as_hand_of is None
    }
    found = []
    for piece in pieces:
        loads = given[piece.hand_of or piece.mark]
        turned = piece.hand_of is not None and turns_end_for_end(piece.main)
        found.append(swapped(loads, piece.mark, turned=turned))
    return tuple(found)


def _fitting_marks(document: JobDocument) -> set[str]:
    """The marks that the document gives to fittings."""
    entries = (entry for piece in document.pieces for name in _JOINERS for entry in getattr(piece, name))
    return {entry.mark.casefold() for entry in entries if entry.mark}


def _check_marks(document: JobDocument, collector: Collector) -> None:
    """Each piece has a mark of its own; capitals make no difference, for marks are painted in them."""
    first: dict[str, str] = {}
    for index, entry in enumerate(document.pieces):
        folded = entry.mark.casefold()
        if folded in first:
            other = first[folded]
            twice = (
                "is used twice"
                if other == entry.mark
                else f'and "{other}" are alike when painted in capitals'
            )
            message = f'"{entry.mark}" {twice}: give each piece a mark of its own'
            collector.add(("piece", index, "mark"), message)
        first.setdefault(folded, entry.mark)


def _piece(
    entry: PieceEntry, path: Path, practice: Practice, system: System, collector: Collector
) -> Assembly | None:
    for name in ("stock", "length"):
        if getattr(entry, name) is None:
            collector.add((*path, name), "is missing: give it, or as_hand_of another piece")
    if entry.stock is None or entry.length is None:
        return None
    stock = stock_named(entry.stock, system)
    steel = grade(entry.grade) if entry.grade else usual_grade(stock)
    main = main_part(entry, stock, steel.name, entry.length, practice, (collector, path), system)
    _check_carried(entry, path, system, collector)
    return _with_fittings(entry, main, path, practice, system, collector)


def _check_carried(entry: PieceEntry, path: Path, system: System, collector: Collector) -> None:
    """Loads lie on the piece, and what its ends stand on has the face that is named."""
    for number, load in enumerate(entry.loads):
        if entry.length and (wrong := load.misplaced(entry.length, system, "overall")):
            collector.add((*path, "loads", number), wrong)
    for name in ("left", "right"):
        end: EndEntry = getattr(entry, name)
        if end.support and (lack := without_face(stock_named(end.support, system), end.face)):
            collector.add((*path, name, "support"), lack)


def _with_fittings(
    entry: PieceEntry, main: Part, path: Path, practice: Practice, system: System, collector: Collector
) -> Assembly:
    joined: list[Joined] = []
    names: set[str] = set()
    for table, join in _JOINERS.items():
        for index, fitting in enumerate(getattr(entry, table)):
            here = (*path, table, index)
            done = collector.attempt(here, partial(join, fitting, main, practice, system))
            if done is None:
                continue
            joined.append(done)
            for one in done.fittings:
                if one.name in names:
                    collector.add(here, f"puts a second {one.name} in one place: keep one of them")
                names.add(one.name)
    drilled = tuple(group for one in joined for group in one.groups)
    taken = {group.name for group in main.groups}
    for group in drilled:
        if group.name in taken:
            collector.add(
                (*path, "holes"), f'"{group.name}" is what a fitting\'s holes are called: rename it'
            )
    return Assembly(
        replace(main, groups=(*main.groups, *drilled)),
        entry.quantity,
        tuple(fitting for one in joined for fitting in one.fittings),
        tuple(weld for one in joined for weld in one.welds),
        tuple(bolts for one in joined for bolts in one.bolts),
        entry.finish or practice.finish,
    )


def _hand(
    entry: PieceEntry,
    path: Path,
    built: dict[str, Assembly],
    drawn: dict[str, PieceEntry],
    collector: Collector,
) -> Assembly | None:
    """The opposite hand of a piece; nothing when that piece has problems of its own."""
    here, other = (*path, "as_hand_of"), entry.as_hand_of or ""
    for name in sorted(entry.model_fields_set - _OF_THE_HAND_ITSELF):
        collector.add((*path, name), "is taken from the other hand: leave it out beside as_hand_of")
    if other == entry.mark:
        collector.add(here, f'"{other}" is this piece itself: name the piece it is the mirror image of')
    elif other not in drawn:
        known = ", ".join(mark for mark, piece in drawn.items() if piece.as_hand_of is None)
        collector.add(here, f'"{other}" names no piece of the job: use one of {known[:200] or "none"}')
    elif drawn[other].as_hand_of is not None:
        collector.add(here, f'"{other}" is itself an opposite hand: name a piece as drawn')
    elif other in built:
        mirrored = opposite_hand(built[other], entry.mark, entry.quantity)
        return replace(mirrored, finish=entry.finish) if entry.finish else mirrored
    return None
