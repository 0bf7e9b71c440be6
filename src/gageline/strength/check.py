"""What a strength calculation hands out: its working, the strength found, and the check against a demand.

A formula is one line of plain text in the symbols of the standard. Two quantities side by side are
multiplied (`0.60 F_y A_gv`), `/` divides what stands directly to its left by what stands directly to its
right, `^` raises to a power, and `sqrt`, `min`, `max`, `ln` and `sin` (of degrees) are written as functions.
The same line is read in a terminal, set as mathematics on a sheet, and worked out again by the tests.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import Enum
from typing import NamedTuple

__all__ = ["Check", "Clause", "Factors", "Method", "Step", "Strength", "figure", "found", "step"]

_SYMBOL = re.compile(r"[^\W\d][\w']*")
_SIDE_BY_SIDE = re.compile(r"(?<=[\w.)'])\s+(?=[\w.(])")


class Method(Enum):
    """The two design methods of the American standard."""

    LRFD = "LRFD"
    ASD = "ASD"


class Factors(NamedTuple):
    """The resistance factor of LRFD and the safety factor of ASD that belong to one limit state."""

    phi: float
    omega: float


@dataclass(frozen=True, slots=True)
class Clause:
    """One clause or table of a standard: where it stands and what it is about.

    Args:
        number: As the standard writes it, for example `J4.2(a)`.
        title: The limit state or rule in a few words.
        standard: Title and edition of the standard.
    """

    number: str
    title: str
    standard: str


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a calculation: a symbol, how it is found, and what it comes to.

    Args:
        symbol: What is found, for example `R_n`.
        formula: How, in the plain text described at the top of this module.
        values: The symbols of the formula with their values.
        value: The result.
        unit: Unit of the result; empty for a ratio.
        note: Where a value comes from that no formula of the line gives, in words; empty without one.
    """

    symbol: str
    formula: str
    values: tuple[tuple[str, float], ...]
    value: float
    unit: str
    note: str = ""

    @property
    def numbers(self) -> str:
        """The formula with its numbers put in, ready to print."""
        return self.written(figure)

    @property
    def line(self) -> str:
        """The whole line: symbol, formula, numbers, value and unit, and the note."""
        value = figure(self.value)
        numbers = [] if self.numbers == value else [self.numbers]
        parts = [self.symbol, self.formula, *numbers, f"{value} {self.unit}".rstrip()]
        note = f" ({self.note})" if self.note else ""
        return " = ".join(dict.fromkeys(parts)) + note

    def noted(self, note: str) -> Step:
        """The same line with where its value comes from.

        Args:
            note: in words.
        """
        return replace(self, note=note)

    def written(self, form: Callable[[float], str]) -> str:
        """Write the formula with its numbers put in, products marked with a times sign.

        Args:
            form: How one number is written, such as `figure`.

        Returns:
            For example `0.60 × 50 × 4.25`.
        """
        known = dict(self.values)

        def number(found: re.Match[str]) -> str:
            name = found.group()
            if name not in known:
                return name
            text = form(known[name])
            return f"({text})" if text.startswith("-") else text

        return _SYMBOL.sub(number, _SIDE_BY_SIDE.sub(" × ", self.formula))


def figure(value: float) -> str:
    """Write a number of a calculation to four figures.

    Args:
        value: The number.

    Returns:
        For example `0.3125`, `29000`, `1.24`.
    """
    text = f"{value:.4g}"
    return f"{value:.0f}" if "e+0" in text else text


def step(symbol: str, formula: str, value: float, unit: str = "", /, **values: float) -> Step:
    """Write one line of a calculation.

    Args:
        symbol: What is found.
        formula: How.
        value: The result.
        unit: Unit of the result.
        values: The symbols of the formula with their values.

    Returns:
        The line.
    """
    return Step(symbol, formula, tuple(values.items()), value, unit)


def found(symbol: str, value: float, unit: str, note: str) -> Step:
    """A line for a value that no formula of the standard gives.

    Args:
        symbol: What it is called in the lines after it.
        value: What it is.
        unit: Its unit.
        note: How it was found, in words.
    """
    return Step(symbol, symbol, ((symbol, value),), value, unit, note)


@dataclass(frozen=True, slots=True)
class Strength:
    """The nominal strength by one limit state, with its factors and how it was found.

    Args:
        clause: Where the limit state stands.
        nominal: Nominal strength.
        factors: Resistance factor and safety factor.
        unit: Unit of the strength.
        steps: The calculation; its last line gives the nominal strength.
    """

    clause: Clause
    nominal: float
    factors: Factors
    unit: str
    steps: tuple[Step, ...]

    def available(self, method: Method) -> float:
        """Give the design strength (LRFD) or the allowable strength (ASD).

        Args:
            method: Design method.

        Returns:
            φ times nominal or nominal over Ω, in the unit of the strength.
        """
        if method is Method.LRFD:
            return self.factors.phi * self.nominal
        return self.nominal / self.factors.omega

    def under(self, factors: Factors) -> Strength:
        """Give the same nominal strength with other factors.

        Args:
            factors: The factors that apply.

        Returns:
            A copy.
        """
        return replace(self, factors=factors)

    def after(self, *lines: Step) -> Strength:
        """Give the same strength with lines of working before its own.

        Args:
            lines: How the quantities that it starts from were found.

        Returns:
            A copy.
        """
        return replace(self, steps=(*lines, *self.steps))

    def check(self, demand: float, method: Method, title: str = "") -> Check:
        """Hold the strength against what is required of it.

        Args:
            demand: Required strength by the same method, in the unit of the strength.
            method: Design method.
            title: What is checked, where the clause's own title does not say it.

        Returns:
            The check, its working closed by the available strength.
        """
        symbol = self.steps[-1].symbol
        nominal = (symbol, self.nominal)
        capacity = self.available(method)
        if method is Method.LRFD:
            last = Step(f"φ{symbol}", f"φ {symbol}", (("φ", self.factors.phi), nominal), capacity, self.unit)
        else:
            last = Step(
                f"{symbol}/Ω", f"{symbol}/Ω", (nominal, ("Ω", self.factors.omega)), capacity, self.unit
            )
        return Check(
            self.clause, title or self.clause.title, demand, capacity, self.unit, (*self.steps, last)
        )


@dataclass(frozen=True, slots=True)
class Check:
    """One demand held against one capacity, with the working.

    Args:
        clause: Where the rule stands.
        title: What is checked, for example "shear yielding of the two angles".
        demand: What is required.
        capacity: What is there.
        unit: Unit of both.
        steps: How the capacity (or the demand, for a least thickness and the like) was found.
        binding: Whether it is a rule that no strength makes good.
    """

    clause: Clause
    title: str
    demand: float
    capacity: float
    unit: str
    steps: tuple[Step, ...]
    binding: bool = False

    @property
    def utilisation(self) -> float:
        """Demand over capacity; infinite where something is required and nothing is there."""
        if self.capacity > 0:
            return self.demand / self.capacity
        return math.inf if self.demand > 0 else 0.0

    @property
    def passes(self) -> bool:
        """Whether the capacity is enough; rounding of the last bits does not fail a check."""
        return self.utilisation <= 1 + 1e-9
