"""What parts and bolts are made of, in the numbers that the clauses ask for."""

from __future__ import annotations

import re
from dataclasses import dataclass

from gageline.errors import ValueProblem
from gageline.job import without_face
from gageline.part import Part
from gageline.steel import Plate, Section, grade, usual_grade
from gageline.strength.connection import Material, Support, SupportFace

__all__ = ["BoltSteel", "bolt_steel", "material_of", "support_of"]

_GROUPS = {
    "A325": "120",
    "A325M": "120",
    "F1852": "120",
    "120": "120",
    "A490": "150",
    "A490M": "150",
    "F2280": "150",
    "150": "150",
    "A307": "A307",
    "8.8": "8.8",
    "10.9": "10.9",
}
_WRITTEN = re.compile(r"(?P<name>[A-Z0-9.]+)(-(?P<threads>[NX]))?(?P<slip>-SC(-(?P<surface>[AB]))?)?")
_PRETENSIONED = frozenset({"120", "150"})


@dataclass(frozen=True, slots=True)
class BoltSteel:
    """What bolts are made of.

    Args:
        group: of Table J3.2, or the property class of metric bolts.
        threads: N or X.
        surface: class of the faying surfaces of slip-critical bolts, A or B; empty where they bear.
    """

    group: str
    threads: str
    surface: str = ""


def bolt_steel(text: str) -> BoltSteel:
    """The strength group that a bolt's grade stands for.

    Args:
        text: `A325-N`, `A490-X`, `F1852`, `8.8`; N where the threads are not given. `A325-SC` is
            slip-critical on surfaces of class A, `A325-SC-B` of class B, `A325-X-SC` with threads excluded.

    Raises:
        ValueProblem: a grade that has no stresses, or no pretension where it should be slip-critical.

    Source: Table J3.2: group 120 is A325 and F1852, group 150 is A490 and F2280; bolts of ISO 898-1 are not
        in it and have the stresses of its row for threaded parts.
    """
    found = _WRITTEN.fullmatch(text.upper().replace("ASTM", "").replace(" ", ""))
    if found is None or found["name"] not in _GROUPS:
        raise ValueProblem(
            f'bolt grade "{text}" is not in Table J3.2: give A325-N, A325-X, A490-N or A490-X as bolt_grade, '
            "A325-SC or A325-SC-B for slip-critical bolts, or 8.8 or 10.9 for metric bolts"
        )
    group, surface = _GROUPS[found["name"]], ""
    if found["slip"]:
        surface = found["surface"] or "A"
        if group not in _PRETENSIONED:
            raise ValueProblem(
                f'bolt grade "{text}": Table J3.1 has no pretension for {found["name"]}, so it is not '
                "slip-critical: give A325-SC or A490-SC, of metric bolts too"
            )
    return BoltSteel(group, found["threads"] or "N", surface)


def material_of(part: Part) -> Material:
    """The steel of a part, at its own thickness."""
    stock = part.stock
    thickness = stock.thickness if isinstance(stock, Plate) else stock.tf
    F_y, F_u = grade(part.grade).strength(thickness)
    return Material(part.grade, F_y, F_u)


def support_of(section: Section, face: SupportFace, name: str | None = None) -> Support:
    """A support, its thickness and its steel at the face taken from the section.

    Args:
        section: of the support.
        face: what the connection stands on.
        name: grade of its steel; the usual one of the section where it is not known.

    Raises:
        ValueProblem: a section without that face.
    """
    if lack := without_face(section, face.name.lower().replace("_", " ")):
        raise ValueProblem(lack)
    thickness = section.tf if face is SupportFace.COLUMN_FLANGE else section.tw
    steel = grade(name) if name else usual_grade(section)
    F_y, F_u = steel.strength(thickness)
    return Support(section.designation, Material(steel.name, F_y, F_u), face, thickness.inches)
