"""What a cutting plan weighs: steel taken, pieces, drops kept, and the rest."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.steel import DENSITY
from gageline.stock.blanks import Blank
from gageline.stock.plates import PlatePlan
from gageline.stock.question import ShopPlan
from gageline.stock.records import SectionPlan
from gageline.units import ZERO, Length


@dataclass(frozen=True, slots=True)
class Weights:
    """Nominal weights of a plan or of one steel of it, lb.

    Args:
        taken: of the sticks and sheets.
        pieces: of the blanks cut from them.
        kept: of the drops that go back on the rack.
    """

    taken: float = 0.0
    pieces: float = 0.0
    kept: float = 0.0

    @property
    def scrap(self) -> float:
        """What is left: kerfs, trims and drops too short to keep."""
        return self.taken - self.pieces - self.kept

    def __add__(self, other: Weights) -> Weights:
        return Weights(self.taken + other.taken, self.pieces + other.pieces, self.kept + other.kept)


def weigh_section(section: SectionPlan, blanks: tuple[Blank, ...]) -> Weights:
    """What one steel of a plan weighs, by the table's weight a foot.

    Args:
        section: its plan.
        blanks: of the jobs, which the pieces are cut for.
    """
    of_mark = {blank.mark: blank for blank in blanks}
    first = section.sticks[0].pieces[0].mark
    pounds = of_mark[first].stock.weight

    def weight(lengths: list[Length]) -> float:
        return sum(lengths, ZERO).inches / 12 * pounds

    return Weights(
        weight([s.stock.length for s in section.sticks]),
        weight([s.covered for s in section.sticks]),
        weight([s.drop for s in section.sticks if s.kept]),
    )


def weigh_plates(plan: PlatePlan, thickness: Length) -> Weights:
    """What the sheets of one thickness weigh, at 490 lb/ft3; nothing of a sheet is counted as kept."""
    pounds = thickness.inches * DENSITY
    sheets = sum(s.sheet.length.inches * s.sheet.width.inches for s in plan.sheets)
    pieces = sum(p.along.inches * p.across.inches for s in plan.sheets for p in s.pieces)
    return Weights(sheets * pounds, pieces * pounds)


def weigh_plan(plan: ShopPlan) -> Weights:
    """What a whole plan weighs."""
    question = plan.question
    total = Weights()
    for section in plan.cuts.sections:
        total += weigh_section(section, question.blanks)
    for asked, plates in zip(question.plates, plan.plates, strict=True):
        total += weigh_plates(plates, asked.thickness)
    return total
