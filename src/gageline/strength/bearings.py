"""Beams that bear on the tops of columns: their webs over the column."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.detail import Bearing, Detailed
from gageline.errors import ValueProblem
from gageline.part import Assembly, End, FittingKind
from gageline.strength.aisc360.j10_forces import web_local_crippling, web_local_yielding
from gageline.strength.beam_end import beam_of
from gageline.strength.check import Check, Method
from gageline.strength.handed import Handed
from gageline.strength.loads import combined
from gageline.strength.verdict import NotChecked

__all__ = ["Found", "bearings_of"]

Found = tuple[str, str, tuple[Check, ...]]


def bearings_of(detailed: Detailed, handed: Handed, method: Method) -> Iterator[Found | NotChecked]:
    """The web of every beam over every column that it bears on.

    Args:
        detailed: the frame.
        handed: its loads, handed down.
        method: design method.

    Returns:
        Where, the section, and the checks; or why there are none.

    Source: Sections J10.2 and J10.3, the bearing as long as the narrower side of the column, stiffeners left
        out.
    """
    for bearing in detailed.supports.bearings:
        where = f"{bearing.member.name} over {bearing.column.name}"
        rests = handed.rests.get(bearing.member.name, ())
        found = zip(rests, handed.reactions.get(bearing.member.name, ()), strict=True)
        amounts = next((a for rest, a in found if abs(rest.at - bearing.run) < 1e-6), None)
        assembly = next((one.assembly for one in detailed.placed if one.member == bearing.member.name), None)
        if amounts is None or assembly is None:
            yield NotChecked(where, "its reaction is not known")
            continue
        R = combined(amounts, method)[0]
        if R <= 0:
            yield NotChecked(where, "its largest reaction lifts it, which is not covered")
            continue
        try:
            checks = _checks(bearing, assembly, R, method)
        except ValueProblem as problem:
            yield NotChecked(where, str(problem))
            continue
        stiffened = any(fitting.kind is FittingKind.STIFFENER for fitting in assembly.fittings)
        if stiffened and not all(check.passes for check in checks):
            yield NotChecked(where, "its web needs its stiffeners, which are not covered")
        else:
            yield where, bearing.member.stock.designation, checks


def _checks(bearing: Bearing, assembly: Assembly, R: float, method: Method) -> tuple[Check, ...]:
    beam = beam_of(assembly.main, End.LEFT)
    column, line = bearing.column.stock, bearing.member
    l_b = min(column.d, column.bf).inches
    y_end = min(bearing.run, line.run - bearing.run) if bearing.end is None else 0.0
    y_end = max(y_end, 0.0)
    yielding = web_local_yielding(beam.steel.F_y, beam.t_w, beam.k, l_b, beam.d, y_end)
    crippling = web_local_crippling(beam.steel.F_y, beam.t_w, beam.t_f, beam.d, l_b, y_end)
    named = ((yielding, "local yielding of the web"), (crippling, "local crippling of the web"))
    return tuple(strength.check(R, method, title) for strength, title in named)
