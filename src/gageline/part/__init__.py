"""The geometry of record: parts, what is cut into them, and assemblies of them."""

from gageline.part.alike import SAME, content_of, pair_off, same_steel
from gageline.part.assembly import Assembly, BoltSet, Fitting, FittingKind, Join, Weld
from gageline.part.faces import (
    End,
    Face,
    Point,
    Side,
    extent_y,
    extent_z,
    face_point,
    face_range,
    face_thickness,
    faces_of,
    normal,
)
from gageline.part.features import SQUARE_CUT, Clip, Cope, EndCut, FlangeTrim, Hole, HoleGroup, Opening
from gageline.part.finding import Finding, Severity, grouped
from gageline.part.fit import bounds, check_assembly, corners, foot, foot_across, lean, lean_across
from gageline.part.mirror import in_order, opposite_hand, reflect_x, reflect_z, turns_end_for_end
from gageline.part.outline import (
    clip_outline,
    cope_boundary,
    cope_outline,
    face_outline,
    opening_outline,
    trim_outline,
)
from gageline.part.part import Part
from gageline.part.placing import HERE, Placement, Vector
from gageline.part.rules import check_part

__all__ = [
    "HERE",
    "SAME",
    "SQUARE_CUT",
    "Assembly",
    "BoltSet",
    "Clip",
    "Cope",
    "End",
    "EndCut",
    "Face",
    "Finding",
    "Fitting",
    "FittingKind",
    "FlangeTrim",
    "Hole",
    "HoleGroup",
    "Join",
    "Opening",
    "Part",
    "Placement",
    "Point",
    "Severity",
    "Side",
    "Vector",
    "Weld",
    "bounds",
    "check_assembly",
    "check_part",
    "clip_outline",
    "content_of",
    "cope_boundary",
    "cope_outline",
    "corners",
    "extent_y",
    "extent_z",
    "face_outline",
    "face_point",
    "face_range",
    "face_thickness",
    "faces_of",
    "foot",
    "foot_across",
    "grouped",
    "in_order",
    "lean",
    "lean_across",
    "normal",
    "opening_outline",
    "opposite_hand",
    "pair_off",
    "reflect_x",
    "reflect_z",
    "same_steel",
    "trim_outline",
    "turns_end_for_end",
]
