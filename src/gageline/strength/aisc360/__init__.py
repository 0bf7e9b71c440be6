"""ANSI/AISC 360-22 and the methods of the Steel Construction Manual that go with it, one module a chapter.

Forces are in kips, lengths in inches, stresses in ksi, moments in kip-inches.
"""

from gageline.strength.aisc360 import (
    d_tension,
    f_bars,
    f_flexure,
    g_shear,
    h_combined,
    j2_welds,
    j3_bolts,
    j3_spacing,
    j4_elements,
    j7_bearing,
    j10_forces,
    manual_bases,
    manual_copes,
    manual_plates,
    manual_prying,
    manual_seats,
    manual_welds,
)
from gageline.strength.aisc360.standard import MANUAL, SPECIFICATION

__all__ = [
    "MANUAL",
    "SPECIFICATION",
    "d_tension",
    "f_bars",
    "f_flexure",
    "g_shear",
    "h_combined",
    "j2_welds",
    "j3_bolts",
    "j3_spacing",
    "j4_elements",
    "j7_bearing",
    "j10_forces",
    "manual_bases",
    "manual_copes",
    "manual_plates",
    "manual_prying",
    "manual_seats",
    "manual_welds",
]
