"""Limits with their source and how far they can be trusted, and readings judged by them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from gageline.job import say, say_finely
from gageline.part import Finding, Severity
from gageline.units import ZERO, Length, System, millimetres, parse_length, round_to, write_length

__all__ = ["FINEST", "Judgement", "Limit", "Trust", "Verdict", "overridden"]


FINEST = Length.from_inches(1) / 6400
"""What nothing is read finer than: a reading said to it is said as it is."""


class Trust(StrEnum):
    """How the value of a limit is known."""

    READ = "read in a reprint"
    SECOND = "quoted at second hand"
    MEMORY = "from memory"
    COMMON = "common practice, no source"
    SHOP = "the shop's own"


class Verdict(StrEnum):
    """What a limit says of a reading."""

    WITHIN = "within"
    OUT = "out"
    NOT_READ = "not read"
    NO_LIMIT = "not checked"


@dataclass(frozen=True, slots=True)
class Limit:
    """How far a reading may be from what is wanted.

    Args:
        code: a short fixed name of the rule, by which the shop can set its own.
        over: how far above; None for no limit that way.
        under: how far below, as a length above zero; None for no limit that way.
        rule: how the limit comes about, in the words of the standard.
        source: standard and table.
        trust: how the value is known.
    """

    code: str
    over: Length | None
    under: Length | None
    rule: str
    source: str
    trust: Trust

    def text(self, system: System) -> str:
        """The limit as a sheet writes it: `+3/8, -3/8`, `at most 1/4` where nothing may be below."""

        def say(length: Length) -> str:
            return _exact_or_decimal(length, system)

        if self.over is None and self.under is None:
            return "none"
        if self.over is None:
            return f"not below -{say(self.under or ZERO)}" if self.under else "not less"
        if self.under is None:
            return f"at most +{say(self.over)}" if self.over else "not more"
        if self.over == self.under:
            return f"±{say(self.over)}"
        return f"+{say(self.over)}, -{say(self.under)}"

    @property
    def cited(self) -> str:
        """The source, with how it is known unless it was read."""
        return self.source if self.trust is Trust.READ else f"{self.source} ({self.trust})"


@dataclass(frozen=True, slots=True)
class Judgement:
    """One reading beside what is wanted and what is allowed.

    Args:
        name: what was read, in the trade's words.
        wanted: what it should be.
        read: what it is; None where it was not read.
        limit: what is allowed; None where no limit is held for it.
        remedy: what is usually done when it is out.
    """

    name: str
    wanted: Length
    read: Length | None
    limit: Limit | None
    remedy: str

    @property
    def off(self) -> Length | None:
        """How far the reading is from what is wanted, with its sign."""
        return None if self.read is None else self.read - self.wanted

    @property
    def by(self) -> Length:
        """How far the reading is out of its limit; zero where it is within, not read or without limit."""
        off = self.off
        if off is None or self.limit is None:
            return ZERO
        above = off - self.limit.over if self.limit.over is not None else ZERO
        below = -off - self.limit.under if self.limit.under is not None else ZERO
        return max(above, below, ZERO)

    @property
    def verdict(self) -> Verdict:
        """Whether the reading is within its limit; a reading on the limit is within."""
        if self.read is None:
            return Verdict.NOT_READ
        if self.limit is None:
            return Verdict.NO_LIMIT
        return Verdict.OUT if self.by else Verdict.WITHIN

    def finding(self, subject: str, system: System, tape: Length = FINEST) -> Finding:
        """The judgement as a finding: a warning when out, else a note.

        Args:
            subject: the piece or stick.
            system: the units of the message.
            tape: the smallest division that was read to.
        """

        def told(length: Length) -> str:
            return say(round_to(length, tape), system)

        code = self.limit.code if self.limit else "no-limit"
        source = self.limit.cited if self.limit else "no limit held"
        where = f"{subject} {self.name}"
        if self.read is None:
            return Finding(code, Severity.NOTE, where, "was not read: taken as nominal", "read it", source)
        off = self.off or ZERO
        amount = (
            f"{told(self.read)}, {told(abs(off))} {'over' if off > ZERO else 'under'}"
            if round_to(off, tape) and self.wanted
            else told(self.read)
        )
        if self.limit is None:
            return Finding(
                code, Severity.NOTE, where, f"{amount}: not checked", "judge it by the drawing", source
            )
        allowed = f"limit {self.limit.text(system)}"
        allowed += " mm" if system is System.MM and allowed[-1].isdigit() else ""
        if not self.by:
            return Finding(code, Severity.NOTE, where, f"{amount}: within, {allowed}", "none needed", source)
        message = f"{amount}: out by {say_finely(self.by, system)}, {allowed}"
        return Finding(code, Severity.WARNING, where, message, self.remedy, source)


def _exact_or_decimal(length: Length, system: System) -> str:
    """A limit in fractions where they say it exactly, else in decimals: 1/64 more could be out of it."""
    if system is System.MM:
        return millimetres(length, 2)
    text = write_length(length, system, 64)
    return text if parse_length(text) == length else say_finely(length, system)


def overridden(limit: Limit, tolerances: Mapping[str, Length]) -> Limit:
    """The limit, with the shop's own value for its code in place of the standard's where there is one."""
    own = tolerances.get(limit.code)
    if own is None:
        return limit
    over = own if limit.over is not None else None
    under = own if limit.under is not None else None
    return Limit(
        limit.code, over, under, f"the shop's own, for: {limit.rule}", "the shop's tolerances", Trust.SHOP
    )
