"""What the end of a piece must carry: given, from its loads, or what the Manual suggests."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from gageline.errors import ValueProblem
from gageline.job import LoadEntry, PieceLoads
from gageline.part import Assembly, End
from gageline.steel import Section
from gageline.strength.beams import largest_uniform_load
from gageline.strength.check import Method
from gageline.strength.loads import Case, Load, combinations, combined, worst
from gageline.strength.steels import material_of

__all__ = [
    "GIVEN",
    "SUGGESTED",
    "BelowLoads",
    "Demand",
    "below_at",
    "below_loads",
    "handed_demand",
    "is_given",
    "loads_on",
    "reaction_at",
    "suggested",
]

GIVEN = "given"
SUGGESTED = "none given: half of the beam's largest uniform load, Manual Table 3-6"


def is_given(load: str) -> bool:
    """Whether a reaction comes from the job, its loads or its ends, and is not only suggested.

    Args:
        load: where it comes from, in words.
    """
    return load not in {"", SUGGESTED}


class Demand(NamedTuple):
    """What an end must carry.

    Args:
        V: reaction, kips.
        N: axial force, kips.
        load: where it comes from, in words.
    """

    V: float
    N: float
    load: str


class BelowLoads(NamedTuple):
    """A reaction that is given although the loads that are given too ask for more.

    Args:
        name: which end.
        given: what is given, kips.
        asked: what the loads come to, kips.
        load: by which combination.
    """

    name: str
    given: float
    asked: float
    load: str


_ROUNDED = 1.005
"""How much more the loads may ask for: a reaction is given to three figures."""


def below_loads(name: str, given: float, asked: float, load: str) -> BelowLoads | None:
    """The note of a reaction below what loads ask for; None where it is not below.

    Args:
        name: which end.
        given: the reaction, kips.
        asked: what the loads come to, kips.
        load: by which combination.
    """
    return BelowLoads(name, given, asked, load) if asked > given * _ROUNDED else None


def reaction_at(assembly: Assembly, end: End, given: PieceLoads, method: Method) -> Demand:
    """The reaction of one end of a piece.

    Args:
        assembly: the piece.
        end: which end.
        given: what its document says that it carries.
        method: design method.

    Returns:
        The reaction given; else the worst of the combinations of its loads; else half of the largest uniform
        load of a simple beam of its length.

    Raises:
        ValueProblem: nothing is given for a piece that is no beam, or a load is not on it.

    Source: Manual Part 10 with Table 3-6, for what is suggested.
    """
    entry = given.left if end is End.LEFT else given.right
    N = entry.axial.kips if entry.axial else 0.0
    if entry.reaction:
        return Demand(entry.reaction.kips, N, GIVEN)
    if given.loads:
        V, name = _from_loads(assembly, end, given, method)
        return Demand(V, N, f"from the loads, {name}")
    return suggested(assembly, method, N)


def below_at(assembly: Assembly, end: End, given: PieceLoads, method: Method) -> BelowLoads | None:
    """Whether the reaction that an end of a piece is given is less than its loads ask for.

    Args:
        assembly: the piece.
        end: which end.
        given: what its document says that it carries.
        method: design method.
    """
    entry = given.left if end is End.LEFT else given.right
    if not (entry.reaction and given.loads):
        return None
    asked, load = _from_loads(assembly, end, given, method)
    return below_loads(f"{assembly.mark} {end}", entry.reaction.kips, asked, load)


def _from_loads(assembly: Assembly, end: End, given: PieceLoads, method: Method) -> tuple[float, str]:
    """The reaction of an end by its loads, kips, and the combination."""
    length = assembly.main.length.inches
    pair, which = worst(loads_on(given.loads, length), length, method)
    V, index = (pair.left, which.left) if end is End.LEFT else (pair.right, which.right)
    return V, combinations(method)[int(index)].name


def suggested(assembly: Assembly, method: Method, N: float = 0.0) -> Demand:
    """The reaction that the Manual suggests for a beam without loads.

    Args:
        assembly: the beam.
        method: design method.
        N: axial force beside it, kips.

    Raises:
        ValueProblem: no beam.

    Source: Manual Part 10 with Table 3-6.
    """
    section = assembly.main.stock
    if not isinstance(section, Section):
        raise ValueProblem("no reaction is given: give it at the end")
    length = assembly.main.length.inches
    return Demand(largest_uniform_load(section, material_of(assembly.main), length, method) / 2, N, SUGGESTED)


def handed_demand(amounts: Mapping[Case, float], method: Method) -> Demand:
    """The worst combination of a reaction that a frame hands down.

    Args:
        amounts: the reaction by kind of load, kips.
        method: design method.

    Raises:
        ValueProblem: a reaction that never presses down.
    """
    if set(amounts) == {Case.GIVEN}:
        return Demand(amounts[Case.GIVEN], 0.0, GIVEN)
    V, name = combined(amounts, method)
    if V <= 0:
        raise ValueProblem(f"its largest reaction is {V:.3g} kip, it lifts: uplift is not covered")
    return Demand(V, 0.0, f"from the loads, {name}")


def loads_on(entries: tuple[LoadEntry, ...], length: float) -> tuple[Load, ...]:
    """The loads of a document on a beam.

    Args:
        entries: its tables.
        length: of the beam, in.

    Raises:
        ValueProblem: a load that is not uniform and has no point or no place.
    """
    return tuple(_load(entry, length) for entry in entries)


def _load(entry: LoadEntry, length: float) -> Load:
    case = Case(entry.case)
    if entry.uniform is not None:
        end = entry.end.inches if entry.end else length
        return Load(case, entry.uniform.kips_per_inch, entry.start.inches, end)
    if entry.point is None or entry.at is None:
        raise ValueProblem("a load is uniform, or a point load with its place: give one of them")
    return Load(case, entry.point.kips, entry.at.inches)
