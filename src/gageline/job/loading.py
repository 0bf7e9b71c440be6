"""The tables that say what a piece carries, and how its strength is checked."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Annotated, Literal

from pydantic import Field

from gageline.job.features import EndEntry
from gageline.job.fields import Entry, LengthText, Mark, PositiveLength
from gageline.job.forces import AreaLoadText, Force, ForceText, LineLoadText
from gageline.job.wording import say
from gageline.units import ZERO, Length, System

__all__ = ["AreaLoadEntry", "Case", "LoadEntry", "PieceLoads", "SpanEntry", "StrengthEntry", "swapped"]

Limit = Annotated[int, Field(strict=True, ge=50, le=2000)]


Case = Literal["dead", "live", "roof"]


class StrengthEntry(Entry):
    """How strength is checked."""

    method: Literal["LRFD", "ASD"] = Field("LRFD", description="design method; reactions given are by it")


class LoadEntry(Entry):
    """One load on a beam, unfactored."""

    case: Case = Field("dead", description="what kind of load it is")
    uniform: LineLoadText | None = Field(None, description="along the beam")
    point: ForceText | None = Field(None, description="at one place")
    start: LengthText = Field(ZERO, description="left end to where a uniform load begins")
    end: PositiveLength | None = Field(None, description="left end to where it ends; the right end")
    at: LengthText | None = Field(None, description="left end to a point load")

    def misplaced(self, run: Length, system: System, over: str) -> str:
        """Why the load cannot stand on its beam; empty where it can.

        Args:
            run: length of the beam.
            system: the units that the message is written in.
            over: from where to where that length is, in words.
        """
        if (self.uniform is None) == (self.point is None):
            return "a load is either uniform or point: give one of them"
        if self.point is not None:
            if self.at is None:
                return "a point load has no place: give at, from where the member starts"
            far = self.at
        else:
            far = self.end or run
            if self.start >= far:
                return f"its load ends {say(far, system)} along, where it has not begun: change start or end"
        if far > run:
            along = f"its load is {say(far, system)} along, the member is {say(run, system)} {over}"
            return f"{along}: change at or end"
        return ""


class AreaLoadEntry(Entry):
    """One load on everything of a level, unfactored."""

    case: Case = Field("dead", description="what kind of load it is")
    area: AreaLoadText = Field(description="on each square foot or metre")


class SpanEntry(Entry):
    """What the check of a simple beam needs to know."""

    unbraced: LengthText | None = Field(
        None, description="length between braces of the top flange; the whole"
    )
    live: Limit | None = Field(None, description="360 where live load may deflect it by length/360")
    total: Limit | None = Field(None, description="240 where all load may deflect it by length/240")


@dataclass(frozen=True, slots=True)
class PieceLoads:
    """What a piece carries as far as its document says.

    Args:
        mark: of the piece.
        left: its left end.
        right: its right end.
        loads: along it.
        span: for the check of a simple beam.
        plates: reactions on its single plates, in their order.
    """

    mark: Mark
    left: EndEntry = field(default_factory=EndEntry)
    right: EndEntry = field(default_factory=EndEntry)
    loads: tuple[LoadEntry, ...] = ()
    span: SpanEntry = field(default_factory=SpanEntry)
    plates: tuple[Force | None, ...] = ()


def swapped(loads: PieceLoads, mark: str, *, turned: bool) -> PieceLoads:
    """What the opposite hand of a piece carries.

    Args:
        loads: of the piece.
        mark: of the opposite hand.
        turned: whether left and right change places.
    """
    if not turned:
        return replace(loads, mark=mark)
    return replace(loads, mark=mark, left=loads.right, right=loads.left)
