"""Tape readings: from where a length is measured, what it truly is and what the tape is held to."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from gageline.part import End, Face, Part, face_range
from gageline.steel import Profile, Stock
from gageline.units import ZERO, Length, System, exact_text, round_to

__all__ = ["Datum", "Reading", "Scale", "across", "along", "printed_length"]


class Datum(StrEnum):
    """Where a tape is hooked, and to which side of it the reading runs where there are two."""

    LEFT_END = "left end"
    PAST_LEFT = "past the left end"
    RIGHT_END = "right end"
    PAST_RIGHT = "past the right end"
    TOP_EDGE = "top edge"
    ABOVE_TOP = "above the top edge"
    BOTTOM_EDGE = "bottom edge"
    BELOW_BOTTOM = "below the bottom edge"
    BOTTOM_LINE = "bottom line"
    NEAR_LINE = "near line"
    HEEL = "heel"
    PAST_HEEL = "past the heel"
    TOE = "toe"
    PAST_TOE = "past the toe"
    BACK = "back of the web"
    PAST_BACK = "past the back of the web"
    NEAR_OF_LINE = "centre line, near side"
    FAR_OF_LINE = "centre line, far side"
    ABOVE_LINE = "centre line, upper side"
    BELOW_LINE = "centre line, lower side"
    NEAR_EDGE = "near edge"
    PAST_NEAR_EDGE = "past the near edge"
    OUT_TO_OUT = "leftmost point"

    @property
    def word(self) -> str:
        """The word that a printed reading carries after its length; empty where it needs none."""
        return _WORDS.get(self, "")

    @property
    def outside(self) -> bool:
        """Whether readings run away from the steel, past the end or edge."""
        return self.word in _OUT

    @property
    def hook(self) -> str:
        """The end, edge or line that the tape is hooked at, whichever way the reading runs."""
        text = self.split(",")[0]
        return text.split(" the ", 1)[1] if self.outside else text


_WORDS = {
    Datum.NEAR_OF_LINE: "near",
    Datum.FAR_OF_LINE: "far",
    Datum.ABOVE_LINE: "up",
    Datum.BELOW_LINE: "down",
    Datum.ABOVE_TOP: "above",
    Datum.BELOW_BOTTOM: "below",
    Datum.PAST_LEFT: "past",
    Datum.PAST_RIGHT: "past",
    Datum.PAST_HEEL: "past",
    Datum.PAST_TOE: "past",
    Datum.PAST_BACK: "past",
    Datum.PAST_NEAR_EDGE: "past",
}
_OUT = frozenset({"past", "above", "below"})


def printed_length(length: Length, system: System, *, metric: bool = False) -> str:
    """A length as it is printed beside a mark, never rounded: `18'-7 1/4"`, or `5670` in millimetres.

    Args:
        length: what is printed.
        system: the units of the job.
        metric: it is read on the millimetre side of the tape, `5670 mm` where the job is in feet and inches.
    """
    text = exact_text(length, System.MM if metric else system)
    return text.removesuffix(" mm") if system is System.MM else text


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading of the tape.

    Args:
        true: the length in the geometry of record; below zero only where rounding moved the mark
            across the datum.
        tape: what the tape is held to, never below zero.
        from_: where the tape is hooked.
        system: the units it is printed in.
        metric: it is read on the millimetre side of the tape, whatever the units of the job.
    """

    true: Length
    tape: Length
    from_: Datum
    system: System
    metric: bool = False

    @property
    def error(self) -> Length:
        """How far the mark is struck from its true place, with its sign."""
        return self.tape - self.true

    @property
    def length_text(self) -> str:
        """The length alone as printed: `2 3/4"`."""
        return printed_length(self.tape, self.system, metric=self.metric)

    @property
    def outside(self) -> bool:
        """Whether it is read away from the steel."""
        return self.from_.outside

    @property
    def plain(self) -> str:
        """The reading as printed where the end or edge stands beside it: `1/2" outside`."""
        return f"{self.length_text} outside" if self.outside else self.text

    @property
    def text(self) -> str:
        """The reading as printed, with the side where the datum has two: `2 3/4" near`."""
        word = self.from_.word
        return f"{self.length_text} {word}" if word else self.length_text


@dataclass(frozen=True, slots=True)
class Scale:
    """A tape laid on a part: where its zero is and which way it runs.

    Args:
        zero: the coordinate of the datum on the face or along the part.
        sign: 1 where readings grow with the coordinate, -1 where they grow against it.
        ahead: the datum's name for readings that run onto the steel.
        behind: its name for readings that run the other way.
    """

    zero: Length
    sign: int
    ahead: Datum
    behind: Datum

    def measure(self, at: Length) -> Length:
        """The signed distance of a coordinate from the datum."""
        return (at - self.zero) * self.sign

    def shift(self, at: Length, tape: Length) -> Length:
        """What rounding to the tape adds to the distance of a coordinate."""
        true = self.measure(at)
        return round_to(true, tape) - true

    def reading(self, at: Length, shift: Length, system: System, *, metric: bool = False) -> Reading:
        """The reading of a coordinate, moved by a shift that its pattern shares."""
        true = self.measure(at)
        struck = true + shift
        if struck < ZERO:
            return Reading(-true, -struck, self.behind, system, metric)
        return Reading(true, struck, self.ahead, system, metric)


def along(part: Part, end: End = End.LEFT) -> Scale:
    """The running tape along a part, from its left end or, for checks, from its right."""
    if end is End.LEFT:
        return Scale(ZERO, 1, Datum.LEFT_END, Datum.PAST_LEFT)
    return Scale(part.length, -1, Datum.RIGHT_END, Datum.PAST_RIGHT)


_FLAT = frozenset({Face.TOP, Face.BOTTOM})
_LEGS = frozenset({Face.LEG_A, Face.LEG_B})


def across(stock: Stock, face: Face) -> tuple[Scale, Scale]:
    """The two tapes across a face: the one that rows are read from, and the one that checks them.

    Webs, walls and plates are read from the top edge down and checked from the bottom edge; flanges
    from the web's centre line and the near edge, of a channel from the back of the web and the toe;
    legs of angles from the heel and the toe; round pipe from its quadrant line, square across.

    Args:
        stock: the section.
        face: one of its faces.
    """
    low, high = face_range(stock, face)
    if face in _LEGS:
        return Scale(low, 1, Datum.HEEL, Datum.PAST_HEEL), Scale(high, -1, Datum.TOE, Datum.PAST_TOE)
    if face in _FLAT and stock.profile is Profile.CHANNEL:
        return Scale(high, -1, Datum.BACK, Datum.PAST_BACK), Scale(low, 1, Datum.TOE, Datum.PAST_TOE)
    is_round = stock.profile is Profile.TUBE  # which has lines where others have edges
    if face in _FLAT:
        near = Datum.NEAR_LINE if is_round else Datum.NEAR_EDGE
        aside = Scale(high, -1, near, Datum.PAST_NEAR_EDGE)
        return Scale(ZERO, 1, Datum.NEAR_OF_LINE, Datum.FAR_OF_LINE), aside
    if is_round:
        middle = low + (high - low).parts(2)[0]
        bottom = Scale(low, 1, Datum.BOTTOM_LINE, Datum.BELOW_BOTTOM)
        return Scale(middle, 1, Datum.ABOVE_LINE, Datum.BELOW_LINE), bottom
    bottom = Scale(low, 1, Datum.BOTTOM_EDGE, Datum.BELOW_BOTTOM)
    return Scale(high, -1, Datum.TOP_EDGE, Datum.ABOVE_TOP), bottom
