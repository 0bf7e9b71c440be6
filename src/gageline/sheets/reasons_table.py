"""The reasons table: every decision of detailing, why it was taken, and where the rule is from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from gageline.detail import Detailed, FullJob, Reason
from gageline.sheets.card_ends import BY_CARD, ends_by_card
from gageline.sheets.flow import Part, flow
from gageline.sheets.framing_plan import job_frame
from gageline.sheets.furniture import CARE, Heading, bind
from gageline.sheets.scene import Anchor, Sheet
from gageline.sheets.style import FINE, Weight
from gageline.sheets.table import Column, Table

__all__ = ["reasons_table"]

_BOTH = "both"
_AT = {"": "", _BOTH: " at both ends"} | {end: f" at the {said}" for end, said in BY_CARD.items() if end}

_Places = dict[str, str]
"""Mark -> the end that a reason belongs to there; empty for the whole piece."""


def reasons_table(full: FullJob, marks: frozenset[str] | None = None) -> Sheet:
    """The reasons of the pieces of a frame: first those of several pieces, then piece by piece.

    Args:
        full: a job with a frame.
        marks: of the pieces wanted; None for all.

    Raises:
        ValueProblem: a job without a frame, or a text with a character that the font lacks.
    """
    detailed = job_frame(full)
    found = _gathered(detailed, marks)
    sources = {source: n for n, source in enumerate(dict.fromkeys(one.source for one in found), 1)}
    say = ends_by_card(detailed)
    shared, own = (
        tuple(tuple(map(say, row)) for row in rows)
        for rows in (_shared(found, sources), _own(found, sources))
    )
    tables = [
        ("Reasons that several pieces have", Table((*_WHY, Column("Pieces"), _SOURCE), shared, FINE)),
        ("Reasons of one piece alone", Table((*_PIECE, *_WHY, _SOURCE), own, FINE)),
        ("Sources", Table(_SOURCES, tuple((str(n), source) for source, n in sources.items()), FINE)),
    ]
    heading = Heading("Reasons", detail="why each piece is as it is", care=CARE)
    parts = [Part(title, table) for title, table in tables if table.rows]
    return bind(full.job, "reasons", list(flow(full.job, heading, parts)), detailed.wrong)


_WHY = (Column("Decision", weight=Weight.BOLD), Column("Because"))
_PIECE = (Column("Piece", weight=Weight.BOLD, wraps=False), Column("End", wraps=False))
_SOURCE = Column("Source", Anchor.RIGHT, wraps=False)
_SOURCES = (Column("No.", Anchor.RIGHT, wraps=False), Column("Source"))


def _gathered(detailed: Detailed, marks: frozenset[str] | None) -> dict[Reason, _Places]:
    """Equal reasons together, whatever end they are of, with the pieces and ends that have them."""
    found: dict[Reason, _Places] = {}
    for mark, reasons in detailed.reasons.items():
        if marks is not None and mark not in marks:
            continue
        for reason in reasons:
            places = found.setdefault(Reason(reason.decision, reason.because, reason.source), {})
            known = places.get(mark)
            places[mark] = _BOTH if known is not None and known != reason.end else reason.end
    return found


def _shared(found: Mapping[Reason, _Places], sources: Mapping[str, int]) -> Iterator[tuple[str, ...]]:
    for reason, places in found.items():
        if len(places) > 1:
            yield reason.decision, reason.because, _where(places), str(sources[reason.source])


def _where(places: _Places) -> str:
    """The pieces of a reason, those that have it at the same end together."""
    ends: dict[str, list[str]] = {}
    for mark, end in places.items():
        ends.setdefault(end, []).append(mark)
    return "; ".join(f"{', '.join(marks)}{_AT[end]}" for end, marks in ends.items())


def _own(found: Mapping[Reason, _Places], sources: Mapping[str, int]) -> Iterator[tuple[str, ...]]:
    """The reasons that only one piece has, piece by piece; decisions of one rule and end together."""
    alone: dict[tuple[str, str, str, str], list[str]] = {}
    for reason, places in found.items():
        if len(places) == 1:
            ((mark, end),) = places.items()
            alone.setdefault((mark, end, reason.because, reason.source), []).append(reason.decision)
    for own in dict.fromkeys(mark for mark, _, _, _ in alone):
        for (mark, end, because, source), decisions in alone.items():
            if mark == own:
                yield mark, BY_CARD.get(end, end), "; ".join(decisions), because, str(sources[source])
