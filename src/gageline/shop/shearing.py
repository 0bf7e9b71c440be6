"""A sheet at the shear: its plates in the order that they come free, and the cuts made for each of them."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.sheets import Scribe
from gageline.stock import Burner, Laid, ShearCut, SheetPlan, shear_cuts
from gageline.units import Length, System

__all__ = ["CutLine", "cut_line", "freed"]

Freed = tuple[tuple[Laid, tuple[ShearCut, ...]], ...]


@dataclass(frozen=True, slots=True)
class CutLine:
    """A cut of the shear as the card shows it.

    Args:
        number: its place in the order of cuts of the sheet, as in the picture.
        stop: what the stop is set to; empty where an edge is only shaved.
        runs: which way it runs.
        lies: where it lies on the whole sheet.
    """

    number: int
    stop: str
    runs: str
    lies: str


def freed(plan: SheetPlan, burner: Burner) -> Freed:
    """The plates of a sheet in the order they come free, each with the cuts made since the one before.

    Args:
        plan: the sheet and the plates on it.
        burner: how it is cut; burned plates come from the first end on and have no cuts of their own.
    """
    left = sorted(plan.pieces, key=lambda laid: (laid.x, laid.y))
    found: list[tuple[Laid, tuple[ShearCut, ...]]] = []
    since: list[ShearCut] = []
    for cut in shear_cuts(plan, burner) if burner.shear else ():
        since.append(cut)
        for mark in cut.frees:
            laid = next(one for one in left if one.mark == mark and _ends_at(one, cut, burner.kerf))
            left.remove(laid)
            found.append((laid, tuple(since)))
            since = []
    return (*found, *((laid, ()) for laid in left))


def _ends_at(laid: Laid, cut: ShearCut, kerf: Length) -> bool:
    """Whether a cut runs along a whole side of a plate."""
    sides = (laid.x, laid.x + laid.along), (laid.y, laid.y + laid.across)
    (low, high), run = sides if cut.across else reversed(sides)
    return run == (cut.start, cut.stop) and cut.at in {high, low - kerf}


def cut_line(cut: ShearCut, scribe: Scribe) -> CutLine:
    """A cut of the shear in words.

    Args:
        cut: of a sheet.
        scribe: writes its lengths.
    """
    unit = " mm" if scribe.system is System.MM else ""

    def say(one: Length) -> str:
        return f"{scribe.tell(one)}{unit}"

    ways = ("along", "up") if cut.across else ("up", "along")
    lies = f"{say(cut.at)} {ways[0]}, from {say(cut.start)} to {say(cut.stop)} {ways[1]}"
    runs = "across the sheet" if cut.across else "along the sheet"
    return CutLine(cut.number, say(cut.width) if cut.width else "", runs, lies)
