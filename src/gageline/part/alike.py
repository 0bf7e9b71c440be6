"""Whether two parts are the same steel within the exactness of `Length`, however they were worked out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import TypeVar

from gageline.part.part import Part
from gageline.steel import Section
from gageline.units import Length

__all__ = ["SAME", "content_of", "pair_off", "same_steel"]

SAME = 8
"""Ticks: what the rounding of skewed and sloped placings to whole ticks can add up to."""

_STEP, _BORDER = 640, 310  # ticks; 64ths of an inch and tenths of a mm are both multiples of 20 of them
_SAME_RATIO = Fraction(1, 10**5)  # of slopes, and degrees of slots: less than `SAME` over a fitting
_HOW = "derived"  # the field of a part that says how it came about
_NO_STEEL = frozenset({"mark", "name", _HOW})  # fields that say how a part is called or came about
T = TypeVar("T")


def same_steel(one: Part, other: Part) -> bool:
    """Whether two parts, with their marks and names, are the same but for a few ticks.

    In what order their features stand does not matter, nor whether the program worked them out.
    """
    # Lengths first: each new fitting of a job is compared with all before it, and most differ in length.
    return _same(one.length, other.length) and _same(one, other)


def _same(one: object, other: object) -> bool:
    if isinstance(one, Length) and isinstance(other, Length):
        return abs(one.ticks - other.ticks) <= SAME
    if isinstance(one, Fraction) and isinstance(other, Fraction):
        return abs(one - other) <= _SAME_RATIO
    if isinstance(one, tuple) and isinstance(other, tuple):
        return pair_off(one, other, _same)
    if is_dataclass(one) and type(one) is type(other):
        names = (own.name for own in fields(one) if own.name != _HOW)
        return one == other or all(_same(getattr(one, name), getattr(other, name)) for name in names)
    return one == other


def pair_off(ones: Iterable[T], others: Iterable[T], same: Callable[[T, T], bool]) -> bool:
    """Whether every item has a counterpart of its own, in whatever order they stand.

    No sorting does it: of points in line a tick may put one before the other.

    Args:
        ones: the items; what differs among them lies much farther apart than ticks.
        others: those to find counterparts in.
        same: whether two items are the same.
    """
    left = list(others)
    for one in ones:
        found = next((number for number, other in enumerate(left) if same(one, other)), None)
        if found is None:
            return False
        del left[found]
    return not left


def content_of(part: Part) -> str:
    """What a part is, without its mark and the names of its groups, in a text that a few ticks rarely change.

    Lengths are told in steps of 0.1 mm whose borders lie as far as can be from whole 64ths and tenths of mm.
    """
    return _content(part)


def _content(value: object) -> str:
    if isinstance(value, Length):
        return str((value.ticks + _BORDER) // _STEP)
    if isinstance(value, Fraction):
        return f"{float(value):.4f}"
    if isinstance(value, Section):
        return value.designation
    if isinstance(value, tuple):
        return f"({','.join(sorted(_content(one) for one in value))})"
    if is_dataclass(value):
        told = ((own, getattr(value, own.name)) for own in fields(value) if own.name not in _NO_STEEL)
        # what a part does not have is left out, so that marks stay when parts can have something new
        return f"[{','.join(f'{own.name}:{_content(one)}' for own, one in told if one != own.default)}]"
    return str(value)
