"""The formulas of a calculation as typst mathematics.

A formula is the plain text that `gageline.strength.check` describes: quantities side by side are multiplied,
a slash divides what stands directly beside it, and a few functions are written by name.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from gageline.sheets.pdf import literal
from gageline.strength import Step, figure

__all__ = ["math_of", "symbol_of"]

_TOKEN = re.compile(r"\s*(\d+(?:\.\d+)?|[^\W\d][\w']*|[-+/^(),])")
_NAME = re.compile(r"([^\W\d_]+)('?)(?:_(\w+))?('?)")
_FUNCTIONS = {"sqrt", "min", "max", "ln", "sin"}
_ENDS = {"", "+", "-", ")", ","}


def symbol_of(name: str) -> str:
    """A symbol of the standard as typst mathematics: letters slanted, its index upright.

    Args:
        name: for example `F_y`, `λ_p` or `b'`.
    """
    found = _NAME.fullmatch(name)
    if found is None:
        return literal(name)
    base, prime, index, after = found.groups()
    letters = base if len(base) == 1 else f"italic({literal(base)})"
    return letters + (prime or after) + (f"_{literal(index)}" if index else "")


def math_of(step: Step) -> str:
    """One line of a calculation as typst mathematics: symbol, formula, numbers, value and unit.

    Args:
        step: the line.

    Returns:
        What stands between dollar signs.
    """
    unit = f" thin upright({literal(step.unit)})" if step.unit else ""
    names_itself = step.formula.replace(" ", "") == step.symbol
    parts = [
        _written(step.formula, {}) if names_itself else symbol_of(step.symbol),
        _written(step.formula, {}),
        _written(step.formula, dict(step.values)),
        figure(step.value),
    ]
    return " = ".join(dict.fromkeys(parts)) + unit


def _written(formula: str, values: Mapping[str, float]) -> str:
    return _Writer([*_TOKEN.findall(formula), ""], values).sum()


@dataclass(slots=True)
class _Writer:
    """Reads a formula from left to right and writes it as mathematics."""

    tokens: list[str]
    values: Mapping[str, float]
    at: int = 0

    @property
    def next(self) -> str:
        return self.tokens[self.at]

    def take(self) -> str:
        self.at += 1
        return self.tokens[self.at - 1]

    def sum(self) -> str:
        parts = [self.product() if self.next not in {"+", "-"} else ""]
        while self.next in {"+", "-"}:
            parts.append(self.take())
            parts.append(self.product())
        return " ".join(part for part in parts if part)

    def product(self) -> str:
        first = self.tokens[self.at]
        factors = [(first, self.quotient())]
        while self.next not in _ENDS:
            first = self.next
            factors.append((first, self.quotient()))
        written = factors[0][1]
        for head, text in factors[1:]:
            numbers = head[0].isdigit() or bool(self.values)
            written += (" times " if numbers else " thin ") + text
        return written

    def quotient(self) -> str:
        written = self.power()
        while self.next == "/":
            self.take()
            written = f"display(frac({_bare(written)}, {_bare(self.power())}))"
        return written

    def power(self) -> str:
        base = self.atom()
        if self.next != "^":
            return base
        self.take()
        return f"{base}^({_bare(self.atom())})"

    def atom(self) -> str:
        word = self.take()
        if word == "(":
            return self.inside(lambda parts: f"lr(({', '.join(parts)}))")
        if word in _FUNCTIONS and self.next == "(":
            self.take()
            return self.inside(lambda parts: _called(word, parts))
        if word[0].isdigit():
            return word
        if word in self.values:
            text = figure(self.values[word])
            return f"lr(({text}))" if text.startswith("-") else text
        return symbol_of(word)

    def inside(self, write: Callable[[list[str]], str]) -> str:
        parts = [self.sum()]
        while self.next == ",":
            self.take()
            parts.append(self.sum())
        self.take()
        return write(parts)


def _called(name: str, parts: list[str]) -> str:
    return f"sqrt({parts[0]})" if name == "sqrt" else f"{name} lr(({', '.join(parts)}))"


def _bare(text: str) -> str:
    """A grouped part without its brackets, where a fraction bar or a raised place groups it already."""
    if not text.startswith("lr((") or not text.endswith("))"):
        return text
    inner, depth = text[4:-2], 0
    for letter in inner:
        depth += {"(": 1, ")": -1}.get(letter, 0)
        if depth < 0:
            return text
    return inner
