"""The rules of the trade for fittings on a main part."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.part.assembly import Assembly, Fitting, FittingKind
from gageline.part.faces import Face, extent_y, extent_z
from gageline.part.finding import Finding, Severity
from gageline.part.rules import check_part
from gageline.steel import Plate, Profile
from gageline.units import ZERO, Length, System, write_length

__all__ = ["bounds", "check_assembly"]

_WEBS = frozenset({Face.NEAR, Face.FAR})
_ON_WEB = frozenset({FittingKind.ANGLE, FittingKind.PLATE})
_ROLLED_FILLETS = frozenset({Profile.I_SHAPE, Profile.CHANNEL, Profile.TEE})


def bounds(fitting: Fitting) -> tuple[tuple[Length, Length], tuple[Length, Length], tuple[Length, Length]]:
    """The box that a fitting fills in its main part's space: limits in x, y and z."""
    part = fitting.part
    corners = [
        fitting.placement.point((x, y, z))
        for x in (ZERO, part.length)
        for y in extent_y(part.stock)
        for z in extent_z(part.stock)
    ]
    xs, ys, zs = zip(*corners, strict=True)
    return (min(xs), max(xs)), (min(ys), max(ys)), (min(zs), max(zs))


def check_assembly(assembly: Assembly, system: System = System.FT_IN) -> tuple[Finding, ...]:
    """Everything that the rules have to say about a piece: its main part, its fittings, how they sit.

    Args:
        assembly: the piece.
        system: the units that messages are written in.

    Returns:
        Findings, those of the main part first; equal fittings are reported once.
    """
    found = list(check_part(assembly.main, system))
    for part in dict.fromkeys(fitting.part for fitting in assembly.fittings):
        found.extend(check_part(part, system))
    for fitting in assembly.fittings:
        found.extend(_in_fillet(assembly, fitting, system))
    return tuple(found)


def _in_fillet(assembly: Assembly, fitting: Fitting, system: System) -> Iterator[Finding]:
    """A fitting on the web whose edge rides up the fillet of a flange that is still there."""
    stock = assembly.main.stock
    if isinstance(stock, Plate) or stock.profile not in _ROLLED_FILLETS or fitting.kind not in _ON_WEB:
        return
    k = stock.kdes
    if fitting.on not in _WEBS or k is None:
        return
    (x_low, x_high), (y_low, y_high), _ = bounds(fitting)
    coped = {
        cope.edge
        for cope in assembly.main.copes
        if cope.end is fitting.end and cope.length >= min(x_high, assembly.main.length - x_low)
    }
    edges = ((Face.TOP, y_high - (stock.d - k)), (Face.BOTTOM, k - y_low))
    for edge, over in edges:
        tee_stem = stock.profile is Profile.TEE and edge is Face.BOTTOM
        if over > ZERO and edge not in coped and not tee_stem:
            yield Finding(
                "fitting-in-fillet", Severity.WARNING, f"{assembly.mark} {fitting.name}",
                f"runs {write_length(over, system, 64)} into the fillet of the {edge} flange",
                "shorten it, move it, or grind its corner to clear", "AISC Manual Table 1-1, kdes",
            )  # fmt: skip
