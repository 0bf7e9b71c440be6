"""Ties a function to the clause it carries out, so that reports, lists and tests can read the clause."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from types import ModuleType
from typing import ParamSpec, TypeVar

from gageline.strength.check import Clause, Factors, Step, Strength
from gageline.strength.guard import guarded

__all__ = ["clause_of", "clauses_in", "limit_state", "provision"]

P = ParamSpec("P")
R = TypeVar("R")


def provision(clause: Clause) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Mark a function as the rule, table or intermediate value of one clause.

    Args:
        clause: The clause.

    Returns:
        A decorator that puts the guard before the function: what a parameter cannot be is refused in words.
    """

    def mark(function: Callable[P, R]) -> Callable[P, R]:
        behind = guarded(function)
        vars(behind)["clause"] = clause
        return behind

    return mark


def limit_state(
    clause: Clause, factors: Factors, unit: str = "kip"
) -> Callable[[Callable[P, tuple[Step, ...]]], Callable[P, Strength]]:
    """Turn a function that writes out the working of a limit state into one that gives the strength.

    Args:
        clause: The clause.
        factors: Its resistance factor and safety factor.
        unit: Unit of the strength.

    Returns:
        A decorator; the last line of the working becomes the nominal strength.
    """

    def mark(working: Callable[P, tuple[Step, ...]]) -> Callable[P, Strength]:
        @wraps(working)
        def strength(*args: P.args, **kwargs: P.kwargs) -> Strength:
            steps = working(*args, **kwargs)
            return Strength(clause, steps[-1].value, factors, unit, steps)

        return provision(clause)(strength)

    return mark


def clause_of(function: Callable[..., object]) -> Clause:
    """Tell which clause a function carries out.

    Args:
        function: A function marked by `provision` or `limit_state`.

    Returns:
        The clause.

    Raises:
        KeyError: The function carries no clause.
    """
    clause: Clause = vars(function)["clause"]
    return clause


def clauses_in(module: ModuleType) -> dict[str, Clause]:
    """List the public functions of a module that carry out a clause.

    Args:
        module: A module of clause functions.

    Returns:
        The clause of each function by the function's name, in the order of the module.
    """
    named = {name: value for name, value in vars(module).items() if not name.startswith("_")}
    return {
        name: value.clause
        for name, value in named.items()
        if callable(value) and isinstance(getattr(value, "clause", None), Clause)
    }
