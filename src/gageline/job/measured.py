"""The steel as it came: what a fitter reads on one stick before anything is laid out on it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from gageline.part import End
from gageline.units import ZERO, Length

__all__ = ["Corner", "Edge", "EndReadings", "SquareGap", "Stick"]


class Corner(StrEnum):
    """A corner of an end, as the stick lies before the reader."""

    TOP_NEAR = "top near"
    TOP_FAR = "top far"
    BOTTOM_NEAR = "bottom near"
    BOTTOM_FAR = "bottom far"

    @property
    def is_top(self) -> bool:
        """Whether it is at the top edge."""
        return self in {Corner.TOP_NEAR, Corner.TOP_FAR}

    @property
    def is_near(self) -> bool:
        """Whether it is on the near side."""
        return self in {Corner.TOP_NEAR, Corner.BOTTOM_NEAR}

    @staticmethod
    def of(*, top: bool, near: bool) -> Corner:
        """The corner at an edge and on a side."""
        return Corner(f"{'top' if top else 'bottom'} {'near' if near else 'far'}")


class Edge(StrEnum):
    """The edge or the side of an end that runs out further than the one across from it."""

    TOP = "top"
    BOTTOM = "bottom"
    NEAR = "near"
    FAR = "far"

    @property
    def other(self) -> Edge:
        """The edge across."""
        return _ACROSS[self]


_ACROSS = {Edge.TOP: Edge.BOTTOM, Edge.BOTTOM: Edge.TOP, Edge.NEAR: Edge.FAR, Edge.FAR: Edge.NEAR}


@dataclass(frozen=True, slots=True)
class SquareGap:
    """A square held to an end: how far it stands open at the tip of its blade.

    Args:
        gap: between the blade and the steel, at the blade's length from the edge that touches.
        blade: length of the blade.
        long: the edge that touches, which runs out further.
    """

    gap: Length
    blade: Length
    long: Edge


@dataclass(frozen=True, slots=True)
class EndReadings:
    """What was read at one end; None for what was not.

    Args:
        corners: how far the steel runs past a square line struck round it, corner by corner in the
            order of `Corner`; below zero where it stops short of the line.
        web_gap: the square held across the depth.
        flange_gap: the square held across the flange.
        depth: over the flanges, at the web.
        top_width: of the top flange.
        bottom_width: of the bottom flange.
        top_tilt: T of the top flange: out of square with the web from edge to edge, above zero where
            the near edge is the higher one.
        bottom_tilt: the same of the bottom flange.
    """

    corners: tuple[Length | None, Length | None, Length | None, Length | None] = (None, None, None, None)
    web_gap: SquareGap | None = None
    flange_gap: SquareGap | None = None
    depth: Length | None = None
    top_width: Length | None = None
    bottom_width: Length | None = None
    top_tilt: Length | None = None
    bottom_tilt: Length | None = None

    def corner(self, corner: Corner) -> Length | None:
        """The reading of one corner."""
        return self.corners[list(Corner).index(corner)]

    @property
    def square_read(self) -> bool:
        """Whether anything was read that tells how square the end is."""
        return any(one is not None for one in (*self.corners, self.web_gap, self.flange_gap))


NOTHING_READ = EndReadings()


@dataclass(frozen=True, slots=True)
class Stick:
    """One stick as measured in the yard; None for what was not read and is taken as nominal.

    Args:
        piece: the mark of the piece that is to be made of it.
        heat: its heat number, empty when not read.
        length: overall, between the furthest points, or along one corner's edge.
        along: the corner whose edge the length was read along; None for overall.
        left: readings of the left end.
        right: readings of the right end.
        web_off: web off the middle of the flanges, above zero toward the near side.
        camber: mid-ordinate in the plane of the web, above zero where the middle is up.
        sweep: mid-ordinate in the plane of the flanges, above zero where the middle is near.
        steel_temperature: °F; tape_temperature likewise.
        tape_error: what a calibrated tape is too long over `tape_length`, below zero when too short.
        tape_length: the length the tape's error was found over.
        worked: there are holes or cuts in it already, so that it cannot be turned over.
        as_column: ordered as a column.
        ordered: the length it was ordered at; None where it was ordered cut to the piece.
        ordered_camber: what the mill was asked to camber it by.
    """

    piece: str
    heat: str = ""
    length: Length | None = None
    along: Corner | None = None
    left: EndReadings = NOTHING_READ
    right: EndReadings = NOTHING_READ
    web_off: Length | None = None
    camber: Length | None = None
    sweep: Length | None = None
    steel_temperature: float | None = None
    tape_temperature: float | None = None
    tape_error: Length | None = None
    tape_length: Length | None = None
    worked: bool = False
    as_column: bool = False
    ordered: Length | None = None
    ordered_camber: Length = ZERO

    def at(self, end: End) -> EndReadings:
        """The readings of one end."""
        return self.left if end is End.LEFT else self.right

    def turned(self, *, upside_down: bool = False, end_for_end: bool = False) -> Stick:
        """The same stick laid down another way.

        Args:
            upside_down: top and bottom change places.
            end_for_end: left and right change places; one of both alone changes near and far too, for
                a stick can be turned but not mirrored.
        """
        sides = upside_down != end_for_end
        ends = (self.right, self.left) if end_for_end else (self.left, self.right)
        left, right = (_turned_end(end, upside_down=upside_down, sides=sides) for end in ends)
        along = self.along
        if along is not None:
            along = Corner.of(top=along.is_top != upside_down, near=along.is_near != sides)
        return replace(
            self,
            along=along,
            left=left,
            right=right,
            web_off=_signed(self.web_off, changed=sides),
            camber=_signed(self.camber, changed=upside_down),
            sweep=_signed(self.sweep, changed=sides),
        )


def _signed(value: Length | None, *, changed: bool) -> Length | None:
    return -value if changed and value is not None else value


def _turned_gap(gap: SquareGap | None, *, changed: bool) -> SquareGap | None:
    return replace(gap, long=gap.long.other) if gap and changed else gap


def _turned_end(end: EndReadings, *, upside_down: bool, sides: bool) -> EndReadings:
    tn, tf, bn, bf = (
        end.corner(Corner.of(top=corner.is_top != upside_down, near=corner.is_near != sides))
        for corner in Corner
    )
    widths = (end.top_width, end.bottom_width)
    tilts = (end.top_tilt, end.bottom_tilt)
    if upside_down:
        widths, tilts = widths[::-1], tilts[::-1]
    # A flange whose near edge is high, rolled half over, has its far edge low: that is no change.
    tilt_changes = upside_down != sides
    return replace(
        end,
        corners=(tn, tf, bn, bf),
        web_gap=_turned_gap(end.web_gap, changed=upside_down),
        flange_gap=_turned_gap(end.flange_gap, changed=sides),
        top_width=widths[0],
        bottom_width=widths[1],
        top_tilt=_signed(tilts[0], changed=tilt_changes),
        bottom_tilt=_signed(tilts[1], changed=tilt_changes),
    )
