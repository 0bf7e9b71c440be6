"""What a beam carries and what comes down a column, in words for the check sheet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from gageline.strength import (
    Case,
    CheckedColumn,
    Load,
    Method,
    SimpleBeam,
    combinations,
    force_text,
    worst,
)
from gageline.units import Length, System, write_length

__all__ = ["facts_of_beam", "facts_of_column"]

_KN_PER_M = 4.4482216152605 / 0.0254
_INCHES = 12.0


def facts_of_beam(beam: SimpleBeam, method: Method, system: System) -> tuple[tuple[str, str], ...]:
    """The span of a beam, its braces, its loads and its reactions, name and text.

    Args:
        beam: on two supports.
        method: design method of the reactions.
        system: units of the job.
    """
    return tuple(_of_beam(beam, method, system))


def _of_beam(beam: SimpleBeam, method: Method, system: System) -> Iterator[tuple[str, str]]:
    yield "Span", f"{_size(beam.length, system)}, {beam.steel.grade} (Fy {beam.steel.F_y:.3g} ksi)"
    if beam.unbraced == 0.0:
        yield "L_b", "0: the top flange is braced all along"
    elif beam.unbraced is None:
        yield "L_b", f"{_size(beam.length, system)}: no braces are given"
    else:
        yield "L_b", f"{_size(beam.unbraced, system)} between braces of the top flange"
    yield "Loads", "; ".join(_load(load, beam.length, system) for load in beam.loads)
    pair, which = worst(beam.loads, beam.length, method)
    ends = ((pair.left, which.left, "left"), (pair.right, which.right, "right"))
    yield (
        "Reactions",
        ", ".join(
            f"{end} {force_text(V, system)} ({combinations(method)[int(index)].name})"
            for V, index, end in ends
        ),
    )
    limits = (("live", beam.live_limit), ("all", beam.total_limit))
    given = [f"{name} load L/{limit}" for name, limit in limits if limit is not None]
    yield "Deflection", ", ".join(given) or "no limit is given: not checked"


def facts_of_column(column: CheckedColumn, system: System) -> tuple[tuple[str, str], ...]:
    """What comes down a column, from each beam and in all, name and text.

    Args:
        column: the column.
        system: units of the job.
    """
    found = [(f"From {name}", _amounts(amounts, system)) for name, amounts in column.parts]
    found.append(("At its base", _amounts(column.total, system)))
    found.append(("In all", f"{force_text(column.P, system)} ({column.load})"))
    return tuple(found)


def _amounts(amounts: Iterable[tuple[Case, float]], system: System) -> str:
    return ", ".join(f"{case} {force_text(amount, system)}" for case, amount in amounts)


def _size(inches: float, system: System) -> str:
    text = write_length(Length.from_inches(inches), system)
    return text if system is System.FT_IN else f"{text} mm"


def _load(load: Load, length: float, system: System) -> str:
    """A load with its amount and its place from the left end."""
    if load.end is None:
        return f"{load.case} {force_text(load.amount, system)} at {_size(load.start, system)}"
    if system is System.FT_IN:
        amount = f"{load.amount * _INCHES:.3g} kip/ft"
    else:
        amount = f"{load.amount * _KN_PER_M:.3g} kN/m"
    if load.start <= 0 and load.end >= length:
        return f"{load.case} {amount} all along"
    return f"{load.case} {amount} from {_size(load.start, system)} to {_size(load.end, system)}"
