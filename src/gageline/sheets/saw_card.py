"""One stick for the screen at the saw: its picture, and every cut with what the stop is set to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from gageline.job import Job
from gageline.sheets.cutting_sheet import ends_of
from gageline.sheets.furniture import Block
from gageline.sheets.notation import Scribe
from gageline.sheets.stick_picture import Lying, Run, lying, scale_of, stick_picture
from gageline.stock import Piece, StickPlan
from gageline.units import Length

__all__ = ["SawCard", "SawCut", "saw_card"]


@dataclass(frozen=True, slots=True)
class SawCut:
    """One piece as the saw man cuts it.

    Args:
        number: its place in the order of cuts, from 1.
        mark: of the piece.
        length: what the stop is set to.
        tape: what a tape hooked at the stick's first end reads at the piece's far end.
        ends: how its two ends are cut, in words.
        rest: of the stick once it is cut off, the blade's width taken.
    """

    number: int
    mark: str
    length: str
    tape: str
    ends: str
    rest: Length


@dataclass(frozen=True, slots=True)
class SawCard:
    """One stick at the saw.

    Args:
        picture: to scale along the stick.
        length: of the stick, in words.
        cuts: in order.
        drop: what is left, in words.
    """

    picture: Block
    length: str
    cuts: tuple[SawCut, ...]
    drop: str


def saw_card(
    job: Job, stick: StickPlan, of_mark: Mapping[str, Piece], kerf: Length, width: float = 250.0
) -> SawCard:
    """A stick of a cutting plan for the screen at the saw.

    Args:
        job: whose units and tape it is written in.
        stick: its plan.
        of_mark: the pieces by mark.
        kerf: width of the saw's cut, square to the blade.
        width: of the picture, mm.
    """
    scribe = Scribe.of(job)
    row = lying(stick, of_mark)
    cuts = tuple(_cut(number, one, stick, scribe, kerf) for number, one in enumerate(row, 1))
    picture = stick_picture(stick, row, scribe, width, scale_of((stick,), width))
    return SawCard(picture, scribe.tell(stick.stock.length), cuts, scribe.tell(stick.drop))


def _cut(number: int, one: Lying, stick: StickPlan, scribe: Scribe, kerf: Length) -> SawCut:
    rest = stick.stock.length - one.placed.stop - one.last.kerf(kerf)
    ends = ends_of(Run(number, (one,)), scribe)
    tape = scribe.tell(one.placed.stop)
    return SawCut(number, one.placed.mark, scribe.tell(one.placed.length), tape, ends, max(rest, Length(0)))
