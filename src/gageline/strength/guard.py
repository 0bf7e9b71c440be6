"""Refuses numbers that no clause can work with, before any of them is used."""

from __future__ import annotations

import inspect
import math
from collections.abc import Callable
from functools import cache, wraps
from numbers import Real
from typing import ParamSpec, TypeVar, cast

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gageline.errors import ValueProblem

__all__ = ["fraction", "gradient", "guarded", "not_negative", "numbers_of", "positive", "steel_of", "whole"]

P = ParamSpec("P")
R = TypeVar("R")

_MOST_GRADIENT = 5.0
_MOST_STRESS = 1e3  # ksi
_MOST_SIZE = 1e6  # in: lengths by lower-case letters, and those that the standard writes large
_MOST_OTHER = 1e9  # kips, kip-in, and the properties of sections
_MOST_COUNT = 10_000
_MOST_FAR = 1e8  # in, kip-in: a moment without a force is a load far away
_LENGTHS = frozenset({"B", "E", "L", "L_b", "L_c", "N", "W"})
_WORDS = {"bool": "True or False", "str": "text", "Method": "design method", "Hole": "kind of hole"}


@cache
def _most(name: str) -> float:
    """The most that a quantity can be, by how the standard writes it: in steel far less."""
    if name.startswith("F_") or name == "f_c":
        return _MOST_STRESS
    return _MOST_SIZE if name[0].islower() or name in _LENGTHS else _MOST_OTHER


def _number(name: str, value: object) -> None:
    """Refuse what is no number, or none that can be worked with."""
    if type(value) is not float and (isinstance(value, bool) or not isinstance(value, Real)):
        raise ValueProblem(f"{name} = {value!r} is no number: give its size or count as one")
    number, most = float(value), _most(name)
    if abs(number) <= most:
        return
    if math.isnan(number):
        raise ValueProblem(f"{name} = nan is no number: give its true size or count")
    raise ValueProblem(f"{name} = {number:g} must be at most {most:g}: check its unit")


def positive(**values: float) -> None:
    """Refuse any value that is not a finite number above zero.

    Args:
        values: Values by the symbol the standard gives them.

    Raises:
        ValueProblem: Names the first such value, its limit and what to do.
    """
    for name, value in values.items():
        _number(name, value)
        if value <= 0:
            raise ValueProblem(f"{name} = {value:g} must be more than 0: give its true size or count")


def not_negative(**values: float) -> None:
    """Refuse any value that is not a finite number of zero or more.

    Args:
        values: Values by the symbol the standard gives them.

    Raises:
        ValueProblem: Names the first such value, its limit and what to do.
    """
    for name, value in values.items():
        _number(name, value)
        if value < 0:
            raise ValueProblem(f"{name} = {value:g} must be 0 or more: give its size without a sign")


def whole(**values: float) -> None:
    """Refuse any value that is no whole number, or a count beyond any connection.

    Args:
        values: Counts by name.

    Raises:
        ValueProblem: Names the first such value and what to do.
    """
    for name, value in values.items():
        _number(name, value)
        if value != int(value) or abs(value) > _MOST_COUNT:
            raise ValueProblem(
                f"{name} = {value:g} must be a whole number up to {_MOST_COUNT}: give how many there are"
            )


def steel_of(F_y: float, F_u: float) -> None:
    """Refuse a steel that yields above its strength.

    Args:
        F_y: Yield stress, ksi.
        F_u: Tensile strength, ksi.

    Raises:
        ValueProblem: F_y is more than F_u.
    """
    if F_y > F_u:
        raise ValueProblem(f"F_y = {F_y:g} ksi is more than F_u = {F_u:g} ksi: swap them")


def gradient(C_b: float) -> None:
    """Refuse a modification factor for the moment gradient that no moment has.

    Args:
        C_b: the factor.

    Raises:
        ValueProblem: less than 1, what an even moment has, or more than 5, the most of Equation F1-1.
    """
    _number("C_b", C_b)
    if not 1 <= C_b <= _MOST_GRADIENT:
        raise ValueProblem(
            f"C_b = {C_b:g} must lie between 1 and {_MOST_GRADIENT:g}: find it by Equation F1-1, or take 1"
        )


def fraction(**values: float) -> None:
    """Refuse any value that is not between zero and one.

    Args:
        values: Values by the symbol the standard gives them.

    Raises:
        ValueProblem: Names the first such value, its limits and what to do.
    """
    for name, value in values.items():
        _number(name, value)
        if not 0 <= value <= 1:
            raise ValueProblem(
                f"{name} = {value:g} must lie between 0 and 1: check the two parts it compares"
            )


def numbers_of(values: ArrayLike, what: str) -> NDArray[np.float64]:
    """Many numbers at once, such as the places of bolts, in.

    Args:
        values: nested lists or an array.
        what: they are, for the message.

    Raises:
        ValueProblem: text, rows of unequal length, or a number that is not finite or beyond any connection.
    """
    try:
        found = np.asarray(values, dtype=float)
    except (TypeError, ValueError) as problem:
        raise ValueProblem(f"{what} are not numbers in even rows: give inches and kips") from problem
    if not np.isfinite(found).all():
        raise ValueProblem(f"{what}: one is not a finite number: give inches, degrees and kips")
    if found.size and float(np.abs(found).max()) > _MOST_FAR:
        most = float(np.abs(found).max())
        raise ValueProblem(f"{what}: {most:g} must be at most {_MOST_FAR:g}: check the unit")
    return found


def guarded(function: Callable[P, R]) -> Callable[P, R]:
    """A function of a clause that refuses in words whatever its parameters cannot be.

    Args:
        function: its numbers, counts, choices and words annotated as such.

    Returns:
        The same function behind the guard.
    """
    kinds = {
        name: str(parameter.annotation) for name, parameter in inspect.signature(function).parameters.items()
    }
    places = tuple(kinds.items())
    steel = {"F_y", "F_u"} <= kinds.keys()

    @wraps(function)
    def checked(*args: P.args, **kwargs: P.kwargs) -> R:
        for (name, kind), value in zip(places, args, strict=False):
            _argument(name, kind, value)
        for name, value in kwargs.items():
            _argument(name, kinds.get(name, ""), value)
        if steel:
            given = dict(zip(kinds, args, strict=False)) | kwargs
            if "F_y" in given and "F_u" in given:
                steel_of(cast("float", given["F_y"]), cast("float", given["F_u"]))
        return function(*args, **kwargs)

    return checked


def _argument(name: str, kind: str, value: object) -> None:
    if kind == "float":
        _number(name, value)
    elif kind == "int":
        whole(**{name: value})  # type: ignore[arg-type] # the guard is what finds out
    elif kind in _WORDS and type(value).__name__ != kind:
        raise ValueProblem(f"{name} = {value!r} is no {_WORDS[kind]}: give one")
