"""Ends of members as the frame names them, with what the card of their piece calls them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from gageline.detail import Detailed, Placed, Reason
from gageline.part import End, Finding

__all__ = ["BY_CARD", "called", "ends_by_card", "findings_by_card", "place_of", "reasons_by_card"]

BY_CARD = {"": "", "start": "start (left end)", "end": "end (right end)"}
"""The end that a reason belongs to, which is told of the piece as its card shows it, with the card's word."""


def called(one: Placed, end: End) -> End:
    """The end of a member as the card of its piece calls it.

    Args:
        one: the piece where it stands.
        end: left for the member's start, right for its end.
    """
    return end.other if one.lie.end_for_end else end


def place_of(name: str, mark: str) -> str:
    """Which member is meant where equal pieces share a mark: `place B8`; nothing where the mark says so.

    Args:
        name: of the member.
        mark: of its piece; a shaft of a spliced column has the column's name and a number.
    """
    plain = name.casefold() == mark.casefold() or mark.startswith(f"{name}.")
    return "" if plain else f"place {name}"


def ends_by_card(detailed: Detailed | None) -> Callable[[str], str]:
    """What adds to the ends that a text names what their cards call them.

    `start of B4` becomes `start of B4 (left end)`, and `B4 start` likewise; where the card has another mark
    than the member, that mark too.

    Args:
        detailed: the frame, None for a job without one.
    """
    words = dict(_words(detailed.placed if detailed else ()))
    if not words:
        return str
    ends = "|".join(re.escape(one) for one in sorted(words, key=len, reverse=True))
    named = re.compile(rf"(?<![\w-])(?:{ends})(?![\w-]|\.\w| plate)")
    return lambda text: named.sub(lambda found: f"{found[0]} ({words[found[0]]})", text)


def findings_by_card(findings: Iterable[Finding], detailed: Detailed | None) -> tuple[Finding, ...]:
    """Findings with the ends that they name called as on the cards too.

    Args:
        findings: of a job.
        detailed: its frame, None where it has none.
    """
    say = ends_by_card(detailed)
    return tuple(
        replace(one, subject=say(one.subject), message=say(one.message), remedy=say(one.remedy))
        for one in findings
    )


def reasons_by_card(reasons: Iterable[Reason], detailed: Detailed | None) -> tuple[Reason, ...]:
    """The reasons of a piece with the ends that they name called as on the cards too.

    Args:
        reasons: of one piece.
        detailed: the frame that it is from, None for a piece as drawn.
    """
    say = ends_by_card(detailed)
    return tuple(
        replace(one, end=BY_CARD[one.end], decision=say(one.decision), because=say(one.because))
        for one in reasons
    )


def _words(placed: Iterable[Placed]) -> Iterator[tuple[str, str]]:
    """Each way that a text names an end of a member, with what the card of its piece calls it."""
    for one in placed:
        of = f" of {one.mark}" if place_of(one.member, one.mark) else ""
        for word, end in (("start", End.LEFT), ("end", End.RIGHT)):
            for said in (f"{word} of {one.member}", f"{one.member} {word}"):
                yield said, f"{called(one, end)} end{of}"
