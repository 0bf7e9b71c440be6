"""What steel comes in: sections, plates, grades, bolts and the holes for them."""

from gageline.steel.families import Family, Measure, Profile
from gageline.steel.lookup import Stock, all_sections, find
from gageline.steel.plate import DENSITY, Plate, foot_weight
from gageline.steel.section import Section

__all__ = [
    "DENSITY",
    "Family",
    "Measure",
    "Plate",
    "Profile",
    "Section",
    "Stock",
    "all_sections",
    "find",
    "foot_weight",
]
