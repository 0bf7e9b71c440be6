"""ANSI/AISC 360-22 and the methods of the Steel Construction Manual that go with it, one module a chapter.

Forces are in kips, lengths in inches, stresses in ksi, moments in kip-inches. Each function names its clause
(`clause_of`), refuses what lies outside it, and gives its working.

Covered: D2 and D3 with Table D3.1 (but cases 5 and 6) and the net area of B4.3; F2, F3, F6, F11 and F13.1;
G2.1 and G3; H1.1; J2 to J4, J7, J8 and J10; of the Manual coped webs, prying, single plates, unstiffened
seats, least thickness at welds and concentric base plates. Not covered: members in compression (E, but for
a plate of a connection), built-up members, slender webs and flanges, tension field action, hollow sections
(H3, K), torsion, fatigue, plug and slot welds, complete-penetration welds (the base metal governs them),
pins and eyebars, structural integrity (B3.9), stability (C), composite members (I), panel zones (J10.6),
reinforced copes, copes under axial force, Equation 9-22, stiffened seats, brackets, splices, moment
connections, and seismic design. Bolts of ISO 898-1 classes have the stresses of the row for threaded parts
in Table J3.2, which does not name them. Values that were not read in print are marked "from memory" where
they stand.
"""

from gageline.strength.aisc360 import (
    d_shear_lag,
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
    "d_shear_lag",
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
