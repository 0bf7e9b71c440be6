"""The odds of fit-up as parts of a sheet, and as a sheet of their own."""

from __future__ import annotations

from collections.abc import Sequence

from gageline.job import Job
from gageline.part import Assembly
from gageline.quality import Act, Chance, Gain, Odds
from gageline.sheets.flow import Part, flow, room_of
from gageline.sheets.furniture import Draft, Heading, bind, paragraph
from gageline.sheets.notation import Scribe
from gageline.sheets.scene import Anchor, Sheet
from gageline.sheets.style import BODY, Weight
from gageline.sheets.table import Column, Table
from gageline.units import Length, System

__all__ = ["odds_parts", "odds_sheets"]

_MOST = 3
_TELLING = 0.00005  # a gain that two places of a per cent show
_NOTHING = "Nothing of this piece is bolted, and it goes between no supports: there are no odds to tell."


def odds_sheets(job: Job, odds: Sequence[tuple[Assembly, Odds]]) -> Sheet:
    """The odds of fit-up of a job's pieces, each from a page of its own on.

    Args:
        job: whose pieces they are.
        odds: pieces and their odds, in the order they are printed.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    width, _ = room_of(job)
    drafts: list[Draft] = []
    for assembly, told in odds:
        drafts.extend(flow(job, _heading(job, assembly), odds_parts(told, job.system, width)))
    return bind(job, "odds of fit-up", drafts)


def _heading(job: Job, assembly: Assembly) -> Heading:
    main = assembly.main
    detail = f"{main.stock.designation} {main.grade}, {Scribe.of(job).fine(main.length)}"
    return Heading("Odds of fit-up", assembly.mark, assembly.quantity, assembly.hand_of, detail)


def odds_parts(odds: Odds, system: System, width: float) -> list[Part]:
    """The odds of each joint and of the whole, which error matters most, and what would help.

    Args:
        odds: of a piece.
        system: the units of the job.
        width: of the room, mm.
    """
    left_out = [Part("Not reckoned", paragraph("", "; ".join(odds.left_out) + ".", width, BODY))]
    if not odds.joints and odds.span is None:
        nothing = Part("Odds that it bolts up without reaming", paragraph("", _NOTHING, width, BODY))
        return [nothing, *left_out] if odds.left_out else [nothing]
    chances = [*odds.joints, *([odds.span] if odds.span else []), odds.whole]
    columns = (
        Column("Joint"), Column("Goes together", Anchor.RIGHT, Weight.BOLD),
        Column("95 % interval", Anchor.RIGHT), Column("How told"),
    )  # fmt: skip
    rows = tuple(
        (one.name, _share(one.value, sure=one.value == one.low == 1), _interval(one), one.how)
        for one in chances
    )
    return [
        Part("Odds that it bolts up without reaming", Table(columns, rows, total=True)),
        Part("Which error matters most: the whole piece without it", _gains(odds.worst, "If there were")),
        Part("What one more check or a slot would gain", _gains(odds.gains, "Change")),
        *(left_out if odds.left_out else []),
        Part("", paragraph("", _assumed(odds, system), width, BODY)),
    ]


def _gains(gains: Sequence[Gain], how: str) -> Table:
    """The gains that tell most, and that of slots, which nobody needs to do more carefully for."""
    columns = (
        Column(how), Column("Whole piece then", Anchor.RIGHT), Column("Gain", Anchor.RIGHT, Weight.BOLD),
    )  # fmt: skip
    telling = [one for one in gains if one.gain >= _TELLING]
    slots = [one for one in telling[_MOST:] if one.act is None]
    rows = [(one.change, f"{one.value:.2%}", f"{one.gain:+.2%}") for one in (*telling[:_MOST], *slots)]
    return Table(columns, tuple(rows or [("nothing that would show", "-", "-")]))


def _interval(one: Chance) -> str:
    return "-" if one.low == one.high else f"{one.low:.2%} to {one.high:.2%}"


def _share(value: float, *, sure: bool) -> str:
    """A probability in per cent; what only rounds to all of it says that it is not."""
    return "over 99.99%" if value >= 0.99995 and not sure else f"{value:.2%}"


def _assumed(odds: Odds, system: System) -> str:
    values = ", ".join(f"{act} {_small(odds.spread.of(act), act, system)}" for act in Act)
    steel = ""
    if odds.steel is not None:
        steel = f"Of all lengths that the mill is permitted {odds.steel.value:.2%} clear the supports uncut. "
    unit = "inches (square: in a foot)" if system is System.FT_IN else "mm (square: in a metre)"
    return f"{steel}Standard deviations in {unit}: {values}. Source: {odds.spread.source}."


def _small(inches: float, act: Act, system: System) -> str:
    """A standard deviation; of the square over a foot or a metre, for over an inch nobody feels it."""
    if system is System.FT_IN:
        return f"{inches * 12 if act is Act.SQUARE else inches:.4f}"
    return f"{inches * 1000 if act is Act.SQUARE else Length.from_inches(1).mm * inches:.2f}"
