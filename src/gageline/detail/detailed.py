"""A frame after it was detailed: its pieces, where they stand, and everything known about them."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.detail.agree import Key, Shared
from gageline.detail.bolting import FieldBolts
from gageline.detail.carrier import AnchorRods, Served
from gageline.detail.joint import Joint
from gageline.detail.likeness import Lie
from gageline.detail.line import Frame
from gageline.detail.loads import MemberLoads
from gageline.detail.reason import Reason
from gageline.detail.supports import Supports
from gageline.errors import ValueProblem
from gageline.part import Assembly, Finding, Placement, Point, Severity
from gageline.units import ZERO

__all__ = ["Detailed", "Placed"]


@dataclass(frozen=True, slots=True)
class Placed:
    """A piece where it stands in the frame.

    Args:
        member: the member of the frame.
        mark: of the piece.
        assembly: the piece as this member has it, under the member's own name.
        placement: of that assembly in space, x and y in the plan, z up.
        lie: how it lies to the piece that its card shows.
    """

    member: str
    mark: str
    assembly: Assembly
    placement: Placement
    lie: Lie

    @property
    def foot(self) -> float:
        """Elevation of its own origin, where a shaft starts, inches."""
        return self.placement.origin[2].inches

    @property
    def left(self) -> Point:
        """Where the end stands that the card calls the left one: the piece's own origin, or its far end."""
        end = self.assembly.main.length if self.lie.end_for_end else ZERO
        return self.placement.point((end, ZERO, ZERO))


@dataclass(frozen=True, slots=True)
class Detailed:
    """A frame, detailed.

    Args:
        frame: every member where it stands.
        supports: what carries what.
        joints: the connection of every end that frames into something.
        shared: ends that share bolts through one web.
        assemblies: the pieces, one of each mark with its quantity, every fitting marked.
        placed: every piece of the frame where it stands.
        reasons: why each piece is as it is, by its mark.
        field_bolts: bolts put in at the site, by connection.
        findings: what is wrong or wants a look, of the whole frame.
        said: those of each piece, by its mark.
        loads: what each beam carries by itself.
        served: fittings that a piece carries for the end of another member.
        anchor_rods: of the columns with base plates.
        met: by mark the holes that meet others: fitting (empty for the main part) and group, and the bolt.
    """

    frame: Frame
    supports: Supports
    joints: dict[Key, Joint]
    shared: tuple[Shared, ...]
    assemblies: tuple[Assembly, ...]
    placed: tuple[Placed, ...]
    reasons: dict[str, tuple[Reason, ...]]
    field_bolts: tuple[FieldBolts, ...]
    findings: tuple[Finding, ...]
    said: dict[str, tuple[Finding, ...]]
    loads: tuple[MemberLoads, ...]
    served: tuple[Served, ...]
    anchor_rods: tuple[AnchorRods, ...]
    met: dict[str, dict[tuple[str, str], str]]

    @property
    def wrong(self) -> tuple[str, ...]:
        """The marks of the pieces that detailing found an error in, in the order of the pieces."""
        errors = {mark for mark, all_ in self.said.items() if any(f.severity is Severity.ERROR for f in all_)}
        return tuple(one.mark for one in self.assemblies if one.mark in errors)

    def member(self, name: str) -> Placed:
        """The piece of a member.

        Raises:
            ValueProblem: when the frame has no such member.
        """
        for one in self.placed:
            if one.member == name:
                return one
        raise ValueProblem(f'there is no member "{name}" in the frame: use a name that it has')
