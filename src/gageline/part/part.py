"""The geometry of record of one piece of steel."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.part.faces import End, extent_y, extent_z
from gageline.part.features import SQUARE_CUT, Clip, Cope, EndCut, FlangeTrim, HoleGroup, Opening
from gageline.steel import Profile, Stock
from gageline.units import Length

__all__ = ["Part"]


@dataclass(frozen=True, slots=True)
class Part:
    """One piece cut from a section or a plate, with everything that is cut into it.

    Args:
        mark: the piece mark.
        stock: the section, or the plate by thickness and width.
        grade: the steel grade's name.
        length: overall, between the furthest points of the two ends.
        left: the cut of the left end.
        right: the cut of the right end.
        copes: notches at the ends.
        trims: flanges cut back on one side.
        clips: corners snipped off a plate.
        groups: groups of holes.
        openings: openings in web, wall or plate.
        derived: worked out from a frame and not given, so that its lengths tell no units.
    """

    mark: str
    stock: Stock
    grade: str
    length: Length
    left: EndCut = SQUARE_CUT
    right: EndCut = SQUARE_CUT
    copes: tuple[Cope, ...] = ()
    trims: tuple[FlangeTrim, ...] = ()
    clips: tuple[Clip, ...] = ()
    groups: tuple[HoleGroup, ...] = ()
    openings: tuple[Opening, ...] = ()
    derived: bool = False

    @property
    def profile(self) -> Profile:
        """The shape of the cross-section."""
        return self.stock.profile

    def cut(self, end: End) -> EndCut:
        """The cut of one end."""
        return self.left if end is End.LEFT else self.right

    def end_x(self, end: End, y: Length, z: Length) -> Length:
        """Where an end's cut plane lies at a height and depth of the section.

        Args:
            end: which end.
            y: height above the section's bottom.
            z: offset toward the reader.

        Returns:
            x from the furthest point of the left end.
        """
        cut = self.cut(end)
        back = _run_back(cut.bevel.ratio > 0, extent_y(self.stock), y)
        aside = _run_back(cut.mitre.ratio > 0, extent_z(self.stock), z)
        retreat = cut.bevel.over(back) + cut.mitre.over(aside)
        return retreat if end is End.LEFT else self.length - retreat


def _run_back(high_is_long: bool, extent: tuple[Length, Length], at: Length) -> Length:  # noqa: FBT001 - private
    """The signed distance from the longer edge, so that a slope over it is never negative."""
    low, high = extent
    return high - at if high_is_long else low - at
