"""The odds of fit-up as parts of a sheet."""

from __future__ import annotations

from gageline.quality import Act, Chance, Odds
from gageline.sheets.flow import Part
from gageline.sheets.furniture import paragraph
from gageline.sheets.scene import Anchor
from gageline.sheets.style import BODY, Weight
from gageline.sheets.table import Column, Table

__all__ = ["odds_parts"]

_MOST = 5


def odds_parts(odds: Odds, width: float) -> list[Part]:
    """The odds of each joint and of the whole, which error matters most, and what would help.

    Args:
        odds: of a piece.
        width: of the room, mm.
    """
    chances = [*odds.joints, *([odds.span] if odds.span else []), odds.whole]
    columns = (
        Column("Joint"), Column("Goes together", Anchor.RIGHT, Weight.BOLD),
        Column("95 % interval", Anchor.RIGHT), Column("How told"),
    )  # fmt: skip
    rows = tuple((one.name, f"{one.value:.2%}", _interval(one), one.how) for one in chances)
    effects = [
        (one.change, f"{one.value:.2%}", f"{one.gain:+.2%}")
        for one in (*odds.worst[:_MOST], *odds.gains[:_MOST])
    ]
    gains = (
        Column("Change"),
        Column("Whole piece then", Anchor.RIGHT),
        Column("Gain", Anchor.RIGHT, Weight.BOLD),
    )
    return [
        Part("Odds that it bolts up without reaming", Table(columns, rows, total=True)),
        Part("Which error matters most, and what would help", Table(gains, tuple(effects))),
        Part("", paragraph("", _assumed(odds), width, BODY)),
    ]


def _interval(one: Chance) -> str:
    return "-" if one.low == one.high else f"{one.low:.2%} to {one.high:.2%}"


def _assumed(odds: Odds) -> str:
    values = ", ".join(f"{act} {odds.spread.of(act):.4f}" for act in Act)
    steel = ""
    if odds.steel is not None:
        steel = f"Of all lengths that the mill is permitted {odds.steel.value:.2%} clear the supports uncut. "
    return (
        f"{steel}Standard deviations in inches (square: in an inch): {values}. Source: {odds.spread.source}."
    )
