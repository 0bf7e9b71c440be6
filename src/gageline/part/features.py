"""What is cut into a part: end cuts, copes, trims, clips, holes and openings."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from gageline.part.faces import End, Face, Side
from gageline.steel import HoleKind
from gageline.units import SQUARE, ZERO, Length, Slope

__all__ = ["SQUARE_CUT", "Clip", "Cope", "EndCut", "FlangeTrim", "Hole", "HoleGroup", "Opening"]


@dataclass(frozen=True, slots=True)
class EndCut:
    """How an end is cut: square, bevelled in the web plane, mitred in the flange plane, or both.

    Args:
        bevel: lean in the web plane; positive where the top edge is the longer one.
        mitre: lean in the flange plane; positive where the near side is the longer one.
    """

    bevel: Slope = SQUARE
    mitre: Slope = SQUARE

    @property
    def square(self) -> bool:
        """Whether the end is cut square both ways."""
        return not self.bevel and not self.mitre


SQUARE_CUT = EndCut()


@dataclass(frozen=True, slots=True)
class Cope:
    """A rectangular notch at an end through a flange and into the web, or at a corner of a plate.

    Args:
        end: the end it is at.
        edge: `Face.TOP` or `Face.BOTTOM`, the edge it is cut from.
        length: along the part from the furthest point of that end.
        depth: from the outside of that flange or edge.
        radius: of the re-entrant corner; zero for a corner cut sharp (a finding).
    """

    end: End
    edge: Face
    length: Length
    depth: Length
    radius: Length


@dataclass(frozen=True, slots=True)
class FlangeTrim:
    """A flange cut back at an end on one side of the web, the web left whole.

    Args:
        end: the end it is at.
        flange: `Face.TOP` or `Face.BOTTOM`.
        side: the side that is cut.
        length: along the part from the furthest point of that end.
        keep: how far the flange still stands out from the web's face; zero is cut flush.
    """

    end: End
    flange: Face
    side: Side
    length: Length
    keep: Length = ZERO


@dataclass(frozen=True, slots=True)
class Clip:
    """A corner of a plate snipped off straight, as on a stiffener that clears a fillet.

    Args:
        end: left or right.
        edge: `Face.TOP` or `Face.BOTTOM` edge of the plate as it lies.
        along: how far the snip runs along the part.
        across: how far it runs up the end.
    """

    end: End
    edge: Face
    along: Length
    across: Length


@dataclass(frozen=True, slots=True)
class Hole:
    """A round hole or a slot with round ends, by its middle.

    Args:
        x: from the part's left end.
        y: the face's own y.
        width: the diameter, or the width of a slot.
        length: the overall length of a slot; equal to `width` for a round hole.
        angle: of the slot's long axis from x, in degrees, counter-clockwise on the face.
    """

    x: Length
    y: Length
    width: Length
    length: Length
    angle: Fraction = Fraction(0)

    def __post_init__(self) -> None:
        # one way to write the same hole, so that a reflected pattern compares equal to its own image
        same = (self.angle + 90) % -180 + 90 if self.is_slot else Fraction(0)
        if same != self.angle:
            object.__setattr__(self, "angle", same)

    @property
    def is_slot(self) -> bool:
        """Whether the hole is longer than wide."""
        return self.length != self.width

    def moved(self, dx: Length, dy: Length = ZERO) -> Hole:
        """The same hole somewhere else."""
        return replace(self, x=self.x + dx, y=self.y + dy)


@dataclass(frozen=True, slots=True)
class HoleGroup:
    """Holes on one face that belong together and whose spacing must stay exact.

    Args:
        name: what the group is called on cards ("left end web", ...).
        face: the face it is marked on.
        holes: at least one, in order of x, then of y from the top down.
        bolt: the bolt size the holes are for as text ("3/4", "M20"), empty when for none.
        kind: standard, oversize, short or long slot; None for a plain given diameter.
        mates: whether another piece bolts to it, so that it is placed as one pattern.
        through: through both walls of a hollow section.
    """

    name: str
    face: Face
    holes: tuple[Hole, ...]
    bolt: str = ""
    kind: HoleKind | None = None
    mates: bool = True
    through: bool = False


@dataclass(frozen=True, slots=True)
class Opening:
    """A round or rectangular opening in a web, wall or plate, by its middle.

    Args:
        face: the face it is marked on.
        x: of its middle, from the part's left end.
        y: of its middle, the face's own y.
        length: along the part; the diameter of a round one.
        depth: across the part; equal to `length` for a round one.
        radius: of the corners; half of the length for a round one.
        through: through both walls of a hollow section.
    """

    face: Face
    x: Length
    y: Length
    length: Length
    depth: Length
    radius: Length
    through: bool = False

    @property
    def is_round(self) -> bool:
        """Whether the opening is a circle."""
        return self.length == self.depth and self.radius * 2 >= self.length
