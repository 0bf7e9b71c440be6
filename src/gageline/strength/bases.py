"""Columns of a frame at their bases: what comes down, and the base plate under it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, replace

from gageline.detail import Detailed, Line
from gageline.errors import ValueProblem
from gageline.part import Fitting, FittingKind
from gageline.steel import Plate, Profile
from gageline.strength.aisc360.manual_bases import (
    base_plate_cantilever,
    base_plate_thickness,
    hollow_base_cantilever,
)
from gageline.strength.check import Check, Method
from gageline.strength.clause import clause_of
from gageline.strength.handed import Handed
from gageline.strength.loads import Case, combined, least
from gageline.strength.reading import dot
from gageline.strength.steels import material_of
from gageline.strength.verdict import NotChecked

__all__ = ["CheckedColumn", "columns_of"]

_CONCRETE = NotChecked(
    "the concrete under base plates, and anchor rods", "the strength of the concrete is not in the job"
)
_COMPRESSION = NotChecked("columns in compression", "Chapter E is not covered for members")


@dataclass(frozen=True, slots=True)
class CheckedColumn:
    """What comes down a column, and the check of its base plate.

    Args:
        member: its name in the frame.
        section: its designation.
        total: at its base by kind of load, kips.
        P: the worst combination of it, kips.
        load: which combination.
        checks: of the base plate.
        not_checked: what was not checked of it.
        parts: of that, what each beam hands to it, by kind of load, kips.
    """

    member: str
    section: str
    total: tuple[tuple[Case, float], ...]
    P: float
    load: str
    checks: tuple[Check, ...]
    not_checked: tuple[NotChecked, ...]
    parts: tuple[tuple[str, tuple[tuple[Case, float], ...]], ...] = ()


def columns_of(detailed: Detailed, handed: Handed, method: Method) -> Iterator[CheckedColumn | NotChecked]:
    """What comes down each column of a frame.

    Args:
        detailed: the frame.
        handed: its loads, handed down.
        method: design method.

    Returns:
        One for each column that carries something that is known; else the reason why it is not.
    """
    by_support = handed.by_support()
    for line in detailed.frame.columns:
        parts = by_support.get(line.name, [])
        unknown = [name for name, amounts in parts if amounts is None]
        if unknown:
            names = ", ".join(dict.fromkeys(unknown))
            yield NotChecked(f"what comes down {line.name}", f"reactions are not known of {names}")
        elif parts:
            total: dict[Case, float] = defaultdict(float)
            for _, amounts in parts:
                for case, amount in (amounts or {}).items():
                    total[case] += amount
            handed_by = tuple((name, tuple(sorted((amounts or {}).items()))) for name, amounts in parts)
            yield replace(_column(detailed, line, dict(total), method), parts=handed_by)


def _column(detailed: Detailed, line: Line, total: dict[Case, float], method: Method) -> CheckedColumn:
    P, load = combined(total, method)
    checks: tuple[Check, ...] = ()
    left_out = [_CONCRETE, _COMPRESSION]
    if least(total, method) < 0:
        left_out.append(NotChecked(f"uplift of {line.name}", "a combination lifts it, which is not covered"))
    try:
        checks = tuple(_base(detailed, line, P, method))
    except ValueProblem as problem:
        left_out.append(NotChecked(f"the base plate of {line.name}", str(problem)))
    section = line.stock.designation
    return CheckedColumn(line.name, section, tuple(sorted(total.items())), P, load, checks, tuple(left_out))


def _base(detailed: Detailed, line: Line, P: float, method: Method) -> Iterator[Check]:
    """Bending of the base plate, λ taken as 1 for the concrete is not known."""
    for one in detailed.placed:
        plates = [fit for fit in one.assembly.fittings if fit.kind is FittingKind.BASE_PLATE]
        if one.member == line.name and plates and P > 0:
            yield _thickness(plates[0], line, P, method)


def _thickness(fitting: Fitting, line: Line, P: float, method: Method) -> Check:
    part, stock, shape = fitting.part, fitting.part.stock, line.stock
    if not isinstance(stock, Plate):
        raise ValueProblem(f"{stock.designation} is no plate: use one")
    along_depth = abs(dot(fitting.placement.ex, (0.0, 1.0, 0.0))) > 0.5
    length, width = part.length.inches, stock.width.inches
    N, B = (length, width) if along_depth else (width, length)
    d, b_f = shape.d.inches, shape.bf.inches
    found = hollow_base_cantilever if shape.profile is Profile.BOX else base_plate_cantilever
    working = found(N, B, d, b_f)
    thick = base_plate_thickness(working[-1].value, P, material_of(part).F_y, N, B, method)
    title = f"thickness of the base plate of {line.name}, {fitting.part.stock.designation}"
    clause = clause_of(base_plate_thickness)
    return Check(clause, title, thick.value, stock.thickness.inches, "in", (*working, thick))
