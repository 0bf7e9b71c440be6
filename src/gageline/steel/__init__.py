"""What steel comes in: sections, plates, grades, bolts and the holes for them."""

from gageline.steel.bolts import SPEC_YEARS, Bolt, BoltGroup, all_bolts, bolt, pretension
from gageline.steel.facts import Fact, facts
from gageline.steel.families import Family, Measure, Profile
from gageline.steel.grades import KSI, Grade, ThicknessRange, all_grades, grade, usual_grade
from gageline.steel.holes import (
    HoleKind,
    HoleSize,
    LegGage,
    hole_size,
    leg_gage,
    minimum_edge_distance,
    minimum_spacing,
)
from gageline.steel.lookup import Stock, all_sections, find
from gageline.steel.outline import Loop
from gageline.steel.plate import DENSITY, Plate, foot_weight
from gageline.steel.section import Section

__all__ = [
    "DENSITY",
    "KSI",
    "SPEC_YEARS",
    "Bolt",
    "BoltGroup",
    "Fact",
    "Family",
    "Grade",
    "HoleKind",
    "HoleSize",
    "LegGage",
    "Loop",
    "Measure",
    "Plate",
    "Profile",
    "Section",
    "Stock",
    "ThicknessRange",
    "all_bolts",
    "all_grades",
    "all_sections",
    "bolt",
    "facts",
    "find",
    "foot_weight",
    "grade",
    "hole_size",
    "leg_gage",
    "minimum_edge_distance",
    "minimum_spacing",
    "pretension",
    "usual_grade",
]
