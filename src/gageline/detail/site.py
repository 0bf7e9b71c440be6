"""Where an end of a member meets its support: the face, its place in space and what stands about it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from gageline.detail.line import Line
from gageline.detail.space import UP, Vec, along, cross, dot, minus, sideways, vec_of
from gageline.job import FrameEndEntry, MemberEntry
from gageline.part import End, Face, face_point, normal
from gageline.steel import Profile, Section
from gageline.units import ZERO, Length

__all__ = [
    "FaceKind",
    "Site",
    "face_plane",
    "fillet_of",
    "joint_of",
    "largest_fillet",
    "web_offset",
]


class FaceKind(StrEnum):
    """What an end of a member meets."""

    GIRDER_WEB = "girder web"
    COLUMN_FLANGE = "column flange"
    COLUMN_WEB = "column web"
    WALL = "wall of a hollow section"
    COLUMN_TOP = "top of a column"


@dataclass(frozen=True, slots=True)
class Site:
    """An end of a member at the face of its support.

    Args:
        member: what ends here.
        end: which of its ends.
        support: what it meets.
        face: of the support.
        kind: of face.
        point: on that face, where the middle of the member's web and its top of steel meet it; inches.
        normal: of the face, level, toward the member.
    """

    member: Line
    end: End
    support: Line
    face: Face
    kind: FaceKind
    point: Vec
    normal: Vec

    @property
    def inward(self) -> Vec:
        """Direction in the plan from the support into the member's span."""
        x, y, _ = self.member.plan
        return (x, y, 0.0) if self.end is End.LEFT else (-x, -y, 0.0)

    @property
    def joint(self) -> FrameEndEntry:
        """What the document says of this end."""
        return joint_of(self.member, self.end)

    @property
    def slope(self) -> float:
        """Rise of the member over its run, going from the support into the span."""
        return self.member.slope if self.end is End.LEFT else -self.member.slope

    @property
    def skew(self) -> float:
        """Degrees in the plan from the face's normal to the member, counter-clockwise positive."""
        level = cross(self.normal, self.inward)[2]
        return math.degrees(math.atan2(level, dot(self.normal, self.inward)))

    @property
    def square(self) -> bool:
        """Whether the member meets the face square in the plan."""
        return abs(self.skew) < 1e-7

    @property
    def name(self) -> str:
        """The end in words: `start of B4`."""
        return f"{self.word} of {self.member.name}"

    @property
    def word(self) -> str:
        """The end as the document calls it."""
        return "start" if self.end is End.LEFT else "end"

    @property
    def aside(self) -> Vec:
        """Direction along the face, level, to the left of its normal."""
        return sideways(self.normal)

    @property
    def support_top(self) -> float:
        """Elevation of the support's upper edge at this place, inches."""
        return self.support.finish[2] if self.support.is_column else self.support.top_at(self.point)

    @property
    def support_bottom(self) -> float:
        """Elevation of the support's lower edge at this place, inches."""
        if self.support.is_column:
            return self.support.start[2]
        return self.support_top - self.support.upright_depth()

    @property
    def reach(self) -> float:
        """How far the support's flanges stand out from this face, inches."""
        stock = self.support.stock
        if self.kind not in {FaceKind.GIRDER_WEB, FaceKind.COLUMN_WEB}:
            return 0.0
        if stock.profile is Profile.CHANNEL:
            return (stock.bf - stock.tw).inches if self.face is Face.FAR else 0.0
        return (stock.bf - stock.tw).inches / 2 if stock.profile is Profile.I_SHAPE else 0.0

    @property
    def off_centre(self) -> float:
        """How far along the face of a column this place is from the column's middle, inches."""
        return abs(dot(minus(self.support.start, self.point), self.aside))

    @property
    def flat(self) -> tuple[float, float]:
        """Elevations between which the face is flat, below and above its fillets, inches."""
        if self.support.is_column:
            return -math.inf, self.support_top
        k = largest_fillet(self.support.stock) / dot(self.support.ey, UP) if self.reach else 0.0
        return self.support_bottom + k, self.support_top - k

    @property
    def station(self) -> float:
        """How far along the support from its start this place is, inches."""
        if self.support.is_column:
            return self.point[2] - self.support.start[2]
        return self.support.local(self.point)[0]

    @property
    def thickness(self) -> Length:
        """Of the steel under the face."""
        stock = self.support.stock
        return stock.tf if self.face in {Face.TOP, Face.BOTTOM} else stock.tw

    @property
    def across(self) -> Length:
        """How wide the flange or wall under the face is; of a web the depth of its section."""
        stock = self.support.stock
        return stock.bf if self.face in {Face.TOP, Face.BOTTOM} else stock.d

    def on_face(self, aside: float, elevation: float) -> Vec:
        """A point on the face.

        Args:
            aside: from the middle of the member's web along the face, inches.
            elevation: inches.
        """
        x, y, _ = along(self.point, self.aside, aside)
        return (x, y, elevation)


def joint_of(line: Line, end: End) -> FrameEndEntry:
    """What the document says of an end of a beam."""
    if not isinstance(line.entry, MemberEntry):
        return FrameEndEntry()
    return line.entry.joint("start" if end is End.LEFT else "end")


def web_offset(stock: Section) -> float:
    """From the line of a section to the middle of its web, toward the near side, inches."""
    return -stock.tw.inches / 2 if stock.profile is Profile.CHANNEL else 0.0


def largest_fillet(stock: Section) -> float:
    """From the outside of a flange to the end of the largest fillet a mill may roll, inches.

    Source: AISC Manual Table 1-1, kdet.
    """
    k = stock.kdet or stock.kdes or stock.corner or stock.tf
    return max(k, stock.kdes or k).inches


def fillet_of(stock: Section) -> float:
    """From the outside of a flange to the end of the fillet as designed, inches.

    Source: AISC Manual Table 1-1, kdes.
    """
    return (stock.kdes or stock.corner or stock.tf + (stock.fillet or ZERO)).inches


def face_plane(line: Line, face: Face) -> tuple[Vec, Vec]:
    """A point of a face of a member, and the direction it looks in."""
    out = normal(face)
    point = line.space.point(face_point(line.stock, face, ZERO, ZERO))
    turned = line.space.turn((float(out[0]), float(out[1]), float(out[2])))
    return vec_of(point), turned
