"""The parts list of a job: what to get, what it weighs, which bolts and how much weld."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from gageline.detail import Detailed, FieldBolts
from gageline.job import Job
from gageline.part import Assembly, BoltSet, Fitting, Part
from gageline.solid import Mass, weigh
from gageline.units import ZERO, Length

__all__ = ["BoltLine", "PartLine", "PieceBill", "WeldLine", "bill_of_piece", "bolts_of_job", "parts_of_job"]


@dataclass(frozen=True, slots=True)
class PartLine:
    """One line of a parts list: a main part or a fitting.

    Args:
        mark: of the part.
        quantity: how many.
        designation: section or plate.
        grade: of the steel.
        length: overall.
        weight: of one, lb, as cut.
        piece: the mark of the piece it belongs to, empty in a list of the whole job.
    """

    mark: str
    quantity: int
    designation: str
    grade: str
    length: Length
    weight: float
    piece: str = ""

    @property
    def total_weight(self) -> float:
        """Of all of them, lb."""
        return self.weight * self.quantity


@dataclass(frozen=True, slots=True)
class BoltLine:
    """Bolts of one size, grip and place.

    Args:
        bolt: size.
        grade: as the practice names it.
        quantity: how many.
        grip: total thickness of the plies; None where the other ply is not in this job.
        field: put in at the site.
    """

    bolt: str
    grade: str
    quantity: int
    grip: Length | None
    field: bool


@dataclass(frozen=True, slots=True)
class WeldLine:
    """Fillet weld of one size: total length of the runs."""

    size: Length
    length: Length


@dataclass(frozen=True, slots=True)
class PieceBill:
    """What one piece is made of.

    Args:
        mark: the piece mark.
        quantity: how many pieces.
        lines: the main part and the fittings of one piece, equal fittings counted together.
        welds: shop welds of one piece, by size.
        bolts: of one piece.
        mass: of one piece, without welds and bolts.
    """

    mark: str
    quantity: int
    lines: tuple[PartLine, ...]
    welds: tuple[WeldLine, ...]
    bolts: tuple[BoltSet, ...]
    mass: Mass


def bill_of_piece(assembly: Assembly) -> PieceBill:
    """The bill of material of one piece.

    Args:
        assembly: the piece.

    Raises:
        ValueProblem: when a part has no body, as when its end cuts cross.
    """
    main = assembly.main
    mass = weigh(assembly)
    lines = [_line(main, 1, weigh(main).weight, main.mark)]
    for part, count in _counted(assembly.fittings).items():
        lines.append(_line(part, count, weigh(part).weight, main.mark))
    sizes: dict[Length, Length] = {}
    for weld in assembly.welds:
        sizes[weld.size] = sizes.get(weld.size, ZERO) + weld.length * weld.runs
    welds = tuple(WeldLine(size, length) for size, length in sorted(sizes.items()))
    return PieceBill(main.mark, assembly.quantity, tuple(lines), welds, assembly.bolts, mass)


def _line(part: Part, count: int, weight: float, piece: str) -> PartLine:
    return PartLine(part.mark, count, part.stock.designation, part.grade, part.length, weight, piece)


def _counted(fittings: Iterable[Fitting]) -> dict[Part, int]:
    counts: dict[Part, int] = {}
    for fitting in fittings:
        counts[fitting.part] = counts.get(fitting.part, 0) + 1
    return counts


def parts_of_job(bills: Iterable[PieceBill]) -> tuple[PartLine, ...]:
    """Every part of a job once, with the number wanted in all: main parts, then fittings, by mark.

    Args:
        bills: of the pieces of the job.
    """
    lines: dict[tuple[str, str, Length], PartLine] = {}
    mains: set[str] = set()
    for bill in bills:
        mains.add(bill.mark)
        for line in bill.lines:
            key = (line.mark, line.designation, line.length)
            count = line.quantity * bill.quantity
            known = lines.get(key)
            before = known.quantity if known else 0
            lines[key] = replace(line, quantity=before + count, piece="")
    return tuple(sorted(lines.values(), key=lambda line: (line.mark not in mains, _natural(line.mark))))


def _natural(mark: str) -> tuple[str, int, str]:
    """Marks in the order people count: B2 before B10."""
    letters = mark.rstrip("0123456789")
    digits = mark[len(letters) :]
    return letters, int(digits or 0), mark


def bolts_of_job(job: Job, detailed: Detailed | None = None) -> tuple[BoltLine, ...]:
    """The bolts of a job by size, grip and place, shop bolts first.

    A field bolt of the frame counts with the piece that is put in, so that each is counted once and those
    of pieces that the job leaves out are not.

    Args:
        job: with the pieces to count.
        detailed: its frame, None where it has none.
    """
    counts: dict[tuple[bool, str, Length | None], int] = {}
    for assembly in job.assemblies:
        for bolts in assembly.bolts:
            key = (bolts.field, bolts.bolt, bolts.grip)
            counts[key] = counts.get(key, 0) + bolts.count * assembly.quantity
    for site in _site_bolts(job, detailed) if detailed else ():
        key = (True, site.bolt, site.grip)
        counts[key] = counts.get(key, 0) + site.count
    order = sorted(counts, key=lambda key: (key[0], key[1], key[2] or ZERO))
    return tuple(
        BoltLine(bolt, job.practice.bolt_grade, counts[field, bolt, grip], grip, field)
        for field, bolt, grip in order
    )


def _site_bolts(job: Job, detailed: Detailed) -> Iterator[FieldBolts]:
    """The field bolts of the frame whose pieces are in the job."""
    marks = {one.assembly.mark: one.mark for one in detailed.placed}
    wanted = {assembly.mark for assembly in job.assemblies}
    return (site for site in detailed.field_bolts if marks[site.piece] in wanted)
