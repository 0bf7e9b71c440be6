"""Blanks: what has to be cut from sticks and sheets before anything else is done to it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.part import EndCut, Part, extent_y, extent_z
from gageline.steel import Plate, Profile, Stock
from gageline.stock.records import SQUARE_END, End
from gageline.units import Length

# a piece of these may be rolled over and turned end for end in the stick; of others one side differs
_TURNABLE = frozenset({Profile.I_SHAPE, Profile.BOX, Profile.TUBE, Profile.PLATE})


@dataclass(frozen=True, slots=True)
class Blank:
    """Parts that are alike, as they come from the saw.

    Args:
        mark: unique over the jobs.
        job: the number, else the name, of the job.
        stock: section, or plate by thickness and width.
        grade: of the steel.
        finish: that it gets or comes with.
        length: overall, long point to long point.
        quantity: how many.
        left: how the saw cuts the left end.
        right: how the saw cuts the right end.
        by_hand: whether an angle both ways is left for after the saw.
    """

    mark: str
    job: str
    stock: Stock
    grade: str
    finish: str
    length: Length
    quantity: int
    left: End = SQUARE_END
    right: End = SQUARE_END
    by_hand: bool = False

    @property
    def turnable(self) -> bool:
        """Whether it may be turned end for end and over in the stick."""
        return self.stock.profile in _TURNABLE

    @property
    def plate(self) -> Plate | None:
        """The plate, where it could be cut from a sheet."""
        return self.stock if isinstance(self.stock, Plate) else None


def blanks_of(jobs: Sequence[Job]) -> tuple[Blank, ...]:
    """The blanks of all parts and fittings of jobs, alike ones counted together.

    A mark that several jobs have is led by the number of its job, or by its place among the jobs.

    Args:
        jobs: frames detailed.

    Raises:
        ValueProblem: no piece to cut, or one mark on different parts of a job.
    """
    names = _names(jobs)
    by_job = [_of_job(job, name) for job, name in zip(jobs, names, strict=True)]
    shared = Counter(blank.mark for blanks in by_job for blank in blanks)
    found = tuple(
        replace(blank, mark=f"{name} {blank.mark}") if shared[blank.mark] > 1 else blank
        for blanks, name in zip(by_job, names, strict=True)
        for blank in blanks
    )
    if not found:
        raise ValueProblem("there is no piece to cut: give a job that has pieces")
    return found


def _names(jobs: Sequence[Job]) -> list[str]:
    """A short name of each job, no two alike."""
    numbers = [job.facts.number for job in jobs]
    return [
        number if number and numbers.count(number) == 1 else str(place)
        for place, number in enumerate(numbers, 1)
    ]


def _of_job(job: Job, name: str) -> list[Blank]:
    blanks: dict[str, Blank] = {}
    for blank in _every(job, name):
        known = blanks.get(blank.mark)
        if known is not None and replace(known, quantity=blank.quantity) != blank:
            raise ValueProblem(
                f'job {name}: mark "{blank.mark}" stands on {known.stock.designation} and on '
                f"{blank.stock.designation} parts that are cut differently: give each its own mark"
            )
        more = known.quantity if known else 0
        blanks[blank.mark] = replace(blank, quantity=blank.quantity + more)
    return list(blanks.values())


def _every(job: Job, name: str) -> Iterator[Blank]:
    for assembly in job.assemblies:
        yield _blank(assembly.main, assembly.quantity, name, assembly.finish)
        for fitting in assembly.fittings:
            # equal fittings of pieces with different finishes are cut together
            yield _blank(fitting.part, assembly.quantity, name, "")


def _blank(part: Part, quantity: int, job: str, finish: str) -> Blank:
    ends = [_end(part.stock, cut) for cut in (part.left, part.right)]
    left, right = (end or SQUARE_END for end in ends)
    by_hand = None in ends
    return Blank(part.mark, job, part.stock, part.grade, finish, part.length, quantity, left, right, by_hand)


def _end(stock: Stock, cut: EndCut) -> End | None:
    """How the saw cuts an end; None for an angle both ways, which it cuts square to the long point."""
    if cut.square:
        return SQUARE_END
    if cut.bevel and cut.mitre:
        return None
    slope = cut.bevel or cut.mitre
    low, high = extent_y(stock) if cut.bevel else extent_z(stock)
    return End(
        abs(slope.over(high - low)),
        high - low,
        "web" if cut.bevel else "flange",
        "high" if slope.ratio > 0 else "low",
    )
