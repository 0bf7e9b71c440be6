"""What the checks of one connection come to: the checks, the rules of detail, and what was not checked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from gageline.strength.check import Check, Method
from gageline.strength.connection import Connection

__all__ = ["Findings", "NotChecked", "Verdict", "gathered"]


@dataclass(frozen=True, slots=True)
class NotChecked:
    """A limit state that applies but was not checked.

    Args:
        what: the limit state.
        why: the reason.
    """

    what: str
    why: str


@dataclass(frozen=True, slots=True)
class Findings:
    """What one module has to say of a connection.

    Args:
        checks: limit states of strength.
        rules: rules of detail that need no load: least weld, edge distances, a method's own limits.
        not_checked: what applies but was not checked.
    """

    checks: tuple[Check, ...] = ()
    rules: tuple[Check, ...] = ()
    not_checked: tuple[NotChecked, ...] = ()


def gathered(parts: Iterable[Findings]) -> Findings:
    """The findings of several modules as one."""
    found = tuple(parts)
    return Findings(
        tuple(check for part in found for check in part.checks),
        tuple(check for part in found for check in part.rules),
        tuple(item for part in found for item in part.not_checked),
    )


@dataclass(frozen=True, slots=True)
class Verdict:
    """One connection with everything that was checked of it.

    Args:
        connection: what was checked.
        method: by which design method.
        checks: limit states of strength, the governing one first.
        rules: rules of detail.
        not_checked: what applies but was not checked, with the reason.
    """

    connection: Connection
    method: Method
    checks: tuple[Check, ...]
    rules: tuple[Check, ...]
    not_checked: tuple[NotChecked, ...]

    @property
    def governing(self) -> Check:
        """The limit state with the least to spare."""
        return self.checks[0]

    @property
    def utilisation(self) -> float:
        """Demand over capacity of the governing limit state."""
        return self.governing.utilisation

    @property
    def capacity(self) -> float | None:
        """The reaction at which the governing limit state is used up, kips; None beside an axial force."""
        if self.connection.N or self.utilisation == 0:
            return None
        return self.connection.V / self.utilisation

    @property
    def broken_rules(self) -> tuple[Check, ...]:
        """The rules of detail that are not kept."""
        return tuple(rule for rule in self.rules if not rule.passes)

    @property
    def forbidden(self) -> tuple[Check, ...]:
        """The broken rules that no strength makes good."""
        return tuple(rule for rule in self.broken_rules if rule.binding)

    @property
    def passes(self) -> bool:
        """Whether every limit state has enough strength and every rule is kept."""
        return self.governing.passes and not self.broken_rules
